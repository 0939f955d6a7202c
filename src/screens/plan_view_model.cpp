#include "screens/plan_view_model.h"

#include <QDateTime>
#include <QTimeZone>
#include <algorithm>
#include <cmath>
#include <set>

#include "screens/correct_words.h"
#include "screens/film_words.h"
#include "screens/round_words.h"
#include "screens/text.h"
#include "screens/typed_words.h"
#include "screens/words.h"

namespace jambline::screens {

namespace {
using job::Round;

QString plan_number(double value, int decimals) {
  return QString::number(value, 'f', decimals);
}

}  // namespace

PlanViewModel::PlanViewModel(Session& session, CorrectionWork& work, QObject* parent)
    : QObject(parent),
      session_(session),
      work_(work),
      rounds_({"key", "title", "panels", "facts", "state", "stateWords", "between", "chosen"},
              this),
      panels_({"key", "title", "facts", "film", "filmStops"}, this),
      left_out_({"key", "title", "why", "canAdd", "film"}, this),
      times_({"key", "title", "usual", "own"}, this),
      starts_({"key", "title", "start", "proved"}, this) {
  connect(&work, &CorrectionWork::changed, this, &PlanViewModel::refresh);
  connect(&session, &Session::carOrShopChanged, this, &PlanViewModel::follow);
  refresh();
}

const folds::Walk* PlanViewModel::walk() const {
  return work_.planned() ? &work_.planned()->walk() : nullptr;
}

bool PlanViewModel::here() const {
  return walk() && (!walk()->steps.empty() || !walk()->left_out.empty());
}

QString PlanViewModel::title() const {
  return work_.stage() == job::Stage::LastPolish ? tr("Last polish") : tr("Plan of the correction");
}

QString PlanViewModel::total() const {
  if (!walk() || walk()->steps.empty()) return {};
  if (!walk()->now()) return tr("all rounds are done");
  const double minutes = walk()->minutes_left();
  const double usual = work_.planned()->plan.usual.minutes_left();
  const QString words = std::lround(usual) == std::lround(minutes)
                            ? minutes_words(minutes)
                            : tr("%1 here, %2 by the usual table")
                                  .arg(minutes_words(minutes))
                                  .arg(std::max(1L, std::lround(usual)));
  return walk()->begun() ? tr("%1 left").arg(words) : words;
}

QString PlanViewModel::emptyWords() const {
  if (here()) return {};
  if (work_.refused()) return words_of(*work_.refused()).what;
  return work_.ready() ? QString() : tr("The plan is worked out.");
}

std::size_t PlanViewModel::shown_step() const {
  if (!walk() || walk()->steps.empty()) return 0;
  if (chosen_ && *chosen_ < walk()->steps.size()) return *chosen_;
  for (std::size_t i = 0; i < walk()->steps.size(); ++i)
    if (!walk()->steps[i].done) return i;
  return walk()->steps.size() - 1;
}

// The rows are of the plan, which says itself when it is another.
void PlanViewModel::follow() {
  const bool as_it_was = session_.job() == job_ && session_.units() == units_ &&
                         (session_.car() != nullptr) == has_car_;
  if (as_it_was)
    emit changed();
  else
    refresh();
}

void PlanViewModel::refresh() {
  const std::optional<JobId> job = session_.job();
  if (job != job_) {
    chosen_.reset();
    refusal_.clear();
  }
  job_ = job;
  units_ = session_.units();
  has_car_ = session_.car() != nullptr;
  if (const auto* planned = work_.planned(); planned && session_.car()) {
    show_rounds(*planned);
    show_panels(*planned);
    show_starts(*planned);
    show_areas(planned);
  } else {
    for (auto* rows : {&rounds_, &panels_, &left_out_, &times_, &starts_}) rows->set({});
    show_areas(nullptr);
  }
  emit changed();
}

void PlanViewModel::show_rounds(const CorrectionWork::Planned& planned) {
  std::vector<QVariantList> rows;
  const auto& steps = planned.walk().steps;
  const folds::WalkStep* now = planned.walk().now();
  for (std::size_t i = 0; i < steps.size(); ++i) {
    const auto& step = steps[i];
    QStringList names;
    int marks = 0;
    for (const auto& station : step.stations) {
      names << words_of(station.panel, planned.car->body);
      marks += static_cast<int>(station.marks.size());
    }
    const State state = step.done ? State::Done : &step == now ? State::Now : State::NotYet;
    QStringList facts;
    if (!step.done)
      facts << (step.areas == 1 ? tr("1 area") : tr("%1 areas").arg(step.areas))
            << minutes_words(step.minutes) << kit_words(step.pads, step.towels, step.round);
    const bool last = i + 1 == steps.size();
    rows.push_back({QString::number(i), round_title(step.round, step.done ? marks : step.marks),
                    names.join(QStringLiteral(", ")), facts.join(dot), static_cast<int>(state),
                    state == State::Done  ? tr("done")
                    : state == State::Now ? tr("next")
                                          : tr("not yet"),
                    last ? QString() : between_words(step.round, steps[i + 1].round),
                    i == shown_step()});
  }
  rounds_.set(std::move(rows));
}

void PlanViewModel::show_panels(const CorrectionWork::Planned& planned) {
  std::vector<QVariantList> rows;
  const auto film_of = [&](job::Panel panel) -> const folds::PanelFilm* {
    const auto found = planned.plan.film.find(panel);
    return found == planned.plan.film.end() ? nullptr : &found->second;
  };
  const auto film_words_of = [&](job::Panel panel) {
    const auto* film = film_of(panel);
    if (!film) return QString();
    const QString words = film_words(*film, session_.units());
    return film->says(trade::FilmWord::OneLightPass)
               ? tr("%1. One reading at its worst mark says more.").arg(words)
               : words;
  };
  const auto thin = [&](job::Panel panel) {
    const auto* film = film_of(panel);
    return film && !film->says(trade::FilmWord::Room);
  };
  for (const auto& advice : planned.plan.result.advice) {
    const auto panel = from_word<job::Panel>(advice.panel);
    const folds::PanelView* view = panel ? planned.car->find(*panel) : nullptr;
    if (!view) continue;
    QStringList facts;
    facts << tr("takes %1")
                 .arg(removal_words(advice.removal_um, advice.removal_sd_um, session_.units()));
    if (advice.whole_panel)
      facts << tr("whole panel advised: %1 % covered").arg(plan_number(advice.covered_percent, 0));
    if (view->plan.substrate == trade::Substrate::Plastic)
      facts << tr("plastic: slower, small pad, no wool; warm to the hand, never hot");
    rows.push_back({text(advice.panel), sentence(words_of(*panel, planned.car->body)),
                    facts.join(dot), film_words_of(*panel), thin(*panel)});
  }
  for (const auto& whole : planned.plan.of.whole)
    rows.push_back(
        {text(word_of(whole.panel)), sentence(words_of(whole.panel, planned.car->body)),
         tr("dirt all over: the whole panel, %1").arg(area_words(whole.area_mm2, session_.units())),
         film_words_of(whole.panel), thin(whole.panel)});
  panels_.set(std::move(rows));

  rows.clear();
  for (const auto& left : planned.walk().left_out) {
    const folds::PanelView* panel = planned.car->find(left.panel);
    if (!panel) continue;
    for (const auto& mark : panel->marks)
      if (mark.mark == left.mark)
        rows.push_back(
            {text(mark.mark.hex()),
             tr("%1 %2, %3")
                 .arg(sentence(words_of(mark.defect)))
                 .arg(mark.number)
                 .arg(words_of(left.panel, planned.car->body)),
             why_words(left.why), left.why == folds::NotPlanned::LongerRest,
             left.why == folds::NotPlanned::FilmSaysNo ? text(word_of(left.panel)) : QString()});
  }
  left_out_.set(std::move(rows));
}

void PlanViewModel::show_starts(const CorrectionWork::Planned& planned) {
  std::vector<QVariantList> rows;
  std::set<Round> used;
  for (const auto& step : planned.walk().steps) used.insert(step.round);
  for (const auto& rule : planned.plan.of.plan.rounds) {
    if (used.count(rule.round) == 0) continue;
    QString own = tr("own minutes are shown from ten areas on");
    for (const auto& time : work_.lessons().times)
      if (time.round == rule.round && time.shown())
        own = tr("%1 min an area here, mean of %2")
                  .arg(plan_number(time.work_min / time.areas, 1))
                  .arg(time.areas);
    double usual_min = 0;
    std::size_t areas = 0;
    for (const auto& step : planned.plan.usual.steps)
      for (const auto& station : step.stations) {
        if (step.round != rule.round || station.whole) continue;
        usual_min += station.minutes;
        areas += station.areas.size();
      }
    const QString usual =
        areas > 0
            ? tr("%1 min an area by the usual table")
                  .arg(plan_number(usual_min / static_cast<double>(areas), 1))
            : tr("%1 min on %2 square by the usual table")
                  .arg(plan_number(rule.min_per_area, 1), length_words(300, session_.units()));
    rows.push_back({text(word_of(rule.round)), sentence_of(rule.round), usual, own});
  }
  times_.set(std::move(rows));

  rows.clear();
  std::set<job::DefectKind> kinds;
  for (const auto& step : planned.walk().steps)
    for (const auto& station : step.stations)
      if (const auto* panel = planned.car->find(station.panel); panel && !station.whole)
        for (const auto& mark : panel->marks)
          if (std::find(station.marks.begin(), station.marks.end(), mark.mark) !=
              station.marks.end())
            if (kinds.insert(mark.defect).second) {
              const auto proved = work_.choice().proved_start.find(mark.defect);
              const bool is_proved = proved != work_.choice().proved_start.end();
              rows.push_back(
                  {text(word_of(mark.defect)), sentence(words_of(mark.defect)),
                   is_proved
                       ? tr("starts at %1, proved on a test spot").arg(words_of(proved->second))
                       : tr("starts at %1, the usual one").arg(words_of(step.round)),
                   is_proved});
            }
  starts_.set(std::move(rows));
}

void PlanViewModel::show_areas(const CorrectionWork::Planned* planned) {
  std::vector<RoundArea> now;
  if (planned && !planned->walk().steps.empty()) {
    const auto& step = planned->walk().steps[shown_step()];
    const job::CarPattern& pattern = job::pattern(planned->car->body);
    for (const auto& station : step.stations)
      if (const auto* drawn = pattern.find(station.panel))
        now.push_back(
            round_area(*planned->car, planned->plan.of, station, step.round, *drawn, drawn->place));
  }
  areas_.set(std::move(now), {});
}

QString PlanViewModel::mapWords() const {
  if (!walk() || walk()->steps.empty()) return {};
  return tr("areas to scale: %1").arg(words_of(walk()->steps[shown_step()].round));
}

void PlanViewModel::opened() {
  session_.engine().want_lessons();
}

QStringList PlanViewModel::learned() const {
  QStringList out;
  if (!walk()) return out;
  const auto& lessons = work_.lessons();
  for (const auto& one : lessons.returns)
    if (one.shown())
      out << tr("%1: %2 of %3 came back here")
                 .arg(sentence(words_of(one.defect)))
                 .arg(one.came_back)
                 .arg(one.ended);
  for (const auto& one : lessons.sequences) {
    if (!one.shown()) continue;
    QStringList rounds;
    double usual_um = 0;
    double sum_um = 0;
    for (const Round round : one.rounds) {
      rounds << words_of(round);
      for (const auto& rule : trade::usual_rounds())
        if (rule.round == round) usual_um += rule.removal_um;
    }
    for (const double taken_um : one.taken_um) sum_um += taken_um;
    out << tr("%1: took %2 \u00b5m here, mean of %3 readings; usual table %4 \u00b5m")
               .arg(sentence(rounds.join(QStringLiteral(", "))),
                    plan_number(sum_um / static_cast<double>(one.taken_um.size()), 1))
               .arg(one.taken_um.size())
               .arg(plan_number(usual_um, 1));
  }
  if (out.isEmpty())
    out << tr("What came back and what whole sequences took is shown from ten on.");
  return out;
}

QStringList PlanViewModel::advice() const {
  QStringList out;
  if (!walk() || walk()->steps.empty()) return out;
  out << tr("The mildest start that takes it out, proved on one test spot; then coarse to fine.")
      << tr("Fresh low-tack tape on trim, rubber, gaps and sharp edges for compounding. No tape "
            "for "
            "finishing.")
      << tr("Pads stay off edges and body lines: those by hand, finest only.");
  if (work_.stage() == job::Stage::LastPolish)
    out << tr("No wax, sealant, coating or wrap before the time on the product sheet.");
  out << tr("Minutes, grades and removal are common practice. The product sheet wins.");
  return out;
}

QStringList PlanViewModel::earlyReasons() const {
  return {tr("the sheet in hand says so"), tr("a test spot was firm and cool"),
          tr("this panel is painted again anyway"), tr("the manager decided")};
}

QString PlanViewModel::sandWords() const {
  switch (const FilmGate clock = work_.gate(); clock.word) {
    case FilmGate::Word::Open:
      return tr("By the cure clock: its time has come on these panels");
    case FilmGate::Word::Closed:
      return work_.early(*walk()->now()) ? tr("Before its time, with a reason. %1").arg(clock.words)
                                         : clock.words;
    case FilmGate::Word::NoClock:
      break;
  }
  switch (work_.sand()) {
    case CorrectionWork::Sand::NotSaid:
      return tr("From when it may be sanded: not said yet");
    case CorrectionWork::Sand::SheetAllows:
      return tr("Sand from: the sheet says it may be cut now");
    case CorrectionWork::Sand::From:
      break;
  }
  return tr("Sand from %1")
      .arg(time_words(work_.sand_from_ms(), session_.now().wall_ms, session_.zone()));
}

QString PlanViewModel::mainText() const {
  const auto* car = session_.car();
  if (!car || session_.readOnly() || car->unknown_entries > 0 || car->delivered_ms) return {};
  const auto* now = walk() ? walk()->now() : nullptr;
  if (now) {
    const QString round = now->marks == 0
                              ? tr("%1, whole panel").arg(words_of(now->round))
                              : tr("%1 %2").arg(words_of(now->round), marks_words(now->marks));
    return walk()->begun() ? tr("Go on: %1").arg(round) : tr("Start: %1").arg(round);
  }
  if (walk() && !walk()->asked.empty())
    return tr("Say what is gone: %1").arg(marks_words(static_cast<int>(walk()->asked.size())));
  const auto done = work_.panels_done();
  if (done.empty()) return {};
  return done.size() == 1 ? tr("Say what is clean: 1 panel")
                          : tr("Say what is clean: %1 panels").arg(done.size());
}

QString PlanViewModel::mainSecond() const {
  if (!session_.hasPerson()) return tr("say who you are first");
  if (!walk() || !walk()->now()) return {};
  return minutes_words(walk()->minutes_left());
}

bool PlanViewModel::mainWaits() const {
  return !session_.hasPerson();
}

void PlanViewModel::chooseRound(int row) {
  if (!walk() || row < 0 || static_cast<std::size_t>(row) >= walk()->steps.size()) return;
  chosen_ = static_cast<std::size_t>(row);
  refresh();
}

QString PlanViewModel::roundWords(int round) const {
  if (round < 0 || static_cast<std::size_t>(round) >= enum_words<Round>.size()) return {};
  return words_of(static_cast<Round>(round));
}

void PlanViewModel::proveStart(const QString& kind, int round) {
  const auto defect = from_word<job::DefectKind>(kind.toStdString());
  if (!defect || round >= static_cast<int>(enum_words<Round>.size())) return;
  work_.prove_start(*defect,
                    round < 0 ? std::nullopt : std::optional<Round>(static_cast<Round>(round)));
}

bool PlanViewModel::sayFrom(const QString& typed, bool tomorrow) {
  const auto time = typed_time(typed);
  if (!time) {
    refusal_ = tr("That is no time: %1. Type it as 14:30.").arg(typed.trimmed());
    emit changed();
    emit refused();
    return false;
  }
  const QTimeZone zone(session_.zone().toLatin1());
  const QDate today =
      QDateTime::fromMSecsSinceEpoch(session_.now().wall_ms, zone).date().addDays(tomorrow ? 1 : 0);
  refusal_.clear();
  work_.sand_from(QDateTime(today, *time, zone).toMSecsSinceEpoch());
  return true;
}

void PlanViewModel::saySheetAllows() {
  refusal_.clear();
  work_.sheet_allows();
}

// The reason stands in the time line before anything is cut.
void PlanViewModel::sayEarly(int reason) {
  const auto* car = session_.car();
  const QStringList all = earlyReasons();
  if (!car || !walk() || !walk()->now() || reason < 0 || reason >= all.size()) return;
  const QString note =
      tr("Cut before its time. %1. Reason: %2.").arg(work_.gate().words, all[reason]);
  session_.post(acts::WriteNote{car->job, note.toStdString()},
                [this](const Result<engine::Wrote>& wrote) {
                  if (!wrote || !walk() || !walk()->now()) return;
                  refusal_.clear();
                  work_.say_early(*walk()->now());
                  begin();
                });
}

void PlanViewModel::begin() {
  const auto* car = session_.car();
  if (mainText().isEmpty() || !car) return;
  if (!session_.hasPerson()) {
    emit whoAsked();
    return;
  }
  refusal_.clear();
  if (walk() && walk()->now()) {
    if (byClock() && !work_.may_begin()) {
      refusal_ = tr("Not yet. %1.").arg(work_.gate().words);
      emit changed();
      emit refused();
      emit earlyAsked();
      return;
    }
    if (!byClock() && work_.sand() == CorrectionWork::Sand::NotSaid) {
      emit changed();
      emit sandAsked();
      return;
    }
    if (!work_.may_begin()) {
      refusal_ =
          tr("Not yet. Sand from %1.")
              .arg(time_words(work_.sand_from_ms(), session_.now().wall_ms, session_.zone()));
      emit changed();
      emit refused();
      return;
    }
    const auto* answered = car->before_cut_of(session_.person());
    if (!answered || answered->disputed) {
      emit beforeCutAsked();
      return;
    }
    if (const auto* what = work_.operation()) {
      bool runs = false;
      for (const auto& one : car->running)
        runs = runs ||
               (one.person == session_.person() && !one.paused && one.operation == what->operation);
      if (!runs) session_.post(acts::StartClock{session_.person(), car->job, what->operation});
    }
  }
  emit changed();
  emit walkAsked();
}

}  // namespace jambline::screens
