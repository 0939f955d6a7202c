#include "exchange/local_exchange.h"

#include <algorithm>
#include <limits>

#include "base/json.h"
#include "exchange/manager_asks.h"
#include "exchange/new_key.h"

namespace jambline::exchange {

namespace {
constexpr std::int64_t longest_wait_ms = 5'000;
constexpr std::int64_t look_at_answer_ms = 3'000;
}  // namespace

LocalExchange::LocalExchange(Parts parts, std::optional<HubNote> note)
    : parts_(std::move(parts)), note_(std::move(note)) {
  tell();
}

LocalExchange::~LocalExchange() {
  stop_ = true;
  {
    const std::lock_guard lock(small_);
    for (net::Client* client : clients_) client->cancel();
  }
  bell_.ring();
  threads_.clear();
}

void LocalExchange::start() {
  if (started_.exchange(true)) return;
  threads_.emplace_back([this] { control(); });
  threads_.emplace_back([this] { push_and_pull(sync::DeviceEnd::Lane::Push); });
  threads_.emplace_back([this] { push_and_pull(sync::DeviceEnd::Lane::Pull); });
  for (std::size_t lane = 0; lane < sync::PictureEnd::lanes; ++lane)
    threads_.emplace_back([this, lane] { carry_pictures(lane); });
}

std::int64_t LocalExchange::forward_ms() const {
  return static_cast<std::int64_t>(parts_.clock.now().since_boot_ms);
}

std::optional<HubNote> LocalExchange::note() const {
  const std::lock_guard lock(small_);
  return note_;
}

Status LocalExchange::keep_note(const HubNote& note) {
  JAMBLINE_TRY(write_hub_note(parts_.folder, note));
  const std::lock_guard lock(small_);
  note_ = note;
  return {};
}

ShopId LocalExchange::shop() const {
  const auto known = note();
  return known ? known->shop : ShopId{};
}

SyncState LocalExchange::state() const {
  const std::lock_guard lock(small_);
  return told_;
}

void LocalExchange::wait(std::uint64_t heard, std::int64_t until_ms) {
  const std::int64_t most = std::clamp<std::int64_t>(until_ms - forward_ms(), 1, longest_wait_ms);
  bell_.wait(heard, std::chrono::milliseconds(most));
}

std::unique_ptr<net::Client> LocalExchange::new_client(net::Bodies* bodies) {
  const auto known = note();
  auto client =
      std::make_unique<net::Client>(net::device_context(known->hub), addresses_of(*known), bodies);
  const std::lock_guard lock(small_);
  clients_.push_back(client.get());
  if (stop_) client->cancel();
  return client;
}

void LocalExchange::forget_client(net::Client* client) {
  const std::lock_guard lock(small_);
  std::erase(clients_, client);
}

// What calls from outside left behind goes to the ends. Held: ends_.
void LocalExchange::look_at_engine() {
  bool changed = false;
  bool now = false;
  std::vector<Hash> wanted;
  PicturesWhen when = PicturesWhen::NotMetered;
  bool metered = false;
  {
    const std::lock_guard lock(small_);
    changed = std::exchange(local_changed_, false);
    now = std::exchange(try_now_, false);
    wanted.swap(wanted_);
    if (note_) when = note_->pictures_when;
    metered = metered_;
  }
  if (!link_) return;
  for (const Hash& file : wanted) link_->files->want(file);
  link_->pictures->set_allowed(
      when == PicturesWhen::Always || (when == PicturesWhen::NotMetered && !metered),
      when != PicturesWhen::Never);
  if (changed || !wanted.empty()) {
    link_->device->local_changed();
    link_->pictures->local_changed();
  }
  if (now) {
    link_->device->try_now();
    link_->pictures->try_now();
  }
}

// Held: ends_. Makes what needs the log of the joined shop once it may be opened.
Status LocalExchange::make_link() {
  const auto known = note();
  JAMBLINE_ASSIGN(const auto key, seal::SigningKey::load(parts_.folder / "device.key"));
  auto link = std::make_unique<Link>(Link{key, {}, {}, {}, {}});
  JAMBLINE_ASSIGN(link->log,
                  LogStore::open(parts_.folder, parts_.engine, key.device(), known->hub));
  JAMBLINE_ASSIGN(link->files, PictureFiles::open(parts_.folder, parts_.engine, link->log->log()));
  std::uint64_t seed = 0;
  random_.fill({reinterpret_cast<std::uint8_t*>(&seed), sizeof seed});
  link->device = std::make_unique<sync::DeviceEnd>(
      sync::DeviceEnd::Parts{known->shop, known->hub, link->key, *link->log, seed});
  link->pictures =
      std::make_unique<sync::PictureEnd>(known->shop, *link->device, *link->files, seed + 1);
  link_ = std::move(link);
  return {};
}

// Held: ends_. False while there is nothing to carry for.
bool LocalExchange::ready_to_carry() {
  const auto known = note();
  if (!known || known->paused) return false;
  if (known->step != HubStep::Member && !known->new_key) return false;
  if (link_) return true;
  if (const Status made = make_link(); !made) {
    const std::lock_guard lock(small_);
    join_trouble_ = made.error();
    return false;
  }
  return true;
}

void LocalExchange::push_and_pull(sync::DeviceEnd::Lane lane) {
  std::unique_ptr<net::Client> client;
  while (!stop_) {
    const std::uint64_t heard = bell_.rings();
    sync::DeviceEnd::Next next{std::nullopt, std::numeric_limits<std::int64_t>::max()};
    {
      const std::lock_guard lock(ends_);
      look_at_engine();
      if (ready_to_carry()) {
        next = link_->device->next(lane, forward_ms());
        parts_.engine.hold_for_tail(link_->device->state().tail_missing);
      }
    }
    tell();
    if (!next.ask) {
      wait(heard, next.again_ms);
      continue;
    }
    if (!client) client = new_client(nullptr);
    const auto answer = client->send(next.ask->request, next.ask->extra_wait_ms);
    {
      const std::lock_guard lock(ends_);
      if (link_) link_->device->answered(lane, answer, forward_ms());
      if (link_ && lane == sync::DeviceEnd::Lane::Pull) say_divergent_again();
    }
    if (answer) {
      const std::lock_guard lock(small_);
      contact_ms_ = parts_.clock.now().wall_ms;
    }
    tell();
    bell_.ring();
  }
  if (client) forget_client(client.get());
}

void LocalExchange::carry_pictures(std::size_t lane) {
  std::unique_ptr<net::Client> client;
  while (!stop_) {
    const std::uint64_t heard = bell_.rings();
    sync::DeviceEnd::Next next{std::nullopt, std::numeric_limits<std::int64_t>::max()};
    PictureFiles* files = nullptr;
    {
      const std::lock_guard lock(ends_);
      look_at_engine();
      if (ready_to_carry()) {
        next = link_->pictures->next(lane, forward_ms());
        files = link_->files.get();
      }
    }
    if (!next.ask) {
      tell();
      wait(heard, next.again_ms);
      continue;
    }
    if (!client) client = new_client(files);
    const auto answer = client->send(next.ask->request);
    {
      const std::lock_guard lock(ends_);
      if (link_) link_->pictures->answered(lane, answer, forward_ms());
    }
    tell();
    bell_.ring();
  }
  if (client) forget_client(client.get());
}

// Work of a folder that was copied is said again once the new key is a member and all is here.
void LocalExchange::say_divergent_again() {
  if (again_said_ || !link_->device->state().caught_up) return;
  auto left = divergent_entries(parts_.folder);
  if (!left || left->empty()) {
    again_said_ = left.has_value();
    return;
  }
  std::erase_if(*left, [this](const seal::SealedEntry& entry) {
    const auto found = link_->log->log().find(entry.hash);  // the other copy had sent it
    return found && *found;
  });
  again_said_ = true;
  parts_.engine.take_over(std::move(*left), entries::TakenOverWhy::CopiedFolder, {},
                          [folder = parts_.folder](const Result<engine::Wrote>& wrote) {
                            if (wrote || wrote.error().code == Code::AlreadyDone)
                              (void)divergent_entries_said(folder);
                          });
}

// What a caller left to be done, asking to be let in, and what managers ask.
void LocalExchange::control() {
  std::unique_ptr<net::Client> client;
  seal::Key to;
  while (!stop_) {
    const std::uint64_t heard = bell_.rings();
    std::deque<std::function<void()>> tasks;
    {
      const std::lock_guard lock(small_);
      tasks.swap(tasks_);
    }
    for (const auto& task : tasks) task();
    const auto known = note();
    if (client && (!known || known->hub != to)) {
      forget_client(client.get());
      client.reset();
    }
    if (known && !client) {
      client = new_client(nullptr);
      to = known->hub;
    }
    Job job;
    {
      const std::lock_guard lock(small_);
      if (!jobs_.empty()) {
        job = std::move(jobs_.front());
        jobs_.pop_front();
      }
    }
    if (job && client) {
      job(*client);
      continue;
    }
    const bool asking =
        known && (known->step == HubStep::Asked || known->new_key) && !known->paused;
    if (asking) enrol(*client);
    tell();
    wait(heard,
         asking ? forward_ms() + look_at_answer_ms : std::numeric_limits<std::int64_t>::max());
  }
  if (client) forget_client(client.get());
}

void LocalExchange::enrol(net::Client& client) {
  HubNote known = *note();
  const auto key = known.new_key ? asking_key(parts_.folder, random_)
                                 : seal::SigningKey::load(parts_.folder / "device.key");
  const auto trouble = [this](std::optional<Error> error) {
    const std::lock_guard lock(small_);
    join_trouble_ = std::move(error);
  };
  if (!key) return trouble(key.error());
  sync::Target target;
  target.path = sync::Path::Enrol;
  target.shop = known.shop;
  sync::EnrolAsk ask;
  ask.code = known.code;
  ask.device_key = key->key();
  ask.device_name = parts_.device_name;
  ask.brings_shop = !known.joins && !known.new_key;
  ask.proof = key->sign(sync::enrol_words(known.shop, known.hub, ask));
  sync::Request request;
  request.method = sync::Method::Post;
  request.target = sync::target_of(target);
  request.headers.push_back({"Content-Type", "application/json"});
  if (known.new_key) {
    const std::lock_guard lock(ends_);
    const auto token = link_ ? link_->device->token(forward_ms()) : std::nullopt;
    if (!token) return;
    request.headers.push_back({"Authorization", "Bearer " + token->hex()});
  }
  request.body = to_json(ask);
  const auto body = read_answer(client.send(request));
  if (!body) {
    trouble(body.error());
    if (body.error().code == Code::Unknown) {  // the code is used or over
      known.step = HubStep::TurnedAway;
      known.new_key = false;
      (void)keep_note(known);
    }
    return;
  }
  const auto answer = from_json<sync::EnrolAnswer>(*body);
  if (!answer)
    return trouble(Error{Code::WrongServer, "join", "hub", {{"cause", answer.error().subject}}});
  trouble(std::nullopt);
  {
    const std::lock_guard lock(small_);
    contact_ms_ = parts_.clock.now().wall_ms;
  }
  known.hub_name = answer->hub_name;
  if (answer->state == sync::EnrolState::Waiting) known.nonce = answer->nonce;
  if (answer->state == sync::EnrolState::Refused) {
    known.step = HubStep::TurnedAway;
    known.new_key = false;
  }
  if (answer->state == sync::EnrolState::Admitted) {
    if (known.new_key) {
      const std::lock_guard lock(ends_);
      const auto common = link_ ? link_->device->state().fork_common_seq : std::nullopt;
      if (!common) return;
      if (const Status noted = note_new_key(parts_.folder, *common); !noted)
        return trouble(noted.error());
      const std::lock_guard small(small_);
      restart_wanted_ = true;
      known.new_key = false;
      known.joins = true;
    }
    known.step = HubStep::Member;
    known.code = {};
  } else if (ask.brings_shop && answer->state == sync::EnrolState::Waiting) {
    known.step = HubStep::Confirm;
  }
  (void)keep_note(known);
  bell_.ring();
}

void LocalExchange::later(Job job) {
  {
    const std::lock_guard lock(small_);
    jobs_.push_back(std::move(job));
  }
  bell_.ring();
}

void LocalExchange::soon(std::function<void()> task) {
  {
    const std::lock_guard lock(small_);
    tasks_.push_back(std::move(task));
  }
  bell_.ring();
}

// Joining and leaving.
void LocalExchange::join(sync::Invitation invitation, Done done) {
  soon([this, invitation = std::move(invitation), done = std::move(done)] {
    const Status joined = join_now(invitation);
    tell();
    bell_.ring();
    done(joined);
  });
}

Status LocalExchange::join_now(const sync::Invitation& invitation) {
  const auto snapshot = parts_.engine.snapshot();
  const bool empty = snapshot->own_entries <= 1 && snapshot->devices.size() <= 1;
  HubNote note;
  note.step = HubStep::Asked;
  note.hub = invitation.hub;
  note.code = invitation.code;
  note.shop = invitation.shop;
  for (const auto& address : invitation.at) note.at.push_back(address.text());
  const auto own = log::EntryLog::open(parts_.folder, log::OpenMode::ReadOnly);
  const ShopId own_shop = own ? (*own)->shop() : ShopId{};
  const bool known_hub = std::any_of(snapshot->hubs.begin(), snapshot->hubs.end(),
                                     [&](const auto& hub) { return hub.key == invitation.hub; });
  if (!invitation.shop) {
    note.shop = own_shop;  // the shop comes to the hub
    if (!own_shop) return fail(Code::Missing, "join", "shop");
  } else if (invitation.shop == own_shop) {
    if (known_hub) note.step = HubStep::Member;
  } else if (!empty) {
    return fail(Code::WrongShop, "join", "invitation");
  } else {
    note.joins = true;
  }
  JAMBLINE_TRY(keep_note(note));
  {
    const std::lock_guard lock(small_);
    join_trouble_.reset();
    try_now_ = true;
    if (note.joins && own_shop) restart_wanted_ = true;
  }
  return note.joins && own_shop ? Status(fail(Code::NotYet, "join", "restart")) : Status();
}

void LocalExchange::confirm_hub(PersonId by, Done done) {
  const auto known = note();
  if (!known || known->step != HubStep::Confirm) return done(fail(Code::NotYet, "join", "hub"));
  parts_.engine.admit_hub({known->hub, known->hub_name}, by,
                          [this, done = std::move(done)](const Result<engine::Wrote>& wrote) {
                            if (!wrote) return done(fail(wrote.error()));
                            soon([this, done] {
                              HubNote member = *note();
                              member.step = HubStep::Member;
                              member.code = {};
                              const Status kept = keep_note(member);
                              bell_.ring();
                              done(kept);
                            });
                          });
}

void LocalExchange::give_up_joining() {
  soon([this] {
    const auto known = note();
    if (!known) return;
    if (known->new_key) {
      HubNote member = *known;
      member.new_key = false;
      (void)keep_note(member);
    } else if (known->step != HubStep::Member && forget_hub_note(parts_.folder)) {
      const std::lock_guard lock(small_);
      note_.reset();
      join_trouble_.reset();
    }
    tell();
    bell_.ring();
  });
}

void LocalExchange::ask_for_new_key(Done done) {
  soon([this, done = std::move(done)] {
    const auto known = note();
    if (!known || state().contact != Contact::Forked)
      return done(fail(Code::NotYet, "ask for a new key", "fork"));
    HubNote asking = *known;
    asking.new_key = true;
    asking.code = {};
    asking.nonce = {};
    const Status kept = keep_note(asking);
    tell();
    bell_.ring();
    done(kept);
  });
}

}  // namespace jambline::exchange
