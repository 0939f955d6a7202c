#include "tests/fuzz/targets.h"

#include "acts/estimate_csv.h"
#include "entries/entry.h"
#include "seal/chain.h"
#include "seal/fingerprint.h"
#include "seal/pack.h"
#include "tests/fuzz/promise.h"
#include "tests/seal/format_examples.h"

namespace jambline::fuzz {

namespace {
using namespace jambline::seal;

std::vector<std::string> entry_seeds() {
  return {encode(founded_example()), encode(admitted_example()), encode(note_example()),
          encode(erased_example())};
}
std::vector<std::string> receipt_seeds() {
  return {encode(receipt_example())};
}
std::vector<std::string> pack_seeds() {
  Packer whole, one;
  for (const auto& entry : {founded_example(), admitted_example(), note_example()})
    whole.add(entry);
  one.add(erased_example());
  return {whole.bytes(), one.bytes(), whole.bytes() + one.bytes(), ""};
}
// First byte: the kind; the rest: its payload.
std::vector<std::string> membership_seeds() {
  const auto device = second().device();
  return {'\1' + founded_example().payload,
          '\2' + admitted_example().payload,
          '\2' + to_json(DeviceAdmitted{hub().key(), "three", true}),
          '\3' + to_json(DeviceRevoked{device, 0, {}}),
          '\3' + to_json(DeviceRevoked{founder().device(), 1, founded_example().hash}),
          '\4' + to_json(HubAdmitted{hub().key(), "hub"}),
          '\5' + to_json(PayloadErased{note_example().hash, "left"})};
}
std::vector<std::string> json_seeds() {
  auto out = membership_seeds();
  for (auto& seed : out) seed.erase(0, 1);
  out.insert(out.end(), {"{}", "[]", "null", "-1.5e300", R"("\ud83d\ude00")",
                         R"({"a":[1,{"b":null}]})", R"({"cut_seq":18446744073709551616})"});
  return out;
}

// First byte: the kind; the rest: its payload. One of every kind, as it is when nothing is filled
// in.
std::vector<std::string> payload_seeds() {
  std::vector<std::string> out;
  entries::PayloadKinds::each([&]<class T>() {
    if constexpr (requires { T::kind; })
      out.push_back(static_cast<char>(T::kind) + entries::write(T{}).payload);
  });
  return out;
}
std::vector<std::string> estimate_seeds() {
  return {"stage,title,hours\nprep,block the door,1.5\n",
          "\xef\xbb\xbfHours,Stage,Title\r\n\"1,5\",base,\"two, coats\"\r\n0,mask,\"say "
          "\"\"when\"\"\"\r\n",
          "stage;title;hours\nprep;x;1\n", "stage,title,hours\nprep,\"never closed,1\n", ""};
}
}  // namespace

void run_entry(Input input) {
  if (const auto header = decode_header(input)) {
    const auto bytes = encode(*header);
    hold(std::equal(bytes.begin(), bytes.end(), input.begin(), input.end()));
  }
  const auto entry = decode_entry(input);
  if (!entry) return;
  hold(encode(*entry) == text_of(input));
  hold(entry->payload.size() <= most_payload_bytes);
  hold(entry->hash == entry_hash(input.first<header_bytes>()));
  (void)check_payload(*entry);
}

void run_receipt(Input input) {
  const auto receipt = decode_receipt(input);
  if (!receipt) return;
  hold(encode(*receipt) == text_of(input));
  if (*receipt != receipt_example()) {
    const Receipt genuine = receipt_example();
    hold(!check(*receipt, {genuine.shop, genuine.hub, genuine.epoch, genuine.device}));
  }
}

void run_pack(Input input) {
  const auto entries = decode_pack(input);
  if (!entries) return;
  Packer again;
  ChainWalk walk;
  for (const auto& entry : *entries) {
    hold(again.add(entry));
    (void)walk.next(entry.header, entry.hash);
  }
  hold(again.bytes() == text_of(input));
}

// A manager signs any payload; the founder stays and an order changes nothing.
void run_membership(Input input) {
  if (input.empty()) return;
  Header header = example_header();
  header.seq = 3;
  header.prev_hash = admitted_example().hash;
  header.kind = input[0];
  const SealedEntry odd =
      seal_example(founder(), header, std::string(text_of(input.subspan(1))), 1);
  Members one, other;
  (void)one.apply(founded_example());
  (void)one.apply(admitted_example());
  (void)one.apply(odd);
  (void)other.apply(odd);
  (void)other.apply(admitted_example());
  (void)other.apply(founded_example());
  hold(one.find(founder().device()) != nullptr);
  hold(one == other);
}

void run_json(Input input) {
  const std::string_view text = text_of(input);
  round_trip<ShopFounded>(text);
  round_trip<DeviceAdmitted>(text);
  round_trip<DeviceRevoked>(text);
  round_trip<PayloadErased>(text);
  round_trip<std::vector<double>>(text);
  round_trip<std::vector<std::string>>(text);
  (void)parse_fingerprint(text);
}

// What is read is written and read again the same.
void run_payload(Input input) {
  if (input.empty()) return;
  const auto read = entries::read(input[0], 1, text_of(input.subspan(1)), false);
  if (read.is<entries::UnknownEntry>() || read.is<entries::MembershipAct>()) return;
  const auto written = entries::write(read);
  hold(written.kind == input[0]);
  const auto again = entries::read(written.kind, written.schema, written.payload, false);
  hold(entries::write(again).payload == written.payload);
}

void run_estimates(Input input) {
  const auto rows = acts::read_estimate_csv(text_of(input));
  if (!rows) return;
  hold(rows->operations.size() + rows->rejected.size() <= acts::most_estimate_rows);
  for (const auto& one : rows->operations)
    hold(one.estimate_min >= 0 && one.estimate_min <= 60'000);
  for (const auto& one : rows->rejected) hold(one.line >= 2 && one.text.size() <= 120);
}

const std::vector<Target>& entry_targets() {
  static const std::vector<Target> all{{"entry", run_entry, entry_seeds},
                                       {"receipt", run_receipt, receipt_seeds},
                                       {"pack", run_pack, pack_seeds},
                                       {"membership", run_membership, membership_seeds},
                                       {"json", run_json, json_seeds},
                                       {"payload", run_payload, payload_seeds},
                                       {"estimates", run_estimates, estimate_seeds},
                                       {"bundle", run_bundle, bundle_seeds}};
  return all;
}

}  // namespace jambline::fuzz
