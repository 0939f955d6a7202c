// The cure clock by hand on a real engine: a panel temperature on the keys, the thumbnail in one tap, a
// windshield that is not driven, and a product typed from its sheet. Every tap is a pointer's.
import QtQuick
import QtTest
import Jambline.Theme
import Jambline.Screens
import Jambline.Job
import Jambline.Shell
import Jambline.Test

Item {
    id: root
    width: 412
    height: 892

    Component {
        id: made
        Cure {
            width: 412
            height: 892
            cure: Shop.cure
            bond: Shop.bond
        }
    }
    Component {
        id: typed
        Flickable {
            width: 412
            height: 892
            contentHeight: rows.height

            ProductRows {
                id: rows
                width: 412
                products: Shop.products
            }
        }
    }

    TestCase {
        id: test
        name: "Cure"
        when: windowShown

        property Item page: null
        property int taps: 0

        function init() {
            Shop.open();
            taps = 0;
        }
        // What is not in sight is pressed as a key would.
        function tap(name) {
            wait(260);  // a main act does not hear a second touch within 250 ms
            const button = findChild(page, name);
            verify(button, name);
            verify(button.visible, name);
            const at = button.mapToItem(page, button.width / 2, button.height / 2);
            if (at.y > 0 && at.y < page.height)
                mouseClick(button);
            else
                button.press();
            ++taps;
            Shop.settle();
            wait(Theme.move + 50);
        }
        function show(component) {
            page = createTemporaryObject(component, root);
            waitForRendering(page);
        }
        function type(name, words) {
            const field = findChild(page, name);
            verify(field, name);
            const input = findChild(field, "faceInput");
            input.forceActiveFocus();
            input.selectAll();
            for (const sign of words)
                keyClick(sign);
            Shop.settle();
        }

        function test_aTemperatureIsFiveTapsAndTheThumbnailOne() {
            Shop.coat();
            show(made);
            compare(findChild(page, "cureSurface").value, "not read");
            tap("cureMain");
            for (const key of ["key_1", "key_4", "key_0"])
                tap(key);
            compare(findChild(page, "temperatureLog").text, "Log 140 °F");
            tap("temperatureLog");
            compare(taps, 5);
            verify(!findChild(page, "temperatureSheet").opened, "one group only: the sheet closes");
            verify(findChild(page, "cureSurface").value.startsWith("140 °F, read "));
            Shop.later(40 * 60);
            taps = 0;
            tap("thumbNotYet");
            compare(taps, 1);
            verify(Shop.cure.rowWords !== "all milestones are reached");
        }
        function test_aWindshieldIsNotDrivenAndThereIsNoWayRound() {
            Shop.coat();
            show(made);
            compare(Shop.cure.doNotDrive, "");
            tap("cureBond");
            tap("bondPart0");
            tap("bondProduct0");
            compare(findChild(page, "bondKeep").secondLine, "choose the airbag and belt case");
            tap("bondKeep");
            verify(findChild(page, "bondSheet").opened, "nothing is kept without the case");
            tap("bondCase0");
            tap("bondKeep");
            verify(!findChild(page, "bondSheet").opened);
            verify(Shop.cure.doNotDrive.startsWith("Do not drive until "));
            verify(findChild(page, "bondCard").name.indexOf("Do not drive until ") > 0);
            Shop.later(481 * 60);
            compare(Shop.cure.doNotDrive, "");
        }
        function test_aProductIsTypedFromItsSheet() {
            show(typed);
            tap("productNew");
            type("productField0", "clear b");
            tap("productKind2");
            tap("milestone_sand from");
            type("pointTemperature0", "68");
            type("pointMinutes0", "30 min");
            tap("pointAdd");
            type("pointTemperature1", "140");
            type("pointMinutes1", "16 h");
            tap("pointsKeep");
            verify(findChild(page, "rowsWrong").visible, "slower when warmer");
            type("pointMinutes1", "10 min");
            tap("pointsKeep");
            tap("productKeep");
            compare(Shop.products.productCount, 1);
            compare(findChild(page, "productRow").text, "clear b");
        }
    }
}
