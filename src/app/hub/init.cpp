#include <iostream>

#include "app/command_line_words.h"
#include "app/hub/commands.h"
#include "app/hub/local_hub.h"

namespace jambline::app {

int hub_init(const InitAsked& asked) {
  SystemRandom random;
  const Status made = hub::Hub::make(asked.folder, asked.name, random);
  if (!made) {
    std::cerr << said(made.error());
    return 2;
  }
  const auto local = open_local_hub(asked.folder);
  if (!local) {
    std::cerr << said(local.error());
    return 2;
  }
  std::cout << "hub    " << asked.name << "\nkey    " << (*local)->hub->key().key().hex()
            << "\nnext:  jambline-hub found, for a shop that begins here,\n"
               "       or jambline-hub join, for a shop that is on a device already;\n"
               "       jambline-hub serve, for devices to reach it\n";
  return 0;
}

}  // namespace jambline::app
