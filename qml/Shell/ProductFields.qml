// ProductFields: the page of one product: its name, kind, whether it holds isocyanate hardener, how it
// cures, gates and climate, its milestones and drive-away tables, and keeping it.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Column {
    id: page

    required property ProductViewModel products

    spacing: Theme.gap

    component Heading: Words {
        width: parent ? parent.width : 0
        topPadding: 8
        bold: true
        color: Theme.pencil
        Accessible.role: Accessible.Heading
    }
    component Choices: Flow {
        id: choices

        property var words: []
        property int current: -1
        property string prefix: ""

        signal picked(int row)

        width: parent ? parent.width : 0
        spacing: Theme.gap

        Repeater {
            model: choices.words

            PlainButton {
                required property int index
                required property string modelData

                objectName: choices.prefix + index
                width: Math.min(choices.width, Math.max(112, implicitWidth))
                height: implicitHeight
                text: modelData
                chosen: choices.current === index
                pressable: page.products.manager
                onClicked: choices.picked(index)
            }
        }
    }
    component Opening: PlainButton {
        id: opening

        property string words: ""
        property string wrong: ""

        width: page.width
        height: implicitHeight
        secondLine: wrong === "" ? words : wrong
        shape: wrong === "" ? ShapeKind.None : ShapeKind.Must
        beside: true
    }

    Heading { text: qsTr("What it is") }
    Choices {
        prefix: "productKind"
        words: page.products.kinds
        current: page.products.kind
        onPicked: row => page.products.chooseKind(row)
    }
    Heading { text: qsTr("Isocyanate hardener") }
    Choices {
        prefix: "productActivated"
        words: [qsTr("Holds it"), qsTr("Does not")]
        current: page.products.activated ? 0 : 1
        onPicked: row => page.products.sayActivated(row === 0)
    }
    Heading { text: qsTr("How it cures") }
    Choices {
        prefix: "productCure"
        words: page.products.cures
        current: page.products.cure
        onPicked: row => page.products.chooseCure(row)
    }
    Words {
        width: parent.width
        visible: text !== ""
        text: page.products.cureNote
        size: Theme.note
        color: Theme.pencil
    }
    Heading { text: qsTr("From its sheet") }
    Repeater {
        model: page.products.fields

        FaceField {
            id: field

            required property string key
            required property string title
            required property string hint
            required property string typed
            required wrong

            objectName: "productField" + key
            width: page.width
            text: typed
            label: title
            placeholder: hint
            readOnly: !page.products.manager
            maximumLength: key === "0" ? 80 : 20
            onEdited: words => page.products.sayField(field.key, words)
        }
    }
    Heading { text: qsTr("Times at temperatures") }
    Repeater {
        model: page.products.milestones

        Opening {
            required property string key
            required property string title
            required words
            required wrong

            objectName: "milestone_" + key
            text: title
            onClicked: page.products.openMilestone(key)
        }
    }
    Heading {
        visible: page.products.glass
        text: qsTr("Drive-away, for each airbag and belt case")
    }
    Repeater {
        model: page.products.tables

        Opening {
            required property string key
            required property string title
            required words
            required wrong

            objectName: "table_" + key
            text: title
            onClicked: page.products.openTable(key)
        }
    }
    PlainButton {
        objectName: "tableNew"
        visible: page.products.glass && page.products.manager
        pressable: visible
        width: parent.width
        height: visible ? implicitHeight : 0
        text: qsTr("Add a case")
        onClicked: page.products.openTable("")
    }
    SlabButton {
        objectName: "productKeep"
        visible: page.products.manager
        pressable: visible
        width: parent.width
        height: visible ? implicitHeight : 0
        text: page.products.known ? qsTr("Keep the product") : qsTr("Add this product")
        secondLine: page.products.refusal
        onClicked: page.products.keep()
    }
    PlainButton {
        objectName: "productRetire"
        visible: page.products.known && page.products.manager
        pressable: visible
        width: parent.width
        height: visible ? implicitHeight : 0
        text: page.products.retired ? qsTr("It is used again") : qsTr("It is no longer used")
        secondLine: page.products.retired ? "" : qsTr("cars that have it keep their clocks")
        onClicked: page.products.retire(!page.products.retired)
    }
}
