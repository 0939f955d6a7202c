#include "acts/commands.h"

namespace jambline::acts {

Command::Command() = default;
Command::Command(const Command&) = default;
Command::Command(Command&&) noexcept = default;
Command& Command::operator=(const Command&) = default;
Command& Command::operator=(Command&&) noexcept = default;
Command::~Command() = default;

}  // namespace jambline::acts
