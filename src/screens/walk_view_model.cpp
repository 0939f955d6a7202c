#include "screens/walk_view_model.h"

#include <algorithm>

#include "screens/correct_words.h"
#include "screens/map_geometry.h"
#include "screens/panel_rows.h"
#include "screens/place_words.h"
#include "screens/round_words.h"
#include "screens/text.h"
#include "screens/words.h"

namespace jambline::screens {

namespace {
using job::Round;

bool holds(const std::vector<MarkId>& marks, const MarkId& mark) {
  return std::find(marks.begin(), marks.end(), mark) != marks.end();
}

}  // namespace

WalkViewModel::WalkViewModel(Session& session, CorrectionWork& work, QObject* parent)
    : QObject(parent),
      session_(session),
      work_(work),
      stations_({"key", "title", "facts", "chosen"}, this),
      marks_({"key", "panel", "number", "title", "place", "spoken"}, this),
      rings_({"key", "number", "spoken", "xMm", "yMm"}, this) {
  connect(&work, &CorrectionWork::changed, this, &WalkViewModel::refresh);
  connect(&session, &Session::carOrShopChanged, this, &WalkViewModel::refresh);
  refresh();
}

const folds::WalkStep* WalkViewModel::step() const {
  return work_.planned() ? work_.planned()->walk().now() : nullptr;
}

const folds::WalkStep* WalkViewModel::step_after() const {
  if (!step()) return nullptr;
  const auto& steps = work_.planned()->walk().steps;
  bool past = false;
  for (const auto& one : steps) {
    if (past && !one.done) return &one;
    past = past || &one == step();
  }
  return nullptr;
}

WalkViewModel::Mode WalkViewModel::mode() const {
  if (!session_.car()) return Mode::Nothing;
  if (const auto* planned = work_.planned()) {
    if (!planned->walk().asked.empty() &&
        (!step() || work_.choice().one_panel_at_a_time || only_came_back()))
      return Mode::Ask;
    if (step()) return Mode::Round;
  }
  return work_.panels_done().empty() ? Mode::Nothing : Mode::Clean;
}

bool WalkViewModel::only_came_back() const {
  const auto* car = session_.car();
  for (const auto& step : work_.planned()->walk().steps)
    for (const auto& station : step.stations) {
      if (station.done) continue;
      const auto* view = car->find(station.panel);
      if (!view || station.left.empty()) return false;
      for (const auto& mark : view->marks)
        if (mark.end != job::MarkEnd::CameBack && holds(station.left, mark.mark)) return false;
    }
  return true;
}

std::vector<job::Panel> WalkViewModel::panels() const {
  std::vector<job::Panel> out;
  const auto* car = session_.car();
  if (!car) return out;
  switch (mode()) {
    case Mode::Round:
      for (const auto& one : step()->stations)
        if (!one.done) out.push_back(one.panel);
      break;
    case Mode::Ask:
      for (const auto& panel : car->panels)
        for (const auto& mark : panel.marks)
          if (holds(work_.planned()->walk().asked, mark.mark) &&
              (out.empty() || out.back() != panel.plan.panel))
            out.push_back(panel.plan.panel);
      break;
    case Mode::Clean:
      return work_.panels_done();
    case Mode::Nothing:
      break;
  }
  return out;
}

std::optional<job::Panel> WalkViewModel::shown() const {
  const auto all = panels();
  if (chosen_ && std::find(all.begin(), all.end(), *chosen_) != all.end()) return chosen_;
  return all.empty() ? std::nullopt : std::optional(all.front());
}

const folds::WalkStation* WalkViewModel::station() const {
  const auto panel = shown();
  if (mode() != Mode::Round || !panel) return nullptr;
  for (const auto& one : step()->stations)
    if (one.panel == *panel) return &one;
  return nullptr;
}

void WalkViewModel::refresh() {
  show_stations();
  show_marks();
  show_areas();
  emit changed();
  if (title() != shown_title_) {
    shown_title_ = title();
    emit turned();
  }
  const bool work = mode() != Mode::Nothing;
  const bool over = had_work_ && !work && session_.car() && work_.ready();
  if (work || over) had_work_ = work;
  if (!session_.car()) had_work_ = false;
  if (over) emit ended();
}

void WalkViewModel::show_stations() {
  std::vector<QVariantList> rows;
  const auto* car = session_.car();
  const auto here = shown();
  for (const job::Panel panel : panels()) {
    QStringList facts;
    if (mode() == Mode::Round) {
      for (const auto& one : step()->stations) {
        if (one.panel != panel) continue;
        facts << (one.whole
                      ? tr("whole panel")
                      : tr("%1 in %2")
                            .arg(marks_words(static_cast<int>(one.left.size())),
                                 one.areas.size() == 1 ? tr("1 area")
                                                       : tr("%1 areas").arg(one.areas.size())))
              << minutes_words(one.minutes);
      }
    } else if (const auto* view = car->find(panel)) {
      facts << (mode() == Mode::Ask
                    ? marks_words(view->open_marks())
                    : tr("%1 gone").arg(marks_words(static_cast<int>(view->marks.size()))));
    }
    rows.push_back({text(word_of(panel)), sentence(words_of(panel, car->body)), facts.join(dot),
                    here == panel});
  }
  stations_.set(std::move(rows));
}

const WalkViewModel::MarkSaid& WalkViewModel::said_of(const folds::MarkView& mark,
                                                      job::Panel panel) {
  const auto [at, is_new] = said_.try_emplace(mark.mark);
  if (!is_new) return at->second;
  const auto body = session_.car()->body;
  const auto& drawn = *job::pattern(body).find(panel);
  const trade::Placement place = upright(drawn);
  MarkSaid& said = at->second;
  said.panel = panel;
  said.at = place.apply({mark.x_mm, mark.y_mm});
  said.key = text(mark.mark.hex());
  said.title = tr("%1 %2").arg(sentence(words_of(mark.defect))).arg(mark.number);
  const trade::Box_mm box = trade::bounds(place.apply(drawn.shape.outline.corners));
  const QString where =
      tr("%1, %2").arg(words_of(panel, body), place_words(panel, ninth(box, said.at)));
  const bool handling =
      mark.stage == job::Stage::LastPolish || mark.defect == job::DefectKind::HandlingScratch;
  said.whose = mark.came_back ? tr("%1, came back").arg(where)
               : handling     ? tr("%1, from handling").arg(where)
                              : where;
  said.spoken = tr("%1, %2").arg(said.title, said.whose);
  return said;
}

void WalkViewModel::show_marks() {
  std::vector<QVariantList> rows;
  std::vector<QVariantList> rings;
  const auto* car = session_.car();
  const auto same = as_they_were(car_.get(), car);
  car_ = car ? session_.snapshot().car : nullptr;
  std::erase_if(said_, [&](const auto& one) {
    return std::find(same.begin(), same.end(), one.second.panel) == same.end();
  });
  const auto here = shown();
  for (const job::Panel panel : panels()) {
    const auto* view = car->find(panel);
    if (!view || !job::pattern(car->body).find(panel) || mode() == Mode::Clean) continue;
    for (const auto& mark : view->marks) {
      bool in = mode() == Mode::Ask && holds(work_.planned()->walk().asked, mark.mark);
      if (mode() == Mode::Round)
        for (const auto& one : step()->stations)
          in = in || (one.panel == panel && holds(one.left, mark.mark));
      if (!in) continue;
      const MarkSaid& said = said_of(mark, panel);
      rows.push_back(
          {said.key, text(word_of(panel)), mark.number, said.title, said.whose, said.spoken});
      if (panel == here)
        rings.push_back({said.key, mark.number, said.spoken, said.at.x_mm, said.at.y_mm});
    }
  }
  marks_.set(std::move(rows));
  rings_.set(std::move(rings));
}

void WalkViewModel::show_areas() {
  std::vector<RoundArea> now;
  std::vector<RoundArea> next;
  const auto* planned = work_.planned();
  const auto here = shown();
  const auto* drawn = planned && here ? job::pattern(planned->car->body).find(*here) : nullptr;
  if (drawn && mode() == Mode::Round) {
    const auto add = [&](const folds::WalkStep* of, std::vector<RoundArea>& out) {
      if (!of) return;
      for (const auto& one : of->stations)
        if (one.panel == *here)
          out.push_back(
              round_area(*planned->car, planned->plan.of, one, of->round, *drawn, upright(*drawn)));
    };
    add(step(), now);
    add(step_after(), next);
  }
  areas_.set(std::move(now), std::move(next));
}

QString WalkViewModel::title() const {
  switch (mode()) {
    case Mode::Round:
      return round_title(step()->round, step()->marks);
    case Mode::Ask:
      return tr("Wipe, and look under the light");
    case Mode::Clean:
      return tr("Look over the whole panel");
    case Mode::Nothing:
      break;
  }
  return tr("Nothing to correct here");
}

QString WalkViewModel::where() const {
  if (mode() != Mode::Round) return {};
  const auto& steps = work_.planned()->walk().steps;
  return tr("round %1 of %2").arg(step() - steps.data() + 1).arg(steps.size());
}

QString WalkViewModel::minutes() const {
  return mode() == Mode::Round ? minutes_words(step()->minutes) : QString();
}

QString WalkViewModel::panel() const {
  const auto here = shown();
  return here ? text(word_of(*here)) : QString();
}

QString WalkViewModel::panelTitle() const {
  const auto here = shown();
  return here ? sentence(words_of(*here, session_.car()->body)) : QString();
}

QString WalkViewModel::panelPlace() const {
  const int row = stations_.row_of(panel());
  if (row < 0) return {};
  const QString facts = stations_.value(row, "facts").toString();
  if (stations_.count() == 1) return facts;
  return tr("panel %1 of %2").arg(row + 1).arg(stations_.count()) + dot + facts;
}

QString WalkViewModel::panelFacts() const {
  const auto* one = station();
  if (!one) return {};
  QStringList facts;
  int by_hand = 0;
  for (const auto& area : one->areas) by_hand += area.by_hand ? 1 : 0;
  if (by_hand > 0)
    facts << (by_hand == 1 ? tr("1 spot by hand: edge or body line")
                           : tr("%1 spots by hand: edge or body line").arg(by_hand));
  if (one->tape_edges) facts << tr("tape trim, gaps and sharp edges");
  if (step()->round == Round::Finish) facts << tr("no tape on this round");
  const auto* view = session_.car()->find(one->panel);
  if (view && view->plan.substrate == trade::Substrate::Plastic)
    facts << tr("plastic: small pad, slower, no wool; warm to the hand, never hot");
  return facts.join(dot);
}

QString WalkViewModel::filmWords() const {
  const auto here = shown();
  if (!here || !work_.planned() || mode() != Mode::Round) return {};
  const auto& film = work_.planned()->plan.film;
  const auto found = film.find(*here);
  return found == film.end() ? QString() : film_words(found->second, session_.units());
}

bool WalkViewModel::filmStops() const {
  const auto here = shown();
  if (!here || !work_.planned()) return false;
  const auto found = work_.planned()->plan.film.find(*here);
  return found != work_.planned()->plan.film.end() && !found->second.says(trade::FilmWord::Room);
}

QStringList WalkViewModel::todo() const {
  switch (mode()) {
    case Mode::Round: {
      const bool whole = station() && station()->whole;
      bool run = false;
      if (const auto* view = station() ? session_.car()->find(station()->panel) : nullptr)
        for (const auto& mark : view->marks)
          run = run ||
                (mark.defect == job::DefectKind::RunOrSag && holds(station()->left, mark.mark));
      return {grade_words(step()->round, whole, run),
              tool_words(step()->round, whole, session_.units()), towel_words(step()->round)};
    }
    case Mode::Ask:
      return {tr("Tap a mark that is still there, or where color or primer shows."),
              tr("A tinted towel is normal on single-stage solid color. On base and clear: stop.")};
    case Mode::Clean:
      return {tr("Side light, whole face and edges. A mark that is found now is placed as ever.")};
    case Mode::Nothing:
      break;
  }
  return {};
}

QString WalkViewModel::cleanDown() const {
  if (mode() != Mode::Round || !step_after()) return {};
  return between_words(step()->round, step_after()->round);
}

QString WalkViewModel::then() const {
  if (mode() != Mode::Round) return {};
  return step_after() ? then_words(step_after()->round, session_.units())
                      : tr("then each mark is asked: gone, or not");
}

QString WalkViewModel::mainText() const {
  switch (mode()) {
    case Mode::Round:
      return round_done(step()->round, step()->marks);
    case Mode::Ask:
      return tr("All gone: %1")
          .arg(marks_words(static_cast<int>(work_.planned()->walk().asked.size())));
    case Mode::Clean: {
      const auto done = work_.panels_done();
      if (done.size() == 1)
        return tr("Clean: %1").arg(words_of(done.front(), session_.car()->body));
      return tr("Clean: %1 panels").arg(done.size());
    }
    case Mode::Nothing:
      break;
  }
  return {};
}

QString WalkViewModel::mainSecond() const {
  if (!session_.hasPerson()) return tr("say who you are first");
  if (!tooEarly().isEmpty()) return tooEarly();
  if (mode() == Mode::Round) {
    const bool sanded = step()->round == Round::Level || step()->round == Round::Refine;
    return sanded && step_after() && step_after()->round > Round::Refine ? tr("and cleaned down")
                                                                         : QString();
  }
  if (mode() != Mode::Clean) return {};
  for (const job::Panel panel : work_.panels_done()) {
    const auto* view = session_.car()->find(panel);
    if (view && !view->plan.on_car) return tr("edges and back looked at");
  }
  return {};
}

bool WalkViewModel::mainWaits() const {
  return !session_.hasPerson() || !tooEarly().isEmpty();
}

QString WalkViewModel::tooEarly() const {
  if (mode() != Mode::Round || work_.early(*step())) return {};
  const FilmGate clock = work_.gate(*step());
  return clock.word == FilmGate::Word::Closed ? clock.words : QString();
}

QString WalkViewModel::titleOf(const QString& mark) const {
  const int row = marks_.row_of(mark);
  if (row < 0) return {};
  return marks_.value(row, "spoken").toString();
}

QString WalkViewModel::markNear(double x_mm, double y_mm, double px_per_mm) const {
  std::vector<Point_px> places;
  for (int row = 0; row < rings_.rowCount(); ++row)
    places.push_back({rings_.value(row, "xMm").toDouble() * px_per_mm,
                      rings_.value(row, "yMm").toDouble() * px_per_mm});
  const auto near = nearest(places, {x_mm * px_per_mm, y_mm * px_per_mm});
  return near ? rings_.value(static_cast<int>(*near), "key").toString() : QString();
}

QString WalkViewModel::roundWords(int round) const {
  if (round < 0 || static_cast<std::size_t>(round) >= enum_words<Round>.size()) return {};
  return sentence_of(static_cast<Round>(round));
}

void WalkViewModel::showPanel(const QString& panel) {
  chosen_ = from_word<job::Panel>(panel.toStdString());
  refresh();
}

void WalkViewModel::besidePanel(int steps) {
  const auto all = panels();
  const auto here = shown();
  if (all.empty() || !here) return;
  const auto count = static_cast<int>(all.size());
  const auto at = static_cast<int>(std::find(all.begin(), all.end(), *here) - all.begin());
  chosen_ = all[static_cast<std::size_t>(((at + steps) % count + count) % count)];
  refresh();
}

}  // namespace jambline::screens
