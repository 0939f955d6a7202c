// ViewModels: what the screens in the body are made of, handed on in one piece.
import QtQuick
import Jambline.Screens

QtObject {
    required property Session session
    required property FloorViewModel floor
    required property DemoViewModel demo
    required property OpenCarViewModel openCarForm
    required property CarViewModel car
    required property InspectViewModel inspect
    required property EvidenceViewModel evidence
    required property BoothViewModel booth
    required property BoothFactsViewModel boothFacts
    required property BoothReadingViewModel boothReading
    required property ClearanceViewModel clearance
    required property RegisterViewModel protection
    required property LimitsViewModel limits
    required property ExposureViewModel exposure
    required property FilmViewModel film
    required property PartsViewModel parts
    required property PlanViewModel plan
    required property WalkViewModel walk
    required property CureViewModel cure
    required property BondViewModel bond
    required property BeforeGunViewModel beforeGun
    required property SprayedViewModel sprayed
    required property RecordViewModel record
    required property DirtOverTimeViewModel dirt
    required property TimeLineViewModel timeLine
    required property WallViewModel wall
    required property ShotsViewModel shots
    required property ShotViewModel shot
    required property LookViewModel look
    required property CompareViewModel compare
    required property LeftoversViewModel leftovers
}
