#include "hub/control.h"

#include <atomic>
#include <cerrno>
#include <cstring>
#include <fcntl.h>
#include <poll.h>
#include <sys/socket.h>
#include <sys/stat.h>
#include <sys/un.h>
#include <unistd.h>

#include "blobs/file_layer.h"

namespace jambline::hub {

namespace fs = std::filesystem;

namespace {
constexpr const char* control_name = "control";
constexpr std::size_t most_question_bytes = 64U << 10U;
constexpr std::size_t most_answer_bytes = 64U << 20U;
constexpr std::size_t most_talks = 8;
constexpr int ask_within_s = 10;
constexpr int look_every_ms = 200;

class OpenFile {
 public:
  explicit OpenFile(int number) : number_(number) {}
  OpenFile(const OpenFile&) = delete;
  OpenFile& operator=(const OpenFile&) = delete;
  ~OpenFile() {
    if (number_ >= 0) close(number_);
  }
  int get() const { return number_; }
  int release() { return std::exchange(number_, -1); }

 private:
  int number_;
};

// A socket's name holds 107 signs; through the open folder any path is short enough.
sockaddr_un control_address(int folder) {
  sockaddr_un out{};
  out.sun_family = AF_UNIX;
  const std::string path = "/proc/self/fd/" + std::to_string(folder) + "/" + control_name;
  std::memcpy(out.sun_path, path.c_str(), path.size() + 1);
  return out;
}

int open_folder(const fs::path& folder) {
  return open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
}

bool send_all(int connection, std::string_view text) {
  while (!text.empty()) {
    const ssize_t sent = send(connection, text.data(), text.size(), MSG_NOSIGNAL);
    if (sent < 0 && errno == EINTR) continue;
    if (sent <= 0) return false;
    text.remove_prefix(static_cast<std::size_t>(sent));
  }
  return true;
}

// Without its end; nothing when it does not come whole.
std::optional<std::string> read_line(int connection, std::size_t most_bytes) {
  std::string out;
  char piece[4096];
  for (;;) {
    const ssize_t got = recv(connection, piece, sizeof piece, 0);
    if (got < 0 && errno == EINTR) continue;
    if (got <= 0) return std::nullopt;
    out.append(piece, static_cast<std::size_t>(got));
    if (const auto end = out.find('\n'); end != std::string::npos) {
      out.resize(end);
      return out;
    }
    if (out.size() > most_bytes) return std::nullopt;
  }
}

bool may_ask(int connection) {
  ucred who{};
  socklen_t size = sizeof who;
  if (getsockopt(connection, SOL_SOCKET, SO_PEERCRED, &who, &size) != 0) return false;
  return who.uid == geteuid() || who.uid == 0;
}
}  // namespace

Control::Control(int folder, int socket, Answer answer)
    : folder_(folder),
      socket_(socket),
      answer_(std::move(answer)),
      thread_([this](const std::stop_token& stop) { listen(stop); }) {}

Result<std::unique_ptr<Control>> Control::open(const fs::path& hub_folder, Answer answer) {
  OpenFile folder(open_folder(hub_folder));
  if (folder.get() < 0) return fail(blobs::system_error("listen", hub_folder, errno));
  // Whoever holds the folder's lock is the one hub: an old socket is nobody's.
  if (unlinkat(folder.get(), control_name, 0) != 0 && errno != ENOENT)
    return fail(blobs::system_error("listen", hub_folder / control_name, errno));
  OpenFile socket(::socket(AF_UNIX, SOCK_STREAM | SOCK_CLOEXEC, 0));
  if (socket.get() < 0) return fail(blobs::system_error("listen", hub_folder, errno));
  const sockaddr_un at = control_address(folder.get());
  const mode_t before = umask(0177);
  const int bound = bind(socket.get(), reinterpret_cast<const sockaddr*>(&at), sizeof at);
  const int reason = errno;
  umask(before);
  if (bound != 0) return fail(blobs::system_error("listen", hub_folder / control_name, reason));
  if (::listen(socket.get(), static_cast<int>(most_talks)) != 0)
    return fail(blobs::system_error("listen", hub_folder / control_name, errno));
  return std::unique_ptr<Control>(
      new Control(folder.release(), socket.release(), std::move(answer)));
}

Control::~Control() {
  thread_.request_stop();
  thread_.join();
  talks_.clear();  // each is asked to stop, and waited for
  unlinkat(folder_, control_name, 0);
  close(socket_);
  close(folder_);
}

void Control::listen(const std::stop_token& stop) {
  while (!stop.stop_requested()) {
    std::erase_if(talks_, [](const Talk& one) { return one.done->load(); });
    pollfd waiting{socket_, POLLIN, 0};
    if (poll(&waiting, 1, look_every_ms) <= 0) continue;
    const int connection = accept4(socket_, nullptr, nullptr, SOCK_CLOEXEC);
    if (connection < 0) continue;
    if (talks_.size() >= most_talks || !may_ask(connection)) {
      close(connection);
      continue;
    }
    auto done = std::make_shared<std::atomic<bool>>(false);
    talks_.push_back({std::jthread([this, connection, done](const std::stop_token& end) {
                        talk(connection, end);
                        done->store(true);
                      }),
                      done});
  }
}

void Control::talk(int connection, const std::stop_token& stop) const {
  const OpenFile closing(connection);
  const timeval patience{ask_within_s, 0};
  setsockopt(connection, SOL_SOCKET, SO_RCVTIMEO, &patience, sizeof patience);
  setsockopt(connection, SOL_SOCKET, SO_SNDTIMEO, &patience, sizeof patience);
  if (const auto line = read_line(connection, most_question_bytes))
    (void)send_all(connection, answer_(*line, stop) + "\n");
}

Result<std::optional<std::string>> ask_control(const fs::path& hub_folder,
                                               const std::string& line) {
  const OpenFile folder(open_folder(hub_folder));
  if (folder.get() < 0) return fail(blobs::system_error("ask", hub_folder, errno));
  const OpenFile socket(::socket(AF_UNIX, SOCK_STREAM | SOCK_CLOEXEC, 0));
  if (socket.get() < 0) return fail(blobs::system_error("ask", hub_folder, errno));
  const sockaddr_un at = control_address(folder.get());
  if (connect(socket.get(), reinterpret_cast<const sockaddr*>(&at), sizeof at) != 0) {
    if (errno == ENOENT || errno == ECONNREFUSED) return std::optional<std::string>();
    return fail(blobs::system_error("ask", hub_folder / control_name, errno));
  }
  if (!send_all(socket.get(), line + "\n"))
    return fail(Code::Stopped, "ask", (hub_folder / control_name).string());
  auto answer = read_line(socket.get(), most_answer_bytes);
  if (!answer) return fail(Code::Stopped, "ask", (hub_folder / control_name).string());
  return answer;
}

}  // namespace jambline::hub
