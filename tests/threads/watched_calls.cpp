#include "tests/threads/watched_calls.h"

#include <atomic>
#include <cstdarg>
#include <cstdio>
#include <cstring>
#include <dirent.h>
#include <dlfcn.h>
#include <fcntl.h>
#include <mutex>
#include <pthread.h>
#include <sqlite3.h>
#include <sys/socket.h>
#include <sys/stat.h>
#include <sys/uio.h>
#include <unistd.h>

namespace jambline {

namespace {
std::atomic<bool> watching{false};
pthread_t watched;
std::mutex mutex;  // guards the two below
std::string below;
std::vector<std::string> calls;
std::atomic<int> sockets{0};
thread_local bool looking = false;  // what the watcher calls itself does not count

bool here() {
  return watching.load() && !looking && pthread_equal(pthread_self(), watched) != 0;
}
void note(const char* call, const std::string& what) {
  looking = true;
  {
    const std::lock_guard lock(mutex);
    calls.push_back(what.empty() ? call : std::string(call) + ' ' + what);
  }
  looking = false;
}
void sqlite_call(const char* call) {
  if (here()) note(call, {});
}
void named(const char* call, const char* path) {
  if (here() && path && std::strncmp(path, below.c_str(), below.size()) == 0) note(call, path);
}
void by_descriptor(const char* call, int file) {
  if (!here()) return;
  char link[64], path[4096];
  std::snprintf(link, sizeof link, "/proc/self/fd/%d", file);
  const ssize_t length = ::readlink(link, path, sizeof path - 1);
  if (length <= 0) return;
  path[length] = '\0';
  named(call, path);
}

// The same call of the library that comes next.
template <class Function>
Function* next(const char* name) {
  return reinterpret_cast<Function*>(dlsym(RTLD_NEXT, name));
}
}  // namespace

void watch_this_thread(const std::filesystem::path& folder) {
  {
    const std::lock_guard lock(mutex);
    calls.clear();
    below = folder.string();
  }
  watched = pthread_self();
  watching = true;
}
void stop_watching() {
  watching = false;
}
std::vector<std::string> seen_calls() {
  const std::lock_guard lock(mutex);
  return calls;
}
int internet_sockets() {
  return sockets;
}

}  // namespace jambline

using namespace jambline;

// NAME(parameters) hands `arguments` on after `look`.
#define WATCHED(result, name, parameters, arguments, look)    \
  extern "C" result name parameters {                         \
    static auto* const real = next<result parameters>(#name); \
    look;                                                     \
    return real arguments;                                    \
  }

WATCHED(int, sqlite3_open_v2, (const char* a, sqlite3** b, int c, const char* d), (a, b, c, d),
        sqlite_call("sqlite3_open_v2"))
WATCHED(int, sqlite3_close_v2, (sqlite3 * a), (a), sqlite_call("sqlite3_close_v2"))
WATCHED(int, sqlite3_exec,
        (sqlite3 * a, const char* b, int (*c)(void*, int, char**, char**), void* d, char** e),
        (a, b, c, d, e), sqlite_call("sqlite3_exec"))
WATCHED(int, sqlite3_prepare_v3,
        (sqlite3 * a, const char* b, int c, unsigned d, sqlite3_stmt** e, const char** f),
        (a, b, c, d, e, f), sqlite_call("sqlite3_prepare_v3"))
WATCHED(int, sqlite3_step, (sqlite3_stmt * a), (a), sqlite_call("sqlite3_step"))
WATCHED(int, sqlite3_reset, (sqlite3_stmt * a), (a), sqlite_call("sqlite3_reset"))
WATCHED(int, sqlite3_finalize, (sqlite3_stmt * a), (a), sqlite_call("sqlite3_finalize"))

WATCHED(FILE*, fopen, (const char* a, const char* b), (a, b), named("fopen", a))
WATCHED(FILE*, fopen64, (const char* a, const char* b), (a, b), named("fopen", a))
WATCHED(DIR*, opendir, (const char* a), (a), named("opendir", a))
WATCHED(int, stat, (const char* a, struct stat* b), (a, b), named("stat", a))
WATCHED(int, stat64, (const char* a, struct stat64* b), (a, b), named("stat", a))
WATCHED(int, lstat, (const char* a, struct stat* b), (a, b), named("lstat", a))
WATCHED(int, lstat64, (const char* a, struct stat64* b), (a, b), named("lstat", a))
WATCHED(int, statx, (int a, const char* b, int c, unsigned d, struct statx* e), (a, b, c, d, e),
        named("statx", b))
WATCHED(int, access, (const char* a, int b), (a, b), named("access", a))
WATCHED(int, unlink, (const char* a), (a), named("unlink", a))
WATCHED(int, mkdir, (const char* a, mode_t b), (a, b), named("mkdir", a))
WATCHED(int, rename, (const char* a, const char* b), (a, b),
        (named("rename", a), named("rename", b)))
WATCHED(ssize_t, read, (int a, void* b, size_t c), (a, b, c), by_descriptor("read", a))
WATCHED(ssize_t, write, (int a, const void* b, size_t c), (a, b, c), by_descriptor("write", a))
WATCHED(ssize_t, writev, (int a, const iovec* b, int c), (a, b, c), by_descriptor("writev", a))
WATCHED(ssize_t, pread, (int a, void* b, size_t c, off_t d), (a, b, c, d),
        by_descriptor("pread", a))
WATCHED(ssize_t, pread64, (int a, void* b, size_t c, off64_t d), (a, b, c, d),
        by_descriptor("pread", a))
WATCHED(ssize_t, pwrite, (int a, const void* b, size_t c, off_t d), (a, b, c, d),
        by_descriptor("pwrite", a))
WATCHED(ssize_t, pwrite64, (int a, const void* b, size_t c, off64_t d), (a, b, c, d),
        by_descriptor("pwrite", a))
WATCHED(int, fsync, (int a), (a), by_descriptor("fsync", a))
WATCHED(int, fdatasync, (int a), (a), by_descriptor("fdatasync", a))
WATCHED(int, ftruncate, (int a, off_t b), (a, b), by_descriptor("ftruncate", a))
WATCHED(int, ftruncate64, (int a, off64_t b), (a, b), by_descriptor("ftruncate", a))

WATCHED(int, socket, (int a, int b, int c), (a, b, c),
        sockets += a == AF_INET || a == AF_INET6 ? 1 : 0)

// A mode comes only with O_CREAT and O_TMPFILE.
#define WATCHED_OPEN(name, before, at, path)                                  \
  extern "C" int name(before const char* path, int flags, ...) {              \
    static auto* const real = next<int(before const char*, int, ...)>(#name); \
    named("open", path);                                                      \
    mode_t mode = 0;                                                          \
    if ((flags & (O_CREAT | O_TMPFILE)) != 0) {                               \
      va_list rest;                                                           \
      va_start(rest, flags);                                                  \
      mode = va_arg(rest, mode_t);                                            \
      va_end(rest);                                                           \
    }                                                                         \
    return real(at path, flags, mode);                                        \
  }
#define NOTHING
#define IN_FOLDER int folder,
#define FOLDER folder,
WATCHED_OPEN(open, NOTHING, NOTHING, path)
WATCHED_OPEN(open64, NOTHING, NOTHING, path)
WATCHED_OPEN(openat, IN_FOLDER, FOLDER, path)
WATCHED_OPEN(openat64, IN_FOLDER, FOLDER, path)
