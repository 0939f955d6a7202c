// Twelve jambs by hand, every press counted, with a camera that the test moves and a real engine.
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
        id: made
        Rectangle {
            property alias page: page
            color: Theme.paper
            Shot {
                id: page
                anchors.fill: parent
                shot: Shop.shot
                wide: parent.width >= 840
            }
        }
    }
    Component {
        id: listMade
        Rectangle {
            property alias page: page
            color: Theme.paper
            Shots {
                id: page
                anchors.fill: parent
                shots: Shop.shots
                wide: parent.width >= 840
            }
        }
    }
    SignalSpy {
        id: spy
    }

    TestCase {
        name: "Shots"
        when: windowShown

        property Item page: null
        property int presses: 0

        function init() {
            failOnWarning(/.?/);
            Theme.reducedMotion = true;
            Shop.openJambs();
            presses = 0;
        }
        function cleanup() {
            if (page)
                page.destroy();
            page = null;
            wait(0);
        }
        function listen(target, name) {
            spy.target = null;
            spy.signalName = name;
            spy.target = target;
            spy.clear();
        }
        function shown(component, width, height) {
            page = component.createObject(root, { width: width, height: height });
            waitForRendering(page);
            return page.page;
        }
        // A main act does not hear a second touch within 250 ms.
        function press(name) {
            const button = findChild(page, name);
            verify(button, name);
            tryCompare(button, "visible", true);
            wait(260);
            mouseClick(button, button.width / 2, button.height / 2);
            ++presses;
        }

        function test_twelveJambsTakeTwoTapsAShot_data() {
            return [{ tag: "phone", width: 412, height: 600 }, { tag: "desk", width: 1300, height: 700 }];
        }
        function test_twelveJambsTakeTwoTapsAShot(data) {
            const screen = shown(made, data.width, data.height);
            listen(screen, "finished");
            Shop.shot.open("edges and jambs", Shop.shots.nextKey);
            compare(Shop.shots.missingCount, 12);
            for (let i = 0; i < 12; ++i) {
                press("shotMain");
                verify(Shop.answerShutter(true, i), "picture " + i);
                compare(Shop.shot.step, ShotViewModel.Edges);
                press(i === 7 ? "edgeFind" + 12 : "shotMain");
                verify(Shop.waited());
            }
            console.info("figure taps_twelve_jambs", presses, "taps");
            verify(presses <= 24);
            compare(Shop.pictureCount, 12);
            compare(Shop.openMarks(), 1);
            compare(Shop.shots.missingCount, 0);
            compare(spy.count, 1);
        }

        function test_aBlurredOneIsTakenAgainByOnePress() {
            shown(made, 412, 600);
            Shop.shot.open("edges and jambs", Shop.shots.nextKey);
            press("shotMain");
            verify(Shop.answerShutter(false, 3));
            compare(findChild(page, "shotWord").text, "Blurred");
            press("shotMain");
            verify(Shop.answerShutter(true, 3));
            compare(presses, 2);
            compare(Shop.pictureCount, 1);
        }

        function test_theCameraIsOffWheneverTheScreenIsNotInFront() {
            compare(Shop.cameraOn, false);
            const screen = shown(made, 412, 600);
            compare(Shop.cameraOn, true);
            screen.visible = false;
            compare(Shop.cameraOn, false);
            screen.visible = true;
            compare(Shop.cameraOn, true);
            page.destroy();
            page = null;
            tryVerify(() => !Shop.cameraOn);
        }

        function test_withoutACameraItIsSaidWhyAndTheShutterGivesWayToFiles() {
            shown(made, 412, 600);
            Shop.shot.open("edges and jambs", Shop.shots.nextKey);
            Shop.unplug();
            compare(findChild(page, "shotTroubleWhat").text, "The camera is unplugged.");
            compare(findChild(page, "shotMain").text, "Take from files");
            compare(findChild(page, "shotLive").visible, false);
        }

        function ofName(item, name, out) {
            if (item.objectName === name && item.visible)
                out.push(item);
            for (let at = 0; at < item.children.length; ++at)
                ofName(item.children[at], name, out);
            return out;
        }
        function test_aTakenShotLeadsToItsPictureAndToOneMore_data() {
            return [{ tag: "phone", width: 412, height: 600, name: "shotRow" },
                { tag: "desk", width: 1300, height: 700, name: "shotCard" }];
        }
        function test_aTakenShotLeadsToItsPictureAndToOneMore(data) {
            shown(made, 412, 600);
            Shop.shot.open("edges and jambs", Shop.shots.nextKey);
            press("shotMain");
            verify(Shop.answerShutter(true, 1));
            press("shotMain");
            verify(Shop.waited());
            page.destroy();
            const screen = shown(listMade, data.width, data.height);
            const again = ofName(screen, "shotAgain", []);
            compare(again.length, 1);
            const taken = ofName(screen, data.name, []).filter(one => one.picture !== "");
            compare(taken.length, 1);
            listen(screen, "pictureAsked");
            taken[0].press();
            compare(spy.count, 1);
            compare(spy.signalArguments[0][0], taken[0].picture);
            listen(screen, "shotAsked");
            again[0].press();
            compare(spy.count, 1);
            compare(spy.signalArguments[0][1], taken[0].key);
        }

        function test_theMainActOfTheListLeadsToTheFirstThatIsMissing() {
            const screen = shown(listMade, 412, 600);
            listen(screen, "shotAsked");
            compare(ofName(screen, "shotStage", []).filter(one => one.chosen).length, 1);
            press("shotsMain");
            compare(spy.count, 1);
            compare(spy.signalArguments[0][0], "edges and jambs");
            compare(spy.signalArguments[0][1], Shop.shots.nextKey);
            press("shotRow");
            compare(spy.count, 2);
        }
    }
}
