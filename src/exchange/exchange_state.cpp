// What is told of the exchange, and the calls that only leave a word behind.
#include <algorithm>

#include "base/json.h"
#include "exchange/local_exchange.h"
#include "exchange/manager_asks.h"
#include "seal/digest.h"
#include "seal/pack.h"

namespace jambline::exchange {

namespace {
constexpr auto glance = std::chrono::milliseconds(20);
}

// Puts together what screens see, and says so when it is another than before.
void LocalExchange::tell() {
  SyncState out;
  const auto snapshot = parts_.engine.snapshot();
  out.own_entries = snapshot->own_entries;
  {
    const std::lock_guard ends(ends_);
    if (link_) {
      const auto& device = link_->device->state();
      const auto& files = link_->pictures->state();
      out.contact = device.fork_common_seq ? Contact::Forked
                    : device.revoked       ? Contact::Revoked
                    : device.in_contact    ? Contact::Good
                                           : Contact::Trying;
      const std::uint64_t gone = std::max(device.receipted_seq, device.apart_through);
      out.entries_to_send = out.own_entries > gone ? out.own_entries - gone : 0;
      out.entries_refused = device.apart_through > device.receipted_seq
                                ? device.apart_through - device.receipted_seq
                                : 0;
      out.pictures_to_send = files.to_send;
      out.pictures_to_fetch = files.to_fetch;
      out.bytes_to_send = files.to_send_bytes;
      out.pictures_came = files.came;
      out.trouble = device.trouble ? device.trouble : files.trouble;
      out.hub_was_restored = device.hub_was_restored;
      if (device.again_ms > forward_ms())
        out.again_ms = parts_.clock.now().wall_ms + (device.again_ms - forward_ms());
      if (device.fork_common_seq)
        out.fork =
            Fork{*device.fork_common_seq, snapshot->own_entries > *device.fork_common_seq
                                              ? snapshot->own_entries - *device.fork_common_seq
                                              : 0};
    } else {
      out.entries_to_send = out.own_entries;
      out.contact = Contact::Trying;
    }
  }
  bool changed = false;
  {
    const std::lock_guard lock(small_);
    if (!note_) out.contact = Contact::NoHub;
    if (note_) {
      out.hub = note_->hub;
      out.hub_name = note_->hub_name;
      out.at = addresses_of(*note_);
      out.paused = note_->paused;
      out.pictures_when = note_->pictures_when;
      if (note_->step == HubStep::TurnedAway) out.contact = Contact::TurnedAway;
      if (note_->step == HubStep::Asked || note_->step == HubStep::Confirm || note_->new_key) {
        if (!note_->new_key) out.contact = Contact::Joining;
        out.brings_shop = note_->step == HubStep::Confirm;
        const auto key = seal::SigningKey::load(parts_.folder /
                                                (note_->new_key ? "device.key.new" : "device.key"));
        if (note_->nonce && key)
          out.digits = sync::six_digits(note_->shop, key->key(), note_->hub, note_->nonce);
      }
    }
    if (!out.trouble) out.trouble = join_trouble_;
    if (restart_wanted_) out.trouble = Error{Code::NotYet, "join", "restart", {}};
    out.metered = metered_;
    unsent_peak_ = std::max(unsent_peak_, out.entries_to_send);
    const bool all_sent =
        out.contact == Contact::Good && out.entries_to_send == 0 && out.pictures_to_send == 0;
    if (!all_sent)
      all_sent_ms_.reset();
    else if (!all_sent_ms_)
      all_sent_ms_ = parts_.clock.now().wall_ms;
    if (out.entries_to_send == 0) unsent_peak_ = 0;
    out.entries_sent_now = unsent_peak_ - out.entries_to_send;
    out.contact_ms = contact_ms_;
    out.all_sent_ms = all_sent_ms_;
    // When it last spoke and when it tries again move all the time; both are told with the rest.
    SyncState before = told_;
    before.contact_ms = out.contact_ms;
    before.again_ms = out.again_ms;
    changed = !(before == out);
    told_ = out;
  }
  if (changed && parts_.changed) parts_.changed(std::move(out));
}

void LocalExchange::pause(bool pause) {
  soon([this, pause] {
    auto known = note();
    if (!known) return;
    known->paused = pause;
    (void)keep_note(*known);
    bell_.ring();
  });
}

void LocalExchange::send_now() {
  {
    const std::lock_guard lock(small_);
    try_now_ = true;
  }
  bell_.ring();
}

void LocalExchange::set_pictures_when(PicturesWhen when) {
  soon([this, when] {
    auto known = note();
    if (!known) return;
    known->pictures_when = when;
    (void)keep_note(*known);
    send_now();
  });
}

void LocalExchange::set_metered(bool metered) {
  {
    const std::lock_guard lock(small_);
    if (metered_ == metered) return;
    metered_ = metered;
  }
  bell_.ring();
}

void LocalExchange::set_addresses(std::vector<sync::Address> at) {
  soon([this, at = std::move(at)] {
    auto known = note();
    if (!known) return;
    known->at.clear();
    for (const auto& address : at) known->at.push_back(address.text());
    (void)keep_note(*known);
    {
      const std::lock_guard lock(small_);
      for (net::Client* client : clients_) client->set_addresses(at);
      try_now_ = true;
    }
    bell_.ring();
  });
}

void LocalExchange::entries_changed() {
  {
    const std::lock_guard lock(small_);
    local_changed_ = true;
  }
  bell_.ring();
}

void LocalExchange::want(Hash file) {
  {
    const std::lock_guard lock(small_);
    wanted_.push_back(file);
  }
  bell_.ring();
}

Place LocalExchange::place_of_entry(std::uint64_t own_seq) const {
  const SyncState now = state();  // what was written since is here
  const std::uint64_t own = now.own_entries;
  if (own_seq <= own - std::min(own, now.entries_to_send + now.entries_refused))
    return Place::OnHub;
  return own_seq <= own - std::min(own, now.entries_to_send) ? Place::Refused : Place::Here;
}

Place LocalExchange::place_of_picture(const Hash& file) const {
  const std::unique_lock ends(ends_, std::try_to_lock);
  if (!ends.owns_lock() || !link_) return Place::Here;
  return link_->pictures->at_hub(file) ? Place::OnHub : Place::Here;
}

std::string LocalExchange::digits_of(const sync::Pending& pending) const {
  return sync::six_digits(shop(), pending.device_key, state().hub, pending.nonce);
}

// A session may just be made anew.
std::optional<sync::Token> LocalExchange::token_soon() {
  constexpr int most_looks = 30;
  for (int look = 0; look < most_looks && !stop_; ++look) {
    const std::uint64_t heard = bell_.rings();
    {
      const std::lock_guard lock(ends_);
      if (auto token = link_ ? link_->device->token(forward_ms()) : std::nullopt) return token;
    }
    wait(heard, forward_ms() + 100);
  }
  return std::nullopt;
}

// Once more when the hub has forgotten the session: it was started anew.
Result<sync::Response> LocalExchange::send_as_manager(net::Client& client, sync::Method method,
                                                      const sync::Target& target) {
  Result<sync::Response> answer = fail(Code::NoContact, "ask", "hub");
  for (int tries = 0; tries < 2; ++tries) {
    const auto token = token_soon();
    if (!token) return answer;
    answer = client.send(manager_request(method, target, *token));
    if (!answer || answer->status != 401) return answer;
    {
      const std::lock_guard lock(ends_);
      if (link_) link_->device->token_refused();
    }
    bell_.ring();
  }
  return answer;
}

// What a manager asks.
void LocalExchange::ask_as_manager(sync::Method method, sync::Target target,
                                   std::function<void(Result<std::string>)> done) {
  later([this, method, target, done = std::move(done)](net::Client& client) mutable {
    target.shop = shop();
    done(read_answer(send_as_manager(client, method, target)));
  });
}

namespace {
template <class Answer, class Value>
std::function<void(Result<std::string>)> reading(std::function<void(Result<Value>)> done,
                                                 Value Answer::*part) {
  return [done = std::move(done), part](Result<std::string> body) {
    if (!body) return done(fail(body.error()));
    auto answer = from_json<Answer>(*body);
    if (!answer) return done(fail(Code::WrongServer, "ask", "hub"));
    done(std::move((*answer).*part));
  };
}
sync::Target target_for(sync::Path path, const DeviceId& device = {}, std::uint64_t number = 0) {
  sync::Target out;
  out.path = path;
  out.device = device;
  out.number = number;
  return out;
}
std::function<void(Result<std::string>)> only_done(Exchange::Done done) {
  return [done = std::move(done)](const Result<std::string>& body) {
    done(body ? Status() : Status(fail(body.error())));
  };
}
}  // namespace

void LocalExchange::invite(Got<sync::Invitation> done) {
  ask_as_manager(sync::Method::Post, target_for(sync::Path::Invite),
                 [this, done = std::move(done)](const Result<std::string>& body) {
                   if (!body) return done(fail(body.error()));
                   const auto answer = from_json<sync::InviteAnswer>(*body);
                   if (!answer) return done(fail(Code::WrongServer, "ask", "hub"));
                   const SyncState now = state();
                   done(sync::Invitation{now.hub, shop(), answer->code, now.at});
                 });
}

void LocalExchange::pending(Got<std::vector<sync::Pending>> done) {
  ask_as_manager(sync::Method::Get, target_for(sync::Path::Pending),
                 reading(std::move(done), &sync::PendingAnswer::pending));
}

void LocalExchange::refuse(DeviceId device, Done done) {
  ask_as_manager(sync::Method::Post, target_for(sync::Path::Refuse, device),
                 only_done(std::move(done)));
}

void LocalExchange::seen(Got<sync::SeenAnswer> done) {
  ask_as_manager(sync::Method::Get, target_for(sync::Path::Devices),
                 [done = std::move(done)](const Result<std::string>& body) {
                   if (!body) return done(fail(body.error()));
                   auto answer = from_json<sync::SeenAnswer>(*body);
                   if (!answer) return done(fail(Code::WrongServer, "ask", "hub"));
                   done(std::move(*answer));
                 });
}

void LocalExchange::quarantine(Got<std::vector<sync::Quarantined>> done) {
  ask_as_manager(sync::Method::Get, target_for(sync::Path::Quarantine),
                 reading(std::move(done), &sync::QuarantineAnswer::quarantine));
}

// Page after page; each asks for the next.
void LocalExchange::quarantined_entries(DeviceId device, Got<std::vector<seal::SealedEntry>> done) {
  later([this, device, done = std::move(done)](net::Client& client) {
    std::vector<seal::SealedEntry> out;
    for (std::uint64_t from = 1;;) {
      sync::Target target = target_for(sync::Path::Kept, device, from);
      target.shop = shop();
      const auto body = read_answer(send_as_manager(client, sync::Method::Get, target));
      if (!body) return done(fail(body.error()));
      auto entries = seal::decode_pack(seal::bytes_of(*body));
      if (!entries) return done(fail(Code::WrongServer, "ask", "hub"));
      if (entries->empty()) return done(std::move(out));
      from = entries->back().header.seq + 1;
      out.insert(out.end(), std::make_move_iterator(entries->begin()),
                 std::make_move_iterator(entries->end()));
    }
  });
}

void LocalExchange::settle_quarantine(DeviceId device, std::uint64_t through, Done done) {
  ask_as_manager(sync::Method::Post, target_for(sync::Path::Settle, device, through),
                 only_done(std::move(done)));
}

}  // namespace jambline::exchange
