#include <iostream>

#include "app/command_line_words.h"
#include "app/record/car_story.h"
#include "app/record/commands.h"
#include "app/record/entry_lines.h"
#include "app/record/picture_lines.h"
#include "app/record/verify_bundle.h"
#include "evidence/write_bundle.h"

namespace jambline::app {

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
  evidence::BundleWanted wanted{
      car->job, asked.to, bundle_report(folder.log->shop(), *story, folder.shop, asked.folder),
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
