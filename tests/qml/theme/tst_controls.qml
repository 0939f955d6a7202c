import QtQuick
import QtTest
import Jambline.Theme

Item {
    id: root
    width: 412
    height: 900

    Component { id: slabMade; SlabButton { width: 380; height: implicitHeight; text: "Compound done" } }
    Component { id: plainMade; PlainButton { width: implicitWidth; height: implicitHeight; text: "Clean" } }
    Component { id: tapeMade; TapePaper { width: 200; height: 44; key: "K 41-206"; color: "#E4C57A"; crepe: "#1E1C18" } }
    Component { id: padMade; KeyPad { width: 380; height: implicitHeight; label: "Gap"; kind: KeyPad.Tenths; unitText: "mm" } }
    Component { id: ruleMade; SteelRule { width: 412; height: implicitHeight; name: "Clock"; operation: "Inspect"; who: "Ivo"; seconds: 401; used_h: 0.1; allotted_h: 1; tabText: "Correct" } }
    Component {
        id: actsMade
        ActRow {
            width: 380
            height: implicitHeight
            PlainButton { objectName: "a"; text: "Skip" }
            PlainButton { objectName: "b"; text: "Came back" }
            PlainButton { objectName: "c"; text: "Cut through" }
        }
    }
    Component { id: undoMade; UndoRow { width: 380; height: implicitHeight; text: "Nib 6 placed"; middleText: "Kind" } }
    Component { id: bannerMade; NoteBanner { width: 380; height: implicitHeight; happened: "Nib 7 was not saved."; stands: "All up to nib 6 is saved."; actText: "Make room"; details: "code 28" } }
    Component { id: fieldMade; FaceField { width: 380; height: implicitHeight; label: "Plate" } }
    Component { id: filterMade; SentenceFilter { width: 380; parts: [{text: "Cars", key: ""}, {text: "delivered", key: "what"}] } }
    Component { id: lanesMade; Lanes { width: 380; height: implicitHeight; name: "Time line"; start: 0; end: 100; lanes: [{name: "Ivo", spans: []}] } }
    Component { id: figureMade; FigureBlock { width: 180; height: implicitHeight; label: "left after"; value: "47"; unit: "µm"; limitWords: "keep 40"; grade: FigureBlock.Estimate } }
    Component {
        id: sheetMade
        Item {
            property alias sheet: over
            property alias behind: behind
            width: 412
            height: 900
            PlainButton { id: behind; text: "Behind" }
            Sheet {
                id: over
                anchors.fill: parent
                title: "Who is it?"
                PlainButton { objectName: "inside"; text: "Ivo" }
            }
        }
    }
    Component {
        id: tableMade
        DataTable {
            id: cars
            width: 400
            height: 300
            name: "Cars"
            columns: [TableColumn { title: "Car"; fill: true }, TableColumn { title: "Hours"; width: 80 }]
            emptyText: "No car yet"
            model: 3
            delegate: DataRow {
                table: cars
                name: "row " + index
                Words { x: cars.cellX(0); width: cars.cellWidth(0); text: "row"; anchors.verticalCenter: parent.verticalCenter }
            }
        }
    }
    SignalSpy { id: spy }
    SignalSpy { id: other }

    TestCase {
        name: "Controls"
        when: windowShown

        function init() {
            failOnWarning(/.?/);
        }

        function cleanup() {
            Theme.textScale = 1.0;
            Theme.reducedMotion = false;
            Theme.desk = false;
        }

        function make(component, values) {
            const item = createTemporaryObject(component, root, values ?? {});
            verify(item);
            return item;
        }

        function watch(target, name) {
            spy.target = null;
            spy.signalName = "";
            spy.target = target;
            spy.signalName = name;
            spy.clear();
        }

        function test_the_slab_is_76_high_and_others_72() {
            compare(make(slabMade).height, 76);
            const plain = make(plainMade);
            compare(plain.height, 72);
            verify(plain.width >= 72);
            compare(make(ruleMade).height, 76);
            compare(make(undoMade).height, 72);
        }

        function test_a_second_touch_on_the_slab_within_a_quarter_second_is_ignored() {
            const slab = make(slabMade);
            watch(slab, "clicked");
            mouseClick(slab);
            mouseClick(slab);
            compare(spy.count, 1);
            wait(260);
            mouseClick(slab);
            compare(spy.count, 2);
        }

        function test_a_slip_of_12_dp_still_acts_and_more_does_not() {
            const plain = make(plainMade, {width: 200});
            watch(plain, "clicked");
            mousePress(plain, 60, 30);
            mouseMove(plain, 70, 34);
            compare(spy.count, 0);
            mouseRelease(plain, 70, 34);
            compare(spy.count, 1);
            mousePress(plain, 60, 30);
            mouseMove(plain, 76, 30);
            mouseRelease(plain, 76, 30);
            compare(spy.count, 1);
        }

        function test_touch_acts_on_release() {
            const plain = make(plainMade);
            watch(plain, "clicked");
            const touch = touchEvent(plain);
            touch.press(1, plain, 30, 30).commit();
            compare(spy.count, 0);
            touch.release(1, plain, 30, 30).commit();
            compare(spy.count, 1);
        }

        function test_keys_press_and_the_ring_shows_data() {
            return [{tag: "space", key: Qt.Key_Space}, {tag: "enter", key: Qt.Key_Return}];
        }

        function test_keys_press_and_the_ring_shows(row) {
            const plain = make(plainMade);
            watch(plain, "clicked");
            plain.forceActiveFocus();
            verify(plain.activeFocusOnTab);
            keyClick(row.key);
            compare(spy.count, 1);
        }

        function test_a_waiting_slab_refuses_and_can_be_held() {
            const slab = make(slabMade, {waits: true, holdable: true, secondLine: "hold to start without them"});
            watch(slab, "clicked");
            other.target = slab;
            other.signalName = "refused";
            other.clear();
            mouseClick(slab);
            compare(spy.count, 0);
            compare(other.count, 1);
            other.signalName = "held";
            other.clear();
            mousePress(slab);
            wait(650);
            mouseRelease(slab);
            compare(other.count, 1);
            compare(spy.count, 0);
        }

        function test_names_and_roles_are_spoken() {
            const slab = make(slabMade, {secondLine: "then wipe"});
            compare(slab.Accessible.name, "Compound done, then wipe");
            compare(slab.Accessible.role, Accessible.Button);
            compare(make(figureMade).Accessible.name, "left after, 47 µm, keep 40, estimate. Opens the sum.");
            compare(make(undoMade).Accessible.name, "Nib 6 placed");
            compare(make(lanesMade).Accessible.role, Accessible.Slider);
        }

        function test_words_make_a_control_grow_and_nothing_is_cut() {
            Theme.textScale = 1.5;
            const slab = make(slabMade, {width: 220, text: "Spray clock waits for 2 musts", secondLine: "hold to start without them, with a reason"});
            verify(slab.implicitHeight > 76);
            const banner = make(bannerMade, {width: 240});
            verify(banner.implicitHeight > 72);
            const rule = make(ruleMade, {who: "Ivo · 0.1 of 1.0 h", width: 360});
            verify(rule.folded);
            verify(rule.implicitHeight > 76);
        }

        function test_acts_stand_side_by_side_in_equal_parts_or_below_one_another() {
            const row = make(actsMade);
            waitForRendering(row);
            const a = findChild(row, "a"), b = findChild(row, "b"), c = findChild(row, "c");
            fuzzyCompare(a.width, b.width, 1);
            fuzzyCompare(b.width, c.width, 1);
            compare(a.y, c.y);
            row.width = 260;
            tryVerify(() => c.y > b.y && b.y > a.y);
            compare(a.width, 260);
        }

        function test_a_tear_is_the_same_for_the_same_key_only() {
            const first = make(tapeMade), twin = make(tapeMade), third = make(tapeMade, {key: "P 52-318"});
            const told = tape => Array.from(tape.outline(), p => p.x.toFixed(6) + " " + p.y.toFixed(6)).join();
            compare(told(first), told(twin));
            verify(told(first) !== told(third));
            twin.width = 260;
            const tear = tape => Array.from(tape.outline(), p => (p.x > 100 ? tape.width - p.x : p.x).toFixed(6)).join();
            compare(tear(first), tear(twin));
            first.tornLeft = false;
            compare(first.outline().filter(p => p.x === 0).length, 7);
            waitForRendering(first);
            verify(grabImage(first).equals(grabImage(first)));
        }

        // Written down when first drawn: a tape must look the same on every machine and in every year.
        function test_the_tear_of_a_known_key_stays() {
            const tape = make(tapeMade);
            const told = Array.from(tape.outline()).slice(0, 4).map(p => (200 - p.x).toFixed(3)).join(" ");
            compare(told, "1.308 3.157 4.601 1.699");
        }

        function test_the_key_pad_puts_the_point_of_hundredths_and_the_colon() {
            const pad = make(padMade);
            pad.digits = 4;
            pad.kind = KeyPad.Hundredths;
            for (const key of ["key_5", "key_0"])
                mouseClick(findChild(pad, key));
            compare(pad.shown, "0.50");
            pad.kind = KeyPad.Clock;
            compare(pad.shown, "0:50");
            mouseClick(findChild(pad, "key_0"));
            compare(pad.shown, "5:00");
            compare(pad.value, 500);
        }
        function test_the_key_pad_puts_the_point_and_goes_on() {
            const pad = make(padMade);
            watch(pad, "complete");
            mouseClick(findChild(pad, "key_3"));
            compare(pad.shown, "0.3");
            mouseClick(findChild(pad, "key_9"));
            compare(pad.shown, "3.9");
            compare(spy.count, 1);
            compare(spy.signalArguments[0][0], 39);
            mouseClick(findChild(pad, "key_4"));
            compare(pad.shown, "0.4");
            mouseClick(findChild(pad, "key_erase"));
            compare(pad.value, -1);
            pad.forceActiveFocus();
            keyClick(Qt.Key_4);
            keyClick(Qt.Key_2);
            compare(pad.value, 42);
            verify(findChild(pad, "key_5").height >= 72);
            verify(findChild(pad, "key_5").width >= 88);
        }

        function test_the_tab_of_the_rule_switches_and_the_rest_opens() {
            const rule = make(ruleMade);
            watch(rule, "switched");
            other.target = rule;
            other.signalName = "clicked";
            other.clear();
            mouseClick(findChild(rule, "ruleTab"));
            compare([spy.count, other.count], [1, 0]);
            mouseClick(rule, 60, 40);
            compare([spy.count, other.count], [1, 1]);
            compare(findChild(rule, "ruleTab").height, 72);
        }

        function test_the_flag_and_the_bar_stand_where_the_hours_are() {
            const rule = make(ruleMade);
            const edge = findChild(rule, "ruleEdge");
            fuzzyCompare(edge.flagX, 0.74 * 412, 0.01);
            fuzzyCompare(edge.usedX, 0.1 * edge.flagX, 0.01);
            fuzzyCompare(edge.tick_h, 0.1, 1e-9);
            rule.used_h = 2;
            verify(rule.over);
            verify(edge.usedX < 412);
            fuzzyCompare(edge.usedX, 2 * edge.flagX, 0.01);
            rule.allotted_h = 12;
            verify(edge.tick_h > 0.1);
        }

        function test_undo_and_the_middle_act() {
            const row = make(undoMade);
            watch(row, "undone");
            mouseClick(findChild(row, "undoAct"));
            compare(spy.count, 1);
            watch(row, "middle");
            mouseClick(findChild(row, "undoMiddle"));
            compare(spy.count, 1);
            row.mode = UndoRow.AmendOnly;
            compare(findChild(row, "undoAct").Accessible.name, "Amend: Nib 6 placed");
        }

        function test_the_banner_acts_and_opens_its_details() {
            const banner = make(bannerMade);
            watch(banner, "acted");
            mouseClick(findChild(banner, "bannerAct"));
            compare(spy.count, 1);
            const before = banner.implicitHeight;
            mouseClick(findChild(banner, "bannerDetails"));
            verify(banner.opened);
            tryVerify(() => banner.implicitHeight > before);
        }

        function test_a_field_keeps_what_was_typed_when_it_is_wrong() {
            const field = make(fieldMade);
            watch(field, "edited");
            field.focusField();
            keyClick(Qt.Key_K);
            keyClick(Qt.Key_4);
            compare(field.text, "k4");
            compare(spy.count, 2);
            field.wrong = "A plate has six signs here.";
            compare(field.text, "k4");
            compare(findChild(field, "faceInput").Accessible.name, "Plate, A plate has six signs here.");
        }

        function test_only_underlined_words_of_a_sentence_are_pressed() {
            const filter = make(filterMade);
            watch(filter, "wordPressed");
            mouseClick(findChild(filter, "word_what"));
            compare(spy.count, 1);
            compare(spy.signalArguments[0][0], "what");
            mouseClick(findChild(filter, "word_"));
            compare(spy.count, 1);
            compare(filter.Accessible.name, "Cars delivered");
        }

        function test_a_table_is_walked_and_opened_by_keys() {
            const table = make(tableMade);
            watch(table, "opened");
            table.forceActiveFocus();
            keyClick(Qt.Key_J);
            keyClick(Qt.Key_Down);
            compare(table.chosen, 1);
            keyClick(Qt.Key_K);
            compare(table.chosen, 0);
            keyClick(Qt.Key_End);
            compare(table.chosen, 2);
            keyClick(Qt.Key_Return);
            compare(spy.count, 1);
            compare(spy.signalArguments[0][0], 2);
            watch(table, "sortAsked");
            mouseClick(findChild(table, "tableHead_1"));
            compare(spy.count, 1);
            compare(table.sortColumn, -1);
            table.sortColumn = 1;
            verify(table.Accessible.name.includes("sorted by Hours"));
        }

        function test_the_handle_of_the_lanes_moves_by_keys_and_drag() {
            const lanes = make(lanesMade);
            watch(lanes, "moved");
            lanes.forceActiveFocus();
            keyClick(Qt.Key_Right);
            compare(lanes.position, 1);
            keyClick(Qt.Key_Left);
            keyClick(Qt.Key_Left);
            compare(lanes.position, 0);
            keyClick(Qt.Key_End);
            compare(lanes.position, 100);
            compare(spy.count, 3);
            mousePress(lanes, lanes.xOf(50), 20);
            mouseRelease(lanes, lanes.xOf(50), 20);
            fuzzyCompare(lanes.position, 50, 1);
        }

        function test_an_owner_steps_the_handle_of_the_lanes_itself() {
            const lanes = make(lanesMade);
            lanes.step = 0;
            lanes.position = 40;
            watch(lanes, "stepAsked");
            lanes.forceActiveFocus();
            keyClick(Qt.Key_Right);
            compare(spy.signalArguments[0][0], 1);
            keyClick(Qt.Key_Left, Qt.ShiftModifier);
            compare(spy.signalArguments[1][0], -10);
            keyClick(Qt.Key_Home);
            verify(spy.signalArguments[2][0] < -1000);
            watch(lanes, "moved");
            mousePress(lanes, lanes.xOf(50), 20);
            mouseRelease(lanes, lanes.xOf(50), 20);
            fuzzyCompare(spy.signalArguments[0][0], 50, 1);
            compare(lanes.position, 40);
        }

        function test_a_word_of_a_sentence_is_dropped_by_delete_and_a_fixed_one_is_not() {
            const filter = make(filterMade);
            watch(filter, "wordDropped");
            filter.focusWord("what");
            keyClick(Qt.Key_Delete);
            compare(spy.count, 1);
            compare(spy.signalArguments[0][0], "what");
            filter.drop("");
            compare(spy.count, 1);
        }

        function test_a_sheet_keeps_the_focus_and_gives_it_back() {
            Theme.reducedMotion = true;
            const scene = make(sheetMade);
            scene.behind.forceActiveFocus();
            scene.sheet.opened = true;
            const closer = findChild(scene.sheet, "sheetClose");
            verify(scene.sheet.activeFocus);
            verify(!scene.behind.activeFocus);
            keyClick(Qt.Key_Tab);
            verify(closer.activeFocus);
            scene.behind.forceActiveFocus();
            tryVerify(() => closer.activeFocus); // the sheet takes it back a moment later
            findChild(scene.sheet, "inside").forceActiveFocus();
            verify(findChild(scene.sheet, "inside").activeFocus);
            watch(scene.sheet, "closed");
            keyClick(Qt.Key_Escape);
            compare(spy.count, 1);
            verify(!scene.sheet.opened);
            verify(scene.behind.activeFocus);
        }
    }
}
