// PanelChoice: the unfolded car; a tap on a panel paints it or not. The cards below say the same to
// keys and to the reader.
import QtQuick
import Jambline.Theme
import Jambline.Screens
import Jambline.Job

Item {
    id: choice

    required property OpenCarViewModel form

    implicitHeight: 320 + how.height + Theme.gap
    height: implicitHeight

    CarTint {
        id: paint
        car: Theme.tape
        dark: Theme.dark
    }
    Words {
        id: how
        width: parent.width
        text: qsTr("Tap the panels to be painted")
        size: Theme.note
        color: Theme.pencil
    }
    BodyDrawing {
        id: drawing
        objectName: "panelChoice"
        y: how.height + Theme.gap
        width: parent.width
        height: 320
        shape: choice.form.body
        painted: choice.form.painted
        line: Theme.ink
        fill: paint.tint
        glass: Theme.edge
        Accessible.role: Accessible.Graphic
        Accessible.name: qsTr("%1 panels chosen").arg(choice.form.panelCount)

        TapHandler {
            gesturePolicy: TapHandler.DragThreshold
            onTapped: point => {
                const panel = drawing.panelAt(point.position.x, point.position.y);
                if (panel !== "")
                    choice.form.flipPanel(panel);
            }
        }
    }
}
