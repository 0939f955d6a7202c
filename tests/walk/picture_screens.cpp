#include "picture_screens.h"

#include <fstream>

#include "app/demo_pictures/drawn_camera.h"
#include "blobs/hasher.h"
#include "folds/shots_of_car.h"
#include "item.h"
#include "rules.h"
#include "screens/compare_view_model.h"
#include "screens/leftovers_view_model.h"
#include "screens/look_view_model.h"
#include "screens/picture_item.h"
#include "screens/wall_view_model.h"

namespace jambline::walk {

namespace {
using job::PictureNoteShape;
using Bytes = std::vector<std::uint8_t>;

Bytes drawn(Shop& shop, std::optional<job::Panel> panel, job::ShotView view, std::uint64_t seed) {
  const auto* car = shop.program().session().car();
  auto made = demo::drawn_picture({.view = view,
                                   .panel = panel,
                                   .body = car->body,
                                   .color = car->color,
                                   .vin = "11111111111111111",
                                   .surface = demo::Surface::Fresh,
                                   .seed = seed});
  return made ? *made : Bytes{};
}

acts::TakePicture command_of(Shop& shop, const Bytes& bytes, const entries::PicturePlace& place) {
  blobs::Hasher hasher;
  hasher.update(bytes);
  acts::TakePicture out{shop.program().session().car()->job, {}, job::PictureFrom::Camera, place};
  out.facts.file = *hasher.finish();
  out.facts.size_bytes = static_cast<std::int64_t>(bytes.size());
  out.facts.width_px = 1200;
  out.facts.height_px = 900;
  out.facts.sharpness = 212;
  out.facts.mean = 118;
  out.facts.clipped_percent = 1.4;
  return out;
}

bool keep(Shop& shop, const Bytes& bytes, const acts::TakePicture& command) {
  bool good = false;
  auto& engine = shop.program().engine();
  engine.keep_picture(std::make_shared<const Bytes>(bytes), nullptr, command,
                      shop.program().session().person(),
                      [&](const Result<engine::Wrote>& wrote) { good = wrote.has_value(); });
  engine.drain();
  settle(shop.window());
  return good;
}

// Two of the same thing, one that is drawn on, a poor one whose file is elsewhere; none on a car of
// which no work is planned.
bool take_pictures(Shop& shop) {
  auto& session = shop.program().session();
  const auto* car = session.car();
  if (!car) return false;
  if (car->stages.empty() || shop.program().wall().keys().size() >= 8) return true;
  const auto panel = car->panels.front().plan.panel;
  const auto& shots = folds::shots_of(session.shop(), job::Stage::CheckIn);
  const auto shot = shots.front().shot;
  std::uint64_t seed = 90;
  const auto take = [&](const entries::PicturePlace& place, job::ShotView view,
                        const auto& change) {
    const Bytes bytes = drawn(shop, place.panel, view, ++seed);
    acts::TakePicture command = command_of(shop, bytes, place);
    change(command);
    return keep(shop, bytes, command);
  };
  const auto nothing = [](acts::TakePicture&) {};
  bool good = true;
  for (const auto& one : shots)
    good = take({job::Stage::CheckIn, one.shot, {}, {}}, one.view, nothing) && good;
  good = take({job::Stage::CheckIn, shot, {}, {}}, shots.front().view, nothing) && good;
  good = take({job::Stage::Inspect, {}, panel, {}}, job::ShotView::SideLight,
              [](acts::TakePicture& command) {
                command.facts.word = trade::PhotoWord::Blurred;
                command.facts.sharpness = 11;
                command.facts.has_location = true;
                command.facts.camera_time = "2025-03-02T09:10:00";
                command.kept_though_poor = true;
              }) &&
         good;
  if (!good) return false;
  const auto& pictures = session.car()->pictures;
  std::filesystem::remove(shop.program().engine().blobs()->path_of(pictures.back().facts.file));
  const PictureId first = pictures.front().picture;
  const JobId job = session.car()->job;
  session.post(
      acts::NotePicture{job, first, {PictureNoteShape::Circle, 0.6, 0.6, 0.7, 0.6, {}}, {}});
  session.post(
      acts::NotePicture{job, first, {PictureNoteShape::Arrow, 0.45, 0.5, 0.2, 0.3, {}}, {}});
  session.post(acts::NotePicture{
      job,
      first,
      {PictureNoteShape::Text, 0.05, 0.1, 0.05, 0.1, "scratch from before, not ours to mend"},
      {}});
  shop.program().engine().drain();
  settle(shop.window());
  return true;
}

// Until every picture that is in sight has come, or says why not.
bool all_here(Shop& shop) {
  const auto waits = [](auto&& self, QQuickItem& item) -> bool {
    if (!item.isVisible()) return false;
    if (const auto* picture = qobject_cast<screens::PictureItem*>(&item);
        picture && !picture->file().isEmpty() && !picture->here() && picture->trouble().isEmpty())
      return true;
    for (QQuickItem* child : item.childItems())
      if (self(self, *child)) return true;
    return false;
  };
  settle_until(shop, [&] { return !waits(waits, *shop.window().contentItem()); });
  return !waits(waits, *shop.window().contentItem());
}

bool wall(Shop& shop) {
  return take_pictures(shop) && place(shop, "Floor", "Wall") && all_here(shop);
}

// `which` of the wall; the wall itself where there is none.
bool look(Shop& shop, int which) {
  if (!wall(shop)) return false;
  const QStringList all = shop.program().wall().keys();
  if (all.isEmpty()) return true;
  shop.program().look().open(all[which < 0 ? all.size() + which : which], all);
  return place(shop, "Floor", "Look") && all_here(shop);
}

bool look_then(Shop& shop, int which, const char* button) {
  return look(shop, which) &&
         (shop.program().wall().keys().isEmpty() || press(shop, button) || true);
}

bool compare(Shop& shop, bool slides) {
  if (!look(shop, 0)) return false;
  if (shop.program().wall().keys().isEmpty()) return true;
  shop.program().compare().open(shop.program().look().picture());
  if (!place(shop, "Floor", "Compare")) return false;
  QQuickItem* page = named(scope_of(shop.window()), QStringLiteral("compareScreen"));
  if (!page) return false;
  page->setProperty("slides", slides);
  settle(shop.window());
  return all_here(shop);
}

// As a kill between file and entry leaves it.
bool leftovers(Shop& shop) {
  if (!shop.program().session().car()->stages.empty()) {
    const Bytes bytes = drawn(shop, {}, job::ShotView::FrontLeftCorner, 400);
    const auto command = command_of(shop, bytes, {job::Stage::CheckIn, {}, {}, {}});
    const auto path = shop.program().engine().blobs()->path_of(command.facts.file);
    std::filesystem::create_directories(path.parent_path());
    std::ofstream(path, std::ios::binary)
        .write(reinterpret_cast<const char*>(bytes.data()),
               static_cast<std::streamsize>(bytes.size()));
    auto* left = shop.window()
                     .property("models")
                     .value<QObject*>()
                     ->property("leftovers")
                     .value<screens::LeftoversViewModel*>();
    if (!left) return false;
    left->look();
    settle_until(shop, [&] { return left->count() != 0; });
  }
  return place(shop, "Floor", "None");
}
}  // namespace

std::vector<Screen> picture_screens() {
  return {
      {"wall", true, wall},
      {"look", true, [](Shop& shop) { return look(shop, 0); }},
      {"look-poor-not-here", true, [](Shop& shop) { return look(shop, -1); }},
      {"look-draw", true, [](Shop& shop) { return look_then(shop, 0, "lookDraw"); }},
      {"look-known", true, [](Shop& shop) { return look_then(shop, 0, "lookKnown"); }, true},
      {"look-filing", true,
       [](Shop& shop) {
         return look_then(shop, 0, "lookKnown") && (press(shop, "lookFiling") || true) &&
                (press(shop, "filing1") || true);
       }},
      {"compare-slider", true, [](Shop& shop) { return compare(shop, true); }},
      {"compare-beside", true, [](Shop& shop) { return compare(shop, false); }},
      {"leftovers", true,
       [](Shop& shop) {
         return leftovers(shop) && (press(shop, "leftRow") || true) && all_here(shop);
       }},
  };
}

}  // namespace jambline::walk
