// Every control of the theme on one sheet of paper, for the pictures.
import QtQuick
import Jambline.Theme

Rectangle {
    id: gallery

    property real room: width - 2 * Theme.gutter

    width: 412
    height: all.height
    color: Theme.paper

    component Head: Words {
        x: Theme.gutter
        topPadding: 14
        bottomPadding: 4
        bold: true
        color: Theme.pencil
    }

    Column {
        id: all
        width: parent.width
        spacing: Theme.gap

        MarginLine {
            width: parent.width
            syncText: "12 to send · no network"
            wallText: "10:42"
        }
        Item {
            width: parent.width
            height: Math.max(head.height, aid.height)
            TapeLabel {
                id: head
                width: 306
                lift: 72
                tornLeft: false
                pressable: true
                back: true
                text: "K 41-206"
                secondLine: "deep green · three-door hatch"
            }
            PlainButton {
                id: aid
                x: 320
                width: 76
                text: "First aid"
                textSize: Theme.note
                iconName: "first-aid"
                beside: false
            }
        }
        Item {
            x: Theme.gutter
            width: gallery.room
            height: title.height
            Words {
                id: title
                text: "Left quarter panel"
                bold: true
                size: Theme.screen
                width: parent.width - 90
            }
            Words {
                anchors.right: parent.right
                anchors.baseline: title.baseline
                text: "4 nibs"
                bold: true
                size: Theme.lead
            }
        }
        Head { text: "States" }
        Flow {
            x: Theme.gutter
            width: gallery.room
            spacing: 14
            Repeater {
                model: [ShapeKind.Done, ShapeKind.Running, ShapeKind.Waits, ShapeKind.Must, ShapeKind.NotYet,
                    ShapeKind.Unseen, ShapeKind.Disputed, ShapeKind.Respray, ShapeKind.Paused, ShapeKind.Ring]
                StateShape {
                    required property int modelData
                    kind: modelData
                    ground: Theme.paper
                    key: "nib 3"
                }
            }
        }
        Head { text: "Cards" }
        PaperCard {
            x: Theme.gutter
            width: gallery.room
            padding: 0
            pressable: true
            quiet: true
            name: "K 41-206"
            Column {
                width: parent.width
                TapeLabel {
                    width: 226
                    tornLeft: false
                    text: "K 41-206"
                    aside: "green hatch"
                }
                Item {
                    width: parent.width
                    height: Math.max(70, cardWords.height + 16)
                    StateShape {
                        x: 14
                        anchors.verticalCenter: parent.verticalCenter
                        kind: ShapeKind.Waits
                        size: 26
                    }
                    Column {
                        id: cardWords
                        x: 52
                        width: parent.width - 52 - 90
                        anchors.verticalCenter: parent.verticalCenter
                        spacing: 3
                        Words { width: parent.width; text: "Look over 3 panels"; bold: true; size: Theme.lead }
                        Words { width: parent.width; text: "you · before polish time, 11:20"; size: Theme.note; color: Theme.pencil }
                    }
                    Words {
                        anchors.right: parent.right
                        anchors.rightMargin: 12
                        y: cardWords.y
                        text: "4 in 10"
                        bold: true
                        color: Theme.ochreInk
                    }
                }
            }
        }
        PaperCard {
            x: Theme.gutter
            width: gallery.room
            pressable: true
            chosen: true
            side: true
            footColor: Theme.blue
            name: "Compound"
            Row {
                spacing: 14
                x: 6
                StateShape { anchors.verticalCenter: parent.verticalCenter; kind: ShapeKind.Running }
                Column {
                    Words { text: "Compound, 75 mm pad"; bold: true; size: Theme.lead }
                    Words { text: "new rag before you wipe"; size: Theme.note; color: Theme.pencil }
                }
            }
        }
        PaperCard {
            x: Theme.gutter
            width: gallery.room
            pressable: true
            must: true
            name: "Mixing room fan on, must"
            Item {
                width: parent.width
                height: fan.height
                StateShape { id: tri; anchors.verticalCenter: parent.verticalCenter; kind: ShapeKind.Must; size: 28 }
                Words { id: fan; x: 44; width: parent.width - 44 - 60; text: "Mixing room fan on"; bold: true; size: Theme.lead }
                Words { anchors.right: parent.right; anchors.baseline: fan.baseline; text: "must"; bold: true; color: Theme.oxide }
            }
        }
        Head { text: "Figures and limits" }
        Row {
            x: Theme.gutter
            spacing: Theme.gap
            FigureBlock {
                width: (gallery.room - 8) / 2
                label: "left after"
                value: "47"
                unit: "µm"
                limitWords: "keep 40"
                note: "1 in 300 ends below"
            }
            FigureBlock {
                width: (gallery.room - 8) / 2
                label: "film now"
                value: "38"
                unit: "µm"
                limitWords: "keep 40"
                out: true
                grade: FigureBlock.Estimate
            }
        }
        FigureBlock {
            x: Theme.gutter
            width: gallery.room
            label: "Airflow"
            value: "Nobody has measured it yet"
            grade: FigureBlock.Missing
        }
        PaperCard {
            x: Theme.gutter
            width: gallery.room
            Row {
                spacing: 24
                LimitLine { width: 110; name: "1 in 99"; value: 0.77; limit: 0.5; lowWords: "chance"; highWords: "cause" }
                LimitLine { width: 90; name: "5.2"; value: 0.9; limit: 0.66; out: true; dot: 11 }
                LimitLine { width: 90; name: "too few to say"; tooFew: true; limit: 0.5 }
            }
        }
        LimitLine {
            x: 24
            width: gallery.width - 48
            name: "11 % of the way"
            value: 0.11
            filled: true
            tone: Theme.ochre
            dot: 18
            marks: [0, 0.667, 1]
            lowWords: "gun down"
            highWords: "99.9 %"
        }
        Row {
            x: Theme.gutter
            spacing: 20
            TimeText { form: TimeWords.Countdown; seconds: 400; size: Theme.far; bold: true }
        }
        Row {
            x: Theme.gutter
            spacing: 20
            TimeText { text: "16:30" }
            TimeText { text: "Tue 15:40"; doubtful: true }
            TimeText { text: "0:31:20"; bold: true }
            Hatch { width: 90; height: 24 }
        }
        Head { text: "Acts" }
        UndoRow {
            x: Theme.gutter
            width: gallery.room
            text: "Nib 6 placed"
            shape: ShapeKind.Ring
            middleText: "Kind"
        }
        ActRow {
            x: Theme.gutter
            width: gallery.room
            PlainButton { text: "Clean"; shape: ShapeKind.Done }
            PlainButton { text: "Correct"; shape: ShapeKind.Ring; chosen: true }
            PlainButton { text: "Respray"; shape: ShapeKind.Respray }
        }
        ActRow {
            x: Theme.gutter
            width: gallery.room
            PlainButton { text: "Mixing room"; secondLine: "fan on 09:50" }
            PlainButton { text: "Fan stopped"; secondLine: "start count again" }
        }
        SlabButton {
            x: Theme.gutter
            width: gallery.room
            text: "Set cause: hose or cup"
            secondLine: "goes into the dirt record"
        }
        SlabButton {
            x: Theme.gutter
            width: gallery.room
            text: "Spray clock waits for 2 musts"
            secondLine: "hold to start without them, with a reason"
            waits: true
        }
        Column {
            width: parent.width
            SteelRule {
                width: parent.width
                name: "Clock, Inspect, Ivo"
                operation: "Inspect"
                who: "Ivo · 0.1 of 1.0 h"
                seconds: 401
                used_h: 0.11
                allotted_h: 1.0
                tabText: "Correct"
            }
            Row {
                Repeater {
                    model: ["Floor", "Booth", "Record"]
                    Item {
                        required property string modelData
                        width: gallery.width / 3
                        height: 72
                        TapeLabel {
                            anchors.centerIn: parent
                            width: parent.width - 24
                            tab: true
                            pressable: true
                            lift: 46
                            chosen: parent.modelData === "Floor"
                            text: parent.modelData
                        }
                    }
                }
            }
        }
        SteelRule {
            width: parent.width
            name: "Clock, Correct, Jo, over"
            operation: "Correct · Jo"
            who: "0.3 h over"
            seconds: 4670
            used_h: 1.3
            allotted_h: 1.0
        }
        SteelRule {
            width: parent.width
            name: "No clock runs"
            operation: "No clock runs"
            who: "tap here to start one"
            mode: SteelRule.None
        }
        Head { text: "Messages" }
        NoteBanner {
            x: Theme.gutter
            width: gallery.room
            kind: NoteBanner.NotSaved
            happened: "Nib 7 was not saved. The tablet is full."
            stands: "All up to nib 6 is saved."
            actText: "Make room"
            details: "code 28"
        }
        NoteBanner {
            x: Theme.gutter
            width: gallery.room
            kind: NoteBanner.Disputed
            happened: "Two verdicts on the hood"
            stands: "Nothing is lost. Releasing the hood waits until one is chosen."
        }
        Head { text: "Typing" }
        FaceField {
            x: Theme.gutter
            width: gallery.room
            label: "Plate"
            text: "K 41-2"
            wrong: "A plate has six signs here."
        }
        FaceField {
            x: Theme.gutter
            width: gallery.room
            placeholder: "Plate, VIN, color, note, person"
            iconName: "search"
            tail: "/"
        }
        KeyPad {
            x: Theme.gutter
            width: gallery.room
            label: "Gap at point 1"
            kind: KeyPad.Tenths
            typed: "39"
            unitText: "mm"
            unitKey: "inch"
        }
        Head { text: "Record" }
        SentenceFilter {
            x: Theme.gutter
            width: gallery.room
            parts: [{text: "Cars", key: ""}, {text: "delivered", key: "what"}, {text: "in", key: ""},
                {text: "2026", key: "when", changed: true}, {text: "painted by", key: ""}, {text: "anyone", key: "who"}]
            tail: "214 of 6,214 cars"
        }
        DataTable {
            id: cars
            x: Theme.gutter
            width: gallery.room
            name: "Cars"
            columns: [
                TableColumn { title: "Car"; width: 130 },
                TableColumn { title: "Kept"; fill: true },
                TableColumn { title: "Hours"; width: 70; alignRight: true }
            ]
            sortColumn: 2
            chosen: 0
            model: ListModel {
                ListElement { plate: "S 88-014"; kept: "26.5 h late"; hours: "9.4" }
                ListElement { plate: "L 88-023"; kept: "4.0 h late"; hours: "7.1" }
                ListElement { plate: "B 90-441"; kept: "on time"; hours: "6.1" }
            }
            delegate: DataRow {
                id: dataRow
                required property string plate
                required property string kept
                required property string hours
                table: cars
                name: plate + ", " + kept
                TapeLabel {
                    x: cars.cellX(0)
                    width: cars.cellWidth(0)
                    anchors.verticalCenter: parent.verticalCenter
                    lift: 32
                    text: dataRow.plate
                }
                Words {
                    x: cars.cellX(1)
                    width: cars.cellWidth(1)
                    anchors.verticalCenter: parent.verticalCenter
                    text: dataRow.kept
                }
                Words {
                    x: cars.cellX(2)
                    width: cars.cellWidth(2)
                    horizontalAlignment: Text.AlignRight
                    anchors.verticalCenter: parent.verticalCenter
                    text: dataRow.hours
                    bold: true
                }
            }
        }
        Lanes {
            x: Theme.gutter
            width: gallery.room
            name: "Time line of S 88-014"
            start: 0
            end: 72
            position: 34
            handleText: "Tue, entry 34 of 61"
            marks: [{at: 0, text: "Mon 23"}, {at: 24, text: "Tue 24"}, {at: 60, text: "Wed"}]
            lanes: [
                {name: "Air", spans: [{from: 2, to: 5, look: Lanes.Here}]},
                {name: "Ivo", spans: [{from: 1, to: 3, look: Lanes.Solid}, {from: 32, to: 36, look: Lanes.Solid}]},
                {name: "Waits", spans: [{from: 8, to: 30, look: Lanes.Waits}, {from: 40, to: 60, look: Lanes.Waits}]},
                {name: "Entries", spans: [{from: 2, to: 2, look: Lanes.Tick}, {from: 5, to: 5, look: Lanes.Tick},
                    {from: 6, to: 6, look: Lanes.Tick}, {from: 33, to: 33, look: Lanes.Tick}]}
            ]
        }
        Item { width: 1; height: 12 }
    }
}
