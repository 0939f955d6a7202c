// folds/film_of_panel.h: what is known of a panel's clear, as trade/film.h takes it.
//
// Source:  the readings of its thinnest spot. First those of the clear alone; then a total with one
//          of the same spot before base, on metal only; else the coats (two, where nobody said how
//          many; one as on a new car where the panel's face was not sprayed).
// Taken:   rounds that were finished after the last reading are no longer there; those before it
//          count in the panel's life, as they were read or, where nobody read, by what a round
//          takes. Of several marks the one that most was taken from counts. A reading before base
//          after a round begins a new clear.
// Steps:   rounds still to be done. A shop's own whole sequence is used from ten readings on: its
//          rounds then take their share of what was learned.
// Numbers: common practice, no source, or learned. Threads: pure.
#pragma once

#include <vector>

#include "folds/learned.h"
#include "trade/film.h"

namespace jambline::folds {

// Readings that stand but do not count.
enum class FilmNote : std::uint8_t {
  None,
  OneTotalOnly,  // no total of the same spot before base, or none after painting
  NoMetal,       // totals on what such a gauge does not read
};

struct FilmOfPanel {
  trade::FilmBudget budget;
  trade::FilmSource source = trade::FilmSource::CoatsTimesBuild;
  int spot = 0;  // the one that counts; 0: the coats
  FilmNote note{};
  bool old_clear = false;  // the clear that the car came with
  int learned_from = 0;    // own readings behind what the steps take; 0: the usual
};

struct FilmQuestion {
  std::vector<job::Round> steps;
  bool near_edge = false;  // clear is thinner on edges and body lines
};

// Every round, coarse to fine: what a nib takes.
std::vector<job::Round> whole_sequence();

FilmOfPanel film_of_panel(const PanelView& panel, const FilmQuestion& question,
                          const std::vector<LearnedSequence>& learned = {});

}  // namespace jambline::folds

template <>
inline constexpr auto jambline::enum_words<jambline::folds::FilmNote> =
    std::to_array<std::string_view>({"none", "one total only", "no metal"});
