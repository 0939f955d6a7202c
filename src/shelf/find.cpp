#include "shelf/find.h"

#include <algorithm>
#include <sqlite3.h>

#include "base/json.h"
#include "shelf/find_rows.h"
#include "shelf/open_reading.h"

namespace jambline::shelf {

namespace {

constexpr int operations_between_looks = 2000;
constexpr std::size_t line_around_bytes = 80;  // before and after a hit
constexpr int first_text = 2;                  // columns of an answer before the words
constexpr std::size_t text_columns = 7;
constexpr std::size_t code_column = 7;
constexpr std::array<folds::FindField, text_columns> field_of_column{
    folds::FindField::Plate,   folds::FindField::Vin,  folds::FindField::Color,
    folds::FindField::Notes,   folds::FindField::Work, folds::FindField::Reasons,
    folds::FindField::Customer};

// What stops a query that runs: looked at by SQLite every so many steps.
class Watch {
 public:
  Watch(sqlite::Database& database, const std::stop_token& stop) : database_(database) {
    if (stop.stop_possible())
      sqlite3_progress_handler(
          database.raw(), operations_between_looks,
          [](void* of) {
            return static_cast<const std::stop_token*>(of)->stop_requested() ? 1 : 0;
          },
          const_cast<std::stop_token*>(&stop));
  }
  ~Watch() { sqlite3_progress_handler(database_.raw(), 0, nullptr, nullptr); }
  Watch(const Watch&) = delete;
  Watch& operator=(const Watch&) = delete;

 private:
  sqlite::Database& database_;
};

// A string of the query language; tokens hold letters and digits only.
std::string quoted(const std::vector<Token>& tokens) {
  std::string out = "\"";
  for (const auto& token : tokens) {
    if (out.size() > 1) out.push_back(' ');
    for (const char sign : token.text)
      if (sign != '"' && sign != '\0') out.push_back(sign);
  }
  return out + "\"";
}

std::string any_of(const std::vector<std::string>& codes) {
  std::string out;
  for (const auto& code : codes) out += (out.empty() ? "codes : (\"" : " OR \"") + code + "\"";
  return out.empty() ? out : out + ")";
}

template <class T>
void and_one_of(std::vector<std::string>& all, const std::vector<T>& wanted) {
  std::vector<std::string> codes;
  codes.reserve(wanted.size());
  for (const auto& one : wanted) codes.push_back(folds::find_code(one));
  if (!codes.empty()) all.push_back(any_of(codes));
}

bool separates(char sign) {
  const auto byte = static_cast<unsigned char>(sign);
  return byte <= 0x20U || byte == 0x7FU;
}

// Cut where a letter begins.
std::string_view shortened(std::string_view text, std::size_t most) {
  if (text.size() <= most) return text;
  while (most > 0 && (static_cast<unsigned char>(text[most]) & 0xC0U) == 0x80U) --most;
  return text.substr(0, most);
}

// The line around a hit, cut where letters begin; `hit` then says where it is in there.
void take_line(std::string_view text, std::size_t begin, std::size_t end, FindHit& hit) {
  const auto inside = [&](std::size_t at) {
    return at < text.size() && (static_cast<unsigned char>(text[at]) & 0xC0U) == 0x80U;
  };
  std::size_t from = begin;
  while (from > 0 && text[from - 1] != '\n' && begin - from < line_around_bytes) --from;
  while (from < begin && inside(from)) ++from;
  std::size_t to = end;
  while (to < text.size() && text[to] != '\n' && to - end < line_around_bytes) ++to;
  while (to > end && inside(to)) --to;
  hit.text = text.substr(from, to - from);
  hit.begin = static_cast<int>(begin - from);
  hit.end = static_cast<int>(end - from);
}

struct FlagAsked {
  const std::optional<bool>& wanted;
  std::int64_t flag;
};

// What has to hold besides the words.
std::string facts_of(const FindAsked& asked) {
  std::string out;
  std::int64_t looked_at = 0;
  std::int64_t set = 0;
  for (const auto& [wanted, flag] :
       {FlagAsked{asked.redo, redo_flag}, FlagAsked{asked.came_back, came_back_flag},
        FlagAsked{asked.spray_override, spray_override_flag},
        FlagAsked{asked.other_override, other_override_flag},
        FlagAsked{asked.sprayed_without, sprayed_without_flag},
        FlagAsked{asked.pictures_missing, pictures_missing_flag},
        FlagAsked{asked.amended, amended_flag}, FlagAsked{asked.disputed, disputed_flag}}) {
    if (!wanted) continue;
    looked_at |= flag;
    if (*wanted) set |= flag;
  }
  if (looked_at != 0)
    out += " AND (find_fact.flags & " + std::to_string(looked_at) + ") = " + std::to_string(set);
  if (asked.delivered)
    out += *asked.delivered ? " AND find_fact.delivered IS NOT NULL"
                            : " AND find_fact.delivered IS NULL";
  if (asked.late)
    out += std::string(*asked.late ? " AND " : " AND NOT ") +
           "(find_fact.promised IS NOT NULL AND coalesce(find_fact.delivered, " +
           std::to_string(asked.now_ms) + ") > find_fact.promised)";
  if (!asked.next_stages.empty()) {
    std::string stages;
    for (const auto stage : asked.next_stages)
      stages += (stages.empty() ? "" : ", ") + std::to_string(static_cast<int>(stage));
    out += " AND find_fact.next IN (" + stages + ")";
  }
  return out;
}

std::string places_of(const FindAsked& asked, const char* column) {
  std::string out;
  if (asked.opened_from_ms)
    out +=
        std::string(" AND ") + column + " >= " + std::to_string(first_place(*asked.opened_from_ms));
  if (asked.opened_to_ms)
    out += std::string(" AND ") + column + " < " + std::to_string(first_place(*asked.opened_to_ms));
  return out;
}

}  // namespace

Result<Find> Find::open(const Whereabouts& where) {
  Find find;
  JAMBLINE_ASSIGN(auto database, open_reading(where));
  find.database_ = std::make_unique<sqlite::Database>(std::move(database));
  JAMBLINE_ASSIGN(find.tokens_, Tokens::of(*find.database_));
  return find;
}

void Find::know(std::shared_ptr<const Names> kinds, std::shared_ptr<const Names> of_shop) {
  const auto take = [this](std::shared_ptr<const Names>& known, std::shared_ptr<const Names> given,
                           std::vector<Name>& names) {
    if (known == given) return;
    known = std::move(given);
    names.clear();
    if (!known) return;
    for (const auto& one : *known) names.push_back({&one, tokens_->split(one.name)});
  };
  take(kinds_, std::move(kinds), names_of_kinds_);
  take(of_shop_, std::move(of_shop), names_of_shop_);
}

Result<Find::Stamp> Find::stamp() {
  Stamp out;
  JAMBLINE_ASSIGN(auto stamp, database_->prepare("SELECT shop, version, arrival FROM stamp"));
  JAMBLINE_ASSIGN(const bool there, stamp.step());
  if (!there) return out;
  out.shop = stamp.text(0);
  out.version = stamp.number(1);
  out.arrival = stamp.number(2);
  JAMBLINE_ASSIGN(out.rights, database_->text("SELECT stamp FROM rights"));
  return out;
}

std::vector<Find::Word> Find::words_of(const std::string& typed, bool& left_out) const {
  std::vector<Word> out;
  for (std::size_t at = 0; at < typed.size();) {
    if (separates(typed[at])) {
      ++at;
      continue;
    }
    std::size_t end = at;
    while (end < typed.size() && !separates(typed[end])) ++end;
    const auto text = shortened(std::string_view(typed).substr(at, end - at), most_word_bytes);
    at = end;
    Word word{std::string(text), tokens_->split(text), {}, {}};
    if (word.tokens.empty()) continue;
    if (out.size() == most_words) {
      left_out = true;
      break;
    }
    word.squeezed = tokens_->split(folds::squeezed(text));
    for (const auto* names : {&names_of_kinds_, &names_of_shop_})
      for (const auto& name : *names)
        if (place_of(word.tokens, name.tokens) < name.tokens.size())
          word.codes.push_back(name.named);
    out.push_back(std::move(word));
  }
  return out;
}

Result<Found> Find::find(const FindAsked& asked, const std::stop_token& stop) {
  Found out;
  if (stop.stop_requested()) return fail(Code::Stopped, "search", "shelf.db");
  const auto words = words_of(asked.words, out.words_left_out);
  std::vector<std::string> all;
  for (const auto& word : words) {
    std::string one =
        "({plate vin color notes work reasons customer} : " + quoted(word.tokens) + " *";
    if (!word.squeezed.empty()) one += " OR parts : " + quoted(word.squeezed) + " *";
    std::vector<std::string> codes;
    for (const auto* code : word.codes) codes.push_back(code->code);
    if (!codes.empty()) one += " OR " + any_of(codes);
    all.push_back(one + ")");
  }
  for (const auto& word : words_of(asked.color, out.words_left_out))
    all.push_back("color : " + quoted(word.tokens) + " *");
  and_one_of(all, asked.people);
  and_one_of(all, asked.booths);
  and_one_of(all, asked.defects);
  and_one_of(all, asked.causes);
  std::string match;
  for (const auto& one : all) match += (match.empty() ? "" : " AND ") + one;

  const std::string facts = facts_of(asked);
  const bool by_words = !match.empty();
  const std::string place = by_words ? "find_words.rowid" : "find_fact.place";
  const std::string from = by_words ? "find_words CROSS JOIN find_fact ON find_fact.place = "
                                      "find_words.rowid"
                                    : std::string("find_fact");
  const std::string where = (by_words ? " WHERE find_words MATCH ?1" : " WHERE ?1 = ''") +
                            places_of(asked, place.c_str()) + facts;
  const std::string page =
      "SELECT find_fact.place, car.row" +
      (words.empty() ? std::string() : std::string(", ") + find_column_names) + " FROM " + from +
      " CROSS JOIN car ON car.job = find_fact.job" + where +
      (asked.after ? " AND " + place + " < " + std::to_string(*asked.after) : std::string()) +
      " ORDER BY " + place + " DESC LIMIT " + std::to_string(std::max(0, asked.most) + 1LL);

  const Watch watch(*database_, stop);
  const auto stopped = [&](Error error) {
    return stop.stop_requested() ? fail(Code::Stopped, "search", "shelf.db")
                                 : fail(std::move(error));
  };
  auto rows = database_->prepare(page.c_str());
  if (!rows) return stopped(std::move(rows.error()));
  rows->bind_text(1, match);
  while (true) {
    const auto more = rows->step();
    if (!more) return stopped(more.error());
    if (!*more) break;
    if (out.cars.size() == static_cast<std::size_t>(std::max(0, asked.most))) {
      if (!out.cars.empty()) out.next = out.cars.back().place;
      break;
    }
    JAMBLINE_ASSIGN(auto row, from_json<folds::FloorRow>(rows->text(1)));
    out.cars.push_back({std::move(row), rows->number(0), hits_of(words, *rows)});
  }
  rows->reset();
  if (!asked.count) return out;
  const bool words_only = by_words && facts.empty();
  auto count = database_->prepare(
      ("SELECT count(*) FROM " + (words_only ? std::string("find_words") : from) + where).c_str());
  if (!count) return stopped(std::move(count.error()));
  count->bind_text(1, match);
  const auto counted = count->step();
  if (!counted) return stopped(counted.error());
  out.all = count->number(0);
  return out;
}

bool Find::hit_in_text(const Word& word, std::size_t column, std::string_view text,
                       FindHit& out) const {
  if (text.empty()) return false;
  const auto tokens = tokens_->split(text);
  const std::size_t at = place_of(word.tokens, tokens);
  if (at == tokens.size()) return false;
  out.field = field_of_column[column];
  take_line(text, tokens[at].begin, tokens[at + word.tokens.size() - 1].end, out);
  return true;
}

std::vector<FindHit> Find::hits_of(const std::vector<Word>& words,
                                   const sqlite::Statement& row) const {
  std::vector<FindHit> out;
  for (const auto& word : words) {
    FindHit hit{word.typed, {}, {}, 0, 0, {}};
    const auto text_of = [&](std::size_t column) {
      return row.text(first_text + static_cast<int>(column));
    };
    constexpr std::size_t labels = 3;  // plate, VIN, color
    bool found = false;
    for (std::size_t column = 0; !found && column < labels; ++column)
      found = hit_in_text(word, column, text_of(column), hit);
    // Half a plate or VIN: the whole of it is shown.
    for (std::size_t column = 0; !found && column < labels; ++column) {
      const auto whole = tokens_->split(folds::squeezed(text_of(column)));
      if (whole.empty() || word.squeezed.empty()) continue;
      found = whole.front().text.find(word.squeezed.front().text) != std::string::npos;
      if (!found) continue;
      hit.field = field_of_column[column];
      hit.text = text_of(column);
    }
    if (!found) {
      const auto codes = tokens_->split(text_of(code_column));
      for (const auto* named : word.codes) {
        found = std::any_of(codes.begin(), codes.end(),
                            [&](const Token& code) { return code.text == named->code; });
        if (!found) continue;
        hit.field = folds::field_of_code(named->code);
        hit.text = named->name;
        hit.code = named->code;
        break;
      }
    }
    for (std::size_t column = labels; !found && column < text_columns; ++column)
      found = hit_in_text(word, column, text_of(column), hit);
    out.push_back(std::move(hit));
  }
  return out;
}

}  // namespace jambline::shelf
