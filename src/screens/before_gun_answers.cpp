// The answers to one item before the gun, in BeforeGunViewModel.
#include "screens/air_words.h"
#include "screens/before_gun_view_model.h"
#include "screens/gun_words.h"
#include "screens/words.h"

namespace jambline::screens {

namespace {
using job::CheckClass;
using job::CutAnswer;
using job::GunItem;

constexpr int most_note_chars = 200;
}  // namespace

std::vector<BeforeGunViewModel::Choice> BeforeGunViewModel::choices(GunItem item) const {
  std::vector<Choice> out;
  if (job::is_of_now(item)) out.push_back({tr("Yes, now"), CutAnswer::Yes, {}});
  if (job::class_of(item) == CheckClass::Stop) {
    if (job::is_of_now(item)) out.push_back({tr("No: do not spray"), CutAnswer::No, {}});
    return out;
  }
  for (std::size_t i = 0; i < enum_words<job::GunReason>.size(); ++i) {
    const auto reason = static_cast<job::GunReason>(i);
    out.push_back({tr("Go on without: %1").arg(words_of(reason)), CutAnswer::No, reason});
  }
  if (said(item)) out.push_back({tr("Not answered yet"), {}, {}});
  return out;
}

QString BeforeGunViewModel::openTitle() const {
  if (!open_ || !here()) return {};
  const folds::GunScene at = scene();
  return GunWords{session_, at}.title(*open_);
}

QString BeforeGunViewModel::openWords() const {
  const auto* about = open_ && here() ? fact(*open_) : nullptr;
  if (!about) return {};
  const folds::GunScene at = scene();
  const GunWords words{session_, at};
  if (job::class_of(*open_) == CheckClass::Stop) return words.put_right(*open_);
  const QString stands = words.known(*about);
  const QString waits = tr("This is a must. The spray clock has not started.");
  return stands.isEmpty() ? waits : tr("%1. %2").arg(sentence(stands), waits);
}

QStringList BeforeGunViewModel::openAnswers() const {
  QStringList out;
  if (open_)
    for (const Choice& choice : choices(*open_)) out << choice.words;
  return out;
}

int BeforeGunViewModel::openAnswer() const {
  const Said* now = open_ ? said(*open_) : nullptr;
  if (!now) return -1;
  const auto all = choices(*open_);
  for (std::size_t i = 0; i < all.size(); ++i)
    if (all[i].answer == now->answer && all[i].reason == now->reason) return static_cast<int>(i);
  return -1;
}

bool BeforeGunViewModel::openTakesNote() const {
  return open_ && job::class_of(*open_) == CheckClass::Must;
}

QString BeforeGunViewModel::openNote() const {
  const Said* now = open_ ? said(*open_) : nullptr;
  return now ? QString::fromStdString(now->note) : QString();
}

QString BeforeGunViewModel::openWho() const {
  return tr("%1 goes on without it. The name, the reason and the note stay with the car for good.")
      .arg(session_.personName());
}

void BeforeGunViewModel::choose(int answer, const QString& note) {
  if (!open_) return;
  const auto all = choices(*open_);
  if (answer < 0 || answer >= static_cast<int>(all.size())) return;
  const Choice& choice = all[static_cast<std::size_t>(answer)];
  if (!choice.answer)
    said_.erase(*open_);
  else
    said_[*open_] = {
        *choice.answer, choice.reason,
        choice.reason ? note.trimmed().left(most_note_chars).toStdString() : std::string(),
        session_.now().since_boot_ms};
  refresh();
}

}  // namespace jambline::screens
