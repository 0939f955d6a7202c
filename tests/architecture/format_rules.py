#!/usr/bin/env python3
"""All C++ is as clang-format 14 writes it. With --fix it is rewritten.

Usage: format_rules.py ROOT [--fix]
"""
import os
import subprocess
import sys

import tree


def main(root, fix):
    paths = tree.files(root, ["src", "qml", "tests"], (".h", ".cpp"))
    complaints = tree.Complaints()
    for path in paths:
        command = ["clang-format-14", "-style=file", os.path.join(root, path)]
        if fix:
            subprocess.run([*command, "-i"], check=True)
            continue
        formatted = subprocess.run(command, capture_output=True, check=True).stdout
        with open(os.path.join(root, path), "rb") as file:
            if file.read() != formatted:
                complaints.add(path, 0, "not formatted; tests/architecture/format_rules.py . --fix")
    complaints.end(len(paths))


main(sys.argv[1], "--fix" in sys.argv)
