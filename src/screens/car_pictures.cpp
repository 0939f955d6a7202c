// The pictures of the car on the tape, in CarViewModel.
#include "screens/car_view_model.h"
#include "screens/picture_words.h"
#include "screens/shot_rows.h"
#include "screens/words.h"

namespace jambline::screens {

using job::WithoutShots;

namespace {
constexpr int most_named = 3;
}

void CarViewModel::show_missing() {
  std::vector<QVariantList> rows;
  missing_count_ = 0;
  const auto* car = session_.car();
  const auto at = stage();
  if (car && at)
    for (const auto& wanted : folds::shots_of_car(*car, session_.shop(), *at))
      if (wanted.state == folds::ShotState::Missing && ++missing_count_ <= most_named)
        rows.push_back({key_of(wanted), title_of(wanted, car->body)});
  missing_.set(std::move(rows));
}

QString CarViewModel::stageKey() const {
  const auto at = stage();
  return at ? QString::fromStdString(std::string(word_of(*at))) : QString();
}

QString CarViewModel::missingWords() const {
  return missing_words(missingCount());
}

QString CarViewModel::missingMore() const {
  const int more = missing_count_ - missing_.rowCount();
  return more > 0 ? tr("and %1 more").arg(more) : QString();
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
