// Integrity: the check of every entry and of every picture's file: progress, stop, what was found in
// words, how far each device is proven and to whom, what there is to know beside it (clocks, forks, late
// and erased entries), the shop's fingerprint. integrity: the view model.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Sheet {
    id: sheet

    required property IntegrityViewModel integrity
    readonly property bool running: integrity.state === IntegrityViewModel.Running
    readonly property bool bad: integrity.state === IntegrityViewModel.Bad
        || integrity.state === IntegrityViewModel.Failed
    readonly property int percent: Math.floor(100 * integrity.progress)

    title: qsTr("All entries and pictures")

    Column {
        width: parent.width
        spacing: 12
        bottomPadding: Theme.gutter

        Words {
            width: parent.width
            visible: sheet.integrity.state === IntegrityViewModel.NotChecked
            text: qsTr("Reads every entry again and compares chain, signatures, members and receipts; then every picture, whose file has to be as it was kept. Work goes on meanwhile.")
        }
        PaperCard {
            objectName: "integrityResult"
            width: parent.width
            visible: sheet.integrity.what !== ""
            must: sheet.bad
            name: sheet.running ? qsTr("Checking, %1 percent").arg(sheet.percent)
                                : qsTr("%1 %2").arg(sheet.integrity.what).arg(sheet.integrity.kept)

            Column {
                width: parent.width
                spacing: 6

                Row {
                    width: parent.width
                    spacing: 10

                    StateShape {
                        id: shape
                        size: 24
                        kind: sheet.running ? ShapeKind.Running : sheet.bad ? ShapeKind.Must
                            : sheet.integrity.state === IntegrityViewModel.Sound ? ShapeKind.Done : ShapeKind.NotYet
                    }
                    Words {
                        width: parent.width - shape.width - 10
                        text: sheet.integrity.what
                        mute: true
                        bold: true
                    }
                }
                Words {
                    objectName: "integrityMeans"
                    width: parent.width
                    visible: text !== "" && !sheet.running
                    text: sheet.integrity.means
                    mute: true
                }
                Words {
                    width: parent.width
                    visible: text !== ""
                    text: sheet.running ? qsTr("%1 percent").arg(sheet.percent) : sheet.integrity.kept
                    mute: true
                }
                Words {
                    width: parent.width
                    visible: text !== ""
                    text: sheet.integrity.todo
                    mute: true
                    size: Theme.note
                    color: Theme.pencil
                }
                Rectangle {
                    width: parent.width
                    height: 8
                    visible: sheet.running
                    radius: 2
                    color: Theme.chalk

                    Rectangle {
                        width: parent.width * sheet.integrity.progress
                        height: parent.height
                        radius: 2
                        color: Theme.blue
                    }
                }
            }
        }
        PaperCard {
            objectName: "integrityPictures"
            width: parent.width
            visible: !sheet.running && sheet.integrity.picturesWhat !== ""
            must: sheet.integrity.picturesBad
            name: qsTr("Pictures: %1 %2").arg(sheet.integrity.picturesWhat).arg(sheet.integrity.picturesTodo)

            Column {
                width: parent.width
                spacing: 6

                Row {
                    width: parent.width
                    spacing: 10

                    StateShape {
                        id: pictureShape
                        size: 24
                        kind: sheet.integrity.picturesBad ? ShapeKind.Must : missing.count > 0 ? ShapeKind.NotYet : ShapeKind.Done
                    }
                    Words {
                        width: parent.width - pictureShape.width - 10
                        text: sheet.integrity.picturesWhat
                        mute: true
                        bold: true
                    }
                }
                Words {
                    width: parent.width
                    visible: text !== ""
                    text: sheet.integrity.picturesTodo
                    mute: true
                    size: Theme.note
                    color: Theme.pencil
                }
                Repeater {
                    id: missing
                    model: sheet.integrity.pictures

                    DetailLine {
                        width: parent.width
                    }
                }
            }
        }
        PlainButton {
            objectName: "integrityStop"
            width: parent.width
            visible: sheet.running
            text: qsTr("Stop the check")
            onClicked: sheet.integrity.stop()
        }
        SlabButton {
            objectName: "integrityStart"
            width: parent.width
            visible: !sheet.running
            text: sheet.integrity.state === IntegrityViewModel.NotChecked ? qsTr("Check all")
                                                                          : qsTr("Check again")
            onClicked: sheet.integrity.start()
        }
        Column {
            width: parent.width
            spacing: 4
            visible: sheet.integrity.fingerprint !== ""

            Words {
                width: parent.width
                text: qsTr("Fingerprint of the shop")
                size: Theme.note
                color: Theme.pencil
            }
            Words {
                objectName: "integrityFingerprint"
                width: parent.width
                text: sheet.integrity.fingerprint
                bold: true
                size: Theme.lead
            }
            Words {
                width: parent.width
                text: qsTr("The same on every device of the shop. Compare it by reading it aloud.")
                size: Theme.note
                color: Theme.pencil
            }
        }
        Words {
            width: parent.width
            visible: proven.count > 0
            text: qsTr("How far it is proven")
            bold: true
            Accessible.role: Accessible.Heading
        }
        Repeater {
            id: proven
            model: sheet.integrity.proven

            DetailLine {
                width: parent.width
            }
        }
        FindingRows {
            width: parent.width
            visible: sheet.integrity.findingCount > 0
            integrity: sheet.integrity
        }
    }
}
