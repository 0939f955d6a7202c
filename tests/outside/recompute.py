#!/usr/bin/env python3
"""Numbers of the record's pages, worked out again from its CSV export with SQL and plain Python.

Usage: recompute.py JAMBLINE_RECORD FOLDER

Nothing of the program's own code is used but its export and its answers as JSON. Every number of
hours by operation, person and month, of first-time-through and redo, of sprays with overrides, of
lateness and of days in the shop is compared: counts exactly, sums to nine digits. CSV and JSON
exports are compared cell by cell. Exit code 0: equal.
"""
import csv
import datetime
import json
import math
import pathlib
import sqlite3
import statistics
import subprocess
import sys
import tempfile
import zoneinfo

PROGRAM, FOLDER = sys.argv[1], sys.argv[2]
compared = 0
wrong = []


def run(*arguments):
    done = subprocess.run([PROGRAM, *arguments], capture_output=True, text=True, check=False)
    if done.returncode != 0:
        sys.exit(f"{arguments}: {done.returncode}\n{done.stdout}{done.stderr}")
    return done.stdout


def same(what, own, theirs):
    global compared
    compared += 1
    equal = (math.isclose(own, theirs, rel_tol=1e-9, abs_tol=1e-9)
             if isinstance(own, float) or isinstance(theirs, float) else own == theirs)
    if not equal:
        wrong.append(f"{what}: {own!r} from the export, {theirs!r} from the program")


def ms_of(text):
    if not text:
        return None
    at = datetime.datetime.fromisoformat(text.replace("Z", "+00:00"))
    return (int(at.replace(microsecond=0).timestamp()) * 1000) + at.microsecond // 1000


def load(folder):
    """Every CSV as a table of SQLite: numbers as numbers, times as ms, all else as text."""
    db = sqlite3.connect(":memory:")
    db.row_factory = sqlite3.Row
    for file in sorted(pathlib.Path(folder).glob("*.csv")):
        with open(file, newline="", encoding="utf-8") as lines:
            rows = list(csv.reader(lines, strict=True))
        heads = rows[0]
        names = [head[:-4] + "_ms" if head.endswith("_utc") else head for head in heads]
        db.execute(f'CREATE TABLE "{file.stem}" (' + ", ".join(f'"{name}"' for name in names) + ")")
        for row in rows[1:]:
            cells = []
            for head, cell in zip(heads, row, strict=True):
                if head.endswith("_utc"):
                    cells.append(ms_of(cell))
                elif head.endswith(("_min", "_s", "_m2")) or head in (
                        "musts_passed_over", "shoulds_not_met", "pictures_missing"):
                    cells.append(float(cell) if cell else None)
                else:
                    cells.append(cell)
            db.execute(f'INSERT INTO "{file.stem}" VALUES ({",".join("?" * len(cells))})', cells)
    return db


def ask(question, *more):
    return json.loads(run("ask", question, "--folder", FOLDER, "--json", *more))


class Time:
    def __init__(self, answer, zone):
        self.start, self.end = answer["from_ms"], answer["to_ms"]
        self.zone = zoneinfo.ZoneInfo(zone)

    def holds(self, ms):
        return ms is not None and self.start <= ms < self.end

    def month(self, ms):
        return datetime.datetime.fromtimestamp(ms // 1000, self.zone).strftime("%Y-%m")


def quartiles(what, values, theirs):
    same(what + " n", len(values), theirs["n"] if theirs else 0)
    if not values or not theirs:
        return
    parts = statistics.quantiles(values, n=4, method="inclusive") if len(values) > 1 else values * 3
    for name, own in zip(("least", "lower", "median", "upper", "most"),
                         (min(values), *parts, max(values))):
        same(f"{what} {name}", float(own), float(theirs[name]))


def hours(db, time, by, answer):
    clocked = db.execute("""
        SELECT o.job, o.operation, o.stage, o.title, o.work, o.estimate_min, o.done,
               w.person_id AS person, sum(w.worked_s) AS own_s,
               (SELECT sum(a.worked_s) FROM worked a WHERE a.operation = o.operation) AS all_s,
               (SELECT max(a.end_ms) FROM worked a WHERE a.operation = o.operation) AS last_ms
        FROM operations o JOIN worked w ON w.operation = o.operation
        GROUP BY o.operation, w.person_id""").fetchall()
    clocked = [one for one in clocked if time.holds(one["last_ms"]) and one["all_s"] > 0]
    same(f"hours by {by}, open", len({one["operation"] for one in clocked if one["done"] != "yes"}),
         answer["open"])
    groups = {}
    for one in clocked:
        if one["done"] != "yes":
            continue
        key = {"operation": (one["stage"], one["title"].removeprefix("'")),
               "person": one["person"], "month": time.month(one["last_ms"])}[by]
        groups.setdefault(key, []).append(one)

    def sums(rows):
        out = {"operations": set(), "cars": set(), "estimate_min": 0.0, "clocked_min": 0.0,
               "without_estimate": set(), "without_estimate_min": 0.0, "again": set(),
               "again_min": 0.0}
        ratios = {}
        for one in rows:
            minutes = one["own_s"] / 60
            if one["work"] in ("redo", "comeback"):
                out["again"].add(one["operation"])
                out["again_min"] += minutes
            elif not one["estimate_min"]:
                out["without_estimate"].add(one["operation"])
                out["without_estimate_min"] += minutes
            else:
                out["operations"].add(one["operation"])
                out["cars"].add(one["job"])
                out["estimate_min"] += one["estimate_min"] * one["own_s"] / one["all_s"]
                out["clocked_min"] += minutes
                ratios[one["operation"]] = one["all_s"] / 60 / one["estimate_min"]
        return {name: len(value) if isinstance(value, set) else value
                for name, value in out.items()}, list(ratios.values())

    theirs = {{"operation": (row.get("stage"), row["title"]), "person": row.get("person"),
               "month": row["month"]}[by]: row for row in answer["rows"]}
    same(f"hours by {by}, rows", sorted(map(str, groups)), sorted(map(str, theirs)))
    for key, row in [*theirs.items(), ("all", answer["all"])]:
        rows = sum(groups.values(), []) if key == "all" else groups.get(key, [])
        own, ratios = sums(rows)
        for name, value in own.items():
            same(f"hours by {by}, {key}, {name}", value, row[name])
        quartiles(f"hours by {by}, {key}, ratio", ratios, row.get("ratio"))
    return {"operations": answer["all"]["operations"], "redo or comeback": answer["all"]["again"]}


def first_time(db, time, answer):
    looks = {}
    for row in db.execute("""SELECT l.job, l.panel, l.verdict, l.at_ms FROM looks l
                             JOIN panels p ON p.job = l.job AND p.panel = l.panel
                             WHERE p.face_sprayed = 'yes' ORDER BY l.rowid"""):
        looks.setdefault((row["job"], row["panel"]), []).append((row["verdict"], row["at_ms"]))
    own, months, kinds = {}, {}, {}
    for (job, panel), said in looks.items():
        first = next((one for one in said if one[0] not in ("ask", "not looked at")), None)
        if first is None or not time.holds(first[1]):
            continue
        back = any(verdict in ("redo", "back to body") for verdict, _ in said)
        for row in (own, months.setdefault(time.month(first[1]), {})):
            for name, one in (("panels", True), ("sent_back", back), ("through", not back),
                              ("clean_at_once", not back and first[0] == "clean")):
                row[name] = row.get(name, 0) + int(one)
        if back:
            found = [row[0] for row in db.execute(
                "SELECT DISTINCT defect FROM marks WHERE job = ? AND panel = ?", (job, panel))]
            for kind in found or [None]:
                kinds[kind] = kinds.get(kind, 0) + 1
    for name in ("panels", "through", "clean_at_once", "sent_back"):
        same(f"first time, {name}", own.get(name, 0), answer["all"][name])
        same(f"first time, {name} by month", {month: row[name] for month, row in months.items()},
             {row["month"]: row[name] for row in answer["months"]})
    same("first time, kinds", kinds, {row.get("defect"): row["panels"] for row in answer["kinds"]})
    redo = {}
    for row in db.execute("""SELECT o.job, o.why, sum(w.worked_s) AS s, max(w.end_ms) AS last_ms
                             FROM operations o JOIN worked w ON w.operation = o.operation
                             WHERE o.work = 'redo' GROUP BY o.operation"""):
        if time.holds(row["last_ms"]) and row["s"] > 0:
            one = redo.setdefault(row["why"].removeprefix("'"), [0, 0.0, set()])
            one[0] += 1
            one[1] += row["s"] / 60
            one[2].add(row["job"])
    theirs = {row["why"]: row for row in answer["redo"]}
    same("redo, reasons", sorted(redo), sorted(theirs))
    for why, (count, minutes, cars) in redo.items():
        same(f"redo, {why}, operations", count, theirs[why]["operations"])
        same(f"redo, {why}, minutes", minutes, theirs[why]["clocked_min"])
        same(f"redo, {why}, cars", len(cars), theirs[why]["cars"])
    back = [row for row in db.execute("SELECT at_ms FROM comebacks") if time.holds(row[0])]
    same("came back", len(back), len(answer["came_back"]))
    return {"panels": own.get("panels", 0), "sent back": own.get("sent_back", 0),
            "reasons of redo": len(redo), "came back": len(back)}


def sprays(db, time, answer):
    rows = [row for row in db.execute("""
        SELECT s.*, EXISTS (SELECT 1 FROM overrides o WHERE o.entry = s.entry
                            AND o.class = 'must' AND o.reason = 'record is not here') AS no_record
        FROM sprays s""") if time.holds(row["at_ms"])]
    reports = {row["entry"]: row for row in db.execute("SELECT * FROM sprayed_without")
               if time.holds(row["at_ms"])}

    def sums(starts, said):
        return {"starts": len(starts),
                "with_overrides": sum(row["musts_passed_over"] > 0 for row in starts),
                "facts_missing": sum(row["shoulds_not_met"] > 0 or bool(row["no_record"])
                                     for row in starts),
                "without": len(said)}

    def check(what, own, row):
        for name, value in own.items():
            same(f"sprays, {what}, {name}", value, row[name])

    check("all", sums(rows, reports), answer["all"])
    for row in answer["people"]:
        check(row["person"], sums([one for one in rows if one["by_id"] == row["person"]],
                                  [one for one in reports.values()
                                   if one["by_id"] == row["person"]]), row)
    for row in answer["months"]:
        check(row["month"], sums([one for one in rows if time.month(one["at_ms"]) == row["month"]],
                                 [one for one in reports.values()
                                  if time.month(one["at_ms"]) == row["month"]]), row)
    same("sprays, people", sum(row["starts"] for row in answer["people"]), len(rows))
    passed = {}
    for row in db.execute("SELECT item, at_ms FROM overrides WHERE class = 'must'"
                          " AND \"where\" = 'before the gun'"):
        if time.holds(row["at_ms"]):
            passed[row["item"]] = passed.get(row["item"], 0) + 1
    same("sprays, items", passed, {row["item"]: row["with_overrides"] for row in answer["items"]
                                   if row["with_overrides"] > 0})
    return {"starts": len(rows), "overrides": answer["all"]["with_overrides"],
            "reports of spraying without": len(reports)}


def waited_ms(db, job, reason, start, end):
    """Of one reason; two at once count once."""
    spans = sorted((max(row["start_ms"], start), min(row["end_ms"] or end, end))
                   for row in db.execute("SELECT * FROM waits WHERE job = ? AND reason = ?",
                                         (job, reason)))
    total, upto = 0, start
    for begins, ends in spans:
        total += max(0, ends - max(begins, upto))
        upto = max(upto, ends)
    return total


REASONS = ("part", "cure", "booth", "approval", "sublet")


def lateness(db, time, now, answer):
    due, late, months, held = 0, [], {}, {}
    for car in db.execute("SELECT * FROM cars"):
        if not time.holds(car["promised_ms"]):
            continue
        if car["delivered_ms"] is None and car["promised_ms"] > now:
            continue
        due += 1
        month = months.setdefault(time.month(car["promised_ms"]), [0, 0])
        month[0] += 1
        until = car["delivered_ms"] or now
        if until <= car["promised_ms"]:
            continue
        month[1] += 1
        late.append((until - car["promised_ms"]) / 3_600_000)
        waits = [waited_ms(db, car["job"], reason, car["opened_ms"], until) for reason in REASONS]
        redo = db.execute("SELECT sum(w.worked_s) FROM operations o JOIN worked w"
                          " ON w.operation = o.operation WHERE o.work = 'redo' AND o.job = ?",
                          (car["job"],)).fetchone()[0]
        if max(waits) > 0:
            key = ("wait", REASONS[waits.index(max(waits))])
        elif redo:
            key = ("redo", None)
        elif car["delivered_ms"] is None and car["next_stage"]:
            key = ("stage", car["next_stage"])
        else:
            key = ("not said", None)
        held[key] = held.get(key, 0) + 1
    same("late, due", due, answer["due"])
    same("late, late", len(late), answer["late"])
    same("late, months", {month: tuple(row) for month, row in months.items()},
         {row["month"]: (row["due"], row["late"]) for row in answer["months"]})
    same("late, held by", held, {(row["held"], row.get("wait") or row.get("stage")): row["cars"]
                                 for row in answer["rows"]})
    quartiles("late, hours", late, answer.get("hours_late"))
    return {"promised": due, "late": len(late), "held by a wait": sum(count for key, count in held.items() if key[0] == "wait")}


def flow(db, time, answer):
    days, touch, waits = [], [], {}
    for car in db.execute("SELECT * FROM cars"):
        if not time.holds(car["delivered_ms"]):
            continue
        days.append((car["delivered_ms"] - car["opened_ms"]) / 86_400_000)
        touch.append((db.execute("SELECT sum(w.worked_s) FROM worked w JOIN operations o"
                                 " ON o.operation = w.operation WHERE w.job = ?",
                                 (car["job"],)).fetchone()[0] or 0) / 3600)
        for reason in REASONS:
            ms = waited_ms(db, car["job"], reason, car["opened_ms"], car["delivered_ms"])
            if ms > 0:
                waits.setdefault(reason, []).append(ms / 3_600_000)
    quartiles("flow, days", days, answer["all"].get("cycle_days"))
    quartiles("flow, touch", touch, answer["all"].get("touch_h"))
    same("flow, waits", sorted(waits), sorted(row["reason"] for row in answer["waits"]))
    for row in answer["waits"]:
        own = waits.get(row["reason"], [])
        same(f"flow, {row['reason']}, cars", len(own), row["cars"])
        same(f"flow, {row['reason']}, hours", float(sum(own)), float(row["hours"]))
    return {"delivered": len(days)}


def json_is_the_csv(csv_folder, json_folder):
    for file in sorted(pathlib.Path(csv_folder).glob("*.csv")):
        table = json.loads((pathlib.Path(json_folder) / (file.stem + ".json")).read_text("utf-8"))
        raw = file.read_bytes()
        same(f"{file.name}, line ends", raw.count(b"\n") >= raw.count(b"\r\n") > 0, True)
        with open(file, newline="", encoding="utf-8") as lines:
            rows = list(csv.DictReader(lines, strict=True))
        same(f"{file.name}, heads", list(csv.reader(open(file, newline="", encoding="utf-8")))[0],
             [column["name"] for column in table["columns"]])
        same(f"{file.name}, rows", len(rows), len(table["rows"]))
        for own, theirs in zip(rows, table["rows"]):
            for head, cell in own.items():
                value = theirs.get(head, "")
                if isinstance(value, bool):
                    value = "yes" if value else "no"
                if isinstance(value, (int, float)):
                    if float(cell) != float(value):
                        wrong.append(f"{file.name}, {head}: {cell} and {value}")
                elif cell != value and cell != "'" + value:
                    wrong.append(f"{file.name}, {head}: {cell!r} and {value!r}")


def main():
    with tempfile.TemporaryDirectory() as here:
        run("export", "--folder", FOLDER, "--to", here + "/csv")
        run("export", "--folder", FOLDER, "--to", here + "/json", "--json")
        json_is_the_csv(here + "/csv", here + "/json")
        db = load(here + "/csv")
    for name in ("worked (operation)", "operations (operation)", "waits (job)", "marks (job)",
                 "overrides (entry)", "looks (job)", "panels (job)", "worked (job)"):
        table = name.split()[0]
        db.execute(f"CREATE INDEX by_{table}_{len(name)} ON {name}")
    zone = db.execute("SELECT zone FROM shop").fetchone()[0]
    last_ms = db.execute("SELECT max(at_ms) FROM entries").fetchone()[0]
    last = datetime.datetime.fromtimestamp(last_ms // 1000, zoneinfo.ZoneInfo(zone)).date()
    quarter = ("--from", str(last - datetime.timedelta(days=90)), "--to", str(last))
    seen = {}
    for days in ((), quarter):
        for by in ("operation", "person", "month"):
            said = json.loads(run("hours", FOLDER, "--by", by, "--json", *days))
            time = Time(said, zone)
            seen |= hours(db, time, by, said["answer"])
        said = ask("first-time", *days)
        seen |= first_time(db, Time(said, zone), said["answer"])
        said = ask("sprays", *days)
        seen |= sprays(db, Time(said, zone), said["answer"])
        said = ask("late", *days)
        seen |= lateness(db, Time(said, zone), said["now_ms"], said["answer"])
        said = ask("flow", *days)
        seen |= flow(db, Time(said, zone), said["answer"])
        for what, count in seen.items():
            same(f"there are {what} {days}", count > 0, True)
    print(f"{compared} numbers compared, {len(wrong)} differ; of the last quarter: {seen}")
    for one in wrong[:40]:
        print(one)
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main())
