#include "screens/words.h"

#include <QCoreApplication>
#include <array>
#include <utility>

namespace jambline::screens {

namespace {
constexpr auto panel_words =
    std::to_array<const char*>({QT_TRANSLATE_NOOP("words", "hood"),
                                QT_TRANSLATE_NOOP("words", "left fender"),
                                QT_TRANSLATE_NOOP("words", "right fender"),
                                QT_TRANSLATE_NOOP("words", "left front door"),
                                QT_TRANSLATE_NOOP("words", "right front door"),
                                QT_TRANSLATE_NOOP("words", "left rear door"),
                                QT_TRANSLATE_NOOP("words", "right rear door"),
                                QT_TRANSLATE_NOOP("words", "left quarter panel"),
                                QT_TRANSLATE_NOOP("words", "right quarter panel"),
                                QT_TRANSLATE_NOOP("words", "roof"),
                                QT_TRANSLATE_NOOP("words", "decklid"),
                                QT_TRANSLATE_NOOP("words", "hatch"),
                                QT_TRANSLATE_NOOP("words", "liftgate"),
                                QT_TRANSLATE_NOOP("words", "tailgate"),
                                QT_TRANSLATE_NOOP("words", "front bumper cover"),
                                QT_TRANSLATE_NOOP("words", "rear bumper cover"),
                                QT_TRANSLATE_NOOP("words", "left rocker"),
                                QT_TRANSLATE_NOOP("words", "right rocker"),
                                QT_TRANSLATE_NOOP("words", "left mirror cap"),
                                QT_TRANSLATE_NOOP("words", "right mirror cap"),
                                QT_TRANSLATE_NOOP("words", "fuel door"),
                                QT_TRANSLATE_NOOP("words", "left cab corner"),
                                QT_TRANSLATE_NOOP("words", "right cab corner"),
                                QT_TRANSLATE_NOOP("words", "left bed side"),
                                QT_TRANSLATE_NOOP("words", "right bed side"),
                                QT_TRANSLATE_NOOP("words", "sliding door"),
                                QT_TRANSLATE_NOOP("words", "left side panel"),
                                QT_TRANSLATE_NOOP("words", "right side panel"),
                                QT_TRANSLATE_NOOP("words", "left cargo door"),
                                QT_TRANSLATE_NOOP("words", "right cargo door")});

constexpr auto body_words = std::to_array<const char*>(
    {QT_TRANSLATE_NOOP("words", "two-door hatchback"),
     QT_TRANSLATE_NOOP("words", "four-door sedan"), QT_TRANSLATE_NOOP("words", "SUV or wagon"),
     QT_TRANSLATE_NOOP("words", "crew-cab pickup"), QT_TRANSLATE_NOOP("words", "cargo van")});

constexpr auto drive_words = std::to_array<const char*>(
    {QT_TRANSLATE_NOOP("words", "combustion"), QT_TRANSLATE_NOOP("words", "hybrid"),
     QT_TRANSLATE_NOOP("words", "plug-in"), QT_TRANSLATE_NOOP("words", "electric"),
     QT_TRANSLATE_NOOP("words", "fuel cell or gas")});

constexpr auto finish_words = std::to_array<const char*>(
    {QT_TRANSLATE_NOOP("words", "gloss base and clear"), QT_TRANSLATE_NOOP("words", "tri-coat"),
     QT_TRANSLATE_NOOP("words", "single-stage solid"),
     QT_TRANSLATE_NOOP("words", "single-stage metallic"), QT_TRANSLATE_NOOP("words", "matte"),
     QT_TRANSLATE_NOOP("words", "textured"), QT_TRANSLATE_NOOP("words", "film")});

constexpr auto treatment_words = std::to_array<const char*>(
    {QT_TRANSLATE_NOOP("words", "full"), QT_TRANSLATE_NOOP("words", "color blend, full clear"),
     QT_TRANSLATE_NOOP("words", "clear only"), QT_TRANSLATE_NOOP("words", "spot with clear fade"),
     QT_TRANSLATE_NOOP("words", "edge or jamb only"),
     QT_TRANSLATE_NOOP("words", "not refinished")});

constexpr auto substrate_words = std::to_array<const char*>(
    {QT_TRANSLATE_NOOP("words", "steel"), QT_TRANSLATE_NOOP("words", "aluminum"),
     QT_TRANSLATE_NOOP("words", "plastic"), QT_TRANSLATE_NOOP("words", "carbon")});

constexpr auto stage_words =
    std::to_array<const char*>({QT_TRANSLATE_NOOP("words", "check-in"),
                                QT_TRANSLATE_NOOP("words", "teardown"),
                                QT_TRANSLATE_NOOP("words", "body and trial fit"),
                                QT_TRANSLATE_NOOP("words", "corrosion work"),
                                QT_TRANSLATE_NOOP("words", "prep"),
                                QT_TRANSLATE_NOOP("words", "color"),
                                QT_TRANSLATE_NOOP("words", "mask"),
                                QT_TRANSLATE_NOOP("words", "before the gun"),
                                QT_TRANSLATE_NOOP("words", "spray"),
                                QT_TRANSLATE_NOOP("words", "clear, flash, bake"),
                                QT_TRANSLATE_NOOP("words", "unmask"),
                                QT_TRANSLATE_NOOP("words", "inspect"),
                                QT_TRANSLATE_NOOP("words", "correct"),
                                QT_TRANSLATE_NOOP("words", "edges and jambs"),
                                QT_TRANSLATE_NOOP("words", "cavity wax"),
                                QT_TRANSLATE_NOOP("words", "assemble"),
                                QT_TRANSLATE_NOOP("words", "glass"),
                                QT_TRANSLATE_NOOP("words", "fit"),
                                QT_TRANSLATE_NOOP("words", "sensors and scan"),
                                QT_TRANSLATE_NOOP("words", "last polish"),
                                QT_TRANSLATE_NOOP("words", "wash"),
                                QT_TRANSLATE_NOOP("words", "walk-around"),
                                QT_TRANSLATE_NOOP("words", "comeback")});

constexpr auto defect_words =
    std::to_array<const char*>({QT_TRANSLATE_NOOP("words", "nib"),
                                QT_TRANSLATE_NOOP("words", "run or sag"),
                                QT_TRANSLATE_NOOP("words", "run in base"),
                                QT_TRANSLATE_NOOP("words", "fisheye"),
                                QT_TRANSLATE_NOOP("words", "crater"),
                                QT_TRANSLATE_NOOP("words", "solvent pop"),
                                QT_TRANSLATE_NOOP("words", "pinhole"),
                                QT_TRANSLATE_NOOP("words", "orange peel"),
                                QT_TRANSLATE_NOOP("words", "dry spray"),
                                QT_TRANSLATE_NOOP("words", "mottle"),
                                QT_TRANSLATE_NOOP("words", "overspray on finish"),
                                QT_TRANSLATE_NOOP("words", "overspray past masking"),
                                QT_TRANSLATE_NOOP("words", "tape line"),
                                QT_TRANSLATE_NOOP("words", "tape bleed"),
                                QT_TRANSLATE_NOOP("words", "primer showing"),
                                QT_TRANSLATE_NOOP("words", "sanding scratch"),
                                QT_TRANSLATE_NOOP("words", "scratch swelling"),
                                QT_TRANSLATE_NOOP("words", "die-back"),
                                QT_TRANSLATE_NOOP("words", "haze"),
                                QT_TRANSLATE_NOOP("words", "burn-through"),
                                QT_TRANSLATE_NOOP("words", "white blush"),
                                QT_TRANSLATE_NOOP("words", "wrinkle"),
                                QT_TRANSLATE_NOOP("words", "soft film"),
                                QT_TRANSLATE_NOOP("words", "handling scratch"),
                                QT_TRANSLATE_NOOP("words", "color mismatch"),
                                QT_TRANSLATE_NOOP("words", "adhesion loss")});

constexpr auto layer_words = std::to_array<const char*>(
    {QT_TRANSLATE_NOOP("words", "not said"), QT_TRANSLATE_NOOP("words", "on top"),
     QT_TRANSLATE_NOOP("words", "in clear"), QT_TRANSLATE_NOOP("words", "under clear")});

constexpr auto dirt_words = std::to_array<const char*>(
    {QT_TRANSLATE_NOOP("words", "none"), QT_TRANSLATE_NOOP("words", "10 to 20"),
     QT_TRANSLATE_NOOP("words", "20 to 50"), QT_TRANSLATE_NOOP("words", "over 50")});

constexpr auto verdict_words = std::to_array<const char*>(
    {QT_TRANSLATE_NOOP("words", "not looked at"), QT_TRANSLATE_NOOP("words", "clean"),
     QT_TRANSLATE_NOOP("words", "to correct"), QT_TRANSLATE_NOOP("words", "redo"),
     QT_TRANSLATE_NOOP("words", "back to body"), QT_TRANSLATE_NOOP("words", "ask")});

constexpr auto role_words = std::to_array<const char*>(
    {QT_TRANSLATE_NOOP("words", "painter"), QT_TRANSLATE_NOOP("words", "body technician"),
     QT_TRANSLATE_NOOP("words", "glass tech"), QT_TRANSLATE_NOOP("words", "detailer"),
     QT_TRANSLATE_NOOP("words", "helper"), QT_TRANSLATE_NOOP("words", "manager")});

QString word_tr(const char* words) {
  return QCoreApplication::translate("words", words);
}

// A table has a word for each value of its enum, in the enum's order.
template <class E, std::size_t N>
QString word_from(const std::array<const char*, N>& table, E value) {
  static_assert(N == enum_words<E>.size());
  const auto at = static_cast<std::size_t>(value);
  return at < N ? word_tr(table[at]) : QString();
}
}  // namespace

QString words_of(job::Panel panel, job::BodyShape body) {
  if (body == job::BodyShape::TwoDoorHatchback) {
    if (panel == job::Panel::LeftFrontDoor) return word_tr(QT_TRANSLATE_NOOP("words", "left door"));
    if (panel == job::Panel::RightFrontDoor)
      return word_tr(QT_TRANSLATE_NOOP("words", "right door"));
  }
  return word_from(panel_words, panel);
}

QString words_of(job::BodyShape body) {
  return word_from(body_words, body);
}
QString words_of(job::Drive drive) {
  return word_from(drive_words, drive);
}
QString words_of(job::Finish finish) {
  return word_from(finish_words, finish);
}
QString words_of(job::Treatment treatment) {
  return word_from(treatment_words, treatment);
}
QString words_of(trade::Substrate substrate) {
  return word_from(substrate_words, substrate);
}
QString words_of(job::Stage stage) {
  return word_from(stage_words, stage);
}
QString words_of(job::DefectKind kind) {
  return word_from(defect_words, kind);
}
QString words_of(job::Layer layer) {
  return word_from(layer_words, layer);
}
QString words_of(job::DirtClass dirt) {
  return word_from(dirt_words, dirt);
}
QString words_of(job::Verdict verdict) {
  return word_from(verdict_words, verdict);
}
QString words_of(job::Role role) {
  return word_from(role_words, role);
}

QString sentence(QString words) {
  if (!words.isEmpty()) words[0] = words[0].toUpper();
  return words;
}

}  // namespace jambline::screens
