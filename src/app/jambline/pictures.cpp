#include "app/jambline/pictures.h"

#include <QCoreApplication>
#include <QElapsedTimer>
#include <QImage>
#include <QMetaEnum>
#include <QQuickItem>

#include "base/describe.h"
#include "folds/booth_state.h"
#include "screens/clearance_view_model.h"
#include "screens/compare_view_model.h"
#include "screens/film_view_model.h"
#include "screens/fit_view_model.h"
#include "screens/floor_forecasts.h"
#include "screens/inspect_view_model.h"
#include "screens/look_view_model.h"
#include "screens/settings_view_model.h"
#include "screens/wall_view_model.h"

namespace jambline::app {

namespace {
enum class Over { Nothing, Clock, People, BeforeCut, Aid, OpenHours };

struct Stop {
  const char* name;
  const char* place;
  const char* work;
  Over over = Over::Nothing;
};

constexpr Stop stops[] = {
    {"floor", "Floor", "None"},
    {"car", "Floor", "Car"},
    {"inspect-car", "Floor", "Inspect"},
    {"inspect-panel", "Floor", "Panel"},
    {"plan", "Floor", "Plan"},
    {"walk", "Floor", "Walk"},
    {"film", "Floor", "Film"},
    {"before-cut", "Floor", "Car", Over::BeforeCut},
    {"parts", "Floor", "Parts"},
    {"operations", "Floor", "Operations"},
    {"assembly", "Floor", "Assembly"},
    {"fit", "Floor", "Fit"},
    {"time-line", "Floor", "TimeLine"},
    {"shots", "Floor", "Shots"},
    {"shot", "Floor", "Shot"},
    {"wall", "Floor", "Wall"},
    {"look", "Floor", "Look"},
    {"compare", "Floor", "Compare"},
    {"before-gun", "Floor", "BeforeGun"},
    {"sprayed", "Floor", "Sprayed"},
    {"cure", "Floor", "Cure"},
    {"check-in", "Floor", "CheckIn"},
    {"walk-around", "Floor", "WalkAround"},
    {"open-a-car", "Floor", "OpenCar"},
    {"evidence", "Floor", "Evidence"},
    {"booth", "Booth", "None"},
    {"booth-now", "Booth", "BoothNow"},
    {"register", "Booth", "Register"},
    {"protection", "Booth", "Protection"},
    {"limits", "Booth", "Limits"},
    {"exposure", "Booth", "Exposure"},
    {"record", "Record", "None"},
    {"hours", "Record", "Hours"},
    {"car-hours", "Floor", "CarHours"},
    {"dirt-over-time", "Record", "DirtOverTime"},
    {"sending", "Record", "Sending"},
    {"devices", "Record", "Devices"},
    {"clock-sheet", "Floor", "Car", Over::Clock},
    {"people", "Floor", "None", Over::People},
    {"open-hours", "Floor", "None", Over::OpenHours},
    {"first-aid", "Floor", "Car", Over::Aid},
};

void wait_ms(int ms) {
  QElapsedTimer timer;
  timer.start();
  while (timer.elapsed() < ms) QCoreApplication::processEvents(QEventLoop::AllEvents, 20);
}

int value_of(const QObject& way, const char* enumeration, const char* key) {
  const QMetaObject* meta = way.metaObject();
  return meta->enumerator(meta->indexOfEnumerator(enumeration)).keyToValue(key);
}

// The car that is being looked over and has most to show, and its panel with most marks.
struct Subject {
  QString job;
  QString panel;
  QString person;
};

Subject choose(Program& program) {
  Subject out;
  const auto& snapshot = program.session().snapshot();
  int best = -1;
  for (const auto& row : *snapshot.floor) {
    const bool inspected = row.next_stage == job::Stage::Inspect;
    const int worth = row.marks_open + (inspected ? 1000 : 0) - (row.read_only ? 5000 : 0);
    if (worth <= best) continue;
    best = worth;
    out.job = QString::fromStdString(row.job.hex());
  }
  for (const auto& person : snapshot.shop->people)
    if (!person.left && person.role == job::Role::Painter && out.person.isEmpty())
      out.person = QString::fromStdString(person.person.hex());
  return out;
}

QString panel_with_most_marks(const folds::CarView& car) {
  const folds::PanelView* best = nullptr;
  for (const auto& panel : car.panels)
    if (!best || panel.marks.size() > best->marks.size()) best = &panel;
  if (!best) return {};
  const auto word = word_of(best->plan.panel);
  return QString::fromUtf8(word.data(), static_cast<qsizetype>(word.size()));
}

// One that there is another of, else the first.
void choose_picture(Program& program) {
  const QStringList all = program.wall().keys();
  if (all.isEmpty()) return;
  program.look().open(all.first(), all);
  for (const QString& one : all) {
    program.look().open(one, all);
    if (program.look().comparable()) break;
  }
  program.compare().open(program.look().picture());
}

bool did(Program& program, acts::Command command, const PersonId& by) {
  bool good = false;
  program.engine().post(std::move(command), by,
                        [&](const Result<engine::Wrote>& wrote) { good = wrote.has_value(); });
  program.engine().drain();
  wait_ms(50);
  return good;
}

// The air of a booth is left to clear: a car that is to be sprayed was, and the gun is down.
void spray(Program& program, const folds::BoothView& booth) {
  using job::GunItem;
  const auto& snapshot = program.session().snapshot();
  const auto& all = snapshot.shop->air.respirators;
  const auto hood = std::find_if(all.begin(), all.end(), [](const auto& one) {
    return one.said.kind == job::RespiratorKind::SuppliedHood && !one.said.retired;
  });
  const auto& cars = *snapshot.floor;
  const auto car = std::find_if(cars.begin(), cars.end(), [](const auto& row) {
    return row.next_stage == job::Stage::BeforeTheGun || row.next_stage == job::Stage::Spray;
  });
  const auto& people = snapshot.shop->people;
  const auto painter = std::find_if(people.begin(), people.end(), [](const auto& one) {
    return one.role == job::Role::Painter && !one.left;
  });
  if (hood == all.end() || car == cars.end() || painter == people.end()) return;
  const PersonId who = painter->person;
  acts::StartSpray start{car->job, booth.booth, hood->respirator, true, {}};
  for (std::size_t i = 0; i < enum_words<GunItem>.size(); ++i) {
    const auto item = static_cast<GunItem>(i);
    if (job::is_of_now(item))
      start.checks.push_back({item, job::CutAnswer::Yes, {}, {}});
    else if (job::class_of(item) == job::CheckClass::Must)
      start.checks.push_back({item, job::CutAnswer::No, job::GunReason::RecordNotHere, {}});
  }
  if (did(program, start, who)) did(program, acts::GunDown{booth.booth, {}}, who);
}

void show_booth(Program& program) {
  const auto& booths = program.session().shop().booths;
  if (booths.empty()) return;
  const folds::BoothView booth = booths.front();
  spray(program, booth);
  program.clearance().open(QString::fromStdString(booth.booth.hex()));
}

bool prepare(Program& program) {
  show_booth(program);
  const Subject subject = choose(program);
  if (!subject.person.isEmpty()) program.session().choosePerson(subject.person);
  if (subject.job.isEmpty()) return true;
  program.session().openCar(subject.job);
  QElapsedTimer timer;
  timer.start();
  while (!program.session().hasCar() && timer.elapsed() < 10'000) wait_ms(20);
  if (!program.session().hasCar()) return false;
  program.forecasts().look();
  while (!program.forecasts().ready() && timer.elapsed() < 20'000) wait_ms(20);
  program.inspect().openPanel(panel_with_most_marks(*program.session().car()));
  program.film().openPanel(program.inspect().panel());
  program.fit().openPanel(program.inspect().panel());
  choose_picture(program);
  return true;
}

bool go(Program& program, const Stop& stop) {
  QQuickWindow* window = program.window();
  auto* way = window->property("way").value<QObject*>();
  QVariant made;
  QMetaObject::invokeMethod(window, "sheets", Q_RETURN_ARG(QVariant, made));
  const auto* sheets = made.value<QObject*>();
  if (!way || !sheets) return false;
  const auto sheet = [&](const char* name) { return sheets->property(name).value<QObject*>(); };
  auto* clock = sheet("clockSheet");
  auto* people = sheet("peopleSheet");
  auto* before_cut = sheet("beforeCutSheet");
  auto* shop = sheet("shopSheet");
  auto* aid = sheet("firstAid");
  if (!clock || !people || !before_cut || !shop || !aid) return false;
  clock->setProperty("opened", stop.over == Over::Clock);
  people->setProperty("opened", stop.over == Over::People);
  before_cut->setProperty("opened", stop.over == Over::BeforeCut);
  if (stop.over == Over::OpenHours) {
    QMetaObject::invokeMethod(shop, "showShop");
    shop->setProperty("ofCalendar", true);
  } else {
    shop->setProperty("opened", false);
  }
  QMetaObject::invokeMethod(aid, stop.over == Over::Aid ? "open" : "close");
  way->setProperty("place", value_of(*way, "Place", stop.place));
  way->setProperty("work", value_of(*way, "Work", stop.work));
  wait_ms(350);
  return true;
}

Result<int> draw(Program& program, const std::filesystem::path& folder, const Stop& stop,
                 const QString& suffix) {
  const auto refuse = [&](const char* why) {
    return fail(Error{Code::FileFailed, "draw", stop.name, {{"cause", why}}});
  };
  if (!go(program, stop)) return refuse("the screen did not come");
  const QImage picture = program.window()->grabWindow();
  const QString name = QString::fromStdString(folder.string()) + QChar('/') +
                       QString::fromLatin1(stop.name) + suffix + QStringLiteral(".png");
  if (picture.isNull()) return refuse("nothing was drawn");
  if (!picture.save(name)) return refuse("the file could not be written");
  return 1;
}

void resize(Program& program, int width, int height) {
  program.window()->resize(width, height);
  wait_ms(150);
}
}  // namespace

bool visit_screens(Program& program) {
  bool good = prepare(program);
  for (const auto& [width, height] : {std::pair{412, 892}, {900, 1200}, {1440, 900}}) {
    resize(program, width, height);
    for (const Stop& stop : stops) {
      good = go(program, stop) && good;
      good = !program.window()->grabWindow().isNull() && good;
    }
  }
  return good;
}

Result<int> draw_pictures(Program& program, const std::filesystem::path& folder) {
  std::error_code failed;
  std::filesystem::create_directories(folder, failed);
  if (failed)
    return fail(Error{Code::FileFailed, "draw", folder.string(), {{"cause", failed.message()}}});
  if (!prepare(program)) return fail(Code::Stopped, "draw", "the car did not come");
  auto& settings = program.settings();
  using screens::SettingsViewModel;
  int count = 0;
  resize(program, 412, 892);
  for (const bool dark : {false, true}) {
    settings.set_look(dark ? SettingsViewModel::Stall : SettingsViewModel::Booth);
    for (const Stop& stop : stops) {
      JAMBLINE_ASSIGN(const int one, draw(program, folder, stop, dark ? "-dark" : ""));
      count += one;
    }
  }
  settings.set_look(SettingsViewModel::Booth);
  for (const auto& [width, height] : {std::pair{900, 1200}, {1440, 900}}) {
    resize(program, width, height);
    for (const Stop& stop : {stops[0], stops[1], stops[2], stops[3], stops[4], stops[6]}) {
      JAMBLINE_ASSIGN(const int one,
                      draw(program, folder, stop, QStringLiteral("-%1x%2").arg(width).arg(height)));
      count += one;
    }
  }
  return count;
}

}  // namespace jambline::app
