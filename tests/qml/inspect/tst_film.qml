// Film and the check before cutting by hand, every press counted. On a real engine.
import QtQuick
import QtTest
import Jambline.Theme
import Jambline.Screens
import Jambline.Job
import Jambline.Test

Item {
    id: root
    width: 1440
    height: 900

    Component {
        id: filmMade
        Rectangle {
            property alias page: page
            color: Theme.paper
            Film {
                id: page
                anchors.fill: parent
                film: Shop.film
                inspect: Shop.inspect
                wide: parent.width >= 840
            }
        }
    }
    Component {
        id: checkMade
        Item {
            property alias sheet: sheet
            BeforeCut {
                id: sheet
                anchors.fill: parent
                check: Shop.beforeCut
            }
        }
    }
    Component {
        id: mapMade
        Rectangle {
            property alias page: page
            color: Theme.paper
            InspectCar {
                id: page
                anchors.fill: parent
                inspect: Shop.inspect
                wide: parent.width >= 840
            }
        }
    }
    SignalSpy {
        id: answered
        signalName: "answered"
    }

    TestCase {
        name: "Film"
        when: windowShown

        property int presses: 0

        function init() {
            failOnWarning(/.?/);
            Theme.reducedMotion = true;
            Shop.open();
            presses = 0;
        }
        function cleanup() {
            Theme.desk = false;
        }
        function find(item, what) {
            for (const child of Array.from(item.children)) {
                if (what(child))
                    return child;
                const inner = find(child, what);
                if (inner)
                    return inner;
            }
            return null;
        }
        function named(item, name) {
            return find(item, child => child.objectName === name && child.visible);
        }
        function press(item, name) {
            const button = named(item, name);
            verify(button, name);
            if (button instanceof SlabButton)
                wait(300);  // a second touch within 250 ms is not meant
            mouseClick(button);
            ++presses;
            Shop.settle();
        }
        function make(component, width, height) {
            const made = createTemporaryObject(component, root, {width: width, height: height});
            verify(made);
            waitForRendering(made);
            return made;
        }
        function digits(page, number) {
            for (const digit of number)
                press(page, "key_" + digit);
        }

        function test_three_readings_are_nine_digits_and_one_press_more() {
            Shop.film.openPanel("hood");
            const page = make(filmMade, 412, 636).page;
            press(page, "filmMain");
            presses = 0;
            const before = Shop.entries;
            digits(page, "060061062");
            compare(Shop.film.readingCount, 3);
            compare(Shop.film.meanWords, "mean of 3: 61 µm");
            press(page, "filmMain");
            compare(presses, 10);
            compare(Shop.entries, before + 1);
            compare(Shop.film.spot, 2);
        }
        function test_a_shorter_number_is_taken_by_the_main_act() {
            Shop.film.openPanel("hood");
            const page = make(filmMade, 412, 636).page;
            press(page, "filmMain");
            digits(page, "61");
            compare(named(page, "filmMain").text, "Take 61 µm");
            press(page, "filmMain");
            compare(Shop.film.readingCount, 1);
            compare(named(page, "filmPad").typed, "");
            press(page, "key_unit");  // a reading stands in micrometres
            verify(Shop.film.wrong !== "");
            compare(Shop.film.unitWords, "µm");
        }
        function test_numbers_past_the_gauge_leave_the_others_alone() {
            Shop.film.openPanel("hood");
            const page = make(filmMade, 412, 636).page;
            press(page, "filmMain");
            digits(page, "112115000");
            compare(Shop.film.readingCount, 2);
            press(page, "filmThick");
            digits(page, "9999");
            compare(Shop.film.wrong, "9999 µm is past the gauge. The other 2 readings stand. Type it again.");
            press(page, "filmThick");
            press(page, "reading_0");
            digits(page, "118");
            compare(Shop.film.readingCount, 2);
            compare(Shop.film.meanWords, "mean of 2: 117 µm");  // 118 and 115: 116.5
        }
        function test_at_the_desk_a_spot_is_typed_in_a_row() {
            Theme.desk = true;
            Shop.film.openPanel("hood");
            const page = make(filmMade, 1440, 636).page;
            const field = named(page, "filmField");
            verify(field);
            field.focusField();
            for (const letter of "112 abc 118")
                keyClick(letter);
            keyClick(Qt.Key_Return);
            verify(field.wrong !== "");
            compare(field.text, "112 abc 118");
            field.text = "112 115 118";
            keyClick(Qt.Key_Return);
            Shop.settle();
            compare(Shop.film.keptCount, 1);
            compare(field.text, "");
            verify(named(page, "kept_0"));
        }
        function test_before_cutting_is_two_presses_on_a_good_day() {
            const made = make(checkMade, 412, 892);
            answered.target = made.sheet;
            answered.clear();
            Shop.beforeCut.ask();
            waitForRendering(made);
            compare(named(made, "cutKeep").waits, true);
            press(made, "cutRest");
            waitForRendering(made);
            press(made, "cutKeep");
            compare(presses, 2);
            compare(answered.count, 1);
            compare(Shop.beforeCut.needed, false);
            compare(made.sheet.opened, false);
        }
        function test_a_panel_that_nobody_cuts_says_so_on_the_map() {
            Shop.planMatte("hood");
            const page = make(mapMade, 412, 636).page;
            const tag = find(page, child => child instanceof PanelTag && child.panel === "hood");
            verify(tag);
            verify(tag.noCut);
            verify(tag.spoken.includes("do not cut"), tag.spoken);
            const other = find(page, child => child instanceof PanelTag && child.panel === "roof");
            verify(!other.noCut);
            compare(Shop.inspect.noCutCount, 1);
            verify(find(page, child => child.text === "1 do not cut" && child.visible));
        }
    }
}
