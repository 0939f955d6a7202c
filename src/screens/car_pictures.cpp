// The pictures of the car on the tape, in CarViewModel.
#include "screens/car_view_model.h"
#include "screens/picture_words.h"
#include "screens/shot_rows.h"
#include "screens/words.h"

namespace jambline::screens {

using job::WithoutShots;

void CarViewModel::show_missing() {
  std::vector<QVariantList> rows;
  const auto* car = session_.car();
  const auto at = stage();
  if (car && at)
    for (const auto& wanted : folds::shots_of_car(*car, session_.shop(), *at))
      if (wanted.state == folds::ShotState::Missing)
        rows.push_back({key_of(wanted), title_of(wanted, car->body), words_of(wanted.shot.view)});
  missing_.set(std::move(rows));
}

QString CarViewModel::missingWords() const {
  return missing_words(missingCount());
}

QString CarViewModel::nextShotWords() const {
  return missingCount() > 0 ? missing_.value(0, "title").toString() : QString();
}

QStringList CarViewModel::withoutReasons() const {
  QStringList out;
  for (const auto reason : {WithoutShots::NoCamera, WithoutShots::NotReachable,
                            WithoutShots::TakenElsewhere, WithoutShots::NotNeeded})
    out.append(sentence(words_of(reason)));
  return out;
}

void CarViewModel::finish(std::optional<WithoutShots> without) {
  const auto* car = session_.car();
  const auto at = stage();
  if (!car || !at) return;
  session_.post(acts::FinishStage{car->job, *at, true, without},
                [this](const Result<engine::Wrote>& wrote) {
                  if (!wrote) return;
                  picked_.reset();
                  refresh();
                  emit stageFinished();
                });
}

void CarViewModel::finishWithout(int reason) {
  if (mainAct() != Act::Finish || reason < 0 || reason >= withoutReasons().size()) return;
  finish(static_cast<WithoutShots>(reason));
}

}  // namespace jambline::screens
