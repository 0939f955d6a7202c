// app/jambline/program.h: the parts of the running program in the order in which they live.
//
// Order:   engine, session, view models, QML. The destructor takes them down the other way round,
//          after everything that was posted has been written.
// Threads: GUI thread; snapshots come from the work lane by Session::publish.
#pragma once

#include <QQmlApplicationEngine>
#include <QQuickWindow>
#include <QThreadPool>
#include <atomic>
#include <memory>
#include <vector>

#include "app/jambline/options.h"
#include "engine/engine.h"
#include "exchange/exchange.h"
#include "screens/session.h"

namespace jambline::device {
class Camera;
class Knocks;
}  // namespace jambline::device

namespace jambline::screens {
class AssemblyViewModel;
class BeforeCutViewModel;
class BeforeGunViewModel;
class BondViewModel;
class BoothFactsViewModel;
class BoothReadingViewModel;
class BoothViewModel;
class CalendarViewModel;
class CarHoursViewModel;
class CarViewModel;
class CheckInViewModel;
class ClearanceViewModel;
class ClockViewModel;
class ComebackViewModel;
class CompareViewModel;
class CorrectionWork;
class CountdownViewModel;
class CureViewModel;
class CureWork;
class DemoViewModel;
class DevicesViewModel;
class DirtOverTimeViewModel;
class QuestionViewModel;
class EvidenceViewModel;
class ExposureViewModel;
class FilmViewModel;
class FirstAidViewModel;
class FitViewModel;
class FloorForecasts;
class FloorViewModel;
class ForgottenClockViewModel;
class HandOffViewModel;
class HandOverViewModel;
class HistoryViewModel;
class HoursViewModel;
class InspectViewModel;
class JoinViewModel;
class LeftoversViewModel;
class LimitsViewModel;
class LookViewModel;
class OpenCarViewModel;
class OperationsViewModel;
class OrdersViewModel;
class PartsViewModel;
class PictureIntake;
class PictureOrigins;
class PictureStore;
class PinViewModel;
class PlanViewModel;
class ProductViewModel;
class ReadyViewModel;
class RecordViewModel;
class RegisterViewModel;
class RetentionViewModel;
class RulesViewModel;
class SettingsViewModel;
class ShellViewModel;
class ShopFolderViewModel;
class ShopViewModel;
class ShotListViewModel;
class ShotViewModel;
class ShotsViewModel;
class SprayedViewModel;
class SyncViewModel;
class TimeLineViewModel;
class ReportViewModel;
class BundleViewModel;
class VinScanViewModel;
class VisitRowsViewModel;
class WaitViewModel;
class WalkAroundViewModel;
class WalkViewModel;
class WallViewModel;
}  // namespace jambline::screens

namespace jambline::app {

// How the event loop ends when the folder has to be opened again: it was joined to a shop.
inline constexpr int open_again = 77;

class Program {
 public:
  // Opens the folder. The clock outlives the program.
  static Result<std::unique_ptr<Program>> open(const std::filesystem::path& folder,
                                               const Clock& clock, const Options& options);
  ~Program();
  Program(const Program&) = delete;
  Program& operator=(const Program&) = delete;

  bool show();  // false when the window could not be made
  QQuickWindow* window() const;
  screens::Session& session() { return *session_; }
  screens::FloorForecasts& forecasts() { return *forecasts_; }
  screens::InspectViewModel& inspect() { return *inspect_; }
  screens::EvidenceViewModel& evidence() { return *evidence_; }
  screens::FilmViewModel& film() { return *film_; }
  screens::FitViewModel& fit() { return *fit_; }
  screens::ClearanceViewModel& clearance() { return *clearance_; }
  screens::LookViewModel& look() { return *look_; }
  screens::WallViewModel& wall() { return *wall_; }
  screens::ShotViewModel& shot() { return *shot_; }
  screens::ShotsViewModel& shots() { return *shots_; }
  screens::CompareViewModel& compare() { return *compare_; }
  screens::PictureIntake& intake() { return *intake_; }
  screens::BeforeGunViewModel& before_gun() { return *before_gun_; }
  screens::SprayedViewModel& sprayed() { return *sprayed_; }
  screens::RegisterViewModel& protection() { return *register_; }
  screens::ExposureViewModel& exposure() { return *exposure_; }
  screens::CureViewModel& cure() { return *cure_; }
  screens::BondViewModel& bond() { return *bond_; }
  screens::ProductViewModel& products() { return *products_; }
  // With no exchange in it all stays on this device: sync().use() gives it one, which has to live
  // longer or be taken back.
  screens::SyncViewModel& sync() { return *sync_; }
  screens::JoinViewModel& join() { return *join_; }
  screens::DevicesViewModel& devices() { return *devices_; }
  screens::SettingsViewModel& settings() { return *settings_; }
  engine::Engine& engine() { return *engine_; }

 private:
  Program() = default;
  void keep_settings();
  void start_exchange();
  void open_again_when_wanted();

  std::filesystem::path folder_;
  Options options_;
  std::atomic<screens::Session*> listener_{nullptr};
  std::atomic<exchange::Exchange*> sender_{nullptr};
  std::unique_ptr<engine::Engine> engine_;
  std::unique_ptr<screens::Session> session_;
  std::unique_ptr<screens::PictureStore> pictures_;
  std::unique_ptr<screens::PictureOrigins> origins_;
  std::unique_ptr<screens::SettingsViewModel> settings_;
  std::unique_ptr<screens::ShellViewModel> shell_;
  std::unique_ptr<screens::SyncViewModel> sync_;
  std::unique_ptr<screens::DevicesViewModel> devices_;
  std::unique_ptr<screens::FloorForecasts> forecasts_;
  std::unique_ptr<screens::FloorViewModel> floor_;
  std::unique_ptr<screens::ReadyViewModel> ready_;
  std::unique_ptr<screens::CalendarViewModel> calendar_;
  std::unique_ptr<screens::ClockViewModel> clock_;
  std::unique_ptr<screens::PinViewModel> pin_;
  std::unique_ptr<screens::ForgottenClockViewModel> forgotten_;
  std::unique_ptr<screens::HoursViewModel> hours_;
  std::unique_ptr<screens::CarHoursViewModel> car_hours_;
  std::unique_ptr<screens::WaitViewModel> wait_;
  std::unique_ptr<screens::ShopViewModel> shop_;
  std::unique_ptr<screens::RetentionViewModel> retention_;
  std::unique_ptr<screens::ShopFolderViewModel> shop_folder_;
  std::unique_ptr<screens::DemoViewModel> demo_;
  std::unique_ptr<screens::OpenCarViewModel> open_car_;
  std::unique_ptr<screens::CureWork> cure_work_;
  std::unique_ptr<screens::CorrectionWork> work_;
  std::unique_ptr<screens::CarViewModel> car_;
  std::unique_ptr<screens::CheckInViewModel> check_in_;
  std::unique_ptr<screens::WalkAroundViewModel> walk_around_;
  std::unique_ptr<screens::HandOverViewModel> hand_over_;
  std::unique_ptr<screens::ComebackViewModel> comeback_;
  std::unique_ptr<screens::VisitRowsViewModel> visit_rows_;
  std::unique_ptr<screens::InspectViewModel> inspect_;
  std::unique_ptr<screens::EvidenceViewModel> evidence_;
  std::unique_ptr<screens::BoothViewModel> booth_;
  std::unique_ptr<screens::BoothFactsViewModel> booth_facts_;
  std::unique_ptr<screens::BoothReadingViewModel> booth_reading_;
  std::unique_ptr<device::Knocks> knocks_;
  std::unique_ptr<screens::ClearanceViewModel> clearance_;
  std::unique_ptr<screens::CountdownViewModel> countdown_;
  std::unique_ptr<screens::RegisterViewModel> register_;
  std::unique_ptr<screens::LimitsViewModel> limits_;
  std::unique_ptr<screens::ExposureViewModel> exposure_;
  std::unique_ptr<screens::FirstAidViewModel> aid_;
  std::unique_ptr<screens::PartsViewModel> parts_;
  std::unique_ptr<screens::HandOffViewModel> hand_;
  std::unique_ptr<screens::OperationsViewModel> operations_;
  std::unique_ptr<screens::OrdersViewModel> orders_;
  std::unique_ptr<screens::AssemblyViewModel> assembly_;
  std::unique_ptr<screens::FitViewModel> fit_;
  std::unique_ptr<screens::RulesViewModel> rules_;
  std::unique_ptr<screens::PlanViewModel> plan_;
  std::unique_ptr<screens::WalkViewModel> walk_;
  std::unique_ptr<screens::CureViewModel> cure_;
  std::unique_ptr<screens::BondViewModel> bond_;
  std::unique_ptr<screens::ProductViewModel> products_;
  std::unique_ptr<screens::FilmViewModel> film_;
  std::unique_ptr<screens::BeforeCutViewModel> before_cut_;
  std::unique_ptr<screens::BeforeGunViewModel> before_gun_;
  std::unique_ptr<screens::SprayedViewModel> sprayed_;
  std::unique_ptr<screens::RecordViewModel> record_;
  std::unique_ptr<screens::DirtOverTimeViewModel> dirt_;
  std::unique_ptr<screens::QuestionViewModel> question_;
  std::unique_ptr<screens::TimeLineViewModel> time_line_;
  std::unique_ptr<screens::HistoryViewModel> history_;
  std::unique_ptr<screens::ReportViewModel> report_;
  std::unique_ptr<screens::BundleViewModel> bundle_;
  std::unique_ptr<screens::WallViewModel> wall_;
  std::unique_ptr<screens::ShotListViewModel> shot_list_;
  std::unique_ptr<screens::PictureIntake> intake_;
  std::unique_ptr<device::Camera> camera_;
  std::unique_ptr<screens::VinScanViewModel> vin_scan_;
  std::unique_ptr<screens::JoinViewModel> join_;
  std::unique_ptr<screens::ShotsViewModel> shots_;
  std::unique_ptr<screens::ShotViewModel> shot_;
  std::unique_ptr<screens::LookViewModel> look_;
  std::unique_ptr<screens::CompareViewModel> compare_;
  std::unique_ptr<screens::LeftoversViewModel> leftovers_;
  std::unique_ptr<exchange::Exchange> exchange_;  // ends before the screens that it tells
  QThreadPool writer_;  // one thread, so that the last change is the one that stands
  std::unique_ptr<QQmlApplicationEngine> qml_;
};

}  // namespace jambline::app
