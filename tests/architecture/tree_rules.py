#!/usr/bin/env python3
"""The tree itself: agreed top level, short files, nothing left for later, no machine's own paths.

Usage: tree_rules.py ROOT
"""
import os
import re
import sys

import tree

TOP = {"CMakeLists.txt", "CMakePresets.json", "README.md", "DEVELOPERS.md", "LICENSE",
       "qml", "src", "tests", "platform", "icons"}
MADE = {"build", "out"}  # never committed
MOST_LINES = {".h": 600, ".cpp": 600, ".qml": 350, ".js": 350}
LATER = re.compile(r"\b(X[X]X|T[O]DO|F[I]XME|H[A]CK)\b|\bGTEST[_]SKIP\b|\bQ[S]KIP\b|\bDISABLED[_]\w*"
                   r"|\bQEXPECT[_]FAIL\b|\bexpect[F]ail\s*\(|^\s*s[k]ip\s*\(", re.M)
PATHS = re.compile(r"(?<![\w.}])/(w[o]rk|h[o]me|r[o]ot|Us[e]rs)/\w|\.\./s[h]ared\b")
GOD = re.compile(r"\bsetContext(P)roperty\b|\bcontext[P]roperty\b")
TEXT = (".h", ".cpp", ".qml", ".js", ".py", ".txt", ".md", ".json", ".cmake", ".desktop", ".service", ".patch", ".svg")


def is_script(root, path):
    with open(os.path.join(root, path), "rb") as file:
        return file.read(2) == b"#!"


def main(root):
    complaints = tree.Complaints()
    for name in sorted(os.listdir(root)):
        if name not in TOP | MADE and not name.startswith("."):
            complaints.add(name, 0, "is no agreed entry of the top level")
    paths = tree.files(root, ["src", "qml", "tests", "platform", ".ci"], "")
    paths += [name for name in ("CMakeLists.txt", "CMakePresets.json", "README.md", "DEVELOPERS.md")
              if os.path.exists(os.path.join(root, name))]
    looked_at = 0
    for path in paths:
        ending = os.path.splitext(path)[1]
        if not path.endswith(TEXT) and not is_script(root, path):
            continue
        looked_at += 1
        text = tree.read(root, path)
        most = MOST_LINES.get(ending) if path.startswith(("src/", "qml/")) else None
        if most and text.count("\n") >= most:
            complaints.add(path, 0, f"{text.count(chr(10))} lines; it must stay under {most}")
        for pattern, why in ((LATER, "nothing is left for later, skipped or retried"),
                             (PATHS, "a path of one machine"),
                             (GOD, "no context properties")):
            for match in pattern.finditer(text):
                complaints.add(path, tree.line_of(text, match.start()), f"{match.group().strip()}: {why}")
    complaints.end(looked_at)


main(sys.argv[1])
