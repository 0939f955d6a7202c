// The hub's systemd unit: every hardening that it has to have, and what systemd says of it.
// Held against systemd.exec(5) and systemd.resource-control(5).
#include <array>
#include <cstdio>
#include <fstream>
#include <gtest/gtest.h>
#include <map>
#include <string>
#include <sys/wait.h>
#include <vector>

namespace jambline::test {
namespace {

constexpr const char* unit_file = JAMBLINE_SOURCE_DIR "/platform/linux/jambline-hub.service";

std::map<std::string, std::vector<std::string>> read_unit() {
  std::map<std::string, std::vector<std::string>> out;
  std::ifstream in(unit_file);
  for (std::string line; std::getline(in, line);) {
    const auto equals = line.find('=');
    if (line.empty() || line.front() == '#' || equals == std::string::npos) continue;
    out[line.substr(0, equals)].push_back(line.substr(equals + 1));
  }
  return out;
}

std::string output_of(const std::string& command) {
  std::string out;
  FILE* pipe = popen(command.c_str(), "r");
  std::array<char, 4096> buffer{};
  while (const std::size_t count = fread(buffer.data(), 1, buffer.size(), pipe))
    out.append(buffer.data(), count);
  out += "\nexit " + std::to_string(WEXITSTATUS(pclose(pipe)));
  return out;
}

TEST(HubService, HasEveryHardening) {
  auto unit = read_unit();
  const std::vector<std::pair<std::string, std::string>> wanted{
      {"DynamicUser", "yes"},
      {"StateDirectory", "jambline-hub jambline-hub-backup"},
      {"StateDirectoryMode", "0700"},
      {"UMask", "0077"},
      {"ProtectSystem", "strict"},
      {"ProtectHome", "yes"},
      {"PrivateTmp", "yes"},
      {"PrivateDevices", "yes"},
      {"NoNewPrivileges", "yes"},
      {"CapabilityBoundingSet", ""},
      {"AmbientCapabilities", ""},
      {"RestrictNamespaces", "yes"},
      {"RestrictSUIDSGID", "yes"},
      {"RestrictRealtime", "yes"},
      {"LockPersonality", "yes"},
      {"MemoryDenyWriteExecute", "yes"},
      {"ProtectKernelTunables", "yes"},
      {"ProtectKernelModules", "yes"},
      {"ProtectKernelLogs", "yes"},
      {"ProtectControlGroups", "yes"},
      {"ProtectClock", "yes"},
      {"ProtectHostname", "yes"},
      {"SystemCallArchitectures", "native"},
      {"RestrictAddressFamilies", "AF_INET AF_INET6 AF_UNIX AF_NETLINK"},
  };
  for (const auto& [key, value] : wanted) {
    ASSERT_EQ(unit[key].size(), 1U) << key;
    EXPECT_EQ(unit[key].front(), value) << key;
  }
  EXPECT_EQ(unit["SystemCallFilter"],
            (std::vector<std::string>{"@system-service", "~@privileged @resources"}));
  for (const char* bound : {"MemoryMax", "MemoryHigh", "TasksMax", "LimitNOFILE"})
    EXPECT_EQ(unit[bound].size(), 1U) << bound;
  EXPECT_EQ(unit["KillSignal"], std::vector<std::string>{"SIGTERM"});
  EXPECT_TRUE(unit["User"].empty()) << "a user of its own, that exists while it runs";
}

// Debian's systemd is there on every machine that can run the unit; elsewhere the keys above hold.
TEST(HubService, SystemdCallsItWellProtected) {
  if (WEXITSTATUS(std::system("command -v systemd-analyze >/dev/null")) != 0) return;
  const std::string said =
      output_of("systemd-analyze security --offline=true " + std::string(unit_file) + " 2>&1");
  EXPECT_NE(said.find("Overall exposure level"), std::string::npos) << said;
  const auto at = said.rfind("service: ");
  ASSERT_NE(at, std::string::npos) << said;
  EXPECT_LT(std::stod(said.substr(at + 9)), 2.0) << said;
}

}  // namespace
}  // namespace jambline::test
