// Head: the tape with the car, or the name of the place; who taps; First aid on every screen.
// firstAid: its button, for sheets to keep clear. Signals: backAsked, personAsked, aidAsked.
import QtQuick
import Jambline.Theme
import Jambline.Screens
import Jambline.Job

Item {
    id: head

    required property Session session
    required property Navigation way
    property string countWords: ""
    property string questionTitle: ""  // of the question that is asked
    property string questionNote: ""
    property string boothTitle: ""  // of the booth that is looked at
    property string boothNote: ""
    property string doNotDrive: ""  // of the car on the tape
    property string keysWords: ""
    property bool wide: false
    property alias firstAid: aid
    readonly property real strip: held.visible ? held.height + 4 : 0
    readonly property bool named: way.inCar && session.hasCar
    readonly property bool opening: way.work === Navigation.OpenCar

    // What stands on the tape of a work of the shop.
    function shopWork(): string {
        switch (way.work) {
        case Navigation.Register:
        case Navigation.Protection:
            return qsTr("Protection");
        case Navigation.Limits:
            return qsTr("Limits");
        case Navigation.Exposure:
            return qsTr("Exposure");
        case Navigation.Hours:
            return qsTr("Hours");
        case Navigation.KeepAndForget:
            return qsTr("Keep and forget");
        case Navigation.Question:
            return questionTitle;
        case Navigation.BoothNow:
            return boothTitle;
        case Navigation.Sending:
            return qsTr("Sending");
        case Navigation.Devices:
            return qsTr("Devices");
        default:
            return qsTr("Dirt over time");
        }
    }
    function shopWorkNote(): string {
        switch (way.work) {
        case Navigation.Register:
            return qsTr("of everybody who sprays");
        case Navigation.Protection:
            return qsTr("of one person");
        case Navigation.Limits:
            return qsTr("what samples are held against");
        case Navigation.Exposure:
            return qsTr("what was sampled");
        case Navigation.Hours:
            return qsTr("day and week of one person");
        case Navigation.KeepAndForget:
            return qsTr("records, and who has left");
        case Navigation.Question:
            return questionNote;
        case Navigation.BoothNow:
            return boothNote;
        case Navigation.Sending:
            return qsTr("from this device to the hub");
        case Navigation.Devices:
            return qsTr("of the shop");
        default:
            return qsTr("nibs of all cars");
        }
    }

    signal backAsked
    signal personAsked
    signal aidAsked

    implicitHeight: Math.max(72, tape.visible ? tape.implicitHeight : title.height, person.implicitHeight, aid.implicitHeight) + 8 + strip

    TapeLabel {
        id: tape
        objectName: "tape"
        visible: head.named || head.opening || head.way.ofShop
        y: 4
        width: Math.max(120, Math.min(implicitWidth + 24, (person.visible ? person.x : aid.x) - 12))
        height: parent.height - 8 - head.strip
        lift: 72
        tornLeft: false
        key: text
        back: head.way.deeper || head.opening || head.way.ofShop
        pressable: back
        text: head.way.ofShop ? head.shopWork() : head.opening ? qsTr("New car") : head.session.carTitle
        secondLine: head.way.ofShop ? head.shopWorkNote() : head.opening ? qsTr("the draft is kept") : head.session.carSubtitle
        onClicked: head.backAsked()
    }
    Column {
        id: title
        visible: !tape.visible
        x: Theme.gutter
        width: person.x - x - 8
        anchors.verticalCenter: parent.verticalCenter

        Words {
            width: parent.width
            text: head.way.place === Navigation.Floor ? qsTr("Floor") : head.way.place === Navigation.Booth ? qsTr("Booth") : qsTr("Record")
            bold: true
            size: Theme.place
            Accessible.role: Accessible.Heading
        }
        Words {
            width: parent.width
            visible: text !== ""
            text: head.way.place === Navigation.Floor ? head.countWords : ""
            color: Theme.pencil
        }
    }
    PlainButton {
        id: person
        objectName: "personTile"
        visible: !tape.visible || head.wide
        pressable: visible
        anchors.right: aid.left
        anchors.rightMargin: 8
        y: 4
        width: Math.max(84, Math.min(implicitWidth, 150))
        height: parent.height - 8 - head.strip
        text: head.session.hasPerson ? head.session.personName : qsTr("Who is it?")
        secondLine: head.session.personRole
        name: head.session.hasPerson ? qsTr("%1, %2. Opens people and settings.").arg(text).arg(secondLine)
                                     : qsTr("Who is it? Opens people and settings.")
        onClicked: head.personAsked()
    }
    PlainButton {
        id: aid
        objectName: "firstAid"
        anchors.right: parent.right
        anchors.rightMargin: Theme.gutter
        y: 4
        width: Math.max(76, implicitWidth)
        height: parent.height - 8 - head.strip
        text: qsTr("First aid")
        iconName: "first-aid"
        textSize: Theme.note
        onClicked: head.aidAsked()
    }
    DoNotDrive {
        id: held
        objectName: "doNotDrive"
        visible: head.named && head.doNotDrive !== ""
        x: Theme.gutter
        y: parent.height - height - 2
        width: parent.width - 2 * Theme.gutter
        words: head.doNotDrive
        keys: head.keysWords
    }
}
