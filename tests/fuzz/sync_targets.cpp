// What goes over the network as a value: every JSON message, a page, an invitation, a path, and the
// header values of tus.
#include "sync/tus.h"
#include "tests/fuzz/promise.h"
#include "tests/seal/format_examples.h"
#include "tests/sync/protocol_examples.h"

namespace jambline::fuzz {

namespace {
using namespace jambline::sync;

using Messages = OneOf<About, ChallengeAsk, ChallengeAnswer, SessionAsk, SessionAnswer, EnrolAsk,
                       EnrolAnswer, PendingAnswer, InviteAnswer, PullAsk, QuarantineAnswer,
                       QuarantinedAnswer, SeenAnswer, HaveAsk, HaveAnswer, Problem>;
constexpr const char* message_names[] = {
    "about",          "challenge.ask", "challenge.answer", "session.ask",
    "session.answer", "enrol.ask",     "enrol.answer",     "pending",
    "invite",         "pull.ask",      "quarantine",       "kept.apart",
    "devices",        "have.ask",      "have.answer",      "problem"};

sync::Target target_seed(Path path) {
  sync::Target out;
  out.path = path;
  out.shop = seal::example_header().shop;
  out.device = seal::second().device();
  out.blob = seal::note_example().hash;
  out.upload = {out.blob, 1'500'000, seal::filled<decltype(UploadId::random)>(0x11)};
  out.number = 41;
  return out;
}
}  // namespace

// First byte: which message; the rest: its JSON.
std::vector<std::string> message_seeds() {
  std::vector<std::string> out;
  auto examples = protocol_examples();
  char which = 0;
  for (const char* name : message_names) out.push_back(which++ + examples.at(name));
  return out;
}
void run_message(Input input) {
  if (input.empty()) return;
  const auto text = text_of(input.subspan(1));
  Messages::run(input[0], text);
  const Response answer{
      404, {{"content-type", std::string(problem_media_type)}}, std::string(text)};
  if (const auto why = problem_of(answer)) hold(why->status == 404);
}

std::vector<std::string> page_seeds() {
  seal::Packer packer;
  for (const auto& entry :
       {seal::founded_example(), seal::admitted_example(), seal::note_example()})
    packer.add(entry);
  const auto epoch = seal::filled<seal::Epoch>(0xe0);
  const auto receipt = seal::receipt_example();
  return {encode_page(epoch, 0, 0, {}, {}), encode_page(epoch, 3, 9, {receipt}, packer.bytes()),
          encode_page(epoch, 3, 3, {receipt, receipt}, {})};
}
void run_page(Input input) {
  const auto page = decode_page(input);
  if (!page) return;
  seal::Packer packer;
  for (const auto& entry : page->entries) hold(packer.add(entry));
  hold(page->next <= page->head);
  hold(encode_page(page->epoch, page->next, page->head, page->receipts, packer.bytes()) ==
       text_of(input));
}

std::vector<std::string> invitation_seeds() {
  Invitation one{seal::hub().key(), {}, seal::filled<InviteCode>(0xc0), {{"shop-hub.local", 8740}}};
  return {protocol_examples().at("invitation"),
          encode(one) + "\n",
          "[fe80::1%eth0]:8740",
          "192.168.1.20",
          "localhost:1",
          "[8z1%eth%%eth%]:8740"};
}
void run_invitation(Input input) {
  const auto text = text_of(input);
  if (const auto address = parse_address(text)) {
    const auto again = parse_address(address->text());
    hold(again.has_value());
    hold(*again == *address);
  }
  const auto invitation = decode_invitation(text);
  if (!invitation) return;
  hold(!invitation->at.empty() && invitation->at.size() <= most_addresses);
  const auto again = decode_invitation(encode(*invitation));
  // A port that was not said is said the second time, and may make the line too long.
  hold(again ? *again == *invitation : again.error().arg("field") == "length");
}

std::vector<std::string> target_seeds() {
  std::vector<std::string> out;
  for (int path = 0; path <= static_cast<int>(Path::Blob); ++path)
    out.push_back(target_of(target_seed(static_cast<Path>(path))));
  return out;
}
void run_target(Input input) {
  const auto text = text_of(input);
  if (const auto target = parse_target(text)) hold(target_of(*target) == text);
  if (const auto upload = parse_upload(text)) hold(upload->text() == text);
}

std::vector<std::string> tus_seeds() {
  return {protocol_examples().at("upload.metadata"), "filename ZG9vci5qcGc=,sha256 YWJj,empty",
          "1500000", "bytes=100-", "0"};
}
void run_tus(Input input) {
  const auto text = text_of(input);
  if (const auto number = decimal(text)) {
    const auto begins = std::min(text.find_first_not_of('0'), text.size() - 1);
    hold(std::to_string(*number) == text.substr(begins));
  }
  if (const auto from = range_start(text)) hold(text.back() == '-');
  for (const char* key : {"sha256", "filename", ""})
    if (const auto value = metadata_value(text, key)) hold(value->size() <= text.size());
  const auto again = metadata_value("name YQ==, " + metadata_of("sha256", text), "sha256");
  hold(again && *again == text);
}

}  // namespace jambline::fuzz
