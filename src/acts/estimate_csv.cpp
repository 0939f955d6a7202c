#include "acts/estimate_csv.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <optional>

namespace jambline::acts {

namespace {
constexpr const char* reading_estimate = "read the estimate";
constexpr std::size_t most_line_bytes = 80;
constexpr std::size_t shown_bytes = 120;

struct Record {
  int line = 1;
  std::string text;
  std::vector<std::string> fields;
  std::optional<EstimateFault> fault;
};

// Takes one record at a time off the front.
class Records {
 public:
  explicit Records(std::string_view text) : text_(text) {}

  std::optional<Record> next() {
    if (at_ >= text_.size()) return std::nullopt;
    Record out;
    out.line = line_;
    const std::size_t start = at_;
    do {
      out.fields.push_back(field(out));
    } while (take(','));
    const std::size_t end = at_;
    take('\r');
    if (take('\n')) ++line_;
    out.text = shown(text_.substr(start, end - start));
    return out;
  }

 private:
  bool ends() const {
    return at_ >= text_.size() || text_[at_] == '\n' ||
           (text_[at_] == '\r' && (at_ + 1 == text_.size() || text_[at_ + 1] == '\n'));
  }
  bool take(char sign) {
    if (at_ >= text_.size() || text_[at_] != sign) return false;
    ++at_;
    return true;
  }
  std::string field(Record& record) {
    if (take('"')) return quoted(record);
    std::string out;
    while (!ends() && text_[at_] != ',') {
      if (text_[at_] == '"') record.fault = EstimateFault::QuoteInside;
      out.push_back(text_[at_++]);
    }
    return out;
  }
  std::string quoted(Record& record) {
    std::string out;
    while (at_ < text_.size()) {
      const char sign = text_[at_++];
      if (sign == '"' && !take('"')) {
        while (!ends() && text_[at_] != ',') {
          record.fault = EstimateFault::TextAfterQuote;
          ++at_;
        }
        return out;
      }
      if (sign == '\n') ++line_;
      out.push_back(sign);
    }
    record.fault = EstimateFault::QuoteNeverCloses;
    return out;
  }
  // Never ends in the middle of a sign of several bytes.
  static std::string shown(std::string_view text) {
    std::size_t length = std::min(text.size(), shown_bytes);
    while (length < text.size() && length > 0 &&
           (static_cast<unsigned char>(text[length]) & 0xC0U) == 0x80U)
      --length;
    return std::string(text.substr(0, length));
  }

  std::string_view text_;
  std::size_t at_ = 0;
  int line_ = 1;
};

std::string trimmed(std::string_view text) {
  const auto from = text.find_first_not_of(" \t");
  if (from == std::string_view::npos) return {};
  return std::string(text.substr(from, text.find_last_not_of(" \t") - from + 1));
}

std::string lower(std::string text) {
  for (char& sign : text)
    if (sign >= 'A' && sign <= 'Z') sign = static_cast<char>(sign - 'A' + 'a');
  return text;
}

bool is_utf8(std::string_view text) {
  std::size_t at = 0;
  while (at < text.size()) {
    const auto lead = static_cast<unsigned char>(text[at]);
    const std::size_t more = lead < 0x80   ? 0
                             : lead < 0xC2 ? 9
                             : lead < 0xE0 ? 1
                             : lead < 0xF0 ? 2
                             : lead < 0xF5 ? 3
                                           : 9;
    if (more == 9 || at + more >= text.size()) return false;
    for (std::size_t i = 1; i <= more; ++i)
      if ((static_cast<unsigned char>(text[at + i]) & 0xC0U) != 0x80U) return false;
    at += more + 1;
  }
  return true;
}

struct Columns {
  std::size_t stage = 0;
  std::size_t title = 0;
  std::size_t hours = 0;
  std::size_t count = 0;
};

Result<Columns> columns_of(const Record& head) {
  Columns out;
  out.count = head.fields.size();
  for (auto [name, place] :
       {std::pair{"stage", &out.stage}, {"title", &out.title}, {"hours", &out.hours}}) {
    std::size_t at = 0;
    while (at < head.fields.size() && lower(trimmed(head.fields[at])) != name) ++at;
    if (at == head.fields.size()) {
      Error error{Code::Missing, reading_estimate, name, {{"field", name}}};
      if (head.text.find(';') != std::string::npos) error.args.emplace_back("cause", "semicolons");
      return fail(std::move(error));
    }
    *place = at;
  }
  return out;
}

Result<int> minutes_of(std::string text, EstimateFault& why) {
  std::replace(text.begin(), text.end(), ',', '.');
  double hours = 0;
  const auto [end, error] =
      std::from_chars(text.data(), text.data() + text.size(), hours, std::chars_format::fixed);
  const bool whole =
      error == std::errc{} && end == text.data() + text.size() && std::isfinite(hours);
  if (!whole) {
    why = EstimateFault::HoursNotANumber;
    return fail(Code::Malformed, reading_estimate, "hours");
  }
  if (hours < 0 || hours > 1000) {
    why = EstimateFault::HoursOutOfRange;
    return fail(Code::OutOfRange, reading_estimate, "hours");
  }
  return static_cast<int>(std::floor(hours * 60 + 0.5));
}

Result<PlannedOperation> planned(const Record& record, const Columns& columns, EstimateFault& why) {
  const auto refuse = [&](EstimateFault fault) {
    why = fault;
    return fail(Code::Malformed, reading_estimate, "row");
  };
  if (record.fault) return refuse(*record.fault);
  if (record.fields.size() != columns.count) return refuse(EstimateFault::FieldCount);
  const std::string word = lower(trimmed(record.fields[columns.stage]));
  std::optional<job::Stage> stage;
  for (std::size_t i = 0; i < enum_words<job::Stage>.size(); ++i)
    if (lower(std::string(enum_words<job::Stage>[i])) == word) stage = static_cast<job::Stage>(i);
  if (!stage) return refuse(EstimateFault::UnknownStage);
  PlannedOperation out{*stage, trimmed(record.fields[columns.title]), 0};
  if (out.title.size() > most_line_bytes) return refuse(EstimateFault::TitleTooLong);
  JAMBLINE_ASSIGN(out.estimate_min, minutes_of(trimmed(record.fields[columns.hours]), why));
  return out;
}
}  // namespace

Result<EstimateRows> read_estimate_csv(std::string_view text) {
  if (text.size() > most_estimate_bytes)
    return fail(Error{Code::TooLarge, reading_estimate, "file", {{"limit", "1 MiB"}}});
  if (!is_utf8(text)) return fail(Code::Malformed, reading_estimate, "UTF-8");
  if (text.substr(0, 3) == "\xEF\xBB\xBF") text.remove_prefix(3);
  Records records(text);
  const auto head = records.next();
  if (!head) return fail(Error{Code::Missing, reading_estimate, "stage", {{"field", "stage"}}});
  JAMBLINE_ASSIGN(const Columns columns, columns_of(*head));
  EstimateRows out;
  while (const auto record = records.next()) {
    if (record->fields.size() == 1 && trimmed(record->fields[0]).empty() && !record->fault)
      continue;
    if (out.operations.size() + out.rejected.size() == most_estimate_rows)
      return fail(Error{Code::TooLarge,
                        reading_estimate,
                        "rows",
                        {{"limit", std::to_string(most_estimate_rows)}}});
    EstimateFault why{};
    if (auto row = planned(*record, columns, why))
      out.operations.push_back(std::move(*row));
    else
      out.rejected.push_back({record->line, record->text, why});
  }
  return out;
}

}  // namespace jambline::acts
