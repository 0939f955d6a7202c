#include "screens/countdown_view_model.h"

#include <algorithm>
#include <iterator>
#include <set>

#include "screens/booth_air_words.h"
#include "screens/caution_words.h"

namespace jambline::screens {

namespace {
using folds::BoothWordNow;

constexpr std::uint64_t again_ms[] = {60'000, 180'000};  // after the first knocks

std::vector<Countdown> booths_that_count(const Session& session) {
  std::vector<Countdown> out;
  for (const auto& booth : session.shop().booths) {
    const BoothSaid said = say_booth(session, booth);
    const QString name = QString::fromStdString(booth.name);
    const QString id = QString::fromStdString(booth.booth.hex());
    Countdown one;
    one.key = QStringLiteral("booth ") + id;
    one.booth = id;
    if (said.state.word == BoothWordNow::Counting) {
      one.left_s = said.state.left_s;
      one.margin = CountdownViewModel::tr("%1 clears %2")
                       .arg(name, clock_words(said.clears_ms, session.zone()));
      one.row = CountdownViewModel::tr("%1: %2. %3").arg(name, said.countdown, said.word);
    } else if (said.state.word == BoothWordNow::TimeOver) {
      one.margin = CountdownViewModel::tr("%1: time is over").arg(name);
      one.row = CountdownViewModel::tr("%1: the time is over. Log it.").arg(name);
    } else {
      continue;
    }
    out.push_back(std::move(one));
  }
  return out;
}
}  // namespace

CountdownViewModel::CountdownViewModel(Session& session, device::Knocks& knocks, QObject* parent)
    : QObject(parent), session_(session), knocks_(knocks) {
  connect(&session, &Session::snapshotChanged, this, &CountdownViewModel::refresh);
  connect(&session, &Session::secondPassed, this, &CountdownViewModel::refresh);
  add(booths_that_count);
}

void CountdownViewModel::add(Source source) {
  sources_.push_back(std::move(source));
  refresh();
}

void CountdownViewModel::refresh() {
  std::vector<Countdown> next;
  for (const auto& source : sources_) {
    auto some = source(session_);
    std::move(some.begin(), some.end(), std::back_inserter(next));
  }
  // What still counts comes before what is over: it can still hurt somebody.
  std::stable_sort(next.begin(), next.end(), [](const Countdown& a, const Countdown& b) {
    if ((a.left_s <= 0) != (b.left_s <= 0)) return b.left_s <= 0;
    return a.left_s < b.left_s;
  });
  const bool was_quiet = counts_.empty();
  counts_ = std::move(next);
  row_ = nullptr;
  for (const auto& one : counts_)
    if (!row_ && one.left_s <= one.row_s) row_ = &one;

  std::set<QString> here;
  bool knock = false;
  for (const auto& one : counts_) {
    here.insert(one.key);
    knock = knock_for(one) || knock;
  }
  for (auto at = heard_.begin(); at != heard_.end();)
    at = here.count(at->first) != 0 ? std::next(at) : heard_.erase(at);
  if (knock) knocks_.knock();
  if (!was_quiet || !counts_.empty()) emit changed();
}

bool CountdownViewModel::knock_for(const Countdown& one) {
  Heard& heard = heard_[one.key];
  if (one.left_s > one.knock_s) {
    heard = {true, 0, 0};
    return false;
  }
  if (!heard.counted) return false;
  const std::uint64_t now_ms = session_.now().since_boot_ms;
  if (heard.knocks == 0) {
    heard.knocked_ms = now_ms;
    heard.knocks = 1;
    return true;
  }
  const auto done = static_cast<std::size_t>(heard.knocks - 1);
  if (done >= std::size(again_ms) || now_ms < heard.knocked_ms + again_ms[done]) return false;
  ++heard.knocks;
  return true;
}

}  // namespace jambline::screens
