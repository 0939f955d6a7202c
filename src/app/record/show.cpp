#include <iostream>

#include "app/command_line_words.h"
#include "app/record/car_story.h"
#include "app/record/commands.h"
#include "base/json.h"

namespace jambline::app {

int show(const ShowAsked& asked) {
  const auto folder = read_folder(asked.folder);
  if (!folder) {
    std::cerr << said(folder.error());
    return 2;
  }
  const auto car = find_car(*folder, asked.car);
  if (!car) {
    std::cerr << said_of_car(car.error(), asked.car);
    return 2;
  }
  const auto story = story_of(*folder, **car);
  if (!story) {
    std::cerr << said(story.error());
    return 2;
  }
  if (asked.json)
    std::cout << to_json(*story) << '\n';
  else
    print_story(std::cout, *story, *folder, asked.folder);
  return 0;
}

}  // namespace jambline::app
