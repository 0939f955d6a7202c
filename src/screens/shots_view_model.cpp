#include "screens/shots_view_model.h"

#include <algorithm>

#include "folds/floor_view.h"
#include "screens/picture_words.h"
#include "screens/shot_rows.h"
#include "screens/state_kind.h"
#include "screens/words.h"

namespace jambline::screens {

using folds::ShotState;
using job::Stage;

namespace {
QString key_of(Stage stage) {
  const auto word = word_of(stage);
  return QString::fromUtf8(word.data(), static_cast<qsizetype>(word.size()));
}
}  // namespace

ShotsViewModel::ShotsViewModel(Session& session, PictureIntake& intake, QObject* parent)
    : QObject(parent),
      session_(session),
      intake_(intake),
      stages_({"key", "title", "words", "kind", "here"}, this),
      shots_({"key", "title", "stand", "view", "shape", "words", "wanted", "file", "picture"},
             this) {
  connect(&session, &Session::carOrShopChanged, this, &ShotsViewModel::refresh);
  refresh();
}

std::optional<Stage> ShotsViewModel::at() const {
  const auto* car = session_.car();
  if (!car) return std::nullopt;
  return picked_ ? picked_ : stage_to_take(*car, session_.shop());
}

QString ShotsViewModel::stage() const {
  const auto stage = at();
  return stage ? key_of(*stage) : QString();
}

QString ShotsViewModel::stageTitle() const {
  const auto stage = at();
  return stage ? sentence(words_of(*stage)) : QString();
}

void ShotsViewModel::refresh() {
  const auto* car = session_.car();
  const JobId job = car ? car->job : JobId{};
  if (job != shown_) picked_.reset();
  shown_ = job;
  missing_ = wanted_ = others_ = 0;
  next_key_ = next_title_ = next_stand_ = {};
  std::vector<QVariantList> stages;
  std::vector<QVariantList> rows;
  const auto stage = at();
  if (car)
    for (const Stage one : stages_with_shots(*car, session_.shop())) {
      const int missing = folds::missing_shots(*car, session_.shop(), one);
      stages.push_back({key_of(one), sentence(words_of(one)),
                        missing == 0 ? tr("none missing") : tr("%1 missing").arg(missing),
                        shape_of(missing == 0 ? StateKind::Done : StateKind::Unseen),
                        one == stage});
    }
  if (car && stage) {
    for (const auto& wanted :
         in_order_of_need(folds::shots_of_car(*car, session_.shop(), *stage))) {
      const bool missing = wanted.state == ShotState::Missing;
      const bool look = not_looked_at(wanted, *car, *stage) != nullptr;
      if (missing) ++missing_;
      if (wanted.shot.wanted != job::ShotWanted::AsFound) ++wanted_;
      if (missing && next_key_.isEmpty()) {
        next_key_ = screens::key_of(wanted);
        next_title_ = title_of(wanted, car->body);
        next_stand_ = words_of(wanted.shot.view);
      }
      const auto* newest = wanted.pictures.empty() ? nullptr : car->find(wanted.pictures.back());
      rows.push_back({screens::key_of(wanted), title_of(wanted, car->body),
                      words_of(wanted.shot.view), static_cast<int>(wanted.shot.view),
                      look ? shape_of(StateKind::Waits) : shape_of(wanted.state),
                      state_words(wanted, *car, *stage), missing,
                      newest ? QString::fromStdString(newest->facts.file.hex()) : QString(),
                      newest && !look ? QString::fromStdString(newest->picture.hex()) : QString()});
    }
    others_ = static_cast<int>(std::count_if(
        car->pictures.begin(), car->pictures.end(),
        [&](const auto& picture) { return picture.place.stage == *stage && !picture.place.shot; }));
  }
  stages_.set(std::move(stages));
  shots_.set(std::move(rows));
  emit changed();
}

QString ShotsViewModel::countWords() const {
  if (!at()) return tr("No pictures are wanted at the stages of this car.");
  if (wanted_ == 0) return shotCount() == 0 ? tr("none wanted") : tr("only when there is one");
  return tr("%1 of %2 taken").arg(wanted_ - missing_).arg(wanted_);
}

QString ShotsViewModel::otherWords() const {
  return others_ == 0   ? QString()
         : others_ == 1 ? tr("and 1 picture more")
                        : tr("and %1 pictures more").arg(others_);
}

QString ShotsViewModel::rowWords() const {
  const auto* car = session_.car();
  if (!car) return {};
  const auto all = car->pictures.size();
  const QString taken = all == 0 ? tr("none taken yet") : tr("%1 taken").arg(all);
  const auto next = stage_to_take(*car, session_.shop());
  const int missing = next ? folds::missing_shots(*car, session_.shop(), *next) : 0;
  return missing == 0 ? taken : tr("%1 · %2: %3 missing").arg(taken, words_of(*next)).arg(missing);
}

int ShotsViewModel::rowShape() const {
  const auto* car = session_.car();
  const auto next = car ? stage_to_take(*car, session_.shop()) : std::nullopt;
  const bool missing = next && folds::missing_shots(*car, session_.shop(), *next) > 0;
  return shape_of(missing                         ? StateKind::Unseen
                  : car && !car->pictures.empty() ? StateKind::Done
                                                  : StateKind::NotYet);
}

QString ShotsViewModel::mainText() const {
  if (!at()) return tr("Take a picture");
  return next_key_.isEmpty() ? tr("Take another picture")
                             : tr("Take the next: %1").arg(next_title_);
}

QString ShotsViewModel::mainSecond() const {
  if (!at()) return tr("none is wanted");
  return next_key_.isEmpty() ? tr("nothing is missing here") : next_stand_;
}

QString ShotsViewModel::shutWords() const {
  const auto* car = session_.car();
  if (!car) return {};
  if (car->unknown_entries > 0)
    return tr("This car has entries from a newer version. You can read it.");
  return session_.readOnly() ? tr("This device can only read now.") : QString();
}

void ShotsViewModel::choose(const QString& stage) {
  picked_ = from_word<Stage>(stage.toStdString());
  refresh();
}

void ShotsViewModel::takeIn(const QList<QUrl>& files) {
  const auto* car = session_.car();
  const auto stage = at();
  if (!car || !stage || !shutWords().isEmpty()) return;
  entries::PicturePlace place;
  place.stage = *stage;
  intake_.take_in(intake_.paths_of(files), car->job, place);
}

}  // namespace jambline::screens
