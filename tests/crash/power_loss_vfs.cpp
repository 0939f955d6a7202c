#include "tests/crash/power_loss_vfs.h"

#include <algorithm>
#include <cstring>
#include <fstream>
#include <new>
#include <optional>
#include <sqlite3.h>

#include "tests/whole_file.h"

namespace jambline::log {

namespace {
namespace fs = std::filesystem;
using Event = PowerLossVfs::Event;
using What = Event::What;

constexpr int watched =
    SQLITE_OPEN_MAIN_DB | SQLITE_OPEN_WAL | SQLITE_OPEN_MAIN_JOURNAL | SQLITE_OPEN_SUPER_JOURNAL;

sqlite3_vfs* usual = nullptr;
sqlite3_vfs own{};
PowerLossVfs* owner = nullptr;

struct File {
  sqlite3_file base;
  std::string* name;  // none = not watched
  sqlite3_file* real() { return reinterpret_cast<sqlite3_file*>(this + 1); }
};
File* of(sqlite3_file* file) {
  return reinterpret_cast<File*>(file);
}

std::string name_of(const char* path) {
  return fs::path(path).filename().string();
}

int close_file(sqlite3_file* file) {
  File* self = of(file);
  const int result = self->real()->pMethods->xClose(self->real());
  delete self->name;
  return result;
}
int read_file(sqlite3_file* file, void* out, int count, sqlite3_int64 offset) {
  return of(file)->real()->pMethods->xRead(of(file)->real(), out, count, offset);
}
int write_file(sqlite3_file* file, const void* bytes, int count, sqlite3_int64 offset) {
  File* self = of(file);
  if (self->name) {
    if (owner->full && owner->full(owner->writes++)) return SQLITE_FULL;
    owner->events.push_back(
        {What::Write, *self->name, offset,
         std::string(static_cast<const char*>(bytes), static_cast<std::size_t>(count))});
  }
  return self->real()->pMethods->xWrite(self->real(), bytes, count, offset);
}
int truncate_file(sqlite3_file* file, sqlite3_int64 length) {
  File* self = of(file);
  if (self->name) owner->events.push_back({What::Truncate, *self->name, length, {}});
  return self->real()->pMethods->xTruncate(self->real(), length);
}
int sync_file(sqlite3_file* file, int flags) {
  File* self = of(file);
  if (self->name) owner->events.push_back({What::Sync, *self->name, 0, {}});
  return self->real()->pMethods->xSync(self->real(), flags);
}
int file_size(sqlite3_file* file, sqlite3_int64* out) {
  return of(file)->real()->pMethods->xFileSize(of(file)->real(), out);
}
int lock_file(sqlite3_file* file, int how) {
  return of(file)->real()->pMethods->xLock(of(file)->real(), how);
}
int unlock_file(sqlite3_file* file, int how) {
  return of(file)->real()->pMethods->xUnlock(of(file)->real(), how);
}
int check_lock(sqlite3_file* file, int* out) {
  return of(file)->real()->pMethods->xCheckReservedLock(of(file)->real(), out);
}
int control(sqlite3_file* file, int what, void* argument) {
  if (what == SQLITE_FCNTL_SIZE_HINT || what == SQLITE_FCNTL_CHUNK_SIZE) return SQLITE_NOTFOUND;
  return of(file)->real()->pMethods->xFileControl(of(file)->real(), what, argument);
}
int sector_size(sqlite3_file*) {
  return 512;
}
int characteristics(sqlite3_file*) {
  return 0;
}  // promises nothing, like the plainest disk
int shm_map(sqlite3_file* file, int page, int size, int extend, void volatile** out) {
  return of(file)->real()->pMethods->xShmMap(of(file)->real(), page, size, extend, out);
}
int shm_lock(sqlite3_file* file, int offset, int count, int flags) {
  return of(file)->real()->pMethods->xShmLock(of(file)->real(), offset, count, flags);
}
void shm_barrier(sqlite3_file* file) {
  of(file)->real()->pMethods->xShmBarrier(of(file)->real());
}
int shm_unmap(sqlite3_file* file, int remove) {
  return of(file)->real()->pMethods->xShmUnmap(of(file)->real(), remove);
}

const sqlite3_io_methods methods = {
    2,         close_file,  read_file,  write_file, truncate_file, sync_file,       file_size,
    lock_file, unlock_file, check_lock, control,    sector_size,   characteristics, shm_map,
    shm_lock,  shm_barrier, shm_unmap,  nullptr,    nullptr};

int open_file(sqlite3_vfs*, const char* path, sqlite3_file* file, int flags, int* out_flags) {
  File* self = new (file) File{};
  std::error_code refused;
  const bool watch = path && (flags & watched) != 0;
  const bool there = watch && fs::exists(path, refused);
  const int result = usual->xOpen(usual, path, self->real(), flags, out_flags);
  if (result != SQLITE_OK) {
    self->base.pMethods = nullptr;
    return result;
  }
  self->base.pMethods = &methods;
  if (!watch) return result;
  self->name = new std::string(name_of(path));
  owner->events.push_back(
      {What::Open, *self->name, 0, there ? test::whole_file(path) : std::string(), there});
  return result;
}

int delete_file(sqlite3_vfs*, const char* path, int sync_folder) {
  const int result = usual->xDelete(usual, path, sync_folder);
  if (result == SQLITE_OK)
    owner->events.push_back({What::Delete, name_of(path), 0, {}, sync_folder != 0});
  return result;
}

// A file as it is on the disk for certain, and what was done to it since.
struct Disk {
  std::optional<std::string> certain;
  std::vector<const Event*> open;

  static void apply(std::optional<std::string>& bytes, const Event& event, std::size_t most) {
    switch (event.what) {
      case What::Open:
        if (!bytes) bytes.emplace();
        break;
      case What::Write: {
        if (!bytes) bytes.emplace();
        const auto offset = static_cast<std::size_t>(event.offset);
        const std::size_t count = std::min(most, event.bytes.size());
        if (bytes->size() < offset + count) bytes->resize(offset + count);
        std::memcpy(bytes->data() + offset, event.bytes.data(), count);
        break;
      }
      case What::Truncate:
        if (bytes) bytes->resize(static_cast<std::size_t>(event.offset));
        break;
      case What::Delete:
        bytes.reset();
        break;
      case What::Sync:
      case What::Said:
        break;
    }
  }
};
}  // namespace

PowerLossVfs::PowerLossVfs() {
  usual = sqlite3_vfs_find(nullptr);
  own = *usual;
  own.zName = name;
  own.szOsFile = static_cast<int>(sizeof(File)) + usual->szOsFile;
  own.xOpen = open_file;
  own.xDelete = delete_file;
  own.pNext = nullptr;
  owner = this;
  sqlite3_vfs_register(&own, 0);
}
PowerLossVfs::~PowerLossVfs() {
  sqlite3_vfs_unregister(&own);
  owner = nullptr;
}

void PowerLossVfs::said(std::int64_t number) {
  events.push_back({What::Said, {}, number, {}});
}

void PowerLossVfs::build(std::size_t count, Loss loss, SeededRandom& random,
                         const fs::path& folder) const {
  std::map<std::string, Disk> disks;
  for (std::size_t i = 0; i < count; ++i) {
    const Event& event = events[i];
    if (event.what == What::Said) continue;
    Disk& disk = disks[event.file];
    if (event.what == What::Open) {
      if (event.certain && !disk.certain && disk.open.empty()) disk.certain = event.bytes;
      if (!event.certain) disk.open.push_back(&event);
    } else if (event.what == What::Sync || (event.what == What::Delete && event.certain)) {
      for (const Event* done : disk.open) Disk::apply(disk.certain, *done, SIZE_MAX);
      disk.open.clear();
      Disk::apply(disk.certain, event, SIZE_MAX);
    } else {
      disk.open.push_back(&event);
    }
  }
  fs::create_directories(folder);
  for (auto& [file, disk] : disks) {
    std::optional<std::string> bytes = disk.certain;
    for (const Event* done : disk.open) {
      const bool last = done == disk.open.back();
      std::size_t most = SIZE_MAX;
      if (loss == Loss::Unsynced) continue;
      if (loss == Loss::Some && random.below(2) == 0) continue;
      if ((loss == Loss::Torn && last) || (loss == Loss::Some && random.below(4) == 0))
        most = 512 * random.below(1 + done->bytes.size() / 512);
      Disk::apply(bytes, *done, most);
    }
    if (bytes) std::ofstream(folder / file, std::ios::binary) << *bytes;
  }
}

}  // namespace jambline::log
