#include "app/demo/hand.h"

#include <set>

#include "app/demo/invented.h"
#include "base/spans.h"

namespace jambline::demo {

namespace {}

// The tablet is started each morning; the last hours are of the boot that was given.
Moment Hand::moment(std::int64_t at_ms) const {
  Moment out;
  out.wall_ms = at_ms;
  out.offset_min = calendar_.offset_min(at_ms);
  const Moment& now = options_.now;
  const auto before_now = static_cast<std::uint64_t>(now.wall_ms - at_ms);
  if (now.boot && before_now <= now.since_boot_ms) {
    out.boot = now.boot;
    out.since_boot_ms = now.since_boot_ms - before_now;
    return out;
  }
  const std::int64_t day = at_ms / day_ms;
  for (std::size_t i = 0; i < 8; ++i)
    out.boot.bytes[i] = static_cast<std::uint8_t>(static_cast<std::uint64_t>(day) >> (8 * i));
  out.boot.bytes[15] = 1;
  out.since_boot_ms = static_cast<std::uint64_t>(at_ms - day * day_ms);
  return out;
}

Result<std::vector<acts::Draft>> Hand::decide(const Commands& commands, const PersonId& person,
                                              std::int64_t at_ms, const folds::CarView* instead,
                                              Random& random) const {
  const acts::World world{shop_view_,
                          [&](const JobId& job) -> const folds::CarView* {
                            if (instead && instead->job == job) return instead;
                            const auto found = cars_.find(job);
                            return found == cars_.end() ? nullptr : &found->second.view;
                          },
                          [&](const PersonId& worker) -> std::optional<JobId> {
                            const auto found = clocks_.find(worker);
                            if (found == clocks_.end()) return std::nullopt;
                            return found->second;
                          }};
  std::vector<acts::Draft> out;
  for (const auto& command : commands) {
    JAMBLINE_ASSIGN(auto drafts,
                    acts::decide(world, command, {person, random, at_ms, moment(at_ms)}));
    for (auto& draft : drafts) out.push_back(std::move(draft));
  }
  return out;
}

void Hand::fold(const std::vector<entries::Entry>& entries) {
  std::set<JobId> touched;
  for (const auto& entry : entries) {
    if (!entry.subject) {
      shop_.apply(entry);
      shop_view_ = shop_.view();
      continue;
    }
    auto found = cars_.find(entry.subject);
    if (found == cars_.end())
      found = cars_.emplace(entry.subject, Car{folds::JobFold(entry.subject), {}}).first;
    found->second.fold.apply(entry);
    touched.insert(entry.subject);
    if (const auto* clock = entry.payload.get_if<entries::ClockActed>()) {
      if (clock->act != entries::ClockActKind::Stop)
        clocks_[clock->worker] = entry.subject;
      else if (const auto at = clocks_.find(clock->worker);
               at != clocks_.end() && at->second == entry.subject)
        clocks_.erase(at);
    }
  }
  for (const JobId& job : touched) {
    Car& car = cars_.at(job);
    car.view = car.fold.view();
    if (car.view.delivered_ms) cars_.erase(job);
  }
}

Status Hand::write(const Sink& sink, const PersonId& person, const std::vector<acts::Draft>& drafts,
                   std::int64_t at_ms) {
  if (drafts.empty()) return {};
  JAMBLINE_ASSIGN(const auto entries, sink(person, drafts, moment(at_ms)));
  fold(entries);
  return {};
}

Status Hand::act(const Step& step, JobId& job, Random& random, SeededRandom& pictures,
                 SeededRandom& air) {
  static const folds::CarView not_open_yet;
  const auto known = cars_.find(job);
  const folds::CarView& view = known == cars_.end() ? not_open_yet : known->second.view;
  if (step.picture) {
    JAMBLINE_ASSIGN(const auto commands, step.picture(view, shop_view_, pictures));
    JAMBLINE_ASSIGN(const auto drafts,
                    decide(commands, step.person, step.at_ms, nullptr, pictures));
    return write(sinks_.here, step.person, drafts, step.at_ms);
  }
  if (step.air) {
    for (const auto& command : step.air(view, shop_view_, moment(step.at_ms))) {
      JAMBLINE_ASSIGN(const auto drafts, decide({command}, step.person, step.at_ms, nullptr, air));
      JAMBLINE_TRY(write(sinks_.here, step.person, drafts, step.at_ms));
    }
    return {};
  }
  const bool disagree = step.other && sinks_.other_device;
  const folds::CarView before = disagree ? view : folds::CarView{};
  JAMBLINE_ASSIGN(const auto drafts,
                  decide(step.act(view), step.person, step.at_ms, nullptr, random));
  if (!job && !drafts.empty()) job = drafts.front().subject;
  JAMBLINE_TRY(write(sinks_.here, step.person, drafts, step.at_ms));
  if (!disagree) return {};
  JAMBLINE_ASSIGN(const auto others,
                  decide(step.other(before), step.other_person, step.at_ms, &before, random));
  return write(sinks_.other_device, step.other_person, others, step.at_ms + 20'000);
}

Status Hand::act(const PersonId& person, std::int64_t at_ms, const acts::Command& command,
                 Random& random) {
  JAMBLINE_ASSIGN(const auto drafts, decide({command}, person, at_ms, nullptr, random));
  return write(sinks_.here, person, drafts, at_ms);
}

}  // namespace jambline::demo
