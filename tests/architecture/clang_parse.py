#!/usr/bin/env python3
"""Every Qt-free .cpp also parses with clang 14, two at a time.

Usage: clang_parse.py ROOT BUILD   (BUILD holds compile_commands.json)
"""
import concurrent.futures
import json
import os
import re
import shlex
import subprocess
import sys

import tree

TAKES_NEXT = ("-I", "-isystem", "-D")


def flags(command):
    """Defines, include folders and standard of a compile command."""
    kept, words = [], iter(shlex.split(command))
    for word in words:
        if word in TAKES_NEXT:
            kept += [word, next(words)]
        elif word.startswith(("-I", "-D", "-std=")) or word == "-isystem":
            kept.append(word)
    return kept


def parse(job):
    path, command, folder = job
    result = subprocess.run(["clang++-14", "-fsyntax-only", *flags(command), path], cwd=folder,
                            capture_output=True, text=True)
    return path, result.returncode, result.stderr


def main(root, build):
    root = os.path.realpath(root)
    layers = tree.Layers(os.path.join(root, "tests/architecture/layers.txt"))
    with open(os.path.join(build, "compile_commands.json"), encoding="utf-8") as file:
        commands = {os.path.realpath(c["file"]): c for c in json.load(file)}
    for batch in [c for c in commands if os.path.basename(c).startswith("unity_")]:
        with open(batch, encoding="utf-8") as file:
            for name in re.findall(r'^#include "(.+)"$', file.read(), re.M):
                commands[os.path.realpath(name)] = commands[batch]
    complaints, jobs = tree.Complaints(), []
    for path in tree.files(root, [f"src/{folder}" for folder in layers.qt_free()], (".cpp",)):
        known = commands.get(os.path.join(root, path))
        if known:
            jobs.append((os.path.join(root, path), known["command"], known["directory"]))
        else:
            complaints.add(path, 0, "belongs to no target")
    with concurrent.futures.ThreadPoolExecutor(2) as pool:
        for path, code, said in pool.map(parse, jobs):
            if code != 0:
                complaints.add(os.path.relpath(path, root), 0, "does not parse with clang 14\n" + said[:2000])
    complaints.end(len(jobs))


main(sys.argv[1], sys.argv[2])
