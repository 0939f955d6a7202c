#include "screens/walk_around_view_model.h"

#include <algorithm>

#include "folds/shots_of_car.h"
#include "screens/cure_words.h"
#include "screens/open_point_words.h"
#include "screens/signature_item.h"
#include "screens/spans.h"
#include "screens/state_kind.h"
#include "screens/text.h"
#include "screens/this_visit.h"
#include "screens/visit_words.h"
#include "screens/words.h"

namespace jambline::screens {

namespace {
using folds::OpenPointKind;
using job::Stage;
using job::Step;

WalkAroundViewModel::Leads leads_of(OpenPointKind kind) {
  using Leads = WalkAroundViewModel::Leads;
  switch (kind) {
    case OpenPointKind::PanelNotClean:
      return Leads::Panel;
    case OpenPointKind::StageOpen:
    case OpenPointKind::ApprovalOpen:
      return Leads::Stage;
    case OpenPointKind::ShotsMissing:
      return Leads::Shots;
    case OpenPointKind::PartNotHere:
    case OpenPointKind::SubletNotBack:
      return Leads::Parts;
    case OpenPointKind::LatchNotChecked:
      return Leads::Here;
  }
  return Leads::Nowhere;
}
}  // namespace

WalkAroundViewModel::WalkAroundViewModel(Session& session, QObject* parent)
    : QObject(parent),
      session_(session),
      points_({"key", "words", "act", "leads", "where", "shape"}, this),
      steps_({"key", "title", "words", "shape", "act"}, this),
      rules_({"key", "title", "words", "why", "shape", "act", "step"}, this) {
  connect(&session, &Session::snapshotChanged, this, &WalkAroundViewModel::follow);
  connect(&session, &Session::secondPassed, this, [this] {
    if (car_ && ++seconds_ % work_out_every_s == 0) work_out();
  });
  follow();
}

void WalkAroundViewModel::follow() {
  const auto car = session_.car() ? session_.snapshot().car : nullptr;
  const auto shop = session_.snapshot().shop;
  const bool another = !car || !car_ || car->job != car_->job;
  const bool same = car == car_ && shop == shop_;
  car_ = car;
  shop_ = shop;
  if (another) {
    looked_.reset();
    reason_ = -1;
  }
  if (!same) work_out();
  show();
}

void WalkAroundViewModel::work_out() {
  const std::uint64_t number = ++asked_;
  if (!car_) return;
  session_.calculate(
      this,
      [this, number, now = session_.now(), car = car_, shop = shop_]() -> std::function<void()> {
        auto out = std::make_shared<Looked>();
        out->points = folds::open_points(*car, *shop, now);
        out->steps = folds::steps_of_car(*car, *shop, now);
        out->rules = folds::in_the_way(*car, *shop, Step::Delivery, now);
        out->do_not_drive = folds::do_not_drive(*car, *shop, now);
        return [this, number, out] {
          if (number != asked_) return;
          looked_ = out;
          show();
        };
      });
}

void WalkAroundViewModel::show() {
  if (looked_ && car_) {
    show_points(*car_);
    show_steps(*car_);
    show_rules();
    if (!asksReason()) reason_ = -1;
  } else {
    points_.set({});
    steps_.set({});
    rules_.set({});
  }
  emit changed();
}

void WalkAroundViewModel::show_points(const folds::CarView& car) {
  std::vector<QVariantList> rows;
  for (const auto& point : looked_->points) {
    const Leads leads = leads_of(point.kind);
    const QString where = leads == Leads::Here ? text(word_of(Step::LatchAndCatchChecked))
                          : point.panel        ? text(word_of(*point.panel))
                          : point.stage        ? text(word_of(*point.stage))
                                               : QString();
    const QString key = QStringLiteral("%1 %2 %3 %4")
                            .arg(static_cast<int>(point.kind))
                            .arg(where, text(point.name))
                            .arg(rows.size());
    const bool here = leads == Leads::Here;
    rows.push_back({key, words_of(point, car.body),
                    here && writable() ? tr("Checked now") : QString(), static_cast<int>(leads),
                    where, shape_of(here ? StateKind::Must : StateKind::NotYet)});
  }
  points_.set(std::move(rows));
}

const folds::StepOfCar* WalkAroundViewModel::step(Step wanted) const {
  for (const auto& one : looked_->steps)
    if (one.step == wanted) return &one;
  return nullptr;
}

QVariantList WalkAroundViewModel::step_row(const folds::StepOfCar& step,
                                           const QString& title) const {
  const auto* said = car_->assembly.find(step.step);
  const auto when = [&](std::int64_t wall_ms) {
    return time_words(wall_ms, session_.now().wall_ms, session_.zone());
  };
  QString words;
  if (step.done && said && said->done)
    words = tr("done, %1, %2").arg(session_.name_of(said->by), when(said->wall_ms));
  else if (step.done)
    words = tr("done");
  else if (step.until_ms)
    words = tr("not before %1").arg(when(*step.until_ms));
  else
    words = step.step == Step::FilmWashSafe || step.step == Step::FilmInWindow ? tr("not said yet")
                                                                               : tr("not done");
  const bool tapped = !step.done && !step.by_itself && writable();
  return {text(word_of(step.step)), title, words,
          shape_of(step.done       ? StateKind::Done
                   : step.until_ms ? StateKind::Waits
                                   : StateKind::NotYet),
          !tapped                           ? QString()
          : step.step == Step::FilmWashSafe ? tr("The sheet allows it")
          : step.step == Step::FilmInWindow ? tr("The sheet allows it")
                                            : tr("Done")};
}

void WalkAroundViewModel::show_steps(const folds::CarView& car) {
  std::vector<QVariantList> rows;
  for (const auto& stage : car.stages) {
    if (stage.stage != Stage::EdgesAndJambs) continue;
    const int missing = folds::missing_shots(car, *shop_, stage.stage);
    const QString pictures = missing == 0   ? tr("all pictures taken")
                             : missing == 1 ? tr("1 picture missing")
                                            : tr("%1 pictures missing").arg(missing);
    rows.push_back({text(word_of(stage.stage)), sentence(words_of(stage.stage)),
                    tr("%1 · %2").arg(stage.done ? tr("done") : tr("not done"), pictures),
                    shape_of(stage.done && missing == 0 ? StateKind::Done : StateKind::NotYet),
                    QString()});
  }
  // What the film has to allow is asked only as long as it was not done.
  for (const auto& [film, work] : {std::pair(Step::FilmInWindow, Step::LastPolish),
                                   std::pair(Step::FilmWashSafe, Step::FinalWash)}) {
    const auto* after = step(work);
    const auto* before = step(film);
    if (before && after && !after->done)
      rows.push_back(step_row(*before, sentence(words_of(film))));
    if (after) rows.push_back(step_row(*after, sentence(words_of(work))));
  }
  steps_.set(std::move(rows));
}

void WalkAroundViewModel::show_rules() {
  std::vector<QVariantList> rows;
  for (const auto& rule : looked_->rules) {
    const auto* before = step(rule.said.before);
    if (!before) continue;
    QVariantList row = step_row(*before, sentence(words_of(rule.said.before)));
    const bool hard = rule.said.kind != job::RuleKind::Soft;
    rows.push_back({text(rule.rule.hex()), row[1], row[2],
                    tr("%1: %2").arg(words_of(rule.said.kind), text(rule.said.why)),
                    shape_of(hard ? StateKind::Must : StateKind::Waits), row[4], row[0]});
  }
  rules_.set(std::move(rows));
}

bool WalkAroundViewModel::writable() const {
  return may_be_written(car_.get(), session_.readOnly());
}

QString WalkAroundViewModel::pointsWords() const {
  return looked_ ? open_points_words(static_cast<int>(looked_->points.size())) : QString();
}

const folds::RuleInTheWay* WalkAroundViewModel::no_way_round() const {
  for (const auto& rule : looked_->rules)
    if (rule.said.kind == job::RuleKind::NoOverride) return &rule;
  return nullptr;
}

bool WalkAroundViewModel::asksReason() const {
  return looked_ && writable() && !no_way_round() &&
         std::any_of(looked_->rules.begin(), looked_->rules.end(),
                     [](const auto& one) { return one.said.kind != job::RuleKind::Soft; });
}

QStringList WalkAroundViewModel::reasons() const {
  QStringList out;
  for (std::size_t i = 0; i < enum_words<job::RuleReason>.size(); ++i)
    out << sentence(words_of(static_cast<job::RuleReason>(i)));
  return out;
}

bool WalkAroundViewModel::signed_enough() const {
  const auto* one = signature_for(*car_, job::SignedFor::Delivery);
  return one && one->open_points >= static_cast<int>(looked_->points.size());
}

bool WalkAroundViewModel::asksSignature() const {
  return looked_ && writable() && !signed_enough();
}

QString WalkAroundViewModel::signedWords() const {
  const auto* one = car_ ? signature_for(*car_, job::SignedFor::Delivery) : nullptr;
  if (!one) return {};
  const QString when = time_words(one->wall_ms, session_.now().wall_ms, session_.zone());
  const QString by = tr("Signed by %1, %2").arg(QString::fromStdString(one->signer), when);
  return one->open_points == 0 ? by : tr("%1, for %2").arg(by, open_points_words(one->open_points));
}

int WalkAroundViewModel::signedShape() const {
  if (!looked_ || !car_) return shape_of(StateKind::None);
  if (signed_enough()) return shape_of(StateKind::Done);
  return shape_of(looked_->points.empty() ? StateKind::NotYet : StateKind::Must);
}

// In the customer's words; what only the shop can look after is counted.
QStringList WalkAroundViewModel::statement() const {
  if (!looked_ || !car_) return {};
  QStringList out{tr("I take the car back.")};
  QStringList known;
  for (const auto& point : looked_->points)
    if (const QString words = customer_words(point, car_->body); !words.isEmpty()) known << words;
  if (!known.isEmpty()) out << tr("These points are open, and I know of them:") << known;
  const auto own = static_cast<qsizetype>(looked_->points.size()) - known.size();
  if (own > 0 && known.isEmpty())
    out << (own == 1 ? tr("1 open point is the shop's own: pictures or an approval.")
                     : tr("%1 open points are the shop's own: pictures, approvals.").arg(own));
  else if (own > 0)
    out << (own == 1 ? tr("1 more is the shop's own: pictures or an approval.")
                     : tr("%1 more are the shop's own: pictures, approvals.").arg(own));
  return out;
}

bool WalkAroundViewModel::mayDeliver() const {
  return writable();
}

WalkAroundViewModel::Wait WalkAroundViewModel::waitsFor() const {
  if (!writable()) return Wait::Nothing;
  if (!looked_) return Wait::Numbers;
  if (!session_.hasPerson()) return Wait::Person;
  if (looked_->do_not_drive) return Wait::Glass;
  if (std::any_of(car_->panels.begin(), car_->panels.end(),
                  [](const auto& one) { return one.disputed; }))
    return Wait::Dispute;
  if (no_way_round()) return Wait::NoWayRound;
  if (asksReason() && reason_ < 0) return Wait::Reason;
  return !looked_->points.empty() && !signed_enough() ? Wait::Signature : Wait::Nothing;
}

QString WalkAroundViewModel::mainText() const {
  return tr("Deliver");
}

QString WalkAroundViewModel::mainSecond() const {
  switch (waitsFor()) {
    case Wait::Numbers:
      return tr("the car is being looked through");
    case Wait::Person:
      return tr("say who you are first");
    case Wait::Glass:
      return do_not_drive_words(looked_->do_not_drive, session_.now().wall_ms, session_.zone());
    case Wait::Dispute:
      return tr("two answers on one panel: settle it first");
    case Wait::NoWayRound:
      return tr("not before: %1").arg(words_of(no_way_round()->said.before));
    case Wait::Reason:
      for (const auto& rule : looked_->rules)
        if (rule.said.kind != job::RuleKind::Soft)
          return tr("first: %1, or say why not").arg(words_of(rule.said.before));
      return {};
    case Wait::Signature:
      return tr("%1 to close, or to be signed for").arg(pointsWords());
    case Wait::Nothing:
      break;
  }
  if (!looked_) return {};
  return looked_->points.empty() ? tr("no open points") : tr("%1, signed for").arg(pointsWords());
}

void WalkAroundViewModel::sayDone(const QString& step_word) {
  const auto which = from_word<Step>(step_word.toStdString());
  if (which && writable()) session_.post(acts::SayStep{car_->job, *which, true});
}

void WalkAroundViewModel::sayReason(int row) {
  reason_ = row == reason_ ? -1 : row;
  emit changed();
}

void WalkAroundViewModel::sign(const QVariantList& strokes, const QString& signer) {
  if (!writable()) return;
  session_.post(acts::Sign{car_->job, job::SignedFor::Delivery, signer.trimmed().toStdString(),
                           strokes_drawn(strokes)},
                [this](const Result<engine::Wrote>& wrote) {
                  if (wrote) emit signatureKept();
                });
}

void WalkAroundViewModel::deliver() {
  if (!writable() || waitsFor() != Wait::Nothing) return;
  std::optional<job::RuleReason> reason;
  if (asksReason() && reason_ >= 0) reason = static_cast<job::RuleReason>(reason_);
  session_.post(acts::Deliver{car_->job, reason}, [this](const Result<engine::Wrote>& wrote) {
    if (wrote) emit delivered();
  });
}

}  // namespace jambline::screens
