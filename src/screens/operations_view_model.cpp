#include "screens/operations_view_model.h"

#include <algorithm>
#include <cmath>

#include "acts/work_template.h"
#include "base/spans.h"
#include "folds/open_points.h"
#include "folds/shots_of_car.h"
#include "screens/shot_rows.h"
#include "screens/state_kind.h"
#include "screens/text.h"
#include "screens/units.h"
#include "screens/visit_words.h"
#include "screens/words.h"

namespace jambline::screens {

namespace {
using folds::OpenPointKind;
using job::Approval;
using job::Stage;
using job::WorkKind;

constexpr double most_hours = 1000;  // as acts/ allows it

QString key_of(const folds::OperationView& operation) {
  return text(operation.operation.hex());
}
QString title_of(Stage stage, const std::string& title) {
  return sentence(title.empty() ? words_of(stage) : text(title));
}

QString heading_of(WorkKind work) {
  switch (work) {
    case WorkKind::FirstTime:
      return OperationsViewModel::tr("First-time work");
    case WorkKind::Supplement:
      return OperationsViewModel::tr("Supplements");
    case WorkKind::Redo:
      return OperationsViewModel::tr("Redo, its hours kept apart");
    case WorkKind::Comeback:
      return OperationsViewModel::tr("Came back, its hours kept apart");
  }
  return {};
}

// What a point of the whole car has to do with one stage; common practice, no source.
bool belongs(const folds::OpenPoint& point, Stage stage) {
  switch (point.kind) {
    case OpenPointKind::PanelNotClean:
      return stage == Stage::Inspect || stage == Stage::Correct;
    case OpenPointKind::PartNotHere:
      return stage == Stage::Assemble;
    case OpenPointKind::SubletNotBack:
      return stage == Stage::Glass || stage == Stage::SensorsAndScan;
    case OpenPointKind::ApprovalOpen:
      return point.stage == stage;
    case OpenPointKind::LatchNotChecked:
      return stage == Stage::Assemble || stage == Stage::Fit;
    case OpenPointKind::StageOpen:
    case OpenPointKind::ShotsMissing:
      return false;
  }
  return false;
}
}  // namespace

OperationsViewModel::OperationsViewModel(Session& session, QObject* parent)
    : Form(session, parent),
      rows_({"key", "heading", "title", "stage", "hours", "stands", "shape", "why", "file",
             "isOpen", "missing", "canFinish", "canReopen", "canAsk", "canAnswer"},
            this),
      templates_({"key", "title", "words"}, this),
      stages_({"key", "title", "chosen"}, this) {
  connect(&session, &Session::snapshotChanged, this, &OperationsViewModel::refresh);
  refresh();
}

bool OperationsViewModel::writable() const {
  const auto* car = session().car();
  return car && !session().readOnly() && car->unknown_entries == 0 && !car->delivered_ms;
}

const folds::OperationView* OperationsViewModel::operation(const QString& key) const {
  if (const auto* car = session().car())
    for (const auto& one : car->operations)
      if (key_of(one) == key) return &one;
  return nullptr;
}

QString OperationsViewModel::missing(const folds::OperationView& operation) const {
  const auto* car = session().car();
  QStringList out;
  if (const int shots = folds::missing_shots(*car, session().shop(), operation.stage); shots > 0)
    out << missing_words(shots);
  int panels = 0;
  for (const auto& point : folds::open_points(*car, session().shop(), session().now())) {
    if (!belongs(point, operation.stage)) continue;
    if (point.kind == OpenPointKind::PanelNotClean)
      ++panels;
    else if (point.kind == OpenPointKind::PartNotHere)
      out << tr("not here: %1").arg(text(point.name));
    else if (point.kind == OpenPointKind::SubletNotBack)
      out << tr("not back: %1").arg(text(point.name));
    else if (point.kind == OpenPointKind::LatchNotChecked)
      out << words_of(job::Step::LatchAndCatchChecked);
    else
      out << tr("an approval is open");
  }
  if (panels > 0)
    out.prepend(panels == 1 ? tr("1 panel not clean") : tr("%1 panels not clean").arg(panels));
  return out.isEmpty() ? tr("Nothing is missing at this stage.")
                       : tr("Still missing: %1").arg(out.join(tr(", ")));
}

QVariantList OperationsViewModel::row_of(const folds::OperationView& one,
                                         const QString& heading) const {
  const auto* car = session().car();
  QStringList at_it;
  bool paused = true;
  for (const auto& running : car->running) {
    if (running.operation != one.operation) continue;
    paused = paused && running.paused;
    at_it << session().name_of(running.person);
  }
  QString stands;
  StateKind shape = StateKind::NotYet;
  if (one.done) {
    shape = StateKind::Done;
    stands = one.done_by ? tr("done by %1").arg(session().name_of(*one.done_by)) : tr("done");
  } else if (one.approval == Approval::Refused) {
    shape = StateKind::Must;
    stands = tr("approval refused");
  } else if (one.approval == Approval::Asked) {
    shape = StateKind::Waits;
    stands = tr("approval asked");
  } else if (!at_it.isEmpty()) {
    shape = paused ? StateKind::Paused : StateKind::Running;
    stands = paused ? tr("paused: %1").arg(at_it.join(tr(", ")))
                    : tr("running: %1").arg(at_it.join(tr(", ")));
  } else {
    stands = tr("not yet");
  }
  if (one.approval == Approval::Given) stands = tr("%1, approval given").arg(stands);
  const QString used = hours_words(one.clocked_ms);
  const QString hours = one.estimate_min == 0
                            ? used
                            : tr("%1 of %2").arg(used, hours_words(one.estimate_min * minute_ms));
  const auto* picture = one.picture ? car->find(*one.picture) : nullptr;
  const bool is_open = key_of(one) == open_;
  const bool asks = one.work == WorkKind::Supplement && !one.done &&
                    (one.approval == Approval::NotNeeded || one.approval == Approval::Refused);
  return {key_of(one),
          heading,
          title_of(one.stage, one.title),
          sentence(words_of(one.stage)),
          hours,
          stands,
          shape_of(shape),
          text(one.why),
          picture ? text(picture->facts.file.hex()) : QString(),
          is_open,
          is_open && !one.done ? missing(one) : QString(),
          is_open && writable() && !one.done,
          is_open && writable() && one.done,
          is_open && writable() && asks,
          is_open && writable() && is_manager() && one.approval == Approval::Asked};
}

void OperationsViewModel::refresh() {
  const auto* car = session().car();
  const auto job = car ? std::optional(car->job) : std::nullopt;
  if (job != job_) {
    open_.clear();
    pictures_before_.reset();
    draft_ = {};
    adding_ = false;
  }
  job_ = job;
  std::vector<QVariantList> rows;
  if (car) {
    take_new_picture();
    for (std::size_t i = 0; i < enum_words<WorkKind>.size(); ++i) {
      QString heading = heading_of(static_cast<WorkKind>(i));
      for (const auto& one : car->operations) {
        if (one.work != static_cast<WorkKind>(i)) continue;
        rows.push_back(row_of(one, heading));
        heading.clear();
      }
    }
    count_up(*car);
  }
  rows_.set(std::move(rows));
  show_templates();
  show_stages();
  emit changed();
  emit formChanged();
}

void OperationsViewModel::count_up(const folds::CarView& car) {
  int done = 0, asked = 0, refused = 0;
  std::int64_t clocked_ms = 0, planned_ms = 0;
  for (const auto& one : car.operations) {
    done += one.done ? 1 : 0;
    asked += !one.done && one.approval == Approval::Asked ? 1 : 0;
    refused += !one.done && one.approval == Approval::Refused ? 1 : 0;
    clocked_ms += one.clocked_ms;
    planned_ms += one.estimate_min * minute_ms;
  }
  const auto all = static_cast<int>(car.operations.size());
  const QString hours = planned_ms > 0
                            ? tr("%1 of %2").arg(hours_words(clocked_ms), hours_words(planned_ms))
                            : hours_words(clocked_ms);
  sum_words_ = tr("%1 of %2 done \u00b7 %3").arg(done).arg(all).arg(hours);
  QStringList words{tr("%1 of %2 done").arg(done).arg(all)};
  if (asked > 0)
    words << (asked == 1 ? tr("1 approval is open") : tr("%1 approvals are open").arg(asked));
  if (refused > 0) words << tr("%n refused", nullptr, refused);
  row_words_ = words.join(QStringLiteral(" \u00b7 "));
  row_shape_ = shape_of(refused > 0              ? StateKind::Must
                        : asked > 0              ? StateKind::Waits
                        : all > 0 && done == all ? StateKind::Done
                                                 : StateKind::NotYet);
}

// The usual work on these panels that the car does not have yet.
void OperationsViewModel::show_templates() {
  std::vector<QVariantList> rows;
  if (const auto* car = session().car()) {
    std::vector<job::PanelPlan> panels;
    for (const auto& panel : car->panels) panels.push_back(panel.plan);
    for (const auto& one : acts::operations_of(panels)) {
      const bool there = std::any_of(car->operations.begin(), car->operations.end(),
                                     [&](const auto& known) { return known.stage == one.stage; });
      if (there) continue;
      rows.push_back({text(word_of(one.stage)), title_of(one.stage, one.title),
                      hours_words(one.estimate_min * minute_ms)});
    }
  }
  templates_.set(std::move(rows));
}

void OperationsViewModel::show_stages() {
  std::vector<QVariantList> rows;
  const auto* car = session().car();
  for (std::size_t i = 0; car && i < enum_words<Stage>.size(); ++i) {
    const auto stage = static_cast<Stage>(i);
    const bool planned = std::any_of(car->stages.begin(), car->stages.end(),
                                     [&](const auto& one) { return one.stage == stage; });
    const bool chosen = stage_chosen_ && draft_.stage == stage;
    if (!planned && !chosen && !all_stages_ && !car->stages.empty()) continue;
    rows.push_back({text(word_of(stage)), sentence(words_of(stage)), chosen});
  }
  stages_.set(std::move(rows));
}

void OperationsViewModel::open(const QString& key) {
  open_ = open_ == key ? QString() : key;
  refresh();
}

void OperationsViewModel::finish(const QString& key) {
  if (const auto* one = operation(key))
    session().post(acts::FinishOperation{session().car()->job, one->operation, true});
}

void OperationsViewModel::reopen(const QString& key) {
  if (const auto* one = operation(key))
    session().post(acts::FinishOperation{session().car()->job, one->operation, false});
}

void OperationsViewModel::askApproval(const QString& key) {
  if (const auto* one = operation(key))
    session().post(acts::AnswerSupplement{session().car()->job, one->operation, Approval::Asked});
}

void OperationsViewModel::answer(const QString& key, bool given) {
  if (const auto* one = operation(key))
    session().post(acts::AnswerSupplement{session().car()->job, one->operation,
                                          given ? Approval::Given : Approval::Refused});
}

QStringList OperationsViewModel::kinds() const {
  QStringList out{tr("First time"), tr("Supplement"), tr("Redo")};
  const auto* car = session().car();
  if (car && car->visit.open_comeback()) out << tr("Comeback");
  return out;
}

QStringList OperationsViewModel::reasons() const {
  switch (draft_.work) {
    case WorkKind::Supplement:
      return {tr("hidden damage"), tr("part bent"), tr("part missing"), tr("corrosion found"),
              tr("more paint work")};
    case WorkKind::Redo:
      return {tr("run or sag"),     tr("dirt"),           tr("color is off"),
              tr("burned through"), tr("scratched here"), tr("does not fit")};
    case WorkKind::FirstTime:
    case WorkKind::Comeback:
      break;
  }
  return {};
}

QString OperationsViewModel::stage() const {
  return stage_chosen_ ? text(word_of(draft_.stage)) : QString();
}

QString OperationsViewModel::pictureFile() const {
  const auto* car = session().car();
  const auto* picture = car && draft_.picture ? car->find(*draft_.picture) : nullptr;
  return picture ? text(picture->facts.file.hex()) : QString();
}

void OperationsViewModel::startAdding() {
  nothingWrong();
  draft_ = {};
  stage_chosen_ = false;
  all_stages_ = false;
  hours_.clear();
  pictures_before_.reset();
  adding_ = true;
  show_stages();
  emit formChanged();
}

void OperationsViewModel::stopAdding() {
  adding_ = false;
  pictures_before_.reset();
  emit formChanged();
}

void OperationsViewModel::setKind(int kind) {
  if (kind < 0 || kind >= kinds().size()) return;
  draft_.work = static_cast<WorkKind>(kind);
  draft_.why.clear();
  draft_.approval = draft_.work == WorkKind::Supplement ? Approval::Asked : Approval::NotNeeded;
  nothingWrong();
  emit formChanged();
}

void OperationsViewModel::setAllStages(bool all) {
  all_stages_ = all;
  show_stages();
  emit formChanged();
}

void OperationsViewModel::chooseStage(const QString& word) {
  const auto stage = from_word<Stage>(word.toStdString());
  if (!stage) return;
  draft_.stage = *stage;
  stage_chosen_ = true;
  nothingWrong();
  show_stages();
  emit formChanged();
}

void OperationsViewModel::setTitle(const QString& title) {
  draft_.title = title.toStdString();
  nothingWrong();
  emit formChanged();
}

void OperationsViewModel::setHours(const QString& hours) {
  hours_ = hours;
  nothingWrong();
  emit formChanged();
}

void OperationsViewModel::setWhy(const QString& why) {
  draft_.why = why.toStdString();
  nothingWrong();
  emit formChanged();
}

void OperationsViewModel::setAsksApproval(bool asks) {
  draft_.approval = asks ? Approval::Asked : Approval::NotNeeded;
  emit formChanged();
}

void OperationsViewModel::willTakePicture() {
  pictures_before_.emplace();
  if (const auto* car = session().car())
    for (const auto& one : car->pictures) pictures_before_->insert(one.picture);
}

void OperationsViewModel::take_new_picture() {
  if (!pictures_before_ || !adding_) return;
  for (const auto& one : session().car()->pictures) {
    if (pictures_before_->count(one.picture) > 0) continue;
    draft_.picture = one.picture;
    pictures_before_.reset();
    return;
  }
}

void OperationsViewModel::dropPicture() {
  draft_.picture.reset();
  emit formChanged();
}

void OperationsViewModel::addTemplate(const QString& key) {
  const auto* car = session().car();
  if (!car) return;
  std::vector<job::PanelPlan> panels;
  for (const auto& panel : car->panels) panels.push_back(panel.plan);
  for (const auto& one : acts::operations_of(panels))
    if (text(word_of(one.stage)) == key) session().post(acts::PlanOperation{car->job, one});
}

void OperationsViewModel::keep() {
  const auto* car = session().car();
  if (!car) return;
  nothingWrong();
  if (!stage_chosen_) refuse(QStringLiteral("stage"), tr("Say which stage it belongs to."));
  acts::PlannedOperation said = draft_;
  said.title = QString::fromStdString(draft_.title).trimmed().toStdString();
  if (!hours_.trimmed().isEmpty())
    if (const auto typed = number(QStringLiteral("hours"), hours_, 0, most_hours)) {
      said.estimate_min = static_cast<int>(std::lround(*typed * 60));
      if (said.estimate_min == 0)
        refuse(QStringLiteral("hours"), tr("0 hours are no estimate. Leave it empty."));
    }
  if (!reasons().isEmpty() && QString::fromStdString(draft_.why).trimmed().isEmpty())
    refuse(QStringLiteral("why"), tr("Say why it came on top."));
  if (refused()) return;
  session().post(acts::PlanOperation{car->job, std::move(said)},
                 [this](const Result<engine::Wrote>& wrote) {
                   if (!wrote) return;
                   stopAdding();
                   emit kept();
                 });
}

}  // namespace jambline::screens
