// A booth by hand while it is sprayed in and while it clears. Every tap is a pointer's.
import QtQuick
import QtTest
import Jambline.Theme
import Jambline.Screens
import Jambline.Booth
import Jambline.Test

Item {
    id: root
    width: 412
    height: 640

    Component {
        id: made
        BoothNow {
            width: 412
            height: 640
            clearance: Shop.clearance
            reading: Shop.boothReading
            facts: Shop.boothFacts
        }
    }
    SignalSpy { id: finished; signalName: "finished" }

    TestCase {
        id: test
        name: "Clearance"
        when: windowShown

        property Item page: null

        function init() {
            Shop.open();
            Shop.booth.openBooth("");
            Shop.booth.keepBooth("Booth 1", 0);
            Shop.settle();
            Shop.boothReading.open(Shop.booth.firstBooth, 3);
            Shop.boothReading.keep(500);
            Shop.settle();
            Shop.spray("Ivo");
            Shop.be("Ivo");
            page = createTemporaryObject(made, root);
            finished.target = page;
            finished.clear();
            waitForRendering(page);
        }
        function part(name) {
            const found = findChild(page, name);
            verify(found, name);
            return found;
        }
        function tap(name) {
            wait(260);  // a main act does not hear a second touch within 250 ms
            verify(part(name).visible, name);
            mouseClick(part(name));
            Shop.settle();
            wait(Theme.move + 50);
        }

        function test_gunDownIsOneTapOfAKnuckleAndTheDigitsAreReadFromFar() {
            verify(part("gunDown").visible);
            compare(part("gunDown").width, 412 - 2 * Theme.gutter);
            verify(part("gunDown").height >= 76);
            tap("gunDown");
            compare(part("clearanceDigits").text, "5:00");
            verify(part("clearanceDigits").size >= 120);
            verify(part("logClearance").waits);
        }
        function test_aStopStartsTheWholeTimeAgain_data() {
            return [{ tag: "fanStopped" }, { tag: "switchedToBake" }, { tag: "doorOpened" }];
        }
        function test_aStopStartsTheWholeTimeAgain(data) {
            tap("gunDown");
            Shop.later(200);
            compare(part("clearanceDigits").text, "1:40");
            tap(data.tag);
            compare(part("clearanceDigits").text, "5:00");
            verify(!findChild(page, "fanStopped"));
            Shop.later(3600);
            compare(part("clearanceDigits").text, "5:00");
            tap("freshAir");
            Shop.later(200);
            compare(part("clearanceDigits").text, "1:40");
        }
        function test_itIsLoggedAsOverOnlyWhenTheTimeIsOver() {
            tap("gunDown");
            Shop.later(299);
            tap("logClearance");
            compare(finished.count, 0);
            Shop.later(2);
            compare(part("clearanceHead").text, "The time is over");
            tap("logClearance");
            compare(finished.count, 1);
        }
        function test_onSomebodyElsesScreenThereIsNothingToTapByMistake() {
            Shop.be("Mara");
            compare(part("sprayingHead").text, "Spraying, stay out");
            verify(!part("gunDown").visible);
            tap("gunDownOther");
            compare(Shop.clearance.state, ClearanceViewModel.Spraying);
            tap("gunDownSure");
            compare(Shop.clearance.state, ClearanceViewModel.Counting);
        }
        function test_theSumOpensAndTheCardIsPutAway() {
            tap("gunDown");
            tap("clearanceSum");
            verify(findChild(page, "sumFigure").visible);
            compare(findChild(page, "sumFigure").text, "5:00");
            keyClick(Qt.Key_Escape);
            wait(Theme.move + 50);
            verify(Shop.clearance.wasteShown);
            Shop.clearance.wasteSeen();
            verify(!part("wasteSeen").visible);
        }
    }
}
