// tests/threads/watched_calls.h: which calls the thread of the screens makes that it must not.
//
// How:     watched_calls.cpp defines SQLite's calls and libc's calls on files and sockets, and
// hands
//          each on to the next library's. The program exports them, so SQLite, Qt and the
//          standard library come through them too.
// What:    while watching, on the watched thread: every sqlite3_ call that can reach a file, and
//          every call on a file below `folder`, by name or by descriptor. Fonts, QML and what else
//          Qt reads from the system lie elsewhere and are not meant. On every thread, from the
//          start of the process: sockets of the internet families.
// Threads: any.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

namespace jambline {

void watch_this_thread(const std::filesystem::path& folder);
void stop_watching();
std::vector<std::string> seen_calls();  // "open /tmp/x/log.db", "sqlite3_step"
int internet_sockets();                 // so far

}  // namespace jambline
