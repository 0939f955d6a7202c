#include <iostream>

#include "app/command_line_words.h"
#include "app/record/car_story.h"
#include "app/record/commands.h"
#include "base/json.h"

namespace jambline::app {

int show(const ShowAsked& asked) {
  const auto found = car_in_folder(asked.folder, asked.car);
  if (!found) return 2;
  const auto& [folder, car] = *found;
  const auto story = story_of(folder, *car);
  if (!story) {
    std::cerr << said(story.error());
    return 2;
  }
  if (asked.json)
    std::cout << to_json(*story) << '\n';
  else
    print_story(std::cout, *story, folder.shop, asked.folder);
  return 0;
}

}  // namespace jambline::app
