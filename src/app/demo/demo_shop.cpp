#include "app/demo/demo_shop.h"

#include <algorithm>
#include <cstdlib>
#include <fcntl.h>
#include <queue>
#include <unistd.h>

#include "app/demo/air.h"
#include "app/demo/booths.h"
#include "app/demo/hand.h"
#include "app/demo/in_work.h"
#include "app/demo/invented.h"
#include "app/demo/lateness.h"
#include "app/demo/pictures.h"
#include "base/json.h"
#include "base/spans.h"
#include "engine/read_entry.h"
#include "seal/membership.h"

namespace jambline::demo {

namespace {

constexpr int first_workday = 5;  // the week before belongs to setting up
constexpr int setting_up_workday = 1;
constexpr int promise_after_days = 8;
constexpr std::uintmax_t room_bytes = 100U << 20U;
constexpr std::string_view log_file = "log.db";
constexpr std::size_t nobodys_car = SIZE_MAX;      // what is done to the booths
constexpr std::size_t shop_itself = SIZE_MAX - 1;  // what is set when the camera comes
constexpr std::size_t its_air = SIZE_MAX - 2;      // booths' facts, the register, products
constexpr std::size_t burns_one_of = 404;
constexpr std::size_t burns_which = 57;

// One car on its way through the shop, or one that will come.
struct Coming {
  std::int64_t at_ms{};
  std::size_t number{};  // delivered ones first
  friend bool operator>(const Coming& a, const Coming& b) {
    return std::tie(a.at_ms, a.number) > std::tie(b.at_ms, b.number);
  }
};

struct Under {
  SeededRandom random;
  SeededRandom pictures;
  SeededRandom air;
  Visit visit;
  std::size_t next = 0;
  JobId job;
};

class Maker {
 public:
  Maker(const DemoOptions& options, const Sinks& sinks)
      : options_(options), hand_(options, sinks) {}
  Status make();

 private:
  Status set_up();
  Status add_crew(std::size_t crew, std::int64_t at_ms);
  Visit delivered_visit(std::size_t number, SeededRandom& random) const;
  std::int64_t comes_ms(std::size_t number) const;
  int first_day_of(std::size_t number) const {
    return first_workday + static_cast<int>(number % cars_of_a_crew_) / lanes * visit_workdays +
           static_cast<int>(number % lanes);
  }
  SeededRandom story_of(std::size_t number) const {
    return stream(options_.seed, subject(number) + " story");
  }
  Under under_way(std::size_t number, const SeededRandom& random, Visit visit) const {
    return {random,
            stream(options_.seed, subject(number) + " pictures"),
            stream(options_.seed, subject(number) + " air"),
            std::move(visit),
            0,
            {}};
  }
  std::string subject(std::size_t number) const {
    if (number == nobodys_car) return "booths";
    if (number == shop_itself) return "camera";
    if (number == its_air) return "air";
    return number < delivered_ ? "delivered car " + std::to_string(number)
                               : "car in work " + std::to_string(number - delivered_);
  }

  const DemoOptions& options_;
  Hand hand_;
  std::size_t cars_of_a_crew_ =
      static_cast<std::size_t>(lanes * (options_.weeks - weeks_without_delivered));
  std::size_t delivered_ = static_cast<std::size_t>(std::max(0, options_.delivered));
  std::vector<Crew> crews_;
  House house_;
};

Status Maker::add_crew(std::size_t number, std::int64_t at_ms) {
  Crew crew;
  for (const auto& one : people) {
    std::string name(one.name);
    if (number > 0) name += " " + std::to_string(number + 1);
    SeededRandom random = stream(options_.seed, "person " + name);
    const PersonId by = crews_.empty() ? PersonId{} : crews_.front().at(Who::Rosa);
    JAMBLINE_TRY(hand_.act(by, at_ms += minute_ms, acts::AddPerson{name, one.role}, random));
    crew[one.who] = hand_.shop().people.back().person;
  }
  crews_.push_back(std::move(crew));
  return {};
}

Status Maker::set_up() {
  std::int64_t at_ms = hand_.calendar().morning_ms(setting_up_workday);
  SeededRandom random = stream(options_.seed, "shop");
  JAMBLINE_TRY(
      hand_.act({}, at_ms, acts::NameShop{std::string(shop_name), std::string(shop_zone)}, random));
  const std::size_t crews =
      std::max<std::size_t>(1, (delivered_ + cars_of_a_crew_ - 1) / cars_of_a_crew_);
  for (std::size_t crew = 0; crew < crews; ++crew) {
    JAMBLINE_TRY(add_crew(crew, at_ms));
    at_ms += 10 * minute_ms;
  }
  for (const auto name : rack_names)
    JAMBLINE_TRY(hand_.act(crews_.front().at(Who::Rosa), at_ms += minute_ms,
                           acts::AddRack{std::string(name)}, random));
  for (const auto& rack : hand_.shop().racks) house_.racks.push_back(rack.rack);
  for (const auto& booth : invented_booths())
    JAMBLINE_TRY(hand_.act(crews_.front().at(Who::Rosa), at_ms += minute_ms, booth, random));
  for (const auto& booth : hand_.shop().booths) house_.booths.push_back(booth.booth);
  return {};
}

std::int64_t Maker::comes_ms(std::size_t number) const {
  return LaneTimes(hand_.calendar(), first_day_of(number), static_cast<int>(number % lanes))
      .cursor_ms();
}

Visit Maker::delivered_visit(std::size_t number, SeededRandom& random) const {
  const int lane = static_cast<int>(number % lanes);
  const int day = first_day_of(number);
  LaneTimes times(hand_.calendar(), day, lane);
  VisitPlan plan{invented_car(random), job::Stage::Comeback, {}, story_of(number)};
  plan.camera_from_ms = camera_comes_ms(options_, hand_.calendar());
  plan.burns_through = number % burns_one_of == burns_which;
  plan.open.promised_ms =
      hand_.calendar().morning_ms(day) + promise_after_days * day_ms + 540 * minute_ms;
  const auto late = lateness_of(stream(options_.seed, subject(number) + " lateness"));
  if (late) plan.open.promised_ms = *plan.open.promised_ms - late->earlier_ms;
  const auto painted_ms = hand_.calendar().morning_ms(day + 2);
  plan.booth = {
      static_cast<double>(options_.now.wall_ms - painted_ms) / static_cast<double>(day_ms), lane,
      options_.causes};
  const Crew& crew = crews_[number / cars_of_a_crew_];
  Visit visit = visit_of(std::move(plan), crew, house_, times, random);
  if (late) add_wait(visit, late->reason, hand_.calendar(), day, crew.at(Who::Rosa));
  add_pictures(visit, options_, hand_.calendar(), crew, std::nullopt);
  return visit;
}

Status Maker::make() {
  JAMBLINE_TRY(set_up());
  std::priority_queue<Coming, std::vector<Coming>, std::greater<>> queue;
  std::map<std::size_t, Under> under;
  for (std::size_t number = 0; number < delivered_; ++number)
    queue.push({comes_ms(number), number});
  Diary diary(options_.now.wall_ms);
  for (int i = std::clamp(options_.in_work, 0, most_in_work) - 1; i >= 0; --i) {
    const std::size_t number = delivered_ + static_cast<std::size_t>(i);
    SeededRandom random = stream(options_.seed, subject(number));
    Visit visit = car_in_work(i, options_.now.wall_ms, diary, crews_.front(), house_, random,
                              story_of(number), camera_comes_ms(options_, hand_.calendar()));
    add_air(visit, options_.now.wall_ms, crews_.front(), house_, i);
    add_pictures(visit, options_, hand_.calendar(), crews_.front(), i);
    queue.push({visit.steps.front().at_ms, number});
    under.emplace(number, under_way(number, random, std::move(visit)));
  }
  Visit booths =
      booth_events(hand_.calendar(), options_.now.wall_ms, crews_.front(), house_.booths);
  queue.push({booths.steps.front().at_ms, nobodys_car});
  under.emplace(nobodys_car, under_way(nobodys_car, stream(options_.seed, subject(nobodys_car)),
                                       std::move(booths)));
  if (Visit air =
          air_of_shop(hand_.calendar(), options_.now.wall_ms, crews_.front(), house_.booths);
      !air.steps.empty()) {
    queue.push({air.steps.front().at_ms, its_air});
    under.emplace(its_air,
                  under_way(its_air, stream(options_.seed, subject(its_air)), std::move(air)));
  }
  if (Visit lists = shot_lists(options_, hand_.calendar(), crews_.front()); !lists.steps.empty()) {
    queue.push({lists.steps.front().at_ms, shop_itself});
    under.emplace(shop_itself, under_way(shop_itself, stream(options_.seed, subject(shop_itself)),
                                         std::move(lists)));
  }
  while (!queue.empty()) {
    const std::size_t number = queue.top().number;
    queue.pop();
    auto found = under.find(number);
    if (found == under.end()) {
      SeededRandom random = stream(options_.seed, subject(number));
      Visit visit = delivered_visit(number, random);
      found = under.emplace(number, under_way(number, random, std::move(visit))).first;
      queue.push({found->second.visit.steps.front().at_ms, number});
      continue;
    }
    Under& car = found->second;
    JAMBLINE_TRY(hand_.act(car.visit.steps[car.next], car.job, car.random, car.pictures, car.air));
    if (++car.next < car.visit.steps.size())
      queue.push({car.visit.steps[car.next].at_ms, number});
    else
      under.erase(found);
  }
  return {};
}

std::vector<entries::Entry> entries_of(const std::vector<log::Stored>& stored) {
  std::vector<entries::Entry> out;
  for (const auto& one : stored) out.push_back(engine::read_entry(one.entry));
  return out;
}

std::vector<log::Draft> written(const std::vector<acts::Draft>& drafts) {
  std::vector<log::Draft> out;
  for (const auto& draft : drafts) {
    auto text = entries::write(draft.payload);
    out.push_back({draft.subject, text.kind, text.schema, std::move(text.payload)});
  }
  return out;
}

log::OpenOptions options_of_log() {
  log::OpenOptions options;
  options.ballast_bytes = 0;
  options.erasable = [kinds = entries::erasable_kinds()](std::uint16_t kind) {
    return std::find(kinds.begin(), kinds.end(), kind) != kinds.end();
  };
  return options;
}

// In the machine's memory where there is such a place with room, so that thousands of commits need
// not wait for a disk; else where the system keeps throw-away files.
std::filesystem::path quick_place() {
  std::error_code none;
  const std::filesystem::path memory = "/dev/shm";
  const auto space = std::filesystem::space(memory, none);
  if (!none && space.available > room_bytes && access(memory.c_str(), W_OK) == 0) return memory;
  return std::filesystem::temp_directory_path(none);
}

class ThrowAwayFolder {
 public:
  ThrowAwayFolder() {
    std::string name = (quick_place() / "jambline-demo-XXXXXX").string();
    if (mkdtemp(name.data())) path_ = name;
  }
  ~ThrowAwayFolder() {
    std::error_code ignored;
    if (!path_.empty()) std::filesystem::remove_all(path_, ignored);
  }
  ThrowAwayFolder(const ThrowAwayFolder&) = delete;
  ThrowAwayFolder& operator=(const ThrowAwayFolder&) = delete;
  const std::filesystem::path& path() const { return path_; }

 private:
  std::filesystem::path path_;
};

}  // namespace

Status make_entries(const DemoOptions& options, const Sinks& sinks) {
  return Maker(options, sinks).make();
}

namespace {

// Copies the closed log and waits until it is on the disk.
Status keep_log(const std::filesystem::path& from, const std::filesystem::path& to) {
  std::error_code refused;
  std::filesystem::copy_file(from / log_file, to / log_file, refused);
  if (refused)
    return fail(
        Error{Code::FileFailed, "make the demo shop", to.string(), {{"cause", refused.message()}}});
  const int file = ::open((to / log_file).c_str(), O_RDONLY | O_CLOEXEC);
  const bool kept = file >= 0 && ::fsync(file) == 0;
  if (file >= 0) ::close(file);
  if (!kept) return fail(Code::FileFailed, "make the demo shop", to.string());
  return {};
}

Status make_log(const std::filesystem::path& folder, const seal::SigningKey& key,
                SeededRandom& random, const DemoOptions& options) {
  JAMBLINE_ASSIGN(const auto here,
                  log::EntryLog::open(folder, log::OpenMode::Write, options_of_log()));
  const ThrowAwayFolder beside;
  JAMBLINE_ASSIGN(const auto there,
                  log::EntryLog::open(beside.path(), log::OpenMode::Write, options_of_log()));

  const auto other_key = seal::SigningKey::make(random);
  const Calendar calendar(options.now.wall_ms, options.weeks);
  Moment founded;
  founded.wall_ms = calendar.morning_ms(0);
  founded.offset_min = calendar.offset_min(founded.wall_ms);
  JAMBLINE_ASSIGN(const auto first, here->found_shop(key, "tablet at the booth", founded, random));
  const log::Draft admitted{
      {},
      seal::kind::device_admitted,
      1,
      to_json(seal::DeviceAdmitted{other_key.key(), "tablet at the bench", false})};
  founded.wall_ms += minute_ms;
  founded.since_boot_ms += minute_ms;
  JAMBLINE_ASSIGN(const auto second, here->append(key, {}, {&admitted, 1}, founded, random));
  const std::vector<seal::SealedEntry> known{first.entry, second.front().entry};
  JAMBLINE_TRY(there->add(known));

  Sinks sinks;
  sinks.here = [&](const PersonId& person, const std::vector<acts::Draft>& drafts,
                   const Moment& moment) -> Result<std::vector<entries::Entry>> {
    JAMBLINE_ASSIGN(const auto stored, here->append(key, person, written(drafts), moment, random));
    return entries_of(stored);
  };
  sinks.other_device = [&](const PersonId& person, const std::vector<acts::Draft>& drafts,
                           const Moment& moment) -> Result<std::vector<entries::Entry>> {
    JAMBLINE_ASSIGN(const auto stored,
                    there->append(other_key, person, written(drafts), moment, random));
    std::vector<seal::SealedEntry> sealed;
    for (const auto& one : stored) sealed.push_back(one.entry);
    JAMBLINE_ASSIGN(const auto added, here->add(sealed));
    return entries_of(added);
  };
  return make_entries(options, sinks);
}

}  // namespace

Status make_shop(const std::filesystem::path& folder, const DemoOptions& options) {
  if (std::filesystem::exists(folder / log_file))
    return fail(Code::AlreadyDone, "make the demo shop", folder.string());
  SeededRandom random = stream(options.seed, "log");
  const auto key = seal::SigningKey::make(random);
  const ThrowAwayFolder workshop;
  JAMBLINE_TRY(make_log(workshop.path(), key, random, options));
  JAMBLINE_TRY(key.save(folder / "device.key"));
  return keep_log(workshop.path(), folder);
}

}  // namespace jambline::demo
