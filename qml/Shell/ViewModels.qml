// ViewModels: what the window and its screens are made of, in one piece. Made by the program.
import QtQuick
import Jambline.Screens

QtObject {
    required property Session session
    required property SettingsViewModel settings
    required property ShellViewModel shell
    required property SyncViewModel sync
    required property JoinViewModel join
    required property DevicesViewModel devices
    required property FloorViewModel floor
    required property ReadyViewModel ready
    required property CalendarViewModel calendar
    required property ClockViewModel clock
    required property PinViewModel pin
    required property ForgottenClockViewModel forgotten
    required property HoursViewModel hours
    required property CarHoursViewModel carHours
    required property WaitViewModel wait
    required property ShopViewModel shop
    required property ShopFolderViewModel shopFolder
    required property DemoViewModel demo
    required property OpenCarViewModel openCarForm
    required property CarViewModel car
    required property CheckInViewModel checkIn
    required property WalkAroundViewModel walkAround
    required property HandOverViewModel handOver
    required property ComebackViewModel comeback
    required property VisitRowsViewModel visitRows
    required property InspectViewModel inspect
    required property EvidenceViewModel evidence
    required property BoothViewModel booth
    required property BoothFactsViewModel boothFacts
    required property BoothReadingViewModel boothReading
    required property ClearanceViewModel clearance
    required property CountdownViewModel countdown
    required property RegisterViewModel protection
    required property LimitsViewModel limits
    required property ExposureViewModel exposure
    required property FirstAidViewModel aid
    required property PartsViewModel parts
    required property HandOffViewModel hand
    required property OperationsViewModel operations
    required property OrdersViewModel orders
    required property AssemblyViewModel assembly
    required property FitViewModel fit
    required property RulesViewModel rules
    required property FilmViewModel film
    required property BeforeCutViewModel beforeCut
    required property PlanViewModel plan
    required property WalkViewModel walk
    required property CureViewModel cure
    required property BondViewModel bond
    required property ProductViewModel products
    required property BeforeGunViewModel beforeGun
    required property SprayedViewModel sprayed
    required property RecordViewModel record
    required property DirtOverTimeViewModel dirt
    required property TimeLineViewModel timeLine
    required property WallViewModel wall
    required property ShotListViewModel shotList
    required property ShotsViewModel shots
    required property ShotViewModel shot
    required property LookViewModel look
    required property CompareViewModel compare
    required property LeftoversViewModel leftovers
}
