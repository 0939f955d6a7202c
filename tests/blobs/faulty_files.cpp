#include "tests/blobs/faulty_files.h"

#include <algorithm>
#include <set>

namespace jambline::test {

using blobs::FileReader;
using blobs::FileWriter;
using blobs::FolderItem;
using Path = blobs::Files::Path;

namespace {

constexpr std::size_t block_bytes = 512;

class MemoryReader final : public FileReader {
 public:
  explicit MemoryReader(std::vector<std::uint8_t> bytes) : bytes_(std::move(bytes)) {}
  Result<std::size_t> read(std::span<std::uint8_t> out) override {
    const std::size_t got = std::min(out.size(), bytes_.size() - at_);
    std::copy_n(bytes_.begin() + static_cast<std::ptrdiff_t>(at_), got, out.begin());
    at_ += got;
    return got;
  }

  Status seek(std::uint64_t offset) override {
    at_ = std::min<std::size_t>(offset, bytes_.size());
    return {};
  }

 private:
  std::vector<std::uint8_t> bytes_;
  std::size_t at_ = 0;
};

}  // namespace

class FaultyWriter final : public FileWriter {
 public:
  FaultyWriter(FaultyFiles& files, Path path, std::shared_ptr<FaultyFiles::Node> node)
      : files_(files), path_(std::move(path)), node_(std::move(node)) {}

  Status write(std::span<const std::uint8_t> bytes) override {
    JAMBLINE_TRY(files_.count("write", path_));
    ++files_.writes_;
    const bool full = files_.full_at_ && files_.writes_ >= *files_.full_at_;
    if (full) bytes = bytes.first(bytes.size() / 2);
    node_->bytes.insert(node_->bytes.end(), bytes.begin(), bytes.end());
    if (full) return fail(Code::DiskFull, "write", path_.string());
    return {};
  }
  Status sync() override {
    JAMBLINE_TRY(files_.count("sync", path_));
    node_->durable_bytes = node_->bytes;
    return {};
  }
  Status close() override { return files_.count("close", path_); }

 private:
  FaultyFiles& files_;
  Path path_;
  std::shared_ptr<FaultyFiles::Node> node_;
};

FaultyFiles::FaultyFiles() : root_(std::make_shared<Node>()) {
  root_->is_folder = true;
}

Status FaultyFiles::count(const char* operation, const Path& subject) {
  ++operations_;
  if (is_off()) return fail(Error{Code::FileFailed, operation, subject.string(), {}});
  if (refuse_at_ && operations_ == *refuse_at_) return fail(refusal_, operation, subject.string());
  return {};
}

std::shared_ptr<FaultyFiles::Node> FaultyFiles::find(const Path& path) const {
  std::shared_ptr<Node> node = root_;
  for (const Path& part : path.relative_path()) {
    const auto found = node->names.find(part.string());
    if (found == node->names.end()) return nullptr;
    node = found->second;
  }
  return node;
}

Result<std::shared_ptr<FaultyFiles::Node>> FaultyFiles::folder_of(const char* operation,
                                                                  const Path& path) const {
  auto node = find(path.parent_path());
  if (!node || !node->is_folder) return fail(Code::NoSuchFile, operation, path.string());
  return node;
}

Result<std::unique_ptr<FileWriter>> FaultyFiles::create(const Path& file) {
  JAMBLINE_TRY(count("create", file));
  JAMBLINE_ASSIGN(const auto folder, folder_of("create", file));
  auto node = std::make_shared<Node>();
  if (!folder->names.emplace(file.filename().string(), node).second)
    return fail(Code::FileFailed, "create", file.string());
  return std::make_unique<FaultyWriter>(*this, file, std::move(node));
}

Result<std::unique_ptr<FileWriter>> FaultyFiles::append(const Path& file) {
  JAMBLINE_TRY(count("append", file));
  auto node = find(file);
  if (!node || node->is_folder) return fail(Code::NoSuchFile, "append", file.string());
  return std::make_unique<FaultyWriter>(*this, file, std::move(node));
}

Result<std::unique_ptr<FileReader>> FaultyFiles::open(const Path& file) {
  const auto node = find(file);
  if (!node) return fail(Code::NoSuchFile, "open", file.string());
  return std::make_unique<MemoryReader>(node->bytes);
}

Status FaultyFiles::rename(const Path& from, const Path& to) {
  JAMBLINE_TRY(count("rename", from));
  JAMBLINE_ASSIGN(const auto source, folder_of("rename", from));
  JAMBLINE_ASSIGN(const auto target, folder_of("rename", to));
  const auto node = find(from);
  if (!node) return fail(Code::NoSuchFile, "rename", from.string());
  source->names.erase(from.filename().string());
  target->names[to.filename().string()] = node;
  return {};
}

Status FaultyFiles::remove(const Path& file) {
  JAMBLINE_TRY(count("remove", file));
  JAMBLINE_ASSIGN(const auto folder, folder_of("remove", file));
  if (folder->names.erase(file.filename().string()) == 0)
    return fail(Code::NoSuchFile, "remove", file.string());
  return {};
}

Status FaultyFiles::make_folder(const Path& folder) {
  JAMBLINE_TRY(count("make_folder", folder));
  if (find(folder)) return {};
  JAMBLINE_ASSIGN(const auto above, folder_of("make_folder", folder));
  auto node = std::make_shared<Node>();
  node->is_folder = true;
  above->names[folder.filename().string()] = node;
  return {};
}

Status FaultyFiles::sync_folder(const Path& folder) {
  JAMBLINE_TRY(count("sync_folder", folder));
  const auto node = find(folder);
  if (!node) return fail(Code::NoSuchFile, "sync_folder", folder.string());
  node->durable_names = node->names;
  return {};
}

Result<std::vector<FolderItem>> FaultyFiles::list(const Path& folder) {
  const auto node = find(folder);
  if (!node) return fail(Code::NoSuchFile, "list", folder.string());
  std::vector<FolderItem> items;
  for (const auto& [name, child] : node->names) {
    items.push_back({name, child->is_folder ? FolderItem::Kind::Folder : FolderItem::Kind::File,
                     child->bytes.size()});
  }
  return items;
}

Result<std::uint64_t> FaultyFiles::size_bytes(const Path& file) {
  const auto node = find(file);
  if (!node) return fail(Code::NoSuchFile, "size", file.string());
  return node->bytes.size();
}

Result<std::uint64_t> FaultyFiles::free_bytes(const Path&) {
  return full_at_ ? 0U : 1U << 30U;
}

void FaultyFiles::damage(const Path& file) {
  const auto node = find(file);
  node->bytes.at(node->bytes.size() / 2) ^= 1U;
  node->durable_bytes = node->bytes;
}

std::vector<std::uint8_t> FaultyFiles::lost_bytes(const Node& node, Loss loss,
                                                  SeededRandom& random) {
  if (loss == Loss::BytesKept || node.bytes == node.durable_bytes) return node.bytes;
  if (loss != Loss::Torn) return node.durable_bytes;
  std::vector<std::uint8_t> bytes = node.bytes;
  for (std::size_t at = node.durable_bytes.size(); at < bytes.size(); at += block_bytes) {
    const auto from = bytes.begin() + static_cast<std::ptrdiff_t>(at);
    const auto to =
        bytes.begin() + static_cast<std::ptrdiff_t>(std::min(bytes.size(), at + block_bytes));
    if (random.below(2) == 0) std::fill(from, to, std::uint8_t{0});
  }
  bytes.resize(node.durable_bytes.size() +
               random.below(bytes.size() - node.durable_bytes.size() + 1));
  return bytes;
}

std::shared_ptr<FaultyFiles::Node> FaultyFiles::lost(const Node& node, Loss loss,
                                                     SeededRandom& random, Copies& copies) {
  if (const auto known = copies.find(&node); known != copies.end()) return known->second;
  auto copy = std::make_shared<Node>();
  copies[&node] = copy;
  copy->is_folder = node.is_folder;
  copy->bytes = copy->durable_bytes = lost_bytes(node, loss, random);
  std::set<std::string> all;
  for (const auto& [name, child] : node.names) all.insert(name);
  for (const auto& [name, child] : node.durable_names) all.insert(name);
  for (const std::string& name : all) {
    const bool live = loss == Loss::NamesKept || (loss == Loss::Torn && random.below(2) == 0);
    const Names& names = live ? node.names : node.durable_names;
    if (const auto found = names.find(name); found != names.end())
      copy->names[name] = lost(*found->second, loss, random, copies);
  }
  copy->durable_names = copy->names;
  return copy;
}

std::unique_ptr<FaultyFiles> FaultyFiles::after_power_loss(Loss loss, std::uint64_t seed) const {
  auto next = std::make_unique<FaultyFiles>();
  SeededRandom random(seed);
  Copies copies;
  next->root_ = lost(*root_, loss, random, copies);
  return next;
}

}  // namespace jambline::test
