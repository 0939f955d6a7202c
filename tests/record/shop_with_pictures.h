// tests/record/shop_with_pictures.h: the small shop, with pictures of its green car kept by the
// engine itself.
#pragma once

#include <fstream>

#include "blobs/hasher.h"
#include "job/shot.h"
#include "tests/record/small_shop.h"

namespace jambline {

class ShopWithPictures : public SmallShop {
 public:
  ShopWithPictures() {
    open();
    work();
  }

  // The first shot of check-in, or the hood at inspect.
  entries::PicturePlace corner() const {
    return {job::Stage::CheckIn, job::usual_shots(job::Stage::CheckIn).front().shot, {}, {}};
  }
  entries::PicturePlace hood() const { return {job::Stage::Inspect, {}, job::Panel::Hood, {}}; }

  Hash keep(const std::string& bytes, entries::PicturePlace place,
            trade::PhotoWord word = trade::PhotoWord::Good) {
    auto file = std::make_shared<const std::vector<std::uint8_t>>(bytes.begin(), bytes.end());
    blobs::Hasher hasher;
    hasher.update(*file);
    acts::TakePicture command;
    command.job = green;
    command.facts.file = *hasher.finish();
    command.facts.size_bytes = static_cast<std::int64_t>(file->size());
    command.facts.width_px = 1600;
    command.facts.height_px = 1200;
    command.facts.word = word;
    command.from = job::PictureFrom::File;
    command.place = place;
    command.kept_though_poor = word != trade::PhotoWord::Good;
    std::optional<Error> refused;
    engine->keep_picture(file, nullptr, command, ivo, [&](Result<engine::Wrote> wrote) {
      if (!wrote) refused = wrote.error();
    });
    engine->drain();
    if (refused) ADD_FAILURE() << code_name(refused->code) << " " << refused->subject;
    clock.advance_ms(60'000);
    return command.facts.file;
  }
  std::filesystem::path file_of(const Hash& name) const { return engine->blobs()->path_of(name); }
  std::string at() const { return " --folder " + folder.string(); }
};

}  // namespace jambline
