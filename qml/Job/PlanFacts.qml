// PlanFacts: below the rounds of the plan: panels with their film word, what is left out and why,
// from when it may be sanded, where each kind starts, minutes and what was learned, advice.
// Signals: startAsked(kind), filmAsked(panel).
pragma ComponentBehavior: Bound
import QtQuick
import Jambline.Theme
import Jambline.Screens

Column {
    id: column

    required property PlanViewModel plan

    signal startAsked(string kind)
    signal filmAsked(string panel)

    component Title: Words {
        width: column.width
        topPadding: Theme.gap
        bold: true
        size: Theme.lead
        Accessible.role: Accessible.Heading
    }

    visible: plan.here
    spacing: Theme.gap

    Title {
        visible: column.plan.leftOutCount > 0
        text: qsTr("Not in the plan")
    }
    Repeater {
        model: column.plan.leftOut

        FactCard {
            id: left
            required property string key
            required property string why
            required property bool canAdd
            required property string film
            required property var model

            objectName: "leftOut"
            width: column.width
            kind: ShapeKind.Must
            title: model.title
            facts: why
            act: canAdd ? qsTr("It is hard now: put it in") : film !== "" ? qsTr("Read the film") : ""
            actName: canAdd ? qsTr("%1 is hard now: put it in").arg(model.title) : qsTr("%1: read the film").arg(model.title)
            onActed: canAdd ? column.plan.sayHard(true) : column.filmAsked(film)
        }
    }
    Title {
        text: qsTr("Panels")
    }
    Repeater {
        model: column.plan.panels

        FactCard {
            required property string key
            required property string film
            required property bool filmStops
            required property var model

            width: column.width
            title: model.title
            facts: model.facts
            more: film
            kind: film === "" ? ShapeKind.None : filmStops ? ShapeKind.Waits : ShapeKind.Running
            act: qsTr("Read the film")
            actName: qsTr("%1: read the film").arg(model.title)
            onActed: column.filmAsked(key)
        }
    }
    Title {
        text: qsTr("Before the first round")
    }
    FactCard {
        width: parent.width
        title: column.plan.sandWords
        facts: column.plan.windowWords
        act: column.plan.sandSaid && !column.plan.byClock ? qsTr("Ask it again at the start") : ""
        onActed: column.plan.askSandAgain()
    }
    Repeater {
        model: column.plan.starts

        FactCard {
            id: start
            required property string key
            required property bool proved
            required property var model

            width: column.width
            title: model.title
            facts: model.start
            kind: proved ? ShapeKind.Done : ShapeKind.None
            act: qsTr("Test spot says otherwise")
            actName: qsTr("%1: a test spot says another start").arg(model.title)
            onActed: column.startAsked(start.key)
        }
    }
    Title {
        text: qsTr("Minutes")
    }
    Repeater {
        model: column.plan.times

        FactCard {
            required property string usual
            required property string own
            required property var model

            width: column.width
            title: model.title
            facts: usual
            more: own
        }
    }
    Repeater {
        model: column.plan.learned

        Words {
            required property string modelData

            width: column.width
            text: modelData
            size: Theme.note
            color: Theme.pencil
        }
    }
    Title {
        text: qsTr("Mind")
    }
    Repeater {
        model: column.plan.advice

        Words {
            required property string modelData

            width: column.width
            text: modelData
        }
    }
}
