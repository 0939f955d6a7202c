#!/usr/bin/env python3
"""Every patch of tests/guards still fits the code and names the tests that have to notice it.

Usage: guard_rules.py ROOT
"""
import os
import subprocess
import sys

import tree


def main(root):
    complaints = tree.Complaints()
    paths = tree.files(root, ["tests/guards"], ".patch")
    for path in paths:
        with open(os.path.join(root, path), encoding="utf-8") as patch:
            if not patch.readline().startswith("# must fail: "):
                complaints.add(path, 1, "names no test")
        tried = subprocess.run(["git", "apply", "--check", os.path.join(root, path)], cwd=root,
                               capture_output=True, text=True)
        if tried.returncode != 0:
            complaints.add(path, 0, "no longer fits: " + tried.stderr.strip().replace("\n", "; "))
    complaints.end(len(paths))


main(sys.argv[1])
