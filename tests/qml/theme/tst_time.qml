// The forms of the table "Numbers, units, times" in the design's words guide. Times are UTC here
// (the test runs with TZ=UTC). 2026-11-24 is a Tuesday.
import QtQuick
import QtTest
import Jambline.Theme

Item {
    width: 412
    height: 300

    TimeWords { id: words }
    TimeText { id: time; size: 28; bold: true }
    Words { id: thin; text: "iiiiiiii" }
    Words { id: wide; text: "mmmmmmmm" }

    TestCase {
        name: "TimeText"
        when: windowShown

        readonly property double tuesday: Date.UTC(2026, 10, 24, 16, 30)

        function init() {
            failOnWarning(/.?/);
            words.twelveHour = false;
        }

        function cleanup() {
            Theme.twelveHour = false;
            time.text = "";
        }

        function test_forms_data() {
            const R = TimeWords.Running, C = TimeWords.Countdown, D = TimeWords.Duration;
            return [
                {tag: "running", form: R, seconds: 401, said: "0:06:41"},
                {tag: "running none", form: R, seconds: 0, said: "0:00:00"},
                {tag: "running long", form: R, seconds: 4325, said: "1:12:05"},
                {tag: "running does not round up", form: R, seconds: 401.9, said: "0:06:41"},
                {tag: "countdown", form: C, seconds: 400, said: "6:40"},
                {tag: "countdown above an hour", form: C, seconds: 4000, said: "1:06:40"},
                {tag: "countdown rounds up", form: C, seconds: 0.2, said: "0:01"},
                {tag: "countdown over", form: C, seconds: -3, said: "0:00"},
                {tag: "minutes", form: D, seconds: 14 * 60, said: "14 min"},
                {tag: "hours", form: D, seconds: 130 * 60, said: "2 h 10 min"},
                {tag: "whole hours", form: D, seconds: 7200, said: "2 h"}
            ];
        }

        function test_forms(row) {
            words.form = row.form;
            words.seconds = row.seconds;
            compare(words.words, row.said);
        }

        function test_wall_data() {
            const day = 86400000;
            return [
                {tag: "today", at: tuesday, now: tuesday + 3600000, said: "16:30"},
                {tag: "no leading zero", at: tuesday - 7.25 * 3600000, now: tuesday, said: "9:15"},
                {tag: "tomorrow morning", at: tuesday, now: tuesday + day, said: "Tue 16:30"},
                {tag: "six days ago", at: tuesday, now: tuesday + 6 * day, said: "Tue 16:30"},
                {tag: "a week ago", at: tuesday, now: tuesday + 7 * day, said: "Nov 24"},
                {tag: "another year", at: tuesday, now: tuesday + 90 * day, said: "Nov 24, 2026"},
                {tag: "twelve hours", at: tuesday, now: tuesday, twelve: true, said: "4:30 PM"}
            ];
        }

        function test_wall(row) {
            words.form = TimeWords.Wall;
            words.twelveHour = row.twelve === true;
            words.at_ms = row.at;
            words.now_ms = row.now;
            compare(words.words, row.said);
        }

        function test_every_digit_is_equally_wide() {
            time.text = "1:11:11";
            const narrow = time.implicitWidth;
            verify(narrow > 60);
            for (const text of ["0:00:00", "8:48:08", "7:77:77"]) {
                time.text = text;
                compare(time.implicitWidth, narrow);
            }
        }

        // Debian's monospaced twin has the same family name; with it both would be equally wide.
        function test_the_face_is_the_proportional_one_data() {
            return [{tag: "regular", bold: false}, {tag: "bold", bold: true}];
        }

        function test_the_face_is_the_proportional_one(row) {
            thin.bold = row.bold;
            wide.bold = row.bold;
            verify(thin.natural < 0.6 * wide.natural);
        }

        function test_a_colon_takes_a_quarter_of_an_em() {
            time.text = "11";
            const digits = time.implicitWidth;
            time.text = "1:1";
            fuzzyCompare(time.implicitWidth - digits, 0.26 * 28, 1);
        }

        function test_the_spoken_time_tells_doubt() {
            time.text = "16:30";
            compare(time.Accessible.name, "16:30");
            time.doubtful = true;
            verify(time.Accessible.name.includes("doubt"));
            time.doubtful = false;
        }
    }
}
