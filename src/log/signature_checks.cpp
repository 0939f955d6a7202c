#include "log/signature_checks.h"

#include <algorithm>

namespace jambline::log {

namespace {
constexpr std::size_t items_a_batch = 2048;
constexpr std::size_t items_at_once = 8;
}  // namespace

SignatureChecks::SignatureChecks() : thread_([this] { run(); }) {
  filling_.reserve(items_a_batch);
  checking_.reserve(items_a_batch);
}

SignatureChecks::~SignatureChecks() {
  {
    const std::lock_guard lock(mutex_);
    over_ = true;
  }
  changed_.notify_all();
  thread_.join();
}

void SignatureChecks::add(std::int64_t arrival, const seal::Key& key, const Hash& hash,
                          const seal::Signature& signature) {
  filling_.push_back({arrival, key, hash, signature});
  if (filling_.size() == items_a_batch) hand_over();
}

void SignatureChecks::finish() {
  hand_over();
  complete();
}

std::optional<std::int64_t> SignatureChecks::first_bad() const {
  const std::int64_t bad = first_bad_.load();
  return bad == INT64_MAX ? std::nullopt : std::optional(bad);
}

void SignatureChecks::check_some() {
  for (;;) {
    const std::size_t from = next_.fetch_add(items_at_once);
    if (from >= checking_.size()) return;
    const std::size_t to = std::min(from + items_at_once, checking_.size());
    for (std::size_t i = from; i < to; ++i) {
      const Item& item = checking_[i];
      if (seal::verify(item.key, item.hash.bytes, item.signature)) continue;
      std::int64_t known = first_bad_.load();
      while (item.arrival < known && !first_bad_.compare_exchange_weak(known, item.arrival)) {
      }
    }
  }
}

void SignatureChecks::complete() {
  check_some();
  std::unique_lock lock(mutex_);
  changed_.wait(lock, [this] { return !given_; });
}

void SignatureChecks::hand_over() {
  complete();
  {
    const std::lock_guard lock(mutex_);
    checking_.swap(filling_);
    filling_.clear();
    next_ = 0;
    given_ = true;
  }
  changed_.notify_all();
}

void SignatureChecks::run() {
  std::unique_lock lock(mutex_);
  for (;;) {
    changed_.wait(lock, [this] { return given_ || over_; });
    if (over_) return;
    lock.unlock();
    check_some();
    lock.lock();
    given_ = false;
    changed_.notify_all();
  }
}

}  // namespace jambline::log
