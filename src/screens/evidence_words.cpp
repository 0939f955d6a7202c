#include "screens/evidence_words.h"

#include <QCoreApplication>
#include <QLocale>
#include <algorithm>
#include <array>
#include <cmath>

#include "folds/dirt_of_car.h"

namespace jambline::screens {

namespace {
using job::DirtCause;
using trade::DirtSign;

struct EvidenceLine {
  const char* title;
  const char* points_to;
  const char* look_at;
};

constexpr auto lines = std::to_array<EvidenceLine>({
    {QT_TRANSLATE_NOOP("evidence", "marks close together"),
     QT_TRANSLATE_NOOP("evidence", "one thing dropped or a burst: hose, cup, cap or sleeve"),
     QT_TRANSLATE_NOOP("evidence", "hose skin, cup vent, suit cuffs, gun cap")},
    {QT_TRANSLATE_NOOP("evidence", "tight cluster"),
     QT_TRANSLATE_NOOP("evidence", "one thing dropped or a burst: hose, cup, cap or sleeve"),
     QT_TRANSLATE_NOOP("evidence", "hose skin, cup vent, suit cuffs, gun cap")},
    {QT_TRANSLATE_NOOP("evidence", "along masked edges"),
     QT_TRANSLATE_NOOP("evidence", "paper fiber, loose tape, or dust held on the masking"),
     QT_TRANSLATE_NOOP("evidence", "fresh paper, wiped masks, tape turned in, static")},
    {QT_TRANSLATE_NOOP("evidence", "along gaps and seams"),
     QT_TRANSLATE_NOOP("evidence", "dirt blown out of gaps by gun air"),
     QT_TRANSLATE_NOOP("evidence", "blow-off before the booth, vent bag, tape of the gap")},
    {QT_TRANSLATE_NOOP("evidence", "where you lean over"),
     QT_TRANSLATE_NOOP("evidence", "suit or hood, sleeve, or the hose over the panel"),
     QT_TRANSLATE_NOOP("evidence", "lint-free suit, hose over the shoulder, hose tacked")},
    {QT_TRANSLATE_NOOP("evidence", "more on flat panels than usual here"),
     QT_TRANSLATE_NOOP("evidence", "dirt that fell: ceiling filters, lamps, track, low air speed"),
     QT_TRANSLATE_NOOP("evidence", "filters torn or old, diffuser, light seals, booth wash")},
    {QT_TRANSLATE_NOOP("evidence", "more on plastic"), QT_TRANSLATE_NOOP("evidence", "static"),
     QT_TRANSLATE_NOOP("evidence", "ionized or wet wipe, ground, no dry wiping")},
    {QT_TRANSLATE_NOOP("evidence", "more on the first panels"),
     QT_TRANSLATE_NOOP("evidence", "a dirty hose or gun at the start, or a stirred-up floor"),
     QT_TRANSLATE_NOOP("evidence", "gun purged away from the car, walk-in shoes")},
    {QT_TRANSLATE_NOOP("evidence", "more on the last panels"),
     QT_TRANSLATE_NOOP("evidence", "suit, hose or floor, stirred up by a long stay"),
     QT_TRANSLATE_NOOP("evidence", "clean floor, a wait for the air, a second tack")},
    {QT_TRANSLATE_NOOP("evidence", "tight cluster at a gap"),
     QT_TRANSLATE_NOOP("evidence", "dirt blown out of a gap by gun air"),
     QT_TRANSLATE_NOOP("evidence", "blow-off before the booth, vent bag, tape of the gap")},
    {QT_TRANSLATE_NOOP("evidence", "white fiber"),
     QT_TRANSLATE_NOOP("evidence", "suit, wipe or paper"),
     QT_TRANSLATE_NOOP("evidence", "suits and wipes, to wash or replace")},
    {QT_TRANSLATE_NOOP("evidence", "colored fiber"),
     QT_TRANSLATE_NOOP("evidence", "seat, carpet, jacket or towel"),
     QT_TRANSLATE_NOOP("evidence", "the cover of the interior")},
    {QT_TRANSLATE_NOOP("evidence", "hard grain"),
     QT_TRANSLATE_NOOP("evidence", "prep dust, belt or filler"),
     QT_TRANSLATE_NOOP("evidence", "blow-off, room by room")},
    {QT_TRANSLATE_NOOP("evidence", "gel or seed"),
     QT_TRANSLATE_NOOP("evidence", "moist activator, skin in the can, or mixed late"),
     QT_TRANSLATE_NOOP("evidence", "the can, and a strainer of 125 to 190 µm")},
    {QT_TRANSLATE_NOOP("evidence", "dry overspray"),
     QT_TRANSLATE_NOOP("evidence", "spray that fell back"),
     QT_TRANSLATE_NOOP("evidence", "air balance, order of panels, gun distance")},
    {QT_TRANSLATE_NOOP("evidence", "insect"),
     QT_TRANSLATE_NOOP("evidence", "an open door or a light that draws them"),
     QT_TRANSLATE_NOOP("evidence", "doors shut before spraying, lights outside")},
    {QT_TRANSLATE_NOOP("evidence", "on top of the clear"),
     QT_TRANSLATE_NOOP("evidence", "dirt that landed late or in the bake"),
     QT_TRANSLATE_NOOP("evidence", "first minutes of the bake, bake duct, floor, filter dust")},
    {QT_TRANSLATE_NOOP("evidence", "under the clear"),
     QT_TRANSLATE_NOOP("evidence", "dirt before the clear: base flash, tack residue"),
     QT_TRANSLATE_NOOP("evidence", "tack cloth, flash room")},
    {QT_TRANSLATE_NOOP("evidence", "all over, flat and upright"),
     QT_TRANSLATE_NOOP("evidence", "material or air: strainer, old activator, cup, line"),
     QT_TRANSLATE_NOOP("evidence",
                       "a spray-out on card through a new strainer, the air separator")},
    {QT_TRANSLATE_NOOP("evidence", "all over, only on plastic"),
     QT_TRANSLATE_NOOP("evidence", "static"),
     QT_TRANSLATE_NOOP("evidence", "ionized or wet wipe, ground, no dry wiping")},
});
static_assert(lines.size() == enum_words<Clue>.size());

constexpr auto icons = std::to_array<const char*>({"hose", "suit", "gun", "tape", "seam", "falls",
                                                   "floor", "airline", "can", "static", "dust",
                                                   "cloth", "bake", "fiber", "insect", "chance"});
static_assert(icons.size() == enum_words<DirtCause>.size());

QString said(const char* words) {
  return QCoreApplication::translate("evidence", words);
}

QString count(double number) {
  return QLocale::c().toString(number, 'f', number < 10 ? 1 : 0);
}
}  // namespace

ClueWords words_of(Clue clue) {
  const EvidenceLine& line = lines[static_cast<std::size_t>(clue)];
  return {said(line.title), said(line.points_to), said(line.look_at)};
}

const std::vector<DirtCause>& causes_of(Clue clue) {
  using enum DirtCause;
  static const std::vector<DirtCause> table[] = {
      {Hose, GunOrCup, Suit},       // spacing
      {Hose, GunOrCup, Suit},       // cluster
      {Masking},                    // masked edge
      {SeamsAndGaps},               // seam
      {Suit, Hose},                 // reach strip
      {FellFromAbove},              // flat over upright
      {Static},                     // plastic over metal
      {GunOrCup, Hose, Floor},      // first panels
      {Suit, Hose, Floor},          // last panels
      {SeamsAndGaps},               // cluster at gap
      {Suit, TackOrWipe, Masking},  // white fiber
      {InteriorFiber},              // colored fiber
      {PrepDust},                   // hard grain
      {Material},                   // gel or seed
      {},                           // dry overspray: no cause of its own
      {Insect},                     // insect
      {BakeAir, Floor},             // on top
      {TackOrWipe},                 // under clear
      {Material, AirLine},          // all over
      {Static},                     // all over plastic
  };
  static_assert(std::size(table) == enum_words<Clue>.size());
  return table[static_cast<std::size_t>(clue)];
}

Clue clue_of(const trade::DirtEvidence& evidence, const trade::DirtPattern& asked) {
  const auto plain = static_cast<Clue>(evidence.sign);
  static_assert(static_cast<int>(Clue::LastPanels) == static_cast<int>(DirtSign::LastPanels));
  if (evidence.sign != DirtSign::Cluster || !evidence.cluster) return plain;
  for (const auto& panel : asked.panels)
    if (panel.panel == evidence.panel &&
        trade::distance_to_lines_mm(evidence.cluster->center, panel.seams) <=
            evidence.cluster->radius_mm)
      return Clue::ClusterAtGap;
  return plain;
}

std::vector<SeenClue> clues_of(const folds::CarView& car) {
  std::vector<int> looks(enum_words<job::ParticleLook>.size());
  int looks_said = 0, on_top = 0, under = 0, layers_said = 0;
  bool flat = false, upright = false, plastic = false, metal = false;
  const auto& body = job::pattern(car.body);
  for (const auto& panel : car.panels) {
    const auto* drawn = body.find(panel.plan.panel);
    if (drawn && panel.dirt != job::DirtClass::None) {
      flat = flat || drawn->shape.attitude == trade::Attitude::Flat;
      upright = upright || drawn->shape.attitude == trade::Attitude::Upright;
      const bool of_plastic = panel.plan.substrate == trade::Substrate::Plastic;
      plastic = plastic || of_plastic;
      metal = metal || !of_plastic;
    }
    for (const auto& mark : panel.marks) {
      if (!folds::is_dirt(mark)) continue;
      if (mark.look) ++looks_said, ++looks[static_cast<std::size_t>(*mark.look)];
      if (mark.layer != job::Layer::NotSaid) ++layers_said;
      on_top += mark.layer == job::Layer::OnTop ? 1 : 0;
      under += mark.layer == job::Layer::UnderClear ? 1 : 0;
    }
  }
  std::vector<SeenClue> out;
  for (std::size_t i = 0; i < looks.size(); ++i)
    if (looks[i] > 0)
      out.push_back({static_cast<Clue>(static_cast<std::size_t>(Clue::WhiteFiber) + i), looks[i],
                     looks_said});
  if (on_top > 0) out.push_back({Clue::OnTop, on_top, layers_said});
  if (under > 0) out.push_back({Clue::UnderClear, under, layers_said});
  std::stable_sort(out.begin(), out.end(),
                   [](const auto& a, const auto& b) { return a.marks > b.marks; });
  if (flat && upright)
    out.insert(out.begin(), {Clue::AllOver, 0, 0});
  else if (plastic && !metal)
    out.insert(out.begin(), {Clue::AllOverPlastic, 0, 0});
  return out;
}

QString note_of(const SeenClue& seen) {
  if (seen.marks == 0)
    return said(QT_TRANSLATE_NOOP("evidence", "counted as a class, not as places"));
  return said(QT_TRANSLATE_NOOP("evidence", "%1 of %2 marks that somebody described"))
      .arg(seen.marks)
      .arg(seen.asked);
}

QString note_of(const trade::DirtEvidence& one, int marks_on_panel, Units units) {
  const QString seen = count(std::round(one.seen)).remove(QStringLiteral(".0"));
  switch (one.sign) {
    case DirtSign::Spacing:
      return said(QT_TRANSLATE_NOOP("evidence", "next mark %1 away; by chance %2"))
          .arg(length_words(one.seen, units), length_words(one.expected, units));
    case DirtSign::Cluster:
      return said(QT_TRANSLATE_NOOP("evidence", "%1 of %2 within %3 of one place; by chance %4"))
          .arg(seen)
          .arg(marks_on_panel)
          .arg(length_words(one.cluster ? one.cluster->radius_mm : 0, units), count(one.expected));
    case DirtSign::MaskedEdge:
    case DirtSign::Seam:
      return said(QT_TRANSLATE_NOOP("evidence", "%1 of %2 within %3 of it; by chance %4"))
          .arg(seen)
          .arg(marks_on_panel)
          .arg(length_words(trade::DirtPattern{}.edge_band_mm, units), count(one.expected));
    case DirtSign::ReachStrip:
      return said(QT_TRANSLATE_NOOP("evidence", "%1 of %2 in the strip; by chance %3"))
          .arg(seen)
          .arg(marks_on_panel)
          .arg(count(one.expected));
    case DirtSign::FlatOverUpright:
      return said(QT_TRANSLATE_NOOP("evidence", "%1 on flat panels; usual here %2"))
          .arg(seen, count(one.expected));
    case DirtSign::PlasticOverMetal:
      return said(QT_TRANSLATE_NOOP("evidence", "%1 on plastic; by chance %2"))
          .arg(seen, count(one.expected));
    case DirtSign::FirstPanels:
    case DirtSign::LastPanels:
      break;
  }
  return said(QT_TRANSLATE_NOOP("evidence", "%1 on these panels; by chance %2"))
      .arg(seen, count(one.expected));
}

trade::Basis basis_of(const trade::DirtEvidence& one, const trade::DirtPatternResult& result) {
  trade::Basis out;
  const char* source = "exact binomial";
  const bool drawn = one.sign == DirtSign::Spacing || one.sign == DirtSign::Cluster;
  switch (one.sign) {
    case DirtSign::Spacing:
      source = "Clark and Evans, 1954; drawn patterns";
      out.method =
          "The mean way to the next mark, against patterns drawn at random on the panel's "
          "own outline.";
      break;
    case DirtSign::Cluster:
      source = "Kulldorff, 1997; drawn patterns";
      out.method =
          "The fullest circle around a mark, against patterns drawn at random on the "
          "panel's own outline.";
      break;
    case DirtSign::FlatOverUpright:
      source = "Fisher, 1935, exact test";
      out.method = "Flat against upright panels, held against this shop's own cars.";
      break;
    case DirtSign::PlasticOverMetal:
    case DirtSign::FirstPanels:
    case DirtSign::LastPanels:
      source = "exact sum of binomials";
      out.method =
          "Marks against the share of area, flat panels among flat and upright among "
          "upright.";
      break;
    default:
      out.method = "Marks in the band against its share of the panel's area.";
  }
  const std::string unit = one.sign == DirtSign::Spacing ? "mm" : "";
  out.term("seen", one.seen, unit, trade::measured);
  out.term("expected by chance", one.expected, unit, trade::computed);
  out.term("chance of this sign alone", 100 * one.chance, "%", source);
  out.term("chance over all signs of the car", 100 * one.holm_chance, "%", "Holm, 1979");
  const auto copy = [&](std::string_view name) {
    if (const auto* term = result.basis.find(name)) out.terms.push_back(*term);
  };
  copy("signs looked at");
  copy("level");
  if (drawn) {
    copy("patterns drawn");
    out.seed = result.basis.seed;
  }
  if (one.cluster) out.term("radius of the circle", one.cluster->radius_mm, "mm", trade::computed);
  if (one.sign == DirtSign::MaskedEdge || one.sign == DirtSign::Seam) copy("edge band");
  if (!one.panel.empty()) copy("area of " + one.panel);
  if (one.sign == DirtSign::FlatOverUpright)
    for (const char* name : {"this shop's marks on flat panels", "this shop's flat area",
                             "this shop's marks on upright panels", "this shop's upright area"})
      copy(name);
  return out;
}

double line_at(double chance) {
  return std::clamp(std::log(chance) / std::log(trade::dirt_level) / 2, 0.0, 1.0);
}

QString icon_of(DirtCause cause) {
  return QString::fromLatin1(icons[static_cast<std::size_t>(cause)]);
}

}  // namespace jambline::screens
