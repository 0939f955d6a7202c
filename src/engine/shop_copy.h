// engine/shop_copy.h: a whole shop out to a folder and back, with the files of its pictures.
//
// Shape:   log/shop_folder.h does the entries, then come the pictures in the folder blobs.
// `progress`
//          goes once from 0 to 1; while pictures are copied on a thread of their own it is called
//          every few milliseconds and may let other work through.
// Errors:  those of log/shop_folder.h and blobs/blob_store.h; what was copied stays.
#pragma once

#include "engine/pictures.h"

namespace jambline::engine {

Result<log::Exported> export_shop(log::EntryLog& log, const Pictures& pictures,
                                  const std::filesystem::path& folder, const std::stop_token& stop,
                                  const log::Progress& progress);
Result<log::Imported> import_shop(log::EntryLog& log, Pictures& pictures,
                                  const std::filesystem::path& folder, const std::stop_token& stop,
                                  const log::Progress& progress);

}  // namespace jambline::engine
