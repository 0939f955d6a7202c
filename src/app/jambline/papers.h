// app/jambline/papers.h: what the screens of reports and bundles ask for, made of the folder.
#pragma once

#include <filesystem>

#include "screens/papers.h"

namespace jambline::app {

// Errors and durability: app/papers/job_report_file.h. The machine's own folder for documents is
// made where it is missing.
screens::WriteReport report_writer(const std::filesystem::path& folder);
screens::WriteBundle bundle_writer(const std::filesystem::path& folder);
screens::PrintSaid print_paper(const std::filesystem::path& file);
// Of the shop in that folder; "" where it cannot be read.
std::function<QString()> fingerprint_reader(const std::filesystem::path& folder);

}  // namespace jambline::app
