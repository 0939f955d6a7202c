// jambline-hub as people use it: the program as a process of its own, over TLS on loopback. Held
// against its own --help and README.
#include <ZXing/DecodeHints.h>
#include <ZXing/ReadBarcode.h>
#include <array>
#include <csignal>
#include <cstdio>
#include <fcntl.h>
#include <fstream>
#include <sys/prctl.h>
#include <sys/wait.h>
#include <thread>
#include <unistd.h>

#include "hub/backup.h"
#include "hub/hub_status.h"
#include "net/client.h"
#include "sync/target.h"
#include "tests/hub/hub_folder.h"
#include "tests/hub/sealed_run.h"
#include "tests/whole_file.h"

namespace jambline::test {
namespace {

namespace fs = std::filesystem;

struct Ended {
  int code = -1;
  std::string out;
};

Ended run_hub(const std::string& arguments, const char* errors = " 2>&1") {
  Ended out;
  FILE* pipe = popen((JAMBLINE_HUB " " + arguments + errors).c_str(), "r");
  std::array<char, 4096> buffer{};
  while (const std::size_t count = fread(buffer.data(), 1, buffer.size(), pipe))
    out.out.append(buffer.data(), count);
  out.code = WEXITSTATUS(pclose(pipe));
  return out;
}

// `jambline-hub serve` on a port that the kernel chooses.
class Serving {
 public:
  explicit Serving(const fs::path& folder, const std::string& address = {}) : folder_(folder) {
    log_ = folder.string() + ".log";
    fs::remove(log_);  // nobody reads what another one said
    child_ = fork();
    if (child_ == 0) {
      prctl(PR_SET_PDEATHSIG, SIGKILL);
      const int log = ::open(log_.c_str(), O_WRONLY | O_CREAT | O_APPEND, 0600);
      dup2(log, STDERR_FILENO);
      const std::string in = folder.string();
      if (address.empty())
        execl(JAMBLINE_HUB, JAMBLINE_HUB, "serve", "--folder", in.c_str(), "--host", "127.0.0.1",
              "--port", "0", nullptr);
      else
        execl(JAMBLINE_HUB, JAMBLINE_HUB, "serve", "--folder", in.c_str(), "--host", "127.0.0.1",
              "--port", "0", "--address", address.c_str(), nullptr);
      _exit(127);
    }
    for (int i = 0; i < 1500 && port_ == 0; ++i) {
      usleep(20'000);
      std::ifstream in(log_);
      for (std::string line; std::getline(in, line);)
        if (const auto event = from_json<sync::HubEvent>(line); event && event->event == "serving")
          port_ = static_cast<std::uint16_t>(event->status);
    }
    EXPECT_NE(port_, 0) << log();
  }
  ~Serving() {
    if (child_ > 0) end(SIGKILL);
  }
  Ended end(int signal) {
    kill(child_, signal);
    int state = 0;
    waitpid(child_, &state, 0);
    child_ = -1;
    return {WIFEXITED(state) ? WEXITSTATUS(state) : 128 + WTERMSIG(state), log()};
  }
  std::uint16_t port() const { return port_; }
  std::string log() const { return whole_file(log_); }

 private:
  fs::path folder_;
  std::string log_;
  pid_t child_ = -1;
  std::uint16_t port_ = 0;
};

class HubProgram : public ::testing::Test {
 protected:
  HubProgram() { EXPECT_EQ(hub("init", "--name 'Shop hub'").code, 0); }
  std::string at() const { return " --folder '" + path().string() + "' "; }
  fs::path path() const { return folder.path() / "hub"; }
  Ended hub(const std::string& command, const std::string& arguments = {},
            const char* errors = " 2>&1") const {
    return run_hub(command + at() + arguments, errors);
  }
  hub::HubStatus status() const {
    return get(from_json<hub::HubStatus>(hub("status", "--json", " 2>/dev/null").out));
  }
  sync::Response send(const sync::Invitation& invitation, const sync::Request& request) const {
    net::Client client(net::device_context(invitation.hub), invitation.at);
    return get(client.send(request));
  }
  sync::Response enrol(const sync::Invitation& invitation, const seal::SigningKey& key) const {
    sync::EnrolAsk ask{invitation.code, key.key(), "tablet", false, {}};
    ask.proof = key.sign(sync::enrol_words(invitation.shop, invitation.hub, ask));
    sync::Target target;
    target.path = sync::Path::Enrol;
    target.shop = invitation.shop;
    return send(invitation, {sync::Method::Post, sync::target_of(target), {}, to_json(ask)});
  }

  HubTempFolder folder;
};

TEST_F(HubProgram, FromAnEmptyFolderToAnAdmittedDeviceAndACleanEnd) {
  ASSERT_EQ(hub("found").code, 0);
  EXPECT_FALSE(status().serving);
  Serving serving(path(), "127.0.0.1");
  EXPECT_TRUE(status().serving);

  const auto printed = hub("invite", "--text", " 2>/dev/null");
  ASSERT_EQ(printed.code, 0) << printed.out;
  const auto invitation = get(sync::decode_invitation(printed.out));
  ASSERT_EQ(invitation.at.size(), 1U);
  EXPECT_EQ(invitation.at[0].host, "127.0.0.1");
  EXPECT_EQ(invitation.at[0].port, serving.port()) << "an address without a port has the hub's";
  const auto tablet = hub_test_key(2);
  const auto asked = enrol(invitation, tablet);
  ASSERT_EQ(asked.status, 200) << asked.body;
  const std::string digits = sync::six_digits(invitation.shop, tablet.key(), invitation.hub,
                                              get(from_json<sync::EnrolAnswer>(asked.body)).nonce);
  EXPECT_NE(hub("pending").out.find(digits), std::string::npos);
  EXPECT_EQ(status().shops.at(0).waiting, 1U);
  const auto admitted = hub("admit", digits + " --manager");
  EXPECT_EQ(admitted.code, 0) << admitted.out;
  EXPECT_NE(admitted.out.find("tablet is admitted as a manager's device"), std::string::npos);
  const auto now = status();
  EXPECT_EQ(now.shops.at(0).waiting, 0U);
  EXPECT_EQ(now.shops.at(0).devices.size(), 2U);
  EXPECT_EQ(now.shops.at(0).entries, 3U);
  const auto verified = hub("verify");
  EXPECT_EQ(verified.code, 0);
  EXPECT_NE(verified.out.find("good"), std::string::npos) << verified.out;
  EXPECT_EQ(hub("scrub").code, 0);

  const auto revoked = hub("revoke", tablet.device().hex().substr(0, 10));
  EXPECT_EQ(revoked.code, 0) << revoked.out;
  EXPECT_EQ(status().shops.at(0).revoked, 1U);

  const Ended ended = serving.end(SIGTERM);
  EXPECT_EQ(ended.code, 0) << ended.out;
  EXPECT_NE(ended.out.find("\"event\":\"stopping\""), std::string::npos);
  EXPECT_FALSE(fs::exists(path() / "control"));
  EXPECT_FALSE(fs::exists(path() / "shops" / invitation.shop.hex() / "shop.db-wal"))
      << "the databases were closed";
  std::istringstream lines(ended.out);
  for (std::string line; std::getline(lines, line);) {
    EXPECT_TRUE(from_json<sync::HubEvent>(line)) << "no line of JSON: " << line;
    EXPECT_EQ(line.find(invitation.code.hex()), std::string::npos) << "a code in the log";
    EXPECT_EQ(line.find("tablet"), std::string::npos) << "a name in the log";
  }
}

// What a camera makes of a printed square: light modules are the blocks, two a sign.
std::string scanned(const std::string& printed) {
  constexpr int pixels = 4;  // a module's side
  std::vector<std::vector<bool>> light;
  std::istringstream lines(printed);
  for (std::string line; std::getline(lines, line) && !line.empty();) {
    std::vector<bool> upper;
    std::vector<bool> lower;
    for (std::size_t at = 0; at < line.size();) {
      const std::string sign = line[at] == ' ' ? " " : line.substr(at, 3);
      at += sign.size();
      upper.push_back(sign == "█" || sign == "▀");
      lower.push_back(sign == "█" || sign == "▄");
    }
    light.push_back(upper);
    light.push_back(lower);
  }
  if (light.empty()) return "nothing printed";
  const int height = static_cast<int>(light.size()) * pixels;
  const int width = static_cast<int>(light[0].size()) * pixels;
  std::vector<std::uint8_t> gray(static_cast<std::size_t>(width) *
                                 static_cast<std::size_t>(height));
  for (int y = 0; y < height; ++y)
    for (int x = 0; x < width; ++x)
      gray[static_cast<std::size_t>(y * width + x)] =
          light[static_cast<std::size_t>(y / pixels)][static_cast<std::size_t>(x / pixels)] ? 255
                                                                                            : 0;
  const auto found =
      ZXing::ReadBarcode(ZXing::ImageView(gray.data(), width, height, ZXing::ImageFormat::Lum),
                         ZXing::DecodeHints().setFormats(ZXing::BarcodeFormat::QRCode));
  if (!found.isValid()) return "not read";
  const std::wstring text = found.text();
  return {text.begin(), text.end()};  // ASCII
}

TEST_F(HubProgram, TheSquareCodeIsTheInvitation) {
  ASSERT_EQ(hub("found").code, 0);
  const auto printed = hub("invite", {}, " 2>/dev/null");
  const auto at = printed.out.find("jambline:1?hub=");
  ASSERT_NE(at, std::string::npos) << printed.out;
  const std::string text = printed.out.substr(at, printed.out.find('\n', at) - at);
  EXPECT_EQ(scanned(printed.out), text);
  EXPECT_EQ(printed.out.find('\x1b'), std::string::npos) << "no colours into a file";
  const auto join = hub("join", "--text", " 2>/dev/null");
  EXPECT_EQ(get(sync::decode_invitation(join.out)).shop, ShopId{});
}

TEST_F(HubProgram, ASecondOneOnTheFolderRefusesToStart) {
  const Serving serving(path());
  const auto second = hub("serve", "--port 0");
  EXPECT_EQ(second.code, 2);
  EXPECT_NE(second.out.find("another copy of the program works in this folder"), std::string::npos)
      << second.out;
  EXPECT_TRUE(status().serving) << "the first goes on";
}

TEST_F(HubProgram, KilledInTheMiddleItStartsAgain) {
  ASSERT_EQ(hub("found").code, 0);
  {
    Serving serving(path());
    serving.end(SIGKILL);
  }
  EXPECT_TRUE(fs::exists(path() / "control")) << "nobody tidied up";
  EXPECT_FALSE(status().serving) << "an old socket answers nobody";
  Serving again(path());
  EXPECT_TRUE(status().serving);
  EXPECT_EQ(again.end(SIGINT).code, 0);
}

TEST_F(HubProgram, AskedWhileItStartsItIsWaitedFor) {
  ASSERT_EQ(hub("found").code, 0);
  std::jthread asking;
  {
    const auto lock = get(log::FolderLock::take(path()));  // as a hub that does not listen yet
    asking = std::jthread([this] { EXPECT_EQ(hub("status").code, 0); });
    usleep(700'000);
  }
}

TEST_F(HubProgram, BackupWhileServingAndRestore) {
  ASSERT_EQ(hub("found").code, 0);
  const std::string to = (folder.path() / "backup").string();
  const std::string again = (folder.path() / "again").string();
  {
    Serving serving(path());
    const auto made = hub("backup", "'" + to + "'");
    EXPECT_EQ(made.code, 0) << made.out;
    EXPECT_NE(made.out.find("2 entries"), std::string::npos) << made.out;
    EXPECT_EQ(serving.end(SIGTERM).code, 0);
  }
  const auto restored = run_hub("restore '" + to + "' --to '" + again + "'");
  EXPECT_EQ(restored.code, 0) << restored.out;
  const auto verified = run_hub("verify --folder '" + again + "'");
  EXPECT_EQ(verified.code, 0) << verified.out;
  const auto naive = run_hub("restore '" + path().string() + "' --to '" + again + "2'");
  EXPECT_EQ(naive.code, 2);
  EXPECT_NE(naive.out.find("a copied hub folder"), std::string::npos) << naive.out;
}

TEST_F(HubProgram, WhatIsWrongIsSaidInWords) {
  EXPECT_EQ(run_hub("status --folder /nowhere/at/all").code, 2);
  EXPECT_NE(run_hub("status --folder /nowhere/at/all").out.find("there is no such file"),
            std::string::npos);
  EXPECT_EQ(hub("init", "--name again").code, 2);
  EXPECT_EQ(hub("admit", "123456").code, 2);
  EXPECT_EQ(hub("invite", "--shop nonsense").code, 2);
  EXPECT_EQ(hub("invite").code, 2) << "there is no shop yet";
  EXPECT_EQ(run_hub("").code, 2);
  EXPECT_EQ(run_hub("--help").code, 0);
  EXPECT_NE(run_hub("--help").out.find("jambline-hub admit 042 917"), std::string::npos);
}

TEST_F(HubProgram, AForgottenShopKeepsTheExitCodeOfStatus) {
  ASSERT_EQ(hub("found").code, 0);
  EXPECT_EQ(hub("status").code, 0);
  for (const auto& shop : fs::directory_iterator(path() / "shops"))
    fs::remove(shop.path() / "epoch");
  const auto shut = hub("status");
  EXPECT_EQ(shut.code, 1);
  EXPECT_NE(shut.out.find("not served"), std::string::npos) << shut.out;
}

}  // namespace
}  // namespace jambline::test
