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

    TestCase {
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
    }
}
