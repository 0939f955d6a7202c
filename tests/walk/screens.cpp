#include "screens.h"

#include <QImage>
#include <QMetaEnum>
#include <QTemporaryDir>
#include <QUrl>
#include <functional>

#include "app/demo_pictures/drawn_camera.h"
#include "assembly_screens.h"
#include "booth_screens.h"
#include "cure_screens.h"
#include "fit_screens.h"
#include "floor_screens.h"
#include "gun_screens.h"
#include "hand_over_screens.h"
#include "hours_screens.h"
#include "item.h"
#include "picture_screens.h"
#include "protection_screens.h"
#include "questions_screens.h"
#include "record_screens.h"
#include "report_screens.h"
#include "retention_screens.h"
#include "rules.h"
#include "screens/before_cut_view_model.h"
#include "screens/booth_view_model.h"
#include "screens/dirt_over_time_view_model.h"
#include "screens/evidence_view_model.h"
#include "screens/film_view_model.h"
#include "screens/inspect_view_model.h"
#include "screens/open_car_view_model.h"
#include "screens/shot_view_model.h"
#include "screens/shots_view_model.h"
#include "screens/time_line_view_model.h"
#include "screens/walk_view_model.h"
#include "sync_screens.h"

namespace jambline::walk {

namespace {
using screens::OpenCarViewModel;

// Of the window itself, or one of its view models.
QObject* part(Shop& shop, const char* name) {
  if (auto* own = shop.window().property(name).value<QObject*>()) return own;
  auto* models = shop.window().property("models").value<QObject*>();
  return models ? models->property(name).value<QObject*>() : nullptr;
}

}  // namespace

bool place(Shop& shop, const char* where, const char* work) {
  QObject* way = part(shop, "way");
  if (!way) return false;
  const auto value = [&](const char* of, const char* key) {
    const QMetaObject* meta = way->metaObject();
    return meta->enumerator(meta->indexOfEnumerator(of)).keyToValue(key);
  };
  way->setProperty("place", value("Place", where));
  way->setProperty("work", value("Work", work));
  QMetaObject::invokeMethod(way, "arrived");
  settle(shop.window());
  return true;
}

bool press(Shop& shop, const char* object_name) {
  QQuickItem* item = named(scope_of(shop.window()), QString::fromLatin1(object_name));
  if (!item || !QMetaObject::invokeMethod(item, "press")) return false;
  settle(shop.window());
  return true;
}

namespace {
bool open_sheet(Shop& shop, const char* type) {
  QQuickItem* sheet = nullptr;
  const auto look = [&](auto&& self, QQuickItem& item) -> void {
    if (!sheet && is_kind(item, type)) sheet = &item;
    for (QQuickItem* child : item.childItems()) self(self, *child);
  };
  look(look, *shop.window().contentItem());
  if (!sheet) return false;
  sheet->setProperty("opened", true);
  settle(shop.window());
  return true;
}

bool open_page(Shop& shop, OpenCarViewModel::Page page) {
  auto* form = qobject_cast<OpenCarViewModel*>(part(shop, "openCarForm"));
  if (!form || !place(shop, "Floor", "OpenCar")) return false;
  if (form->body() < 0 && page >= OpenCarViewModel::BodyPage) {
    form->setPlate(QStringLiteral("K 41-206"));
    form->chooseBody(QStringLiteral("four-door sedan"), false);
  }
  form->goTo(page);
  settle(shop.window());
  return form->page() == page;
}

// A label that checks and one that does not, out of picture files; or why there is no live view.
bool scan_vin(Shop& shop, bool read) {
  auto* form = qobject_cast<OpenCarViewModel*>(part(shop, "openCarForm"));
  if (!open_page(shop, OpenCarViewModel::CarPage) || !press(shop, "openScan")) return false;
  if (!read) return true;
  const QTemporaryDir folder;
  QList<QUrl> files;
  for (const char* vin : {"0TYABC8D9KA123456", "11111111111111111"}) {
    const auto bytes = demo::drawn_picture(
        {.view = job::ShotView::PlateOrLabel, .color = {"", "", "#9c2b2a"}, .vin = vin, .seed = 5});
    QFile file(folder.filePath(QLatin1String(vin)));
    if (!bytes || !file.open(QIODevice::WriteOnly)) return false;
    file.write(reinterpret_cast<const char*>(bytes->data()), static_cast<qint64>(bytes->size()));
    files.append(QUrl::fromLocalFile(file.fileName()));
  }
  form->scan()->readFiles(files);
  settle_until(shop, [&] { return !form->scan()->reading(); });
  settle(shop.window());
  return form->scan()->foundCount() == 2;
}

bool read_estimate(Shop& shop) {
  auto* form = qobject_cast<OpenCarViewModel*>(part(shop, "openCarForm"));
  if (!open_page(shop, OpenCarViewModel::PanelsPage)) return false;
  form->readCsv(
      QStringLiteral("stage,title,hours\nprep,Feather the left quarter panel,1.5\n"
                     "inspect,,0.5\nlunch,,1.0\ncorrect,Level and polish,banana\n"));
  settle_until(shop, [&] { return form->csvShown(); });
  settle(shop.window());
  return form->csvShown();
}

const folds::PanelView* panel_with_most_marks(Shop& shop) {
  const folds::PanelView* out = nullptr;
  const auto* car = shop.program().session().car();
  if (!car) return nullptr;
  for (const auto& panel : car->panels)
    if (!out || panel.marks.size() > out->marks.size()) out = &panel;
  return out;
}

bool panel(Shop& shop) {
  const auto* most = panel_with_most_marks(shop);
  const auto word = most ? word_of(most->plan.panel) : std::string_view("hood");
  shop.program().inspect().openPanel(
      QString::fromUtf8(word.data(), static_cast<qsizetype>(word.size())));
  return place(shop, "Floor", "Panel");
}

bool chosen_mark(Shop& shop) {
  if (!panel(shop)) return false;
  const auto* most = panel_with_most_marks(shop);
  if (most && !most->marks.empty())
    shop.program().inspect().choose(QString::fromStdString(most->marks.front().mark.hex()));
  settle(shop.window());
  return true;
}

screens::FilmViewModel* film(Shop& shop) {
  auto* film = qobject_cast<screens::FilmViewModel*>(part(shop, "film"));
  if (!film || !panel(shop)) return nullptr;
  film->openPanel(shop.program().inspect().panel());
  return place(shop, "Floor", "Film") ? film : nullptr;
}

// Two readings of a spot are typed; the third is none that a gauge shows.
bool film_typed(Shop& shop) {
  auto* typed = film(shop);
  if (typed && typed->panel().isEmpty()) return true;  // a car without panels
  if (!typed || !press(shop, "filmMain")) return false;
  while (typed->readingCount() > 0) typed->dropReading();
  for (const int value : {112, 115, 0}) typed->type(value);
  settle(shop.window());
  return true;
}

bool film_sum(Shop& shop) {
  auto* shown = film(shop);
  if (!shown) return false;
  shown->openSum();
  settle(shop.window());
  return true;
}

bool before_cut(Shop& shop, const char* item) {
  auto* check = qobject_cast<screens::BeforeCutViewModel*>(part(shop, "beforeCut"));
  if (!check || !place(shop, "Floor", "Car")) return false;
  check->ask();
  if (item) {
    check->answerTheRest();
    check->open(QString::fromLatin1(item));
  }
  settle(shop.window());
  return true;
}

// The plan of the car, when it has come.
bool plan(Shop& shop, const char* work) {
  if (!place(shop, "Floor", work)) return false;
  for (int i = 0; i < 5; ++i) settle(shop.window());
  return true;
}

// Another car, where there is one with marks: all rounds are done, its marks are asked.
bool walk_asks(Shop& shop, bool all_gone) {
  auto* walk = qobject_cast<screens::WalkViewModel*>(part(shop, "walk"));
  auto& session = shop.program().session();
  QString other;
  for (const auto& row : *session.snapshot().floor) {
    const QString job = QString::fromStdString(row.job.hex());
    if (row.marks_open > 0 && !row.read_only && !row.disputed && job != shop.usual_car())
      other = job;
  }
  if (!walk || (!other.isEmpty() && !shop.put_on_tape(other)) || !plan(shop, "Walk")) return false;
  if (other.isEmpty()) return true;
  acts::AnswerBeforeCut check{*session.job(), {}};
  for (std::size_t i = 0; i < enum_words<job::CutItem>.size(); ++i)
    check.checks.push_back({static_cast<job::CutItem>(i), job::CutAnswer::Yes, {}});
  if (!session.car()->before_cut_of(session.person())) session.post(check);
  settle_until(shop, [&] { return walk->mode() != screens::WalkViewModel::Mode::Nothing; });
  for (int i = 0; i < 60 && walk->mode() == screens::WalkViewModel::Mode::Round; ++i) {
    settle(shop.window());
    walk->act();
    settle(shop.window());
  }
  if (all_gone && walk->mode() == screens::WalkViewModel::Mode::Ask) walk->act();
  for (int i = 0; i < 5; ++i) settle(shop.window());
  return true;
}

// What threw it, once the car has dirt and is looked over; then a button on it.
bool evidence(Shop& shop, const char* button) {
  if (!shop.throw_dirt() || !place(shop, "Floor", "Evidence")) return false;
  const auto& shown = shop.program().evidence();
  settle_until(shop, [&] { return shown.word() != screens::EvidenceViewModel::Word::Working; });
  return !button || press(shop, button);
}

// A sheet over the booths, where there are any.
bool booth(Shop& shop, const char* button, const char* next) {
  if (!place(shop, "Booth", "None") || !press(shop, "addBooth")) return false;
  auto* booths = qobject_cast<screens::BoothViewModel*>(part(shop, "booth"));
  if (!booths) return false;
  if (booths->boothCount() == 0) booths->keepBooth(QStringLiteral("Booth 1"), 0);
  settle_until(shop, [&] { return booths->boothCount() != 0; });
  settle(shop.window());
  if (booths->boothCount() == 0) return false;
  QQuickItem& sheet = scope_of(shop.window());
  if (sheet.property("opened").toBool()) QMetaObject::invokeMethod(&sheet, "close");
  settle(shop.window());
  return press(shop, button) && (!next || press(shop, next));
}

bool entry(Shop& shop, bool asking) {
  auto* line = qobject_cast<screens::TimeLineViewModel*>(part(shop, "timeLine"));
  if (!line || !place(shop, "Floor", "TimeLine") || line->rowCount() == 0) return false;
  const auto roles = line->roleNames();
  line->open(line->data(line->index(0, 0), roles.key("entryId")).toString());
  settle(shop.window());
  return !asking || press(shop, "takeBack") || true;
}

bool disputed(Shop& shop, bool on_panel) {
  if (!shop.put_on_tape(shop.disputed_car())) return false;
  if (!on_panel) return place(shop, "Floor", "Car");
  for (const auto& one : shop.program().session().car()->panels)
    if (one.disputed) {
      const auto word = word_of(one.plan.panel);
      shop.program().inspect().openPanel(
          QString::fromUtf8(word.data(), static_cast<qsizetype>(word.size())));
    }
  return place(shop, "Floor", "Panel");
}

// The page with its answer, `further` turns it.
bool dirt_page(Shop& shop, const std::function<bool(screens::DirtOverTimeViewModel&)>& further) {
  auto* dirt = qobject_cast<screens::DirtOverTimeViewModel*>(part(shop, "dirt"));
  if (!dirt || !place(shop, "Record", "DirtOverTime")) return false;
  settle_until(shop, [&] { return dirt->state() != screens::DirtOverTimeViewModel::Waiting; });
  dirt->choose(-1);
  const bool good = further(*dirt);
  settle(shop.window());
  return good;
}

bool shots(Shop& shop, const char* stage) {
  shop.program().shots().choose(QString::fromLatin1(stage));
  return place(shop, "Floor", "Shots");
}

// The first shot that is missing; this machine may have a camera or none.
bool shot(Shop& shop) {
  auto& wanted = shop.program().shots();
  wanted.choose(QStringLiteral("mask"));
  shop.program().shot().open(wanted.stage(), wanted.nextKey());
  return place(shop, "Floor", "Shot");
}

// A picture of a file that is too dark waits.
bool shot_poor(Shop& shop) {
  using Step = screens::ShotViewModel::Step;
  if (!shot(shop)) return false;
  auto& taken = shop.program().shot();
  const QTemporaryDir folder;
  QImage dark(1600, 1200, QImage::Format_RGB32);
  dark.fill(qRgb(9, 12, 10));
  const QString file = folder.filePath(QStringLiteral("IMG_2041 left rear door jamb.jpg"));
  if (taken.step() == Step::Aim && dark.save(file)) taken.offer({QUrl::fromLocalFile(file)});
  settle_until(shop, [&] { return taken.step() == Step::Offered; });
  return taken.step() == Step::Offered;
}

bool release(Shop& shop) {
  if (!place(shop, "Floor", "Car")) return false;
  auto* car = part(shop, "car");
  QMetaObject::invokeMethod(car, "choose", Q_ARG(QString, "mask"));
  settle(shop.window());
  QMetaObject::invokeMethod(car, "shotsMissing");
  settle(shop.window());
  return true;
}

// What a stage wants, on the page of the shop, seen by a manager.
bool shop_shots(Shop& shop, const char* stage) {
  const auto& people = shop.program().session().shop().people;
  if (people.empty()) return true;
  for (const auto& person : people)
    if (person.role == job::Role::Manager)
      shop.program().session().choosePerson(QString::fromStdString(person.person.hex()));
  if (!press(shop, "personTile") || !press(shop, "theShop") || !press(shop, "shopShots"))
    return false;
  QMetaObject::invokeMethod(part(shop, "shotList"), "open",
                            Q_ARG(QString, QString::fromLatin1(stage)));
  settle(shop.window());
  return true;
}

// The page of the first person, or the question before that person leaves.
bool shop_person(Shop& shop, bool leaving) {
  const auto& people = shop.program().session().shop().people;
  if (people.empty()) return true;
  for (const auto& person : people)
    if (person.role == job::Role::Manager)
      shop.program().session().choosePerson(QString::fromStdString(person.person.hex()));
  auto* page = part(shop, "shop");
  if (!page || !press(shop, "personTile") || !press(shop, "theShop")) return false;
  QMetaObject::invokeMethod(page, "open",
                            Q_ARG(QString, QString::fromStdString(people.front().person.hex())));
  settle(shop.window());
  return !leaving || press(shop, "letGo") || true;  // not without a manager
}

std::vector<Screen> all() {
  const auto at = [](const char* where, const char* work) {
    return [=](Shop& shop) { return place(shop, where, work); };
  };
  const auto page = [](OpenCarViewModel::Page which) {
    return [=](Shop& shop) { return open_page(shop, which); };
  };
  const auto then = [](auto first, auto second) {
    return [=](Shop& shop) { return first(shop) && second(shop); };
  };
  const auto pressing = [](const char* name) {
    return [=](Shop& shop) { return press(shop, name); };
  };
  const auto sheet = [](const char* type) {
    return [=](Shop& shop) { return open_sheet(shop, type); };
  };
  const auto on_floor = at("Floor", "None");
  return {
      {"floor", false, on_floor},
      {"open-a-car-1-car", false, page(OpenCarViewModel::CarPage)},
      {"open-a-car-scan", false, [](Shop& shop) { return scan_vin(shop, false); }},
      {"open-a-car-scan-read", false, [](Shop& shop) { return scan_vin(shop, true); }},
      {"open-a-car-2-color", false, page(OpenCarViewModel::ColorPage), true},
      {"open-a-car-3-body", false, page(OpenCarViewModel::BodyPage), true},
      {"open-a-car-4-work", false, page(OpenCarViewModel::WorkPage), true},
      {"open-a-car-5-panels", false, page(OpenCarViewModel::PanelsPage), true},
      {"open-a-car-6-promised", false, page(OpenCarViewModel::PromisePage), true},
      {"estimate-import", false, read_estimate},
      {"clock-sheet", false, then(on_floor, sheet("ClockSheet"))},
      {"people-sheet", false, then(on_floor, pressing("personTile"))},
      {"add-person", false,
       [=](Shop& shop) {
         return on_floor(shop) && press(shop, "personTile") &&
                (press(shop, "onePersonMore") || true);
       }},
      {"new-pin", false,
       [=](Shop& shop) {
         return on_floor(shop) && press(shop, "personTile") &&
                (press(shop, "setPin") || true);  // nobody is chosen in an empty shop
       }},
      {"the-shop", false,
       [=](Shop& shop) {
         return on_floor(shop) && press(shop, "personTile") &&
                (press(shop, "theShop") || true);  // an empty shop has no page
       }},
      {"shop-person", false,
       [=](Shop& shop) { return on_floor(shop) && shop_person(shop, false); }},
      {"shop-leaver", false, [=](Shop& shop) { return on_floor(shop) && shop_person(shop, true); }},
      {"shop-shots", false, [=](Shop& shop) { return on_floor(shop) && shop_shots(shop, ""); }},
      {"shop-shots-mask", false,
       [=](Shop& shop) { return on_floor(shop) && shop_shots(shop, "mask"); }},
      {"first-aid", false, then(on_floor, pressing("firstAid"))},
      {"first-aid-steps", false,
       [=](Shop& shop) {
         if (!on_floor(shop) || !press(shop, "firstAid")) return false;
         scope_of(shop.window()).setProperty("chosen", 1);
         settle(shop.window());
         return true;
       }},
      {"booth", false, at("Booth", "None")},
      {"booth-new", false, then(at("Booth", "None"), pressing("addBooth"))},
      {"record", false, at("Record", "None")},
      {"dirt-over-time", false,
       [](Shop& shop) { return dirt_page(shop, [](auto&) { return true; }); }},
      {"dirt-of-a-car", false,
       [](Shop& shop) {
         return dirt_page(shop, [](auto& dirt) {
           dirt.choose(static_cast<int>(dirt.days().size()) - 2);
           return true;
         });
       }},
      {"dirt-table", false,
       [](Shop& shop) {
         return dirt_page(shop, [&](auto& dirt) {
           return dirt.days().isEmpty() || press(shop, "dirtAsTable") || true;  // the desk has it
         });
       }},
      {"dirt-sum", false,
       [](Shop& shop) {
         return dirt_page(shop, [&](auto& dirt) {
           return dirt.days().isEmpty() || press(shop, "dirtSumOpens");
         });
       }},
      {"integrity", false, then(at("Record", "None"), press_check)},
      {"car", true, at("Floor", "Car")},
      {"car-note", true, then(at("Floor", "Car"), pressing("carNote"))},
      {"inspect-car", true, at("Floor", "Inspect")},
      {"inspect-panel", true, panel},
      {"inspect-mark", true, chosen_mark},
      {"mark-sheet", true, then(chosen_mark, sheet("MarkSheet"))},
      {"dirt-sheet", true, then(panel, pressing("dirtAllOver"))},
      {"film", true, [](Shop& shop) { return film(shop) != nullptr; }},
      {"film-typed", true, film_typed},
      {"film-sum", true, film_sum},
      {"before-cut", true, [](Shop& shop) { return before_cut(shop, nullptr); }},
      {"before-cut-answers", true, [](Shop& shop) { return before_cut(shop, "gloves"); }},
      {"plan", true, [](Shop& shop) { return plan(shop, "Plan"); }},
      {"plan-sand", true,
       [](Shop& shop) {
         return plan(shop, "Plan") && (press(shop, "planMain") || true);  // nothing to start
       }},
      {"walk", true, [](Shop& shop) { return plan(shop, "Walk"); }},
      {"walk-burn", true,
       [](Shop& shop) {
         return plan(shop, "Walk") && (press(shop, "walkBurn") || true);  // nothing is worked on
       }},
      {"walk-asks", true, [](Shop& shop) { return walk_asks(shop, false); }},
      {"walk-clean", true, [](Shop& shop) { return walk_asks(shop, true); }},
      {"parts", true, at("Floor", "Parts")},
      {"shots", true, at("Floor", "Shots")},
      {"shots-mask", true, [](Shop& shop) { return shots(shop, "mask"); }},
      {"shot", true, shot},
      {"shot-poor", true, shot_poor},
      {"release", true, release},
      {"time-line", true, at("Floor", "TimeLine")},
      {"entry-sheet", true, [](Shop& shop) { return entry(shop, false); }},
      {"entry-take-back", true, [](Shop& shop) { return entry(shop, true); }},
      {"car-disputed", true, [](Shop& shop) { return disputed(shop, false); }, false, true},
      {"panel-disputed", true, [](Shop& shop) { return disputed(shop, true); }, false, true},
      {"inspect-thrown", true,
       [=](Shop& shop) { return shop.throw_dirt() && place(shop, "Floor", "Inspect"); }},
      {"car-thrown", true,
       [=](Shop& shop) { return shop.throw_dirt() && place(shop, "Floor", "Car"); }},
      {"evidence", true, [](Shop& shop) { return evidence(shop, nullptr); }},
      {"evidence-others", true, [](Shop& shop) { return evidence(shop, "otherSigns") || true; }},
      {"evidence-sum", true, [](Shop& shop) { return evidence(shop, "signSum"); }},
      {"evidence-said", true, [](Shop& shop) { return evidence(shop, "evidenceMain"); }},
      {"car-sprayed", true,
       [=](Shop& shop) {
         if (!place(shop, "Floor", "Car")) return false;
         QMetaObject::invokeMethod(part(shop, "car"), "choose", Q_ARG(QString, "spray"));
         settle(shop.window());
         return true;
       }},
      {"booth-one", true, [](Shop& shop) { return booth(shop, "boothTape", nullptr); }},
      {"booth-event", true, [](Shop& shop) { return booth(shop, "boothEvent0", nullptr); }},
      {"booth-earlier", true,
       [](Shop& shop) { return booth(shop, "boothEvent1", "eventEarlier"); }},
      {"booth-filters-in", true,
       [](Shop& shop) {
         if (!booth(shop, "boothEvent0", "eventFiltersIn")) return false;
         return settle_until(shop, [&] {
           return named(*shop.window().contentItem(), QStringLiteral("filtersOut")) != nullptr;
         });
       }},
      // Last: it is the next day from then on.
      {"forgotten-clock", false, [=](Shop& shop) { return on_floor(shop) && shop.day_after(); }},
  };
}

void close_all(Shop& shop) {
  const auto close = [](auto&& self, QQuickItem& item) -> void {
    if (role_of(item) == QAccessible::Dialog || is_kind(item, "Sheet"))
      if (item.property("opened").toBool()) QMetaObject::invokeMethod(&item, "close");
    for (QQuickItem* child : item.childItems()) self(self, *child);
  };
  close(close, *shop.window().contentItem());
  shop.program().inspect().choose({});
}
}  // namespace

const std::vector<Screen>& screens() {
  static const std::vector<Screen> list = [] {
    std::vector<Screen> out = picture_screens();
    for (Screen& one : protection_screens()) out.push_back(std::move(one));
    for (Screen& one : booth_screens()) out.push_back(std::move(one));
    for (Screen& one : gun_screens()) out.push_back(std::move(one));
    for (Screen& one : cure_screens()) out.push_back(std::move(one));
    for (Screen& one : assembly_screens()) out.push_back(std::move(one));
    for (Screen& one : floor_screens()) out.push_back(std::move(one));
    for (Screen& one : fit_screens()) out.push_back(std::move(one));
    for (Screen& one : hours_screens()) out.push_back(std::move(one));
    for (Screen& one : questions_screens()) out.push_back(std::move(one));
    for (Screen& one : retention_screens()) out.push_back(std::move(one));
    for (Screen& one : record_screens()) out.push_back(std::move(one));
    for (Screen& one : report_screens()) out.push_back(std::move(one));
    for (Screen& one : hand_over_screens()) out.push_back(std::move(one));
    for (Screen& one : sync_screens()) out.push_back(std::move(one));
    for (Screen& one : all()) out.push_back(std::move(one));
    const QStringList only =
        qEnvironmentVariable("JAMBLINE_WALK").split(QChar(','), Qt::SkipEmptyParts);
    if (!only.isEmpty())
      out.erase(std::remove_if(out.begin(), out.end(),
                               [&](const Screen& one) {
                                 return !only.contains(QString::fromStdString(one.name));
                               }),
                out.end());
    return out;
  }();
  return list;
}

bool go_to(Shop& shop, const Screen& screen) {
  close_all(shop);
  if (screen.of_car && !shop.put_on_tape(shop.usual_car())) return false;
  return screen.go(shop) && shop.all_worked_out();
}

}  // namespace jambline::walk
