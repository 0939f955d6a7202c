#include "app/record/read_folder.h"

#include <algorithm>
#include <cctype>
#include <map>

#include "engine/read_entry.h"
#include "engine/whole_log.h"
#include "folds/job_fold.h"
#include "folds/shop_fold.h"

namespace jambline::app {

namespace {
constexpr std::size_t fewest_id_signs = 8;

std::string folded(std::string_view text) {
  std::string out;
  for (const char sign : text) {
    const auto byte = static_cast<unsigned char>(sign);
    if (byte >= 0x80 || std::isalnum(byte)) out.push_back(static_cast<char>(std::tolower(byte)));
  }
  return out;
}
}  // namespace

Result<ShopFolder> read_folder(const std::filesystem::path& folder) {
  ShopFolder out;
  JAMBLINE_ASSIGN(out.log, log::EntryLog::open(folder, log::OpenMode::ReadOnly));
  JAMBLINE_ASSIGN(const auto whole, engine::fold_whole_log(*out.log));
  out.shop = whole.shop.view();
  out.rights = whole.rights;
  for (const auto& [id, fold] : whole.jobs) {
    auto view = fold.view();
    if (view.opened) out.cars.push_back(std::move(view));
  }
  std::stable_sort(out.cars.begin(), out.cars.end(), [](const auto& a, const auto& b) {
    return a.opened_ms != b.opened_ms ? a.opened_ms > b.opened_ms : a.job < b.job;
  });
  return out;
}

Result<const folds::CarView*> find_car(const ShopFolder& folder, const std::string& wanted) {
  const std::string signs = folded(wanted);
  std::vector<const folds::CarView*> by_id;
  std::vector<const folds::CarView*> whole;
  std::vector<const folds::CarView*> part;
  for (const auto& car : folder.cars) {
    const std::string plate = folded(car.plate);
    if (signs.empty()) break;
    if (signs.size() >= fewest_id_signs && car.job.hex().rfind(signs, 0) == 0)
      by_id.push_back(&car);
    else if (plate == signs)
      whole.push_back(&car);
    else if (plate.find(signs) != std::string::npos)
      part.push_back(&car);
  }
  const auto& found = !by_id.empty() ? by_id : !whole.empty() ? whole : part;
  if (found.empty()) return fail(Code::Unknown, "show", wanted);
  if (found.size() == 1) return found.front();
  std::string cars;
  for (const auto* car : found) {
    if (!cars.empty()) cars += ", ";
    cars += car->plate + " (" + car->job.hex().substr(0, fewest_id_signs) + ")";
  }
  return fail(Error{Code::Disputed, "show", wanted, {{"cars", cars}}});
}

Result<std::vector<entries::Entry>> time_line(const ShopFolder& folder, const JobId& job) {
  std::vector<entries::Entry> out;
  JAMBLINE_TRY(folder.log->said_of(job, [&](const log::Said& said) {
    out.push_back(engine::read_entry(said));
    return true;
  }));
  (void)folds::judge_all(folder.rights, out);
  std::sort(out.begin(), out.end(), [](const auto& a, const auto& b) { return a.order < b.order; });
  return out;
}

std::filesystem::path blobs_of(const std::filesystem::path& folder) {
  return folder / "blobs";
}

}  // namespace jambline::app
