#include "screens/wait_view_model.h"

#include <QCoreApplication>
#include <algorithm>

#include "base/spans.h"
#include "screens/typed_times.h"
#include "screens/visit_words.h"
#include "screens/words.h"

namespace jambline::screens {

namespace {
constexpr int morning_min = 8 * 60;  // common practice, no source

QString key_of(job::WaitReason reason) {
  const auto word = word_of(reason);
  return QString::fromUtf8(word.data(), static_cast<qsizetype>(word.size()));
}

std::optional<job::WaitReason> reason_of(const QString& key) {
  return from_word<job::WaitReason>(key.toStdString());
}
}  // namespace

QString wait_span_words(const folds::WaitView& wait, std::int64_t now_ms, const QString& zone) {
  const QString since = time_words(wait.start_ms, now_ms, zone);
  if (wait.end_ms)
    return WaitViewModel::tr("%1 to %2").arg(since, time_words(*wait.end_ms, now_ms, zone));
  return wait.expected_ms ? WaitViewModel::tr("since %1, expected %2")
                                .arg(since, time_words(*wait.expected_ms, now_ms, zone))
                          : WaitViewModel::tr("since %1").arg(since);
}

WaitViewModel::WaitViewModel(Session& session, QObject* parent)
    : Form(session, parent),
      waits_({"key", "title", "words", "isLate", "isOpen", "spoken"}, this),
      reasons_({"key", "title", "waits"}, this) {
  connect(&session, &Session::snapshotChanged, this, &WaitViewModel::refresh);
  refresh();
}

void WaitViewModel::refresh() {
  const auto* car = session().car();
  const std::int64_t now_ms = session().now().wall_ms;
  const QString zone = session().zone();
  std::vector<QVariantList> open, reasons;
  QStringList before;
  if (car) {
    const auto& waits_for = car->visit.waits_for;
    const auto waits = [&](job::WaitReason reason) {
      return std::find(waits_for.begin(), waits_for.end(), reason) != waits_for.end();
    };
    if (open_ && !waits(*open_)) open_.reset();
    for (const auto& wait : car->visit.waits) {
      const QString title = tr("Waits for %1").arg(words_of(wait.reason));
      const QString words = wait_span_words(wait, now_ms, zone);
      if (wait.end_ms || !waits(wait.reason)) {
        before << tr("%1, %2").arg(sentence(words_of(wait.reason)), words);
        continue;
      }
      open.push_back({key_of(wait.reason), title, words,
                      wait.expected_ms && *wait.expected_ms < now_ms, open_ == wait.reason,
                      tr("%1, %2. Says when it should go on.").arg(title, words)});
    }
    for (std::size_t i = 0; i < enum_words<job::WaitReason>.size(); ++i) {
      const auto reason = static_cast<job::WaitReason>(i);
      reasons.push_back({key_of(reason), sentence(words_of(reason)), waits(reason)});
    }
  } else {
    open_.reset();
  }
  before_ = before.join(QChar('\n'));
  waits_.set(std::move(open));
  reasons_.set(std::move(reasons));
  emit changed();
}

bool WaitViewModel::mayWait() const {
  const auto* car = session().car();
  return car && !car->delivered_ms && car->unknown_entries == 0 && !session().readOnly();
}

QString WaitViewModel::rowWords() const {
  return tr("say it, with what it waits for");
}

QString WaitViewModel::openReason() const {
  return open_ ? key_of(*open_) : QString();
}

QString WaitViewModel::openTitle() const {
  return open_ ? tr("Waits for %1. When should it go on?").arg(words_of(*open_)) : QString();
}

std::vector<std::pair<QString, std::int64_t>> WaitViewModel::usual_times() const {
  const std::int64_t now_ms = session().now().wall_ms;
  const QString zone = session().zone();
  std::vector<std::pair<QString, std::int64_t>> out;
  for (const int hours : {1, 2, 4})
    out.emplace_back(tr("In %1 h").arg(hours), now_ms + hours * hour_ms);
  const int now_day = today_of(now_ms, zone);
  for (const int days : {1, 2, 7})
    if (const auto at = wall_of(now_day + days, morning_min, zone))
      out.emplace_back(tr("%1 %2").arg(day_words(*at, zone), clock_words(*at, zone)), *at);
  return out;
}

QStringList WaitViewModel::usual() const {
  QStringList out;
  for (const auto& [words, at_ms] : usual_times()) out << words;
  return out;
}

void WaitViewModel::post_wait(job::WaitReason reason, std::optional<std::int64_t> expected_ms) {
  if (const auto* car = session().car(); car && mayWait())
    keep_as(acts::SayWait{car->job, reason, true, expected_ms});
}

void WaitViewModel::say(const QString& key) {
  const auto reason = reason_of(key);
  if (!reason) return;
  open_ = reason;
  const auto& waits_for =
      session().car() ? session().car()->visit.waits_for : std::vector<job::WaitReason>{};
  if (std::find(waits_for.begin(), waits_for.end(), *reason) == waits_for.end())
    post_wait(*reason, {});
  else
    refresh();
}

void WaitViewModel::goesOn(const QString& key) {
  const auto reason = reason_of(key);
  const auto* car = session().car();
  if (reason && car) keep_as(acts::SayWait{car->job, *reason, false, {}});
}

void WaitViewModel::openWait(const QString& key) {
  open_ = reason_of(key);
  nothingWrong();
  refresh();
}

void WaitViewModel::expectUsual(int place) {
  const auto times = usual_times();
  if (!open_ || place < 0 || place >= static_cast<int>(times.size())) return;
  nothingWrong();
  post_wait(*open_, times[static_cast<std::size_t>(place)].second);
}

void WaitViewModel::expect(const QString& day_typed, const QString& time) {
  nothingWrong();
  if (!open_) return;
  const auto on = day_typed.trimmed().isEmpty() ? std::optional(today())
                                                : Form::day(QStringLiteral("day"), day_typed);
  const auto minute = typed_minute(time);
  if (!minute) refuse(QStringLiteral("time"), tr("Hour and minutes: 15:40."));
  if (refused()) return;
  const auto at_ms = wall_of(*on, *minute, session().zone());
  if (!at_ms) {
    refuse(QStringLiteral("day"), tr("No calendar has that day."));
    return;
  }
  if (*at_ms < session().now().wall_ms) {
    refuse(QStringLiteral("time"), tr("That time is over."));
    return;
  }
  post_wait(*open_, *at_ms);
}

}  // namespace jambline::screens
