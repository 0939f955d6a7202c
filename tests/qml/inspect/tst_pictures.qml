// Looking at pictures by hand: wall, zoom, notes, slider, the way to a mark. On a real engine.
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
        id: lookMade
        Rectangle {
            property alias page: page
            color: Theme.paper
            Look {
                id: page
                anchors.fill: parent
                look: Shop.look
                wide: parent.width >= 840
            }
        }
    }
    Component {
        id: wallMade
        Rectangle {
            property alias page: page
            color: Theme.paper
            Wall {
                id: page
                anchors.fill: parent
                wall: Shop.wall
                wide: parent.width >= 840
            }
        }
    }
    Component {
        id: compareMade
        Rectangle {
            property alias page: page
            color: Theme.paper
            Compare {
                id: page
                anchors.fill: parent
                compare: Shop.compare
                wide: parent.width >= 840
            }
        }
    }
    Component {
        id: panelMade
        Rectangle {
            property alias page: page
            color: Theme.paper
            InspectPanel {
                id: page
                anchors.fill: parent
                inspect: Shop.inspect
                look: Shop.look
            }
        }
    }
    SignalSpy {
        id: asked
    }

    TestCase {
        name: "Pictures"
        when: windowShown

        function init() {
            failOnWarning(/.?/);
            Theme.reducedMotion = true;
            Shop.openSmall();
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
            mouseClick(button);
            Shop.settle();
        }
        function make(component, width, height) {
            const made = createTemporaryObject(component, root, {width: width, height: height});
            verify(made);
            waitForRendering(made);
            return made;
        }
        function listen(item, name) {
            asked.target = null;
            asked.signalName = name;
            asked.target = item;
            asked.clear();
        }
        function drag(item, fromX, fromY, toX, toY) {
            mousePress(item, fromX, fromY);
            for (let step = 1; step <= 8; ++step)
                mouseMove(item, fromX + (toX - fromX) * step / 8, fromY + (toY - fromY) * step / 8);
            mouseRelease(item, toX, toY);
            Shop.settle();
        }
        function openLook(width, height) {
            const picture = Shop.keepPicture("#808080", "hood", "");
            Shop.look.open(picture, [picture]);
            const made = make(lookMade, width || 412, height || 636);
            const drawn = named(made, "lookPicture");
            tryVerify(() => drawn.here);
            made.page.forceActiveFocus();
            return {picture: picture, made: made, drawn: drawn, touch: named(made, "lookTouch")};
        }

        function test_a_tap_on_the_wall_opens_that_picture_of_all() {
            const first = Shop.keepPicture("#802020", "hood", "");
            Shop.keepPicture("#208020", "roof", "");
            const page = make(wallMade, 412, 636).page;
            listen(page, "lookAsked");
            press(page, "wallCell");
            compare(asked.count, 1);
            compare(asked.signalArguments[0][0], first);
            compare(asked.signalArguments[0][1].length, 2);
        }
        function test_the_wall_is_asked_for_one_panel_by_its_words() {
            Shop.keepPicture("#802020", "hood", "");
            Shop.keepPicture("#208020", "roof", "");
            const page = make(wallMade, 412, 636).page;
            press(page, "word_panel");
            press(page, "choice1");
            compare(Shop.wall.pictures, 1);
            compare(Shop.wall.countWords, "1 of 2 pictures");
        }
        function test_the_wheel_zooms_about_the_pointer_and_a_drag_moves() {
            const at = openLook();
            const before = at.drawn.toPicture(100, 200);
            for (let i = 0; i < 6; ++i)
                mouseWheel(at.touch, 100, 200, 0, 120);
            verify(at.drawn.zoom > 2, "zoom " + at.drawn.zoom);
            const now = at.drawn.toPicture(100, 200);
            fuzzyCompare(now.x, before.x, 0.01);
            fuzzyCompare(now.y, before.y, 0.01);
            const held = at.drawn.toPicture(200, 200);
            drag(at.touch, 200, 200, 160, 180);
            const moved = at.drawn.toPicture(160, 180);
            fuzzyCompare(moved.x, held.x, 0.01);
            fuzzyCompare(moved.y, held.y, 0.01);
            keyClick(Qt.Key_0);
            compare(at.drawn.zoom, 1);
        }
        function test_two_fingers_zoom_and_draw_nothing() {
            const at = openLook();
            press(at.made, "lookDraw");
            waitForRendering(at.made);
            const fingers = touchEvent(at.touch);
            fingers.press(0, at.touch, 170, 200).press(1, at.touch, 230, 200).commit();
            for (let step = 1; step <= 10; ++step) {
                fingers.move(0, at.touch, 170 - 6 * step, 200).move(1, at.touch, 230 + 6 * step, 200).commit();
                wait(20);  // moves within a frame are one
            }
            fingers.release(0, at.touch, 110, 200).release(1, at.touch, 290, 200).commit();
            Shop.settle();
            verify(at.drawn.zoom > 1.5, "zoom " + at.drawn.zoom);
            compare(Shop.notes(at.picture), 0);
        }
        function test_zoomed_in_it_is_drawn_from_the_file_in_full_resolution() {
            const at = openLook(1440, 900);
            for (let i = 0; i < 8; ++i)
                keyClick(Qt.Key_Plus);
            tryVerify(() => at.drawn.sharp);
            compare(at.drawn.zoom, 16);
        }
        function test_one_drag_draws_a_circle_and_one_an_arrow() {
            const at = openLook();
            press(at.made, "lookDraw");
            waitForRendering(at.made);
            drag(at.touch, 200, 200, 260, 200);
            compare(Shop.notes(at.picture), 1);
            let note = Shop.lastNote(at.picture);
            compare(note[0], 0);
            const middle = at.drawn.toPicture(200, 200);
            fuzzyCompare(note[1], middle.x, 0.001);
            fuzzyCompare(note[2], middle.y, 0.001);
            press(at.made, "tool2");
            drag(at.touch, 100, 250, 180, 210);
            note = Shop.lastNote(at.picture);
            compare(note[0], 1);
            const tip = at.drawn.toPicture(180, 210);
            fuzzyCompare(note[1], tip.x, 0.001);  // the tip is where the finger left
            fuzzyCompare(note[2], tip.y, 0.001);
            // A touch that goes nowhere is none.
            drag(at.touch, 100, 250, 103, 250);
            compare(Shop.notes(at.picture), 2);
            press(at.made, "lookMain");
            verify(!at.made.page.drawing);
            drag(at.touch, 100, 250, 160, 250);
            compare(Shop.notes(at.picture), 2);
        }
        function test_a_tap_with_the_text_tool_asks_for_words() {
            const at = openLook();
            press(at.made, "lookDraw");
            waitForRendering(at.made);
            press(at.made, "tool3");
            mouseClick(at.touch, 150, 220);
            const field = named(at.made, "faceInput");
            tryVerify(() => field.activeFocus);
            for (const letter of "run")
                keyClick(letter);
            press(at.made, "pictureTextKeep");
            compare(Shop.notes(at.picture), 1);
            compare(Shop.lastNote(at.picture)[5], "run");
            fuzzyCompare(Shop.lastNote(at.picture)[1], at.drawn.toPicture(150, 220).x, 0.001);
        }
        function test_a_note_is_taken_back() {
            const at = openLook();
            Shop.look.draw(0, 0.5, 0.5, 0.6, 0.5);
            Shop.settle();
            compare(Shop.notes(at.picture), 1);
            press(at.made, "lookKnown");
            press(at.made, "noteBack");
            compare(Shop.notes(at.picture), 0);
        }
        function test_a_drag_sideways_turns_to_the_next() {
            const first = Shop.keepPicture("#802020", "hood", "");
            const second = Shop.keepPicture("#208020", "roof", "");
            Shop.look.open(first, [first, second]);
            const made = make(lookMade, 412, 636);
            made.page.forceActiveFocus();
            const touch = named(made, "lookTouch");
            drag(touch, 300, 200, 150, 205);
            compare(Shop.look.picture, second);
            drag(touch, 150, 200, 300, 205);
            compare(Shop.look.picture, first);
            keyClick(Qt.Key_Right);
            compare(Shop.look.picture, second);
        }
        function test_the_slider_shows_the_earlier_left_and_the_later_right() {
            Shop.keepPicture("#800000", "hood", "");
            Shop.compare.open(Shop.keepPicture("#000080", "hood", ""));
            const made = make(compareMade, 412, 636);
            const slider = named(made, "compareSlider");
            const touch = named(made, "compareTouch");
            tryVerify(() => {
                const seen = grabImage(made);
                const at = touch.mapToItem(made, 0, touch.height / 2 - 60);
                return seen.red(at.x + 40, at.y) === 0x80 && seen.blue(at.x + touch.width - 40, at.y) === 0x80;
            });
            mousePress(touch, touch.width / 2, 200);
            mouseMove(touch, touch.width * 0.9, 200);
            mouseRelease(touch, touch.width * 0.9, 200);
            fuzzyCompare(slider.split, 0.9, 0.01);
            const seen = grabImage(made);
            const at = touch.mapToItem(made, touch.width * 0.7, touch.height / 2 - 60);
            compare(seen.red(at.x, at.y), 0x80);
            made.page.forceActiveFocus();
            keyClick(Qt.Key_Left);
            fuzzyCompare(slider.split, 0.85, 0.01);
            press(made, "compareWay");
            verify(!named(made, "compareSlider"));
        }
        function test_a_mark_shows_its_pictures_and_a_picture_leads_to_its_mark() {
            Shop.mark("hood", 500, 500);
            Shop.inspect.openPanel("hood");
            const mark = Shop.markId(0);
            const picture = Shop.keepPicture("#802020", "hood", mark);
            Shop.inspect.choose(mark);
            const page = make(panelMade, 412, 892).page;
            const sheet = find(page, child => child instanceof MarkSheet);
            sheet.opened = true;
            waitForRendering(page);
            listen(page, "pictureAsked");
            const shown = named(sheet, "markPicture");
            verify(shown);
            shown.press();
            compare(asked.count, 1);
            compare(asked.signalArguments[0][0], picture);

            Shop.look.open(picture, [picture]);
            const look = make(lookMade, 1440, 900).page;
            listen(look, "markAsked");
            press(look, "lookMark");
            compare(asked.signalArguments[0][0], "hood");
            compare(asked.signalArguments[0][1], mark);
        }
        function test_a_picture_is_filed_elsewhere_by_taps() {
            const at = openLook(412, 892);
            press(at.made, "lookKnown");
            press(at.made, "lookFiling");
            press(at.made, "filing1");
            const roof = find(at.made, child => child.visible && child.text === "Roof");
            verify(roof);
            mouseClick(roof);
            compare(Shop.look.panelChoices[Shop.look.filedPanel], "Roof");
            waitForRendering(at.made);
            press(at.made, "filingKeep");
            compare(Shop.look.title.split(",")[0], "Roof");
        }
    }
}
