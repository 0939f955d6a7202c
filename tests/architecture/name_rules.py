#!/usr/bin/env python3
"""Names of anonymous namespaces and of test suites are used once in a folder: a first whole build
takes several of its sources as one.

A folder that says `using namespace X` names no type of its own as one of the folder src/X is named:
among several sources the other one would be meant.

Usage: name_rules.py ROOT
"""
import collections
import os
import re
import sys

import tree

# It ends with a comment, blanked here, but where one line is all of it.
SPACE = re.compile(r"^namespace \{\n(?:([^\n]*\n)\}$|(.*?)^\} +$)", re.S | re.M)
STRINGS = re.compile(r'R"(\w*)\(.*?\)\1"|"(?:\\.|[^"\\\n])*"', re.S)
TYPE = re.compile(r"(?:template ?<.*> )?(?:struct|class|enum class|enum|union) (\w+)")
ALIAS = re.compile(r"(?:using|namespace) (\w+) =")
FUNCTION = re.compile(r"(\w+) ?\(((?:[^()]|\([^()]*\))*)\)(?: const| noexcept)?$")
VALUE = re.compile(r"\b([A-Za-z_]\w*)(?:\[[^\]]*\])*(?: =.*)?$")
PUBLIC = re.compile(r"^(?:struct|class|enum class) (\w+)", re.M)
OPENED = re.compile(r"^ *using namespace (\w+);", re.M)
SUITE = re.compile(r"^(TEST|TEST_F|TEST_P|RC_GTEST_PROP|RC_GTEST_FIXTURE_PROP)\((\w+),", re.M)

APART = ("tests/bench/", "tests/architecture/")  # always taken file by file


def statements(body):
    """The statements of a body without what stands in their braces."""
    out, depth = [], 0
    for part in re.split(r"([{}])", body):
        if part == "{":
            depth += 1
            said = re.split(r";|\{\}", "".join(out))[-1]
            if depth == 1 and said.count("(") == said.count(")"):
                out.append("{}")
        elif part == "}":
            depth -= 1
        elif depth == 0:
            out.append(part)
    return [" ".join(one.split()) for one in re.split(r";|\{\}", "".join(out))]


def name_of(statement):
    """The name that a statement declares, with the types of a function's parameters: others of the
    same name stand beside it."""
    if statement.startswith(("TEST", "RC_GTEST")) or statement.startswith("using ") and "=" not in statement:
        return None
    for pattern in (TYPE, ALIAS):
        if match := pattern.match(statement):
            return match.group(1)
    match = FUNCTION.search(statement)
    if match and "=" not in statement[:match.start(2)]:
        types = [re.sub(r"( = .*)| ?\b\w+$", "", one.strip()) for one in re.split(r",(?![^<]*>)", match.group(2))]
        return f"{match.group(1)}({', '.join(types)})"
    match = VALUE.search(statement)
    return match.group(1) if match else None


def main(root):
    complaints = tree.Complaints()
    paths = [one for one in tree.files(root, ["src", "tests"], (".cpp",)) if not one.startswith(APART)]
    folders = collections.defaultdict(lambda: collections.defaultdict(dict))
    suites = collections.defaultdict(lambda: collections.defaultdict(set))
    opened = collections.defaultdict(set)
    for path in paths:
        text = re.sub(r"(?<=\d)'(?=\d)", "", tree.read(root, path))
        text = STRINGS.sub('""', tree.without_comments(text))
        folder = os.path.dirname(path)
        opened[folder].update(one for one in OPENED.findall(text) if os.path.isdir(os.path.join(root, "src", one)))
        for space in SPACE.finditer(text):
            for statement in filter(None, statements(space.group(1) or space.group(2))):
                if name := name_of(statement):
                    alias = statement if ALIAS.match(statement) else path  # one and the same may stand twice
                    folders[folder][name][alias] = path
        for macro, suite in SUITE.findall(text):
            suites[folder][suite].add((macro.startswith("TEST") and macro != "TEST", path))
    if not folders:
        complaints.add("src", 0, "no anonymous namespace was found")
    for folder, names in folders.items():
        for name, places in names.items():  # a value hides functions of its name
            for other in list(names):
                if other.startswith(name + "(") and set(names[other].values()) != set(places.values()):
                    complaints.add(max(places.values()), 1, f"{name} stands in {min(names[other].values())} as a function")
            if len(places) > 1:
                one, *others = sorted(places.values())
                for other in others:
                    complaints.add(other, 1, f"{name} stands in {one} too: a name of its own, or one place for both")
    for folder, spaces in opened.items():
        for space in spaces:
            for path in tree.files(root, [f"src/{space}"], (".h",)):
                for name in PUBLIC.findall(tree.without_comments(tree.read(root, path))):
                    if name in folders[folder]:
                        complaints.add(max(folders[folder][name].values()), 1, f"{name} is a name of {path}, whose namespace {folder} opens")
    for folder, names in suites.items():
        for suite, places in names.items():
            if len({fixture for fixture, _ in places}) > 1:
                complaints.add(max(places)[1], 1, f"{suite} is a suite with and without a fixture")
    complaints.end(len(paths))


if __name__ == "__main__":
    main(sys.argv[1])
