#include "app/record/picture_lines.h"

#include <algorithm>

#include "app/record/entry_lines.h"
#include "folds/shots_of_car.h"

namespace jambline::app {

std::string place_of(const folds::PictureView& picture, const folds::ShopView& shop) {
  const entries::PicturePlace& place = picture.place;
  std::string out(word_of(place.stage));
  if (place.shot)
    for (const auto* list : {&folds::shots_of(shop, place.stage), &job::usual_shots(place.stage)}) {
      const auto named = std::find_if(list->begin(), list->end(), [&](const job::Shot& shot) {
        return shot.shot == *place.shot;
      });
      if (named == list->end()) continue;
      out += ", " + one_line(named->shot_name);
      break;
    }
  if (place.panel) out += ", " + std::string(word_of(*place.panel));
  return out;
}

std::string bytes_of(std::uint64_t size_bytes) {
  std::string digits = std::to_string(size_bytes);
  for (std::size_t at = digits.size(); at > 3; at -= 3) digits.insert(at - 3, ",");
  return digits + (size_bytes == 1 ? " byte" : " bytes");
}

std::string ending_of(const folds::PictureView& picture) {
  return picture.facts.format == job::PictureFormat::Png ? ".png" : ".jpg";
}

}  // namespace jambline::app
