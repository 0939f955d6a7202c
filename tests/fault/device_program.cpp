// A device without screens: engine and exchange on a folder, told by lines what to do. What it
// answers stands in device_process.h. It is started and killed by the tests of this folder.
#include <csignal>
#include <fstream>
#include <iostream>
#include <sstream>

#include "engine/read_entry.h"
#include "exchange/exchange.h"
#include "tests/crash/power_loss_vfs.h"
#include "tests/engine/every_command.h"

namespace jambline::fault {
namespace {

namespace fs = std::filesystem;
using log::PowerLossVfs;

std::string words_of(const Error& error) {
  std::string out = std::string(code_name(error.code)) + " " + error.subject;
  for (const auto& [name, value] : error.args) out += " " + name + "=" + value;
  return out;
}
[[noreturn]] void die(const Error& error) {
  std::cout << "no " << words_of(error) << std::endl;
  std::_Exit(2);
}
template <class T>
T need(Result<T> result) {
  if (!result) die(result.error());
  return std::move(*result);
}

class Device {
 public:
  Device(fs::path folder, bool power_may_go) : folder_(std::move(folder)) {
    if (power_may_go) disk_ = std::make_unique<PowerLossVfs>();
    const bool awaits = need(exchange::Exchange::awaits_admission(folder_));
    engine::Engine::Parts parts{folder_,
                                clock_,
                                std::make_unique<SystemRandom>(),
                                "device",
                                [this](const auto&) {
                                  if (auto* told = told_.load()) told->entries_changed();
                                },
                                {},
                                awaits};
    if (disk_) {
      log::OpenOptions options;
      options.erasable = engine::may_be_erased;
      options.ballast_bytes = 0;
      options.vfs = PowerLossVfs::name;
      parts.log = need(log::EntryLog::open(folder_, log::OpenMode::Write, options));
    }
    engine_ = need(engine::Engine::open(std::move(parts)));
    exchange_ = need(exchange::Exchange::open({folder_, *engine_, clock_, "device", {}}));
    told_ = exchange_.get();
    exchange_->start();
  }
  ~Device() { close(); }

  std::string note(const std::string& words) {
    return wrote([&](engine::Engine::Done done) {
      engine_->post(acts::WriteNote{car(), words}, person(), std::move(done));
    });
  }
  std::string open_car(const std::string& plate) {
    return wrote([&](engine::Engine::Done done) {
      acts::OpenCar open = engine::car_to_open();
      open.plate = plate;
      engine_->post(std::move(open), person(), std::move(done));
    });
  }
  std::string picture(std::uint64_t seed, std::size_t bytes) {
    SeededRandom random(seed);
    std::vector<std::uint8_t> small(3000);
    auto whole = std::make_shared<std::vector<std::uint8_t>>(bytes);
    random.fill(*whole);
    random.fill(small);
    auto command = engine::picture_of(car(), *whole);
    blobs::Hasher hasher;
    hasher.update(small);
    command.facts.preview = need(hasher.finish());
    return wrote([&](engine::Engine::Done done) {
      engine_->keep_picture(whole, std::make_shared<const std::vector<std::uint8_t>>(small),
                            command, person(), std::move(done));
    });
  }
  std::string state() const {
    const auto now = exchange_->state();
    const auto snapshot = engine_->snapshot();
    std::string out = "state send=" + std::to_string(now.entries_to_send) +
                      " pictures=" + std::to_string(now.pictures_to_send) +
                      " fetch=" + std::to_string(now.pictures_to_fetch) +
                      " good=" + std::to_string(now.contact == exchange::Contact::Good) +
                      " restored=" + std::to_string(now.hub_was_restored) +
                      " own=" + std::to_string(snapshot->own_entries) +
                      " all=" + std::to_string(arrived());
    if (now.trouble) out += " trouble=" + words_of(*now.trouble);
    return out;
  }
  std::string send_now() {
    exchange_->send_now();
    return "done 0";
  }
  // The disk as it would be had the power gone: some of the time, the last ten now.
  std::string images(std::size_t count, const fs::path& to) {
    const std::size_t now = disk_->events.size();
    close();
    SeededRandom random(count);
    for (std::size_t i = 0; i < count; ++i) {
      const std::size_t at = i + 10 < count ? random.below(now) : now;
      const fs::path image = to / std::to_string(i);
      disk_->build(at, static_cast<PowerLossVfs::Loss>(i % 4), random, image);
      std::uint64_t said = 0;
      for (std::size_t event = 0; event < at; ++event)
        if (disk_->events[event].what == PowerLossVfs::Event::What::Said)
          said = static_cast<std::uint64_t>(disk_->events[event].offset);
      std::ofstream(image / "said") << said;
    }
    return "done " + std::to_string(count);
  }

 private:
  void close() {
    if (!engine_) return;
    told_ = nullptr;
    engine_->drain();
    exchange_.reset();
    engine_.reset();
  }
  // Entries of everybody in the log.
  std::uint64_t arrived() const {
    std::uint64_t out = 0;
    for (const auto& device : engine_->snapshot()->devices) out += device.entries;
    return out;
  }
  JobId car() const { return engine_->snapshot()->floor->front().job; }
  PersonId person() const { return engine_->snapshot()->shop->people.front().person; }
  std::string wrote(const std::function<void(engine::Engine::Done)>& act) {
    std::string out;
    act([&](const Result<engine::Wrote>& wrote) {
      if (!wrote) {
        out = "no " + words_of(wrote.error());
        return;
      }
      said_ += wrote->entries.size();
      if (disk_) disk_->said(static_cast<std::int64_t>(said_));
      out = "done " + std::to_string(wrote->entries.size());
    });
    while (out.empty()) engine_->drain();  // a picture goes over another lane first
    return out;
  }

  fs::path folder_;
  SystemClock clock_;
  std::unique_ptr<PowerLossVfs> disk_;
  std::uint64_t said_ = 0;  // entries since it started; on the work lane
  std::atomic<exchange::Exchange*> told_{nullptr};
  std::unique_ptr<engine::Engine> engine_;
  std::unique_ptr<exchange::Exchange> exchange_;
};

std::string answer(Device& device, const std::string& line) {
  std::istringstream words(line);
  std::string verb, text;
  std::uint64_t number = 0;
  words >> verb;
  if (verb == "state") return device.state();
  if (verb == "go") return device.send_now();
  if (verb == "picture") {
    std::size_t bytes = 0;
    words >> number >> bytes;
    return device.picture(number, bytes);
  }
  if (verb == "images") {
    words >> number >> text;
    return device.images(number, text);
  }
  std::getline(words >> std::ws, text);
  if (verb == "note") return device.note(text);
  if (verb == "car") return device.open_car(text);
  return "no such verb";
}

}  // namespace
}  // namespace jambline::fault

int main(int count, char** words) {
  std::signal(SIGXFSZ, SIG_IGN);
  if (count < 2) return 2;
  jambline::fault::Device device(words[1], count > 2 && words[2] == std::string("power-may-go"));
  std::cout << "ready" << std::endl;
  for (std::string line; std::getline(std::cin, line);)
    std::cout << jambline::fault::answer(device, line) << std::endl;
}
