import QtQuick
import QtTest
import Jambline.Theme

Item {
    width: 412
    height: 400

    Component {
        id: made
        Gallery {}
    }

    Component {
        id: covered
        Rectangle {
            property alias sheet: over
            property alias aid: aid
            width: 412
            height: 744
            color: Theme.paper
            TapeLabel { y: 32; width: 306; lift: 72; tornLeft: false; back: true; text: "K 41-206"; secondLine: "deep green" }
            PlainButton { id: aid; x: 320; y: 32; width: 76; height: 72; text: "First aid"; textSize: Theme.note; iconName: "first-aid"; beside: false }
            Words { x: 16; y: 116; text: "Look over"; size: Theme.screen; bold: true }
            Sheet {
                id: over
                anchors.fill: parent
                title: "Who is it?"
                keepClear: aid
                ActRow {
                    width: parent.width
                    PlainButton { text: "Pause"; secondLine: "starts again in one tap" }
                    PlainButton { text: "Stop for today"; secondLine: "Ivo, 7.4 h so far" }
                }
            }
        }
    }

    TestCase {
        id: test
        name: "Gallery"
        when: windowShown

        function init() {
            failOnWarning(/.?/);
        }

        function cleanup() {
            Theme.dark = false;
            Theme.textScale = 1.0;
        }

        function test_gallery_is_drawn_data() {
            return [
                {tag: "light", dark: false, scale: 1.0},
                {tag: "dark", dark: true, scale: 1.0},
                {tag: "large", dark: false, scale: 1.5}
            ];
        }

        function test_gallery_is_drawn(row) {
            Theme.dark = row.dark;
            Theme.textScale = row.scale;
            const gallery = createTemporaryObject(made, parent);
            verify(gallery);
            waitForRendering(gallery);
            compare(grabImage(gallery).pixel(2, 2), Theme.paper);
            verify(gallery.height > 2000);
            let saved = false;
            verify(gallery.grabToImage(picture => saved = picture.saveToFile("gallery-" + row.tag + ".png")));
            tryVerify(() => saved);
        }

        function test_a_sheet_covers_all_but_what_it_keeps_clear() {
            Theme.reducedMotion = true;
            const scene = createTemporaryObject(covered, parent);
            const before = grabImage(scene.aid);
            scene.sheet.opened = true;
            waitForRendering(scene);
            verify(grabImage(scene.aid).equals(before));
            verify(grabImage(scene).pixel(20, 60) !== Theme.tape);
            let saved = false;
            verify(scene.grabToImage(picture => saved = picture.saveToFile("gallery-sheet.png")));
            tryVerify(() => saved);
            scene.sheet.opened = false;
            Theme.reducedMotion = false;
        }
    }
}
