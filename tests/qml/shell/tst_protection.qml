// Protection by hand on a real engine: a respirator and a fit test are entered, a painter stops
// himself, a sample is typed, first aid is opened. Every tap is a pointer's.
import QtQuick
import QtTest
import Jambline.Theme
import Jambline.Screens
import Jambline.Booth
import Jambline.Shell
import Jambline.Test

Item {
    id: root
    width: 412
    height: 892

    Component {
        id: register
        Register {
            width: 412
            height: 892
            protection: Shop.protection
        }
    }
    Component {
        id: protection
        Protection {
            width: 412
            height: 892
            protection: Shop.protection
        }
    }
    Component {
        id: exposure
        Exposure {
            width: 412
            height: 892
            exposure: Shop.exposure
            me: Shop.protection.person
        }
    }
    Component {
        id: limits
        Limits {
            width: 412
            height: 892
            limits: Shop.limits
        }
    }
    Component {
        id: aid
        FirstAid {
            width: 412
            height: 892
            log: Shop.aid
        }
    }

    TestCase {
        id: test
        name: "Protection"
        when: windowShown

        property Item page: null

        function init() {
            failOnWarning(/.?/);
            Shop.open();
        }
        function show(component) {
            page = createTemporaryObject(component, root);
            waitForRendering(page);
        }
        // Scrolls it into sight first, as a finger would.
        function tap(name) {
            wait(260);  // a main act does not hear a second touch within 250 ms
            const button = findChild(page, name);
            verify(button, name);
            verify(button.visible, name);
            for (let at = button.parent; at; at = at.parent) {
                if (at.contentY === undefined || !at.interactive)
                    continue;
                const y = at.contentItem.mapFromItem(button, 0, 0).y;
                at.contentY = Math.max(0, Math.min(y - 100, at.contentHeight - at.height));
            }
            wait(20);
            mouseClick(button);
            Shop.settle();
            wait(Theme.move + 50);
        }
        function type(name, words) {
            const field = findChild(page, name);
            verify(field, name);
            field.text = words;
        }
        function addFullFace() {
            show(register);
            tap("registerMain");
            type("respiratorModel", "full face 1");
            tap("respiratorKind5");
            compare(findChild(page, "respiratorFactor").text, "1000");
            tap("respiratorKeep");
            compare(Shop.protection.respiratorCount, 1);
            verify(!findChild(page, "respiratorSheet").opened);
        }

        function test_aRespiratorIsEnteredWithTheFactorOfItsKind() {
            addFullFace();
            tap("registerRespirator0");
            compare(findChild(page, "respiratorYear").text, "2006");
            verify(Shop.protection.respirator.useCount > 5);
        }
        function test_aFactorThatIsNoneIsRefusedAtItsFieldAndStaysTyped() {
            show(register);
            tap("registerMain");
            type("respiratorModel", "mask");
            type("respiratorFactor", "ten");
            tap("respiratorKeep");
            compare(findChild(page, "respiratorFactor").wrong, "This is no number.");
            compare(findChild(page, "respiratorFactor").text, "ten");
            compare(Shop.protection.respiratorCount, 0);
            verify(findChild(page, "respiratorSheet").opened);
        }
        function test_aFitTestIsTypedOnTheKeysAndOpensToItsSum() {
            addFullFace();
            page.destroy();
            show(protection);
            tap("recordFit");
            type("fitSize", "L");
            for (const factor of ["700", "650"]) {
                for (const digit of factor)
                    tap("key_" + digit);
                tap("fitAdd");
            }
            // By hand: 2 / (1/700 + 1/650) = 674.07.
            compare(findChild(page, "fitOverall").value, "674.1");
            tap("fitOverall");
            compare(Shop.protection.fitTest.sum.figure, "674.1");
            findChild(page, "fitSum").close();
            wait(Theme.move + 50);
            tap("fitKeep");
            verify(!findChild(page, "fitSheet").opened);
            verify(findChild(page, "registerRow0").words.indexOf("674.1") >= 0);
        }
        function test_aPainterStopsHimselfAndOnlyAManagerLetsHimSprayAgain() {
            Shop.be("Ivo");
            show(protection);
            Shop.protection.openPerson(Shop.protection.people.data(Shop.protection.people.index(1, 0), 256));
            compare(Shop.protection.personName, "Ivo");
            tap("doNotSpray");
            tap("flagKeep");
            verify(Shop.protection.flagged);
            verify(findChild(page, "flagCard").visible);
            verify(!findChild(page, "flagCard").pressable);
            verify(!findChild(page, "doNotSpray").visible);
            Shop.be("Mara");
            tap("flagCard");
            tap("flagKeep");
            verify(!Shop.protection.flagged);
        }
        function test_aSampleOverACeilingIsSaidAndOpensToItsSum() {
            show(exposure);
            tap("logSample");
            tap("sampleSubstance1");  // HDI
            compare(findChild(page, "sampleSubstance").text, "HDI");
            type("sampleValue", "0,03");
            type("sampleFrom", "8:00");
            type("sampleTo", "8:15");
            type("sampleDay", "9/21/2026");
            tap("sampleKeep");
            tryVerify(() => !Shop.exposure.working && Shop.exposure.resultCount === 2);
            wait(50);
            compare(findChild(page, "shift0").words, "over 1 of 2 limits");
            tap("result0");
            verify(Shop.exposure.sum.rows.rowCount() > 3);
            verify(findChild(page, "exposureSum").opened);
        }
        function test_limitsAreReadByEverybodyAndTypedByAManager() {
            Shop.be("Ivo");
            show(limits);
            verify(findChild(page, "addLimit").waits);
            tap("limit0");
            verify(!findChild(page, "limitKeep").visible);
            findChild(page, "limitSheet").close();
            wait(Theme.move + 50);
            Shop.be("Mara");
            tap("addLimit");
            type("limitSubstance", "toluene");
            type("limitValue", "200");
            type("limitAuthority", "OSHA");
            type("limitYear", "1971");
            tap("limitKeep");
            compare(findChild(page, "limitSource").wrong, "This is still empty.");
            type("limitSource", "29 CFR 1910.1000 table Z-2");
            tap("limitKeep");
            verify(!findChild(page, "limitSheet").opened);
        }
        function test_firstAidIsWrittenOnceAndLetsWhoTapsStopHimself() {
            show(aid);
            page.open();
            compare(Shop.aid.writtenWords, "");
            tap("firstAidChoice3");
            verify(Shop.aid.writtenWords.indexOf("injected by the gun") >= 0);
            const written = findChild(page, "firstAidWritten");
            verify(written.visible);
            verify(!findChild(page, "firstAidFlag").visible, "a cut is none of it");
            page.back();
            wait(20);
            tap("firstAidChoice0");
            tap("firstAidFlag");
            verify(Shop.aid.mayFlag, "one tap does not do it");
            tap("firstAidFlag");
            verify(!Shop.aid.mayFlag);
            verify(!findChild(page, "firstAidFlag").visible);
        }
    }
}
