// OperationSheet: an operation more: one of the usual ones by one press, or typed; a supplement or a
// redo says why, with a picture. operations: the view model. Signal: photoAsked(stage).
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Sheet {
    id: sheet

    required property OperationsViewModel operations
    property PictureStore store: null

    signal photoAsked(string stage)

    function show() {
        operations.startAdding();
        opened = true;
    }

    title: qsTr("More work")
    onClosed: operations.stopAdding()

    Connections {
        target: sheet.operations
        function onKept() { sheet.close(); }
    }

    component Heading: Words {
        width: parent ? parent.width : 0
        topPadding: 8
        bold: true
        color: Theme.pencil
        Accessible.role: Accessible.Heading
    }
    component Wrong: CautionLine {
        property string field: ""

        width: parent?.width ?? 0
        words: sheet.operations.wrongField === field ? sheet.operations.wrongWords : ""
    }

    Column {
        id: form
        width: parent.width
        spacing: Theme.gap
        bottomPadding: Theme.gutter

        WordChips {
            width: parent.width
            title: qsTr("What kind of work")
            key: "workKind"
            words: sheet.operations.kinds
            chosen: sheet.operations.kind
            onPicked: index => sheet.operations.kind = index
        }
        Heading {
            visible: sheet.operations.kind === 0 && sheet.operations.templateCount > 0
            text: qsTr("One of the usual, by one press")
        }
        Flow {
            width: parent.width
            visible: sheet.operations.kind === 0 && sheet.operations.templateCount > 0
            spacing: Theme.gap

            Repeater {
                model: sheet.operations.templates

                PlainButton {
                    required property int index
                    required property string key
                    required property string title
                    required property string words

                    objectName: "workTemplate" + index
                    width: Math.min(form.width, Math.max(112, implicitWidth))
                    height: implicitHeight
                    text: title
                    secondLine: words
                    onClicked: sheet.operations.addTemplate(key)
                }
            }
        }
        Heading {
            visible: sheet.operations.reasons.length > 0
            text: qsTr("Why it came on top")
        }
        Flow {
            width: parent.width
            visible: sheet.operations.reasons.length > 0
            spacing: Theme.gap

            Repeater {
                model: sheet.operations.reasons

                PlainButton {
                    required property int index
                    required property string modelData

                    objectName: "workWhy" + index
                    width: Math.min(form.width, Math.max(Theme.touch, implicitWidth))
                    height: implicitHeight
                    text: modelData
                    chosen: sheet.operations.why === modelData
                    onClicked: {
                        why.text = modelData;
                        sheet.operations.why = modelData;
                    }
                }
            }
        }
        TypedField {
            id: why
            objectName: "workWhyTyped"
            width: parent.width
            visible: sheet.operations.reasons.length > 0
            label: qsTr("Or in your words")
            placeholder: qsTr("bumper beam bent")
            text: sheet.operations.why
            maximumLength: 80
            form: sheet.operations
            field: "why"
            onEdited: words => sheet.operations.why = words
        }
        Heading { text: qsTr("At which stage") }
        Flow {
            width: parent.width
            spacing: Theme.gap

            Repeater {
                model: sheet.operations.stages

                PlainButton {
                    required property int index
                    required property string key
                    required property string title
                    required chosen

                    objectName: "workStage" + index
                    width: Math.min(form.width, Math.max(Theme.touch, implicitWidth))
                    height: implicitHeight
                    text: title
                    onClicked: sheet.operations.chooseStage(key)
                }
            }
            PlainButton {
                objectName: "workAllStages"
                width: Math.min(form.width, Math.max(Theme.touch, implicitWidth))
                height: implicitHeight
                visible: !sheet.operations.allStages
                pressable: visible
                text: qsTr("Another stage")
                onClicked: sheet.operations.allStages = true
            }
        }
        Wrong { field: "stage" }
        FaceField {
            objectName: "workTitle"
            width: parent.width
            label: qsTr("What is done; may stay empty")
            placeholder: qsTr("straighten the beam")
            text: sheet.operations.title
            maximumLength: 60
            onEdited: words => sheet.operations.title = words
        }
        TypedField {
            objectName: "workHours"
            width: parent.width
            label: qsTr("Estimate in hours; may stay empty")
            placeholder: qsTr("1.5")
            text: sheet.operations.hours
            maximumLength: 8
            form: sheet.operations
            field: "hours"
            onEdited: words => sheet.operations.hours = words
        }
        Row {
            width: parent.width
            visible: sheet.operations.reasons.length > 0
            spacing: Theme.gap

            PictureFrame {
                id: frame
                visible: sheet.operations.pictureFile !== "" && sheet.store !== null
                width: visible ? 96 : 0
                height: 76
                store: sheet.store
                file: sheet.operations.pictureFile
            }
            PlainButton {
                objectName: "workPhoto"
                width: parent.width - (frame.visible ? frame.width + parent.spacing : 0)
                height: implicitHeight
                iconName: "camera"
                beside: true
                text: sheet.operations.pictureFile === "" ? qsTr("Take a picture of it") : qsTr("Without this picture")
                onClicked: {
                    if (sheet.operations.pictureFile !== "") {
                        sheet.operations.dropPicture();
                        return;
                    }
                    sheet.operations.willTakePicture();
                    sheet.photoAsked(sheet.operations.stage);
                }
            }
        }
        PlainButton {
            objectName: "workApproval"
            width: parent.width
            height: visible ? implicitHeight : 0
            visible: sheet.operations.kind === 1
            pressable: visible
            chosen: sheet.operations.asksApproval
            shape: sheet.operations.asksApproval ? ShapeKind.Waits : ShapeKind.NotYet
            beside: true
            text: sheet.operations.asksApproval ? qsTr("Waits for approval") : qsTr("No approval needed")
            onClicked: sheet.operations.asksApproval = !sheet.operations.asksApproval
        }
        SlabButton {
            objectName: "workKeep"
            width: parent.width
            height: implicitHeight
            text: qsTr("Add this work")
            onClicked: sheet.operations.keep()
        }
    }
}
