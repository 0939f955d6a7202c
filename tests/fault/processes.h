// tests/fault/processes.h: the real programs of a shop, each a process of its own: jambline-hub,
// and fault-device (device_program.cpp), an engine and an exchange on a folder.
//
// Device:  answers each line with one: "note WORDS", "car PLATE", "picture SEED BYTES" with
//          "done ENTRIES" or "no CODE SUBJECT ..."; "state" with "state send=.. pictures=.. ...";
//          "go" sends now; the end of its input ends it.
// Disk:    with a small disk the program works on a tmpfs that only it has, filled from its folder;
//          /proc shows it to the test. Where none may be mounted, RLIMIT_FSIZE stands in for it.
#pragma once

#include <cstdint>
#include <filesystem>
#include <functional>
#include <optional>
#include <string>
#include <sys/types.h>
#include <vector>

namespace jambline::fault {

// Polled; what never comes true is a failure after a minute.
bool comes_true(const std::function<bool()>& wanted);

struct SmallDisk {
  std::uint64_t mebibytes = 0;  // 0: the usual disk
};

class Process {
 public:
  Process(const Process&) = delete;
  Process& operator=(const Process&) = delete;
  void send_signal(int signal) const;
  int end(int signal);  // and waits; its exit code, 128 + the signal that ended it

  // A small disk: nothing more fits on it, or it has room again.
  void fill_disk();
  void empty_disk();
  bool on_tmpfs() const { return on_tmpfs_; }
  void copy_disk_to(const std::filesystem::path& folder) const;

 protected:
  Process() = default;
  ~Process();
  void start(std::vector<std::string> words, const std::filesystem::path& folder, SmallDisk disk,
             int in, int out, int errors);
  std::filesystem::path disk() const;

  pid_t child_ = -1;

 private:
  std::filesystem::path folder_;
  bool small_ = false;
  bool on_tmpfs_ = false;
};

class HubProcess : public Process {
 public:
  explicit HubProcess(const std::filesystem::path& folder, SmallDisk disk = {},
                      std::uint16_t port = 0);
  std::uint16_t port() const { return port_; }

 private:
  std::uint16_t port_ = 0;
};

class DeviceProcess : public Process {
 public:
  explicit DeviceProcess(const std::filesystem::path& folder, SmallDisk disk = {},
                         bool power_may_go = false);
  ~DeviceProcess();
  void tell(const std::string& line);        // and does not wait for the answer
  std::optional<std::string> hear();         // the next answer; nothing when it has ended
  std::string ask(const std::string& line);  // both
  // Entries that it says are written, 0 when it refused.
  std::uint64_t act(const std::string& line);
  std::string state() { return ask("state"); }
  bool all_sent();  // nothing is left to be sent or fetched, and the hub answers
  int close();      // its input ends, and so does it

 private:
  int to_ = -1;
  int from_ = -1;
  std::string heard_;
};

// jambline-hub, run to its end: its exit code and what it said.
struct Ran {
  int code = -1;
  std::string said;
};
Ran run_hub(const std::string& words);

}  // namespace jambline::fault
