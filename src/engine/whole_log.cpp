#include "engine/whole_log.h"

#include <array>
#include <condition_variable>
#include <mutex>
#include <set>
#include <thread>

#include "engine/read_entry.h"
#include "engine/rights_of_log.h"

namespace jambline::engine {

namespace {

constexpr std::size_t entries_a_batch = 512;
constexpr std::size_t batches_at_once = 4;

// Entries as the log gave them, with what they point to.
struct Batch {
  struct Item {
    log::Said said;
    std::size_t begin = 0;  // of the payload
  };
  std::vector<Item> items;
  std::string payloads;

  void add(const log::Said& said) {
    items.push_back({said, payloads.size()});
    payloads += said.payload;
  }
  void empty() {
    items.clear();
    payloads.clear();
  }
};

// A ring of batches between the thread that reads and the one that folds.
class Belt {
 public:
  Batch& to_fill() {
    std::unique_lock lock(mutex_);
    changed_.wait(lock, [this] { return filled_ - emptied_ < batches_at_once; });
    return ring_[filled_ % batches_at_once];
  }
  void is_filled() {
    const std::lock_guard lock(mutex_);
    ++filled_;
    changed_.notify_all();
  }
  void close() {
    const std::lock_guard lock(mutex_);
    closed_ = true;
    changed_.notify_all();
  }
  Batch* to_empty() {  // null when there will be no more
    std::unique_lock lock(mutex_);
    changed_.wait(lock, [this] { return emptied_ < filled_ || closed_; });
    return emptied_ < filled_ ? &ring_[emptied_ % batches_at_once] : nullptr;
  }
  void is_emptied() {
    const std::lock_guard lock(mutex_);
    ++emptied_;
    changed_.notify_all();
  }

 private:
  std::mutex mutex_;
  std::condition_variable changed_;
  std::array<Batch, batches_at_once> ring_;
  std::size_t filled_ = 0;
  std::size_t emptied_ = 0;
  bool closed_ = false;
};

// Marks entries in the order in which they came.
class Judge {
 public:
  explicit Judge(const folds::RightsFold& rights) : rights_(rights) {}
  entries::Entry read(const log::Said& said) {
    entries::Entry entry = read_entry(said);
    if (streams_[entry.subject].judge(rights_, entry)) again_.insert(entry.subject);
    return entry;
  }
  // Streams in which something was taken back before it came.
  const std::set<JobId>& again() const { return again_; }

 private:
  const folds::RightsFold& rights_;
  std::unordered_map<JobId, folds::StreamRights> streams_;
  std::set<JobId> again_;
};

void fold(const Batch& batch, Judge& judge, WholeLog& out) {
  for (const Batch::Item& item : batch.items) {
    log::Said said = item.said;
    said.payload = std::string_view(batch.payloads).substr(item.begin, said.payload.size());
    const JobId subject = said.header.subject;
    if (subject)
      out.jobs.try_emplace(subject, subject).first->second.apply(judge.read(said));
    else
      out.shop.apply(judge.read(said));
    ++out.entries;
  }
}

Status fold_again(log::EntryLog& log, const JobId& subject, WholeLog& out) {
  if (!subject) {
    JAMBLINE_ASSIGN(auto shop, shop_of(log, out.rights));
    out.shop = std::move(shop.first);
    return {};
  }
  std::vector<entries::Entry> stream;
  JAMBLINE_TRY(log.said_of(subject, [&](const log::Said& said) {
    stream.push_back(read_entry(said));
    return true;
  }));
  (void)folds::judge_all(out.rights, stream);
  folds::JobFold anew(subject);
  for (auto& entry : stream) anew.apply(std::move(entry));
  out.jobs.insert_or_assign(subject, std::move(anew));
  return {};
}

}  // namespace

Result<WholeLog> fold_whole_log(log::EntryLog& log) {
  WholeLog out;
  JAMBLINE_ASSIGN(out.rights, rights_of(log));
  Judge judge(out.rights);
  Belt belt;
  Status read;
  {
    std::jthread folding([&] {
      while (Batch* batch = belt.to_empty()) {
        fold(*batch, judge, out);
        batch->empty();
        belt.is_emptied();
      }
    });
    Batch* batch = &belt.to_fill();
    read = log.said_after(0, [&](const log::Said& said) {
      batch->add(said);
      if (batch->items.size() == entries_a_batch) {
        belt.is_filled();
        batch = &belt.to_fill();
      }
      return true;
    });
    belt.is_filled();
    belt.close();
  }
  JAMBLINE_TRY(read);
  for (const JobId& subject : judge.again()) JAMBLINE_TRY(fold_again(log, subject, out));
  return out;
}

}  // namespace jambline::engine
