#include "tests/fault/processes.h"

#include <array>
#include <chrono>
#include <csignal>
#include <fcntl.h>
#include <fstream>
#include <gtest/gtest.h>
#include <poll.h>
#include <sys/prctl.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <thread>
#include <unistd.h>

#include "base/json.h"
#include "sync/hub_events.h"

namespace jambline::fault {

namespace fs = std::filesystem;

namespace {
constexpr auto patience = std::chrono::seconds(60);
constexpr const char* filler = "filler";

int exit_code(int state) {
  return WIFEXITED(state) ? WEXITSTATUS(state) : 128 + WTERMSIG(state);
}

std::vector<std::string> in_own_mounts() {
  std::vector<std::string> out{"unshare", "--mount"};
  if (geteuid() != 0) out.push_back("--map-root-user");
  return out;
}

bool may_mount() {
  static const bool may = [] {
    std::string words;
    for (const auto& word : in_own_mounts()) words += word + " ";
    return std::system((words + "mount -t tmpfs none /mnt >/dev/null 2>&1").c_str()) == 0;
  }();
  return may;
}
}  // namespace

bool comes_true(const std::function<bool()>& wanted) {
  const auto most = std::chrono::steady_clock::now() + patience;
  while (!wanted()) {
    if (std::chrono::steady_clock::now() > most) return false;
    std::this_thread::sleep_for(std::chrono::milliseconds(10));
  }
  return true;
}

Process::~Process() {
  if (child_ > 0) end(SIGKILL);
}

void Process::start(std::vector<std::string> words, const fs::path& folder, SmallDisk disk, int in,
                    int out, int errors) {
  folder_ = folder;
  small_ = disk.mebibytes > 0;
  on_tmpfs_ = small_ && may_mount();
  if (small_) testing::Test::RecordProperty("small_disk", on_tmpfs_ ? "tmpfs" : "RLIMIT_FSIZE");
  if (on_tmpfs_) {
    // Copied aside first: the new disk hides what lies below it.
    const std::string at = folder.string();
    auto wrapped = in_own_mounts();
    wrapped.insert(wrapped.end(),
                   {"sh", "-c",
                    "exec 9<'" + at + "' && mount -t tmpfs -o size=" +
                        std::to_string(disk.mebibytes) + "m none '" + at +
                        "' && cp -a /proc/self/fd/9/. '" + at + "' && exec 9<&- && exec \"$@\"",
                    "sh"});
    wrapped.insert(wrapped.end(), words.begin(), words.end());
    words = std::move(wrapped);
  }
  std::vector<char*> arguments;
  for (auto& word : words) arguments.push_back(word.data());
  arguments.push_back(nullptr);
  child_ = fork();
  if (child_ != 0) return;
  prctl(PR_SET_PDEATHSIG, SIGKILL);
  std::signal(SIGXFSZ, SIG_IGN);
  for (const auto& [from, to] : {std::pair(in, 0), std::pair(out, 1), std::pair(errors, 2)})
    if (from >= 0) dup2(from, to);
  execvp(arguments[0], arguments.data());
  _exit(127);
}

void Process::send_signal(int signal) const {
  if (child_ > 0) kill(child_, signal);
}

int Process::end(int signal) {
  if (child_ <= 0) return -1;
  kill(child_, signal);
  int state = 0;
  waitpid(child_, &state, 0);
  child_ = -1;
  return exit_code(state);
}

fs::path Process::disk() const {
  return on_tmpfs_ ? fs::path("/proc/" + std::to_string(child_) + "/root" + folder_.string())
                   : folder_;
}

void Process::fill_disk() {
  if (!on_tmpfs_) {
    const rlimit one{1, RLIM_INFINITY};
    if (prlimit(child_, RLIMIT_FSIZE, &one, nullptr) != 0) ADD_FAILURE() << "no limit";
    return;
  }
  const int to = open((disk() / filler).c_str(), O_WRONLY | O_CREAT | O_APPEND | O_CLOEXEC, 0600);
  if (to < 0) ADD_FAILURE() << "the disk is not seen";
  const std::string page(4096, 'f');
  while (write(to, page.data(), page.size()) > 0) {
  }
  close(to);
}

void Process::empty_disk() {
  const rlimit none{RLIM_INFINITY, RLIM_INFINITY};
  if (on_tmpfs_)
    fs::remove(disk() / filler);
  else if (prlimit(child_, RLIMIT_FSIZE, &none, nullptr) != 0)
    ADD_FAILURE() << "no limit";
}

void Process::copy_disk_to(const fs::path& folder) const {
  fs::create_directories(folder);
  const std::string words = "cp -a '" + disk().string() + "/.' '" + folder.string() + "'";
  EXPECT_EQ(std::system(words.c_str()), 0);
}

HubProcess::HubProcess(const fs::path& folder, SmallDisk disk, std::uint16_t port) {
  const std::string log = folder.string() + ".log";
  fs::remove(log);
  const int errors = open(log.c_str(), O_WRONLY | O_CREAT | O_APPEND | O_CLOEXEC, 0600);
  start({JAMBLINE_HUB, "serve", "--folder", folder.string(), "--host", "127.0.0.1", "--port",
         std::to_string(port)},
        folder, disk, -1, errors, errors);
  close(errors);
  EXPECT_TRUE(comes_true([&] {
    std::ifstream in(log);
    for (std::string line; std::getline(in, line);)
      if (const auto event = from_json<sync::HubEvent>(line); event && event->event == "serving")
        port_ = static_cast<std::uint16_t>(event->status);
    return port_ != 0 || waitpid(child_, nullptr, WNOHANG) != 0;
  }));
  EXPECT_NE(port_, 0) << "it does not serve: " << std::ifstream(log).rdbuf();
}

DeviceProcess::DeviceProcess(const fs::path& folder, SmallDisk disk, bool power_may_go) {
  int in[2], out[2];
  if (pipe2(in, O_CLOEXEC) != 0 || pipe2(out, O_CLOEXEC) != 0) std::abort();
  std::vector<std::string> words{JAMBLINE_FAULT_DEVICE, folder.string()};
  if (power_may_go) words.push_back("power-may-go");
  start(std::move(words), folder, disk, in[0], out[1], -1);
  ::close(in[0]);
  ::close(out[1]);
  to_ = in[1];
  from_ = out[0];
  EXPECT_EQ(hear().value_or("it has ended"), "ready");
}

DeviceProcess::~DeviceProcess() {
  ::close(to_);
  ::close(from_);
}

void DeviceProcess::tell(const std::string& line) {
  const std::string all = line + "\n";
  if (write(to_, all.data(), all.size()) != static_cast<ssize_t>(all.size())) {
    // It was killed: whoever hears it finds that out.
  }
}

std::optional<std::string> DeviceProcess::hear() {
  for (;;) {
    if (const auto end = heard_.find('\n'); end != std::string::npos) {
      std::string line = heard_.substr(0, end);
      heard_.erase(0, end + 1);
      return line;
    }
    pollfd wait{from_, POLLIN, 0};
    if (poll(&wait, 1, static_cast<int>(std::chrono::milliseconds(patience).count())) <= 0) {
      ADD_FAILURE() << "it does not answer";
      return std::nullopt;
    }
    std::array<char, 4096> piece{};
    const ssize_t got = read(from_, piece.data(), piece.size());
    if (got <= 0) return std::nullopt;
    heard_.append(piece.data(), static_cast<std::size_t>(got));
  }
}

std::string DeviceProcess::ask(const std::string& line) {
  tell(line);
  return hear().value_or("it has ended");
}

std::uint64_t DeviceProcess::act(const std::string& line) {
  const std::string answer = ask(line);
  return answer.starts_with("done ") ? std::stoull(answer.substr(5)) : 0;
}

bool DeviceProcess::all_sent() {
  return state().starts_with("state send=0 pictures=0 fetch=0 good=1");
}

int DeviceProcess::close() {
  ::close(to_);
  to_ = -1;
  while (hear()) {
  }
  int state = 0;
  waitpid(child_, &state, 0);
  child_ = -1;
  return exit_code(state);
}

Ran run_hub(const std::string& words) {
  Ran out;
  FILE* pipe = popen((std::string(JAMBLINE_HUB) + " " + words + " 2>&1").c_str(), "re");
  std::array<char, 4096> piece{};
  while (const std::size_t got = fread(piece.data(), 1, piece.size(), pipe))
    out.said.append(piece.data(), got);
  out.code = exit_code(pclose(pipe));
  return out;
}

}  // namespace jambline::fault
