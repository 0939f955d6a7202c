// Colors against the design's token table (its values are repeated here on purpose: two places
// must agree), contrast by the formula of WCAG 2.1 (relative luminance, success criterion 1.4.3).
import QtQuick
import QtTest
import Jambline.Theme

TestCase {
    id: test
    name: "Tokens"

    function init() {
        failOnWarning(/.?/);
    }

    function cleanup() {
        Theme.dark = false;
        Theme.desk = false;
        Theme.textScale = 1.0;
        Theme.reducedMotion = false;
    }

    function channel(v) {
        return v <= 0.03928 ? v / 12.92 : Math.pow((v + 0.055) / 1.055, 2.4);
    }

    function luminance(c) {
        return 0.2126 * channel(c.r) + 0.7152 * channel(c.g) + 0.0722 * channel(c.b);
    }

    function contrast(a, b) {
        const la = luminance(a);
        const lb = luminance(b);
        return (Math.max(la, lb) + 0.05) / (Math.min(la, lb) + 0.05);
    }

    function test_contrast_formula_knows_black_on_white() {
        fuzzyCompare(contrast(Qt.color("#000000"), Qt.color("#ffffff")), 21, 1e-9);
        fuzzyCompare(contrast(Qt.color("#777777"), Qt.color("#ffffff")), 4.48, 0.01);
    }

    function test_words_have_contrast_data() {
        const grounds = ["paper", "sheet", "steel"];
        const words = ["ink", "pencil"];
        const rows = [["tapeInk", "tape"], ["slabInk", "slab"], ["oxide", "paper"], ["oxide", "sheet"],
            ["ochreInk", "paper"], ["ochreInk", "sheet"], ["green", "paper"], ["blue", "paper"]];
        for (const ground of grounds) {
            for (const word of words)
                rows.push([word, ground]);
        }
        const both = [];
        for (const row of rows) {
            both.push({tag: row.join(" on ") + " light", word: row[0], ground: row[1], dark: false});
            both.push({tag: row.join(" on ") + " dark", word: row[0], ground: row[1], dark: true});
        }
        return both;
    }

    function test_words_have_contrast(row) {
        Theme.dark = row.dark;
        verify(contrast(Theme[row.word], Theme[row.ground]) >= 4.5, contrast(Theme[row.word], Theme[row.ground]));
    }

    function test_shapes_and_edges_have_contrast_data() {
        const rows = [];
        for (const role of ["edge", "green", "oxide", "blue", "ochre"]) {
            for (const ground of ["paper", "sheet"]) {
                rows.push({tag: role + " on " + ground, role: role, ground: ground});
            }
        }
        return rows;
    }

    function test_shapes_and_edges_have_contrast(row) {
        for (const dark of [false, true]) {
            Theme.dark = dark;
            verify(contrast(Theme[row.role], Theme[row.ground]) >= 3.0);
        }
    }

    function test_sizes_are_the_tokens() {
        compare([Theme.touch, Theme.main, Theme.gap, Theme.gutter, Theme.grid, Theme.corner, Theme.rule, Theme.places],
            [72, 76, 8, 16, 8, 4, 76, 72]);
        compare([Theme.small, Theme.note, Theme.body, Theme.lead, Theme.title, Theme.screen, Theme.place, Theme.clock,
            Theme.far], [13, 14, 16, 18, 22, 24, 30, 28, 132]);
        Theme.desk = true;
        compare([Theme.touch, Theme.main, Theme.row, Theme.rule], [44, 44, 52, 64]);
    }

    function test_type_grows_with_the_scale_but_far_does_not() {
        Theme.textScale = 1.5;
        compare([Theme.body, Theme.title, Theme.far], [24, 33, 132]);
    }

    function test_reduced_motion_is_no_motion() {
        compare([Theme.move, Theme.tear], [150, 180]);
        Theme.reducedMotion = true;
        compare([Theme.move, Theme.tear], [0, 0]);
    }

    CarTint { id: tinted }

    // L* of a gray or color by CIE 1976 from its luminance (D65), the other way round than CarTint.
    function lightness(c) {
        const y = luminance(c);
        return y > 216 / 24389 ? 116 * Math.cbrt(y) - 16 : y * 24389 / 27;
    }

    function test_a_tint_has_one_lightness_for_every_car_data() {
        return ["#0d4a33", "#a01818", "#ffffff", "#000000", "#102a6b", "#e8d21c", "#6a1a80", "#8a8a8a"]
            .map(car => ({tag: car, car: car}));
    }

    function test_a_tint_has_one_lightness_for_every_car(row) {
        tinted.car = row.car;
        tinted.dark = false;
        fuzzyCompare(lightness(tinted.tint), 88, 0.4);
        verify(contrast(tinted.tint, Qt.color("#1E1C18")) >= 4.5);
        tinted.dark = true;
        fuzzyCompare(lightness(tinted.tint), 17, 0.6);
        verify(contrast(tinted.tint, Qt.color("#EDE7D8")) >= 4.5);
    }

    // The tints of the design's own green car: #CFE0D8 light, #1F2E27 dark (contrast page). Drawn by
    // hand at C 7.4 and 8.5, so a few steps off the rule; the car's paint here has their hue.
    function test_the_green_car_has_the_drawn_tint() {
        tinted.car = "#1F6B50";
        tinted.dark = false;
        for (const part of ["r", "g", "b"])
            fuzzyCompare(tinted.tint[part] * 255, Qt.color("#CFE0D8")[part] * 255, 5);
        tinted.dark = true;
        for (const part of ["r", "g", "b"])
            fuzzyCompare(tinted.tint[part] * 255, Qt.color("#1F2E27")[part] * 255, 4);
    }

    function test_gray_cars_are_less_colored_than_green_ones() {
        tinted.dark = false;
        tinted.car = "#9a9b9d";
        const gray = Math.max(tinted.tint.r, tinted.tint.g, tinted.tint.b) - Math.min(tinted.tint.r, tinted.tint.g, tinted.tint.b);
        tinted.car = "#0d4a33";
        const green = Math.max(tinted.tint.r, tinted.tint.g, tinted.tint.b) - Math.min(tinted.tint.r, tinted.tint.g, tinted.tint.b);
        verify(gray < green * 0.6);
    }
}
