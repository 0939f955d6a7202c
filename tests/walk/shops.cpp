#include "shops.h"

#include <QCoreApplication>
#include <filesystem>
#include <map>

#include "app/demo/demo_shop.h"
#include "base/spans.h"
#include "job/body_shape.h"
#include "screens/floor_forecasts.h"

namespace jambline::walk {

namespace {

constexpr const char* long_names[] = {
    "Maximiliane Oberwinter-Kastelburg", "Bartholomew Featherstonehaugh", "Ana",
    "Wilhelmina van der Bergenhorst",    "Konstantinos Papageorgopoulos", "Jo",
    "Esperanza Villalobos-Echeverria",   "Siobhan O'Shaughnessy-Murphy"};
constexpr const char* long_racks[] = {"long bumper rail by the north wall doors", "rack 2",
                                      "upper shelf of the second drying room"};
constexpr const char* long_booths[] = {"semi-downdraft booth behind the old paint store",
                                       "long truck booth by the north wall"};
constexpr const char* long_titles[] = {"", "Level and polish the whole left side again",
                                       "", "Take the moldings, lamps and both handles off",
                                       "", "Second look after the overnight bake",
                                       "", "Edges, jambs and the inside of the fuel door"};
}  // namespace

std::unique_ptr<Shop> Shop::open(Kind kind) {
  const Shop* kept = made_once(kind);
  std::unique_ptr<Shop> out(new Shop);
  if (!kept || !out->folder_.isValid()) return nullptr;
  std::error_code failed;
  std::filesystem::copy(kept->folder(), out->folder(), std::filesystem::copy_options::recursive,
                        failed);
  out->clock_.moment = kept->clock_.moment;
  if (failed || !out->start() || !out->program_->show()) return nullptr;
  out->choose_cars();
  out->program_->forecasts().look();
  return out->all_worked_out() ? std::move(out) : nullptr;
}

// Every start is from a copy of it.
const Shop* Shop::made_once(Kind kind) {
  static std::map<Kind, std::unique_ptr<Shop>> all;
  auto& kept = all[kind];
  if (kept) return kept.get();
  std::unique_ptr<Shop> out(new Shop);
  demo::DemoOptions options;
  options.delivered = 12;
  out->clock_.moment = options.now;
  if (!out->folder_.isValid()) return nullptr;
  if (kind == Kind::Usual && !demo::make_shop(out->folder(), options)) return nullptr;
  if (kind == Kind::Full && !(out->start() && out->fill())) return nullptr;
  out->program_.reset();
  kept = std::move(out);
  return kept.get();
}

bool Shop::start() {
  app::Options shown;
  shown.size = QSize(412, 892);
  auto program = app::Program::open(folder(), clock_, shown);
  if (program) program_ = std::move(*program);
  return program.has_value();
}

engine::Wrote Shop::act(acts::Command command, const PersonId& by) {
  engine::Wrote out;
  auto& engine = program_->engine();
  bool good = false;
  engine.post(std::move(command), by, [&](Result<engine::Wrote> wrote) {
    good = wrote.has_value();
    if (good) out = std::move(*wrote);
  });
  engine.drain();
  if (!good) ++refused_;
  return out;
}

PersonId Shop::first_person() const {
  const auto& people = program_->engine().snapshot()->shop->people;
  return people.empty() ? PersonId{} : people.front().person;
}

void Shop::choose_cars() {
  int best = -1;
  const auto snapshot = program_->engine().snapshot();
  for (const auto& row : *snapshot->floor) {
    const int worth = row.marks_open + (row.next_stage == job::Stage::Inspect ? 1000 : 0) -
                      (row.read_only ? 5000 : 0);
    if (row.disputed) disputed_ = QString::fromStdString(row.job.hex());
    if (worth <= best) continue;
    best = worth;
    car_ = QString::fromStdString(row.job.hex());
  }
  if (const PersonId person = first_person())
    program_->session().choosePerson(QString::fromStdString(person.hex()));
}

bool Shop::put_on_tape(const QString& job) {
  auto& session = program_->session();
  session.choosePerson(QString::fromStdString(first_person().hex()));
  session.openCar(job);
  return until(
      [&] { return session.hasCar() && QString::fromStdString(session.job()->hex()) == job; });
}

bool Shop::add_bare_car() {
  act(acts::AddPerson{"Ivo", job::Role::Painter}, {});
  acts::OpenCar car;
  car.plate = "7";
  car.color = {"", "red", "#8A1C1C"};
  car.panels = {{.panel = job::Panel::Hood}};
  car_ = QString::fromStdString(act(car, first_person()).job.hex());
  program_->session().choosePerson(QString::fromStdString(first_person().hex()));
  return refused_ == 0 && put_on_tape(car_);
}

bool Shop::undoable_act() {
  acts::WriteNote note{*program_->session().job(),
                       "The left mirror cap came back with a run along its lower edge"};
  act(note, first_person());
  return refused_ == 0 && until([&] { return program_->session().snapshot().last_act != nullptr; });
}

// What came late moves rows: it is drawn before anybody looks.
bool Shop::all_worked_out() {
  auto& forecasts = program_->forecasts();
  const auto& session = program_->session();
  const auto done = [&] { return forecasts.ready() && !session.calculating(); };
  if (done()) return true;
  if (!until(done)) return false;
  QQuickWindow* shown = program_->window();
  if (!shown) return true;
  bool drawn = false;
  const auto frame =
      QObject::connect(shown, &QQuickWindow::frameSwapped, shown, [&] { drawn = true; });
  shown->update();
  const bool good = until([&] { return drawn; });
  QObject::disconnect(frame);
  settle(*shown);
  return good;
}

bool Shop::throw_dirt() {
  const auto car = program_->engine().snapshot()->car;
  if (!car || car->panels.empty()) return false;
  if (dirty_ == car->job) return true;
  dirty_ = car->job;
  const PersonId person = first_person();
  const int before = refused_;
  const job::PatternPanel* largest = nullptr;
  for (const auto& panel : car->panels) {
    const auto* drawn = job::pattern(car->body).find(panel.plan.panel);
    if (drawn && (!largest ||
                  trade::area_mm2(drawn->shape.outline) > trade::area_mm2(largest->shape.outline)))
      largest = drawn;
  }
  if (!largest) return false;
  const auto box = trade::bounds(largest->shape.outline.corners);
  for (int i = 0; i < 9; ++i)
    act(acts::PlaceMark{.job = car->job,
                        .panel = largest->panel,
                        .x_mm = box.low.x_mm + box.width_mm() * 0.45 + 11 * i,
                        .y_mm = box.low.y_mm + box.height_mm() * 0.45 + 23 * (i % 4),
                        .layer = i < 2 ? job::Layer::OnTop : job::Layer::NotSaid,
                        .look =
                            i < 3 ? std::optional(job::ParticleLook::WhiteFiber) : std::nullopt},
        person);
  for (const auto& panel : car->panels)
    if (panel.verdict == job::Verdict::NotLookedAt && panel.plan.panel != largest->panel)
      act(
          acts::GiveVerdict{
              .job = car->job, .panel = panel.plan.panel, .verdict = job::Verdict::Clean},
          person);
  settle(window());
  return refused_ == before;
}

void Shop::wait_min(double minutes) {
  clock_.advance_ms(static_cast<std::int64_t>(minutes * 60'000));
  emit program_->session().secondPassed();
  settle(window());
}

bool Shop::day_after() {
  if (!is_day_after_) clock_.advance_ms(24 * hour_ms);
  is_day_after_ = true;
  screens::Session& session = program_->session();
  for (const auto& car : *session.snapshot().floor)
    for (const auto& running : car.running) {
      if (running.paused || session.has_pin(running.person)) continue;
      session.choose_unlocked({});
      session.choose_unlocked(running.person);
      settle(window());
      return true;
    }
  return true;  // nobody's clock runs in an empty shop
}

bool Shop::fill() {
  act(acts::NameShop{"Collision shop at the old fairground", "America/New_York"}, {});
  act(acts::AddPerson{long_names[0], job::Role::Manager}, {});
  const PersonId first = first_person();
  for (int i = 1; i < 8; ++i)
    act(acts::AddPerson{long_names[i], static_cast<job::Role>(i % 6)}, first);
  for (const char* rack : long_racks) act(acts::AddRack{rack}, first);
  std::vector<PersonId> crew;
  for (const auto& person : program_->engine().snapshot()->shop->people)
    crew.push_back(person.person);
  for (int i = 0; i < 24; ++i) {
    acts::OpenCar car;
    car.plate = i % 3 == 0 ? "WINTERTRUCK 41-206 STOCK" : "K 41-" + std::to_string(200 + i);
    car.color = {"PEARL-4471-B", "deep pearlescent evergreen metallic blue", "#1F4D3A"};
    car.body = static_cast<job::BodyShape>(i % 5);
    car.promised_ms = clock_.moment.wall_ms + (i - 8) * 7 * hour_ms;
    car.panels = {{.panel = job::Panel::Hood}};
    car.operations = {{job::Stage::Prep, "", 90}, {job::Stage::Correct, long_titles[1], 120}};
    act(car, crew[static_cast<std::size_t>(i) % crew.size()]);
  }
  look_over(crew);
  return fill_car(crew) && refused_ == 0;
}

// All cars of the floor are looked over, one a minute, in two booths of which one was worked on.
void Shop::look_over(const std::vector<PersonId>& crew) {
  for (const char* booth : long_booths)
    act(acts::AddBooth{booth, job::BoothKind::SemiDowndraft}, crew[0]);
  const auto booths = program_->engine().snapshot()->shop->booths;
  const auto cars = *program_->engine().snapshot()->floor;
  for (std::size_t i = 0; i < cars.size(); ++i) {
    const JobId job = cars[i].job;
    act(acts::SayBooth{job, booths[i % booths.size()].booth}, crew[1]);
    if (i % 3 == 0) {
      const auto& hood = job::pattern(cars[i].body).find(job::Panel::Hood)->shape;
      act(acts::PlaceMark{job, job::Panel::Hood, hood.width_mm() / 2, hood.height_mm() / 2},
          crew[1]);
      act(acts::SetCause{job, static_cast<job::DirtCause>(i / 2)}, crew[1]);
    } else {
      act(acts::GiveVerdict{.job = job, .panel = job::Panel::Hood, .verdict = job::Verdict::Clean},
          crew[1]);
    }
    if (i % 8 == 4)
      act(acts::LogBoothEvent{booths[i % booths.size()].booth, static_cast<job::BoothEvent>(i / 5)},
          crew[2]);
    clock_.advance_ms(60'000);
  }
}

bool Shop::fill_car(const std::vector<PersonId>& crew) {
  acts::OpenCar car;
  car.plate = "WINTERTRUCK 41-206 STOCK";
  car.color = {"PEARL-4471-B", "deep pearlescent evergreen metallic blue", "#1F4D3A"};
  car.body = job::BodyShape::FourDoorSedan;
  car.promised_ms = clock_.moment.wall_ms - 26 * hour_ms;
  const auto& pattern = job::pattern(car.body);
  for (const auto& panel : pattern.panels)
    car.panels.push_back({.panel = panel.panel,
                          .on_car = !panel.often_off,
                          .finish = job::Finish::SingleStageMetallic,
                          .treatment = job::Treatment::ColorBlendFullClear});
  for (int i = 0; i < 15; ++i)
    car.operations.push_back({static_cast<job::Stage>(i), long_titles[i % 8], 30 + 15 * i});
  const JobId job = act(car, crew[0]).job;
  program_->engine().watch(job);
  program_->engine().drain();
  const auto view = [&] { return program_->engine().snapshot()->car; };

  // 110 marks, most of them on the hood; a place off the panel is refused and not counted.
  SeededRandom random(7);
  const int before = refused_;
  for (int i = 0; i < 160; ++i) {
    const auto& on =
        pattern.panels[i < 60 ? 0 : static_cast<std::size_t>(i) % pattern.panels.size()];
    const trade::Box_mm box = trade::bounds(on.shape.outline.corners);
    act(acts::PlaceMark{.job = job,
                        .panel = on.panel,
                        .x_mm = box.low.x_mm + random.unit() * box.width_mm(),
                        .y_mm = box.low.y_mm + random.unit() * box.height_mm(),
                        .defect = static_cast<job::DefectKind>(i % 26),
                        .size = 1 + i % 4},
        crew[1]);
  }
  refused_ = before;
  for (std::size_t i = 0; i < 4; ++i)
    act(acts::StartClock{crew[i], job, view()->operations[i + 3].operation}, crew[i]);
  clock_.advance_ms(3 * hour_ms);
  act(acts::PauseClock{crew[2]}, crew[2]);
  act(acts::FinishStage{job, job::Stage::CheckIn, true, job::WithoutShots::NoCamera}, crew[0]);
  act(acts::GiveVerdict{.job = job, .panel = job::Panel::LeftFender, .verdict = job::Verdict::Redo},
      crew[1]);
  act(acts::WriteNote{job, "Door was open in the booth while the second coat flashed off"},
      crew[3]);
  return true;
}

}  // namespace jambline::walk
