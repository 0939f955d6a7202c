#!/usr/bin/env python3
"""Every architecture rule is fed a bad sample and has to name it; a good sample passes them all."""
import os
import subprocess
import sys
import tempfile
import unittest

import tree

HERE = os.path.dirname(os.path.abspath(__file__))

GOOD = {
    "CMakeLists.txt": "project(x)\n",
    "src/base/error.h": "#pragma once\n#include <string>\n#include <tl/expected.hpp>\n",
    "src/base/json.cpp": '#include "base/error.h"\n#include <simdjson.h>\n// #include <QString>\nint one() { return 1; }\n',
    "src/base/clock.cpp": "auto t = std::chrono::system_clock::now();\n",
    "src/trade/sum.h": '#pragma once\n#include <Eigen/Core>\n#include "base/error.h"\n',
    "src/screens/floor.h": '#pragma once\n#include <QString>\n#include "base/error.h"\n',
    "src/trade/CMakeLists.txt": "jambline_folder(trade LINKS jambline_base Eigen3::Eigen)\n",
    "src/screens/CMakeLists.txt": "jambline_folder(screens LINKS jambline_base Qt6::Quick)\n",
    "qml/Theme/Theme.qml": 'QtObject { readonly property color ink: "#101010" }\n',
    "qml/Floor/Floor.qml": """// please, a comment may say what it likes!
Item {
    Accessible.name: qsTr("Floor, %1 cars").arg(count)
    state: "wide"
    component Row: Words {
        text: model.late ? qsTr("late")
                         : model.kind === "loose" ? qsTr("loose part") : model.words
    }
    Words { text: "–"; color: Theme.ink }
    Words { text: Qt.formatTime(when, "hh:mm") + " " + zone }
    Rectangle { color: "transparent" }
    states: State { name: "wide" }
    property var rows: [{ text: qsTr("Open") }, { text: cells["late"] }]
}
""",
}


def bad(rule, path, content, says, more=None):
    return rule, {path: content, **(more or {})}, says


SAMPLES = {
    "AnArrowUpwardsIsRefused": bad(
        "include_rules", "src/base/up.h", '#include "log/entry_log.h"\n', "base may not include log"),
    "AGuardThatNoLongerFitsIsRefused": bad(
        "guard_rules", "tests/guards/x.patch", "# must fail: x\n--- a/src/base/clock.cpp\n+++ b/src/base/clock.cpp\n@@ -1 +1 @@\n-auto t = 1;\n+auto t = 2;\n", "no longer fits"),
    "AGuardThatNamesNoTestIsRefused": bad(
        "guard_rules", "tests/guards/x.patch", "--- a\n", "names no test"),
    "ScreensMayNotSeeTheLog": bad(
        "include_rules", "src/screens/x.cpp", '#include "log/entry_log.h"\n', "screens may not include log"),
    "QtIsRefusedInQtFreeFolders": bad(
        "include_rules", "src/trade/x.h", "#include <QString>\n", "trade is Qt-free"),
    "QtModuleHeadersAreRefusedInQtFreeFolders": bad(
        "include_rules", "src/acts/x.cpp", "#include <QtCore/QString>\n", "acts is Qt-free"),
    "SimdjsonIsRefusedInHeadersOfBase": bad(
        "include_rules", "src/base/x.h", "#include <simdjson.h>\n", "in .cpp files only"),
    "DateIsRefusedOutsideBase": bad(
        "include_rules", "src/job/x.cpp", "#include <date/tz.h>\n", "job may not include it"),
    "SqliteIsRefusedOutsideLogAndShelf": bad(
        "include_rules", "src/engine/x.cpp", "#include <sqlite3.h>\n", "engine may not include it"),
    "AnIncludeWithoutItsFolderIsRefused": bad(
        "include_rules", "src/base/x.cpp", '#include "error.h"\n', "write the folder"),
    "AnIncludeOfNothingIsRefused": bad(
        "include_rules", "src/base/x.cpp", '#include "base/gone.h"\n', "is not there"),
    "RangesAreRefused": bad("include_rules", "src/base/x.cpp", "#include <ranges>\n", "clang 14"),
    "FormatIsRefused": bad("include_rules", "src/base/x.cpp", "#include <format>\n", "GCC 12"),
    "ChronoZonesAreRefused": bad(
        "include_rules", "src/base/x.cpp", "auto z = std::chrono::current_zone();\n", "chrono zones"),
    "AskingForTheTimeBelowAppIsRefused": bad(
        "include_rules", "src/acts/x.cpp", "auto t = std::chrono::system_clock::now();\n", "only app asks"),
    "AFolderWithoutARowIsRefused": bad("include_rules", "src/extra/x.h", "\n", "has no row"),
    "ALinkUpwardsIsRefused": bad(
        "include_rules", "src/base/CMakeLists.txt", "jambline_folder(base LINKS jambline_log)\n",
        "base may not link jambline_log"),
    "ALinkToQtIsRefusedInQtFreeFolders": bad(
        "include_rules", "src/acts/CMakeLists.txt", "jambline_folder(acts LINKS Qt6::Core)\n",
        "acts may not link Qt6::Core"),
    "ALinkAddedLaterIsRefusedToo": bad(
        "include_rules", "src/trade/CMakeLists.txt", "target_link_libraries(jambline_trade PRIVATE OpenSSL::Crypto)\n",
        "trade may not link OpenSSL::Crypto"),
    "ACycleInTheTableIsRefused": bad(
        "include_rules", "tests/architecture/layers.txt",
        "base | no | trade | tl/ | simdjson.h date/\ntrade | no | base | any | any\nscreens | yes | base | - | -\n"
        "link Eigen3::Eigen Eigen/\n", "includes itself"),

    "ANameOfTwoFilesIsRefused": bad(
        "name_rules", "src/base/x.cpp", "namespace {\nconstexpr int most = 1;\n}\n", "most stands in",
        {"src/base/y.cpp": "namespace {\nint most = 2;\n}\n"}),
    "ANameOfAnOpenedNamespaceIsRefused": bad(
        "name_rules", "src/folds/x.cpp", "namespace {\nstruct Coated {};\n}\n", "Coated is a name of",
        {"src/folds/y.cpp": "using namespace entries;\n", "src/entries/x.h": "struct Coated {};\n"}),
    "AFixtureOfTwoFilesIsRefused": bad(
        "name_rules", "tests/base/x_test.cpp", "TEST(Words, AreKept) {}\n", "with and without a fixture",
        {"tests/base/y_test.cpp": "TEST_F(Words, AreShown) {}\n"}),

    "ABannedWordIsRefused": bad(
        "words_rules", "qml/Floor/X.qml", 'Words { text: qsTr("It is Safe now") }\n', '"Safe" may not stand'),
    "ABannedPhraseIsRefusedInViewModels": bad(
        "words_rules", "src/screens/x.cpp", 'auto s = tr("ok to enter");\n', '"ok to enter" may not stand'),
    "AnExclamationMarkIsRefused": bad(
        "words_rules", "qml/Floor/X.qml", 'Words { text: qsTr("Done!") }\n', "exclamation mark"),
    "ABareTextIsRefused": bad(
        "words_rules", "qml/Floor/X.qml", 'Words { text: "Open" }\n', 'text holds "Open"'),
    "ABareTextInOneBranchIsRefused": bad(
        "words_rules", "qml/Floor/X.qml", 'Words {\n    text: a\n        ? qsTr("Open")\n        : "Shut"\n}\n',
        'text holds "Shut"'),
    "ABareTextBesideATranslatedOneIsRefused": bad(
        "words_rules", "qml/Floor/X.qml", 'Words { text: qsTr("%1").arg(n) + " cars" }\n', 'text holds " cars"'),
    "ABareAccessibleNameIsRefused": bad(
        "words_rules", "qml/Floor/X.qml", 'Item { Accessible.name: "Floor" }\n', "Accessible.name holds"),
    "ABareTitleIsRefused": bad("words_rules", "qml/Floor/X.qml", 'Sheet { title: "Clock" }\n', "title holds"),
    "ABareTextInAListIsRefused": bad(
        "words_rules", "qml/Floor/X.qml", 'Item { property var a: [{ text: "Open" }] }\n', 'text holds "Open"'),
    "AColourOutsideTheThemeIsRefused": bad(
        "words_rules", "qml/Floor/X.qml", 'Rectangle { color: "#ff0000" }\n', "colours come from"),
    "ANamedColourOutsideTheThemeIsRefused": bad(
        "words_rules", "qml/Floor/X.qml", 'Rectangle { color: "red" }\n', "colours come from"),

    "AStrangeEntryOfTheTopLevelIsRefused": bad("tree_rules", "notes.txt", "\n", "no agreed entry"),
    "ALongCppFileIsRefused": bad("tree_rules", "src/base/x.cpp", "//\n" * 600, "under 600"),
    "ALongQmlFileIsRefused": bad("tree_rules", "qml/Floor/X.qml", "//\n" * 350, "under 350"),
    "SomethingLeftForLaterIsRefused": bad("tree_rules", "src/base/x.cpp", "// TO" + "DO\n", "left for later"),
    "ASkippedTestIsRefused": bad("tree_rules", "tests/base/x.cpp", "GTEST_" + "SKIP();\n", "left for later"),
    "ADisabledTestIsRefused": bad("tree_rules", "tests/base/x.cpp", "TEST(A, DISABLED" + "_B) {}\n", "left for later"),
    "AnExpectedFailureIsRefused": bad("tree_rules", "tests/qml/x.qml", "expect" + 'Fail("", "")\n', "left for later"),
    "AMachinesOwnPathIsRefused": bad("tree_rules", "src/base/x.cpp", '"/ho' + 'me/me/x"\n', "path of one machine"),
    "AContextPropertyIsRefused": bad(
        "tree_rules", "src/app/x.cpp", "c->setContext" + 'Property("a", a);\n', "no context properties"),

    "SqlThatChangesEntriesOutsideTheLogIsRefused": bad(
        "truth_rules", "src/shelf/x.cpp", 'run("UPDATE entries SET payload=1");\n', "only the log changes its tables"),
    "ADroppedGuardOutsideTheLogIsRefused": bad(
        "truth_rules", "src/engine/x.cpp", 'run("DROP TRIGGER entries_stay");\n', "only the log changes its tables"),
    "AnAppendOutsideTheEngineIsRefused": bad(
        "truth_rules", "src/app/x.cpp", "log->append(key, person, drafts, moment, random);\n", "only the engine writes"),
    "ALogOpenedToWriteOutsideTheEngineIsRefused": bad(
        "truth_rules", "src/app/x.cpp", "EntryLog::open(folder, OpenMode::Write);\n", "only the engine writes"),

    "UnformattedCodeIsRefused": bad("format_rules", "src/base/x.cpp", "int  one( ){return 1;}\n", "not formatted"),
}


class Samples(unittest.TestCase):
    def run_rule(self, rule, extra, *arguments):
        """Exit code and output of a rule over the good tree with the extra files put in."""
        with tempfile.TemporaryDirectory() as root:
            table = {f"tests/architecture/{name}": tree.read(HERE, name)
                     for name in ("layers.txt", "banned_words.txt")}
            style = {".clang-format": "BasedOnStyle: Google\n"}
            for path, content in {**table, **style, **GOOD, **extra}.items():
                os.makedirs(os.path.dirname(os.path.join(root, path)), exist_ok=True)
                with open(os.path.join(root, path), "w", encoding="utf-8") as file:
                    file.write(content)
            arguments = [argument.replace("ROOT", root) for argument in arguments]
            for path in extra:
                if path.endswith(("compile_commands.json", "listed.txt")):
                    with open(os.path.join(root, path), "w", encoding="utf-8") as file:
                        file.write(extra[path].replace("ROOT", root))
            result = subprocess.run([sys.executable, "-B", os.path.join(HERE, rule + ".py"), root, *arguments],
                                    capture_output=True, text=True)
            return result.returncode, result.stdout + result.stderr

    def refuse(self, rule, extra, says, *arguments):
        code, output = self.run_rule(rule, extra, *arguments)
        self.assertEqual(code, 1, output)
        self.assertIn(says, output)
        self.assertNotIn("Traceback", output)

    def accept(self, rule, extra, *arguments):
        code, output = self.run_rule(rule, extra, *arguments)
        self.assertEqual(code, 0, output)

    def test_AGoodTreePassesEveryRule(self):
        for rule in ("include_rules", "words_rules", "tree_rules", "truth_rules"):
            self.accept(rule, {})

    def test_AnEmptyTreePassesNoRule(self):
        with tempfile.TemporaryDirectory() as root:
            os.makedirs(os.path.join(root, "tests/architecture"))
            for name in ("layers.txt", "banned_words.txt"):
                open(os.path.join(root, "tests/architecture", name), "w", encoding="utf-8").close()
            for rule in ("include_rules", "format_rules"):
                result = subprocess.run([sys.executable, "-B", os.path.join(HERE, rule + ".py"), root],
                                        capture_output=True, text=True)
                self.assertEqual(result.returncode, 1, result.stdout)

    def test_AHeaderThatIsNotCompiledAloneIsRefused(self):
        listed = {"src/base/listed.txt": "src/base/error.h\nsrc/trade/sum.h\n"}
        self.refuse("headers_alone", listed, "src/screens/floor.h: is not compiled alone",
                    "ROOT/src/base/listed.txt")

    def test_ASourceThatDoesNotIncludeItsHeaderFirstIsRefused(self):
        extra = {"src/base/listed.txt": "src/trade/sum.h\nsrc/screens/floor.h\n",
                 "src/base/error.cpp": '#include <string>\n#include "base/error.h"\n'}
        self.refuse("headers_alone", extra, "does not include its own header first",
                    "ROOT/src/base/listed.txt")

    def test_ASourceThatIncludesItsHeaderFirstNeedsNoListing(self):
        extra = {"src/base/listed.txt": "src/trade/sum.h\nsrc/screens/floor.h\n",
                 "src/base/error.cpp": '#include "base/error.h"\n#include <string>\n'}
        self.accept("headers_alone", extra, "ROOT/src/base/listed.txt")

    def test_AllHeadersListedPasses(self):
        listed = {"src/base/listed.txt": "src/base/error.h\nsrc/trade/sum.h\nsrc/screens/floor.h\n"}
        self.accept("headers_alone", listed, "ROOT/src/base/listed.txt")


def add(name, rule, extra, says):
    setattr(Samples, "test_" + name, lambda self: self.refuse(rule, extra, says))


for sample_name, sample in SAMPLES.items():
    add(sample_name, *sample)

if __name__ == "__main__":
    unittest.main()
