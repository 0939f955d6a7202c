#!/usr/bin/env python3
"""The log is the only write: who may change its tables, open it to write or call what writes.

Usage: truth_rules.py ROOT
"""
import re
import sys

import tree

TABLES = r"(entries|erasures|receipts|cursors|about)"
CHANGES = re.compile(r"\b(INSERT\s+(OR\s+\w+\s+)?INTO|REPLACE\s+INTO|UPDATE(\s+OR\s+\w+)?|DELETE\s+FROM|"
                     r"DROP\s+\w+(\s+IF\s+EXISTS)?|ALTER\s+TABLE)\s+" + TABLES + r"\w*\b", re.I)
OPENS = re.compile(r"\bOpenMode::Write\b")
WRITES = re.compile(r"(\.|->)\s*(found_shop|erase_payload|add_page|say_again)\s*\(|\blog_?\s*(\.|->)\s*(append|add)\s*\(")
LOG = "src/log/"
# A hub's copy of a shop has tables of its own.
TABLE_OWNERS = (LOG, "src/hub/shop_file", "src/hub/shop_schema")
# The engine decides and appends; a restore, a folder that joins or moves to a new key and the demo
# generator write before there is an engine.
WRITERS = (LOG, "src/engine/engine.cpp", "src/engine/engine_acts.cpp", "src/engine/engine_arrivals.cpp",
           "src/engine/erase.cpp", "src/engine/restore.cpp", "src/engine/work_again.cpp",
           "src/exchange/exchange.cpp", "src/exchange/new_key.cpp",
           "src/app/demo/demo_shop.cpp")


def main(root):
    complaints = tree.Complaints()
    paths = tree.files(root, ["src", "qml"], (".h", ".cpp", ".qml", ".js"))
    for path in paths:
        text = tree.without_comments(tree.read(root, path))
        if not path.startswith(TABLE_OWNERS):
            for match in CHANGES.finditer(text):
                complaints.add(path, tree.line_of(text, match.start()), f"{match.group()}: only the log changes its tables")
        if not path.startswith(WRITERS):
            for pattern in (OPENS, WRITES):
                for match in pattern.finditer(text):
                    complaints.add(path, tree.line_of(text, match.start()),
                                   f"{match.group()}: only the engine writes to the log")
    complaints.end(len(paths))


main(sys.argv[1])
