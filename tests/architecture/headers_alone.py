#!/usr/bin/env python3
"""The list of headers that the build compiles alone holds every header of src/ and qml/.

Usage: headers_alone.py ROOT LIST   (LIST: one path below ROOT a line, written by CMake)
"""
import sys

import tree


def main(root, list_file):
    complaints = tree.Complaints()
    with open(list_file, encoding="utf-8") as file:
        listed = set(file.read().split())
    there = tree.files(root, ["src", "qml"], (".h",))
    for path in there:
        if path not in listed:
            complaints.add(path, 0, "is not compiled alone")
    for path in sorted(listed - set(there)):
        complaints.add(path, 0, "is compiled alone but is not there")
    complaints.end(len(there))


main(sys.argv[1], sys.argv[2])
