#include <iostream>
#include <sstream>

#include "app/command_line_words.h"
#include "app/record/car_story.h"
#include "app/record/commands.h"
#include "app/record/entry_lines.h"
#include "app/record/picture_lines.h"
#include "app/record/verify_bundle.h"
#include "evidence/write_bundle.h"
#include "seal/fingerprint.h"

namespace jambline::app {

namespace {
// The same words whenever it is made, so that the same log gives the same file.
std::string report_of(const ShopFolder& folder, const CarStory& story, const std::string& path) {
  std::ostringstream out;
  out << "shop       " << one_line(folder.shop.name) << '\n'
      << "fingerprint " << seal::fingerprint(folder.log->shop()) << "\n\n"
      << "This report is for people and proves nothing. What the shop's devices wrote lies beside\n"
         "it; BUNDLE.md says how it is checked, verify_bundle.py checks it.\n\n";
  print_story(out, story, folder, path);
  return out.str();
}
}  // namespace

int bundle(const BundleAsked& asked) {
  const auto found = car_in_folder(asked.folder, asked.car);
  if (!found) return 2;
  const auto& [folder, car] = *found;
  const auto story = story_of(folder, *car);
  if (!story) {
    std::cerr << said(story.error());
    return 2;
  }
  blobs::PosixFiles files;
  const auto kept = blobs::BlobStore::open_read_only(files, blobs_of(asked.folder));
  if (!kept && kept.error().code != Code::NoSuchFile) {
    std::cerr << said(kept.error());
    return 2;
  }
  evidence::BundleWanted wanted{car->job, asked.to, report_of(folder, *story, asked.folder),
                                asked.without_missing};
  const auto wrote =
      evidence::write_bundle(*folder.log, kept ? kept->get() : nullptr, wanted, {}, {});
  if (!wrote) {
    std::cerr << said(wrote.error());
    if (!wrote.error().arg("picture").empty())
      std::cerr << "or:    --without-missing makes the bundle without it, and its check says so\n";
    return 2;
  }
  std::cout << "wrote  " << one_line(asked.to) << ", " << bytes_of(wrote->bytes) << '\n';
  for (const auto& picture : wrote->missing)
    std::cout << "missing picture: " << picture.hex() << '\n';
  return verify_bundle(asked.to, {}, true);
}

}  // namespace jambline::app
