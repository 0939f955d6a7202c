// What the screen of a shot says, in ShotViewModel.
#include <algorithm>

#include "picture/photo_limits.h"
#include "screens/picture_words.h"
#include "screens/shot_rows.h"
#include "screens/shot_view_model.h"
#include "screens/words.h"

namespace jambline::screens {

using device::Camera;
using folds::ShotState;

QString ShotViewModel::title() const {
  return shown().title;
}

QString ShotViewModel::stand() const {
  return shown().stand;
}

int ShotViewModel::view() const {
  return shown().view;
}

QString ShotViewModel::countWords() const {
  int all = 0;
  int at = 0;
  for (const auto& wanted : list_) {
    if (wanted.shot.wanted == job::ShotWanted::AsFound) continue;
    ++all;
    if (key_of(wanted) == shown().key) at = all;
  }
  return at == 0 ? QString() : tr("%1 of %2").arg(at).arg(all);
}

bool ShotViewModel::live() const {
  const auto state = camera_.state();
  return front_ && (state == Camera::State::Ready || state == Camera::State::Starting ||
                    state == Camera::State::Taking);
}

QString ShotViewModel::troubleWhat() const {
  if (!session_.car()) return {};
  if (!writable())
    return session_.readOnly() ? tr("This device can only read now.")
                               : tr("This car has entries from a newer version. You can read it.");
  const auto state = camera_.state();
  if (state != Camera::State::NoCamera && state != Camera::State::Stalled &&
      state != Camera::State::Failed)
    return {};
  if (const auto why = camera_.trouble()) return words_of(*why).what;
  return state == Camera::State::NoCamera ? tr("There is no camera on this device.")
                                          : tr("The camera gives no picture.");
}

QString ShotViewModel::troubleKept() const {
  int all = 0;
  int missing = 0;
  for (const auto& wanted : list_) {
    if (wanted.shot.wanted == job::ShotWanted::AsFound) continue;
    ++all;
    if (wanted.state == ShotState::Missing) ++missing;
  }
  return all == 0 ? tr("All pictures that were kept are here.")
                  : tr("%1 of %2 pictures are saved.").arg(all - missing).arg(all);
}

bool ShotViewModel::canRestart() const {
  const auto state = camera_.state();
  return writable() && (state == Camera::State::Stalled || state == Camera::State::Failed);
}

QString ShotViewModel::judgedWord() const {
  return judged_ ? sentence(words_of(judged_->seen.judgement.word)) : QString();
}

QString ShotViewModel::judgedAdvice() const {
  return judged_ ? advice_of(judged_->seen.judgement.word) : QString();
}

void ShotViewModel::show_measures() {
  std::vector<QVariantList> rows;
  if (judged_) {
    const auto& seen = judged_->seen;
    const auto part = [](double value, double limit) { return std::min(1.0, value / (2 * limit)); };
    const bool blurred = seen.judgement.word == trade::PhotoWord::Blurred;
    const double sharp = part(seen.judgement.sharpness, picture::least_sharpness);
    const double light = seen.judgement.mean;
    const bool bright = seen.judgement.word == trade::PhotoWord::TooBright;
    const double light_limit = bright ? picture::most_mean : picture::least_mean;
    const int side = std::max(seen.width_px, seen.height_px);
    const auto spoken = [](const QString& name, bool out) {
      return out ? tr("%1, not enough").arg(name) : tr("%1, enough").arg(name);
    };
    const auto add = [&](const char* key, const QString& name, double value, double limit,
                         bool out) {
      rows.push_back({QLatin1String(key), name, value, limit, out, spoken(name, out)});
    };
    add("sharp", tr("sharp"), blurred ? std::min(sharp, 0.45) : sharp, 0.5, blurred || sharp < 0.5);
    if (seen.judgement.word == trade::PhotoWord::Clipped)
      add("clipped", tr("black or white"),
          part(seen.judgement.clipped_percent, picture::most_clipped_percent), 0.5, true);
    else
      add("light", tr("light"), light / 255, light_limit / 255,
          light < picture::least_mean || light > picture::most_mean);
    add("size", tr("size"), part(side, picture::least_long_side_px), 0.5,
        side < picture::least_long_side_px);
  }
  measures_.set(std::move(rows));
}

ShotViewModel::Main ShotViewModel::mainAct() const {
  switch (step_) {
    case Step::Busy:
      return Main::Wait;
    case Step::Poor:
      return Main::Again;
    case Step::Unsaved:
      return Main::Save;
    case Step::Edges:
      return finds_.empty() ? Main::Clean : Main::KeepFinds;
    case Step::Offered:
      return judgedGood() ? Main::Keep : Main::Leave;
    case Step::Aim:
      break;
  }
  if (!writable()) return Main::Wait;
  if (!troubleWhat().isEmpty()) return Main::Files;
  return camera_.state() == Camera::State::Ready ? Main::Shutter : Main::Wait;
}

QString ShotViewModel::mainText() const {
  switch (mainAct()) {
    case Main::Shutter:
      return tr("Take the picture");
    case Main::Files:
      return tr("Take from files");
    case Main::Again:
      return tr("Take again");
    case Main::Save:
      return tr("Save it again");
    case Main::Clean:
      return tr("Clean, next");
    case Main::KeepFinds:
      return finds_.size() == 1 ? tr("Keep 1 find, next")
                                : tr("Keep %1 finds, next").arg(finds_.size());
    case Main::Keep:
      return tr("Keep it");
    case Main::Leave:
      return tr("Leave it");
    case Main::Wait:
      break;
  }
  return tr("Take the picture");
}

QString ShotViewModel::mainSecond() const {
  switch (mainAct()) {
    case Main::Wait:
      return step_ == Step::Busy ? tr("one moment")
             : !writable()       ? tr("nothing can be kept now")
                                 : tr("the camera is starting");
    case Main::Keep:
      return tr("for: %1").arg(target_.title);
    case Main::Save:
      return tr("it was not saved yet");
    case Main::Leave:
      return tr("the file stays where it is");
    default:
      return {};
  }
}

}  // namespace jambline::screens
