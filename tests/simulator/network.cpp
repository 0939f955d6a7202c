#include "tests/simulator/network.h"

#include <algorithm>

#include "seal/digest.h"
#include "sync/page.h"
#include "sync/target.h"

namespace jambline::simulator {

namespace {
constexpr std::string_view mishap_names[] = {
    "none",   "lost before", "lost after",    "cut up",      "ghost up",  "cut down",
    "portal", "bad gateway", "other receipt", "old receipt", "truncated", "flipped"};
constexpr std::string_view html_page =
    "<!doctype html><html><head><title>Sign in</title></head><body>{\"seq\":1}</body></html>";

Error dead_connection() {
  return Error{Code::NoContact, "send", "hub", {{"cause", "reset"}}};
}
}  // namespace

std::string_view mishap_name(Mishap mishap) {
  return mishap_names[static_cast<std::size_t>(mishap)];
}

std::optional<Flight> Network::ask(SimDevice& device, std::size_t lane) {
  const std::int64_t now = time_.forward_ms();
  auto next = lane < 2 ? device.end->next(static_cast<sync::DeviceEnd::Lane>(lane), now)
                       : device.pictures->next(lane - 2, now);
  if (!next.ask) return std::nullopt;
  Flight out;
  out.device = &device;
  out.lane = lane;
  out.life = device.life;
  out.request = std::move(next.ask->request);
  return out;
}

Result<std::string> Network::body_of(Flight& flight) {
  if (!flight.request.send) return flight.request.body;
  JAMBLINE_ASSIGN(auto reader, flight.device->read_blob(*flight.request.send));
  std::string out;
  std::vector<std::uint8_t> piece(4096);
  for (;;) {
    JAMBLINE_ASSIGN(const std::size_t count, reader->read(piece));
    if (count == 0) return out;
    out.append(reinterpret_cast<const char*>(piece.data()), count);
  }
}

std::optional<sync::Response> Network::feed(sync::Handling& handling, std::string_view body) {
  while (!body.empty()) {
    const std::size_t count = std::min<std::size_t>(body.size(), 1 + random_.below(1500));
    if (auto early = handling.take(seal::bytes_of(body.substr(0, count)))) return early;
    body.remove_prefix(count);
  }
  return std::nullopt;
}

void Network::page_instead(Flight& flight, int status) {
  if (flight.request.receive && status == 200)
    if (const Status wrote = flight.device->write_part(*flight.request.receive,
                                                       flight.request.receive->offset, html_page);
        !wrote) {
      flight.answer = tl::unexpected<Error>(wrote.error());
      return;
    }
  flight.answer = sync::Response{
      status,
      {{"Content-Type", "text/html"}},
      flight.request.receive && status == 200 ? std::string() : std::string(html_page)};
}

void Network::to_hub(Flight& flight, Mishap mishap) {
  if (mishap != Mishap::None) {
    ++mishaps_done;
    say("  " + std::string(mishap_name(mishap)) + ": " + flight.request.target);
  }
  if (mishap == Mishap::Flipped && !flight.request.send && !flight.request.receive)
    mishap = random_.below(2) ? Mishap::LostBefore : Mishap::LostAfter;
  if (mishap == Mishap::Portal || mishap == Mishap::BadGateway) meet(Met::WrongAnswer);
  if (mishap == Mishap::Portal) return page_instead(flight, 200);
  if (mishap == Mishap::BadGateway) return page_instead(flight, 502);
  if (mishap == Mishap::LostBefore || !hub_.running()) {
    flight.answer = tl::unexpected<Error>(dead_connection());
    return;
  }
  const auto target = sync::parse_target(flight.request.target);
  auto body = body_of(flight);
  if (!target || !body) {
    flight.answer = tl::unexpected<Error>(
        target ? body.error() : Error{Code::Malformed, "send", flight.request.target, {}});
    return;
  }
  if (mishap == Mishap::Flipped && flight.request.send && !body->empty()) {
    (*body)[random_.below(body->size())] ^= 1;
    meet(Met::FlippedOnTheWay);
  }
  auto handling =
      hub_.shop->begin(flight.request, *target, body->size(), flight.device->folder.filename());
  const bool cut = (mishap == Mishap::CutUp || mishap == Mishap::GhostUp) && !body->empty();
  const std::size_t through = cut ? random_.below(body->size()) : body->size();
  const std::string_view whole(*body);
  if (auto early = feed(*handling, whole.substr(0, through)))
    return answer_with(flight, *early, mishap);
  if (cut) {
    if (flight.request.send) meet(Met::UploadCut);
    if (mishap == Mishap::GhostUp)
      ghosts_.push_back({std::move(handling), std::string(whole.substr(through)), hub_.life});
    flight.answer = tl::unexpected<Error>(dead_connection());
    return;
  }
  auto outcome = handling->finish();
  if (const auto* wait = std::get_if<sync::Waiting>(&outcome)) {
    if (mishap != Mishap::None) {
      flight.answer = tl::unexpected<Error>(dead_connection());
      return;
    }
    flight.until_ms = time_.forward_ms() + wait->for_ms;
    flight.hub_changes = hub_.shop->changes();
    flight.hub_life = hub_.life;
    flight.waiting = std::move(handling);
    return;
  }
  answer_with(flight, std::move(outcome), mishap);
}

void Network::ask_again(Flight& flight, bool over) {
  if (!flight.waiting) return;
  if (!hub_.running() || hub_.life != flight.hub_life) {
    flight.waiting.reset();
    flight.answer = tl::unexpected<Error>(dead_connection());
    return;
  }
  if (!over && hub_.shop->changes() == flight.hub_changes && time_.forward_ms() < flight.until_ms)
    return;
  auto outcome = flight.waiting->finish();
  if (std::holds_alternative<sync::Waiting>(outcome)) {
    flight.hub_changes = hub_.shop->changes();
    return;
  }
  flight.waiting.reset();
  answer_with(flight, std::move(outcome), Mishap::None);
}

sync::Response Network::mistreated(const Flight& flight, sync::Response response, Mishap mishap) {
  if (mishap == Mishap::Truncated) {
    meet(Met::WrongAnswer);
    if (!response.body.empty()) response.body.resize(random_.below(response.body.size()));
    return response;
  }
  const bool is_receipt = response.header("Content-Type") == sync::receipt_media_type;
  if (!is_receipt) return response;
  auto& had = receipts_[flight.device->key.device()];
  if (mishap == Mishap::OldReceipt && !had.empty()) {
    response.body = had[random_.below(had.size())];
    meet(Met::ForeignReceipt);
    return response;
  }
  had.push_back(response.body);
  if (mishap != Mishap::OtherReceipt) return response;
  meet(Met::ForeignReceipt);
  auto receipt = need(seal::decode_receipt(seal::bytes_of(response.body)), "receipt");
  auto signer = sim_hub_key();
  switch (random_.below(6)) {
    case 0:
      signer = sim_key(201);
      break;
    case 1:
      receipt.shop.bytes[0] ^= 1;
      break;
    case 2:
      receipt.device.bytes[0] ^= 1;
      break;
    case 3:
      receipt.epoch.bytes[0] ^= 1;
      break;
    case 4:
      receipt.hash.bytes[0] ^= 1;
      break;
    default:
      seal::sign(receipt, signer);
      receipt.seq += 1;  // and is signed for another
      response.body = seal::encode(receipt);
      return response;
  }
  seal::sign(receipt, signer);
  response.body = seal::encode(receipt);
  return response;
}

void Network::answer_file(Flight& flight, sync::FileReply reply, Mishap mishap) {
  std::string body;
  std::vector<std::uint8_t> piece(1024);
  for (;;) {
    const auto count = reply.file->read(piece);
    if (!count || *count == 0) break;
    body.append(reinterpret_cast<const char*>(piece.data()), *count);
  }
  const bool cut =
      mishap == Mishap::CutDown || mishap == Mishap::LostAfter || mishap == Mishap::Truncated;
  if (cut && !body.empty()) body.resize(random_.below(body.size()));
  if (mishap == Mishap::Flipped && !body.empty()) {
    body[random_.below(body.size())] ^= 1;
    meet(Met::FlippedOnTheWay);
  }
  if (flight.request.receive && !body.empty())
    if (const Status wrote = flight.device->write_part(*flight.request.receive,
                                                       flight.request.receive->offset, body);
        !wrote) {
      flight.answer = tl::unexpected<Error>(wrote.error());
      return;
    }
  if (cut && mishap != Mishap::Truncated)
    flight.answer = tl::unexpected<Error>(dead_connection());
  else
    flight.answer = std::move(reply.head);
}

void Network::meet_answer(const Flight& flight, const sync::Response& response, Mishap mishap) {
  const bool lost = mishap == Mishap::LostAfter || mishap == Mishap::CutDown;
  const auto target = sync::parse_target(flight.request.target);
  const bool push = target && target->path == sync::Path::Log;
  if (push && response.status == 200 && lost) meet(Met::AnswerLost);
  if (push && response.status == 401) meet(Met::TokenOver);
  if (push && response.status == 202) meet(Met::KeptApart);
  if (response.status == 507) meet(Met::HubFull);
  const bool upload = target && target->path == sync::Path::File;
  if (upload && (response.status == 404 || response.status == 410)) meet(Met::UploadForgotten);
}

void Network::answer_with(Flight& flight, sync::Outcome outcome, Mishap mishap) {
  if (auto* file = std::get_if<sync::FileReply>(&outcome))
    return answer_file(flight, std::move(*file), mishap);
  auto& response = std::get<sync::Response>(outcome);
  meet_answer(flight, response, mishap);
  if (mishap == Mishap::LostAfter || mishap == Mishap::CutDown || mishap == Mishap::CutUp ||
      mishap == Mishap::GhostUp) {
    flight.answer = tl::unexpected<Error>(dead_connection());
    return;
  }
  const auto target = sync::parse_target(flight.request.target);
  if (target && target->path == sync::Path::Session && response.status == 200 &&
      mishap == Mishap::None)
    flight.hub_life = hub_.life;
  flight.answer = mistreated(flight, std::move(response), mishap);
}

void Network::deliver(Flight& flight) {
  if (!flight.answer || !flight.device->running() || flight.device->life != flight.life) return;
  const auto target = sync::parse_target(flight.request.target);
  if (target && target->path == sync::Path::Session && flight.hub_life == hub_.life &&
      flight.answer->has_value() && (*flight.answer)->status == 200)
    flight.device->stale = false;  // it has been told what the hub has
  if (flight.lane < 2)
    flight.device->end->answered(static_cast<sync::DeviceEnd::Lane>(flight.lane), *flight.answer,
                                 time_.forward_ms());
  else
    flight.device->pictures->answered(flight.lane - 2, *flight.answer, time_.forward_ms());
}

std::optional<sync::Response> Network::once(const sync::Request& request, const std::string& peer,
                                            Mishap mishap) {
  if (!hub_.running() || mishap == Mishap::LostBefore) return std::nullopt;
  const auto target = sync::parse_target(request.target);
  if (!target) return std::nullopt;
  auto handling = hub_.shop->begin(request, *target, request.body.size(), peer);
  std::optional<sync::Response> out = feed(*handling, request.body);
  if (!out) {
    auto outcome = handling->finish();
    if (const auto* response = std::get_if<sync::Response>(&outcome)) out = *response;
  }
  if (mishap != Mishap::None) return std::nullopt;
  return out;
}

void Network::move_ghosts() {
  for (auto ghost = ghosts_.begin(); ghost != ghosts_.end();) {
    bool over = ghost->hub_life != hub_.life || !hub_.running();
    if (over) {
      ghost->handling.reset();
    } else if (random_.below(2)) {
      const std::string piece = ghost->rest.substr(0, random_.below(ghost->rest.size() + 1));
      ghost->rest.erase(0, piece.size());
      over = feed(*ghost->handling, piece).has_value();
      if (!over && ghost->rest.empty()) {
        (void)ghost->handling->finish();
        over = true;
      }
    } else {
      over = true;
    }
    ghost = over ? ghosts_.erase(ghost) : std::next(ghost);
  }
}

}  // namespace jambline::simulator
