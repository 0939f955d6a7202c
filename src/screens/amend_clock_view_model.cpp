#include "screens/amend_clock_view_model.h"

#include <QCoreApplication>

#include "screens/span_words.h"
#include "screens/typed_times.h"
#include "screens/words.h"

namespace jambline::screens {

namespace {
constexpr auto amend_reasons = std::to_array<const char*>(
    {QT_TRANSLATE_NOOP("AmendClock", "went home"),
     QT_TRANSLATE_NOOP("AmendClock", "forgot to stop"),
     QT_TRANSLATE_NOOP("AmendClock", "forgot to start"), QT_TRANSLATE_NOOP("AmendClock", "break"),
     QT_TRANSLATE_NOOP("AmendClock", "tapped too late"),
     QT_TRANSLATE_NOOP("AmendClock", "clock of the device was wrong")});
}  // namespace

AmendClockViewModel::AmendClockViewModel(Session& session, QObject* parent)
    : Form(session, parent),
      end_rows_({"key", "title", "time", "said", "isChosen", "spoken"}, this) {
  connect(&session, &Session::personChanged, this, &AmendClockViewModel::changed);
  connect(this, &Form::kept, this, &AmendClockViewModel::close);
}

void AmendClockViewModel::open(const QString& title, const PersonId& worker,
                               std::vector<End> ends) {
  title_ = title;
  worker_ = worker;
  ends_ = std::move(ends);
  chosen_ = ends_.empty() ? 0 : ends_.size() - 1;
  reason_ = -1;
  choose(static_cast<int>(chosen_));
}

void AmendClockViewModel::open_span(const folds::WorkedRow& row, bool runs) {
  std::vector<End> ends{
      {row.job, row.from.act, tr("Begins"), row.start_ms, row.from.clock_ms, {}, row.end_ms}};
  if (!runs)
    ends.push_back(
        {row.job, row.to.act, tr("Ends"), row.end_ms, row.to.clock_ms, row.start_ms, {}});
  open(tr("%1, %2").arg(operation_words(row), QString::fromStdString(row.plate)), row.person,
       std::move(ends));
}

void AmendClockViewModel::close() {
  ends_.clear();
  nothingWrong();
  show();
}

const AmendClockViewModel::End* AmendClockViewModel::end() const {
  return chosen_ < ends_.size() ? &ends_[chosen_] : nullptr;
}

void AmendClockViewModel::choose(int at) {
  if (at < 0 || at >= static_cast<int>(ends_.size())) return;
  chosen_ = static_cast<std::size_t>(at);
  day_ = today_of(end()->at_ms, session().zone());
  typed_.clear();
  nothingWrong();
  show();
}

void AmendClockViewModel::show() {
  std::vector<QVariantList> rows;
  const QString zone = session().zone();
  for (std::size_t i = 0; i < ends_.size(); ++i) {
    const End& one = ends_[i];
    const QString time = clock_words(one.at_ms, zone);
    const QString said = one.clock_ms ? tr("clock said %1").arg(clock_words(*one.clock_ms, zone))
                                      : tr("as the clock said");
    rows.push_back({static_cast<int>(i), one.title, time, said, i == chosen_,
                    tr("%1 %2, %3").arg(one.title, time, said)});
  }
  end_rows_.set(std::move(rows));
  emit changed();
}

void AmendClockViewModel::set_typed(const QString& digits) {
  if (digits == typed_) return;
  typed_ = digits;
  nothingWrong();
  emit changed();
}

void AmendClockViewModel::otherDay(int days) {
  day_ += days;
  nothingWrong();
  emit changed();
}

QString AmendClockViewModel::dayWords() const {
  if (!shown()) return {};
  const auto noon_ms = wall_of(day_, 12 * 60, session().zone());
  return noon_ms ? day_words(*noon_ms, session().zone()) : QString();
}

std::optional<std::int64_t> AmendClockViewModel::new_ms() const {
  if (typed_.size() < 3) return std::nullopt;
  const auto minute = typed_minute(typed_);
  return minute ? wall_of(day_, *minute, session().zone()) : std::nullopt;
}

QString AmendClockViewModel::newTime() const {
  const auto ms = new_ms();
  return ms ? clock_words(*ms, session().zone()) : QString();
}

QString AmendClockViewModel::countsWords() const {
  const auto ms = new_ms();
  if (!ms || !end() || *ms == end()->at_ms) return {};
  const QString length = running_words(std::abs(*ms - end()->at_ms));
  return *ms < end()->at_ms ? tr("%1 earlier").arg(length) : tr("%1 later").arg(length);
}

QStringList AmendClockViewModel::reasons() const {
  QStringList out;
  for (const char* words : amend_reasons)
    out << sentence(QCoreApplication::translate("AmendClock", words));
  return out;
}

void AmendClockViewModel::chooseReason(int reason) {
  reason_ = reason_ == reason ? -1 : reason;
  nothingWrong();
  emit changed();
}

QString AmendClockViewModel::mainText() const {
  const QString time = newTime();
  return time.isEmpty() ? tr("Type the time first") : tr("It was %1").arg(time);
}

void AmendClockViewModel::keep(const QString& other_reason) {
  nothingWrong();
  const End* one = end();
  if (!one) return;
  const auto ms = new_ms();
  if (!ms) {
    refuse(QStringLiteral("time"), tr("Four digits: 1630 is 16:30."));
  } else if (*ms > session().now().wall_ms) {
    refuse(QStringLiteral("time"), tr("That time is still to come."));
  } else if (one->least_ms && *ms < *one->least_ms) {
    refuse(QStringLiteral("time"),
           tr("Before it began, %1.").arg(clock_words(*one->least_ms, session().zone())));
  } else if (one->most_ms && *ms > *one->most_ms) {
    refuse(QStringLiteral("time"),
           tr("After it ended, %1.").arg(clock_words(*one->most_ms, session().zone())));
  }
  if (refused()) return;
  const bool fixed = reason_ >= 0 && reason_ < static_cast<int>(amend_reasons.size());
  std::string reason = fixed ? amend_reasons[static_cast<std::size_t>(reason_)]
                             : other_reason.trimmed().toStdString();
  if (reason.empty()) {
    refuse(QStringLiteral("reason"), tr("Say why. It stands beside both times."));
    return;
  }
  keep_as(acts::AmendClock{one->job, one->act, *ms, std::move(reason)});
}

}  // namespace jambline::screens
