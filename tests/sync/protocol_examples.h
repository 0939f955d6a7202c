// tests/sync/protocol_examples.h: what PROTOCOL.md prints, made by our own code from the keys and
// entries of FORMAT.md (seeds of RFC 8032 section 7.1, tests 1 to 3).
#pragma once

#include "sync/hub_shop.h"
#include "sync/page.h"
#include "sync/target.h"
#include "sync/tus.h"
#include "tests/seal/format_examples.h"

namespace jambline::sync {

inline std::map<std::string, std::string> protocol_examples() {
  using namespace jambline::seal;
  std::map<std::string, std::string> out;
  const SigningKey device = second();
  const SigningKey hub_key = seal::hub();
  const ShopId shop = example_header().shop;
  const auto challenge = filled<Challenge>(0x01);
  const auto code = filled<InviteCode>(0xc0);
  const auto nonce = filled<Nonce>(0x90);
  const SealedEntry note = note_example();
  const Head head{device.device(), 1, note.hash};

  out["about"] = to_json(About{protocol_version, hub_key.key(), "the hub"});
  out["challenge.ask"] = to_json(ChallengeAsk{device.device()});
  out["challenge.answer"] = to_json(ChallengeAnswer{challenge});
  const Hash session = session_words(shop, hub_key.key(), device.device(), challenge);
  out["session.ask"] = to_json(SessionAsk{device.device(), challenge, device.sign(session)});
  out["session.answer"] = to_json(
      SessionAnswer{filled<Token>(0x40), filled<Epoch>(0xe0), 3, 1772438460000, false, 1, {head}});

  EnrolAsk enrol{code, device.key(), "second tablet", false, {}};
  enrol.proof = device.sign(enrol_words(shop, hub_key.key(), enrol));
  out["enrol.ask"] = to_json(enrol);
  out["enrol.answer"] = to_json(EnrolAnswer{EnrolState::Waiting, nonce, "the hub"});
  out["invitation"] =
      encode(Invitation{hub_key.key(), shop, code, {{"192.168.1.20", 8740}, {"fe80::1", 8740}}});
  out["digits"] = six_digits(shop, device.key(), hub_key.key(), nonce);
  const Pending waiting{device.key(), "second tablet", nonce, 1772438400000, false};
  out["pending"] = to_json(PendingAnswer{{waiting}});
  out["invite"] = to_json(InviteAnswer{code, 1772439000000});

  out["pull.ask"] = to_json(PullAsk{filled<Epoch>(0xe0), 2, {head}, 25});
  Packer packer;
  packer.add(note);
  const std::string page =
      encode_page(filled<Epoch>(0xe0), 3, 3, {receipt_example()}, packer.bytes());
  out["page"] = to_hex(bytes_of(page));
  out["quarantine"] = to_json(QuarantineAnswer{{{device.device(), 41, 44, 40, 1772438460000}}});
  out["kept.apart"] = to_json(QuarantinedAnswer{44});
  out["devices"] = to_json(SeenAnswer{1772438460000, {{device.device(), 1772438400000, {}, {}}}});
  out["have.ask"] = to_json(HaveAsk{{sha256(bytes_of("abc"))}});
  out["have.answer"] = to_json(HaveAnswer{{sha256(bytes_of("abc"))}});

  Target place;
  place.path = Path::File;
  place.shop = shop;
  place.upload = {sha256(bytes_of("abc")), 3, filled<decltype(UploadId::random)>(0x11)};
  out["upload.place"] = target_of(place);
  out["upload.metadata"] = metadata_of("sha256", sha256(bytes_of("abc")).hex());
  Problem fork = problem(Refusal::Fork);
  fork.have_seq = 1;
  fork.have_hash = note.hash;
  out["problem"] = to_json(fork);
  return out;
}

}  // namespace jambline::sync
