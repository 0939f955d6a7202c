// The VIN by barcode: a label is held before the camera, what is read is pressed. Every tap is a
// pointer's.
import QtQuick
import QtTest
import Jambline.Theme
import Jambline.Screens
import Jambline.Job
import Jambline.Test

Item {
    id: root
    width: 412
    height: 892

    Component {
        id: made
        VinScan {
            width: 412
            height: 892
            scan: Scan.scan
        }
    }

    TestCase {
        id: test
        name: "VinScan"
        when: windowShown

        property Item sheet: null

        function open(camera) {
            Scan.plug(camera);
            sheet = createTemporaryObject(made, root);
            sheet.opened = true;
            wait(Theme.move + 100);
        }
        function press(name) {
            wait(260);  // a main act does not hear a second touch within 250 ms
            const button = findChild(sheet, name);
            verify(button, name);
            verify(button.visible, name);
            mouseClick(button);
            wait(Theme.move + 50);
        }
        function hold(vin) {
            Scan.hold(vin);
            tryCompare(Scan.scan, "foundCount", 1, 8000);
            wait(Theme.move + 100);
        }

        function test_whatIsReadIsUsedByAPressAndNotBefore() {
            open(true);
            verify(Scan.cameraOn);
            hold("11111111111111111");
            compare(findChild(sheet, "vinRead").text, "111 11111 1 11111111");
            compare(Scan.used, "");
            verify(!Scan.cameraOn);
            press("vinUse");
            compare(Scan.used, "11111111111111111");
            verify(!Scan.asTyped);
            verify(!sheet.opened);
        }
        function test_oneThatDoesNotCheckSaysSoAndIsMarked() {
            open(true);
            hold("11111111211111111");
            verify(findChild(sheet, "vinWords").text.indexOf("does not check") > 0);
            press("vinUse");
            compare(Scan.used, "11111111211111111");
            verify(Scan.asTyped);
        }
        function test_scanAgainLooksAgainAndClosingEndsIt() {
            open(true);
            hold("11111111111111111");
            press("vinAgain");
            compare(Scan.scan.foundCount, 0);
            verify(Scan.cameraOn);
            sheet.close();
            wait(Theme.move + 100);
            verify(!Scan.cameraOn);
        }
        function test_withoutACameraItSaysWhyAndOffersAFile() {
            open(false);
            compare(findChild(sheet, "vinTrouble").text, "There is no camera on this device.");
            verify(findChild(sheet, "vinFile").visible);
        }
    }
}
