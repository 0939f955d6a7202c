// app/hub/print_invitation.h: an invitation as a square code and as text. Exit code as commands.h.
#pragma once

#include <string>

namespace jambline::app {

int print_invitation(const std::string& text, int minutes, bool text_only);

}  // namespace jambline::app
