// MarkSheet: kind, size, layer, look, move and withdraw of the chosen mark; without one, the kind of
// the next mark. onlyLooks: nothing but the look, which closes it. Open it with `opened`. Each tap is
// kept at once. look: then the pictures of the mark stand here. Signals: moveAsked, photoAsked,
// pictureAsked(picture, among), closed (of Sheet).
pragma ComponentBehavior: Bound
import QtQuick
import Jambline.Theme
import Jambline.Screens

Sheet {
    id: sheet

    required property InspectViewModel inspect
    property LookViewModel look: null
    property bool every: false
    property bool onlyLooks: false
    readonly property bool ofMark: inspect.chosenMark !== ""
    readonly property bool rest: ofMark && !onlyLooks

    signal moveAsked
    signal photoAsked
    signal pictureAsked(string picture, var among)

    onClosed: {
        every = false;
        onlyLooks = false;
    }
    title: ofMark ? inspect.chosenTitle : qsTr("What a tap marks")

    Column {
        width: parent.width
        spacing: 12

        Flow {
            visible: !sheet.onlyLooks
            width: parent.width
            spacing: Theme.gap

            Repeater {
                model: !sheet.opened || sheet.onlyLooks ? [] : sheet.every ? sheet.inspect.allKinds : sheet.inspect.kinds
                KindChip {
                    required property int modelData
                    width: (sheet.roomWidth - 2 * Theme.gap) / 3
                    height: implicitHeight
                    kind: modelData
                    text: sheet.inspect.kindWords(modelData)
                    chosen: modelData === (sheet.ofMark ? sheet.inspect.chosenKind : sheet.inspect.kind)
                    onClicked: {
                        if (sheet.ofMark)
                            sheet.inspect.describeMark(modelData, sheet.inspect.chosenSize, sheet.inspect.chosenLayer);
                        else
                            sheet.inspect.kind = modelData;
                        sheet.close();
                    }
                }
            }
            KindChip {
                objectName: "everyKind"
                visible: !sheet.every
                pressable: visible
                width: (sheet.roomWidth - 2 * Theme.gap) / 3
                height: implicitHeight
                text: qsTr("All kinds")
                onClicked: sheet.every = true
            }
        }
        Words {
            width: parent.width
            visible: sheet.rest
            text: qsTr("Size, as against the marks on the size strip")
            size: Theme.note
            color: Theme.pencil
        }
        Row {
            visible: sheet.rest
            width: parent.width
            spacing: Theme.gap

            Repeater {
                model: 4
                PlainButton {
                    required property int index
                    objectName: "size" + (index + 1)
                    width: (sheet.roomWidth - 3 * Theme.gap) / 4
                    height: implicitHeight
                    text: index + 1
                    name: qsTr("Size %1").arg(index + 1)
                    chosen: sheet.inspect.chosenSize === index + 1
                    onClicked: sheet.inspect.describeMark(sheet.inspect.chosenKind, index + 1, sheet.inspect.chosenLayer)
                }
            }
        }
        Flow {
            visible: sheet.rest
            width: parent.width
            spacing: Theme.gap

            Repeater {
                model: 4
                PlainButton {
                    required property int index
                    objectName: "layer" + index
                    width: (sheet.roomWidth - Theme.gap) / 2
                    height: implicitHeight
                    text: sheet.inspect.layerWords(index)
                    name: qsTr("Layer: %1").arg(text)
                    chosen: sheet.inspect.chosenLayer === index
                    onClicked: sheet.inspect.describeMark(sheet.inspect.chosenKind, sheet.inspect.chosenSize, index)
                }
            }
        }
        Words {
            width: parent.width
            visible: sheet.ofMark
            text: qsTr("The particle looks like. Once or twice a car is enough.")
            size: Theme.note
            color: Theme.pencil
        }
        Flow {
            visible: sheet.ofMark
            width: parent.width
            spacing: Theme.gap

            Repeater {
                model: 6
                PlainButton {
                    required property int index
                    objectName: "look" + index
                    width: (sheet.roomWidth - Theme.gap) / 2
                    height: implicitHeight
                    text: sheet.inspect.lookWords(index)
                    name: qsTr("Looks like %1").arg(text)
                    chosen: sheet.inspect.chosenLook === index
                    onClicked: {
                        sheet.inspect.sayLook(index);
                        if (sheet.onlyLooks)
                            sheet.close();
                    }
                }
            }
        }
        MarkPictures {
            width: parent.width
            visible: sheet.rest && look !== null && look.ofMarkCount > 0
            look: sheet.look
            mark: sheet.opened ? sheet.inspect.chosenMark : ""
            onLookAsked: (picture, among) => {
                sheet.close();
                sheet.pictureAsked(picture, among);
            }
        }
        ActRow {
            visible: sheet.rest
            width: parent.width

            PlainButton {
                objectName: "photoMark"
                visible: sheet.look !== null
                pressable: visible
                text: qsTr("Photo")
                onClicked: {
                    sheet.close();
                    sheet.photoAsked();
                }
            }
            PlainButton {
                objectName: "moveMark"
                text: qsTr("Move it")
                onClicked: {
                    sheet.close();
                    sheet.moveAsked();
                }
            }
            PlainButton {
                objectName: "withdrawMark"
                text: qsTr("Withdraw it")
                onClicked: {
                    sheet.inspect.withdrawMark();
                    sheet.close();
                }
            }
        }
    }

    readonly property real roomWidth: (side ? Math.min(408, width) : width) - 2 * Theme.gutter
}
