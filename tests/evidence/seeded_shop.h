// tests/evidence/seeded_shop.h: a small shop from a seed: three devices, a hub with receipts,
// pictures, an erased payload, kinds from the future, and entries that came after the last receipt.
#pragma once

#include <algorithm>
#include <map>

#include "base/json.h"
#include "blobs/blob_store.h"
#include "entries/entry.h"
#include "evidence/check_bundle.h"
#include "evidence/write_bundle.h"
#include "tests/evidence/memory_folder.h"
#include "tests/log/log_folder.h"

namespace jambline::evidence {

inline constexpr std::uint16_t future_kind = 60'000;
inline constexpr int shop_jobs = 4;

class SeededShop {
 public:
  explicit SeededShop(std::uint64_t seed) : random(seed) {
    store = log::must(blobs::BlobStore::open(files, folder.path() / "blobs"));
    auto one = log::open_log(folder.path());
    log::must(one->found_shop(first, "cart 1", log::at(), random));
    shop = one->shop();
    append(*one, first,
           {admission(second, true), admission(third, false), hub_admission(hub.key())});
    const std::size_t mine = 6 + random.below(8);
    for (std::size_t i = 0; i < mine; ++i) append(*one, first, some(1 + random.below(3)));
    work_elsewhere(*one, second, 3 + random.below(8));
    work_elsewhere(*one, third, 5);
    erase(*one);
    take_receipts(*one);
    revoke_third(*one);
    for (std::size_t i = 0; i < 2 + random.below(4); ++i) append(*one, first, some(2));
    work_elsewhere(*one, second, 2 + random.below(3));
  }

  std::unique_ptr<log::EntryLog> open() const {
    return log::open_log(folder.path(), log::OpenMode::ReadOnly);
  }
  JobId job(std::uint64_t number) const {
    return log::job_number(static_cast<std::uint8_t>(1 + number % shop_jobs));
  }
  // `from`: another folder with a log of this shop.
  Result<BundleWritten> write(const JobId& wanted, const std::filesystem::path& to,
                              bool without_missing = false,
                              const std::filesystem::path& from = {}) const {
    auto log = log::EntryLog::open(from.empty() ? folder.path() : from, log::OpenMode::ReadOnly,
                                   log::no_ballast());
    if (!log) return fail(log.error());
    return write_bundle(**log, store.get(), {wanted, to, "a report\n", without_missing}, {}, {});
  }

  SeededRandom random;
  MemoryFolder folder;
  blobs::PosixFiles files;
  std::unique_ptr<blobs::BlobStore> store;
  ShopId shop;
  seal::SigningKey first = log::key_number(1);
  seal::SigningKey second = log::key_number(2);
  seal::SigningKey third = log::key_number(3);
  seal::SigningKey hub = log::key_number(9);
  std::map<DeviceId, std::uint64_t> received;  // by the hub, up to

 private:
  static log::Draft admission(const seal::SigningKey& key, bool manager) {
    return {{},
            seal::kind::device_admitted,
            1,
            to_json(seal::DeviceAdmitted{key.key(), "cart", manager})};
  }
  static log::Draft hub_admission(const seal::Key& key) {
    return {{}, seal::kind::hub_admitted, 1, to_json(seal::HubAdmitted{key, "hub"})};
  }

  log::Draft picture(const JobId& job) {
    std::vector<std::uint8_t> bytes(200 + random.below(3000));
    random.fill(bytes);
    bytes[0] = 0xff;
    bytes[1] = 0xd8;
    entries::PictureTaken taken;
    taken.picture = random.make<PictureId>();
    taken.facts.file = log::must(store->put(bytes));
    taken.facts.size_bytes = static_cast<std::int64_t>(bytes.size());
    taken.facts.width_px = taken.facts.height_px = 10;
    const auto written = entries::write(taken);
    return {job, written.kind, written.schema, written.payload};
  }
  std::vector<log::Draft> some(std::size_t count) {
    std::vector<log::Draft> out;
    while (out.size() < count) {
      const auto number = random.below(shop_jobs + 1);  // 0: the shop's own stream
      const JobId job = log::job_number(static_cast<std::uint8_t>(number));
      const std::string words = R"({"words":")" + std::to_string(random.below(1'000'000)) + R"("})";
      if (number == 0)
        out.push_back({{}, log::note_kind, 1, words});
      else if (random.below(4) == 0)
        out.push_back(picture(job));
      else
        out.push_back({job, random.below(5) == 0 ? future_kind : log::note_kind, 1, words});
    }
    return out;
  }
  void append(log::EntryLog& log, const seal::SigningKey& key,
              const std::vector<log::Draft>& drafts) {
    after_ms_ += 60'000;
    log::must(log.append(key, {}, drafts, log::at(after_ms_), random));
  }

  // What another device writes, brought here: each job has something of each, and a picture.
  void work_elsewhere(log::EntryLog& here, const seal::SigningKey& key, std::size_t count) {
    const MemoryFolder folder_there;
    auto there = log::open_log(folder_there.path());
    log::must(there->add(log::entries_of(here)));
    for (int number = 1; number <= shop_jobs; ++number)
      append(*there, key,
             {log::note("a word", static_cast<std::uint8_t>(number)),
              picture(log::job_number(static_cast<std::uint8_t>(number)))});
    for (std::size_t i = 0; i < count; ++i) append(*there, key, some(1));
    log::must(here.add(log::entries_of(*there)));
  }
  void erase(log::EntryLog& log) {
    const std::uint16_t kinds[] = {log::note_kind};
    for (const auto& entry : log::entries_of(log)) {
      if (entry.header.kind != log::note_kind || !entry.header.subject) continue;
      after_ms_ += 60'000;
      log::must(
          log.erase_payload(first, {}, entry.hash, "asked", kinds, log::at(after_ms_), random));
      return;
    }
  }
  void take_receipts(log::EntryLog& log) {
    std::vector<seal::Receipt> receipts;
    const auto heads = log.heads();
    for (const auto& entry : log::entries_of(log)) {
      const auto& header = entry.header;
      const bool is_last = std::any_of(heads.begin(), heads.end(), [&](const log::Head& head) {
        return head.device == header.device && head.seq == header.seq;
      });
      if (header.seq % 4 != 0 && !is_last) continue;
      seal::Receipt receipt;
      receipt.shop = shop;
      receipt.epoch.bytes.fill(7);
      receipt.device = header.device;
      receipt.seq = received[header.device] = header.seq;
      receipt.hash = entry.hash;
      receipt.received_ms = log::monday_ms + after_ms_;
      seal::sign(receipt, hub);
      receipts.push_back(receipt);
    }
    log::must(log.add_page({{}, receipts, std::nullopt}));
  }
  // Two below its end, so that two entries are here and do not count.
  void revoke_third(log::EntryLog& log) {
    std::map<std::uint64_t, Hash> theirs;
    for (const auto& entry : log::entries_of(log))
      if (entry.header.device == third.device()) theirs[entry.header.seq] = entry.hash;
    const std::uint64_t cut = theirs.rbegin()->first - 2;
    append(log, first,
           {{{},
             seal::kind::device_revoked,
             1,
             to_json(seal::DeviceRevoked{third.device(), cut, theirs.at(cut)})}});
  }

  std::int64_t after_ms_ = 0;
};

}  // namespace jambline::evidence
