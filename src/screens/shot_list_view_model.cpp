#include "screens/shot_list_view_model.h"

#include <algorithm>

#include "folds/shots_of_car.h"
#include "screens/picture_words.h"
#include "screens/words.h"

namespace jambline::screens {

using job::Shot;
using job::ShotView;
using job::ShotWanted;
using job::Stage;

namespace {
QString word(Stage stage) {
  const auto out = word_of(stage);
  return QString::fromUtf8(out.data(), static_cast<qsizetype>(out.size()));
}

QString key_of(const Shot& shot) {
  return QString::fromStdString(shot.shot.hex());
}

QVariantList row_of(const Shot& shot) {
  return {key_of(shot), sentence(name_of(shot)), words_of(shot.view), static_cast<int>(shot.view),
          words_of(shot.wanted)};
}

auto with_key(const std::vector<Shot>& shots, const QString& key) {
  return std::find_if(shots.begin(), shots.end(),
                      [&](const Shot& shot) { return key_of(shot) == key; });
}
}  // namespace

ShotListViewModel::ShotListViewModel(Session& session, QObject* parent)
    : QObject(parent),
      session_(session),
      stages_({"key", "title", "words"}, this),
      shots_({"key", "title", "stand", "view", "often"}, this),
      away_({"key", "title", "stand", "view", "often"}, this) {
  connect(&session, &Session::shopChanged, this, &ShotListViewModel::refresh);
  refresh();
}

bool ShotListViewModel::manager() const {
  const auto* one = session_.shop().find(session_.person());
  return one && one->role == job::Role::Manager;
}

QString ShotListViewModel::stage() const {
  return open_ ? word(*open_) : QString();
}

QString ShotListViewModel::stageTitle() const {
  return open_ ? sentence(words_of(*open_)) : QString();
}

const std::vector<Shot>& ShotListViewModel::list() const {
  return folds::shots_of(session_.shop(), *open_);
}

void ShotListViewModel::refresh() {
  std::vector<QVariantList> stages;
  for (std::size_t i = 0; i < enum_words<Stage>.size(); ++i) {
    const auto stage = static_cast<Stage>(i);
    const auto many = folds::shots_of(session_.shop(), stage).size();
    stages.push_back({word(stage), sentence(words_of(stage)),
                      many == 0   ? tr("no pictures")
                      : many == 1 ? tr("1 shot")
                                  : tr("%1 shots").arg(many)});
  }
  std::vector<QVariantList> shots;
  std::vector<QVariantList> away;
  if (open_) {
    for (const Shot& shot : list()) shots.push_back(row_of(shot));
    for (const Shot& usual : job::usual_shots(*open_))
      if (with_key(list(), key_of(usual)) == list().end()) away.push_back(row_of(usual));
  }
  stages_.set(std::move(stages));
  shots_.set(std::move(shots));
  away_.set(std::move(away));
  emit changed();
}

QStringList ShotListViewModel::views() const {
  QStringList out;
  for (std::size_t i = 0; i < enum_words<ShotView>.size(); ++i)
    out << sentence(words_of(static_cast<ShotView>(i)));
  return out;
}

QStringList ShotListViewModel::oftens() const {
  QStringList out;
  for (std::size_t i = 0; i < enum_words<ShotWanted>.size(); ++i)
    out << sentence(words_of(static_cast<ShotWanted>(i)));
  return out;
}

void ShotListViewModel::open(const QString& stage) {
  open_ = from_word<Stage>(stage.toStdString());
  refresh();
}

void ShotListViewModel::set(std::vector<Shot> shots, bool own) {
  session_.post(acts::SetShotList{*open_, std::move(shots)},
                [this, own](const Result<engine::Wrote>& wrote) {
                  if (wrote && own) emit added();
                });
}

void ShotListViewModel::takeOut(const QString& key) {
  if (!open_) return;
  std::vector<Shot> shots = list();
  const auto found = with_key(shots, key);
  if (found == shots.end()) return;
  shots.erase(found);
  set(std::move(shots));
}

// To where it stands in the usual list, as far as its neighbours are there.
void ShotListViewModel::putBack(const QString& key) {
  if (!open_) return;
  const auto& usual = job::usual_shots(*open_);
  const auto back = with_key(usual, key);
  std::vector<Shot> shots = list();
  if (back == usual.end() || with_key(shots, key) != shots.end()) return;
  auto at = shots.begin();
  for (auto before = usual.begin(); before != back; ++before)
    if (const auto found = with_key(shots, key_of(*before)); found != shots.end())
      at = shots.begin() + (found - shots.begin()) + 1;
  shots.insert(at, *back);
  set(std::move(shots));
}

void ShotListViewModel::add(const QString& name, int view, int often) {
  if (!open_ || name.trimmed().isEmpty() || view < 0 || often < 0 ||
      view >= static_cast<int>(enum_words<ShotView>.size()) ||
      often >= static_cast<int>(enum_words<ShotWanted>.size()))
    return;
  std::vector<Shot> shots = list();
  shots.push_back({{},
                   name.trimmed().toStdString(),
                   static_cast<ShotView>(view),
                   static_cast<ShotWanted>(often)});
  set(std::move(shots), true);
}

}  // namespace jambline::screens
