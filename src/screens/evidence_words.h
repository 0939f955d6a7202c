// screens/evidence_words.h: what a sign or a particle points to, and what to look at next.
//
// Shape:   a Clue is what speaks for a cause: a sign of trade/dirt_pattern.h, the look or the layer
//          of particles, dirt all over. points_to goes on after "Points to", look_at after "Look
//          at".
// Causes:  those that a clue points to, the likeliest first. It is no proof: a person sets one.
// Source:  the trade's table of signs; common practice, no source.
#pragma once

#include <QString>
#include <optional>
#include <vector>

#include "folds/car_view.h"
#include "job/dirt_cause.h"
#include "screens/units.h"
#include "trade/dirt_pattern.h"

namespace jambline::screens {

enum class Clue : std::uint8_t {
  Spacing,
  Cluster,
  MaskedEdge,
  Seam,
  ReachStrip,
  FlatOverUpright,
  PlasticOverMetal,
  FirstPanels,
  LastPanels,
  ClusterAtGap,
  WhiteFiber,
  ColoredFiber,
  HardGrain,
  GelOrSeed,
  DryOverspray,
  Insect,
  OnTop,
  UnderClear,
  AllOver,
  AllOverPlastic,
};

struct ClueWords {
  QString title;
  QString points_to;
  QString look_at;
};
ClueWords words_of(Clue clue);
const std::vector<job::DirtCause>& causes_of(Clue clue);

// A cluster at a seam or gap is another story than one in the open.
Clue clue_of(const trade::DirtEvidence& evidence, const trade::DirtPattern& asked);

// What the looks and layers that people gave say, and dirt all over: the commonest first.
struct SeenClue {
  Clue clue{};
  int marks = 0;  // 0: of whole panels
  int asked = 0;  // marks of which it was said
};
std::vector<SeenClue> clues_of(const folds::CarView& car);
QString note_of(const SeenClue& seen);  // "on 2 of 3 marks that were asked about"

// "5 marks within 6 in of one place; by chance 1.2".
QString note_of(const trade::DirtEvidence& evidence, int marks_on_panel, Units units);
// The sign opened to its numbers.
trade::Basis basis_of(const trade::DirtEvidence& evidence, const trade::DirtPatternResult& result);

// From 0 (chance) over 0.5 (the level) to 1 (a cause).
double line_at(double chance);

QString icon_of(job::DirtCause cause);  // its file name in icons/

}  // namespace jambline::screens

template <>
inline constexpr auto jambline::enum_words<jambline::screens::Clue> =
    std::to_array<std::string_view>(
        {"spacing",     "cluster",           "masked edge",        "seam",
         "reach strip", "flat over upright", "plastic over metal", "first panels",
         "last panels", "cluster at gap",    "white fiber",        "colored fiber",
         "hard grain",  "gel or seed",       "dry overspray",      "insect",
         "on top",      "under clear",       "all over",           "all over plastic"});
