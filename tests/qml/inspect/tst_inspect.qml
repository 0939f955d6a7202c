// Looking over, by hand and by key, on a real engine. The distances are UX's: a tap slips up to
// 12 dp, a drag begins at 16 dp, a touch means the nearest mark within 36 dp.
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
        id: carMade
        Rectangle {
            property alias page: page
            color: Theme.paper
            InspectCar {
                id: page
                anchors.fill: parent
                anchors.topMargin: 8
                inspect: Shop.inspect
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
                anchors.topMargin: 8
                inspect: Shop.inspect
                wide: parent.width >= 840
            }
        }
    }
    SignalSpy { id: asked; signalName: "panelAsked" }
    SignalSpy { id: next; signalName: "nextAsked" }

    TestCase {
        id: test
        name: "Inspect"
        when: windowShown

        function init() {
            failOnWarning(/.?/);
            Theme.reducedMotion = true;
            Shop.open();
        }
        function cleanup() {
            Theme.dark = false;
            Theme.textScale = 1;
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
        function make(component, width, height) {
            const made = createTemporaryObject(component, root, {width: width, height: height});
            verify(made);
            waitForRendering(made);
            return made;
        }
        function openPanel(panel, width, height) {
            Shop.inspect.openPanel(panel);
            const made = make(panelMade, width || 412, height || 636);
            next.target = made.page;
            next.clear();
            return made;
        }
        function mapOf(page) {
            return find(page, child => child instanceof PatternMap && !child.still);
        }
        function at(map, xMm, yMm) {
            return {x: map.xPx(xMm), y: map.yPx(yMm)};
        }
        function tap(map, xMm, yMm) {
            mouseClick(map, map.xPx(xMm), map.yPx(yMm));
            Shop.settle();
        }
        function keep(item, name) {
            waitForRendering(item);
            let saved = false;
            verify(item.grabToImage(picture => saved = picture.saveToFile("inspect-" + name + ".png")));
            tryVerify(() => saved);
        }
        function fill() {
            for (const panel of ["hatch", "rear bumper cover", "right quarter panel", "right rocker", "right front door",
                                 "right fender", "front bumper cover", "roof"])
                Shop.sayClean(panel);
            Shop.mark("hood", 400, 500);
            Shop.mark("hood", 620, 800);
            Shop.mark("left quarter panel", 800, 700);
            Shop.mark("left quarter panel", 950, 720);
            Shop.mark("left quarter panel", 880, 600);
        }

        function test_a_tap_marks_the_millimetre_under_it() {
            const page = openPanel("left quarter panel").page;
            const map = mapOf(page);
            const px = Math.round(map.xPx(700));
            const py = Math.round(map.yPx(600));
            const mm = map.pattern.toMm(px, py);
            mouseClick(map, px, py);
            Shop.settle();
            compare(Shop.inspect.panelMarkCount, 1);
            const stored = Shop.stored("left quarter panel", 0);
            fuzzyCompare(stored.x, mm.x, 1e-6);
            fuzzyCompare(stored.y, mm.y, 1e-6);
            compare(Shop.verdict("left quarter panel"), "to correct");
            compare(Shop.inspect.chosenTitle, "Nib 1");
        }
        function test_a_hood_mark_is_stored_on_the_panel_laid_flat() {
            const page = openPanel("hood").page;
            const map = mapOf(page);
            const top = map.pattern.toMm(map.width / 2, map.yPx(0)).y;
            fuzzyCompare(top, 0, 1e-6);
            tap(map, 300, 200);
            const stored = Shop.stored("hood", 0);
            // upright: x is the panel's y (left edge 0), y runs from rear to front
            fuzzyCompare(stored.y, map.pattern.toMm(map.xPx(300), 0).x, 1.5 / map.pattern.pxPerMm);
            verify(stored.x > 400, stored.x);
            compare(Shop.inspect.panelMarkCount, 1);
        }
        function test_a_tap_off_the_panel_is_refused_and_nothing_is_written() {
            const page = openPanel("left quarter panel").page;
            const map = mapOf(page);
            const before = Shop.entries;
            mouseClick(map, 12, 12);
            Shop.settle();
            compare(Shop.entries, before);
            compare(Shop.inspect.panelMarkCount, 0);
            verify(Shop.inspect.refusal !== "");
        }
        function test_a_slip_is_a_tap_and_a_long_drag_is_not() {
            const page = openPanel("left quarter panel").page;
            const map = mapOf(page);
            const from = at(map, 700, 650);
            mousePress(map, from.x, from.y);
            mouseMove(map, from.x + 8, from.y + 6);
            mouseRelease(map, from.x + 8, from.y + 6);
            Shop.settle();
            compare(Shop.inspect.panelMarkCount, 1);
            const far = at(map, 250, 200);
            mousePress(map, far.x, far.y);
            mouseMove(map, far.x + 14, far.y);
            mouseRelease(map, far.x + 14, far.y);
            Shop.settle();
            compare(Shop.inspect.panelMarkCount, 1);
        }
        function test_dragging_a_ring_moves_its_mark() {
            Shop.mark("left quarter panel", 700, 650);
            const page = openPanel("left quarter panel").page;
            const map = mapOf(page);
            const from = at(map, 700, 650);
            mousePress(map, from.x, from.y);
            mouseMove(map, from.x + 20, from.y);
            mouseMove(map, from.x + 60, from.y);
            mouseRelease(map, from.x + 60, from.y);
            Shop.settle();
            fuzzyCompare(Shop.stored("left quarter panel", 0).x, 700 + 60 / map.pattern.pxPerMm, 1 / map.pattern.pxPerMm);
            compare(Shop.inspect.panelMarkCount, 1);
        }
        function test_a_tap_near_a_mark_chooses_it() {
            Shop.mark("left quarter panel", 700, 650);
            const page = openPanel("left quarter panel").page;
            const map = mapOf(page);
            const on = at(map, 700, 650);
            mouseClick(map, on.x + 30, on.y);
            Shop.settle();
            compare(Shop.inspect.panelMarkCount, 1);
            compare(Shop.inspect.chosenTitle, "Nib 1");
        }
        function test_close_marks_are_one_ring_until_zoomed() {
            Shop.mark("left quarter panel", 700, 650);
            Shop.mark("left quarter panel", 710, 650);
            const page = openPanel("left quarter panel").page;
            const map = mapOf(page);
            const shown = () => {
                let rings = 0;
                for (let row = 0; row < 2; ++row)
                    rings += find(map, c => c instanceof PencilRing && c.index === row).visible ? 1 : 0;
                return rings;
            };
            compare(shown(), 1);
            tap(map, 705, 650);
            compare(Shop.inspect.panelMarkCount, 2);
            compare(shown(), 2);
        }
        function test_the_main_button_says_clean_and_goes_on() {
            const page = openPanel("left fender").page;
            verify(Shop.inspect.mainText.startsWith("Clean, next: "), Shop.inspect.mainText);
            const main = find(page, child => child.objectName === "panelMain");
            mouseClick(main);
            Shop.settle();
            compare(Shop.verdict("left fender"), "clean");
            compare(next.count, 1);
            verify(next.signalArguments[0][0] !== "left fender");
        }
        function test_a_loose_part_goes_to_its_rack_in_one_tap() {
            const page = openPanel("left mirror cap").page;
            compare(Shop.inspect.mainText, "Clean, edges and back, to rack 2");
            mouseClick(find(page, child => child.objectName === "panelMain"));
            Shop.settle();
            compare(Shop.verdict("left mirror cap"), "clean");
            compare(next.count, 1);
        }
        function test_marks_cannot_be_called_clean() {
            Shop.mark("left fender", 400, 500);
            const page = openPanel("left fender").page;
            verify(Shop.inspect.mainText.startsWith("To correct, next: "), Shop.inspect.mainText);
            page.forceActiveFocus();
            keyClick(Qt.Key_L);
            Shop.settle();
            compare(Shop.verdict("left fender"), "to correct");
            verify(Shop.inspect.refusal !== "");
        }
        function test_the_cross_walks_and_places() {
            const page = openPanel("left quarter panel").page;
            page.forceActiveFocus();
            const area = find(page, child => child instanceof PanelMarks);
            keyClick(Qt.Key_M);
            verify(area.crossed);
            const from = Qt.point(area.cross.x, area.cross.y);
            keyClick(Qt.Key_Right);
            keyClick(Qt.Key_Up);
            keyClick(Qt.Key_Up, Qt.ShiftModifier);
            compare(area.cross.x, from.x + 10);
            compare(area.cross.y, from.y + 11);
            keyClick(Qt.Key_N);
            Shop.settle();
            compare(Shop.stored("left quarter panel", 0), Qt.point(from.x + 10, from.y + 11));
        }
        function test_the_sticky_kind_is_the_next_mark() {
            const page = openPanel("left quarter panel").page;
            Shop.inspect.kind = Shop.inspect.kinds[2];
            tap(mapOf(page), 700, 650);
            compare(Shop.inspect.chosenTitle, "Fisheye 1");
            mouseClick(find(page, child => child.objectName === "markSize"));
            Shop.settle();
            compare(Shop.inspect.chosenSize, 2);
            mouseClick(find(page, child => child.objectName === "markKind"));
            waitForRendering(page);
            mouseClick(find(page, child => child.objectName === "size3"));
            Shop.settle();
            compare(Shop.inspect.chosenSize, 3);
            keep(page, "sheet");
            keyClick(Qt.Key_Escape);
            mouseClick(find(page, child => child.objectName === "markWithdraw"));
            Shop.settle();
            compare(Shop.inspect.panelMarkCount, 0);
        }
        function test_a_panel_of_the_map_opens_and_keys_walk() {
            const made = make(carMade, 412, 636);
            asked.target = made.page;
            asked.clear();
            const map = mapOf(made.page);
            const tag = find(map, child => child instanceof PanelTag && child.panel === "hood");
            mouseClick(map, map.xPx(tag.xMm), map.yPx(tag.yMm));
            compare(asked.signalArguments[0][0], "hood");
            made.page.forceActiveFocus();
            keyClick(Qt.Key_J);
            keyClick(Qt.Key_Return);
            compare(asked.count, 2);
            mouseClick(find(made.page, child => child.objectName === "lookOverNext"));
            compare(asked.signalArguments[2][0], Shop.inspect.nextPanel);
        }
        function test_nine_taps_are_nine_marks() {
            const page = openPanel("hood").page;
            const map = mapOf(page);
            const times = [];
            for (let i = 0; i < 9; ++i) {
                const on = at(map, 450 + 220 * (i % 3), 280 + 200 * Math.floor(i / 3));
                const before = Shop.inspect.panelMarkCount;
                mousePress(map, on.x, on.y);
                const start = Date.now();
                mouseRelease(map, on.x, on.y);
                while (Shop.inspect.panelMarkCount === before && Date.now() - start < 2000)
                    wait(0);
                waitForRendering(map, 200);
                times.push(Date.now() - start);
            }
            compare(Shop.inspect.panelMarkCount, 9);
            console.info("tap to frame, ms: " + times.join(" "));
        }
        function test_pictures_data() {
            return [
                {tag: "412-light", width: 412, height: 636, dark: false, scale: 1},
                {tag: "412-dark", width: 412, height: 636, dark: true, scale: 1},
                {tag: "412-large", width: 412, height: 636, dark: false, scale: 1.5},
                {tag: "900", width: 900, height: 940, dark: false, scale: 1},
                {tag: "900-large", width: 900, height: 940, dark: false, scale: 1.5},
                {tag: "1440", width: 1440, height: 640, dark: false, scale: 1},
                {tag: "1440-dark", width: 1440, height: 640, dark: true, scale: 1}
            ];
        }
        function test_pictures(row) {
            Theme.dark = row.dark;
            Theme.textScale = row.scale;
            fill();
            const car = make(carMade, row.width, row.height);
            keep(car, "car-" + row.tag);
            car.destroy();
            const empty = openPanel("left fender", row.width, row.height);
            keep(empty, "empty-" + row.tag);
            empty.destroy();
            const full = openPanel("left quarter panel", row.width, row.height);
            keep(full, "panel-" + row.tag);
            tap(mapOf(full.page), 140, 220);
            keep(full, "after-" + row.tag);
            compare(grabImage(full).pixel(2, 2), Theme.paper);
        }
    }
}
