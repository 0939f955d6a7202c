#!/usr/bin/env python3
"""What stands on a screen: translated, in the shop's own words, in the theme's colours.

Usage: words_rules.py ROOT
"""
import os
import re
import sys

import tree

# Properties whose text a person sees or hears.
SEEN = re.compile(r"(?<![\w.])(Accessible\.name|Accessible\.description|text|title|label|caption|hint|"
                  r"placeholderText|happened|stands|actText|secondAct|details|secondLine|aside|emptyText|"
                  r"handleText|unitText|wrong|tail|name)\s*:(?!:)")
# Calls whose literals are no words of ours: translated ones, formats, keys.
NOT_WORDS = re.compile(r"\b(qsTr|qsTranslate|qsTrId|toLocale\w*|Qt\.format\w+|padStart|split|indexOf|"
                       r"includes|startsWith|endsWith|Qt\.resolvedUrl)\s*\(")
COMPARED = re.compile(r"""([=!]==?)\s*"[^"]*"|"[^"]*"\s*([=!]==?)|\[\s*"[^"]*"\s*\]|case\s+"[^"]*"\s*:""")
TRANSLATED = re.compile(r"\b(qsTr|tr|QT_TR_NOOP|translate|qsTranslate)\s*\(([^)]*)\)", re.S)
# Colours of cars are data of the job, not of the theme.
CAR_PAINTS = {"src/app/demo/invented.cpp", "src/screens/open_car_view_model.cpp"}
COLOUR = re.compile(r"""["']#[0-9A-Fa-f]{3,8}["']|\bQt\.(rgba|hsla|hsva)\s*\(|\bcolor\w*\s*:\s*"(?!transparent")[a-z]+\"""")


def expression(text, start):
    """The QML expression from start to its end: over brackets and unfinished lines."""
    depth, at = 0, start
    while at < len(text):
        token = tree.TOKEN.match(text, at)
        if token:
            at = token.end()
            continue
        sign = text[at]
        if sign in "([{":
            depth += 1
        elif sign in ")]}":
            if depth == 0:
                break
            depth -= 1
        elif depth == 0 and sign in ";,":
            break
        elif depth == 0 and sign == "\n":
            before, after = text[start:at].rstrip(), text[at:].lstrip()
            if not (before and before[-1] in "?:+&|=(") and not (after and after[0] in "?:+.&|"):
                if before:
                    break
        at += 1
    return text[start:at]


def without_calls(text, calls):
    """The expression without the named calls and all that is in their brackets."""
    while True:
        call = calls.search(text)
        if not call:
            return text
        depth, at = 1, call.end()
        while at < len(text) and depth:
            token = tree.TOKEN.match(text, at)
            if token:
                at = token.end()
                continue
            depth += {"(": 1, ")": -1}.get(text[at], 0)
            at += 1
        text = text[:call.start()] + text[at:]


def bare_words(name, value):
    """The literals with letters in an expression that no translation sees."""
    rest = COMPARED.sub(" ", without_calls(value, NOT_WORDS))
    words = [content for _, content in tree.literals(rest)
             if re.search(r"[^\W\d_]{2}|^[^\W\d_]$", re.sub(r"\\u[0-9a-fA-F]{4}|\\n|%\w+", "", content))]
    if name == "name":  # the name of a state or a key is no text
        words = [word for word in words if not re.fullmatch(r"[a-z][\w-]*", word)]
    return words


def check_qml(path, text, complaints):
    for match in SEEN.finditer(text):
        for word in bare_words(match.group(1), expression(text, match.end())):
            complaints.add(path, tree.line_of(text, match.start()),
                           f'{match.group(1)} holds "{word}" without qsTr')
    if not path.startswith("qml/Theme/"):
        for match in COLOUR.finditer(text):
            complaints.add(path, tree.line_of(text, match.start()),
                           f"{match.group()}: colours come from qml/Theme")


def main(root):
    complaints = tree.Complaints()
    with open(os.path.join(root, "tests/architecture/banned_words.txt"), encoding="utf-8") as file:
        banned = [line.strip() for line in file if line.strip() and not line.startswith("#")]
    pattern = re.compile(r"\b(" + "|".join(re.escape(word) for word in banned) + r")\b", re.I)
    paths = tree.files(root, ["qml", "src/screens", "src/app", "src/report"], (".qml", ".js", ".h", ".cpp"))
    for path in paths:
        text = tree.without_comments(tree.read(root, path))
        for offset, content in tree.literals(text):
            word = pattern.search(content)
            if word:
                complaints.add(path, tree.line_of(text, offset), f'"{word.group()}" may not stand on a screen')
        for call in TRANSLATED.finditer(text):
            if any("!" in content for _, content in tree.literals(call.group(2))):
                complaints.add(path, tree.line_of(text, call.start()), "an exclamation mark on a screen")
        if path.endswith(".qml") or (path.endswith(".js") and path.startswith("qml/")):
            check_qml(path, text, complaints)
        elif COLOUR.search(text) and path not in CAR_PAINTS:
            complaints.add(path, tree.line_of(text, COLOUR.search(text).start()), "colours come from qml/Theme")
    complaints.end(len(paths), 0)


main(sys.argv[1])
