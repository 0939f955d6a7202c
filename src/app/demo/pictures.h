// app/demo/pictures.h: pictures that people of the demo shop take of its cars.
//
// Story:   four weeks before now the shop got a camera and set short shot lists; before, stages
// were
//          finished without pictures. Some shots are left out since, some poor ones are kept.
// Random:  of its own a car: whether pictures are taken changes nothing else of it.
// Without a camera in the options there are neither pictures nor lists.
#pragma once

#include "app/demo/demo_shop.h"
#include "app/demo/visit.h"

namespace jambline::demo {

// Before work of the first day with it; after everything when there is no camera.
std::int64_t camera_comes_ms(const DemoOptions& options, const Calendar& calendar);

// What Rosa sets on that morning; no steps when there is no camera.
Visit shot_lists(const DemoOptions& options, const Calendar& calendar, const Crew& crew);

// Puts what is photographed into a visit, before each stage that is finished. `in_work` is the
// number of a car that is still in the shop.
void add_pictures(Visit& visit, const DemoOptions& options, const Calendar& calendar,
                  const Crew& crew, std::optional<int> in_work);

}  // namespace jambline::demo
