// tests/property/devices.h: devices of one shop that live in memory: the real acts and folds, no
// disk, each with a clock of its own that may be wrong.
#pragma once

#include <map>
#include <memory>
#include <set>
#include <string>
#include <vector>

#include "acts/decide.h"
#include "base/json.h"
#include "folds/floor_view.h"
#include "folds/job_fold.h"
#include "folds/shop_fold.h"
#include "seal/digest.h"
#include "seal/hlc.h"

namespace jambline::property {

struct Folds {
  folds::ShopFold shop;
  std::map<JobId, folds::JobFold> jobs;
  void apply(const entries::Entry& entry) {
    if (!entry.subject)
      shop.apply(entry);
    else
      jobs.try_emplace(entry.subject, entry.subject).first->second.apply(entry);
  }
  // Everything that is shown, as text.
  std::string text() const {
    std::string out = to_json(shop.view()) + "\n";
    for (const auto& [job, fold] : jobs) {
      const auto view = fold.view();
      out += to_json(view) + "\n" + to_json(folds::floor_row(view)) + "\n";
      for (const auto& panel : view.panels)
        for (const auto& hash : panel.verdict_heads) out += hash.hex();
      out += "\n";
    }
    return out;
  }
};

struct Action {
  std::vector<entries::Entry> entries;
};

class Device {
 public:
  Device(std::uint8_t number, std::int64_t clock_error_ms) : error_ms_(clock_error_ms) {
    id_.bytes[0] = number;
    boot_.bytes[0] = number;
  }

  Result<Action> act(const acts::Command& command, const PersonId& person, Random& random) {
    std::map<JobId, folds::CarView> views;
    for (const auto& [job, fold] : folds_.jobs) views.emplace(job, fold.view());
    const auto shop = folds_.shop.view();
    const acts::World world{shop,
                            [&](const JobId& job) -> const folds::CarView* {
                              const auto found = views.find(job);
                              return found == views.end() ? nullptr : &found->second;
                            },
                            [&](const PersonId& worker) -> std::optional<JobId> {
                              for (const auto& [job, view] : views)
                                for (const auto& running : view.running)
                                  if (running.person == worker) return job;
                              return std::nullopt;
                            }};
    JAMBLINE_ASSIGN(const auto drafts,
                    acts::decide(world, command, {person, random, now().wall_ms, now()}));
    Action out;
    const auto action = random.make<ActionId>();
    for (const auto& draft : drafts) {
      const auto written = entries::write(draft.payload);
      entries::Entry entry;
      const std::int64_t wall_ms = now().wall_ms;
      hlc_ = seal::hlc_local(hlc_, wall_ms);
      entry.order = {hlc_.packed(), id_, ++seq_};
      entry.subject = draft.subject;
      entry.wall_ms = wall_ms;
      entry.boot = boot_;
      entry.boottime_ms = now().since_boot_ms;
      entry.person = person;
      entry.action = action;
      entry.kind = written.kind;
      entry.schema = written.schema;
      entry.hash =
          seal::Sha256().add(id_.bytes).add(std::to_string(seq_)).add(written.payload).finish();
      entry.payload = entries::read(written.kind, written.schema, written.payload, false);
      take(entry);
      out.entries.push_back(std::move(entry));
    }
    return out;
  }

  void take(const entries::Entry& entry) {
    folds_.apply(entry);
    const auto remote = seal::Hlc::unpack(entry.order.hlc);
    const std::int64_t wall_ms = now().wall_ms;
    if (entry.order.device != id_ && seal::hlc_believable(remote, wall_ms))
      hlc_ = seal::hlc_receive(hlc_, remote, wall_ms);
    if (seen_.insert(entry.hash).second) known_.push_back(entry);
  }

  Moment now() const {
    return {true_ms_ + error_ms_, static_cast<std::uint64_t>(true_ms_ - boot_ms_), boot_, 0};
  }
  void pass_ms(std::int64_t ms) { true_ms_ += ms; }
  void restart() {
    ++boot_.bytes[1];
    boot_ms_ = true_ms_;
  }
  void set_clock_error(std::int64_t ms) { error_ms_ = ms; }
  const std::vector<entries::Entry>& known() const { return known_; }
  const Folds& folds() const { return folds_; }

  static constexpr std::int64_t start_ms = 1804750000000;

 private:
  DeviceId id_;
  BootId boot_;
  std::int64_t error_ms_;
  std::int64_t true_ms_ = start_ms;
  std::int64_t boot_ms_ = start_ms;
  std::uint64_t seq_ = 0;
  seal::Hlc hlc_;
  Folds folds_;
  std::set<Hash> seen_;
  std::vector<entries::Entry> known_;
};

}  // namespace jambline::property
