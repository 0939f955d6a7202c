// CarFacts: what is urgent of one car, above its stages: when it is due and what holds it, what was
// said in two ways, what keeps people out and off, and the ways to sprayed, cure, evidence, pictures.
// booth, shots, cure, sprayed: view models. showsHeld: nothing above says that it may not be driven.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Column {
    id: page

    required property CarViewModel car
    required property EvidenceViewModel evidence
    required property BoothViewModel booth
    required property ReadyViewModel ready  // opens to what the time rests on
    property ShotsViewModel shots: null
    property CureViewModel cure: null
    property SprayedViewModel sprayed: null
    property bool showsHeld: false

    signal readyAsked
    signal whoAsked
    signal sprayedAsked
    signal cureAsked
    signal evidenceAsked
    signal shotsAsked
    signal timeLineAsked

    spacing: Theme.gap

    NoteBanner {
        width: parent.width
        visible: page.car.shutWords !== ""
        happened: page.car.shutWords
        stands: qsTr("Nothing is changed.")
    }
    PaperCard {
        id: promise
        objectName: "readyRow"
        width: parent.width
        padding: 0
        bare: true
        pressable: page.ready.ofInterest
        name: pressable ? qsTr("%1, %2, %3. Opens what that came from.").arg(page.car.due).arg(page.ready.words).arg(page.car.heldBy) : ""
        onClicked: page.readyAsked()

        Item {
            width: parent.width
            height: Math.max(said.height, lateMark.height)

            StateShape {
                id: lateMark
                visible: kind !== ShapeKind.None
                width: visible ? size : 0
                y: 2
                kind: page.car.late ? ShapeKind.Must : page.ready.shape
                size: 26
                ground: Theme.paper
            }
            Column {
                id: said
                x: lateMark.visible ? lateMark.width + 8 : 0
                width: parent.width - x - (opens.visible ? opens.width + 8 : 0)
                spacing: 2

                Words {
                    objectName: "carDue"
                    width: parent.width
                    text: page.car.due
                    mute: promise.pressable
                    bold: true
                    size: Theme.title
                    color: page.car.late ? Theme.oxide : Theme.ink
                }
                Words {
                    objectName: "carReady"
                    width: parent.width
                    visible: promise.pressable
                    text: page.ready.words
                    mute: true
                }
                Words {
                    objectName: "carHeldBy"
                    width: parent.width
                    visible: text !== ""
                    text: page.car.heldBy
                    mute: promise.pressable
                    color: Theme.pencil
                }
            }
            Icon {
                id: opens
                anchors.right: parent.right
                anchors.verticalCenter: parent.verticalCenter
                visible: promise.pressable
                source: "forward"
            }
        }
    }
    Repeater {
        model: page.car.cautions

        Row {
            id: caution

            required property string modelData
            required property int index

            objectName: "carCaution" + index
            width: page.width
            spacing: 8
            Accessible.role: Accessible.StaticText
            Accessible.name: modelData

            StateShape {
                id: beware
                kind: ShapeKind.Must
                size: 20
                ground: Theme.paper
            }
            Words {
                width: parent.width - beware.width - 8
                text: caution.modelData
                mute: true
                bold: true
                size: Theme.note
            }
        }
    }
    Repeater {
        id: conflicts
        model: page.car.conflicts

        ConflictChip {
            required property int index

            width: page.width
            onTaken: side => page.car.settle(index, side)
        }
    }
    FactRow {
        objectName: "carRefused"
        width: parent.width
        visible: page.car.refusedWords !== ""
        pressable: visible
        title: qsTr("Refused")
        words: page.car.refusedWords
        shape: ShapeKind.Disputed
        onClicked: page.timeLineAsked()
    }
    SprayedIn {
        width: parent.width
        visible: page.car.ofSpraying && page.booth.spraysCar
        booth: page.booth
        onWhoAsked: page.whoAsked()
    }
    FactRow {
        objectName: "sprayedRow"
        width: parent.width
        visible: page.sprayed?.ofInterest ?? false
        pressable: visible
        title: qsTr("What was sprayed")
        words: page.sprayed?.rowWords ?? ""
        shape: page.sprayed?.rowShape ?? ShapeKind.None
        onClicked: page.sprayedAsked()
    }
    DoNotDrive {
        objectName: "carHeld"
        width: parent.width
        visible: page.showsHeld && words !== ""
        words: page.cure?.doNotDrive ?? ""
        keys: page.cure?.keysWords ?? ""
    }
    FactRow {
        objectName: "cureRow"
        width: parent.width
        visible: page.cure !== null
        pressable: visible
        title: qsTr("Cure")
        words: page.cure?.rowWords ?? ""
        shape: page.cure?.rowShape ?? ShapeKind.None
        onClicked: page.cureAsked()
    }
    EvidenceRow {
        width: parent.width
        evidence: page.evidence
        onClicked: page.evidenceAsked()
    }
    PicturesRow {
        width: parent.width
        shots: page.shots
        onClicked: page.shotsAsked()
    }
}
