// Booths by hand on a real engine: one is named, a hose is logged in two taps, filters with their
// question, and a time to come is refused. Every tap is a pointer's.
import QtQuick
import QtTest
import Jambline.Theme
import Jambline.Screens
import Jambline.Booth
import Jambline.Test

Item {
    id: root
    width: 412
    height: 892

    Component {
        id: made
        Booth {
            width: 412
            height: 892
            booth: Shop.booth
            facts: Shop.boothFacts
            reading: Shop.boothReading
        }
    }

    TestCase {
        id: test
        name: "Booths"
        when: windowShown

        property Item page: null
        property int taps: 0

        function init() {
            Shop.open();
            page = createTemporaryObject(made, root);
            waitForRendering(page);
            taps = 0;
        }
        function tap(name) {
            wait(260);  // a main act does not hear a second touch within 250 ms
            const button = findChild(page, name);
            verify(button, name);
            verify(button.visible, name);
            mouseClick(button);
            ++taps;
            Shop.settle();
            wait(Theme.move + 50);
        }
        function nameOne() {
            tap("addBooth");
            findChild(page, "boothName").text = "Booth 1";
            tap("boothKeep");
            compare(Shop.booth.boothCount, 1);
            taps = 0;
        }

        function test_aHoseIsLoggedInTwoTaps() {
            nameOne();
            tap("boothEvent1");
            tap("eventKeep");
            compare(taps, 2);
            compare(findChild(page, "boothEvent1").secondLine, "just now");
        }
        function test_oldFiltersThatAreStillInStandOnTheBoothUntilTheyAreOut() {
            nameOne();
            tap("boothEvent0");
            tap("eventFiltersIn");
            compare(taps, 2);
            verify(findChild(page, "filtersOut").visible);
            tap("filtersOut");
            verify(!findChild(page, "filtersOut").visible);
        }
        function test_aSmokeTestIsTypedOnTheKeysAndTheBoothCountsByIt() {
            nameOne();
            compare(findChild(page, "boothMain").text, "Log a smoke test");
            tap("boothMain");
            for (const key of ["key_5", "key_0", "key_0"])
                tap(key);
            tap("readingKeep");
            tap("boothNumbers");
            compare(findChild(page, "boothSmoke").value, "5:00");
            compare(findChild(page, "boothMain").text, "Log a reading");
        }
        function test_whatIsKnownOfABoothIsTypedOnce() {
            nameOne();
            tap("boothTape");
            tap("boothFacts");
            findChild(page, "fact_wanted_m_s").edited("100");
            findChild(page, "factsKeep").press();  // it lies below
            compare(findChild(page, "fact_wanted_from").wrong, "Say who requires it: a number of nobody is no requirement.");
            findChild(page, "fact_wanted_from").edited("its maker");
            wait(260);
            findChild(page, "factsKeep").press();
            Shop.settle();
            compare(findChild(page, "boothMain").text, "Log a smoke test");
        }
        function test_aTimeToComeIsRefusedInWords() {
            nameOne();
            tap("boothEvent4");
            tap("eventEarlier");
            tap("eventDayLater");
            verify(findChild(page, "whenRefused").visible);
            compare(findChild(page, "whenRefused").text, "That time is still to come. The latest is now.");
            tap("eventDayEarlier");
            verify(!findChild(page, "whenRefused").visible);
            tap("eventKeep");
            compare(findChild(page, "boothEvent4").secondLine, "24 h ago");
        }
    }
}
