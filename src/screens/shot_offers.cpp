// Pictures of files and of a watched folder, in ShotViewModel.
#include <QFileInfo>

#include "screens/shot_view_model.h"

namespace jambline::screens {

void ShotViewModel::offer(const QList<QUrl>& files) {
  if (!writable()) return;
  for (const QString& path : intake_.paths_of(files))
    offers_.push_back({path, job::PictureFrom::File});
  next_offer();
  emit changed();
}

void ShotViewModel::next_offer() {
  if (step_ != Step::Aim || offers_.empty() || !writable()) return;
  const Offer next = std::move(offers_.front());
  offers_.pop_front();
  waiting_ = target_;
  step_ = Step::Busy;
  intake_.look_at_file(next.path, next.from, [this, next](Result<Judged> answer) {
    if (!answer) {
      intake_.refuse(next.path, answer.error());
      let_go();
      next_offer();
      emit changed();
      return;
    }
    judged(std::move(answer));
  });
}

void ShotViewModel::keepAllOffered() {
  if (step_ != Step::Offered || !judged_ || !session_.car()) return;
  QStringList files{judged_->path};
  for (const Offer& one : offers_) files.append(one.path);
  const auto from = judged_->from;
  const auto place = target_.place;
  const auto job = target_.job;
  offers_.clear();
  let_go();
  intake_.take_in(files, job, place, from);
  emit changed();
}

int ShotViewModel::offerCount() const {
  return static_cast<int>(offers_.size()) + (step_ == Step::Offered ? 1 : 0);
}

QString ShotViewModel::offerWords() const {
  if (step_ != Step::Offered || !judged_) return {};
  const QString name = QFileInfo(judged_->path).fileName();
  return offers_.empty() ? name : tr("%1, and %2 more").arg(name).arg(offers_.size());
}

void ShotViewModel::watch(const QUrl& folder) {
  const QStringList paths = intake_.paths_of({folder});
  if (paths.isEmpty()) return;
  folder_gone_ = false;
  folder_.watch(paths.first());
  emit changed();
}

void ShotViewModel::stopWatching() {
  folder_.stop();
  emit changed();
}

void ShotViewModel::offerAll() {
  folder_.offer_all();
}

QString ShotViewModel::watchWords() const {
  if (!watching()) return {};
  const QFileInfo folder(folder_.folder());
  const QString name = folder.fileName().isEmpty() ? folder.filePath() : folder.fileName();
  return folder_gone_ ? tr("%1 is gone. Put the card back.").arg(name)
                      : tr("New pictures in %1 are offered here.").arg(name);
}

}  // namespace jambline::screens
