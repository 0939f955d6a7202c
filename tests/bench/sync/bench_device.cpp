#include "tests/bench/sync/bench_device.h"

#include <fstream>
#include <iostream>

#include "seal/digest.h"

namespace jambline::bench {

void PackedStore::add(std::span<const seal::SealedEntry> entries) {
  seal::Packer packer;
  const auto close = [&](std::uint64_t first_seq) {
    packs_.push_back(packer.bytes());
    first_seqs_.push_back(first_seq);
    packer.clear();
  };
  std::uint64_t first_seq = entries.front().header.seq;
  for (const auto& entry : entries) {
    device_ = entry.header.device;
    hashes_.push_back(entry.hash);
    if (packer.add(entry)) continue;
    close(first_seq);
    first_seq = entry.header.seq;
    packer.add(entry);
  }
  close(first_seq);
}

Result<std::vector<sync::Head>> PackedStore::heads() {
  std::vector<sync::Head> out;
  if (!hashes_.empty()) out.push_back({device_, hashes_.size(), hashes_.back()});
  return out;
}

Result<std::optional<Hash>> PackedStore::hash_at(const DeviceId& device, std::uint64_t seq) {
  if (device != device_ || seq == 0 || seq > hashes_.size()) return std::optional<Hash>();
  return std::optional<Hash>(hashes_[seq - 1]);
}

Result<sync::DeviceStore::Run> PackedStore::run_from(const DeviceId&, std::uint64_t seq) {
  for (std::size_t i = 0; i < packs_.size(); ++i)
    if (first_seqs_[i] == seq)
      return Run{packs_[i], i + 1 < packs_.size() ? first_seqs_[i + 1] - 1 : hashes_.size()};
  return fail(Code::NoSuchFile, "pack", std::to_string(seq));
}

Status PackedStore::take(const sync::PullPage& page, const std::optional<std::string>& cursor) {
  taken_ += page.entries.size();
  if (cursor) cursor_ = cursor;
  return {};
}

FolderFiles::FolderFiles(const std::filesystem::path& folder, std::size_t count,
                         std::size_t size_bytes, std::uint64_t seed)
    : folder_(folder) {
  std::filesystem::create_directories(folder);
  SeededRandom random(seed);
  std::string bytes(size_bytes, '\0');
  const std::span<std::uint8_t> span(reinterpret_cast<std::uint8_t*>(bytes.data()), bytes.size());
  random.fill(span);
  for (std::size_t i = 0; i < count; ++i) {
    for (std::size_t at = 0; at + 8 <= size_bytes; at += 4096) random.fill(span.subspan(at, 8));
    const Hash name = seal::sha256(span);
    std::ofstream(folder / name.hex(), std::ios::binary)
        .write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
    items_.push_back({name, size_bytes, false});
  }
}

Result<net::Bodies::Read> FolderFiles::read(const sync::BlobPart& part) {
  auto in = std::make_shared<std::ifstream>(folder_ / part.blob.hex(), std::ios::binary);
  in->seekg(static_cast<std::streamoff>(part.offset));
  return [in](std::span<std::uint8_t> bytes) -> Result<std::size_t> {
    in->read(reinterpret_cast<char*>(bytes.data()), static_cast<std::streamsize>(bytes.size()));
    return static_cast<std::size_t>(in->gcount());
  };
}

Result<net::Bodies::Write> FolderFiles::write(const sync::BlobPart&) {
  return fail(Code::NotAllowed, "fetch", "file");
}

BenchDevice::BenchDevice(const ShopId& shop, const seal::SigningKey& key, std::uint16_t port,
                         FolderFiles* files)
    : shop_(shop), key_(key) {
  const auto tls = net::device_context(bench_hub_key().key());
  end_ = std::make_unique<sync::DeviceEnd>(
      sync::DeviceEnd::Parts{shop_, bench_hub_key().key(), key_, store, port});
  if (files) pictures_ = std::make_unique<sync::PictureEnd>(shop_, *end_, *files, port);
  for (std::size_t lane = 0; lane < sync::PictureEnd::lanes; ++lane)
    clients_.push_back(
        std::make_unique<net::Client>(tls, std::vector<sync::Address>{{"127.0.0.1", port}}, files));
}

void BenchDevice::count(const Result<sync::Response>& answer) {
  ++asked.requests;
  const bool wait = answer && answer->status == 429;
  if (wait) ++asked.waits;
  const bool error = !wait && (!answer || answer->status >= 400);
  if (error) ++asked.errors;
  if (!error || !must_end) return;
  std::cerr << "refused: "
            << (answer ? std::to_string(answer->status) + " " + answer->body
                       : std::string(code_name(answer.error().code)) + " " +
                             std::string(answer.error().arg("cause")))
            << "\n";
  std::exit(2);
}

bool BenchDevice::once(sync::DeviceEnd::Lane lane, double* ms) {
  auto next = end_->next(lane, forward_ms());
  if (!next.ask) return false;
  const auto began = std::chrono::steady_clock::now();
  const auto answer = clients_[0]->send(next.ask->request, next.ask->extra_wait_ms);
  if (ms)
    *ms =
        std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - began).count();
  count(answer);
  end_->answered(lane, answer, forward_ms());
  return true;
}

void BenchDevice::push_all(std::uint64_t through) {
  while (end_->state().receipted_seq < through)
    if (!push_once()) std::this_thread::sleep_for(std::chrono::milliseconds(1));
}

void BenchDevice::pull_all(std::uint64_t entries) {
  while (store.taken() < entries)
    if (!once(sync::DeviceEnd::Lane::Pull, nullptr))
      std::this_thread::sleep_for(std::chrono::milliseconds(1));
}

bool BenchDevice::file_once(std::size_t lane) {
  std::unique_lock lock(mutex_);
  auto next = pictures_->next(lane, forward_ms());
  if (!next.ask) return false;
  lock.unlock();
  const auto answer = clients_[lane]->send(next.ask->request, next.ask->extra_wait_ms);
  lock.lock();
  count(answer);
  pictures_->answered(lane, answer, forward_ms());
  return true;
}

void BenchDevice::send_files(bool beside_each_other) {
  while (!end_->token(forward_ms()))
    if (!push_once()) std::this_thread::sleep_for(std::chrono::milliseconds(1));
  std::atomic<bool> begun = false;
  const auto work = [&](std::size_t lane) {
    while (true) {
      const bool did = file_once(lane);
      if (did) begun = true;
      const std::unique_lock lock(mutex_);
      if (!end_->token(forward_ms()) && !did) {
        const auto next = end_->next(sync::DeviceEnd::Lane::Push, forward_ms());
        if (next.ask) {
          const auto answer = clients_[lane]->send(next.ask->request);
          count(answer);
          end_->answered(sync::DeviceEnd::Lane::Push, answer, forward_ms());
          continue;
        }
      }
      if (begun && pictures_->state().to_send == 0 && !did) return;
      if (!did) std::this_thread::sleep_for(std::chrono::milliseconds(1));
    }
  };
  std::vector<std::jthread> lanes;
  if (beside_each_other)
    for (std::size_t lane = 1; lane < sync::PictureEnd::lanes; ++lane)
      lanes.emplace_back([&, lane] { work(lane); });
  work(0);
}

std::uint64_t BenchDevice::sent_bytes() const {
  std::uint64_t out = 0;
  for (const auto& client : clients_) out += client->sent_bytes();
  return out;
}

}  // namespace jambline::bench
