#include "app/record/write_tables.h"

#include <cerrno>
#include <cstdio>
#include <memory>
#include <set>
#include <unistd.h>

#include "engine/read_entry.h"
#include "engine/rights_of_log.h"
#include "folds/job_fold.h"
#include "folds/tables.h"
#include "log/files.h"

namespace jambline::app {

namespace fs = std::filesystem;

namespace {
constexpr const char* exporting = "export";
constexpr std::size_t flush_bytes = 256 * 1024;

struct CloseFile {
  void operator()(std::FILE* file) const { (void)std::fclose(file); }
};

// One table on its way to the disk.
class TableFile {
 public:
  TableFile(const folds::Table& table, bool json, const fs::path& folder)
      : table_(table),
        json_(json),
        path_(folder / (std::string(table.name) + (json ? ".json" : ".csv"))) {}

  Status open() {
    file_.reset(std::fopen(path_.c_str(), "wbx"));
    if (!file_) return failed();
    if (json_)
      text_ = folds::json_before_rows(table_);
    else
      folds::add_csv_heads(text_, table_);
    return {};
  }
  Status add(const std::vector<folds::TableRow>& rows) {
    for (const auto& row : rows) {
      if (json_)
        folds::add_json_row(text_, table_, row, rows_ == 0);
      else
        folds::add_csv_row(text_, table_, row);
      ++rows_;
    }
    return text_.size() < flush_bytes ? Status() : flush();
  }
  Status close() {
    if (json_) text_ += folds::json_after_rows();
    JAMBLINE_TRY(flush());
    if (std::fflush(file_.get()) != 0 || fsync(fileno(file_.get())) != 0) return failed();
    if (std::fclose(file_.release()) != 0) return failed();
    return {};
  }
  const folds::Table& table() const { return table_; }
  TablesWritten::One written() const { return {path_.filename().string(), rows_}; }

 private:
  Status flush() {
    const bool all = std::fwrite(text_.data(), 1, text_.size(), file_.get()) == text_.size();
    text_.clear();
    return all ? Status() : failed();
  }
  Status failed() const { return fail(log::file_error(exporting, path_, errno)); }

  const folds::Table& table_;
  bool json_;
  fs::path path_;
  std::unique_ptr<std::FILE, CloseFile> file_;
  std::string text_;
  std::uint64_t rows_ = 0;
};

Result<std::vector<const folds::Table*>> chosen(const std::vector<std::string>& names) {
  std::vector<const folds::Table*> out;
  for (const auto& name : names) {
    const auto* table = folds::table_of(name);
    if (!table) return fail(Code::Unknown, exporting, name);
    out.push_back(table);
  }
  if (names.empty())
    for (const auto& table : folds::tables()) out.push_back(&table);
  return out;
}

struct ReadCar {
  folds::CarView view;
  std::vector<entries::Entry> entries;
};

Result<ReadCar> read_car(log::EntryLog& log, const folds::RightsFold& rights, const JobId& job) {
  ReadCar out;
  JAMBLINE_TRY(log.said_of(job, [&](const log::Said& said) {
    out.entries.push_back(engine::read_entry(said));
    return true;
  }));
  (void)folds::judge_all(rights, out.entries);
  folds::JobFold fold(job);
  for (const auto& entry : out.entries) fold.apply(entry);
  out.view = fold.view();
  return out;
}

class TablesOfLog {
 public:
  TablesOfLog(const TablesWanted& wanted, TablesWritten& written)
      : wanted_(wanted), written_(written) {}

  Status write(const std::vector<const folds::Table*>& tables, const fs::path& folder) {
    JAMBLINE_ASSIGN(log_, log::EntryLog::open(wanted_.folder, log::OpenMode::ReadOnly));
    JAMBLINE_ASSIGN(rights_, engine::rights_of(*log_));
    JAMBLINE_ASSIGN(const auto shop, engine::shop_of(*log_, rights_));
    shop_ = shop.first.view();
    files_.reserve(tables.size());
    for (const auto* table : tables) {
      files_.emplace_back(*table, wanted_.json, folder);
      JAMBLINE_TRY(files_.back().open());
    }
    JAMBLINE_TRY(of_shop());
    std::set<JobId> seen;
    std::vector<JobId> jobs;  // as they were opened
    JAMBLINE_TRY(log_->said_after(0, [&](const log::Said& said) {
      if (said.header.subject && seen.insert(said.header.subject).second)
        jobs.push_back(said.header.subject);
      return true;
    }));
    for (const auto& job : jobs) JAMBLINE_TRY(of_car(job));
    for (auto& file : files_) {
      JAMBLINE_TRY(file.close());
      written_.tables.push_back(file.written());
    }
    return {};
  }

 private:
  Status of_shop() {
    JAMBLINE_ASSIGN(const ReadCar stream, read_car(*log_, rights_, JobId{}));
    for (auto& file : files_) {
      std::vector<folds::TableRow> rows;
      if (file.table().of_shop) file.table().of_shop(shop_, rows);
      if (file.table().of_entry)
        for (const auto& entry : stream.entries) file.table().of_entry(entry, shop_, rows);
      JAMBLINE_TRY(file.add(rows));
    }
    return {};
  }

  Status of_car(const JobId& job) {
    JAMBLINE_ASSIGN(const ReadCar car, read_car(*log_, rights_, job));
    const bool whole = wanted_.period.from_ms <= 0 && wanted_.period.to_ms == INT64_MAX;
    if (!car.view.opened && !whole) return {};
    if (car.view.opened && !whole &&
        !folds::reaches_into(folds::account_of(car.view), wanted_.period.from_ms,
                             wanted_.period.to_ms))
      return {};
    written_.cars += car.view.opened ? 1 : 0;
    for (auto& file : files_) {
      std::vector<folds::TableRow> rows;
      if (file.table().of_car && car.view.opened) file.table().of_car(car.view, shop_, rows);
      if (file.table().of_entry)
        for (const auto& entry : car.entries) file.table().of_entry(entry, shop_, rows);
      JAMBLINE_TRY(file.add(rows));
    }
    return {};
  }

  const TablesWanted& wanted_;
  TablesWritten& written_;
  std::unique_ptr<log::EntryLog> log_;
  folds::RightsFold rights_;
  folds::ShopView shop_;
  std::vector<TableFile> files_;
};

}  // namespace

Result<TablesWritten> write_tables(const TablesWanted& wanted) {
  JAMBLINE_ASSIGN(const auto tables, chosen(wanted.names));
  std::error_code refused;
  const fs::path to = fs::absolute(wanted.to, refused).lexically_normal();
  if (refused) return fail(log::file_error(exporting, wanted.to, refused.value()));
  const fs::path target = to.filename().empty() ? to.parent_path() : to;
  if (fs::exists(target, refused) &&
      (!fs::is_directory(target, refused) || !fs::is_empty(target, refused)))
    return fail(Code::AlreadyDone, exporting, wanted.to.string());
  const fs::path beside = target.string() + ".part";
  fs::remove_all(beside, refused);
  if (!fs::create_directory(beside, refused) || refused)
    return fail(log::file_error(exporting, beside, refused ? refused.value() : EEXIST));
  TablesWritten out;
  const auto write_all = [&]() -> Status {
    JAMBLINE_TRY(TablesOfLog(wanted, out).write(tables, beside));
    JAMBLINE_TRY(log::sync_folder(beside));
    fs::rename(beside, target, refused);
    if (refused) return fail(log::file_error(exporting, target, refused.value()));
    return log::sync_folder(target.parent_path());
  };
  const Status done = write_all();
  if (!done) {
    fs::remove_all(beside, refused);
    return fail(done.error());
  }
  return out;
}

}  // namespace jambline::app
