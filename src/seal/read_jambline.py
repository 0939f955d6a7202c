#!/usr/bin/env python3
"""Checks a Jambline log without Jambline; written from FORMAT.md alone. Ends with 0 when all is in
order, 1 with the first bad entry, 2 when nothing could be read. Needs the openssl command (3.0)."""
import argparse
import hashlib
import json
import pathlib
import sqlite3
import struct
import subprocess
import sys
import tempfile

HEADER = (">B16s16sQ32s16sQqhB16sQ16s16sBBHHI32s",
          "format shop device seq prev_hash subject hlc wall_ms offset_min clock_flags boot "
          "boottime_ms person action part parts kind schema payload_bytes payload_hash".split())
RECEIPT = (">B16s32s16s16sQ32sQQq64s", "format shop hub epoch device seq hash hub_seq_first "
           "hub_seq_last received_ms signature".split())
FOUNDED, ADMITTED, REVOKED, HUB, ERASED = 1, 2, 3, 4, 5
MEMBERS = {FOUNDED: (("founder_key", 32), ("nonce", 16), ("device_name", str)),
           ADMITTED: (("device_key", 32), ("device_name", str), ("manager", bool)),
           REVOKED: (("device", 16), ("cut_seq", int), ("cut_hash", 32)),
           HUB: (("hub_key", 32), ("hub_name", str)), ERASED: (("target", 32), ("reason", str))}
NONE = bytes(32)
DER_BEFORE_KEY = bytes.fromhex("302a300506032b6570032100")  # RFC 8410


class Bad(Exception):
    pass


def sha(*parts):
    return hashlib.sha256(b"".join(parts)).digest()


def device_of(key):
    return sha(key)[:16]


def unpack(layout, data):
    if len(data) != struct.calcsize(layout[0]):
        raise Bad("wrong length of a header or receipt")
    return dict(zip(layout[1], struct.unpack(layout[0], data)))


def fits(value, what):
    if isinstance(what, int):
        return len(value) == 2 * what and len(bytes.fromhex(value)) == what
    return type(value) is what and (what is not int or 0 <= value < 2**63)


class Entry:
    def __init__(self, header, signature, salt, payload, erased):
        self.signature, self.salt, self.payload, self.erased = signature, salt, payload, erased
        self.hash = sha(b"jambline entry 1", header)
        self.__dict__.update(unpack(HEADER, header))
        self.name = f"device {self.device.hex()} seq {self.seq}"
        if self.format != 1 or not 1 <= self.seq < 2**63 or not 1 <= self.part <= self.parts:
            raise Bad(f"{self.name}: its header is not of this format")
        if self.payload_bytes > 65536 or len(signature) != 64 or len(salt) != 16:
            raise Bad(f"{self.name}: a part of it has a wrong length")
        self.words = {}
        try:
            found = json.loads(payload, object_pairs_hook=lambda pairs: dict(reversed(pairs)))
            if all(fits(found[name], what) for name, what in MEMBERS[self.kind]):
                self.words = found
        except (ValueError, RecursionError, TypeError, KeyError):
            pass  # such a claim does not count

    def key(self, member):
        return bytes.fromhex(self.words.get(member, ""))


def read_database(file):
    base = sqlite3.connect(f"file:{file}?mode=ro", uri=True)
    if base.execute("PRAGMA application_id").fetchone()[0] != 0x4A424C47:
        raise Bad("log.db is of another program")
    if base.execute("PRAGMA quick_check(1)").fetchone()[0] != "ok":
        raise Bad("log.db is damaged")
    entries = []
    for row in base.execute("SELECT arrival, device, seq, hash, subject, kind, header, signature, "
                            "salt, payload, erased FROM entries ORDER BY arrival"):
        entry = Entry(*row[6:10], row[10] == 1)
        entries.append(entry)
        if row[0] != len(entries):
            raise Bad(f"{entry.name}: an entry before it is gone")
        if row[1:6] != (entry.device, entry.seq, entry.hash, entry.subject, entry.kind):
            raise Bad(f"{entry.name}: its columns are not those of its header")
    return entries, [row[0] for row in base.execute("SELECT bytes FROM receipts")]


def read_exported(folder):
    entries = []
    for file in sorted((folder / "entries").glob("*.jle")):
        data = file.read_bytes()
        while data:
            one = data[4:4 + int.from_bytes(data[:4], "big")]
            if len(one) < 287 or len(one) != int.from_bytes(data[:4], "big") or one[270] > 1:
                raise Bad(f"{file.name}: not whole entries")
            entries.append(Entry(one[:206], one[206:270], one[271:287], one[287:], one[270] == 1))
            data = data[4 + len(one):]
    receipts = folder / "receipts"
    data = receipts.read_bytes() if receipts.exists() else b""
    entries.sort(key=lambda entry: (entry.device, entry.seq))
    return entries, [data[at:at + 209] for at in range(0, len(data), 209)]


def verifier(chain_only, folder):
    files = [pathlib.Path(folder) / name for name in ("key", "message", "signature")]
    command = ["openssl", "pkeyutl", "-verify", "-pubin", "-keyform", "DER", "-inkey", files[0],
               "-rawin", "-in", files[1], "-sigfile", files[2]]
    known = {}

    def verify(key, message, signature):
        case = (key, message, signature)
        if not chain_only and case not in known:
            for file, data in zip(files, (DER_BEFORE_KEY + key, message, signature)):
                file.write_bytes(data)
            known[case] = subprocess.run(command, stdout=subprocess.DEVNULL,
                                         stderr=subprocess.DEVNULL, check=False).returncode == 0
        return chain_only or known[case]
    return verify


class Members:
    """FORMAT.md section 5: who belongs, from the claims that count."""

    def __init__(self, entries, verify):
        self.keys, claims, self.first_links, self.cut, self.hubs = {}, {}, {}, {}, set()
        for entry in entries:
            key = entry.key("founder_key")
            if entry.kind in (ADMITTED, REVOKED, HUB) and entry.words:
                claims[entry.hash] = entry
            elif (entry.kind == FOUNDED and entry.seq == 1 and entry.prev_hash == NONE
                  and device_of(key) == entry.device and verify(key, entry.hash, entry.signature)
                  and sha(b"jambline shop 1", key, entry.key("nonce"))[:16] == entry.shop):
                self.keys[entry.device] = key
                self.first_links[entry.device] = {NONE}
        self.founders = set(self.keys)
        for claim in claims.values():
            claim.lets_in = device_of(claim.key("device_key")) if claim.kind == ADMITTED else None
            if claim.lets_in:
                self.keys.setdefault(claim.lets_in, claim.key("device_key"))
        self.claims = [claim for claim in claims.values() if claim.device in self.keys and
                       verify(self.keys[claim.device], claim.hash, claim.signature)]
        for claim in self.judge():
            if claim.kind == ADMITTED:
                self.first_links.setdefault(claim.lets_in, set()).add(claim.hash)
            elif claim.kind == HUB:
                self.hubs.add(claim.key("hub_key"))
            else:
                cut = (claim.words["cut_seq"], claim.key("cut_hash"))
                self.cut[claim.key("device")] = min(cut, self.cut.get(claim.key("device"), cut))

    def managers(self, counting):
        reached, before = set(self.founders), 0
        while before != len(reached):
            before = len(reached)
            reached |= {claim.lets_in for claim in counting if claim.kind == ADMITTED
                        and claim.device in reached and claim.words["manager"]}
        return reached

    def judge(self):
        def cuts(by, claim):
            return by.kind == REVOKED and by.key("device") == claim.device and (
                claim.seq > by.words["cut_seq"] or
                claim.seq == by.words["cut_seq"] and claim.hash != by.key("cut_hash"))
        left, stands, before = list(self.claims), [], None
        while before != (len(left), len(stands)):
            before = (len(left), len(stands))
            possible, certain = self.managers(left), self.managers(stands)
            left = [claim for claim in left if claim.device in possible
                    and not any(cuts(by, claim) for by in stands)]
            stands = [claim for claim in left if claim.device in certain
                      and not any(cuts(by, claim) for by in left)]
        return left


def check(entries, receipts, verify):
    members, heads, erased, targets = Members(entries, verify), {}, [], set()
    for entry in entries:
        seq, before = heads.get(entry.device, (0, None))
        if entry.seq != seq + 1 or entry.shop != entries[0].shop:
            raise Bad(f"{entry.name}: another shop's, or the entry before it here is {seq}")
        if entry.prev_hash not in ({before} if seq else members.first_links.get(entry.device, ())):
            raise Bad(f"{entry.name}: it does not follow from the entry before it")
        if not verify(members.keys[entry.device], entry.hash, entry.signature):
            raise Bad(f"{entry.name}: its signature does not verify")
        if entry.erased:
            erased.append(entry)
            if entry.kind <= ERASED or entry.payload or any(entry.salt):
                raise Bad(f"{entry.name}: its payload may not be missing")
        elif (len(entry.payload) != entry.payload_bytes or entry.payload_hash
              != sha(b"jambline payload 1", entry.salt, entry.payload)):
            raise Bad(f"{entry.name}: its payload is another one")
        if entry.kind == ERASED:
            targets.add(entry.key("target"))
        cut = members.cut.get(entry.device, (0, NONE))
        if entry.seq == cut[0] and entry.hash != cut[1]:
            raise Bad(f"{entry.name}: another one stood where its device was cut off")
        heads[entry.device] = (entry.seq, entry.hash)
    for entry in erased:
        if entry.hash not in targets:
            raise Bad(f"{entry.name}: its payload is gone and no entry says so")
    names = {(entry.device, entry.seq, entry.hash) for entry in entries}
    for data in receipts:
        one = unpack(RECEIPT, data)
        name = f"receipt for device {one['device'].hex()} seq {one['seq']}"
        if one["shop"] != entries[0].shop or one["hub"] not in members.hubs or not verify(
                one["hub"], sha(b"jambline receipt 1", data[:145]), one["signature"]):
            raise Bad(f"{name}: of no hub of this shop")
        if (one["device"], one["seq"], one["hash"]) not in names:
            raise Bad(f"{name}: the entry that it names is not here")
    return heads


def main():
    words = argparse.ArgumentParser(description="Checks a Jambline log or an exported shop.")
    words.add_argument("--chain-only", action="store_true", help="leave out signatures")
    words.add_argument("--shop", metavar="FINGERPRINT", help="the shop that it has to be")
    words.add_argument("folder", type=pathlib.Path,
                       help="with log.db in it, or an exported shop")
    given = words.parse_args()
    try:
        file = given.folder / "log.db"
        entries, receipts = read_database(file) if file.exists() else read_exported(given.folder)
        if not entries:
            raise OSError("no entries there")
        shop = entries[0].shop.hex()
        if given.shop and shop != "".join(c for c in given.shop.lower() if c not in "- :"):
            raise Bad("its fingerprint is not the one given: this is another shop")
        with tempfile.TemporaryDirectory() as scratch:
            heads = check(entries, receipts, verifier(given.chain_only, scratch))
    except (Bad, sqlite3.DatabaseError) as bad:
        print(f"BAD {bad}")
        return 1
    except OSError as refused:
        print(f"cannot read: {refused}", file=sys.stderr)
        return 2
    print("shop", "-".join(shop[at:at + 4] for at in range(0, 32, 4)))
    for device, (seq, _) in sorted(heads.items()):
        print(f"device {device.hex()}: proven to entry {seq}, nothing can be said about later ones")
    print(f"good: {len(entries)} entries, {len(receipts)} receipts",
          "(signatures not checked)" if given.chain_only else "")
    return 0


if __name__ == "__main__":
    sys.exit(main())
