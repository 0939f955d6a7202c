// The screens of looking over, on a real engine in a throw-away folder.
#include <QBuffer>
#include <QElapsedTimer>
#include <QGuiApplication>
#include <QImage>
#include <QLocale>
#include <QQmlEngine>
#include <QQmlExtensionPlugin>
#include <QTemporaryDir>
#include <QtQuickTest>
#include <optional>

#include "app/demo/demo_shop.h"
#include "blobs/hasher.h"
#include "engine/engine.h"
#include "folds/shots_of_car.h"
#include "job/body_shape.h"
#include "screens/before_cut_view_model.h"
#include "screens/car_view_model.h"
#include "screens/compare_view_model.h"
#include "screens/film_view_model.h"
#include "screens/inspect_view_model.h"
#include "screens/look_view_model.h"
#include "screens/open_car_view_model.h"
#include "screens/shot_view_model.h"
#include "screens/shots_view_model.h"
#include "screens/wall_view_model.h"
#include "tests/device/fake_camera.h"
#include "tests/picture/rendered_panels.h"

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
  Q_PROPERTY(jambline::screens::WallViewModel* wall READ wall NOTIFY opened)
  Q_PROPERTY(jambline::screens::LookViewModel* look READ look NOTIFY opened)
  Q_PROPERTY(jambline::screens::CompareViewModel* compare READ compare NOTIFY opened)
  Q_PROPERTY(int entries READ entries)
  Q_PROPERTY(jambline::screens::ShotViewModel* shot READ shot NOTIFY opened)
  Q_PROPERTY(jambline::screens::ShotsViewModel* shots READ shots NOTIFY opened)
  Q_PROPERTY(bool cameraOn READ cameraOn)
  Q_PROPERTY(int pictureCount READ pictureCount)
 public:
  screens::ShotViewModel* shot() const { return shot_.get(); }
  screens::ShotsViewModel* shots() const { return shots_.get(); }
  bool cameraOn() const { return camera_.now == device::Camera::State::Ready; }
  int pictureCount() const { return static_cast<int>(session_->car()->pictures.size()); }
  FilmViewModel* film() const { return film_.get(); }
  BeforeCutViewModel* beforeCut() const { return before_cut_.get(); }
  screens::WallViewModel* wall() const { return wall_.get(); }
  screens::LookViewModel* look() const { return look_.get(); }
  screens::CompareViewModel* compare() const { return compare_.get(); }
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
  // A sedan with its hood, decklid and doors in the job, at edges and jambs: twelve shots.
  Q_INVOKABLE void openJambs() {
    close();
    clock_.moment = {1'790'000'000'000, 1000, BootId{{1}}, -240};
    start();
    act(acts::AddPerson{"Ivo", job::Role::Painter});
    acts::OpenCar car;
    car.plate = "K 41-208";
    car.color = {"G7", "deep green", "#1F4D3A"};
    car.body = job::BodyShape::FourDoorSedan;
    for (const auto panel :
         {job::Panel::Hood, job::Panel::Decklid, job::Panel::LeftFrontDoor,
          job::Panel::RightFrontDoor, job::Panel::LeftRearDoor, job::Panel::RightRearDoor})
      car.panels.push_back({.panel = panel});
    car.operations = {{job::Stage::EdgesAndJambs, "", 60}};
    job_ = act(car).job;
    show();
  }
  // What the camera gives at a press of the shutter, and what comes of it.
  Q_INVOKABLE bool answerShutter(bool good, int seed) {
    if (!camera_.then) return false;
    QImage taken = picture::PanelPicture(static_cast<unsigned>(seed)).taken();
    if (!good) taken = picture::blurred(taken, 16);
    QByteArray file;
    QBuffer buffer(&file);
    buffer.open(QIODevice::WriteOnly);
    taken.save(&buffer, "JPG", 92);
    camera_.answer(file);
    return waited();
  }
  Q_INVOKABLE bool waited() {
    QElapsedTimer since;
    since.start();
    while (shot_->step() == screens::ShotViewModel::Step::Busy && since.elapsed() < 5000) settle();
    return shot_->step() != screens::ShotViewModel::Step::Busy;
  }
  Q_INVOKABLE int openMarks() const {
    int all = 0;
    for (const auto& panel : session_->car()->panels) all += panel.open_marks();
    return all;
  }
  Q_INVOKABLE void unplug() {
    camera_.why = Error{Code::FileFailed, "start", "camera", {{"cause", "unplugged"}}};
    camera_.go(device::Camera::State::NoCamera);
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
  // A picture of 2000 x 1500 pixels in one color, of the panel at check-in; `mark`: "" none. Gives
  // its id.
  Q_INVOKABLE QString keepPicture(const QString& color, const QString& panel, const QString& mark) {
    QImage image(2000, 1500, QImage::Format_RGB32);
    image.fill(QColor(color));
    QByteArray png;
    QBuffer buffer(&png);
    buffer.open(QIODevice::WriteOnly);
    image.save(&buffer, "PNG");
    const std::vector<std::uint8_t> bytes(png.begin(), png.end());
    blobs::Hasher hasher;
    hasher.update(bytes);
    acts::TakePicture command{job_, {}, job::PictureFrom::File, {}, false};
    command.facts.file = *hasher.finish();
    command.facts.size_bytes = png.size();
    command.facts.width_px = 2000;
    command.facts.height_px = 1500;
    if (!panel.isEmpty()) command.place.panel = screens::panel_of_word(panel);
    if (!mark.isEmpty()) command.place.mark = MarkId{*MarkId::parse(mark.toStdString())};
    command.place.shot = folds::shots_of(session_->shop(), command.place.stage).front().shot;
    engine_->keep_picture(std::make_shared<const std::vector<std::uint8_t>>(bytes), nullptr,
                          command, session_->person(), [](const Result<engine::Wrote>& wrote) {
                            if (!wrote) qFatal("a picture was refused");
                          });
    settle();
    clock_.advance_ms(60'000);
    return QString::fromStdString(session_->car()->pictures.back().picture.hex());
  }
  Q_INVOKABLE int notes(const QString& picture) const {
    return static_cast<int>(seen(picture).size());
  }
  // What was drawn last: shape, its two points, and its words.
  Q_INVOKABLE QVariantList lastNote(const QString& picture) const {
    const auto& drawn = seen(picture).back().drawn;
    return {static_cast<int>(drawn.shape),     drawn.x, drawn.y, drawn.to_x, drawn.to_y,
            QString::fromStdString(drawn.text)};
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
    compare_.reset();
    look_.reset();
    wall_.reset();
    pictures_.reset();
    shot_.reset();
    shots_.reset();
    if (engine_) engine_->drain();
    intake_.reset();
    camera_.now = device::Camera::State::Off;
    camera_.why.reset();
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
    intake_ = std::make_unique<screens::PictureIntake>(
        *session_, (folder_->path() + QStringLiteral("/thumbnails")).toStdString());
    shot_ = std::make_unique<screens::ShotViewModel>(*session_, *intake_, camera_);
    shots_ = std::make_unique<screens::ShotsViewModel>(*session_, *intake_);
    for (QObject* one :
         std::initializer_list<QObject*>{shot_.get(), shots_.get(), intake_.get(), &camera_})
      QQmlEngine::setObjectOwnership(one, QQmlEngine::CppOwnership);
    pictures_ = std::make_unique<screens::PictureStore>(screens::PictureStore::of(
        engine_->blobs(), (folder_->path() + QStringLiteral("/thumbnails")).toStdString()));
    wall_ = std::make_unique<screens::WallViewModel>(*session_, *pictures_);
    look_ = std::make_unique<screens::LookViewModel>(*session_, *pictures_);
    compare_ = std::make_unique<screens::CompareViewModel>(*session_, *pictures_);
    for (QObject* one :
         std::initializer_list<QObject*>{pictures_.get(), wall_.get(), look_.get(), compare_.get()})
      QQmlEngine::setObjectOwnership(one, QQmlEngine::CppOwnership);
    emit opened();
  }
  const std::vector<folds::PictureNoteView>& seen(const QString& picture) const {
    return session_->car()->find(PictureId{*PictureId::parse(picture.toStdString())})->notes;
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
  device::FakeCamera camera_;
  std::unique_ptr<screens::PictureIntake> intake_;
  std::unique_ptr<screens::ShotViewModel> shot_;
  std::unique_ptr<screens::ShotsViewModel> shots_;
  std::unique_ptr<screens::PictureStore> pictures_;
  std::unique_ptr<screens::WallViewModel> wall_;
  std::unique_ptr<screens::LookViewModel> look_;
  std::unique_ptr<screens::CompareViewModel> compare_;
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
