// tests/simulator/world.h: five devices and a hub in one process, on fake time, disks and network.
//
// Shape:   a fault test says what happens by the calls below, the schedules of schedule.h draw them
//          from a seed. Whatever a device answered as written is in the ledger. calm() lets
//          everybody sync on a good network until nothing changes any more; oracle.h looks then.
// Threads: one.
#pragma once

#include <deque>

#include "tests/simulator/network.h"

namespace jambline::simulator {

struct WorldOptions {
  std::uint64_t seed = 1;
  bool hub_on_disk = false;  // in the real hub's database
  std::function<void(const std::string&)> say = {};
};

class World {
 public:
  explicit World(WorldOptions options);
  ~World();
  World(const World&) = delete;
  World& operator=(const World&) = delete;

  SimDevice& device(std::size_t number) { return *devices_.at(number); }
  std::size_t devices() const { return devices_.size(); }

  // What people do. False: it was refused, and nothing was written.
  bool act(std::size_t device);        // anything that could be done now
  bool say_plate(std::size_t device);  // of a car that everybody has
  bool take_picture(std::size_t device, bool same_as_before = false);
  bool say_raw(std::size_t device, log::Draft draft);
  bool say_poison(std::size_t device);
  bool erase_something(std::size_t device);
  bool revoke(std::size_t by, std::size_t device);
  // A manager reads what was kept apart of the device and says it again in his own chain.
  bool take_over(std::size_t by, std::size_t device);
  // One step of a forked folder towards a new key, and its work said again once it has that.
  void move_to_new_key(std::size_t device, Mishap mishap);
  void say_again(std::size_t device);

  // The network. request(): one request there and back; false: the lane had none.
  bool request(std::size_t device, std::size_t lane, Mishap mishap = Mishap::None);
  void send(std::size_t device, std::size_t lane, Mishap mishap);  // its answer comes later
  void move_flights();  // some of what is on its way goes on
  // All lanes until none has anything to ask; the first request meets the mishap.
  void sync(std::size_t device, Mishap mishap = Mishap::None);
  void pass_ms(std::int64_t ms);
  void pass_half_a_year();

  // Faults.
  void restart(std::size_t device);
  void lose_power(std::size_t device);
  void kill_in_act(std::size_t device);  // and start again
  void restart_hub();
  void hub_loses_power();
  void stop_hub();
  void start_hub();
  void backup_hub();
  bool put_hub_back(bool declared);  // false: there is no backup, or it would lose what nobody has
  void back_up(std::size_t device);
  bool put_back(std::size_t device);      // the same
  std::size_t clone(std::size_t device);  // the number of the copy
  bool damage_at_hub();
  void forget_uploads();
  void move_enrolment(Mishap mishap);  // of the late device, one step

  void calm();
  bool quiet() const;  // nothing is left to be sent or fetched by anybody who still belongs
  bool compared(const SimDevice& device) const;
  // What the hub keeps apart of the revoked.
  std::set<Hash> apart() const;
  // Of that, what the device has beside the hub's log: it pulled it before the hub was put back,
  // which then heard of the cut first.
  std::set<Hash> apart_here(const SimDevice& device) const;

  // Looked at after every step.
  void look();
  void complain(std::string what);
  const std::vector<std::string>& complaints() const { return complaints_; }

  struct Shown {
    DeviceId device;
    std::uint64_t seq{};
  };
  const std::map<Hash, Shown>& ledger() const { return ledger_; }
  // Of each picture's files: who took it.
  const std::map<Hash, std::set<std::size_t>>& pictures() const { return pictures_; }
  bool will_come(const Hash& blob) const;  // somebody who may send it has taken it
  // What a manager or a forked device has said again, and what is left where it is: membership,
  // erasures, and what was erased.
  const std::set<Hash>& to_be_again() const { return to_be_again_; }
  const std::set<Hash>& left_there() const { return left_there_; }
  const std::set<Hash>& to_be_erased() const { return to_be_erased_; }
  void meet(Met what) { network.met[static_cast<std::size_t>(what)] = true; }

 private:
  FastFolder folder_;  // before all that lies in it

 public:
  TrueTime time;
  SeededRandom random;
  SimHub hub;
  Network network;
  const PersonId rosa;
  bool hub_was_put_back = false;
  bool twins = false;  // a folder was cloned or put back
  std::uint64_t acts_done = 0;

 private:
  bool note(SimDevice& device, const SimDevice::Wrote& wrote);
  void say(const std::string& words) {
    if (say_) say_(words);
  }
  std::string picture_bytes(bool small);
  std::string state_words() const;
  void cut_all_connections();
  void change_time_for(std::uint64_t requests) {
    time.ms += 20 * static_cast<std::int64_t>(requests);
  }
  std::optional<sync::Response> ask_as(SimDevice& device, const sync::Target& target,
                                       sync::Method method, std::string body, Mishap mishap);
  SimDevice* able_manager();
  void note_origins(const std::vector<seal::SealedEntry>& origins);
  std::size_t wanted_files(const SimDevice& device) const;  // missing there, and to be had
  void look_at(SimDevice& device);
  bool anybody_has(const Hash& entry, const SimDevice* without, bool also_hub) const;

  std::function<void(const std::string&)> say_;
  std::vector<std::unique_ptr<SimDevice>> devices_;
  std::deque<Flight> flights_;
  std::map<Hash, Shown> ledger_;
  std::map<Hash, std::set<std::size_t>> pictures_;
  std::set<Hash> to_be_again_;
  std::set<Hash> left_there_;
  std::set<Hash> to_be_erased_;
  std::map<std::size_t, std::vector<seal::SealedEntry>> divergent_;
  std::set<seal::Key> asking_;  // keys of forked devices
  std::map<const SimDevice*, std::int64_t> away_since_ms_;
  std::map<std::size_t, std::int64_t> deleted_ms_;
  std::vector<std::string> some_pictures_;
  std::optional<SimHub::Backup> hub_backup_;
  std::map<std::size_t, DeviceCopy> copies_;
  std::optional<sync::InviteCode> code_;
  std::vector<std::string> complaints_;
  std::uint64_t starts_ = 0;
};

// What the folds of a log show, as text; with or without what is said of refused entries: how many.
enum class RefusedEntries : std::uint8_t { Counted, LeftOut };
std::string fold_text(const std::vector<seal::SealedEntry>& entries,
                      RefusedEntries refused = RefusedEntries::Counted);

// The oracle at the end (FAULTS.md): what is wrong, in words.
void judge(World& world);

}  // namespace jambline::simulator
