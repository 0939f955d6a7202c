// FirstAidTexts: every word of First aid, in one place. Each choice: what happened, its drawing,
// the steps in order, and what holds afterwards.
// Source: routes and first steps as in the first-aid codes of the NIOSH Pocket Guide (hexamethylene
// diisocyanate) and NIOSH publication 96-111; times, "do not drive" and "do not be alone" are common
// practice, no source. The product's safety data sheet wins.
import QtQuick

QtObject {
    readonly property string number: qsTr("Call your local emergency number")
    readonly property string sheetLine: qsTr("Bring the can or its safety data sheet to the doctor. Where the sheet says otherwise, do as the sheet says.")
    readonly property string sources: qsTr("Sources: first-aid codes of the NIOSH Pocket Guide (HDI), NIOSH publication 96-111. Times and the evening rule are common practice, no source. This page replaces no doctor.")
    readonly property var choices: [
        {
            title: qsTr("Hard to breathe, tight chest, cough"),
            icon: "air",
            call: true,
            steps: [
                qsTr("Stop. Keep your air hood or mask on and walk out."),
                qsTr("Fresh air. Sit upright. Loosen what is tight."),
                qsTr("Trouble breathing: call the emergency number now. Do not drive yourself."),
                qsTr("Own inhaler: use it as prescribed."),
                qsTr("It can come back 4 to 12 hours later, in the evening too. Do not be alone.")
            ],
            after: qsTr("Do not mix, spray, sand fresh 2K or go into the booth until a doctor has cleared you.")
        },
        {
            title: qsTr("In the eye"),
            icon: "eye",
            call: true,
            steps: [
                qsTr("Rinse at once with plenty of water, lids held open. At least 15 minutes."),
                qsTr("Contact lenses out while you rinse, if they come out easily."),
                qsTr("Do not rub. Rinse away from the other eye."),
                qsTr("Then to a doctor, with a helper driving.")
            ],
            after: qsTr("Pain, blurred sight or a splash of hardener: call the emergency number.")
        },
        {
            title: qsTr("On the skin"),
            icon: "hand",
            call: false,
            steps: [
                qsTr("Take off what is wet, gloves too."),
                qsTr("Wash at once with soap and plenty of water, or the cleanser of the safety data sheet."),
                qsTr("Never thinner."),
                qsTr("Redness, rash or blisters: to a doctor.")
            ],
            after: qsTr("Wheezing or a tight chest after skin contact: treat it as hard to breathe.")
        },
        {
            title: qsTr("Cut or stung by the gun's pressure"),
            icon: "gun",
            call: true,
            steps: [
                qsTr("This is an emergency, even when it looks like a pinprick."),
                qsTr("Call the emergency number. Say: injected under high pressure, and with what."),
                qsTr("Do not squeeze it, do not bind it off. Keep the hand still and high."),
                qsTr("Nothing to eat or drink until a surgeon has seen it.")
            ],
            after: qsTr("Do not wait for pain or swelling. Hours count.")
        },
        {
            title: qsTr("Fan stopped, or the air hood failed"),
            icon: "fan",
            call: false,
            steps: [
                qsTr("Gun down."),
                qsTr("Air hood or mask stays on. Out."),
                qsTr("Door shut behind you. Keep the others out."),
                qsTr("Nobody goes back in without supplied air.")
            ],
            after: qsTr("No smell does not mean no mist. Cough or tight chest, now or in the evening: treat it as hard to breathe.")
        }
    ]
}
