#include <cerrno>
#include <cstdio>
#include <cstring>
#include <fcntl.h>
#include <iostream>
#include <memory>
#include <unistd.h>

#include "app/command_line_words.h"
#include "app/record/car_story.h"
#include "app/record/commands.h"
#include "app/record/entry_lines.h"
#include "app/record/picture_lines.h"
#include "app/record/read_folder.h"
#include "picture/export_copy.h"

namespace jambline::app {

namespace {
namespace fs = std::filesystem;

// "K 41-206", "check-in, front left corner" -> "K-41-206-check-in-front-left-corner".
std::string plain_name(std::string_view text) {
  std::string out;
  for (const char sign : text) {
    const auto byte = static_cast<unsigned char>(sign);
    if (byte >= 0x80 || std::isalnum(byte))
      out.push_back(sign);
    else if (!out.empty() && out.back() != '-')
      out.push_back('-');
  }
  while (!out.empty() && out.back() == '-') out.pop_back();
  return out;
}

Error refused(const fs::path& file, int reason) {
  return Error{reason == EEXIST                      ? Code::AlreadyDone
               : reason == ENOSPC                    ? Code::DiskFull
               : reason == EROFS || reason == EACCES ? Code::ReadOnly
                                                     : Code::FileFailed,
               "export",
               file.string(),
               {{"cause", std::strerror(reason)}}};
}

// A new file, synced; one that is there is never written over.
Status write_new(const fs::path& file, const std::vector<std::uint8_t>& bytes) {
  const int opened = ::open(file.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0644);
  if (opened < 0) return fail(refused(file, errno));
  int reason = 0;
  for (std::size_t at = 0; at < bytes.size() && reason == 0;) {
    const auto wrote = ::write(opened, bytes.data() + at, bytes.size() - at);
    if (wrote < 0 && errno != EINTR) reason = errno;
    if (wrote > 0) at += static_cast<std::size_t>(wrote);
  }
  if (reason == 0 && ::fsync(opened) != 0) reason = errno;
  if (::close(opened) != 0 && reason == 0) reason = errno;
  if (reason == 0) return {};
  std::error_code ignored;
  fs::remove(file, ignored);
  return fail(refused(file, reason));
}

}  // namespace

int export_pictures(const PicturesAsked& asked) {
  const auto found = car_in_folder(asked.folder, asked.car);
  if (!found) return 2;
  const auto& [folder, car] = *found;
  if (car->pictures.empty()) {
    std::cout << "no pictures of this car\n";
    return 0;
  }
  blobs::PosixFiles files;
  const auto kept = blobs::BlobStore::open_read_only(files, blobs_of(asked.folder));
  if (!kept) {
    std::cerr << said(kept.error());
    return 2;
  }
  std::error_code no_folder;
  fs::create_directories(asked.to, no_folder);
  if (no_folder) {
    std::cerr << said(refused(asked.to, no_folder.value()));
    return 2;
  }
  int number = 0;
  int copied = 0;
  for (const auto& picture : car->pictures) {
    const std::string place = place_of(picture, folder.shop);
    char front[16];
    std::snprintf(front, sizeof front, "-%03d-", ++number);
    const fs::path to = fs::path(asked.to) /
                        (plain_name(car->plate) + front + plain_name(place) + ending_of(picture));
    const auto bytes = (*kept)->get(picture.facts.file);
    const auto copy = bytes ? picture::without_location(*bytes)
                            : Result<std::vector<std::uint8_t>>(fail(bytes.error()));
    const Status wrote = copy ? write_new(to, *copy) : Status(fail(copy.error()));
    if (wrote) {
      ++copied;
      continue;
    }
    std::cerr << one_line(place) << ": " << said(wrote.error());
    if (wrote.error().code == Code::DiskFull || wrote.error().code == Code::ReadOnly) return 2;
  }
  std::cout << copied << " of " << number << (number == 1 ? " picture" : " pictures")
            << " copied, without the place where they were taken\n";
  return copied == number ? 0 : 1;
}

}  // namespace jambline::app
