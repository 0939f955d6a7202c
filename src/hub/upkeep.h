// hub/upkeep.h: what a serving hub does beside its requests: new entries are audited each minute,
// old parts of files swept once a day.
//
// Shape:   a thread of its own from construction to destruction; it holds up no request. What is
//          found wrong is noted as the event "audit" and stays in found().
// Threads: found() any.
#pragma once

#include <condition_variable>
#include <map>
#include <memory>
#include <mutex>
#include <thread>

#include "hub/hub.h"
#include "hub/shop_audit.h"

namespace jambline::hub {

class Upkeep {
 public:
  Upkeep(Hub& hub, sync::NoteEvent note, std::int64_t every_ms = 60'000);
  ~Upkeep();
  Upkeep(const Upkeep&) = delete;
  Upkeep& operator=(const Upkeep&) = delete;

  std::map<ShopId, AuditReport> found() const;

 private:
  void run(const std::stop_token& stop);
  void audit(const std::stop_token& stop);
  void sweep();

  Hub& hub_;
  sync::NoteEvent note_;
  std::int64_t every_ms_;
  std::map<ShopId, std::unique_ptr<ShopAudit>> audits_;  // the thread's own
  std::int64_t swept_ms_;
  mutable std::mutex mutex_;  // guards the one below, and the waiting
  std::map<ShopId, AuditReport> found_;
  std::condition_variable_any waiting_;
  std::jthread thread_;  // last: it begins when all is there
};

}  // namespace jambline::hub
