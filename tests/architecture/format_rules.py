#!/usr/bin/env python3
"""All C++ is as clang-format 14 writes it. With --fix it is rewritten.

Usage: format_rules.py ROOT [--fix]
"""
import os
import subprocess
import sys

import tree

CLANG_FORMAT = ["clang-format-14", "-style=file"]


def not_formatted(root, paths, fix):
    """One process for many files: its start takes as long as a file."""
    found = []
    for i in range(0, len(paths), 100):
        files = [os.path.join(root, path) for path in paths[i:i + 100]]
        if fix:
            subprocess.run([*CLANG_FORMAT, "-i", *files], check=True)
            continue
        said = subprocess.run([*CLANG_FORMAT, "--dry-run", "-Werror", *files],
                              capture_output=True, text=True)
        bad = {line.split(":")[0] for line in said.stderr.splitlines()
               if "[-Wclang-format-violations]" in line}
        if said.returncode and not bad:
            sys.exit(said.stderr)
        found += sorted(os.path.relpath(file, root) for file in bad)
    return found


def main(root, fix):
    paths = tree.files(root, ["src", "qml", "tests"], (".h", ".cpp"))
    complaints = tree.Complaints()
    for path in not_formatted(root, paths, fix):
        complaints.add(path, 0, "not formatted; tests/architecture/format_rules.py . --fix")
    complaints.end(len(paths))


main(sys.argv[1], "--fix" in sys.argv)
