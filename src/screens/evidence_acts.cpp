// The cause that a person sets, leaves open, changes or settles.
#include "screens/correct_words.h"
#include "screens/evidence_view_model.h"
#include "screens/words.h"

namespace jambline::screens {

using job::DirtCause;

const folds::CauseView* EvidenceViewModel::cause() const {
  const auto* car = session_.car();
  return car && car->cause ? &*car->cause : nullptr;
}

std::optional<DirtCause> EvidenceViewModel::picked() const {
  if (has_picked_) return picked_;
  if (const auto* said = cause()) return said->cause;
  if (word_ != Word::Points) return std::nullopt;
  const auto first = pointed();
  return first.empty() ? std::nullopt : std::optional(first.front());
}

bool EvidenceViewModel::disputed() const {
  return cause() && cause()->disputed;
}

QString EvidenceViewModel::setWords() const {
  const auto* said = cause();
  if (!said) return {};
  if (said->disputed) return tr("Two people say different things");
  const QString when = time_words(said->wall_ms, session_.now().wall_ms, session_.zone());
  return said->cause ? tr("%1, said by %2 %3")
                           .arg(sentence(words_of(*said->cause)), session_.name_of(said->by), when)
                     : tr("Left open by %1 %2").arg(session_.name_of(said->by), when);
}

std::vector<EvidenceViewModel::Said> EvidenceViewModel::said_by_all() const {
  std::vector<Said> out;
  const auto& lines = session_.snapshot().timeline;
  if (!disputed() || !lines) return out;
  const auto& heads = cause()->heads;
  for (const auto& entry : *lines) {
    const auto* set = entry.payload.get_if<entries::CauseSet>();
    if (!set || std::find(heads.begin(), heads.end(), entry.hash) == heads.end()) continue;
    const QString what = set->cause ? sentence(words_of(*set->cause)) : tr("Left open");
    out.push_back(
        {set->cause, tr("%1: %2, %3")
                         .arg(what, session_.name_of(entry.person),
                              time_words(entry.wall_ms, session_.now().wall_ms, session_.zone()))});
  }
  return out;
}

QStringList EvidenceViewModel::disputeWords() const {
  QStringList out;
  for (const auto& one : said_by_all()) out << one.words;
  return out;
}

EvidenceViewModel::Act EvidenceViewModel::mainAct() const {
  const auto* car = session_.car();
  if (!car || session_.readOnly() || car->unknown_entries > 0) return Act::None;
  const auto* said = cause();
  if (!said && word_ == Word::None && seen_.empty()) return Act::None;
  if (said && !said->disputed && said->cause == picked()) return Act::Back;
  return picked() ? Act::SetCause : Act::LeaveOpen;
}

QString EvidenceViewModel::mainText() const {
  switch (mainAct()) {
    case Act::SetCause:
      return cause() && !disputed() ? tr("Change the cause: %1").arg(words_of(*picked()))
                                    : tr("Set cause: %1").arg(words_of(*picked()));
    case Act::LeaveOpen:
      return tr("Leave it open");
    case Act::Back:
      return tr("Back to the car");
    case Act::None:
      break;
  }
  return {};
}

QString EvidenceViewModel::mainSecond() const {
  if (mainWaits()) return tr("say who you are first");
  switch (mainAct()) {
    case Act::SetCause:
      return tr("goes into the dirt record");
    case Act::LeaveOpen:
      return tr("or pick a cause above");
    case Act::Back:
      return picked() ? tr("cause: %1").arg(words_of(*picked())) : tr("left open");
    case Act::None:
      break;
  }
  return {};
}

bool EvidenceViewModel::mainWaits() const {
  const Act what = mainAct();
  return (what == Act::SetCause || what == Act::LeaveOpen) && !session_.hasPerson();
}

void EvidenceViewModel::pick(const QString& key) {
  const auto one = from_word<DirtCause>(key.toStdString());
  if (!one && !key.isEmpty()) return;
  const auto before = picked();
  has_picked_ = true;
  picked_ = before == one ? std::nullopt : one;
  show_causes();
  emit changed();
}

void EvidenceViewModel::say(std::optional<DirtCause> what) {
  const auto* car = session_.car();
  if (!car || mainAct() == Act::None || !session_.hasPerson()) return;
  session_.post(acts::SetCause{car->job, what}, [this](const Result<engine::Wrote>& wrote) {
    if (!wrote) return;
    has_picked_ = false;
    show_causes();
    emit changed();
  });
}

void EvidenceViewModel::act() {
  const Act what = mainAct();
  if (what == Act::Back) emit backAsked();
  if (what == Act::SetCause) say(picked());
  if (what == Act::LeaveOpen) say(std::nullopt);
}

void EvidenceViewModel::settle(int row) {
  const auto all = said_by_all();
  if (row >= 0 && row < static_cast<int>(all.size())) say(all[static_cast<std::size_t>(row)].cause);
}

}  // namespace jambline::screens
