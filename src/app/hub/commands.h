// app/hub/commands.h: the commands of jambline-hub, one file each.
//
// Shape:   main.cpp reads the command line into what was asked; the command prints its answer.
// While
//          a hub serves the folder it is asked to carry the command out; else it is done right
//          here.
// Result:  the program's exit code: 0 all in order, 1 something is wrong with what was looked at,
//          2 the command could not be carried out.
#pragma once

#include <string>
#include <vector>

namespace jambline::app {

struct InitAsked {
  std::string folder = ".";
  std::string name;
};
int hub_init(const InitAsked& asked);

struct FoundAsked {
  std::string folder = ".";
};
int hub_found(const FoundAsked& asked);

struct InviteAsked {
  std::string folder = ".";
  std::string shop;  // 32 hex signs, or empty: the only one
  int minutes = 10;
  bool text_only = false;
};
int hub_join(const InviteAsked& asked);
int hub_invite(const InviteAsked& asked);

struct ServeAsked {
  std::string folder = ".";
  std::string host = "0.0.0.0";
  int port = 8740;
  std::vector<std::string> addresses;  // what invitations say; none: the machine's own
};
int hub_serve(const ServeAsked& asked);

struct PendingAsked {
  std::string folder = ".";
  std::string shop;
  bool json = false;
};
int hub_pending(const PendingAsked& asked);

struct DigitsAsked {
  std::string folder = ".";
  std::string shop;
  std::vector<std::string> digits;  // "042 917" comes as two words
  bool manager = false;
};
int hub_admit(const DigitsAsked& asked);
int hub_refuse(const DigitsAsked& asked);

struct RevokeAsked {
  std::string folder = ".";
  std::string shop;
  std::string device;
};
int hub_revoke(const RevokeAsked& asked);

struct BackupAsked {
  std::string folder = ".";
  std::string to;
};
int hub_backup(const BackupAsked& asked);

struct RestoreAsked {
  std::string from;
  std::string to;
};
int hub_restore(const RestoreAsked& asked);

struct LookAsked {
  std::string folder = ".";
  std::string shop;
  bool json = false;
};
int hub_scrub(const LookAsked& asked);
int hub_verify(const LookAsked& asked);
int hub_status(const LookAsked& asked);

}  // namespace jambline::app
