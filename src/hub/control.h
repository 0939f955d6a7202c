// hub/control.h: how the command line reaches a hub that serves: one line asked, one line answered,
// over the Unix socket `control` in the hub's folder.
//
// Shape:   a line of JSON and its end, each way; then the connection closes. The socket is 0600 and
//          takes the hub's own user and root only.
// Limits:  64 KiB a question, eight at a time; who asks nothing for ten seconds is cut.
// Errors:  FileFailed (args: cause), those of blobs/file_layer.h; of ask_control() Stopped when the
//          hub ended before it answered.
// Threads: `answer` is called on threads of its own, several at once.
#pragma once

#include <atomic>
#include <filesystem>
#include <functional>
#include <memory>
#include <mutex>
#include <optional>
#include <stop_token>
#include <string>
#include <thread>
#include <vector>

#include "base/error.h"

namespace jambline::hub {

class Control {
 public:
  // The token asks to come to an end: the hub is being stopped.
  using Answer = std::function<std::string(const std::string& line, const std::stop_token& stop)>;
  static Result<std::unique_ptr<Control>> open(const std::filesystem::path& hub_folder,
                                               Answer answer);
  ~Control();  // waits for what is being answered
  Control(const Control&) = delete;
  Control& operator=(const Control&) = delete;

 private:
  struct Talk {
    std::jthread thread;
    std::shared_ptr<std::atomic<bool>> done;
  };
  Control(int folder, int socket, Answer answer);
  void listen(const std::stop_token& stop);
  void talk(int connection, const std::stop_token& stop) const;

  int folder_;
  int socket_;
  Answer answer_;
  std::vector<Talk> talks_;  // the listening thread's own
  std::jthread thread_;
};

// Nothing when nobody listens there.
Result<std::optional<std::string>> ask_control(const std::filesystem::path& hub_folder,
                                               const std::string& line);

}  // namespace jambline::hub
