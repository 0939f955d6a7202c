#include "hub/upkeep.h"

namespace jambline::hub {

namespace {
constexpr std::int64_t upkeep_day_ms = std::int64_t{24} * 3'600'000;

std::int64_t running_ms(const Hub& hub) {
  return static_cast<std::int64_t>(hub.clock().now().since_boot_ms);
}
}  // namespace

Upkeep::Upkeep(Hub& hub, sync::NoteEvent note, std::int64_t every_ms)
    : hub_(hub),
      note_(std::move(note)),
      every_ms_(every_ms),
      swept_ms_(running_ms(hub)),
      thread_([this](const std::stop_token& stop) { run(stop); }) {}

Upkeep::~Upkeep() = default;

std::map<ShopId, AuditReport> Upkeep::found() const {
  const std::lock_guard lock(mutex_);
  return found_;
}

void Upkeep::run(const std::stop_token& stop) {
  while (!stop.stop_requested()) {
    audit(stop);
    if (running_ms(hub_) - swept_ms_ > upkeep_day_ms) sweep();
    std::unique_lock lock(mutex_);
    waiting_.wait_for(lock, stop, std::chrono::milliseconds(every_ms_), [] { return false; });
  }
}

void Upkeep::audit(const std::stop_token& stop) {
  for (const auto& place : hub_.shops()) {
    auto& audit = audits_[place->id()];
    if (!audit) audit = std::make_unique<ShopAudit>(place->folder(), place->id(), hub_.key().key());
    const bool was_good = !audit->found().first_bad;
    const std::uint64_t before = audit->found().entries;
    const Status done = audit->go_on(stop);
    const AuditReport& found = audit->found();
    std::string cause;
    if (!done) cause = code_name(done.error().code);
    if (was_good && found.first_bad) cause = code_name(found.first_bad->code);
    {
      const std::lock_guard lock(mutex_);
      found_[place->id()] = found;
    }
    if (note_ && (!cause.empty() || found.entries > before))
      note_({hub_.clock().now().wall_ms,
             "audit",
             place->id().hex(),
             {},
             0,
             found.entries - before,
             0,
             cause});
  }
}

void Upkeep::sweep() {
  swept_ms_ = running_ms(hub_);
  for (const auto& place : hub_.shops()) {
    const Status done = place->files().sweep_parts(hub_.clock().now().wall_ms);
    if (!done && note_)
      note_({hub_.clock().now().wall_ms,
             "sweep",
             place->id().hex(),
             {},
             0,
             0,
             0,
             std::string(code_name(done.error().code))});
  }
}

}  // namespace jambline::hub
