#include "tests/simulator/genesis.h"

#include <cstdio>
#include <cstdlib>

#include "engine/read_entry.h"
#include "engine/shop_devices.h"
#include "tests/property/random_acts.h"
#include "tests/simulator/sim_clock.h"

namespace jambline::simulator {

namespace fs = std::filesystem;

FastFolder::FastFolder() {
  std::error_code none;
  const fs::path shm = "/dev/shm";
  const fs::path where = fs::is_directory(shm, none) ? shm : fs::temp_directory_path();
  std::string name = (where / "jambline-sim-XXXXXX").string();
  if (!mkdtemp(name.data())) std::abort();
  path_ = name;
}
FastFolder::~FastFolder() {
  std::error_code ignored;
  fs::remove_all(path_, ignored);
}

void die(const Error& error, const char* where) {
  std::fflush(stdout);  // what led to it
  std::fprintf(stderr, "simulator: %s: %s %s %s", where, std::string(code_name(error.code)).c_str(),
               error.operation.c_str(), error.subject.c_str());
  for (const auto& [name, value] : error.args)
    std::fprintf(stderr, " %s=%s", name.c_str(), value.c_str());
  std::fprintf(stderr, "\n");
  std::abort();
}

seal::SigningKey sim_key(std::uint8_t number) {
  std::array<std::uint8_t, 32> seed{};
  seed[0] = number;
  seed[1] = 0x51;
  return seal::SigningKey::from_seed(seed);
}
seal::SigningKey sim_hub_key() {
  return sim_key(200);
}

void copy_log(const fs::path& from, const fs::path& to) {
  fs::remove_all(to);
  fs::create_directories(to);
  for (const auto& item : fs::directory_iterator(from))
    if (item.path().filename() != "lock") fs::copy(item.path(), to / item.path().filename());
}

namespace {
// What the founder does before the others come.
void live_first_day(log::EntryLog& log, Genesis& out) {
  SeededRandom random(1);
  TrueTime time;
  const auto key = sim_key(0);
  property::Device shadow(1, 0);
  const auto moment = [&] {
    time.ms += 1000;
    SimClock clock(time);
    return clock.now();
  };
  const auto take = [&](const std::vector<log::Stored>& stored) {
    for (const auto& one : stored) shadow.take(engine::read_entry(one.entry));
  };
  take({need(log.found_shop(key, "tablet 0", moment(), random), "found")});
  const auto say = [&](const PersonId& person, const log::Draft& draft) {
    take(need(log.append(key, person, {&draft, 1}, moment(), random), "genesis"));
  };
  const auto act = [&](const acts::Command& command, const PersonId& person) {
    const auto shop = shadow.folds().shop.view();
    const acts::World world{shop, [](const JobId&) { return nullptr; },
                            [](const PersonId&) { return std::nullopt; }};
    const Moment now = moment();
    const auto decided =
        need(acts::decide(world, command, {person, random, now.wall_ms, now}), "genesis act");
    std::vector<log::Draft> drafts;
    for (const auto& one : decided) {
      const auto written = entries::write(one.payload);
      drafts.push_back({one.subject, written.kind, written.schema, written.payload});
    }
    take(need(log.append(key, person, drafts, now, random), "genesis act"));
  };
  act(acts::AddPerson{"Rosa", job::Role::Manager}, {});
  out.rosa = shadow.folds().shop.view().people.front().person;
  say(out.rosa, engine::draft_of(engine::ShopHub{sim_hub_key().key(), "hub"}));
  for (std::uint8_t i = 1; i < late_device; ++i)
    say(out.rosa, engine::draft_of(
                      engine::Admission{sim_key(i).key(), "tablet " + std::to_string(i), i == 1}));
  act(acts::AddRack{"rack 1"}, out.rosa);
  act(demo::invented_car(random), out.rosa);
}
}  // namespace

const Genesis& genesis() {
  static const std::unique_ptr<Genesis> made = [] {
    auto out = std::make_unique<Genesis>();
    log::OpenOptions options;
    options.ballast_bytes = 0;
    {
      auto log = need(log::EntryLog::open(out->folder.path() / "0", log::OpenMode::Write, options),
                      "genesis");
      live_first_day(*log, *out);
      out->shop = log->shop();
      need(log->read_after(0,
                           [&](const log::Stored& stored) {
                             out->entries.push_back(stored.entry);
                             return true;
                           }),
           "genesis");
      auto other = need(
          log::EntryLog::open(out->folder.path() / "1", log::OpenMode::Write, options), "genesis");
      need(other->add(out->entries), "genesis");
    }
    out->hub.shop = out->shop;
    out->hub.epoch.bytes.fill(1);
    const auto at = std::make_shared<test::MemoryShop>(out->hub);
    test::MemoryHubStorage storage(at, engine::may_be_erased);
    const auto& last = out->entries.back();
    need(storage.append(out->entries, {},
                        [&](std::uint64_t first_seq, std::uint64_t last_seq) {
                          seal::Receipt receipt;
                          receipt.shop = out->shop;
                          receipt.epoch = out->hub.epoch;
                          receipt.device = last.header.device;
                          receipt.seq = last.header.seq;
                          receipt.hash = last.hash;
                          receipt.hub_seq_first = first_seq;
                          receipt.hub_seq_last = last_seq;
                          receipt.received_ms = simulator_start_ms;
                          seal::sign(receipt, sim_hub_key());
                          return receipt;
                        }),
         "genesis hub");
    out->hub = *at;
    return out;
  }();
  return *made;
}

}  // namespace jambline::simulator
