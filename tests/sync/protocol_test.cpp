// PROTOCOL.md is the test vector: what it prints is what the code makes and reads, its tables are
// those of the code, and the heads that it shows are answered as it says.
#include <fstream>
#include <regex>
#include <sstream>

#include "sync/limits.h"
#include "tests/sync/protocol_examples.h"
#include "tests/sync/small_hub.h"

namespace jambline::sync {
namespace {

struct Page {
  std::map<std::string, std::string> examples;
  std::vector<std::string> heads;
  std::string text;
};

Page read_page() {
  Page out;
  std::ifstream in(JAMBLINE_SOURCE_DIR "/src/sync/PROTOCOL.md");
  const std::regex start(R"(([a-z.]+) =\s?(.*))");
  std::string line, name, kind;
  bool block = false;
  while (std::getline(in, line)) {
    out.text += line + "\n";
    std::smatch found;
    if (line.starts_with("```")) {
      block = !block;
      kind = line.substr(3);
      name.clear();
      if (block && kind == "http") out.heads.emplace_back();
    } else if (block && !out.heads.empty() && kind == "http") {
      out.heads.back() += line + "\n";
    } else if (block && line.starts_with("  ")) {
      out.examples[name] += line.substr(2);
    } else if (block && std::regex_match(line, found, start)) {
      name = found[1];
      out.examples[name] = found[2];
    }
  }
  return out;
}

TEST(ProtocolPage, ItsExamplesAreWhatTheCodeMakes) {
  EXPECT_EQ(read_page().examples, protocol_examples());
}

template <class T>
void reads_back(const std::string& text) {
  const auto read = from_json<T>(text, Strict::Yes);
  ASSERT_TRUE(read) << text;
  EXPECT_EQ(to_json(*read), text);
}

TEST(ProtocolPage, ItsMessagesAreReadStrictlyAndWrittenTheSame) {
  const auto at = read_page().examples;
  reads_back<About>(at.at("about"));
  reads_back<ChallengeAsk>(at.at("challenge.ask"));
  reads_back<ChallengeAnswer>(at.at("challenge.answer"));
  reads_back<SessionAsk>(at.at("session.ask"));
  reads_back<SessionAnswer>(at.at("session.answer"));
  reads_back<EnrolAsk>(at.at("enrol.ask"));
  reads_back<EnrolAnswer>(at.at("enrol.answer"));
  reads_back<PendingAnswer>(at.at("pending"));
  reads_back<InviteAnswer>(at.at("invite"));
  reads_back<PullAsk>(at.at("pull.ask"));
  reads_back<QuarantineAnswer>(at.at("quarantine"));
  reads_back<QuarantinedAnswer>(at.at("kept.apart"));
  reads_back<SeenAnswer>(at.at("devices"));
  reads_back<HaveAsk>(at.at("have.ask"));
  reads_back<HaveAnswer>(at.at("have.answer"));
  reads_back<Problem>(at.at("problem"));
}

TEST(ProtocolPage, ItsHeadsAreAnsweredAsItSays) {
  const auto heads = read_page().heads;
  ASSERT_EQ(heads.size(), 3U);
  for (const std::string& text : heads) {
    test::SmallHub hub;
    std::istringstream in(text);
    std::string method, target, line;
    in >> method >> target;
    Request request{*method_of(method), target, {}, {}};
    request.target.replace(4, 32, hub.run.shop().hex());
    const auto field = [](const std::string& header) {
      const auto colon = header.find(": ");
      return HeaderField{header.substr(0, colon), header.substr(colon + 2)};
    };
    std::getline(in, line);
    while (std::getline(in, line) && !line.empty()) request.headers.push_back(field(line));
    request.headers.push_back({"Authorization", "Bearer " + hub.token(hub.tablet)});
    int status = 0;
    in >> status;
    const Response answer = hub.ask(request);
    EXPECT_EQ(answer.status, status) << text;
    std::getline(in, line);
    while (std::getline(in, line))
      EXPECT_EQ(answer.header(field(line).name), field(line).value) << text;
  }
}

TEST(ProtocolPage, ItsTableOfProblemsIsWhole) {
  const std::string text = read_page().text;
  for (int i = 0; i <= static_cast<int>(Refusal::Full); ++i) {
    const Problem one = problem(static_cast<Refusal>(i));
    EXPECT_NE(text.find("| " + one.type + " | " + std::to_string(one.status) + " |"),
              std::string::npos)
        << one.type;
    EXPECT_EQ(refusal_of(one), static_cast<Refusal>(i));
    const auto back = problem_of(response_of(one));
    ASSERT_TRUE(back);
    EXPECT_EQ(back->type, one.type);
  }
}

TEST(ProtocolPage, ItsLimitsAreThoseOfTheCode) {
  const std::string text = read_page().text;
  const std::pair<const char*, std::uint64_t> limits[] = {
      {"header of a request, bytes", most_header_bytes},
      {"JSON body, bytes", most_json_bytes},
      {"hashes in have.ask", most_have_hashes},
      {"heads in pull.ask", most_heads},
      {"entries of a pack", seal::most_pack_entries},
      {"bytes of a pack", seal::most_pack_bytes},
      {"receipts of a page", most_page_receipts},
      {"bytes of a file", most_blob_bytes},
      {"bytes of a device's name", most_name_bytes},
      {"ms that a code lives", code_lives_ms},
      {"ms that a challenge lives", challenge_lives_ms},
      {"ms that a token lives", token_lives_ms},
      {"seconds of a poll", longest_poll_s},
      {"devices that wait", most_pending}};
  for (const auto& [name, most] : limits)
    EXPECT_NE(text.find("| " + std::string(name) + " | " + std::to_string(most) + " |"),
              std::string::npos)
        << name;
}

}  // namespace
}  // namespace jambline::sync
