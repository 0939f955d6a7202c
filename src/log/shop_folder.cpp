#include "log/shop_folder.h"

#include <algorithm>
#include <charconv>
#include <system_error>
#include <tuple>

#include "log/files.h"
#include "seal/digest.h"
#include "seal/fingerprint.h"
#include "seal/pack.h"

namespace jambline::log {

namespace fs = std::filesystem;

namespace {
constexpr std::size_t slice_entries = 50;
constexpr std::size_t most_receipts_bytes = 64U << 20U;

Error stopped(std::string operation) {
  return Error{Code::Stopped, std::move(operation), "shop folder", {}};
}

std::string readme(const ShopId& shop, const Exported& count) {
  return "A shop's whole log, as written by its devices and signed by them.\n\n"
         "Shop fingerprint: " +
         seal::fingerprint(shop) +
         "\n"
         "Entries:          " +
         std::to_string(count.entries) +
         "\n"
         "Receipts:         " +
         std::to_string(count.receipts) +
         "\n\n"
         "Compare the fingerprint with one you know from elsewhere: a log whose founder's key was\n"
         "replaced has another one. entries/ holds the entries, device by device; FORMAT.md of "
         "the\n"
         "program says what every byte means.\n";
}

struct PackFile {
  fs::path path;
  std::string device;  // for the order of trying only
  std::uint64_t first{};
};

Result<std::vector<PackFile>> list_packs(const fs::path& folder) {
  std::error_code refused;
  std::vector<PackFile> out;
  fs::directory_iterator at(folder, refused);
  if (refused) return fail(file_error("import", folder, refused.value()));
  for (; at != fs::directory_iterator(); at.increment(refused)) {
    if (refused) return fail(file_error("import", folder, refused.value()));
    if (at->path().extension() != ".jle" || !at->is_regular_file(refused)) continue;
    PackFile file{at->path(), {}, 0};
    const std::string name = at->path().filename().string();
    const auto dash = name.find('-');
    file.device = name.substr(0, dash);
    if (dash != std::string::npos)
      std::from_chars(name.data() + dash + 1, name.data() + name.size(), file.first);
    out.push_back(std::move(file));
  }
  std::sort(out.begin(), out.end(), [](const PackFile& a, const PackFile& b) {
    return std::tie(a.device, a.first, a.path) < std::tie(b.device, b.first, b.path);
  });
  return out;
}

bool waits(Code code) {
  return code == Code::NotAdmitted || code == Code::ChainBroken;
}
bool ends_import(Code code) {
  return code == Code::DiskFull || code == Code::ReadOnly || code == Code::FileFailed ||
         code == Code::NewerSchema || code == Code::DatabaseDamaged || code == Code::Stopped;
}

Status import_pack(EntryLog& log, const PackFile& file, const std::stop_token& stop,
                   const std::function<void()>& breathe, const ShopId& wanted,
                   std::uint64_t& added) {
  JAMBLINE_ASSIGN(const std::string bytes, read_file(file.path, seal::most_pack_bytes));
  JAMBLINE_ASSIGN(const auto entries, seal::decode_pack(seal::bytes_of(bytes)));
  if (wanted)
    for (const auto& entry : entries)
      if (entry.header.shop != wanted)
        return fail(Code::WrongShop, "import", file.path.filename().string());
  for (std::size_t i = 0; i < entries.size(); i += slice_entries) {
    if (stop.stop_requested()) return fail(stopped("import"));
    const auto slice = std::span(entries).subspan(i, std::min(slice_entries, entries.size() - i));
    JAMBLINE_ASSIGN(const auto stored, log.add(slice));
    added += stored.size();
    breathe();
  }
  return {};
}

Status import_receipts(EntryLog& log, const fs::path& file, Imported& out) {
  JAMBLINE_ASSIGN(const std::string bytes, read_file(file, most_receipts_bytes));
  std::vector<seal::Receipt> receipts;
  for (auto left = seal::bytes_of(bytes); !left.empty();) {
    const auto one = left.first(std::min(left.size(), seal::receipt_bytes));
    JAMBLINE_ASSIGN(receipts.emplace_back(), seal::decode_receipt(one));
    left = left.subspan(one.size());
  }
  JAMBLINE_TRY(log.add_page({{}, receipts, std::nullopt}));
  out.receipts = receipts.size();
  return {};
}
}  // namespace

Result<Exported> export_shop(EntryLog& log, const fs::path& folder, const std::stop_token& stop,
                             const Progress& progress) {
  const fs::path entries = folder / "entries";
  std::error_code refused;
  if (fs::exists(folder / "README.txt", refused) || fs::exists(entries, refused))
    return fail(Code::AlreadyDone, "export", folder.filename().string());
  if (fs::create_directories(entries, refused); refused)
    return fail(file_error("export", entries, refused.value()));

  Exported out;
  const auto heads = log.heads();
  std::uint64_t all = 0;
  for (const Head& head : heads) all += head.seq;
  for (const Head& head : heads) {
    seal::Packer pack;
    std::uint64_t first = 1;
    Status written;
    const auto flush = [&](std::uint64_t last) {
      const std::string name =
          head.device.hex() + '-' + std::to_string(first) + '-' + std::to_string(last) + ".jle";
      written = write_file(entries / name, pack.bytes());
      ++out.files;
      first = last + 1;
      pack.clear();
      if (stop.stop_requested() && written) written = fail(stopped("export"));
      if (progress) progress(static_cast<double>(out.entries) / static_cast<double>(all));
      return written.has_value();
    };
    JAMBLINE_TRY(log.read_device(head.device, 1, [&](const Stored& stored) {
      if (!pack.add(stored.entry)) {
        if (!flush(stored.entry.header.seq - 1)) return false;
        pack.add(stored.entry);
      }
      ++out.entries;
      return stored.entry.header.seq < head.seq;
    }));
    JAMBLINE_TRY(written);
    if (pack.count() > 0) flush(head.seq);
    JAMBLINE_TRY(written);
  }
  JAMBLINE_ASSIGN(const auto receipts, log.receipts());
  std::string bytes;
  for (const auto& receipt : receipts) bytes += seal::encode(receipt);
  out.receipts = receipts.size();
  JAMBLINE_TRY(write_file(folder / "receipts", bytes));
  JAMBLINE_TRY(sync_folder(entries));
  JAMBLINE_TRY(write_file(folder / "README.txt", readme(log.shop(), out)));
  JAMBLINE_TRY(sync_folder(folder));
  return out;
}

Result<Imported> import_shop(EntryLog& log, const fs::path& folder, const std::stop_token& stop,
                             const Progress& progress, const ShopId& wanted) {
  Imported out;
  JAMBLINE_ASSIGN(auto waiting, list_packs(folder / "entries"));
  out.files = waiting.size();
  std::size_t done_files = 0;
  const auto breathe = [&] {
    if (progress) progress(static_cast<double>(done_files) / static_cast<double>(out.files));
  };
  // A joining device's entries wait for its admission, which stands in another device's file.
  while (!waiting.empty()) {
    std::vector<PackFile> still;
    std::vector<std::pair<std::string, Error>> why;
    const std::uint64_t before = out.entries;
    for (PackFile& file : waiting) {
      Status done = import_pack(log, file, stop, breathe, wanted, out.entries);
      ++done_files;
      if (done) continue;
      if (ends_import(done.error().code)) return fail(std::move(done.error()));
      std::string name = file.path.filename().string();
      if (waits(done.error().code)) {
        why.emplace_back(std::move(name), std::move(done.error()));
        still.push_back(std::move(file));
        --done_files;
      } else {
        out.refused.emplace_back(std::move(name), std::move(done.error()));
      }
    }
    if (still.size() == waiting.size() && out.entries == before) {
      out.refused.insert(out.refused.end(), why.begin(), why.end());
      break;
    }
    waiting = std::move(still);
  }
  std::error_code refused;
  if (fs::exists(folder / "receipts", refused)) {
    Status done = import_receipts(log, folder / "receipts", out);
    if (!done && ends_import(done.error().code)) return fail(std::move(done.error()));
    if (!done) out.refused.emplace_back("receipts", std::move(done.error()));
  }
  if (progress) progress(1.0);
  return out;
}

}  // namespace jambline::log
