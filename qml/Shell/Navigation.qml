// Navigation: where one is: a place, a car in it, a work on the car. Never deeper than three.
// back() goes one step up and says whether there was one. sheets are not a depth.
import QtQuick

QtObject {
    id: way

    enum Place { Floor, Booth, Record }
    // From DirtOverTime to Car: works of the shop. From Car on: works of the car on the tape.
    enum Work { None, OpenCar, DirtOverTime, Hours, Question, KeepAndForget, Register, Protection, Limits, Exposure, BoothNow, Sending, Devices, Car, Inspect, Panel, Parts, TimeLine, History, Plan, Walk, Film, Evidence, Wall, Look, Compare, Shots, Shot, BeforeGun, Sprayed, Cure, CheckIn, WalkAround, HandOver, Comeback, CarHours, Operations, Assembly, Fit }

    property int place: Navigation.Floor
    property int work: Navigation.None
    property int filmFrom: Navigation.Panel  // where the film was asked for: a panel or the plan
    property int fitFrom: Navigation.Car  // where the fit was asked for: the car or its assembly
    property int lookFrom: Navigation.Wall  // where a picture was asked for
    property int shotFrom: Navigation.Shots  // where one was to be taken
    property int gunFrom: Navigation.Car  // where the gun was asked for: the car, or a booth
    property int sprayedFrom: Navigation.Car
    property int noteFrom: Navigation.Car
    property int timeLineFrom: Navigation.Car  // where the entries were asked for, till the next turn
    property int devicesFrom: Navigation.None  // where the devices were asked for
    property int historyFrom: Navigation.TimeLine  // where the history was asked for
    readonly property bool ofShop: work >= Navigation.DirtOverTime && work < Navigation.Car
    readonly property bool inCar: work >= Navigation.Car
    readonly property bool deeper: work > Navigation.Car

    signal arrived

    function go(next: int) {
        timeLineFrom = Navigation.Car;
        work = next;
        arrived();
    }

    function toPlace(next: int) {
        place = next;
        work = Navigation.None;
        arrived();
    }

    function back(): bool {
        if (work === Navigation.None)
            return false;
        if (work === Navigation.Panel)
            go(Navigation.Inspect);
        else if (work === Navigation.Film)
            go(filmFrom);
        else if (work === Navigation.Fit)
            go(fitFrom);
        else if (work === Navigation.Look)
            go(lookFrom);
        else if (work === Navigation.Shot)
            go(shotFrom);
        else if (work === Navigation.BeforeGun)
            go(gunFrom);
        else if (work === Navigation.Sprayed)
            go(sprayedFrom);
        else if (work === Navigation.HandOver)
            go(noteFrom);
        else if (work === Navigation.History)
            go(historyFrom);
        else if (work === Navigation.Compare)
            go(Navigation.Look);
        else if (work === Navigation.Walk)
            go(Navigation.Plan);
        else if (work === Navigation.Protection)
            go(Navigation.Register);
        else if (work === Navigation.TimeLine)
            go(timeLineFrom);
        else if (work === Navigation.Devices)
            go(devicesFrom);
        else if (work <= Navigation.Car)
            go(Navigation.None);
        else
            go(Navigation.Car);
        return true;
    }
}
