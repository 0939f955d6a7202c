import QtQuick
import QtTest
import Jambline.Theme

Item {
    id: root
    width: 900
    height: 700

    Component {
        id: chartMade
        RateChart {
            id: made
            width: 380
            height: 280
            name: "Dirt of 40 cars"
            unitWords: "nibs per m²"
            onPicked: point => chosen = point
        }
    }
    Component {
        id: linesMade
        Rectangle {
            width: 412
            height: 700
            color: Theme.sheet
            Column {
                x: 16
                y: 16
                width: 380
                spacing: 16
                EffectLine { width: parent.width; name: "less"; ratio: 0.6; low: 0.5; high: 0.7; strong: true; lowWords: "less dirt"; middleWords: "same"; highWords: "more dirt" }
                EffectLine { width: parent.width; name: "as before"; ratio: 1.1; low: 0.8; high: 1.6; lowWords: "less dirt"; highWords: "more dirt" }
                EffectLine { width: parent.width; name: "none left"; ratio: 0; low: 0; high: 0.4; strong: true }
                EffectLine { width: parent.width; name: "none before"; low: 3; unbounded: true; strong: true }
                EffectLine { width: parent.width; name: "too few"; tooFew: true }
                RankBars {
                    objectName: "bars"
                    width: parent.width
                    name: "Causes"
                    most: 20
                    model: ListModel {
                        ListElement { words: "hose"; count: 20; countWords: "20 cars"; quiet: false }
                        ListElement { words: "left open"; count: 10; countWords: "10 cars"; quiet: true }
                    }
                }
            }
        }
    }
    SignalSpy { id: spy }

    TestCase {
        id: test
        name: "Charts"
        when: windowShown

        function init() {
            failOnWarning(/.?/);
        }

        function cleanup() {
            Theme.dark = false;
            spy.target = null;
        }

        function made(count) {
            const chart = createTemporaryObject(chartMade, root);
            const days = [], rates = [], lows = [], highs = [], centers = [], looks = [];
            for (let i = 0; i < count; ++i) {
                days.push(20574 + i * 300 / count);
                rates.push(2 + 1.5 * Math.sin(i * 2.3) + (i === 20 ? 4 : 0));
                lows.push(0.3);
                highs.push(i % 3 === 0 ? 4.6 : 5.4);
                centers.push(i < count / 2 ? 2.4 : 1.6);
                looks.push(i === 20 ? ChartLook.Above : i === 30 ? ChartLook.RunBelow : ChartLook.Plain);
            }
            chart.days = days;
            chart.rates = rates;
            chart.lows = lows;
            chart.highs = highs;
            chart.centers = centers;
            chart.looks = looks;
            chart.flagDays = [20620, 20640, 20724];
            chart.flagWords = ["new suits, Jun 16", "cleaned, Jul 6", "filters changed, Sep 28"];
            chart.flagStrong = [0, 0, 1];
            return chart;
        }

        function test_pictures_differ_from_empty_paper_data() {
            return [{tag: "light", dark: false, count: 40}, {tag: "dark", dark: true, count: 40},
                {tag: "thousand", dark: false, count: 1000}];
        }

        function test_pictures_differ_from_empty_paper(data) {
            Theme.dark = data.dark;
            const chart = made(data.count);
            chart.chosen = 20;
            const picture = grabImage(chart);
            const place = chart.paper.placeOf(20);
            compare(picture.pixel(Math.round(place.x), Math.round(chart.paper.y + place.y)), Theme.oxide);
            picture.save("charts-" + data.tag + ".png");
        }

        function test_lines_are_drawn() {
            const lines = createTemporaryObject(linesMade, root);
            const bars = findChild(lines, "bars");
            compare(bars.children[0].Accessible.name, "hose, 20 cars");
            verify(bars.children[0].children[1].width > 1.99 * bars.children[1].children[2].width);
            grabImage(lines).save("charts-lines.png");
        }

        function test_a_press_chooses_the_nearest_point_and_none_far_off() {
            const chart = made(40);
            for (const point of [3, 20, 39]) {
                const place = chart.paper.placeOf(point);
                mouseClick(chart.paper, place.x + 2, place.y - 2);
                compare(chart.chosen, point);
            }
            mouseClick(chart.paper, chart.paper.placeOf(20).x, chart.paper.height - 2);
            compare(chart.chosen, -1);
        }

        function test_keys_choose_move_and_zoom() {
            const chart = made(40);
            spy.target = chart;
            spy.signalName = "opened";
            chart.forceActiveFocus();
            keyClick(Qt.Key_End);
            compare(chart.chosen, 39);
            keyClick(Qt.Key_Right);
            compare(chart.chosen, 39);
            keyClick(Qt.Key_Left);
            compare(chart.chosen, 38);
            keyClick(Qt.Key_Return);
            compare(spy.count, 1);
            compare(spy.signalArguments[0][0], 38);
            verify(!chart.near);
            keyClick(Qt.Key_Plus);
            keyClick(Qt.Key_Plus);
            verify(chart.near);
            keyClick(Qt.Key_Home);
            verify(chart.paper.fromDay < 20575, "the view follows the chosen point");
            const from = chart.paper.fromDay;
            keyClick(Qt.Key_Right, Qt.ShiftModifier);
            verify(chart.paper.fromDay > from);
            compare(chart.chosen, 0);
            keyClick(Qt.Key_0);
            verify(!chart.near);
        }

        function test_a_drag_moves_what_was_zoomed() {
            const chart = made(40);
            chart.zoomBy(4);
            const from = chart.paper.fromDay;
            mouseDrag(chart.paper, 200, 100, 120, 0, Qt.LeftButton, Qt.NoModifier, 20);
            verify(chart.paper.fromDay < from);
            compare(chart.chosen, -1);
        }

        function test_lists_of_other_lengths_are_cut() {
            const chart = made(40);
            chart.rates = [1, 2];
            chart.choose(30);
            compare(chart.paper.at(200, 100), -1);
            grabImage(chart);
        }

        function test_a_thousand_points_pan_within_a_frame_or_two() {
            const chart = made(1000);
            chart.width = 860;
            chart.height = 380;
            chart.zoomBy(1.2);
            grabImage(chart);
            let worst = 0;
            for (let i = 0; i < 10; ++i) {
                chart.paper.moveBy(i % 2 ? 9 : -9);
                const start = Date.now();
                grabImage(chart);
                worst = Math.max(worst, Date.now() - start);
            }
            console.log("figure chart_pan_grab_worst_ms " + worst);
            verify(worst < 500);
        }
    }
}
