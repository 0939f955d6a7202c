#!/usr/bin/env python3
"""Arrows only as in layers.txt: every #include and every link list below src/ is held against it.

Usage: include_rules.py ROOT
"""
import os
import re
import sys

import tree

INCLUDE = re.compile(r'^[ \t]*#[ \t]*include[ \t]*([<"])([^>"]+)[>"]', re.M)
STANDARD = re.compile(r"^[a-z_]+$")
SYSTEM = re.compile(r"^(sys/|linux/|netinet/|arpa/)|^(unistd|fcntl|dirent|signal|poll|spawn|netdb|pthread|errno|time|ifaddrs|net/if)\.h$")
QT = re.compile(r"^Q[A-Za-z]+(/|$)|^q[a-z]+\.h$")
# clang 14 cannot parse the first, GCC 12 has not got the second.
REFUSED = {"ranges": "clang 14 cannot parse it", "format": "GCC 12 has not got it"}
REFUSED_CODE = [
    (re.compile(r"\bchrono::(zoned_time|current_zone|locate_zone|get_tzdb)\b"), "chrono zones are not in GCC 12"),
    (re.compile(r"\b(views::|ranges::views\b)"), "clang 14 cannot parse range views"),
]
# Nothing below app asks for the time, a folder or an id by itself.
ASKS = re.compile(r"\bsystem_clock::now\b|\bQDateTime::current\w+|\brandom_device\b|\bQUuid::createUuid\b"
                  r"|\bQStandardPaths\b|\bgetenv\b|\btime\((nullptr|NULL|0)\)|\btemp_directory_path\b"
                  r"|\bcurrent_path\b")
MAY_ASK = re.compile(r"^src/(app/|base/(clock|random)\.)")


def matches(name, allowed):
    return any(a == "any" or name == a or (a.endswith("/") and name.startswith(a)) for a in allowed)


def check_include(root, layers, path, folder, kind, name):
    """What is wrong with one #include of a file in a folder of src/, or None."""
    needs_qt, inner, outside, body = layers.rows[folder]
    if kind == '"':
        if name.endswith(".moc"):
            return None if needs_qt else f"{name}: {folder} is Qt-free"
        above = name.split("/")[0]
        if "/" not in name or ".." in name.split("/"):
            return f'"{name}": write the folder, as in "base/error.h"'
        if above == folder or above in inner or "any" in inner:
            return None if os.path.exists(os.path.join(root, "src", name)) else f'"{name}" is not there'
        return f'"{name}": {folder} may not include {above}'
    if name in REFUSED:
        return f"<{name}>: {REFUSED[name]}"
    if STANDARD.match(name) or SYSTEM.match(name):
        return None
    if QT.match(name):
        return None if needs_qt else f"<{name}>: {folder} is Qt-free"
    if matches(name, outside) or (path.endswith(".cpp") and matches(name, body)):
        return None
    if matches(name, body):
        return f"<{name}>: {folder} may include it in .cpp files only"
    return f"<{name}>: {folder} may not include it"


def check_links(layers, path, text, complaints):
    for call in re.finditer(r"(jambline_folder|target_link_libraries)\s*\(([^)]*)\)", text):
        words = re.sub(r"#[^\n]*", "", call.group(2)).split()
        folder = words[0].removeprefix("jambline_") if words else ""
        if folder not in layers.rows:
            continue
        needs_qt, inner, outside, body = layers.rows[folder]
        line = tree.line_of(text, call.start())
        for word in words[1:]:
            if word in ("LINKS", "PRIVATE_LINKS", "PUBLIC", "PRIVATE", "INTERFACE", "QT", "Threads::Threads"):
                continue
            if word.startswith("jambline_"):
                allowed = "any" in inner or word.removeprefix("jambline_") in inner
            elif word.startswith("Qt6::"):
                allowed = needs_qt
            elif word in layers.links:
                allowed = matches(layers.links[word], outside + body)
            else:
                allowed = "any" in outside
            if not allowed:
                complaints.add(path, line, f"{folder} may not link {word}")


def main(root):
    layers = tree.Layers(os.path.join(root, "tests/architecture/layers.txt"))
    complaints = tree.Complaints()
    if layers.cycle():
        complaints.add("tests/architecture/layers.txt", 0, f"{layers.cycle()} includes itself in the end")
    paths = tree.files(root, ["src"], (".h", ".cpp"))
    for path in paths:
        folder = path.split("/")[1]
        if folder not in layers.rows:
            complaints.add(path, 0, f"{folder} has no row in layers.txt")
            continue
        text = tree.without_comments(tree.read(root, path))
        for include in INCLUDE.finditer(text):
            wrong = check_include(root, layers, path, folder, *include.groups())
            if wrong:
                complaints.add(path, tree.line_of(text, include.start()), wrong)
        for pattern, why in REFUSED_CODE:
            for use in pattern.finditer(text):
                complaints.add(path, tree.line_of(text, use.start()), f"{use.group()}: {why}")
        if not MAY_ASK.match(path):
            for use in ASKS.finditer(text):
                complaints.add(path, tree.line_of(text, use.start()),
                               f"{use.group()}: only app asks for the time, a folder or an id")
    for path in tree.files(root, ["src"], ("CMakeLists.txt",)):
        check_links(layers, path, tree.read(root, path), complaints)
    complaints.end(len(paths))


main(sys.argv[1])
