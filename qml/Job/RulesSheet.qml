// RulesSheet: what the shop wants done before what; a manager retires a rule, puts it back and adds
// one. rules: the view model. show() opens the list.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Sheet {
    id: sheet

    required property RulesViewModel rules
    property int page: RulesSheet.List

    enum Page { List, New, First, Second }

    function show() {
        rules.start();
        page = RulesSheet.List;
        opened = true;
    }

    title: page === RulesSheet.First ? qsTr("What comes first") : page === RulesSheet.Second ? qsTr("What waits")
        : page === RulesSheet.New ? qsTr("A rule of our own") : qsTr("What comes before what")
    onClosed: page = RulesSheet.List

    Connections {
        target: sheet.rules
        function onKept() {
            if (sheet.page === RulesSheet.New)
                sheet.page = RulesSheet.List;
        }
    }

    component Wrong: CautionLine {
        property string field: ""

        words: sheet.rules.wrongField === field ? sheet.rules.wrongWords : ""
    }

    Column {
        visible: sheet.page === RulesSheet.List
        width: parent.width
        height: visible ? implicitHeight : 0
        spacing: Theme.gap

        Words {
            width: parent.width
            text: qsTr("Common practice, no source. The carmaker's repair information wins.")
            size: Theme.note
            color: Theme.pencil
        }
        PlainButton {
            objectName: "ruleNew"
            width: parent.width
            height: implicitHeight
            visible: sheet.rules.manager
            pressable: visible
            iconName: "plus"
            beside: true
            text: qsTr("Add a rule of our own")
            onClicked: {
                sheet.rules.start();
                sheet.page = RulesSheet.New;
            }
        }
        Words {
            width: parent.width
            visible: !sheet.rules.manager
            text: qsTr("A manager changes these.")
            color: Theme.pencil
        }
        Wrong {
            width: parent.width
            field: "rule"
        }
        Repeater {
            model: sheet.visible ? sheet.rules.rules : null

            Column {
                id: line

                required property int index
                required property string key
                required property string heading
                required property string title
                required property string before
                required property string why
                required property int shape
                required property bool retired
                required property bool fixed

                width: parent?.width ?? 0
                spacing: Theme.gap

                Words {
                    width: parent.width
                    visible: text !== ""
                    topPadding: 8
                    text: line.heading
                    bold: true
                    color: Theme.pencil
                    Accessible.role: Accessible.Heading
                }
                RuleRow {
                    width: parent.width
                    title: line.title
                    before: line.before
                    why: line.why
                    shape: line.shape
                    dashed: line.retired
                    actName: "rule" + line.index
                    actText: !sheet.rules.manager || line.fixed ? "" : line.retired ? qsTr("Put back") : qsTr("Retire")
                    onActed: line.retired ? sheet.rules.putBack(line.key) : sheet.rules.retire(line.key)
                }
            }
        }
    }
    Column {
        visible: sheet.page === RulesSheet.New
        width: parent.width
        height: visible ? implicitHeight : 0
        spacing: Theme.gap
        bottomPadding: Theme.gutter

        PlainButton {
            objectName: "ruleBack"
            width: parent.width
            height: implicitHeight
            iconName: "back"
            beside: true
            text: qsTr("All rules")
            onClicked: sheet.page = RulesSheet.List
        }
        PlainButton {
            objectName: "ruleAfter"
            width: parent.width
            height: implicitHeight
            text: sheet.rules.after === "" ? qsTr("Choose what waits") : sheet.rules.after
            secondLine: sheet.rules.after === "" ? "" : qsTr("this waits")
            onClicked: sheet.page = RulesSheet.Second
        }
        Wrong {
            width: parent.width
            field: "after"
        }
        PlainButton {
            objectName: "ruleBefore"
            width: parent.width
            height: implicitHeight
            text: sheet.rules.before === "" ? qsTr("Choose what comes first") : sheet.rules.before
            secondLine: sheet.rules.before === "" ? "" : qsTr("this comes first")
            onClicked: sheet.page = RulesSheet.First
        }
        Wrong {
            width: parent.width
            field: "before"
        }
        WordChips {
            width: parent.width
            title: qsTr("How strict it is")
            key: "ruleKind"
            words: sheet.rules.kinds
            chosen: sheet.rules.kind
            onPicked: index => sheet.rules.kind = index
        }
        TypedField {
            id: why
            objectName: "ruleWhy"
            width: parent.width
            label: qsTr("Why, in a few words")
            placeholder: qsTr("no access after")
            maximumLength: 80
            form: sheet.rules
            field: "why"
            onEdited: sheet.rules.nothingWrong()
        }
        Wrong {
            width: parent.width
            field: "rule"
        }
        SlabButton {
            objectName: "ruleKeep"
            width: parent.width
            height: implicitHeight
            text: qsTr("Set this rule")
            onClicked: sheet.rules.keep(why.text)
        }
    }
    Column {
        visible: sheet.page === RulesSheet.First || sheet.page === RulesSheet.Second
        width: parent.width
        height: visible ? implicitHeight : 0
        spacing: Theme.gap

        Repeater {
            model: sheet.page === RulesSheet.First || sheet.page === RulesSheet.Second ? sheet.rules.steps : null

            PlainButton {
                required property int index
                required property string key
                required property string title

                objectName: "ruleStep" + index
                width: parent?.width ?? 0
                height: implicitHeight
                text: title
                onClicked: {
                    if (sheet.page === RulesSheet.First)
                        sheet.rules.chooseBefore(key);
                    else
                        sheet.rules.chooseAfter(key);
                    sheet.page = RulesSheet.New;
                }
            }
        }
    }
}
