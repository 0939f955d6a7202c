#include <algorithm>
#include <set>

#include "acts/decisions.h"
#include "folds/shots_of_car.h"
#include "job/body_shape.h"

namespace jambline::acts {

namespace {
constexpr std::size_t most_picture_note_bytes = 500;
constexpr std::size_t most_shot_name_bytes = 60;
constexpr std::size_t most_shots = 60;

Result<const folds::PictureView*> find_picture(const folds::CarView& car, const PictureId& picture,
                                               const char* operation) {
  if (const auto* found = car.find(picture)) return found;
  return fail(Code::Unknown, operation, "picture");
}

// The place names what this car has: a panel in the job, a standing mark, which brings its panel.
Result<entries::PicturePlace> place_of(const Scene& scene, const folds::CarView& car,
                                       const entries::PicturePlace& said, const char* operation) {
  entries::PicturePlace place = said;
  if (place.mark) {
    JAMBLINE_ASSIGN(const FoundMark found, find_mark(car, *place.mark, operation));
    if (place.panel && *place.panel != found.panel->plan.panel)
      return fail(Code::Unknown, operation, "mark");
    place.panel = found.panel->plan.panel;
  }
  if (place.panel) JAMBLINE_TRY(scene.panel(car, *place.panel, operation));
  if (place.shot) {
    const auto& shots = folds::shots_of(scene.world.shop, place.stage);
    if (std::none_of(shots.begin(), shots.end(),
                     [&](const job::Shot& one) { return one.shot == *place.shot; }))
      return fail(Code::Unknown, operation, "shot");
  }
  return place;
}

Status in_picture(const job::PictureNote& drawn, const char* operation) {
  for (const double part : {drawn.x, drawn.y, drawn.to_x, drawn.to_y})
    if (!(part >= 0 && part <= 1))
      return fail(Error{Code::OutOfRange,
                        operation,
                        "place",
                        {{"value", number_text(part)}, {"min", "0"}, {"max", "1"}}});
  return {};
}
}  // namespace

Drafts decide_one(const Scene& scene, const TakePicture& command) {
  const char* const operation = "keep a picture";
  JAMBLINE_ASSIGN(const auto* car, scene.car(command.job, operation));
  if (!command.facts.file) return fail(Code::Missing, operation, "file");
  JAMBLINE_ASSIGN(auto place, place_of(scene, *car, command.place, operation));
  const bool poor = command.facts.word != trade::PhotoWord::Good;
  if (poor && !command.kept_though_poor)
    return fail(Error{
        Code::NotYet, operation, std::string(word_of(command.facts.word)), {{"what", "picture"}}});
  for (const auto& picture : car->pictures)
    if (picture.facts.file == command.facts.file && picture.place == place)
      return fail(Code::AlreadyDone, operation, "picture");
  return std::vector<Draft>{
      {command.job, entries::PictureTaken{scene.context.random.make<PictureId>(), command.facts,
                                          command.from, place, poor}}};
}

Drafts decide_one(const Scene& scene, const FilePicture& command) {
  const char* const operation = "file a picture";
  JAMBLINE_ASSIGN(const auto* car, scene.car(command.job, operation));
  JAMBLINE_ASSIGN(const auto* picture, find_picture(*car, command.picture, operation));
  JAMBLINE_ASSIGN(auto place, place_of(scene, *car, command.place, operation));
  if (picture->place == place) return fail(Code::AlreadyDone, operation, "picture");
  return std::vector<Draft>{
      {command.job, entries::PictureFiled{command.picture, place, picture->place_heads}}};
}

Drafts decide_one(const Scene& scene, const NotePicture& command) {
  const char* const operation = "draw on a picture";
  JAMBLINE_ASSIGN(const auto* car, scene.car(command.job, operation));
  JAMBLINE_ASSIGN(const auto* picture, find_picture(*car, command.picture, operation));
  JAMBLINE_TRY(in_picture(command.drawn, operation));
  job::PictureNote drawn = command.drawn;
  if (drawn.shape == job::PictureNoteShape::Text) {
    JAMBLINE_ASSIGN(drawn.text, typed(drawn.text, operation, "text", most_picture_note_bytes));
  } else {
    drawn.text.clear();
    if (drawn.x == drawn.to_x && drawn.y == drawn.to_y)
      return fail(Code::Missing, operation, "length");
  }
  PictureNoteId id;
  std::vector<Hash> replaces;
  if (command.changes) {
    const auto known = std::find_if(picture->notes.begin(), picture->notes.end(),
                                    [&](const auto& one) { return one.note == *command.changes; });
    if (known == picture->notes.end()) return fail(Code::Unknown, operation, "note");
    if (known->drawn == drawn) return fail(Code::AlreadyDone, operation, "note");
    id = known->note;
    replaces = known->heads;
  } else {
    id = scene.context.random.make<PictureNoteId>();
  }
  return std::vector<Draft>{
      {command.job,
       entries::PictureNoted{id, command.picture, std::move(drawn), std::move(replaces)}}};
}

// Each find that this picture did not have yet places its mark, which says "to correct" by itself.
Drafts decide_one(const Scene& scene, const CheckEdges& command) {
  const char* const operation = "look at edges";
  JAMBLINE_ASSIGN(const auto* car, scene.car(command.job, operation));
  JAMBLINE_ASSIGN(const auto* picture, find_picture(*car, command.picture, operation));
  if (!picture->place.panel) return fail(Code::Missing, operation, "panel");
  JAMBLINE_ASSIGN(const auto* panel, scene.panel(*car, *picture->place.panel, operation));
  const std::set<job::DefectKind> finds(command.finds.begin(), command.finds.end());
  for (const auto find : finds)
    if (!job::is_edge_find(find))
      return fail(Code::OutOfRange, operation, std::string(word_of(find)));
  const std::vector<job::DefectKind> kept(finds.begin(), finds.end());
  if (picture->edges && !picture->edges->disputed && picture->edges->finds == kept)
    return fail(Code::AlreadyDone, operation, "picture");
  std::vector<Draft> out{
      {command.job,
       entries::EdgesLookedAt{command.picture, kept,
                              picture->edges ? picture->edges->heads : std::vector<Hash>{}}}};
  trade::Point_mm at;
  if (!kept.empty()) {
    if (command.x_mm && command.y_mm) {
      at = {*command.x_mm, *command.y_mm};
    } else {
      const auto* placed = job::pattern(car->body).find(panel->plan.panel);
      if (!placed) return fail(Code::Unknown, operation, "panel");
      at = trade::beside_edge(placed->shape);
    }
    JAMBLINE_TRY(on_panel(*car, panel->plan.panel, at.x_mm, at.y_mm, operation));
  }
  for (const auto find : kept) {
    if (picture->edges && std::find(picture->edges->finds.begin(), picture->edges->finds.end(),
                                    find) != picture->edges->finds.end())
      continue;
    const MarkId mark = scene.context.random.make<MarkId>();
    out.push_back({command.job, entries::MarkPlaced{mark,
                                                    panel->plan.panel,
                                                    at.x_mm,
                                                    at.y_mm,
                                                    find,
                                                    1,
                                                    job::Layer::NotSaid,
                                                    job::Stage::EdgesAndJambs,
                                                    {}}});
    if (!picture->place.mark && find == kept.front()) {
      entries::PicturePlace place = picture->place;
      place.mark = mark;
      out.push_back(
          {command.job, entries::PictureFiled{command.picture, place, picture->place_heads}});
    }
  }
  if (out.size() > 1) say_to_correct(command.job, *panel, out);
  return out;
}

Drafts decide_one(const Scene& scene, const SetShotList& command) {
  const char* const operation = "set a shot list";
  const std::string subject(word_of(command.stage));
  if (!scene.may_say<entries::ShotListSet>()) return fail(Code::NotAllowed, operation, subject);
  if (command.shots.size() > most_shots)
    return fail(Error{Code::TooLarge, operation, subject, {{"limit", std::to_string(most_shots)}}});
  std::vector<job::Shot> shots;
  std::set<ShotId> ids;
  for (job::Shot shot : command.shots) {
    JAMBLINE_ASSIGN(shot.shot_name, typed(shot.shot_name, operation, "name", most_shot_name_bytes));
    if (!shot.shot) shot.shot = scene.context.random.make<ShotId>();
    if (!ids.insert(shot.shot).second) return fail(Code::AlreadyDone, operation, shot.shot_name);
    shots.push_back(std::move(shot));
  }
  if (folds::shots_of(scene.world.shop, command.stage) == shots)
    return fail(Code::AlreadyDone, operation, subject);
  std::vector<Hash> replaces;
  for (const auto& list : scene.world.shop.shot_lists)
    if (list.stage == command.stage) replaces = list.heads;
  return std::vector<Draft>{
      {{}, entries::ShotListSet{command.stage, std::move(shots), std::move(replaces)}}};
}

}  // namespace jambline::acts
