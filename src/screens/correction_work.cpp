#include "screens/correction_work.h"

#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <algorithm>

#include "screens/air_words.h"
#include "screens/text.h"
#include "screens/words.h"

namespace jambline::screens {

namespace {
std::string form_of(const JobId& job) {
  return "correction " + job.hex();
}
}  // namespace

CorrectionWork::CorrectionWork(Session& session, QObject* parent)
    : QObject(parent), session_(session), asked_(std::make_shared<std::atomic<std::uint64_t>>(0)) {
  connect(&session, &Session::carOrShopChanged, this, &CorrectionWork::follow);
  follow();
}

void CorrectionWork::follow_cure(CureWork& cure) {
  cure_ = &cure;
  connect(&cure, &CureWork::changed, this, &CorrectionWork::changed);
}

trade::CureMilestone CorrectionWork::milestone_of(const folds::WalkStep& step) const {
  if (step.round == job::Round::Level || step.round == job::Round::Refine)
    return trade::CureMilestone::SandFrom;
  return stage() == job::Stage::LastPolish ? trade::CureMilestone::LastPolish
                                           : trade::CureMilestone::PolishFrom;
}

// A sheet that does not know the milestone may know its neighbor.
FilmGate CorrectionWork::gate(const folds::WalkStep& step) const {
  const auto* car = session_.car();
  if (!cure_ || !car) return {};
  std::vector<job::Panel> panels;
  for (const auto& station : step.stations)
    if (!station.done) panels.push_back(station.panel);
  const CureSeen seen{cure_->at(), session_.zone(), session_.units()};
  FilmGate out;
  for (const auto milestone :
       {milestone_of(step), trade::CureMilestone::PolishFrom, trade::CureMilestone::SandFrom}) {
    if (out.word != FilmGate::Word::NoClock) break;
    out = film_gate(cure_->cures(), *car, panels, milestone, seen);
    if (out.word == FilmGate::Word::Closed)
      out.words = tr("%1, %2").arg(sentence(words_of(milestone)), out.words);
  }
  return out;
}

FilmGate CorrectionWork::gate() const {
  const auto* now = planned() ? planned()->walk().now() : nullptr;
  return now ? gate(*now) : FilmGate{};
}

QString CorrectionWork::stage_words(job::Stage stage) const {
  const auto* car = session_.car();
  if (!cure_ || !car) return {};
  trade::CureMilestone milestone{};
  switch (stage) {
    case job::Stage::Unmask:
      milestone = trade::CureMilestone::PullTape;
      break;
    case job::Stage::Assemble:
      milestone = trade::CureMilestone::Assemble;
      break;
    case job::Stage::LastPolish:
      milestone = trade::CureMilestone::LastPolish;
      break;
    default:
      return {};
  }
  std::vector<job::Panel> panels;
  for (const auto& panel : car->panels) panels.push_back(panel.plan.panel);
  const CureSeen seen{cure_->at(), session_.zone(), session_.units()};
  const FilmGate out = film_gate(cure_->cures(), *car, panels, milestone, seen);
  return out.word == FilmGate::Word::Closed ? out.words : QString();
}

QString CorrectionWork::window_words() const {
  const auto* car = session_.car();
  if (!cure_ || !car || !planned()) return {};
  const CureSeen seen{cure_->at(), session_.zone(), session_.units()};
  QStringList out;
  std::set<job::Panel> panels;
  for (const auto& step : planned()->walk().steps)
    for (const auto& station : step.stations) panels.insert(station.panel);
  std::set<const folds::CureOfGroup*> told;
  for (const auto panel : panels) {
    const auto at = folds::standing_of(cure_->cures(), panel, trade::CureMilestone::PolishUntil);
    if (!at.standing || !told.insert(at.group).second) continue;
    out << tr("%1, polish %2")
               .arg(sentence(words_of(at.group->group)),
                    standing_words(*at.group, *at.standing, seen).words);
  }
  return out.join(QChar('\n'));
}

bool CorrectionWork::early(const folds::WalkStep& step) const {
  return early_.count(milestone_of(step)) > 0;
}

void CorrectionWork::say_early(const folds::WalkStep& step) {
  early_.insert(milestone_of(step));
  keep();
  emit changed();
}

job::Stage CorrectionWork::stage() const {
  if (const auto* car = session_.car())
    for (const auto& one : car->stages)
      if (one.stage == job::Stage::Assemble && one.done) return job::Stage::LastPolish;
  return job::Stage::Correct;
}

const folds::OperationView* CorrectionWork::operation() const {
  const auto* car = session_.car();
  if (!car) return nullptr;
  const folds::OperationView* first = nullptr;
  for (const auto& one : car->operations) {
    if (one.stage != stage()) continue;
    for (const auto& running : car->running)
      if (running.person == session_.person() && running.operation == one.operation) return &one;
    if (!first) first = &one;
  }
  return first;
}

std::vector<job::Panel> CorrectionWork::panels_done() const {
  std::vector<job::Panel> out;
  const auto* car = session_.car();
  if (!car || !ready()) return out;
  const auto still_worked_on = [&](job::Panel panel) {
    if (!planned()) return false;
    for (const auto& one : planned()->walk().steps)
      for (const auto& station : one.stations)
        if (station.panel == panel && !station.done) return true;
    return false;
  };
  for (const auto& panel : car->panels)
    if (panel.verdict == job::Verdict::ToCorrect && !panel.disputed && panel.open_marks() == 0 &&
        !panel.rounds.empty() && !still_worked_on(panel.plan.panel))
      out.push_back(panel.plan.panel);
  return out;
}

void CorrectionWork::follow() {
  const auto* shown = session_.car();
  const auto car = shown ? session_.snapshot().car : nullptr;
  const std::optional<JobId> job = car ? std::optional(car->job) : std::nullopt;
  if (job != job_) {
    job_ = job;
    planned_.reset();
    read_kept();
  }
  const auto lessons = session_.snapshot().lessons;
  const bool learned = lessons && lessons.get() != lessons_seen_;
  if (learned) {
    lessons_seen_ = lessons.get();
    auto next = folds::shop_lessons(*lessons);
    if (next == lessons_ && car == car_) return;
    lessons_ = std::move(next);
  }
  if (car == car_ && !learned) return;
  car_ = car;
  plan();
}

void CorrectionWork::plan() {
  const std::uint64_t number = ++*asked_;
  if (!car_) {
    waiting_ = false;
    planned_.reset();
    refused_.reset();
    emit changed();
    return;
  }
  waiting_ = true;
  choice_.stage = stage();
  session_.calculate(this,
                     [this, number, newest = asked_, car = car_, lessons = lessons_,
                      choice = choice_]() -> std::function<void()> {
                       if (*newest != number) return [] {};
                       auto out = std::make_shared<Planned>();
                       std::optional<Error> refused;
                       out->car = car;
                       if (auto plan = folds::planned_car(*car, lessons, choice))
                         out->plan = std::move(*plan);
                       else
                         refused = plan.error();
                       return [this, number, out, refused] {
                         if (number != *asked_) return;
                         waiting_ = false;
                         refused_ = refused;
                         planned_ = refused ? nullptr : out;
                         emit changed();
                       };
                     });
}

void CorrectionWork::choose_anew() {
  keep();
  plan();
  emit changed();
}

void CorrectionWork::go_by_panel(bool by_panel) {
  if (choice_.one_panel_at_a_time == by_panel) return;
  choice_.one_panel_at_a_time = by_panel;
  choose_anew();
}

void CorrectionWork::say_heavy_film_is_hard(bool hard) {
  if (choice_.heavy_film_is_hard == hard) return;
  choice_.heavy_film_is_hard = hard;
  choose_anew();
}

void CorrectionWork::prove_start(job::DefectKind kind, std::optional<job::Round> start) {
  if (start)
    choice_.proved_start[kind] = *start;
  else
    choice_.proved_start.erase(kind);
  choose_anew();
}

bool CorrectionWork::may_begin() const {
  const auto* now = planned() ? planned()->walk().now() : nullptr;
  if (const FilmGate clock = gate(); now && clock.word != FilmGate::Word::NoClock)
    return clock.word == FilmGate::Word::Open || early(*now);
  return sand_ == Sand::SheetAllows ||
         (sand_ == Sand::From && sand_from_ms_ <= session_.now().wall_ms);
}

void CorrectionWork::sheet_allows() {
  sand_ = Sand::SheetAllows;
  keep();
  emit changed();
}

void CorrectionWork::sand_from(std::int64_t wall_ms) {
  sand_ = Sand::From;
  sand_from_ms_ = wall_ms;
  keep();
  emit changed();
}

void CorrectionWork::ask_sand_again() {
  sand_ = Sand::NotSaid;
  keep();
  emit changed();
}

void CorrectionWork::keep() const {
  if (!job_) return;
  QJsonObject proved;
  for (const auto& [kind, round] : choice_.proved_start)
    proved.insert(text(word_of(kind)), text(word_of(round)));
  QJsonArray early;
  for (const auto milestone : early_) early.append(text(word_of(milestone)));
  const QJsonObject kept{{QStringLiteral("by_panel"), choice_.one_panel_at_a_time},
                         {QStringLiteral("hard"), choice_.heavy_film_is_hard},
                         {QStringLiteral("proved"), proved},
                         {QStringLiteral("early"), early},
                         {QStringLiteral("sand"), static_cast<int>(sand_)},
                         {QStringLiteral("sand_from_ms"), static_cast<double>(sand_from_ms_)}};
  session_.engine().keep_draft(form_of(*job_),
                               QJsonDocument(kept).toJson(QJsonDocument::Compact).toStdString());
}

void CorrectionWork::read_kept() {
  choice_ = {};
  sand_ = Sand::NotSaid;
  sand_from_ms_ = 0;
  early_.clear();
  if (!job_) return;
  const std::string draft = session_.engine().draft(form_of(*job_));
  const QJsonObject kept = QJsonDocument::fromJson(QByteArray::fromStdString(draft)).object();
  choice_.one_panel_at_a_time = kept.value(QStringLiteral("by_panel")).toBool();
  choice_.heavy_film_is_hard = kept.value(QStringLiteral("hard")).toBool();
  const int sand = kept.value(QStringLiteral("sand")).toInt();
  if (sand >= 0 && sand <= static_cast<int>(Sand::From)) sand_ = static_cast<Sand>(sand);
  sand_from_ms_ = static_cast<std::int64_t>(kept.value(QStringLiteral("sand_from_ms")).toDouble());
  for (const auto& one : kept.value(QStringLiteral("early")).toArray())
    if (const auto word = from_word<trade::CureMilestone>(one.toString().toStdString()))
      early_.insert(*word);
  const QJsonObject proved = kept.value(QStringLiteral("proved")).toObject();
  for (auto one = proved.begin(); one != proved.end(); ++one) {
    const auto kind = from_word<job::DefectKind>(one.key().toStdString());
    const auto round = from_word<job::Round>(one.value().toString().toStdString());
    if (kind && round) choice_.proved_start[*kind] = *round;
  }
}

}  // namespace jambline::screens
