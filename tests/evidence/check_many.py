#!/usr/bin/env python3
"""The two stand-alone readers over many files in one process, each signature tried once.

Usage: check_many.py ROOT SCRATCH < LINES; a line is "bundle FILE" or "folder FOLDER". For each the exit code
and what would be printed, ended by a line "." alone.
"""
import importlib.util
import pathlib
import sqlite3
import sys
import tempfile


def load(path):
    spec = importlib.util.spec_from_file_location(path.stem, path)
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


def check_folder(reader, folder, verify):
    try:
        file = folder / "log.db"
        entries, receipts = (reader.read_database(file) if file.exists()
                             else reader.read_exported(folder))
        reader.check(entries, receipts, verify)
    except (reader.Bad, sqlite3.DatabaseError) as bad:
        return 1, [f"BAD {bad}"]
    return 0, ["good"]


def main(root):
    sys.dont_write_bytecode = True
    reader = load(root / "src/seal/read_jambline.py")
    bundles = load(root / "src/evidence/verify_bundle.py")
    with (tempfile.TemporaryDirectory(dir=sys.argv[2]) as scratch,
          bundles.Signatures(scratch) as signatures):
        for line in sys.stdin:
            what, path = line.rstrip("\n").split(" ", 1)
            if what == "bundle":
                code, lines = bundles.check_file(pathlib.Path(path), None, signatures)
            else:
                code, lines = check_folder(reader, pathlib.Path(path), signatures.verify)
            print(code, *lines, ".", sep="\n")


main(pathlib.Path(sys.argv[1]))
