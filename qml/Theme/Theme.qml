// Theme: the tokens and their switches; the only singleton of the interface. No state of the job.
// Switches: dark, desk (pointer and width from 1200: small targets), textScale (1.0 to 1.5),
// reducedMotion, twelveHour. Everything else follows from them and is read only.
// Roles are colors; sizes are dp; type sizes are pixels and grow with textScale, except far.
pragma Singleton

import QtQuick

QtObject {
    property bool dark: false
    property bool desk: false
    property real textScale: 1.0
    property bool reducedMotion: false
    property bool twelveHour: false

    readonly property color paper: dark ? "#171613" : "#F6F3EA"
    readonly property color sheet: dark ? "#23211C" : "#FFFFFF"
    readonly property color ink: dark ? "#EDE7D8" : "#1E1C18"
    readonly property color pencil: dark ? "#BDB5A2" : "#544E42"
    readonly property color tape: dark ? "#C6A45C" : "#E4C57A"
    readonly property color tapeInk: dark ? "#171613" : "#1E1C18"
    readonly property color chalk: dark ? "#4A453B" : "#CFC7B4"
    readonly property color edge: dark ? "#857D6C" : "#8A8271"
    readonly property color green: dark ? "#60D1A5" : "#137961"
    readonly property color oxide: dark ? "#E8685C" : "#982A19"
    readonly property color blue: dark ? "#8EA5D2" : "#1A3870"
    readonly property color ochre: dark ? "#F5CE55" : "#C4760B"
    readonly property color ochreInk: dark ? "#F5CE55" : "#7F5000"
    readonly property color slab: dark ? "#D6CCB4" : "#1E1C18"
    readonly property color slabInk: dark ? "#171613" : "#F6F3EA"
    readonly property color steel: dark ? "#33363A" : "#DADDDA"
    readonly property color veil: dark ? "#99000000" : "#80000000"

    readonly property string family: "B612"
    readonly property int small: Math.round(13 * textScale)
    readonly property int note: Math.round(14 * textScale)
    readonly property int body: Math.round(16 * textScale)
    readonly property int lead: Math.round(18 * textScale)
    readonly property int title: Math.round(22 * textScale)
    readonly property int screen: Math.round(24 * textScale)
    readonly property int place: Math.round(30 * textScale)
    readonly property int clock: Math.round(28 * textScale)
    readonly property int far: 132

    readonly property int grid: 8
    readonly property int gap: 8
    readonly property int gutter: 16
    readonly property int corner: 4
    readonly property real line: 1.5
    readonly property real lineSelected: 2.5
    readonly property int foot: 6
    readonly property int touch: desk ? 44 : 72
    readonly property int main: desk ? 44 : 76
    readonly property int row: desk ? 52 : 72
    readonly property int tapeHeight: 72
    readonly property int rule: desk ? 64 : 76
    readonly property int places: 72
    readonly property int margin: 28
    readonly property int slip: 12

    readonly property int move: reducedMotion ? 0 : 150
    readonly property int tear: reducedMotion ? 0 : 180
}
