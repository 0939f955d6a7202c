// CarVisit: the ways to all that belongs to a car's visit besides its paint, under its stages; each
// row only where it is of interest.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Column {
    id: page

    required property CarViewModel car
    property VisitRowsViewModel rows: null  // check-in, walk-around, note, comebacks

    property CarHoursViewModel hours: null
    property WaitViewModel wait: null
    property OperationsViewModel work: null
    property OrdersViewModel orders: null
    property AssemblyViewModel assembly: null
    property FitViewModel fit: null

    signal hoursAsked
    signal whoAsked
    signal workAsked(string place)  // "operations", "orders", "assembly", "fit"

    spacing: Theme.gap

    WaitRows {
        width: parent.width
        wait: page.wait
        onWhoAsked: page.whoAsked()
    }
    FactRow {
        objectName: "carHoursRow"
        width: parent.width
        visible: page.hours?.ofInterest ?? false
        pressable: visible
        title: qsTr("Hours")
        words: page.hours?.rowWords ?? ""
        shape: page.hours?.rowShape ?? ShapeKind.None
        onClicked: page.hoursAsked()
    }
    FactRow {
        objectName: "carWorkRow"
        width: parent.width
        visible: page.work !== null
        pressable: visible
        title: qsTr("Work")
        words: page.work?.rowWords ?? ""
        shape: page.work?.rowShape ?? ShapeKind.None
        onClicked: page.workAsked("operations")
    }
    FactRow {
        objectName: "carOrdersRow"
        width: parent.width
        visible: page.orders !== null
        pressable: visible
        title: qsTr("On order, outside")
        words: page.orders?.rowWords ?? ""
        shape: page.orders?.rowShape ?? ShapeKind.None
        alarm: page.orders?.alarm ?? false
        onClicked: page.workAsked("orders")
    }
    FactRow {
        objectName: "carAssemblyRow"
        width: parent.width
        visible: page.assembly?.ofInterest ?? false
        pressable: visible
        title: qsTr("Assembly")
        words: page.assembly?.rowWords ?? ""
        shape: page.assembly?.rowShape ?? ShapeKind.None
        onClicked: page.workAsked("assembly")
    }
    FactRow {
        objectName: "carFitRow"
        width: parent.width
        visible: page.fit?.ofInterest ?? false
        pressable: visible
        title: qsTr("Fit")
        words: page.fit?.rowWords ?? ""
        shape: page.fit?.rowShape ?? ShapeKind.None
        alarm: page.fit?.latchAsked ?? false
        onClicked: page.workAsked("fit")
    }
    Repeater {
        model: page.rows?.rows ?? null

        FactRow {
            required property int key
            required title
            required words
            required shape

            objectName: "visitRow" + key
            width: page.width
            pressable: true
            onClicked: page.rows.ask(key)
        }
    }
}
