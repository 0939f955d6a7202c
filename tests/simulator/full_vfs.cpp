#include "tests/simulator/full_vfs.h"

#include <cstdlib>
#include <new>
#include <sqlite3.h>

namespace jambline::simulator {

namespace {
sqlite3_vfs* usual_vfs = nullptr;
sqlite3_vfs full_vfs{};
FullVfs* the_vfs = nullptr;

struct PassedFile {
  sqlite3_file base;
  std::filesystem::path* folder;
  sqlite3_file* real() { return reinterpret_cast<sqlite3_file*>(this + 1); }
  const sqlite3_io_methods& calls() { return *real()->pMethods; }
};
PassedFile& passed(sqlite3_file* file) {
  return *reinterpret_cast<PassedFile*>(file);
}

int close_passed(sqlite3_file* file) {
  const int result = passed(file).calls().xClose(passed(file).real());
  delete passed(file).folder;
  return result;
}
int read_passed(sqlite3_file* file, void* out, int count, sqlite3_int64 offset) {
  return passed(file).calls().xRead(passed(file).real(), out, count, offset);
}
int write_passed(sqlite3_file* file, const void* bytes, int count, sqlite3_int64 offset) {
  if (passed(file).folder && the_vfs->is_full(*passed(file).folder)) return SQLITE_FULL;
  if (passed(file).folder && !the_vfs->takes_write(*passed(file).folder)) return SQLITE_IOERR_WRITE;
  return passed(file).calls().xWrite(passed(file).real(), bytes, count, offset);
}
int truncate_passed(sqlite3_file* file, sqlite3_int64 length) {
  if (passed(file).folder && !the_vfs->takes_write(*passed(file).folder))
    return SQLITE_IOERR_TRUNCATE;
  return passed(file).calls().xTruncate(passed(file).real(), length);
}
int sync_passed(sqlite3_file*, int) {
  return SQLITE_OK;
}
int size_passed(sqlite3_file* file, sqlite3_int64* out) {
  return passed(file).calls().xFileSize(passed(file).real(), out);
}
int lock_passed(sqlite3_file* file, int how) {
  return passed(file).calls().xLock(passed(file).real(), how);
}
int unlock_passed(sqlite3_file* file, int how) {
  return passed(file).calls().xUnlock(passed(file).real(), how);
}
int check_passed(sqlite3_file* file, int* out) {
  return passed(file).calls().xCheckReservedLock(passed(file).real(), out);
}
int control_passed(sqlite3_file* file, int what, void* argument) {
  return passed(file).calls().xFileControl(passed(file).real(), what, argument);
}
int sector_passed(sqlite3_file* file) {
  return passed(file).calls().xSectorSize(passed(file).real());
}
int character_passed(sqlite3_file* file) {
  return passed(file).calls().xDeviceCharacteristics(passed(file).real());
}
int map_passed(sqlite3_file* file, int page, int size, int extend, void volatile** out) {
  return passed(file).calls().xShmMap(passed(file).real(), page, size, extend, out);
}
int shm_lock_passed(sqlite3_file* file, int offset, int count, int flags) {
  return passed(file).calls().xShmLock(passed(file).real(), offset, count, flags);
}
void barrier_passed(sqlite3_file* file) {
  passed(file).calls().xShmBarrier(passed(file).real());
}
int unmap_passed(sqlite3_file* file, int remove) {
  return passed(file).calls().xShmUnmap(passed(file).real(), remove);
}

const sqlite3_io_methods passed_calls = {2,
                                         close_passed,
                                         read_passed,
                                         write_passed,
                                         truncate_passed,
                                         sync_passed,
                                         size_passed,
                                         lock_passed,
                                         unlock_passed,
                                         check_passed,
                                         control_passed,
                                         sector_passed,
                                         character_passed,
                                         map_passed,
                                         shm_lock_passed,
                                         barrier_passed,
                                         unmap_passed,
                                         nullptr,
                                         nullptr};

int open_passed(sqlite3_vfs*, const char* path, sqlite3_file* file, int flags, int* out_flags) {
  auto* self = new (file) PassedFile{};
  const int result = usual_vfs->xOpen(usual_vfs, path, self->real(), flags, out_flags);
  self->base.pMethods = result == SQLITE_OK ? &passed_calls : nullptr;
  if (result == SQLITE_OK && path)
    self->folder = new std::filesystem::path(std::filesystem::path(path).parent_path());
  return result;
}
}  // namespace

FullVfs::FullVfs() {
  usual_vfs = sqlite3_vfs_find(nullptr);
  full_vfs = *usual_vfs;
  full_vfs.zName = name;
  full_vfs.pNext = nullptr;
  full_vfs.szOsFile = static_cast<int>(sizeof(PassedFile)) + usual_vfs->szOsFile;
  full_vfs.xOpen = open_passed;
  the_vfs = this;
  if (sqlite3_vfs_register(&full_vfs, 0) != SQLITE_OK) std::abort();
}

FullVfs& FullVfs::registered() {
  static FullVfs vfs;
  return vfs;
}

void FullVfs::set_full(const std::filesystem::path& folder, bool full) {
  if (full)
    full_.insert(folder);
  else
    full_.erase(folder);
}

void FullVfs::kill_after(const std::filesystem::path& folder, std::uint64_t writes) {
  writes_left_[folder] = writes;
}

bool FullVfs::takes_write(const std::filesystem::path& folder) {
  const auto left = writes_left_.find(folder);
  if (left == writes_left_.end()) return true;
  if (left->second == 0) return false;
  --left->second;
  return true;
}

}  // namespace jambline::simulator
