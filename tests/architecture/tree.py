"""What the architecture checks share: files of the tree, C++ and QML without comments, complaints."""
import os
import re
import sys

SKIPPED = {"build", "out", "__pycache__"}


def files(root, folders, endings):
    """Paths relative to root, sorted, of files below the folders with one of the endings."""
    found = []
    for folder in folders:
        for place, inner, names in os.walk(os.path.join(root, folder)):
            inner[:] = sorted(d for d in inner if d not in SKIPPED and not d.startswith(".git"))
            found += [os.path.relpath(os.path.join(place, n), root) for n in names if n.endswith(endings)]
    return sorted(found)


def read(root, path):
    with open(os.path.join(root, path), encoding="utf-8", errors="replace") as file:
        return file.read()


TOKEN = re.compile(r"""//[^\n]*|/\*.*?\*/|"(?:\\.|[^"\\\n])*"|'(?:\\.|[^'\\\n])*'|`(?:\\.|[^`\\])*`""", re.S)


def without_comments(text):
    """The same text with comments blanked; lines and columns stay where they are."""
    def blank(match):
        token = match.group()
        return re.sub(r"[^\n]", " ", token) if token.startswith(("//", "/*")) else token
    return TOKEN.sub(blank, text)


def literals(text):
    """(offset, content) of every string literal of a text without comments."""
    return [(m.start(), m.group()[1:-1]) for m in TOKEN.finditer(text) if not m.group().startswith("/")]


def line_of(text, offset):
    return text.count("\n", 0, offset) + 1


class Complaints:
    def __init__(self):
        self.lines = []

    def add(self, path, line, what):
        self.lines.append(f"{path}:{line}: {what}" if line else f"{path}: {what}")

    def end(self, looked_at, at_least=1):
        """Prints and leaves the program: 1 when there are complaints or nothing was looked at."""
        for line in self.lines:
            print(line)
        print(f"{looked_at} files looked at, {len(self.lines)} complaints")
        sys.exit(1 if self.lines or looked_at < at_least else 0)


class Layers:
    """layers.txt: rows by folder, and the outside header each link target stands for."""

    def __init__(self, path):
        self.rows, self.links = {}, {}
        with open(path, encoding="utf-8") as file:
            for line in file:
                line = line.split("#")[0].strip()
                if line.startswith("link "):
                    _, target, header = line.split()
                    self.links[target] = header
                elif line:
                    folder, qt, inner, outside, body = [part.strip() for part in line.split("|")]
                    sets = [[] if part == "-" else part.split() for part in (inner, outside, body)]
                    self.rows[folder] = (qt == "yes", *sets)

    def qt_free(self):
        return [folder for folder, row in self.rows.items() if not row[0]]

    def cycle(self):
        """A folder that can reach itself through the table, or None."""
        def reached(folder, seen):
            for below in self.rows.get(folder, (0, [], [], []))[1]:
                if below not in seen and below != "any":
                    seen.add(below)
                    reached(below, seen)
            return seen
        return next((f for f in self.rows if f in reached(f, set())), None)
