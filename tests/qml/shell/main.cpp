// The sheets that ask a person something, on a real engine in a throw-away folder.
#include <QGuiApplication>
#include <QLocale>
#include <QQmlEngine>
#include <QQmlExtensionPlugin>
#include <QTemporaryDir>
#include <QtQuickTest>
#include <optional>

#include "engine/engine.h"
#include "screens/bond_view_model.h"
#include "screens/booth_facts_view_model.h"
#include "screens/booth_reading_view_model.h"
#include "screens/booth_view_model.h"
#include "screens/clearance_view_model.h"
#include "screens/cure_view_model.h"
#include "screens/demo_view_model.h"
#include "screens/exposure_view_model.h"
#include "screens/first_aid_view_model.h"
#include "screens/forgotten_clock_view_model.h"
#include "screens/limits_view_model.h"
#include "screens/pin_view_model.h"
#include "screens/product_view_model.h"
#include "screens/register_view_model.h"
#include "screens/shop_folder_view_model.h"
#include "screens/shop_view_model.h"
#include "screens/shot_list_view_model.h"
#include "tests/qml/shell/scan_desk.h"

Q_IMPORT_QML_PLUGIN(Jambline_ThemePlugin)
Q_IMPORT_QML_PLUGIN(Jambline_ScreensPlugin)
Q_IMPORT_QML_PLUGIN(Jambline_FloorPlugin)
Q_IMPORT_QML_PLUGIN(Jambline_JobPlugin)
Q_IMPORT_QML_PLUGIN(Jambline_BoothPlugin)
Q_IMPORT_QML_PLUGIN(Jambline_RecordPlugin)
Q_IMPORT_QML_PLUGIN(Jambline_ShellPlugin)

using namespace jambline;
using screens::Session;

class Shop : public QObject {
  Q_OBJECT
  Q_PROPERTY(jambline::screens::PinViewModel* pin READ pin NOTIFY opened)
  Q_PROPERTY(jambline::screens::ForgottenClockViewModel* forgotten READ forgotten NOTIFY opened)
  Q_PROPERTY(jambline::screens::ShopViewModel* shop READ shop NOTIFY opened)
  Q_PROPERTY(jambline::screens::ShopFolderViewModel* folder READ folder NOTIFY opened)
  Q_PROPERTY(jambline::screens::ShotListViewModel* shots READ shots NOTIFY opened)
  Q_PROPERTY(jambline::screens::DemoViewModel* demo READ demo NOTIFY opened)
  Q_PROPERTY(jambline::screens::BoothViewModel* booth READ booth NOTIFY opened)
  Q_PROPERTY(jambline::screens::BoothFactsViewModel* boothFacts READ boothFacts NOTIFY opened)
  Q_PROPERTY(jambline::screens::BoothReadingViewModel* boothReading READ boothReading NOTIFY opened)
  Q_PROPERTY(jambline::screens::ClearanceViewModel* clearance READ clearance NOTIFY opened)
  Q_PROPERTY(jambline::screens::RegisterViewModel* protection READ protection NOTIFY opened)
  Q_PROPERTY(jambline::screens::LimitsViewModel* limits READ limits NOTIFY opened)
  Q_PROPERTY(jambline::screens::ExposureViewModel* exposure READ exposure NOTIFY opened)
  Q_PROPERTY(jambline::screens::FirstAidViewModel* aid READ aid NOTIFY opened)
  Q_PROPERTY(jambline::screens::CureViewModel* cure READ cure NOTIFY opened)
  Q_PROPERTY(jambline::screens::BondViewModel* bond READ bond NOTIFY opened)
  Q_PROPERTY(jambline::screens::ProductViewModel* products READ products NOTIFY opened)
  Q_PROPERTY(QString chosen READ chosen)
  Q_PROPERTY(int running READ running)
 public:
  screens::PinViewModel* pin() const { return pin_.get(); }
  screens::ForgottenClockViewModel* forgotten() const { return forgotten_.get(); }
  screens::ShopViewModel* shop() const { return shop_.get(); }
  screens::ShopFolderViewModel* folder() const { return shop_folder_.get(); }
  screens::ShotListViewModel* shots() const { return shots_.get(); }
  screens::DemoViewModel* demo() const { return demo_.get(); }
  screens::BoothViewModel* booth() const { return booth_.get(); }
  screens::BoothFactsViewModel* boothFacts() const { return booth_facts_.get(); }
  screens::BoothReadingViewModel* boothReading() const { return booth_reading_.get(); }
  screens::ClearanceViewModel* clearance() const { return clearance_.get(); }
  screens::RegisterViewModel* protection() const { return register_.get(); }
  screens::LimitsViewModel* limits() const { return limits_.get(); }
  screens::ExposureViewModel* exposure() const { return exposure_.get(); }
  screens::FirstAidViewModel* aid() const { return aid_.get(); }
  screens::CureViewModel* cure() const { return cure_.get(); }
  screens::BondViewModel* bond() const { return bond_.get(); }
  screens::ProductViewModel* products() const { return products_.get(); }
  QString chosen() const { return session_->personName(); }
  int running() const {
    return static_cast<int>(engine_->snapshot()->floor->front().running.size());
  }

  // Mara, a manager, is chosen. Ivo's clock runs since the day before.
  Q_INVOKABLE void open() {
    products_.reset();
    bond_.reset();
    cure_.reset();
    cure_work_.reset();
    register_.reset();
    limits_.reset();
    exposure_.reset();
    aid_.reset();
    clearance_.reset();
    booth_reading_.reset();
    booth_facts_.reset();
    booth_.reset();
    demo_.reset();
    shop_folder_.reset();
    shop_.reset();
    forgotten_.reset();
    pin_.reset();
    shots_.reset();
    engine_.reset();
    session_.reset();
    folder_.emplace();
    clock_.moment = {1'790'000'000'000, 1000, BootId{{1}}, -240};
    engine::Engine::Parts parts{folder_->path().toStdString(), clock_,
                                std::make_unique<SeededRandom>(5), "cart 1",
                                [this](std::shared_ptr<const engine::Snapshot> snapshot) {
                                  if (session_) session_->publish(std::move(snapshot));
                                }};
    auto made = engine::Engine::open(std::move(parts));
    if (!made) qFatal("the engine did not open");
    engine_ = std::move(*made);
    act(acts::NameShop{"Shop", "America/New_York"});
    act(acts::AddPerson{"Mara", job::Role::Manager});
    act(acts::AddPerson{"Ivo", job::Role::Painter});
    acts::OpenCar car;
    car.plate = "K 41-206";
    car.operations = {{job::Stage::Inspect, "", 60}};
    car.panels = {{job::Panel::Hood, true}};
    const JobId job = act(car).job;
    act(acts::StartClock{person("Ivo"), job,
                         engine_->snapshot()->floor->front().operations.front().operation});
    clock_.advance_ms(20LL * 3'600'000);
    session_ = std::make_unique<Session>(*engine_, clock_);
    be(QStringLiteral("Mara"));
    pin_ = std::make_unique<screens::PinViewModel>(*session_);
    booth_ = std::make_unique<screens::BoothViewModel>(*session_);
    booth_facts_ = std::make_unique<screens::BoothFactsViewModel>(*session_);
    booth_reading_ = std::make_unique<screens::BoothReadingViewModel>(*session_);
    clearance_ = std::make_unique<screens::ClearanceViewModel>(*session_, no_sound_);
    register_ = std::make_unique<screens::RegisterViewModel>(*session_);
    limits_ = std::make_unique<screens::LimitsViewModel>(*session_);
    exposure_ = std::make_unique<screens::ExposureViewModel>(*session_);
    aid_ = std::make_unique<screens::FirstAidViewModel>(*session_);
    forgotten_ = std::make_unique<screens::ForgottenClockViewModel>(*session_);
    cure_work_ = std::make_unique<screens::CureWork>(*session_);
    cure_ = std::make_unique<screens::CureViewModel>(*session_, *cure_work_);
    bond_ = std::make_unique<screens::BondViewModel>(*session_);
    products_ = std::make_unique<screens::ProductViewModel>(*session_);
    shop_ = std::make_unique<screens::ShopViewModel>(*session_);
    shop_folder_ = std::make_unique<screens::ShopFolderViewModel>(*session_, folder_->path());
    shots_ = std::make_unique<screens::ShotListViewModel>(*session_);
    demo_ =
        std::make_unique<screens::DemoViewModel>(false, QStringLiteral("/bin/true"), QStringList());
    for (QObject* one : std::initializer_list<QObject*>{
             register_.get(), limits_.get(), exposure_.get(), aid_.get(), pin_.get(),
             forgotten_.get(), shop_.get(), shop_folder_.get(), demo_.get(), booth_.get(),
             shots_.get(), cure_.get(), bond_.get(), products_.get(), booth_facts_.get(),
             booth_reading_.get(), clearance_.get()})
      QQmlEngine::setObjectOwnership(one, QQmlEngine::CppOwnership);
    emit opened();
  }
  Q_INVOKABLE void settle() {
    for (int i = 0; i < 3; ++i) {
      engine_->drain();
      QCoreApplication::processEvents();
    }
  }
  // Somebody sprays in the first booth through a hood; the register is empty and passed over.
  Q_INVOKABLE void spray(const QString& name) {
    using job::GunItem;
    act(acts::SetRespirator{{},
                            {"hood 7", job::RespiratorKind::SuppliedHood, trade::FactorScheme::Us,
                             25, "29 CFR 1910.134", 2006, "", false}});
    const auto snapshot = engine_->snapshot();
    acts::StartSpray start{snapshot->floor->front().job,
                           snapshot->shop->booths.front().booth,
                           snapshot->shop->air.respirators.front().respirator,
                           true,
                           {}};
    for (std::size_t i = 0; i < enum_words<GunItem>.size(); ++i) {
      const auto item = static_cast<GunItem>(i);
      if (job::is_of_now(item))
        start.checks.push_back({item, job::CutAnswer::Yes, {}, {}});
      else if (job::class_of(item) == job::CheckClass::Must)
        start.checks.push_back({item, job::CutAnswer::No, job::GunReason::RecordNotHere, {}});
    }
    act(start, name);
    clearance_->open(booth_->firstBooth());
    settle();
  }
  // The hood was coated just now; a urethane is in the shop. The car is on the tape.
  Q_INVOKABLE void coat() {
    job::Product clear;
    clear.product_name = "clear A";
    clear.kind = job::ProductKind::Clear;
    clear.steps = {{trade::CureMilestone::PullTape, {{20, 60}, {60, 15}}},
                   {trade::CureMilestone::SandFrom, {{20, 120}, {60, 30}}}};
    act(acts::SetProduct{{}, clear});
    job::Product urethane;
    urethane.product_name = "urethane A";
    urethane.kind = job::ProductKind::GlassUrethane;
    urethane.cure = trade::CureKind::MoistureCure;
    urethane.drive_away = {{"two bags", {{5, 30, 480}}}, {"no bag", {{5, 30, 240}}}};
    act(acts::SetProduct{{}, urethane});
    const JobId job = engine_->snapshot()->floor->front().job;
    session_->openCar(QString::fromStdString(job.hex()));
    settle();
    act(acts::MixProduct{job, engine_->snapshot()->shop->air.products.front().product, "77"});
    act(acts::SayCoats{job,
                       engine_->snapshot()->car->air.mixes.front().mix,
                       {job::Panel::Hood},
                       2,
                       {8},
                       "1.3 mm"});
    settle();
  }
  Q_INVOKABLE void later(double seconds) {
    clock_.advance_ms(static_cast<std::int64_t>(seconds * 1000));
    for (int i = 0; i < 30; ++i) emit session_->secondPassed();
    settle();
  }
  Q_INVOKABLE void be(const QString& name) {
    session_->choosePerson(QString::fromStdString(person(name).hex()));
    settle();
  }
  Q_INVOKABLE QString idOf(const QString& name) const {
    return QString::fromStdString(person(name).hex());
  }
  Q_INVOKABLE bool hasPin(const QString& name) const { return session_->has_pin(person(name)); }

 signals:
  void opened();

 private:
  PersonId person(const QString& name) const {
    for (const auto& one : engine_->snapshot()->shop->people)
      if (one.name == name.toStdString()) return one.person;
    return {};
  }
  struct NoSound final : device::Knocks {
    bool answers() const override { return false; }
    void knock() override {}
  };
  engine::Wrote act(acts::Command command, const QString& by = QStringLiteral("Mara")) {
    std::optional<engine::Wrote> out;
    engine_->post(std::move(command), person(by), [&](Result<engine::Wrote> wrote) {
      if (!wrote) qFatal("an act was refused");
      out = *wrote;
    });
    engine_->drain();
    return *out;
  }

  std::optional<QTemporaryDir> folder_;
  FakeClock clock_;
  NoSound no_sound_;
  std::unique_ptr<Session> session_;
  std::unique_ptr<engine::Engine> engine_;  // stops before the session that it publishes to goes
  std::unique_ptr<screens::PinViewModel> pin_;
  std::unique_ptr<screens::RegisterViewModel> register_;
  std::unique_ptr<screens::LimitsViewModel> limits_;
  std::unique_ptr<screens::ExposureViewModel> exposure_;
  std::unique_ptr<screens::FirstAidViewModel> aid_;
  std::unique_ptr<screens::ForgottenClockViewModel> forgotten_;
  std::unique_ptr<screens::ShopViewModel> shop_;
  std::unique_ptr<screens::ShopFolderViewModel> shop_folder_;
  std::unique_ptr<screens::ShotListViewModel> shots_;
  std::unique_ptr<screens::CureWork> cure_work_;
  std::unique_ptr<screens::CureViewModel> cure_;
  std::unique_ptr<screens::BondViewModel> bond_;
  std::unique_ptr<screens::ProductViewModel> products_;
  std::unique_ptr<screens::DemoViewModel> demo_;
  std::unique_ptr<screens::BoothViewModel> booth_;
  std::unique_ptr<screens::BoothFactsViewModel> booth_facts_;
  std::unique_ptr<screens::BoothReadingViewModel> booth_reading_;
  std::unique_ptr<screens::ClearanceViewModel> clearance_;
};

class Setup : public QObject {
  Q_OBJECT
 public slots:
  void applicationAvailable() {
    QLocale::setDefault(QLocale(QLocale::English, QLocale::UnitedStates));
  }
  void qmlEngineAvailable(QQmlEngine* engine) {
    engine->addImportPath(QStringLiteral("qrc:/qt/qml"));
    qmlRegisterSingletonInstance("Jambline.Test", 1, 0, "Shop", &shop_);
    qmlRegisterSingletonInstance("Jambline.Test", 1, 0, "Scan", &scan_);
  }

 private:
  Shop shop_;
  ScanDesk scan_;
};

QUICK_TEST_MAIN_WITH_SETUP(shell, Setup)

#include "main.moc"
#include "moc_scan_desk.cpp"
