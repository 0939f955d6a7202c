// log/signature_checks.h: signatures checked by two threads while a third thing, the reading, goes
// on.
//
// Shape:   add() what is to be checked, in order of arrival; the other thread checks one batch
//          while the caller reads the next, and the caller helps with what is left of it. After
//          finish() all are checked. first_bad() is the earliest of those looked at so far.
// Threads: one owner, and a thread of its own that ends with the object; it is as urgent as the
//          owner's.
#pragma once

#include <atomic>
#include <condition_variable>
#include <cstdint>
#include <mutex>
#include <optional>
#include <thread>
#include <vector>

#include "seal/sign.h"

namespace jambline::log {

class SignatureChecks {
 public:
  SignatureChecks();
  ~SignatureChecks();
  SignatureChecks(const SignatureChecks&) = delete;
  SignatureChecks& operator=(const SignatureChecks&) = delete;

  void add(std::int64_t arrival, const seal::Key& key, const Hash& hash,
           const seal::Signature& signature);
  void finish();
  std::optional<std::int64_t> first_bad() const;

 private:
  struct Item {
    std::int64_t arrival;
    seal::Key key;
    Hash hash;
    seal::Signature signature;
  };
  void check_some();  // until nothing is left of the batch that is checked
  void complete();    // the batch that is checked, with the other thread
  void hand_over();
  void run();

  std::vector<Item> filling_;
  std::vector<Item> checking_;
  std::atomic<std::size_t> next_{0};
  std::atomic<std::int64_t> first_bad_{INT64_MAX};
  std::mutex mutex_;
  std::condition_variable changed_;
  bool given_ = false;  // a batch waits for the other thread, or is in its hands
  bool over_ = false;
  std::thread thread_;  // last: it uses what stands above
};

}  // namespace jambline::log
