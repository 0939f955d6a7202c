#!/usr/bin/env python3
"""How many values from outside are checked here, and from how many sources.

Usage: count.py FOLDER [--cmake]

A check is a row of a table, or a case that reads no table. Each table has a line "# Source: who;
what of it" in its head and is read by a case; a case without a table has "// Source:" above it. What
stands before the first ; is the source. Tables of inputs alone ("# Input") are not counted. Prints
the count, or what is missing and ends with 1. --cmake prints a test for ctest named by the count.
"""
import os
import re
import sys

CASE = re.compile(r"((?://[^\n]*\n)*)(?:TEST|TEST_F)\((\w+), (\w+)\) \{(.*?)\n\}", re.S)


def sources_of(lines, mark):
    return {line.split("Source:", 1)[1].split(";")[0].strip() for line in lines if line.startswith(mark + " Source:")}


def main(folder):
    wrong, sources, checks, read = [], set(), 0, set()
    cases = []
    for name in sorted(os.listdir(folder)):
        if not name.endswith("_test.cpp"):
            continue
        with open(os.path.join(folder, name)) as file:
            text = file.read()
        # A helper of the file may read a table for its cases.
        read |= set(re.findall(r'table\("(\w+\.csv)"\)', text))
        read |= {f"{start}{end}.csv" for start in re.findall(r'table\("(\w+_)" \+ name', text)
                 for end in re.findall(r'"(\w+)"', text)}
        helpers = re.findall(r"\n[\w:<>, ]+ (\w+)\([^;{}]*\) \{(?:(?!\n\}).)*?table\(", text, re.S)
        reads = re.compile(r"\btable\(" + "".join(rf"|\b{one}\(" for one in helpers if one != "TEST"))
        for comment, group, case, body in CASE.findall(text):
            if reads.search(body):
                continue
            found = sources_of(comment.splitlines(), "//")
            if not found:
                wrong.append(f"{name}: {group}.{case} reads no table and names no source")
            sources |= found
            cases.append(case)
    tables = [name for name in sorted(os.listdir(folder)) if name.endswith(".csv")]
    for name in tables:
        with open(os.path.join(folder, name)) as file:
            lines = file.read().splitlines()
        found = sources_of(lines, "#")
        if not found:
            wrong.append(f"{name}: no line '# Source: who; what of it'")
        if name not in read:
            wrong.append(f"{name}: no case reads it")
        sources |= found
        if not any(line.startswith("# Input") for line in lines):
            checks += len([line for line in lines if line and not line.startswith("#")]) - 1
    if wrong:
        print(*wrong, sep="\n", file=sys.stderr)
        return 1
    # What no one else has said is no source from outside.
    sources = {one for one in sources if not one.endswith(("no source", "own values"))}
    words = f"{checks + len(cases)} checks from {len(sources)} sources"
    if "--cmake" in sys.argv:
        print(words, end="")
    else:
        print(words, f"({len(tables)} tables, {len(cases)} cases without one)")
        print(*sorted(sources), sep="\n")
    return 0


sys.exit(main(sys.argv[1]))
