// A forgotten clock, a PIN and a leaver's name, asked and answered by hand on a real engine.
import QtQuick
import QtTest
import Jambline.Theme
import Jambline.Screens
import Jambline.Shell
import Jambline.Test

Item {
    id: root
    width: 412
    height: 892

    Component {
        id: made
        Rectangle {
            property alias forgotten: forgotten
            property alias pin: pin
            property alias shop: shop
            width: 412
            height: 892
            color: Theme.paper

            ShopSheet {
                id: shop
                anchors.fill: parent
                shop: Shop.shop
                folder: Shop.folder
                shots: Shop.shots
            }
            ForgottenClockSheet {
                id: forgotten
                anchors.fill: parent
                forgotten: Shop.forgotten
            }
            PinSheet {
                id: pin
                anchors.fill: parent
                pin: Shop.pin
            }
        }
    }

    TestCase {
        id: test
        name: "Asking"
        when: windowShown

        property Item page: null

        function init() {
            Shop.open();
            page = createTemporaryObject(made, root);
            tryCompare(page.forgotten, "shown", 1);
        }

        // A main act does not hear a second touch within 250 ms.
        function pressAgain(name) {
            wait(260);
            press(name);
        }

        function press(name) {
            const button = findChild(page, name);
            verify(button, name);
            verify(button.visible, name);
            button.press();
            Shop.settle();
        }


        function test_whatRanSinceYesterdayIsAskedAndEndsWhenSaid() {
            compare(page.forgotten.title, "Clock of Ivo");
            for (let i = 0; i < 12; ++i)
                press("clockLater");
            compare(Shop.forgotten.counts, "57 min");
            press("clockEnded");
            compare(page.forgotten.opened, false);
            compare(Shop.running, 0);
        }

        function test_closingTheQuestionWritesNothing() {
            keyClick(Qt.Key_Escape);
            compare(page.forgotten.opened, false);
            compare(Shop.running, 1);
            Shop.be("Ivo");
            compare(page.forgotten.opened, true);
            press("clockStillRuns");
            compare(page.forgotten.opened, false);
            compare(Shop.running, 1);
        }

        function test_aPinIsTypedOnTheKeysAndAskedForThen() {
            press("clockStillRuns");
            page.pin.setOne();
            tryCompare(page.pin, "shown", 1);
            findChild(page, "pinPad").typed = "2704";
            press("pinEnter");
            compare(Shop.hasPin("Mara"), true);
            Shop.be("Ivo");
            Shop.be("Mara");
            compare(page.pin.opened, true);
            compare(Shop.chosen, "Ivo");
            findChild(page, "pinPad").typed = "0000";
            pressAgain("pinEnter");
            verify(Shop.pin.wrong !== "");
            findChild(page, "pinPad").typed = "2704";
            pressAgain("pinEnter");
            compare(page.pin.opened, false);
            compare(Shop.chosen, "Mara");
        }

        function test_aManagerChangesWhatAStageWants() {
            press("clockStillRuns");
            page.shop.showShop();
            tryCompare(page.shop, "shown", 1);
            press("shopShots");
            compare(page.shop.title, "Pictures");
            Shop.shots.open("mask");
            compare(page.shop.title, "Mask");
            const many = Shop.shots.shots.rowCount();
            press("shotListOut");
            compare(Shop.shots.shots.rowCount(), many - 1);
            compare(Shop.shots.awayCount, 1);
            press("shotListIn");
            compare(Shop.shots.shots.rowCount(), many);
            compare(Shop.shots.awayCount, 0);
            const add = findChild(page, "shotListAdd");
            compare(add.waits, true);
            findChild(page, "shotListName").text = "spare wheel well";
            press("shotListView12");
            press("shotListOften0");
            compare(add.waits, false);
            press("shotListAdd");
            compare(Shop.shots.shots.rowCount(), many + 1);
            compare(findChild(page, "shotListName").text, "");
            Shop.be("Ivo");
            compare(findChild(page, "shotListOut").visible, false);
            compare(add.visible, false);
        }

        function test_aLeaversNameIsErasedInTwoSteps() {
            press("clockStillRuns");
            page.shop.showShop();
            tryCompare(page.shop, "shown", 1);
            Shop.shop.open(Shop.idOf("Ivo"));
            press("letGo");
            compare(Shop.shop.personLeft, false);
            press("letGoSure");
            compare(Shop.shop.personLeft, true);
            compare(Shop.running, 0);
            press("eraseName");
            press("personBack");
            compare(Shop.shop.personErased, false);
            press("eraseName");
            press("eraseNameSure");
            compare(Shop.shop.personErased, true);
            compare(page.shop.title, "someone");
        }
    }
}
