#!/usr/bin/env python3
"""Checks the evidence bundle of a job without Jambline; written from FORMAT.md and BUNDLE.md alone.
Ends with 0 when all is in order, 1 with the first bad thing, 2 when it could not be read. Needs the
openssl command (3.0)."""
import argparse
import concurrent.futures
import hashlib
import json
import pathlib
import re
import struct
import subprocess
import sys
import tempfile
import threading
import zipfile
import zlib

HEADER = (">B16s16sQ32s16sQqhB16sQ16s16sBBHHI32s",
          "format shop device seq prev_hash subject hlc wall_ms offset_min clock_flags boot "
          "boottime_ms person action part parts kind schema payload_bytes payload_hash".split())
RECEIPT = (">B16s32s16s16sQ32sQQq64s", "format shop hub epoch device seq hash hub_seq_first "
           "hub_seq_last received_ms signature".split())
FOUNDED, ADMITTED, REVOKED, HUB, ERASED, PICTURE = 1, 2, 3, 4, 5, 200
WORDS = {FOUNDED: (("founder_key", 32), ("nonce", 16), ("device_name", str)),
         ADMITTED: (("device_key", 32), ("device_name", str), ("manager", bool)),
         REVOKED: (("device", 16), ("cut_seq", int), ("cut_hash", 32)),
         HUB: (("hub_key", 32), ("hub_name", str)), ERASED: (("target", 32), ("reason", str))}
NONE = bytes(32)
NO_JOB = bytes(16)
DER_BEFORE_KEY = bytes.fromhex("302a300506032b6570032100")  # RFC 8410
MEMBER = re.compile(r"(receipts)|chain/([0-9a-f]{32})|pictures/([0-9a-f]{64})(?:\.[a-z]{1,4})?"
                    r"|report\.txt|FORMAT\.md|BUNDLE\.md|verify_bundle\.py")
MIB = 2**20


class Bad(Exception):
    pass


class Unreadable(Exception):
    pass


def sha(*parts):
    return hashlib.sha256(b"".join(parts)).digest()


def entry_name(device, seq):
    return f"device {device.hex()}, seq {seq}"


def fits(value, what):
    if isinstance(what, int):
        return len(value) == 2 * what and len(bytes.fromhex(value)) == what
    return type(value) is what and (what is not int or 0 <= value < 2**63)


def read_json(payload):
    """An object whose first member of a name counts; anything else is nothing."""
    try:
        found = json.loads(payload, object_pairs_hook=lambda pairs: dict(reversed(pairs)))
        return found if isinstance(found, dict) else {}
    except (ValueError, RecursionError):
        return {}


class Record:
    KEPT = "shop device seq prev_hash subject kind payload_hash".split()
    __slots__ = KEPT + ("hash signature whole stays_whole words salt payload erased "
                        "lets_in").split()
    same = {}  # there may be a million records of a few devices

    def __init__(self, data):
        if len(data) not in (206, 270) and len(data) < 287:
            raise ValueError
        read = dict(zip(HEADER[1], struct.unpack(HEADER[0], data[:206])))
        if (read["format"] != 1 or not 1 <= read["seq"] < 2**63 or read["payload_bytes"] > 65536
                or not 1 <= read["part"] <= read["parts"]):
            raise ValueError
        for name in self.KEPT:
            value = read[name]
            setattr(self, name, self.same.setdefault(value, value) if name in
                    ("shop", "device", "subject") else value)
        self.hash = sha(b"jambline entry 1", data[:206])
        self.signature = data[206:270]
        self.whole = len(data) >= 287
        self.stays_whole = 1 <= self.kind <= ERASED
        self.words = None
        if not self.whole:
            return
        self.words = {}
        self.salt, self.payload, self.erased = data[271:287], data[287:], data[270] == 1
        if (data[270] > 1 or self.erased and any(self.salt)
                or len(self.payload) != (0 if self.erased else read["payload_bytes"])):
            raise ValueError
        if self.stays_whole and not self.payload_is_other():
            found = read_json(self.payload)
            try:
                if all(fits(found[name], what) for name, what in WORDS[self.kind]):
                    self.words = found
            except (ValueError, TypeError, KeyError):
                pass  # such a claim does not count

    def payload_is_other(self):
        return self.erased or self.payload_hash != sha(b"jambline payload 1", self.salt,
                                                       self.payload)

    def key(self, member):
        return bytes.fromhex(self.words.get(member, ""))

    def picture(self):
        facts = read_json(self.payload).get("facts")
        file = facts.get("file") if isinstance(facts, dict) else None
        if isinstance(file, str) and re.fullmatch("[0-9a-fA-F]{64}", file) and int(file, 16):
            return bytes.fromhex(file)
        return None


class Signatures:
    """Each is tried once by the openssl command, several at a time."""

    def __init__(self, scratch):
        self.scratch, self.known, self.local = pathlib.Path(scratch), {}, threading.local()
        self.pool = concurrent.futures.ThreadPoolExecutor(4)

    def try_one(self, key, message, signature):
        if not hasattr(self.local, "files"):
            stem = self.scratch / str(threading.get_ident())
            self.local.files = [stem.with_suffix(end) for end in (".key", ".message", ".signature")]
        files = self.local.files
        for file, data in zip(files, (DER_BEFORE_KEY + key, message, signature)):
            file.write_bytes(data)
        return subprocess.run(
            ["openssl", "pkeyutl", "-verify", "-pubin", "-keyform", "DER", "-inkey", files[0],
             "-rawin", "-in", files[1], "-sigfile", files[2]], stdout=subprocess.DEVNULL,
            stderr=subprocess.DEVNULL, check=False).returncode == 0

    def soon(self, *case):
        if case not in self.known:
            self.known[case] = self.pool.submit(self.try_one, *case)

    def verify(self, *case):
        self.soon(*case)
        return self.known[case].result()

    def __enter__(self):
        return self

    def __exit__(self, *_):  # nothing is written into scratch afterwards
        self.pool.shutdown(cancel_futures=True)


class Members:
    """FORMAT.md section 5: who belongs, from the claims that count."""

    def __init__(self, records, verify):
        self.keys, claims, self.first_links, self.cut, self.hubs = {}, {}, {}, {}, set()
        self.shop = None
        for one in records:
            key = one.key("founder_key")
            if one.kind in (ADMITTED, REVOKED, HUB) and one.words:
                claims[one.hash] = one
            elif (one.kind == FOUNDED and one.words and one.seq == 1 and one.prev_hash == NONE
                  and sha(key)[:16] == one.device and verify(key, one.hash, one.signature)
                  and sha(b"jambline shop 1", key, one.key("nonce"))[:16] == one.shop):
                self.keys[one.device], self.shop = key, self.shop or one.shop
                self.first_links[one.device] = {NONE}
        self.founders = set(self.keys)
        for claim in claims.values():
            claim.lets_in = sha(claim.key("device_key"))[:16] if claim.kind == ADMITTED else None
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


def read_members(file):
    """Name and bytes; read by hand, since nothing is compressed and a wrong checksum is the last
    thing to say."""
    try:
        with zipfile.ZipFile(file) as archive, open(file, "rb") as raw:
            infos, room = archive.infolist(), file.stat().st_size
            if len(infos) > 20000 or sum(info.compress_size for info in infos) > room:
                raise Unreadable("its contents are more than a bundle has")
            chains, pictures, rest, sums, names = {}, {}, {}, [], {}
            for info in infos:
                match = MEMBER.fullmatch(info.filename)
                if not match:
                    name = re.sub("[^ -~]", "?", info.filename)[:100]
                    raise Bad(f"member {name}: nothing of that name belongs in a bundle")
                if info.compress_type or info.flag_bits & 1 or info.file_size != info.compress_size:
                    raise Bad(f"member {info.filename}: it is compressed or encrypted")
                most = 4096 if match[2] else 64 if match[1] or match[3] else 16
                if info.file_size > most * MIB:
                    raise Bad(f"member {info.filename}: it is too long")
                raw.seek(info.header_offset)
                local = raw.read(30)
                if len(local) != 30 or local[:4] != b"PK\3\4":
                    raise Unreadable(f"{info.filename}: not where the ZIP says that it is")
                raw.seek(sum(struct.unpack("<HH", local[26:30])), 1)
                data = raw.read(info.file_size)
                if len(data) != info.file_size:
                    raise Unreadable("cut short")
                kind = chains if match[2] else pictures if match[3] else rest
                name = bytes.fromhex(match[2] or match[3]) if kind is not rest else info.filename
                if name in kind:
                    raise Bad(f"member {info.filename}: it is there twice")
                kind[name], names[name] = data, info.filename
                if zlib.crc32(data) != info.CRC:
                    sums.append(info.filename)
            return chains, pictures, rest, sums, names
    except (zipfile.BadZipFile, ValueError, OSError, NotImplementedError, struct.error) as error:
        raise Unreadable(str(error) or "not a ZIP") from error


def read_chain(data):
    """The records, with None in the place of what is none and ends the chain."""
    out, at = [], 0
    while at < len(data):
        end = at + 4 + int.from_bytes(data[at:at + 4], "big")
        try:
            if end > len(data) or end - at > 4 + 287 + 65536:
                raise ValueError
            out.append(Record(data[at + 4:end]))
        except (ValueError, struct.error):
            return out + [None]
        at = end
    return out


class Bundle:
    def __init__(self, file, signatures):
        self.chains, self.pictures, rest, self.sums, self.names = read_members(file)
        self.receipts = rest.get("receipts", b"")
        self.verify, self.heads, self.job, self.shop = signatures.verify, [], None, None
        self.named, self.erased, self.targets, self.hashes = {}, [], set(), {}
        self.count = dict.fromkeys(("entries", "erased", "others", "bare", "cut", "receipts",
                                    "pictures"), 0)
        self.records = {device: read_chain(self.chains[device]) for device in sorted(self.chains)}
        whole = [one for chain in self.records.values() for one in chain if one and one.whole]
        claims = [one for one in whole if one.kind <= HUB and one.stays_whole]
        keys = [one.key(key) for one in claims for key in ("founder_key", "device_key")]
        keys = {sha(key)[:16]: key for key in keys if key}
        for chain in self.records.values():
            for one in chain:
                if one and one.signature and one.device in keys:
                    signatures.soon(keys[one.device], one.hash, one.signature)
        self.members = Members(claims, signatures.verify)
        self.shop = self.members.shop
        order, there = [], {NONE}
        left = dict(self.records)
        jobs = [one.subject for one in whole if not one.stays_whole and one.subject != NO_JOB]
        while left:
            device = next((device for device, chain in left.items() if not chain or not chain[0]
                           or chain[0].kind == FOUNDED or chain[0].seq != 1
                           or chain[0].prev_hash in there),
                          next(iter(left)))
            order.append(device)
            there |= {one.hash for one in left.pop(device) if one and one.whole
                      and one.kind == ADMITTED}
        self.job = jobs[0] if jobs else None
        self.records = {device: self.records[device] for device in order}

    def check(self, shop):
        for device, chain in self.records.items():
            self.check_chain(device, chain)
        for device in sorted(set(self.members.first_links) - set(self.records)):
            self.heads.append((device, 0))
        if not self.job:
            raise Bad("there are no entries in it" if not self.chains
                      else "no entry of a job is whole in it")
        for one in self.erased:
            if one.hash not in self.targets:
                raise Bad(f"{entry_name(one.device, one.seq)}: its payload is gone and no entry "
                          "says so")
        self.check_receipts()
        for picture, by in sorted(self.named.items()):
            name = f"picture {picture.hex()}, {entry_name(*by)}"
            if picture not in self.pictures:
                raise Bad(f"{name}: it is not here")
            if sha(self.pictures[picture]) != picture:
                raise Bad(f"{name}: its bytes are other ones")
            self.count["pictures"] += 1
        for picture in sorted(set(self.pictures) - set(self.named)):
            raise Bad(f"member {self.names[picture]}: no entry of the job names it")
        for name in self.sums:
            raise Bad(f"member {name}: the ZIP's own checksum does not fit")
        if shop and shop != self.shop.hex():
            raise Bad("its fingerprint is not the one given: this is another shop")

    def check_chain(self, device, chain):
        proven = 0
        try:
            if not chain:
                raise Bad(f"member chain/{device.hex()}: there is nothing in it")
            for at, one in enumerate(chain):
                after = chain[at + 1] if at + 1 < len(chain) else None
                wrong = self.wrong_with(device, at + 1, one, chain[at - 1] if at else None, after)
                if not wrong and not one.signature and at + 1 == len(chain):
                    wrong = "it is the last one here and has no signature"
                if wrong:
                    seq, cause = wrong if isinstance(wrong, tuple) else (at + 1, wrong)
                    raise Bad(f"{entry_name(device, seq)}: {cause}")
                proven = at + 1 if one.signature else proven
                self.take(one)
        finally:
            self.heads.append((device, proven))

    def wrong_with(self, device, seq, one, before, after):
        if not one:
            return "its bytes are no entry and no header"
        if one.device != device:
            return "another device's entry stands in its place"
        if one.seq != seq:
            return "it is not here"
        if self.shop and one.shop != self.shop:
            return "it is of another shop"
        if not one.whole and one.stays_whole:
            return "only its header is here, and its kind has to be whole"
        if not one.whole and one.subject != NO_JOB and one.subject == self.job:
            return "it is of this job and only its header is here"
        if one.whole and one.erased and one.stays_whole:
            return "its payload may not be missing"
        if one.whole and not one.erased and one.payload_is_other():
            return "its payload is another one"
        key = self.members.keys.get(device) if device in self.members.first_links else None
        signed = one.signature and key and self.verify(key, one.hash, one.signature)
        if not before and one.prev_hash not in self.members.first_links.get(device, ()):
            return "it does not follow from its device's admission"
        if before and one.prev_hash != before.hash:
            if signed or not one.signature and not before.signature and (
                    after and after.prev_hash == one.hash):
                return seq - 1, "the entry after it names another one"
            return "it does not name the entry before it"
        if one.signature and not signed:
            return "its signature does not verify"
        cut = self.members.cut.get(device, (0, NONE))
        if seq == cut[0] and one.hash != cut[1]:
            return "another one stood where its device was cut off"
        if one.whole and not one.stays_whole and one.subject not in (NO_JOB, self.job):
            return "it is whole and of another job"
        return None

    def take(self, one):
        self.hashes[one.device, one.seq] = one.hash
        of_job = one.subject == self.job and not one.stays_whole
        if not one.whole:
            self.count["bare"] += 1
            return
        self.count["entries" if of_job else "others"] += 1
        if one.kind == ERASED:
            self.targets.add(one.key("target"))
        if of_job and one.seq > self.members.cut.get(one.device, (2**63,))[0]:
            self.count["cut"] += 1
        if one.erased:
            self.count["erased"] += 1
            self.erased.append(one)
        elif of_job and one.kind == PICTURE and one.picture():
            self.named.setdefault(one.picture(), (one.device, one.seq))

    def check_receipts(self):
        for at in range(0, len(self.receipts), 209):
            data, place = self.receipts[at:at + 209], at // 209 + 1
            if len(data) != 209 or data[0] != 1:
                raise Bad(f"receipt {place}: it is of no hub of this shop, or was changed")
            one = dict(zip(RECEIPT[1], struct.unpack(RECEIPT[0], data)))
            name = f"receipt {place}, {entry_name(one['device'], one['seq'])}"
            if one["shop"] != self.shop or one["hub"] not in self.members.hubs or not self.verify(
                    one["hub"], sha(b"jambline receipt 1", data[:145]), one["signature"]):
                raise Bad(f"{name}: it is of no hub of this shop, or was changed")
            if self.hashes.get((one["device"], one["seq"])) != one["hash"]:
                raise Bad(f"{name}: the entry that it names is not here")
            self.count["receipts"] += 1

    def lines(self):
        shop = self.shop.hex() if self.shop else ""
        if shop:
            yield "shop   " + "-".join(shop[at:at + 4] for at in range(0, 32, 4))
        if self.job:
            yield f"job    {self.job.hex()}"
        for device, seq in self.heads:
            yield f"device {device.hex()}: " + (
                f"proven up to entry {seq}, nothing can be said about later ones" if seq
                else "nothing of it is proven")
        yield ("{entries} entries of the job, {erased} of them with erased payload; {others} of the "
               "shop, {bare} bare headers, {receipts} receipts, {pictures} pictures").format(
                   **self.count)
        if self.count["cut"]:
            yield f"{self.count['cut']} of the job came after their device's cut and do not count"
        yield "report.txt, FORMAT.md, BUNDLE.md and verify_bundle.py are no evidence"


def check_file(file, shop, signatures):
    """The exit code and the lines to print."""
    lines = []
    try:
        bundle = Bundle(file, signatures)
        try:
            bundle.check(shop)
        finally:
            lines = list(bundle.lines())
    except Bad as bad:
        return 1, lines + [f"BAD    {bad}"]
    except Unreadable as refused:
        return 2, [f"cannot read {file}: {refused}"]
    return 0, lines + ["good"]


def main():
    words = argparse.ArgumentParser(description="Checks the evidence bundle of a job.")
    words.add_argument("--shop", metavar="FINGERPRINT", help="the shop that it has to be")
    words.add_argument("bundle", type=pathlib.Path, help="the ZIP")
    given = words.parse_args()
    shop = given.shop and "".join(sign for sign in given.shop.lower() if sign not in "- :")
    with tempfile.TemporaryDirectory() as scratch:
        with Signatures(scratch) as signatures:
            code, lines = check_file(given.bundle, shop, signatures)
    print("\n".join(lines), file=sys.stderr if code == 2 else sys.stdout)
    return code


if __name__ == "__main__":
    sys.exit(main())
