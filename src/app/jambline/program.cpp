#include "app/jambline/program.h"

#include <QGuiApplication>
#include <QPalette>
#include <QQmlComponent>
#include <QQmlExtensionPlugin>
#include <QStandardPaths>
#include <QSysInfo>

#include "app/jambline/hand_over_file.h"
#include "app/jambline/papers.h"
#include "device/camera.h"
#include "device/device_settings.h"
#include "device/knocks.h"
#include "device/metered_network.h"
#include "screens/assembly_view_model.h"
#include "screens/before_cut_view_model.h"
#include "screens/before_gun_view_model.h"
#include "screens/bond_view_model.h"
#include "screens/booth_facts_view_model.h"
#include "screens/booth_reading_view_model.h"
#include "screens/booth_view_model.h"
#include "screens/bundle_view_model.h"
#include "screens/calendar_view_model.h"
#include "screens/car_hours_view_model.h"
#include "screens/car_view_model.h"
#include "screens/check_in_view_model.h"
#include "screens/clearance_view_model.h"
#include "screens/clock_view_model.h"
#include "screens/comeback_view_model.h"
#include "screens/compare_view_model.h"
#include "screens/correction_work.h"
#include "screens/countdown_view_model.h"
#include "screens/cure_view_model.h"
#include "screens/cure_work.h"
#include "screens/demo_view_model.h"
#include "screens/devices_view_model.h"
#include "screens/dirt_over_time_view_model.h"
#include "screens/evidence_view_model.h"
#include "screens/exposure_view_model.h"
#include "screens/film_view_model.h"
#include "screens/first_aid_view_model.h"
#include "screens/fit_view_model.h"
#include "screens/floor_forecasts.h"
#include "screens/floor_view_model.h"
#include "screens/forgotten_clock_view_model.h"
#include "screens/hand_off_view_model.h"
#include "screens/hand_over_view_model.h"
#include "screens/history_view_model.h"
#include "screens/hours_view_model.h"
#include "screens/inspect_view_model.h"
#include "screens/join_view_model.h"
#include "screens/leftovers_view_model.h"
#include "screens/limits_view_model.h"
#include "screens/look_view_model.h"
#include "screens/open_car_view_model.h"
#include "screens/operations_view_model.h"
#include "screens/orders_view_model.h"
#include "screens/parts_view_model.h"
#include "screens/picture_intake.h"
#include "screens/picture_origins.h"
#include "screens/picture_store.h"
#include "screens/pin_view_model.h"
#include "screens/plan_view_model.h"
#include "screens/product_view_model.h"
#include "screens/question_view_model.h"
#include "screens/ready_view_model.h"
#include "screens/record_view_model.h"
#include "screens/register_view_model.h"
#include "screens/report_view_model.h"
#include "screens/retention_view_model.h"
#include "screens/rules_view_model.h"
#include "screens/settings_view_model.h"
#include "screens/shell_view_model.h"
#include "screens/shop_folder_view_model.h"
#include "screens/shop_view_model.h"
#include "screens/shot_list_view_model.h"
#include "screens/shot_view_model.h"
#include "screens/shots_view_model.h"
#include "screens/sprayed_view_model.h"
#include "screens/sync_view_model.h"
#include "screens/time_line_view_model.h"
#include "screens/vin_scan_view_model.h"
#include "screens/visit_rows_view_model.h"
#include "screens/wait_view_model.h"
#include "screens/walk_around_view_model.h"
#include "screens/walk_view_model.h"
#include "screens/wall_view_model.h"

Q_IMPORT_QML_PLUGIN(Jambline_ThemePlugin)
Q_IMPORT_QML_PLUGIN(Jambline_ScreensPlugin)
Q_IMPORT_QML_PLUGIN(Jambline_FloorPlugin)
Q_IMPORT_QML_PLUGIN(Jambline_JobPlugin)
Q_IMPORT_QML_PLUGIN(Jambline_BoothPlugin)
Q_IMPORT_QML_PLUGIN(Jambline_RecordPlugin)
Q_IMPORT_QML_PLUGIN(Jambline_ShellPlugin)

namespace jambline::app {

namespace {
bool desktop_is_dark() {
  const QPalette palette = QGuiApplication::palette();
  return palette.color(QPalette::Window).lightness() <
         palette.color(QPalette::WindowText).lightness();
}
}  // namespace

Result<std::unique_ptr<Program>> Program::open(const std::filesystem::path& folder,
                                               const Clock& clock, const Options& options) {
  std::unique_ptr<Program> out(new Program);
  Program* self = out.get();
  out->folder_ = folder;
  out->options_ = options;
  out->writer_.setMaxThreadCount(1);
  const std::string device_name = QSysInfo::machineHostName().toStdString();
  JAMBLINE_ASSIGN(const bool awaits_admission, exchange::Exchange::awaits_admission(folder));
  JAMBLINE_ASSIGN(out->engine_, engine::Engine::open(
                                    {.folder = folder,
                                     .clock = clock,
                                     .random = std::make_unique<SystemRandom>(),
                                     .device_name = device_name,
                                     .published =
                                         [self](std::shared_ptr<const engine::Snapshot> snapshot) {
                                           if (auto* session = self->listener_.load())
                                             session->publish(std::move(snapshot));
                                           if (auto* exchange = self->sender_.load())
                                             exchange->entries_changed();
                                         },
                                     .awaits_admission = awaits_admission}));
  out->session_ = std::make_unique<screens::Session>(*out->engine_, clock);
  screens::Session& session = *out->session_;
  out->listener_ = &session;

  out->pictures_ = std::make_unique<screens::PictureStore>(
      screens::PictureStore::of(out->engine_->blobs(), folder / "thumbnails"));
  screens::PictureStore& pictures = *out->pictures_;
  QObject::connect(&session, &screens::Session::snapshotChanged, &pictures,
                   &screens::PictureStore::look_again);
  out->origins_ = std::make_unique<screens::PictureOrigins>(session, pictures);

  auto settings = device::read_settings(folder);
  device::Settings kept = settings ? *settings : device::Settings{};
  if (options.dark) kept.look = device::Look::Stall;
  if (options.text_percent != 0) kept.text_percent = options.text_percent;
  out->settings_ = std::make_unique<screens::SettingsViewModel>(session, kept, desktop_is_dark());
  out->shell_ = std::make_unique<screens::ShellViewModel>(session);
  out->sync_ = std::make_unique<screens::SyncViewModel>(session);
  out->sync_->serve(pictures);
  auto exchange =
      exchange::Exchange::open({.folder = folder,
                                .engine = *out->engine_,
                                .clock = clock,
                                .device_name = device_name,
                                .changed = [sync = out->sync_.get()](exchange::SyncState state) {
                                  sync->publish(std::move(state));
                                }});
  if (options.demo) {
    // An invented shop goes to no hub.
  } else if (exchange) {
    out->exchange_ = std::move(*exchange);
    out->sender_ = out->exchange_.get();
    out->sync_->use(out->exchange_.get());
  } else {
    emit session.failed(exchange.error());
  }
  out->shell_->follow(*out->sync_);
  out->devices_ = std::make_unique<screens::DevicesViewModel>(session, *out->sync_);
  out->forecasts_ = std::make_unique<screens::FloorForecasts>(session);
  out->floor_ = std::make_unique<screens::FloorViewModel>(session);
  out->floor_->follow(*out->forecasts_);
  out->ready_ = std::make_unique<screens::ReadyViewModel>(session, *out->forecasts_);
  out->calendar_ = std::make_unique<screens::CalendarViewModel>(session);
  out->clock_ = std::make_unique<screens::ClockViewModel>(session);
  out->shop_folder_ = std::make_unique<screens::ShopFolderViewModel>(
      session, QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation));
  out->forgotten_ = std::make_unique<screens::ForgottenClockViewModel>(session);
  out->hours_ = std::make_unique<screens::HoursViewModel>(
      session, QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation));
  out->car_hours_ = std::make_unique<screens::CarHoursViewModel>(session);
  out->wait_ = std::make_unique<screens::WaitViewModel>(session);
  out->shop_ = std::make_unique<screens::ShopViewModel>(session);
  out->retention_ = std::make_unique<screens::RetentionViewModel>(session);
  out->demo_ = std::make_unique<screens::DemoViewModel>(
      options.demo, QCoreApplication::applicationFilePath(),
      QStringList{QStringLiteral("--demo"), QStringLiteral("--ends-with-input")});
  out->pin_ = std::make_unique<screens::PinViewModel>(session);
  out->open_car_ = std::make_unique<screens::OpenCarViewModel>(session);
  out->car_ = std::make_unique<screens::CarViewModel>(session);
  out->check_in_ = std::make_unique<screens::CheckInViewModel>(session);
  out->walk_around_ = std::make_unique<screens::WalkAroundViewModel>(session);
  out->hand_over_ = std::make_unique<screens::HandOverViewModel>(
      session, QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation),
      write_hand_over);
  out->comeback_ = std::make_unique<screens::ComebackViewModel>(session);
  out->visit_rows_ =
      std::make_unique<screens::VisitRowsViewModel>(session, *out->check_in_, *out->walk_around_);
  out->inspect_ = std::make_unique<screens::InspectViewModel>(session);
  out->evidence_ = std::make_unique<screens::EvidenceViewModel>(session);
  out->booth_ = std::make_unique<screens::BoothViewModel>(session);
  out->booth_facts_ = std::make_unique<screens::BoothFactsViewModel>(session);
  out->booth_reading_ = std::make_unique<screens::BoothReadingViewModel>(session);
  out->knocks_ = device::make_knocks();
  out->clearance_ = std::make_unique<screens::ClearanceViewModel>(session, *out->knocks_);
  out->countdown_ = std::make_unique<screens::CountdownViewModel>(session, *out->knocks_);
  out->register_ = std::make_unique<screens::RegisterViewModel>(session);
  out->limits_ = std::make_unique<screens::LimitsViewModel>(session);
  out->exposure_ = std::make_unique<screens::ExposureViewModel>(session);
  out->aid_ = std::make_unique<screens::FirstAidViewModel>(session);
  out->parts_ = std::make_unique<screens::PartsViewModel>(session);
  out->hand_ = std::make_unique<screens::HandOffViewModel>(session);
  out->operations_ = std::make_unique<screens::OperationsViewModel>(session);
  out->orders_ = std::make_unique<screens::OrdersViewModel>(session);
  out->assembly_ = std::make_unique<screens::AssemblyViewModel>(session);
  out->fit_ = std::make_unique<screens::FitViewModel>(session);
  out->rules_ = std::make_unique<screens::RulesViewModel>(session);
  out->cure_work_ = std::make_unique<screens::CureWork>(session);
  out->work_ = std::make_unique<screens::CorrectionWork>(session);
  out->work_->follow_cure(*out->cure_work_);
  out->parts_->follow_cure(*out->cure_work_);
  out->plan_ = std::make_unique<screens::PlanViewModel>(session, *out->work_);
  out->walk_ = std::make_unique<screens::WalkViewModel>(session, *out->work_);
  out->car_->follow(*out->work_);
  out->cure_ = std::make_unique<screens::CureViewModel>(session, *out->cure_work_);
  out->bond_ = std::make_unique<screens::BondViewModel>(session);
  out->products_ = std::make_unique<screens::ProductViewModel>(session);
  out->film_ = std::make_unique<screens::FilmViewModel>(session);
  out->before_cut_ = std::make_unique<screens::BeforeCutViewModel>(session);
  out->before_gun_ = std::make_unique<screens::BeforeGunViewModel>(session);
  out->sprayed_ = std::make_unique<screens::SprayedViewModel>(session);
  out->countdown_->add([self](const screens::Session&) { return self->sprayed_->countdowns(); });
  out->countdown_->add([self](const screens::Session&) { return self->cure_->countdowns(); });
  out->record_ = std::make_unique<screens::RecordViewModel>(session);
  out->record_->integrity()->check_by(
      [folder](const std::stop_token& stop, const std::function<void(double)>& progress) {
        return engine::check_integrity(folder, stop, progress);
      });
  out->dirt_ = std::make_unique<screens::DirtOverTimeViewModel>(session);
  out->question_ = std::make_unique<screens::QuestionViewModel>(
      session, QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation));
  out->time_line_ = std::make_unique<screens::TimeLineViewModel>(session);
  out->time_line_->show_pictures(pictures);
  out->time_line_->follow(*out->sync_);
  out->time_line_->read_raw_by(
      [folder](const Hash& entry) { return engine::raw_entry(folder, entry); });
  out->history_ = std::make_unique<screens::HistoryViewModel>(session, *out->time_line_);
  out->report_ = std::make_unique<screens::ReportViewModel>(
      session, QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation),
      report_writer(folder), print_paper);
  out->bundle_ = std::make_unique<screens::BundleViewModel>(
      session, QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation),
      fingerprint_reader(folder), bundle_writer(folder));
  out->wall_ = std::make_unique<screens::WallViewModel>(session, pictures);
  out->look_ = std::make_unique<screens::LookViewModel>(session, pictures);
  out->look_->follow(*out->sync_);
  out->shot_list_ = std::make_unique<screens::ShotListViewModel>(session);
  out->intake_ = std::make_unique<screens::PictureIntake>(session, folder / "thumbnails");
  std::error_code ignored;  // without it the camera says that it failed
  std::filesystem::create_directories(folder / "passing", ignored);
  out->camera_ = device::make_camera(folder / "passing");
  out->vin_scan_ = std::make_unique<screens::VinScanViewModel>(*out->camera_);
  out->open_car_->scan_with(*out->vin_scan_);
  out->join_ = std::make_unique<screens::JoinViewModel>(session, *out->sync_, *out->camera_);
  out->shots_ = std::make_unique<screens::ShotsViewModel>(session, *out->intake_);
  out->shot_ = std::make_unique<screens::ShotViewModel>(session, *out->intake_, *out->camera_);
  out->compare_ = std::make_unique<screens::CompareViewModel>(session, pictures);
  out->leftovers_ = std::make_unique<screens::LeftoversViewModel>(session, pictures);
  QObject::connect(out->settings_.get(), &screens::SettingsViewModel::changed, &session,
                   [self] { self->keep_settings(); });
  if (!settings) emit session.failed(settings.error());
  return out;
}

Program::~Program() {
  qml_.reset();
  writer_.waitForDone();
  listener_ = nullptr;
  sender_ = nullptr;
  if (!engine_) return;
  if (exchange_) {
    engine_->drain();  // who published a moment ago has told it
    sync_->use(nullptr);
    exchange_.reset();
  }
  engine_->stop_audit();
  engine_->drain();
}

void Program::keep_settings() {
  writer_.start([folder = folder_, settings = settings_->settings(), session = session_.get()] {
    const Status written = device::write_settings(folder, settings);
    if (written) return;
    QMetaObject::invokeMethod(
        session, [session, error = written.error()] { emit session->failed(error); },
        Qt::QueuedConnection);
  });
}

// Nothing of the network before there is something to see.
void Program::start_exchange() {
  if (!exchange_) return;
  exchange_->start();
  device::watch_metered_network(
      sync_.get(), [exchange = exchange_.get()](bool metered) { exchange->set_metered(metered); });
}

void Program::open_again_when_wanted() {
  const auto leave = [] { QGuiApplication::exit(open_again); };
  QObject::connect(sync_.get(), &screens::SyncViewModel::restartWanted, sync_.get(), leave);
  QObject::connect(join_.get(), &screens::JoinViewModel::restartWanted, join_.get(), leave);
  QObject::connect(sync_.get(), &screens::SyncViewModel::changed, sync_.get(), [this, leave] {
    const auto& trouble = sync_->state().trouble;
    if (trouble && trouble->code == Code::NotYet && trouble->subject == "restart") leave();
  });
}

bool Program::show() {
  qml_ = std::make_unique<QQmlApplicationEngine>();
  qml_->addImportPath(QStringLiteral("qrc:/qt/qml"));
  const QVariantMap given{
      {QStringLiteral("session"), QVariant::fromValue<QObject*>(session_.get())},
      {QStringLiteral("settings"), QVariant::fromValue<QObject*>(settings_.get())},
      {QStringLiteral("shell"), QVariant::fromValue<QObject*>(shell_.get())},
      {QStringLiteral("sync"), QVariant::fromValue<QObject*>(sync_.get())},
      {QStringLiteral("join"), QVariant::fromValue<QObject*>(join_.get())},
      {QStringLiteral("devices"), QVariant::fromValue<QObject*>(devices_.get())},
      {QStringLiteral("floor"), QVariant::fromValue<QObject*>(floor_.get())},
      {QStringLiteral("ready"), QVariant::fromValue<QObject*>(ready_.get())},
      {QStringLiteral("calendar"), QVariant::fromValue<QObject*>(calendar_.get())},
      {QStringLiteral("clock"), QVariant::fromValue<QObject*>(clock_.get())},
      {QStringLiteral("shopFolder"), QVariant::fromValue<QObject*>(shop_folder_.get())},
      {QStringLiteral("forgotten"), QVariant::fromValue<QObject*>(forgotten_.get())},
      {QStringLiteral("hours"), QVariant::fromValue<QObject*>(hours_.get())},
      {QStringLiteral("carHours"), QVariant::fromValue<QObject*>(car_hours_.get())},
      {QStringLiteral("wait"), QVariant::fromValue<QObject*>(wait_.get())},
      {QStringLiteral("shop"), QVariant::fromValue<QObject*>(shop_.get())},
      {QStringLiteral("retention"), QVariant::fromValue<QObject*>(retention_.get())},
      {QStringLiteral("demo"), QVariant::fromValue<QObject*>(demo_.get())},
      {QStringLiteral("pin"), QVariant::fromValue<QObject*>(pin_.get())},
      {QStringLiteral("openCarForm"), QVariant::fromValue<QObject*>(open_car_.get())},
      {QStringLiteral("car"), QVariant::fromValue<QObject*>(car_.get())},
      {QStringLiteral("checkIn"), QVariant::fromValue<QObject*>(check_in_.get())},
      {QStringLiteral("walkAround"), QVariant::fromValue<QObject*>(walk_around_.get())},
      {QStringLiteral("handOver"), QVariant::fromValue<QObject*>(hand_over_.get())},
      {QStringLiteral("comeback"), QVariant::fromValue<QObject*>(comeback_.get())},
      {QStringLiteral("visitRows"), QVariant::fromValue<QObject*>(visit_rows_.get())},
      {QStringLiteral("inspect"), QVariant::fromValue<QObject*>(inspect_.get())},
      {QStringLiteral("evidence"), QVariant::fromValue<QObject*>(evidence_.get())},
      {QStringLiteral("booth"), QVariant::fromValue<QObject*>(booth_.get())},
      {QStringLiteral("boothFacts"), QVariant::fromValue<QObject*>(booth_facts_.get())},
      {QStringLiteral("boothReading"), QVariant::fromValue<QObject*>(booth_reading_.get())},
      {QStringLiteral("clearance"), QVariant::fromValue<QObject*>(clearance_.get())},
      {QStringLiteral("countdown"), QVariant::fromValue<QObject*>(countdown_.get())},
      {QStringLiteral("protection"), QVariant::fromValue<QObject*>(register_.get())},
      {QStringLiteral("limits"), QVariant::fromValue<QObject*>(limits_.get())},
      {QStringLiteral("exposure"), QVariant::fromValue<QObject*>(exposure_.get())},
      {QStringLiteral("aid"), QVariant::fromValue<QObject*>(aid_.get())},
      {QStringLiteral("parts"), QVariant::fromValue<QObject*>(parts_.get())},
      {QStringLiteral("hand"), QVariant::fromValue<QObject*>(hand_.get())},
      {QStringLiteral("operations"), QVariant::fromValue<QObject*>(operations_.get())},
      {QStringLiteral("orders"), QVariant::fromValue<QObject*>(orders_.get())},
      {QStringLiteral("assembly"), QVariant::fromValue<QObject*>(assembly_.get())},
      {QStringLiteral("fit"), QVariant::fromValue<QObject*>(fit_.get())},
      {QStringLiteral("rules"), QVariant::fromValue<QObject*>(rules_.get())},
      {QStringLiteral("plan"), QVariant::fromValue<QObject*>(plan_.get())},
      {QStringLiteral("walk"), QVariant::fromValue<QObject*>(walk_.get())},
      {QStringLiteral("cure"), QVariant::fromValue<QObject*>(cure_.get())},
      {QStringLiteral("bond"), QVariant::fromValue<QObject*>(bond_.get())},
      {QStringLiteral("products"), QVariant::fromValue<QObject*>(products_.get())},
      {QStringLiteral("film"), QVariant::fromValue<QObject*>(film_.get())},
      {QStringLiteral("beforeCut"), QVariant::fromValue<QObject*>(before_cut_.get())},
      {QStringLiteral("beforeGun"), QVariant::fromValue<QObject*>(before_gun_.get())},
      {QStringLiteral("sprayed"), QVariant::fromValue<QObject*>(sprayed_.get())},
      {QStringLiteral("record"), QVariant::fromValue<QObject*>(record_.get())},
      {QStringLiteral("dirt"), QVariant::fromValue<QObject*>(dirt_.get())},
      {QStringLiteral("question"), QVariant::fromValue<QObject*>(question_.get())},
      {QStringLiteral("wall"), QVariant::fromValue<QObject*>(wall_.get())},
      {QStringLiteral("shotList"), QVariant::fromValue<QObject*>(shot_list_.get())},
      {QStringLiteral("shots"), QVariant::fromValue<QObject*>(shots_.get())},
      {QStringLiteral("shot"), QVariant::fromValue<QObject*>(shot_.get())},
      {QStringLiteral("look"), QVariant::fromValue<QObject*>(look_.get())},
      {QStringLiteral("compare"), QVariant::fromValue<QObject*>(compare_.get())},
      {QStringLiteral("leftovers"), QVariant::fromValue<QObject*>(leftovers_.get())},
      {QStringLiteral("timeLine"), QVariant::fromValue<QObject*>(time_line_.get())},
      {QStringLiteral("history"), QVariant::fromValue<QObject*>(history_.get())},
      {QStringLiteral("report"), QVariant::fromValue<QObject*>(report_.get())},
      {QStringLiteral("bundle"), QVariant::fromValue<QObject*>(bundle_.get())},
  };
  QQmlComponent made(qml_.get(), QUrl(QStringLiteral("qrc:/qt/qml/Jambline/Shell/ViewModels.qml")));
  std::unique_ptr<QObject> models(made.createWithInitialProperties(given));
  if (!models) {
    for (const auto& error : made.errors()) qCritical().noquote() << error.toString();
    return false;
  }
  QVariantMap of_window{{QStringLiteral("models"), QVariant::fromValue(models.get())}};
  if (options_.size) {
    of_window.insert(QStringLiteral("width"), options_.size->width());
    of_window.insert(QStringLiteral("height"), options_.size->height());
  }
  qml_->setInitialProperties(of_window);
  qml_->load(QUrl(QStringLiteral("qrc:/qt/qml/Jambline/Shell/Main.qml")));
  if (!window()) return false;
  models.release()->setParent(window());
  leftovers_->look();
  QObject::connect(
      window(), &QQuickWindow::frameSwapped, window(), [this] { start_exchange(); },
      Qt::ConnectionType(Qt::QueuedConnection | Qt::SingleShotConnection));
  open_again_when_wanted();
  return true;
}

QQuickWindow* Program::window() const {
  const auto roots = qml_ ? qml_->rootObjects() : QList<QObject*>();
  return roots.isEmpty() ? nullptr : qobject_cast<QQuickWindow*>(roots.first());
}

}  // namespace jambline::app
