// The rules of tus 1.0.0 that a server has to keep, row by row, against a hub's shop without
// sockets; tests/peer asks the running hub the same rows.
#include <set>

#include "seal/digest.h"
#include "tests/outside/table.h"
#include "tests/sync/small_hub.h"

namespace jambline::outside {
namespace {

constexpr std::size_t tus_file_bytes = 100;

std::vector<std::string> parts_between(const std::string& text, char between) {
  std::vector<std::string> out;
  std::istringstream in(text);
  for (std::string one; std::getline(in, one, between);) out.push_back(one);
  return out;
}

std::pair<std::string, std::string> header_words(const std::string& text) {
  const auto colon = text.find(": ");
  if (colon == std::string::npos) throw std::runtime_error("no header: " + text);
  return {text.substr(0, colon), text.substr(colon + 2)};
}

class TusRow {
 public:
  explicit TusRow(const Row& row) : row_(row), bytes_(row.at("name")) {
    bytes_.resize(tus_file_bytes, 'b');
    metadata_ = sync::metadata_of("sha256", seal::sha256(seal::bytes_of(bytes_)).hex());
    const std::string& given = row.at("given");
    if (given == "none") return;
    const auto made = ask("POST", hub_.path("files"),
                          {{"Upload-Length", std::to_string(tus_file_bytes)},
                           {"Upload-Metadata", metadata_},
                           version()});
    place_ = std::string(made.header("Location"));
    const std::size_t sent = given == "seventy"   ? 70
                             : given == "whole"   ? 100
                             : given == "dropped" ? 3
                                                  : 0;
    if (sent > 0)
      ask("PATCH", place_,
          {{"Content-Type", std::string(sync::tus_media_type)}, {"Upload-Offset", "0"}, version()},
          bytes_.substr(0, sent));
    if (given == "dropped") ask("DELETE", place_, {version()});
  }

  void check() {
    std::vector<sync::HeaderField> headers;
    for (const auto& one : parts_between(row_.at("headers"), '|')) {
      const auto [name, value] = header_words(one);
      headers.push_back({name, filled(value)});
    }
    std::string body;
    if (const auto range = parts_between(row_.at("sent"), '-'); !range.empty())
      body =
          bytes_.substr(std::stoul(range.at(0)), std::stoul(range.at(1)) - std::stoul(range.at(0)));
    const auto answer = ask(row_.at("method"), place(), headers, body);
    std::istringstream statuses(row_.at("status"));
    std::set<int> wanted;
    for (int status = 0; statuses >> status;) wanted.insert(status);
    EXPECT_EQ(wanted.count(answer.status), 1U) << answer.status << " " << answer.body;
    for (const auto& one : parts_between(row_.at("answers"), '|')) {
      const auto [name, value] = header_words(one);
      EXPECT_TRUE(fits(std::string(answer.header(name)), filled(value)))
          << one << " is " << answer.header(name);
    }
    for (const auto& one : parts_between(row_.at("lacks"), '|'))
      EXPECT_EQ(answer.header(one), "") << one;
    if (row_.at("then").empty()) return;
    const auto then = ask("HEAD", place_, {version()});
    EXPECT_EQ(then.status == 200 ? std::string(then.header("Upload-Offset")) : "gone",
              row_.at("then"));
  }

 private:
  static sync::HeaderField version() { return {"Tus-Resumable", "1.0.0"}; }
  std::string filled(const std::string& value) const {
    if (value == "{metadata}") return metadata_;
    if (value == "{no bytes}") return sync::metadata_of("sha256", seal::sha256({}).hex());
    return value;
  }
  static bool fits(const std::string& found, const std::string& value) {
    if (value == "*") return !found.empty();
    if (value[0] != '~' && value[0] != '!') return found == value;
    const auto list = parts_between(found, ',');
    return (std::count(list.begin(), list.end(), value.substr(1)) > 0) == (value[0] == '~');
  }
  std::string place() const {
    if (row_.at("at") == "files") return hub_.path("files");
    if (row_.at("at") == "upload") return place_;
    sync::UploadId nobody;
    nobody.size_bytes = tus_file_bytes;
    nobody.blob = seal::sha256(seal::bytes_of("nobody made it"));
    return hub_.path("files/" + nobody.text());
  }
  sync::Response ask(const std::string& method, const std::string& target,
                     std::vector<sync::HeaderField> headers, std::string body = {}) {
    headers.push_back({"Authorization", "Bearer " + token_});
    return hub_.ask({sync::method_of(method).value(), target, std::move(headers), std::move(body)});
  }

  const Row& row_;
  std::string bytes_;
  std::string metadata_;
  std::string place_;
  test::SmallHub hub_;
  std::string token_ = hub_.token(hub_.tablet);
};

TEST(TusOutside, EveryRuleOfCoreCreationAndTermination) {
  std::set<std::string> names;
  for (const Row& row : table("tus_rules.csv")) {
    SCOPED_TRACE(row.at("name"));
    EXPECT_TRUE(names.insert(row.at("name")).second);
    TusRow(row).check();
  }
  EXPECT_GE(names.size(), 40U);
}

}  // namespace
}  // namespace jambline::outside
