#include "screens/shot_rows.h"

#include <QCoreApplication>
#include <algorithm>
#include <set>

#include "folds/floor_view.h"
#include "screens/picture_words.h"
#include "screens/state_kind.h"
#include "screens/words.h"

namespace jambline::screens {

using folds::ShotState;
using folds::WantedShot;

namespace {
QString shot_tr(const char* text) {
  return QCoreApplication::translate("words", text);
}

int need(const WantedShot& wanted) {
  switch (wanted.state) {
    case ShotState::Missing:
      return 0;
    case ShotState::KeptThoughPoor:
      return 1;
    case ShotState::Offered:
      return 2;
    case ShotState::Taken:
      break;
  }
  return 3;
}
}  // namespace

QString key_of(const WantedShot& wanted) {
  QString out = QString::fromStdString(wanted.shot.shot.hex());
  if (wanted.panel) out += QStringLiteral("/p%1").arg(static_cast<int>(*wanted.panel));
  if (wanted.mark) out += QStringLiteral("/m%1").arg(static_cast<int>(*wanted.mark));
  return out;
}

QString title_of(const WantedShot& wanted, job::BodyShape body) {
  const QString name = name_of(wanted.shot);
  if (wanted.panel) return sentence(shot_tr("%1, %2").arg(words_of(*wanted.panel, body), name));
  if (wanted.mark) return sentence(shot_tr("%1, %2").arg(words_of(*wanted.mark), name));
  return sentence(name);
}

bool asks_edges(const WantedShot& wanted, job::Stage stage) {
  return stage == job::Stage::EdgesAndJambs && wanted.panel &&
         (wanted.shot.view == job::ShotView::AlongEdge || wanted.shot.view == job::ShotView::Jamb);
}

const folds::PictureView* not_looked_at(const WantedShot& wanted, const folds::CarView& car,
                                        job::Stage stage) {
  if (!asks_edges(wanted, stage)) return nullptr;
  for (auto at = wanted.pictures.rbegin(); at != wanted.pictures.rend(); ++at) {
    const auto* picture = car.find(*at);
    if (picture && !picture->edges) return picture;
  }
  return nullptr;
}

QString state_words(const WantedShot& wanted, const folds::CarView& car, job::Stage stage) {
  if (not_looked_at(wanted, car, stage)) return shot_tr("edges not looked at yet");
  const auto many = wanted.pictures.size();
  switch (wanted.state) {
    case ShotState::Missing:
      return shot_tr("missing");
    case ShotState::KeptThoughPoor:
      return shot_tr("poor, kept anyway");
    case ShotState::Offered:
      return shot_tr("when there is one");
    case ShotState::Taken:
      break;
  }
  return many > 1 ? shot_tr("taken, %1").arg(many) : shot_tr("taken");
}

int shape_of(ShotState state) {
  switch (state) {
    case ShotState::Missing:
      return shape_of(StateKind::Unseen);
    case ShotState::KeptThoughPoor:
      return shape_of(StateKind::Waits);
    case ShotState::Offered:
      return shape_of(StateKind::NotYet);
    case ShotState::Taken:
      break;
  }
  return shape_of(StateKind::Done);
}

std::vector<WantedShot> in_order_of_need(std::vector<WantedShot> shots) {
  std::stable_sort(shots.begin(), shots.end(), [](const WantedShot& left, const WantedShot& right) {
    return need(left) < need(right);
  });
  return shots;
}

const WantedShot* next_missing(const std::vector<WantedShot>& shots) {
  const auto found = std::find_if(shots.begin(), shots.end(), [](const WantedShot& wanted) {
    return wanted.state == ShotState::Missing;
  });
  return found == shots.end() ? nullptr : &*found;
}

std::vector<job::Stage> stages_with_shots(const folds::CarView& car, const folds::ShopView& shop) {
  std::set<job::Stage> out;
  for (const auto& one : car.stages)
    if (!folds::shots_of(shop, one.stage).empty()) out.insert(one.stage);
  for (const auto& picture : car.pictures) out.insert(picture.place.stage);
  return {out.begin(), out.end()};
}

std::optional<job::Stage> stage_to_take(const folds::CarView& car, const folds::ShopView& shop) {
  const auto stages = stages_with_shots(car, shop);
  if (stages.empty()) return std::nullopt;
  const auto next = folds::floor_row(car).next_stage;
  if (next && std::find(stages.begin(), stages.end(), *next) != stages.end()) return next;
  for (const auto stage : stages)
    if (folds::missing_shots(car, shop, stage) > 0) return stage;
  return stages.front();
}

job::Stage stage_of_free_picture(const folds::CarView& car, const folds::ShopView& shop) {
  if (const auto stage = stage_to_take(car, shop)) return *stage;
  return folds::floor_row(car).next_stage.value_or(job::Stage::CheckIn);
}

QString missing_words(int missing) {
  return missing == 0   ? QString()
         : missing == 1 ? shot_tr("1 picture is missing")
                        : shot_tr("%1 pictures are missing").arg(missing);
}

}  // namespace jambline::screens
