// The screens of looking over, on a real engine in a throw-away folder.
#include <QGuiApplication>
#include <QLocale>
#include <QQmlEngine>
#include <QQmlExtensionPlugin>
#include <QTemporaryDir>
#include <QtQuickTest>
#include <optional>

#include "app/demo/demo_shop.h"
#include "engine/engine.h"
#include "job/body_shape.h"
#include "screens/before_cut_view_model.h"
#include "screens/car_view_model.h"
#include "screens/film_view_model.h"
#include "screens/inspect_view_model.h"
#include "screens/open_car_view_model.h"

Q_IMPORT_QML_PLUGIN(Jambline_ThemePlugin)
Q_IMPORT_QML_PLUGIN(Jambline_ScreensPlugin)
Q_IMPORT_QML_PLUGIN(Jambline_JobPlugin)

using namespace jambline;
using screens::BeforeCutViewModel;
using screens::CarViewModel;
using screens::FilmViewModel;
using screens::InspectViewModel;
using screens::OpenCarViewModel;
using screens::Session;

class Shop : public QObject {
  Q_OBJECT
  Q_PROPERTY(jambline::screens::InspectViewModel* inspect READ inspect NOTIFY opened)
  Q_PROPERTY(jambline::screens::OpenCarViewModel* form READ form NOTIFY opened)
  Q_PROPERTY(jambline::screens::CarViewModel* car READ car NOTIFY opened)
  Q_PROPERTY(jambline::screens::FilmViewModel* film READ film NOTIFY opened)
  Q_PROPERTY(jambline::screens::BeforeCutViewModel* beforeCut READ beforeCut NOTIFY opened)
  Q_PROPERTY(int entries READ entries)
 public:
  FilmViewModel* film() const { return film_.get(); }
  BeforeCutViewModel* beforeCut() const { return before_cut_.get(); }
  InspectViewModel* inspect() const { return inspect_.get(); }
  OpenCarViewModel* form() const { return form_.get(); }
  CarViewModel* car() const { return car_.get(); }
  int entries() const { return session_ && session_->car() ? session_->car()->entries : -1; }

  // A new shop with one two-door hatchback, every panel planned, mirrors painted loose.
  Q_INVOKABLE void open() {
    close();
    clock_.moment = {1'790'000'000'000, 1000, BootId{{1}}, -240};
    start();
    act(acts::AddPerson{"Ivo", job::Role::Painter});
    act(acts::AddRack{"rack 2"});
    acts::OpenCar car;
    car.plate = "K 41-206";
    car.color = {"G7", "deep green", "#1F4D3A"};
    car.body = job::BodyShape::TwoDoorHatchback;
    for (const auto& one : job::pattern(car.body).panels)
      car.panels.push_back({.panel = one.panel, .on_car = !one.often_off});
    car.operations = {{job::Stage::Inspect, "", 60}};
    job_ = act(car).job;
    show();
  }
  // The same with two panels on the car and three loose parts.
  Q_INVOKABLE void openSmall() {
    close();
    clock_.moment = {1'790'000'000'000, 1000, BootId{{1}}, -240};
    start();
    act(acts::AddPerson{"Ivo", job::Role::Painter});
    act(acts::AddRack{"rack 2"});
    acts::OpenCar car;
    car.plate = "K 41-207";
    car.color = {"G7", "deep green", "#1F4D3A"};
    car.body = job::BodyShape::TwoDoorHatchback;
    car.panels = {{.panel = job::Panel::Hood},
                  {.panel = job::Panel::Roof},
                  {.panel = job::Panel::FrontBumper, .on_car = false},
                  {.panel = job::Panel::RearBumper, .on_car = false},
                  {.panel = job::Panel::LeftMirror, .on_car = false}};
    car.operations = {{job::Stage::Inspect, "", 60}};
    job_ = act(car).job;
    show();
  }
  // The demo shop's car of which two people on two devices said different things.
  Q_INVOKABLE void openDisputed() {
    close();
    const demo::DemoOptions options{.delivered = 0};
    clock_.moment = options.now;
    if (!demo::make_shop(folder_->path().toStdString(), options)) qFatal("no demo shop");
    start();
    for (const auto& row : *engine_->snapshot()->floor)
      if (row.disputed) job_ = row.job;
    show();
  }
  Q_INVOKABLE QString disputedPanel() const {
    for (const auto& one : session_->car()->panels)
      if (one.disputed) return screens::word_of_panel(one.plan.panel);
    return {};
  }
  Q_INVOKABLE void addRack(const QString& name) {
    act(acts::AddRack{name.toStdString()});
    settle();
  }
  Q_INVOKABLE QString markId(int row) const {
    return inspect_->marks()->rows().at(static_cast<std::size_t>(row)).key;
  }
  Q_INVOKABLE QString rackOf(const QString& panel) const {
    const auto& release = session_->car()->find(*screens::panel_of_word(panel))->release;
    for (const auto& rack : session_->shop().racks)
      if (release.rack == rack.rack) return QString::fromStdString(rack.name);
    return {};
  }
  Q_INVOKABLE void planMatte(const QString& panel) {
    auto plan = session_->car()->find(*screens::panel_of_word(panel))->plan;
    plan.finish = job::Finish::Matte;
    act(acts::PlanPanel{job_, plan});
    settle();
  }
  // Everything posted so far is on disk and shown.
  Q_INVOKABLE void settle() {
    engine_->drain();
    QCoreApplication::processEvents();
    QCoreApplication::processEvents();
  }
  Q_INVOKABLE void sayClean(const QString& panel) { say(panel, job::Verdict::Clean); }
  Q_INVOKABLE void sayAsk(const QString& panel) { say(panel, job::Verdict::Ask); }
  Q_INVOKABLE void sayBody(const QString& panel) { say(panel, job::Verdict::BackToBody); }
  Q_INVOKABLE void sayRedo(const QString& panel) { say(panel, job::Verdict::Redo); }
  Q_INVOKABLE void mark(const QString& panel, double x_mm, double y_mm) {
    act(acts::PlaceMark{.job = job_,
                        .panel = *screens::panel_of_word(panel),
                        .x_mm = x_mm,
                        .y_mm = y_mm,
                        .defect = job::DefectKind::Nib});
    settle();
  }
  // The mark as the record has it, on the panel laid flat.
  Q_INVOKABLE QPointF stored(const QString& panel, int which) const {
    const auto* seen = session_->car()->find(*screens::panel_of_word(panel));
    if (which >= static_cast<int>(seen->marks.size())) return {};
    const auto& one = seen->marks[static_cast<std::size_t>(which)];
    return {one.x_mm, one.y_mm};
  }
  Q_INVOKABLE QString verdict(const QString& panel) const {
    const auto word = word_of(session_->car()->find(*screens::panel_of_word(panel))->verdict);
    return QString::fromUtf8(word.data(), static_cast<qsizetype>(word.size()));
  }

 signals:
  void opened();

 private:
  void close() {
    before_cut_.reset();
    film_.reset();
    car_.reset();
    form_.reset();
    inspect_.reset();
    engine_.reset();
    session_.reset();
    folder_.emplace();
  }
  void start() {
    engine::Engine::Parts parts{folder_->path().toStdString(), clock_,
                                std::make_unique<SeededRandom>(5), "cart 1",
                                [this](std::shared_ptr<const engine::Snapshot> snapshot) {
                                  if (session_) session_->publish(std::move(snapshot));
                                }};
    auto made = engine::Engine::open(std::move(parts));
    if (!made) qFatal("the engine did not open");
    engine_ = std::move(*made);
    session_ = std::make_unique<Session>(*engine_, clock_);
  }
  void show() {
    settle();
    const PersonId first = engine_->snapshot()->shop->people.front().person;
    session_->choosePerson(QString::fromStdString(first.hex()));
    session_->openCar(QString::fromStdString(job_.hex()));
    settle();
    inspect_ = std::make_unique<InspectViewModel>(*session_);
    form_ = std::make_unique<OpenCarViewModel>(*session_);
    car_ = std::make_unique<CarViewModel>(*session_);
    QQmlEngine::setObjectOwnership(inspect_.get(), QQmlEngine::CppOwnership);
    QQmlEngine::setObjectOwnership(form_.get(), QQmlEngine::CppOwnership);
    QQmlEngine::setObjectOwnership(car_.get(), QQmlEngine::CppOwnership);
    session_->set_units(screens::Units::Metric);
    film_ = std::make_unique<FilmViewModel>(*session_);
    before_cut_ = std::make_unique<BeforeCutViewModel>(*session_);
    QQmlEngine::setObjectOwnership(film_.get(), QQmlEngine::CppOwnership);
    QQmlEngine::setObjectOwnership(before_cut_.get(), QQmlEngine::CppOwnership);
    emit opened();
  }
  engine::Wrote act(acts::Command command) {
    std::optional<engine::Wrote> out;
    const auto& people = engine_->snapshot()->shop->people;
    engine_->post(std::move(command), people.empty() ? PersonId{} : people.front().person,
                  [&](Result<engine::Wrote> wrote) {
                    if (!wrote) qFatal("an act was refused");
                    out = *wrote;
                  });
    engine_->drain();
    return *out;
  }
  void say(const QString& panel, job::Verdict verdict) {
    const auto* plan = session_->car()->find(*screens::panel_of_word(panel));
    act(acts::GiveVerdict{.job = job_,
                          .panel = *screens::panel_of_word(panel),
                          .verdict = verdict,
                          .edges_and_back = !plan->plan.on_car});
    settle();
  }

  std::optional<QTemporaryDir> folder_;
  FakeClock clock_;
  std::unique_ptr<Session> session_;
  std::unique_ptr<engine::Engine> engine_;  // stops before the session that it publishes to goes
  std::unique_ptr<InspectViewModel> inspect_;
  std::unique_ptr<OpenCarViewModel> form_;
  std::unique_ptr<CarViewModel> car_;
  std::unique_ptr<FilmViewModel> film_;
  std::unique_ptr<BeforeCutViewModel> before_cut_;
  JobId job_;
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
  }

 private:
  Shop shop_;
};

QUICK_TEST_MAIN_WITH_SETUP(inspect, Setup)

#include "main.moc"
