#!/usr/bin/env python3
"""Every header of src/ and qml/ is compiled alone: it comes first in the source of its own name, or
stands in the list of those that the build compiles. Each says #pragma once.

Usage: headers_alone.py ROOT LIST   (LIST: one path below ROOT a line, written by CMake)
"""
import os
import re
import sys

import tree

INCLUDE = re.compile(r'^\s*#\s*include\s*[<"]([^>"]+)[>"]', re.M)


def main(root, list_file):
    complaints = tree.Complaints()
    with open(list_file, encoding="utf-8") as file:
        listed = set(file.read().split())
    there = tree.files(root, ["src", "qml"], (".h",))
    for path in there:
        if not re.search(r"^#pragma once$", tree.read(root, path), re.M):
            complaints.add(path, 0, "does not say #pragma once")
        own = path[:-len(".h")] + ".cpp"
        if not os.path.exists(os.path.join(root, own)):
            if path not in listed:
                complaints.add(path, 0, "is not compiled alone")
            continue
        first = INCLUDE.search(tree.read(root, own))
        beside = os.path.dirname(path)
        if not first or path not in [os.path.join(place, first.group(1)) for place in ("src", beside)]:
            complaints.add(own, 0, "does not include its own header first")
    for path in sorted(listed - set(there)):
        complaints.add(path, 0, "is compiled alone but is not there")
    complaints.end(len(there))


main(sys.argv[1], sys.argv[2])
