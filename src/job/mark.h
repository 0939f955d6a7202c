// job/mark.h: a defect that someone found, with its place.
//
// Source: kinds after the trade's usual names; remedies and causes are common practice, no source.
#pragma once

#include <cstdint>

#include "base/describe.h"

namespace jambline::job {

enum class DefectKind : std::uint8_t {
  Nib,
  RunOrSag,
  RunInBase,
  Fisheye,
  Crater,
  SolventPop,
  Pinhole,
  OrangePeel,
  DrySpray,
  Mottle,
  OversprayOnFinish,
  OversprayPastMasking,
  TapeLine,
  TapeBleed,
  PrimerShowing,
  SandingScratch,
  ScratchSwelling,
  DieBack,
  Haze,
  BurnThrough,
  WhiteBlush,
  Wrinkle,
  SoftFilm,
  HandlingScratch,
  ColorMismatch,
  AdhesionLoss,
};

enum class Layer : std::uint8_t { NotSaid, OnTop, InClear, UnderClear };

// "Dirt all over" a panel: counted as a class, never as single marks.
enum class DirtClass : std::uint8_t { None, From10To20, From20To50, Over50 };

enum class Verdict : std::uint8_t { NotLookedAt, Clean, ToCorrect, Redo, BackToBody, Ask };

// What the particle in a mark looks like; asked on few marks of a car.
enum class ParticleLook : std::uint8_t {
  WhiteFiber,
  ColoredFiber,
  HardGrain,
  GelOrSeed,
  DryOverspray,
  Insect,
};

// How the work on a mark ended. One that came back is open again; a burn-through is for good.
enum class MarkEnd : std::uint8_t { Gone, CameBack, BurnThrough };

// What is looked for on edges and jambs.
constexpr bool is_edge_find(DefectKind kind) {
  return kind == DefectKind::TapeLine || kind == DefectKind::TapeBleed ||
         kind == DefectKind::PrimerShowing || kind == DefectKind::OversprayPastMasking;
}

inline constexpr int smallest_size = 1;  // 1 to 4, as against the marks on the size strip
inline constexpr int largest_size = 4;

}  // namespace jambline::job

template <>
inline constexpr auto jambline::enum_words<jambline::job::DefectKind> =
    std::to_array<std::string_view>({"nib",
                                     "run or sag",
                                     "run in base",
                                     "fisheye",
                                     "crater",
                                     "solvent pop",
                                     "pinhole",
                                     "orange peel",
                                     "dry spray",
                                     "mottle",
                                     "overspray on finish",
                                     "overspray past masking",
                                     "tape line",
                                     "tape bleed",
                                     "primer showing",
                                     "sanding scratch",
                                     "scratch swelling",
                                     "die-back",
                                     "haze",
                                     "burn-through",
                                     "white blush",
                                     "wrinkle",
                                     "soft film",
                                     "handling scratch",
                                     "color mismatch",
                                     "adhesion loss"});
template <>
inline constexpr auto jambline::enum_words<jambline::job::Layer> =
    std::to_array<std::string_view>({"not said", "on top", "in clear", "under clear"});
template <>
inline constexpr auto jambline::enum_words<jambline::job::DirtClass> =
    std::to_array<std::string_view>({"none", "10 to 20", "20 to 50", "over 50"});
template <>
inline constexpr auto jambline::enum_words<jambline::job::Verdict> =
    std::to_array<std::string_view>({"not looked at", "clean", "to correct", "redo", "back to body",
                                     "ask"});
template <>
inline constexpr auto jambline::enum_words<jambline::job::ParticleLook> =
    std::to_array<std::string_view>({"white fiber", "colored fiber", "hard grain", "gel or seed",
                                     "dry overspray", "insect"});
template <>
inline constexpr auto jambline::enum_words<jambline::job::MarkEnd> =
    std::to_array<std::string_view>({"gone", "came back", "burn-through"});
