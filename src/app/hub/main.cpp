#include <CLI/CLI.hpp>

#include "app/hub/commands.h"

namespace {
using namespace jambline::app;

constexpr const char* folder_words = "the hub's folder; this one by default";
constexpr const char* shop_words = "which shop (its fingerprint), when the hub has several";
constexpr const char* footer_words = R"(A shop that begins at the hub:
  jambline-hub init --folder HUB --name "Shop hub"
  jambline-hub found --folder HUB
  jambline-hub serve --folder HUB
  jambline-hub invite --folder HUB        read the square code with the first device
  jambline-hub pending --folder HUB       the six digits: the same as on the device?
  jambline-hub admit 042 917 --manager --folder HUB

A shop that is on a device already:
  jambline-hub init, jambline-hub serve, then
  jambline-hub join --folder HUB          read the square code with a manager's device
  jambline-hub pending --folder HUB       compare; the manager confirms on the device

All commands but serve, init and restore work while the hub serves.
Exit: 0 all in order, 1 something is wrong with what was looked at, 2 it could not be done.)";
}  // namespace

int main(int argc, char** argv) {
  CLI::App program(
      "Keeps the shared history of one or more shops, and passes it on to their "
      "devices.",
      "jambline-hub");
  program.set_version_flag("--version", "jambline-hub " JAMBLINE_VERSION);
  program.require_subcommand(1);
  program.footer(footer_words);
  int exit_code = 0;

  InitAsked init;
  CLI::App* one = program.add_subcommand("init", "make a hub: a folder with its own key");
  one->add_option("--folder", init.folder, folder_words);
  one->add_option("--name", init.name, "what people call the hub")->required();
  one->callback([&] { exit_code = hub_init(init); });

  FoundAsked found;
  one = program.add_subcommand("found", "begin a shop at this hub, which may then admit devices");
  one->add_option("--folder", found.folder, folder_words);
  one->callback([&] { exit_code = hub_found(found); });

  InviteAsked join;
  one = program.add_subcommand("join", "invite a shop that is on a device already");
  one->add_option("--folder", join.folder, folder_words);
  one->add_option("--minutes", join.minutes, "how long the code holds")->check(CLI::Range(1, 1440));
  one->add_flag("--text", join.text_only, "the line alone, without the square code");
  one->callback([&] { exit_code = hub_join(join); });

  ServeAsked serve;
  one = program.add_subcommand("serve", "serve devices until SIGTERM; events as JSON on stderr");
  one->add_option("--folder", serve.folder, folder_words);
  one->add_option("--host", serve.host, "address to listen at")->capture_default_str();
  one->add_option("--port", serve.port, "port to listen at; 0: the system chooses")
      ->capture_default_str()
      ->check(CLI::Range(0, 65535));
  one->add_option("--address", serve.addresses,
                  "HOST[:PORT] that invitations say, up to 4, kept for later; else this machine's");
  one->callback([&] { exit_code = hub_serve(serve); });

  InviteAsked invite;
  one = program.add_subcommand("invite", "invite a device to a shop of this hub");
  one->add_option("--folder", invite.folder, folder_words);
  one->add_option("--shop", invite.shop, shop_words);
  one->add_option("--minutes", invite.minutes, "how long the code holds")
      ->check(CLI::Range(1, 1440));
  one->add_flag("--text", invite.text_only, "the line alone, without the square code");
  one->callback([&] { exit_code = hub_invite(invite); });

  PendingAsked pending;
  one = program.add_subcommand("pending", "who waits, with the six digits to compare");
  one->add_option("--folder", pending.folder, folder_words);
  one->add_option("--shop", pending.shop, shop_words);
  one->add_flag("--json", pending.json, "as JSON");
  one->callback([&] { exit_code = hub_pending(pending); });

  DigitsAsked admit;
  one = program.add_subcommand("admit", "let in the device that shows these six digits");
  one->add_option("digits", admit.digits, "as the device shows them")->required()->expected(1, 2);
  one->add_option("--folder", admit.folder, folder_words);
  one->add_option("--shop", admit.shop, shop_words);
  one->add_flag("--manager", admit.manager, "as a manager's device: it may admit and revoke");
  one->callback([&] { exit_code = hub_admit(admit); });

  DigitsAsked refuse;
  one = program.add_subcommand("refuse", "turn away the device that shows these six digits");
  one->add_option("digits", refuse.digits, "as the device shows them")->required()->expected(1, 2);
  one->add_option("--folder", refuse.folder, folder_words);
  one->add_option("--shop", refuse.shop, shop_words);
  one->callback([&] { exit_code = hub_refuse(refuse); });

  RevokeAsked revoke;
  one = program.add_subcommand("revoke", "shut a lost device out for good");
  one->add_option("device", revoke.device, "its id, or the beginning of it")->required();
  one->add_option("--folder", revoke.folder, folder_words);
  one->add_option("--shop", revoke.shop, shop_words);
  one->callback([&] { exit_code = hub_revoke(revoke); });

  BackupAsked backup;
  one = program.add_subcommand("backup", "copy everything into a folder, also while serving");
  one->add_option("to", backup.to, "a new folder, or that of the backup before")->required();
  one->add_option("--folder", backup.folder, folder_words);
  one->callback([&] { exit_code = hub_backup(backup); });

  RestoreAsked restore;
  one = program.add_subcommand("restore", "make a hub from a backup");
  one->add_option("from", restore.from, "a folder that backup made")->required();
  one->add_option("--to", restore.to, "a new or empty folder")->required();
  one->callback([&] { exit_code = hub_restore(restore); });

  LookAsked scrub;
  one = program.add_subcommand("scrub", "read every file again; damaged ones are asked for anew");
  one->add_option("--folder", scrub.folder, folder_words);
  one->add_option("--shop", scrub.shop, shop_words);
  one->add_flag("--json", scrub.json, "as JSON");
  one->callback([&] { exit_code = hub_scrub(scrub); });

  LookAsked verify;
  one = program.add_subcommand("verify", "check every entry's chain and signature again");
  one->add_option("--folder", verify.folder, folder_words);
  one->add_option("--shop", verify.shop, shop_words);
  one->add_flag("--json", verify.json, "as JSON");
  one->callback([&] { exit_code = hub_verify(verify); });

  LookAsked status;
  one = program.add_subcommand("status", "how the hub and its shops are");
  one->add_option("--folder", status.folder, folder_words);
  one->add_flag("--json", status.json, "as JSON");
  one->callback([&] { exit_code = hub_status(status); });

  try {
    program.parse(argc, argv);
  } catch (const CLI::ParseError& refused) {
    const int code = program.exit(refused);
    return code == 0 ? 0 : 2;
  }
  return exit_code;
}
