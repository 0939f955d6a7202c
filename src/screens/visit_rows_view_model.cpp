#include "screens/visit_rows_view_model.h"

#include <algorithm>

#include "screens/state_kind.h"
#include "screens/this_visit.h"
#include "screens/words.h"

namespace jambline::screens {

namespace {
using job::Stage;

bool planned(const folds::CarView& car, Stage stage) {
  return std::any_of(car.stages.begin(), car.stages.end(),
                     [&](const auto& one) { return one.stage == stage; });
}

// Nothing up to the correction is left to do.
bool nearly_done(const folds::CarView& car) {
  return std::all_of(car.stages.begin(), car.stages.end(),
                     [](const auto& one) { return one.done || one.stage > Stage::Correct; });
}
}  // namespace

VisitRowsViewModel::VisitRowsViewModel(Session& session, CheckInViewModel& check_in,
                                       WalkAroundViewModel& walk_around, QObject* parent)
    : QObject(parent),
      session_(session),
      check_in_(check_in),
      walk_around_(walk_around),
      rows_({"key", "title", "words", "shape", "alarm"}, this) {
  connect(&session, &Session::snapshotChanged, this, &VisitRowsViewModel::show);
  connect(&check_in, &CheckInViewModel::changed, this, &VisitRowsViewModel::show);
  connect(&walk_around, &WalkAroundViewModel::changed, this, &VisitRowsViewModel::show);
  show();
}

QString VisitRowsViewModel::comeback_words(const folds::CarView& car) const {
  const auto& one = car.visit.comebacks.back();
  QStringList out{QString::fromStdString(one.complaint)};
  if (one.panel) out << words_of(*one.panel, car.body);
  if (!one.who_pays.empty()) out << tr("paid by %1").arg(QString::fromStdString(one.who_pays));
  out << tr("came %1").arg(time_words(one.wall_ms, session_.now().wall_ms, session_.zone()));
  // The delivery before it stands in the time line.
  if (const auto& lines = session_.snapshot().timeline) {
    const entries::Entry* delivery = nullptr;
    for (const auto& entry : *lines)
      if (entry.payload.is<entries::CarDelivered>() && entry.wall_ms <= one.wall_ms &&
          (!delivery || entry.wall_ms > delivery->wall_ms))
        delivery = &entry;
    if (delivery)
      out << tr("delivered %1")
                 .arg(time_words(delivery->wall_ms, session_.now().wall_ms, session_.zone()));
  }
  return out.join(QStringLiteral(" · "));
}

void VisitRowsViewModel::show() {
  std::vector<QVariantList> rows;
  const auto add = [&](Row row, const QString& title, const QString& words, StateKind shape) {
    rows.push_back({static_cast<int>(row), title, words, shape_of(shape), false});
  };
  if (const auto* car = session_.car()) {
    if (!car->visit.comebacks.empty())
      add(Comeback, car->visit.open_comeback() ? tr("Came back") : tr("Came back once, done"),
          comeback_words(*car), car->visit.open_comeback() ? StateKind::Waits : StateKind::Done);
    if (planned(*car, Stage::CheckIn) || checked_in(*car)) {
      const QString said = check_in_.rowWords();
      const QString by = check_in_.signedWords();
      add(CheckIn, tr("Check-in"),
          said.isEmpty() ? tr("nothing said yet")
          : by.isEmpty() ? tr("%1 · not signed").arg(said)
                         : tr("%1 · %2").arg(said, by),
          said.isEmpty() ? StateKind::NotYet : StateKind::Done);
    }
    if (!car->delivered_ms && nearly_done(*car) && walk_around_.ready())
      add(WalkAround, tr("Walk-around"), walk_around_.pointsWords(),
          walk_around_.pointCount() == 0 ? StateKind::Done : StateKind::NotYet);
    if (car->delivered_ms)
      add(HandOver, tr("Hand-over note"), tr("for the customer: shown, or saved as a PDF"),
          StateKind::None);
  }
  rows_.set(std::move(rows));
}

void VisitRowsViewModel::ask(int row) {
  switch (row) {
    case CheckIn:
      return emit checkInAsked();
    case WalkAround:
      return emit walkAroundAsked();
    case HandOver:
      return emit handOverAsked();
    case Comeback:
      return emit timeLineAsked();
    default:
      return;
  }
}

}  // namespace jambline::screens
