#include "trade/ready_by.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "trade/draws.h"
#include "trade/refusal.h"

namespace jambline::trade {

namespace {
constexpr double no_float = 1e-9;

Status checked(const ReadyBy& in) {
  if (in.work.empty()) return fail(refusal(Code::Missing, "work", "nothing to do"));
  if (in.work.size() > 1000) return fail(refusal(Code::TooLarge, "work", "1,000 at most"));
  JAMBLINE_TRY(need("trials", in.trials, 0, 1e6, "0 to 1,000,000"));
  JAMBLINE_TRY(need("now_min", in.now_min, -1e12, 1e12, "a time"));
  if (in.promised_min) JAMBLINE_TRY(need("promised_min", *in.promised_min, -1e12, 1e12, "a time"));
  for (std::size_t i = 0; i < in.work.size(); ++i) {
    const WorkItem& one = in.work[i];
    JAMBLINE_TRY(need(item("work", i, "least_min"), one.least_min, 0, 1e6, "not negative"));
    JAMBLINE_TRY(need(item("work", i, "likely_min"), one.likely_min, one.least_min, 1e6,
                      "not under least_min"));
    JAMBLINE_TRY(need(item("work", i, "most_min"), one.most_min, one.likely_min, 1e6,
                      "not under likely_min"));
  }
  if (in.hours.size() > 10000) return fail(refusal(Code::TooLarge, "hours", "10,000 at most"));
  double last = -1e12;
  for (std::size_t i = 0; i < in.hours.size(); ++i) {
    JAMBLINE_TRY(need(item("hours", i, "from_min"), in.hours[i].from_min, last, 1e12,
                      "not before the end of the one before"));
    JAMBLINE_TRY(need(item("hours", i, "to_min"), in.hours[i].to_min, in.hours[i].from_min + 1e-6,
                      1e12, "after from_min"));
    last = in.hours[i].to_min;
  }
  return {};
}

// The work in an order in which everything comes after what it needs.
struct Network {
  std::vector<std::size_t> order;
  std::vector<std::vector<std::size_t>> before;
  std::vector<std::vector<std::size_t>> behind;
};

Result<Network> network_of(const std::vector<WorkItem>& work) {
  std::map<std::string, std::size_t> place;
  for (std::size_t i = 0; i < work.size(); ++i)
    if (!place.emplace(work[i].name, i).second)
      return fail(refusal(Code::Malformed, item("work", i, "name"), "the same name twice"));
  Network out;
  out.before.resize(work.size());
  out.behind.resize(work.size());
  for (std::size_t i = 0; i < work.size(); ++i)
    for (const std::string& name : work[i].after) {
      const auto found = place.find(name);
      if (found == place.end())
        return fail(refusal(Code::Unknown, item("work", i, "after"), "nothing is called " + name));
      out.before[i].push_back(found->second);
      out.behind[found->second].push_back(i);
    }
  std::vector<std::size_t> left(work.size());
  for (std::size_t i = 0; i < work.size(); ++i) {
    left[i] = out.before[i].size();
    if (left[i] == 0) out.order.push_back(i);
  }
  for (std::size_t at = 0; at < out.order.size(); ++at)
    for (const std::size_t next : out.behind[out.order[at]])
      if (--left[next] == 0) out.order.push_back(next);
  if (out.order.size() != work.size()) {
    const auto stuck = static_cast<std::size_t>(
        std::find_if(left.begin(), left.end(), [](std::size_t one) { return one > 0; }) -
        left.begin());
    return fail(refusal(Code::Malformed, item("work", stuck, "after"), "goes round in a circle"));
  }
  return out;
}

// Minutes of work added to a time, within opening hours.
class Calendar {
 public:
  explicit Calendar(const std::vector<OpenHours>& hours) : hours_(hours) {
    for (const OpenHours& one : hours) {
      sums_.push_back(open_min_);
      open_min_ += one.to_min - one.from_min;
    }
  }
  // Nothing when the hours end before the work does.
  std::optional<double> add(double from_min, double work_min) const {
    if (hours_.empty()) return from_min + work_min;
    const auto next =
        std::upper_bound(hours_.begin(), hours_.end(), from_min,
                         [](double at, const OpenHours& one) { return at < one.to_min; });
    if (next == hours_.end()) return work_min <= 0 ? std::optional(from_min) : std::nullopt;
    const auto place = static_cast<std::size_t>(next - hours_.begin());
    const double done = sums_[place] + std::max(0.0, from_min - next->from_min);
    if (work_min <= 0) return std::max(from_min, next->from_min);
    const double wanted = done + work_min;
    if (wanted > open_min_ + 1e-9) return std::nullopt;
    const auto in = std::lower_bound(sums_.begin(), sums_.end(), wanted - 1e-9);
    const auto which =
        static_cast<std::size_t>(std::max<std::ptrdiff_t>(in - sums_.begin(), 1) - 1);
    return hours_[which].from_min + wanted - sums_[which];
  }

 private:
  const std::vector<OpenHours>& hours_;
  std::vector<double> sums_;  // open minutes before each
  double open_min_ = 0;
};

class Forecast {
 public:
  Forecast(const ReadyBy& in, const Network& network)
      : in_(in), network_(network), calendar_(in.hours), finish_(in.work.size()) {}

  template <class Duration>
  std::optional<double> finish(Duration duration) {
    double last = in_.now_min;
    for (const std::size_t at : network_.order) {
      double start = in_.now_min;
      for (const std::size_t before : network_.before[at]) start = std::max(start, finish_[before]);
      const WorkItem& one = in_.work[at];
      const auto end =
          one.wait ? std::optional(start + duration(one)) : calendar_.add(start, duration(one));
      if (!end) return std::nullopt;
      finish_[at] = *end;
      last = std::max(last, *end);
    }
    return last;
  }
  const std::vector<double>& finishes() const { return finish_; }

 private:
  const ReadyBy& in_;
  const Network& network_;
  Calendar calendar_;
  std::vector<double> finish_;
};

void critical_path(const ReadyBy& in, const Network& network, ReadyByResult& out) {
  const std::size_t n = in.work.size();
  out.work.resize(n);
  for (const std::size_t at : network.order) {
    WorkTimes& one = out.work[at];
    one.name = in.work[at].name;
    for (const std::size_t before : network.before[at])
      one.early_start_min = std::max(one.early_start_min, out.work[before].early_finish_min);
    one.early_finish_min = one.early_start_min + in.work[at].likely_min;
    out.length_min = std::max(out.length_min, one.early_finish_min);
  }
  for (auto at = network.order.rbegin(); at != network.order.rend(); ++at) {
    WorkTimes& one = out.work[*at];
    one.late_finish_min = out.length_min;
    double next_start = out.length_min;
    for (const std::size_t behind : network.behind[*at]) {
      one.late_finish_min = std::min(one.late_finish_min, out.work[behind].late_start_min);
      next_start = std::min(next_start, out.work[behind].early_start_min);
    }
    one.late_start_min = one.late_finish_min - in.work[*at].likely_min;
    one.total_float_min = one.late_start_min - one.early_start_min;
    one.free_float_min = next_start - one.early_finish_min;
    one.critical = std::abs(one.total_float_min) < no_float * std::max(1.0, out.length_min);
  }
}
}  // namespace

Result<ReadyByResult> ready_by(const ReadyBy& in) {
  JAMBLINE_TRY(checked(in));
  JAMBLINE_ASSIGN(const Network network, network_of(in.work));
  ReadyByResult out;
  critical_path(in, network, out);
  Forecast forecast(in, network);
  const auto too_short = [] {
    return fail(refusal(Code::NotYet, "hours", "they end before the work does: enter more days"));
  };
  const auto earliest = forecast.finish([](const WorkItem& one) { return one.least_min; });
  if (!earliest) return too_short();
  out.earliest_min = *earliest;
  const auto likely = forecast.finish([](const WorkItem& one) { return one.likely_min; });
  if (!likely) return too_short();
  out.likely_min = *likely;
  for (std::size_t i = 0; i < in.work.size(); ++i) out.work[i].finish_min = forecast.finishes()[i];
  for (std::size_t i = 0; i < in.work.size(); ++i)
    if (network.before[i].empty()) out.next.push_back(in.work[i].name);

  if (in.trials > 0) {
    Draws draws(in.seed);
    std::vector<double> ends;
    ends.reserve(static_cast<std::size_t>(in.trials));
    for (int trial = 0; trial < in.trials; ++trial) {
      const auto end = forecast.finish([&](const WorkItem& one) {
        return draws.triangular(one.least_min, one.likely_min, one.most_min);
      });
      if (!end) return too_short();
      ends.push_back(*end);
    }
    if (in.promised_min)
      out.promise_percent =
          100.0 *
          static_cast<double>(std::count_if(ends.begin(), ends.end(),
                                            [&](double end) { return end <= *in.promised_min; })) /
          in.trials;
    std::sort(ends.begin(), ends.end());
    const auto quantile = [&](double part) {
      return ends[static_cast<std::size_t>(part * static_cast<double>(ends.size() - 1))];
    };
    out.p10_min = quantile(0.1);
    out.p50_min = quantile(0.5);
    out.p90_min = quantile(0.9);
  }
  out.basis.method =
      "Critical path of likely durations; triangular durations drawn on the calendar; each car "
      "alone.";
  if (in.trials > 0) out.basis.seed = in.seed;
  out.basis.term("operations", static_cast<double>(in.work.size()), "", entered);
  out.basis.term("critical path", out.length_min, "min", computed);
  out.basis.term("now", in.now_min, "min", measured);
  out.basis.term("opening hours entered", static_cast<double>(in.hours.size()), "", entered);
  out.basis.term("ready with the least durations", out.earliest_min, "min", computed);
  out.basis.term("ready with the likely durations", out.likely_min, "min", computed);
  out.basis.term("trials", in.trials, "", entered);
  if (in.promised_min) out.basis.term("promised", *in.promised_min, "min", entered);
  return out;
}

}  // namespace jambline::trade
