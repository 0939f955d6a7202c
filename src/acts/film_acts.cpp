#include <algorithm>
#include <cmath>

#include "acts/decisions.h"

namespace jambline::acts {

namespace {
constexpr const char* reading_film = "read the film";

Status places_fit(const folds::CarView& car, const ReadFilm& command) {
  if (command.spot < 1 || command.spot > job::most_spots)
    return fail(Error{Code::OutOfRange,
                      reading_film,
                      "spot",
                      {{"value", std::to_string(command.spot)},
                       {"min", "1"},
                       {"max", std::to_string(job::most_spots)}}});
  if (command.x_mm.has_value() != command.y_mm.has_value())
    return fail(Code::Missing, reading_film, "place");
  if (command.x_mm)
    JAMBLINE_TRY(on_panel(car, command.panel, *command.x_mm, *command.y_mm, reading_film));
  return {};
}

Status gauge_fits(const folds::PanelView& panel, const ReadFilm& command) {
  if (command.gauge == job::FilmGauge::Total && !trade::is_metal(panel.plan.substrate))
    return fail(Code::OutOfRange, reading_film, "gauge");
  if (command.gauge == job::FilmGauge::Clear && command.when == job::FilmWhen::BeforeBase)
    return fail(Code::OutOfRange, reading_film, "no clear yet");
  return {};
}

// What a gauge can show at all.
Status readings_fit(const ReadFilm& command) {
  const auto count = command.typed.size();
  if (count < static_cast<std::size_t>(job::least_readings))
    return fail(
        Error{Code::Missing,
              reading_film,
              "readings",
              {{"value", std::to_string(count)}, {"min", std::to_string(job::least_readings)}}});
  if (count > static_cast<std::size_t>(job::most_readings))
    return fail(Error{
        Code::TooLarge, reading_film, "readings", {{"limit", std::to_string(job::most_readings)}}});
  const double most_um = job::most_reading_um(command.gauge);
  for (std::size_t i = 0; i < count; ++i) {
    const double um = job::in_um(command.typed[i], command.unit);
    if (um >= job::least_reading_um && um <= most_um) continue;
    const double typed = std::isfinite(command.typed[i]) ? command.typed[i] : 0;
    return fail(Error{Code::OutOfRange,
                      reading_film,
                      "reading",
                      {{"value", number_text(typed)},
                       {"unit", std::string(word_of(command.unit))},
                       {"at", std::to_string(i + 1)},
                       {"min", number_text(job::least_reading_um)},
                       {"max", number_text(most_um)}}});
  }
  return {};
}

double mean_um(const ReadFilm& command) {
  double sum = 0;
  for (const double typed : command.typed) sum += job::in_um(typed, command.unit);
  return sum / static_cast<double>(command.typed.size());
}

tl::unexpected<Error> does_not_hang_together(const char* subject, double value_um,
                                             double other_um) {
  return fail(Error{Code::OutOfRange,
                    reading_film,
                    subject,
                    {{"value", number_text(value_um)}, {"other", number_text(other_um)}}});
}

// The spot's readings by one gauge, in the order in which they were made, the new one among them:
// under paint there is always less than with it, and no sequence takes more than there was.
Status hang_together(const std::vector<folds::FilmView>& spot) {
  for (const auto& base : spot) {
    if (base.when != job::FilmWhen::BeforeBase) continue;
    for (const auto& later : spot)
      if (later.when != job::FilmWhen::BeforeBase && later.mean_um <= base.mean_um)
        return does_not_hang_together("thinner than before base", later.mean_um, base.mean_um);
  }
  for (const auto& after : spot) {
    if (!after.before) continue;
    for (const auto& before : spot) {
      if (before.reading != *after.before) continue;
      const double taken_um = before.mean_um - after.mean_um;
      if (taken_um < -job::most_grown_um)
        return does_not_hang_together("thicker than before", after.mean_um, before.mean_um);
      if (taken_um > job::most_taken_um)
        return does_not_hang_together("too much taken", after.mean_um, before.mean_um);
    }
  }
  return {};
}

// What was read last on this spot before work, and what was done since.
void find_sequence(const folds::PanelView& panel, const std::vector<folds::FilmView>& spot,
                   folds::FilmView& out) {
  const folds::FilmView* before = nullptr;
  for (const auto& one : spot)
    if (one.when != job::FilmWhen::BeforeBase) before = &one;
  if (!before) return;
  out.before = before->reading;
  for (const auto& round : panel.rounds)
    if (round.how != job::RoundHow::Skipped && before->order < round.order)
      out.rounds.push_back(round.round);
}
}  // namespace

Drafts decide_one(const Scene& scene, const ReadFilm& command) {
  JAMBLINE_ASSIGN(const auto* car, scene.car(command.job, reading_film));
  JAMBLINE_ASSIGN(const auto* panel, scene.panel(*car, command.panel, reading_film));
  JAMBLINE_TRY(places_fit(*car, command));
  JAMBLINE_TRY(gauge_fits(*panel, command));
  JAMBLINE_TRY(readings_fit(command));
  const folds::FilmView* wrong = nullptr;
  std::vector<folds::FilmView> spot;
  for (const auto& one : panel->film) {
    if (command.corrects == one.reading)
      wrong = &one;
    else if (one.spot == command.spot && one.gauge == command.gauge)
      spot.push_back(one);
  }
  if (command.corrects && !wrong) return fail(Code::Unknown, reading_film, "film reading");
  folds::FilmView view;
  view.reading = wrong ? wrong->reading : scene.context.random.make<ReadingId>();
  view.when = command.when;
  view.mean_um = mean_um(command);
  const bool same_spot = wrong && wrong->spot == command.spot && wrong->gauge == command.gauge &&
                         wrong->when == command.when;
  if (same_spot) {
    view.before = wrong->before;
    view.rounds = wrong->rounds;
  } else if (command.when == job::FilmWhen::AfterSequence) {
    find_sequence(*panel, spot, view);
  }
  spot.push_back(view);
  JAMBLINE_TRY(hang_together(spot));
  return std::vector<Draft>{
      {command.job,
       entries::FilmRead{view.reading, command.panel, command.spot, command.x_mm, command.y_mm,
                         command.when, command.gauge, command.unit, command.typed, view.before,
                         std::move(view.rounds), wrong ? wrong->heads : std::vector<Hash>{}}}};
}

}  // namespace jambline::acts
