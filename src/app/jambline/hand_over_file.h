// app/jambline/hand_over_file.h: the hand-over note of screens/ as a PDF of report/.
#pragma once

#include <filesystem>

#include "screens/hand_over_words.h"

namespace jambline::app {

// Errors and durability: report/note.h. The machine's own folder for documents is made where it is
// missing.
Status write_hand_over(const screens::HandOverNote& note, const std::filesystem::path& file);

}  // namespace jambline::app
