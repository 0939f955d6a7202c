#include "shelf/tokens.h"

#include <sqlite3.h>

namespace jambline::shelf {

namespace {

fts5_api* api_of(sqlite3* database) {
  fts5_api* api = nullptr;
  sqlite3_stmt* ask = nullptr;
  if (sqlite3_prepare_v2(database, "SELECT fts5(?1)", -1, &ask, nullptr) == SQLITE_OK) {
    sqlite3_bind_pointer(ask, 1, &api, "fts5_api_ptr", nullptr);
    sqlite3_step(ask);
  }
  sqlite3_finalize(ask);
  return api;
}

struct Unicode61 {
  fts5_tokenizer calls{};
  Fts5Tokenizer* tokenizer = nullptr;
};

int split_by(void* of, std::vector<Token>& out, std::string_view text) {
  const auto* unicode = static_cast<Unicode61*>(of);
  const auto take = [](void* to, int, const char* token, int bytes, int begin, int end) {
    static_cast<std::vector<Token>*>(to)->push_back(
        {std::string(token, static_cast<std::size_t>(bytes)), static_cast<std::size_t>(begin),
         static_cast<std::size_t>(end)});
    return SQLITE_OK;
  };
  return unicode->calls.xTokenize(unicode->tokenizer, &out, FTS5_TOKENIZE_QUERY, text.data(),
                                  static_cast<int>(text.size()), take);
}

}  // namespace

Result<Tokens> Tokens::of(sqlite::Database& database) {
  const auto refuse = [] { return fail(Code::FileFailed, "search", "shelf.db"); };
  fts5_api* api = api_of(database.raw());
  if (!api) return refuse();
  auto unicode =
      std::unique_ptr<Unicode61, void (*)(Unicode61*)>(new Unicode61, [](Unicode61* gone) {
        if (gone->tokenizer) gone->calls.xDelete(gone->tokenizer);
        delete gone;
      });
  void* data = nullptr;
  const char* options[] = {"remove_diacritics", "2"};
  if (api->xFindTokenizer(api, "unicode61", &data, &unicode->calls) != SQLITE_OK ||
      unicode->calls.xCreate(data, options, 2, &unicode->tokenizer) != SQLITE_OK)
    return refuse();
  Tokens out;
  out.tokenizer_ = std::shared_ptr<Unicode61>(std::move(unicode));
  out.split_ = split_by;
  return out;
}

std::vector<Token> Tokens::split(std::string_view text) const {
  std::vector<Token> out;
  if (!text.empty()) split_(tokenizer_.get(), out, text);
  return out;
}

std::size_t place_of(const std::vector<Token>& words, const std::vector<Token>& text) {
  if (words.empty()) return text.size();
  for (std::size_t from = 0; from + words.size() <= text.size(); ++from) {
    bool fits = true;
    for (std::size_t i = 0; fits && i < words.size(); ++i) {
      const auto& wanted = words[i].text;
      const auto& there = text[from + i].text;
      fits = i + 1 < words.size() ? there == wanted : there.compare(0, wanted.size(), wanted) == 0;
    }
    if (fits) return from;
  }
  return text.size();
}

}  // namespace jambline::shelf
