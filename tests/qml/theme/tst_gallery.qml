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
            wait(50);
            const picture = grabImage(gallery);
            compare(picture.width, 412);
            verify(picture.height > 2000);
            compare(picture.pixel(2, picture.height - 2), Theme.paper);
            picture.save("gallery-" + row.tag + ".png");
        }
    }
}
