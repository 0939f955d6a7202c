#include "screens/visit_words.h"

#include <QCoreApplication>
#include <array>

namespace jambline::screens {

namespace {
constexpr auto work_kind_words = std::to_array<const char*>(
    {QT_TRANSLATE_NOOP("words", "first time"), QT_TRANSLATE_NOOP("words", "supplement"),
     QT_TRANSLATE_NOOP("words", "redo"), QT_TRANSLATE_NOOP("words", "comeback")});

constexpr auto approval_words = std::to_array<const char*>(
    {QT_TRANSLATE_NOOP("words", "not needed"), QT_TRANSLATE_NOOP("words", "asked"),
     QT_TRANSLATE_NOOP("words", "given"), QT_TRANSLATE_NOOP("words", "refused")});

constexpr auto wait_words = std::to_array<const char*>(
    {QT_TRANSLATE_NOOP("words", "a part"), QT_TRANSLATE_NOOP("words", "cure"),
     QT_TRANSLATE_NOOP("words", "the booth"), QT_TRANSLATE_NOOP("words", "approval"),
     QT_TRANSLATE_NOOP("words", "work outside")});

constexpr auto part_state_words = std::to_array<const char*>(
    {QT_TRANSLATE_NOOP("words", "ordered"), QT_TRANSLATE_NOOP("words", "arrived"),
     QT_TRANSLATE_NOOP("words", "wrong or damaged"), QT_TRANSLATE_NOOP("words", "not needed")});

constexpr auto sublet_kind_words = std::to_array<const char*>(
    {QT_TRANSLATE_NOOP("words", "glass"), QT_TRANSLATE_NOOP("words", "calibration"),
     QT_TRANSLATE_NOOP("words", "alignment"), QT_TRANSLATE_NOOP("words", "other")});

constexpr auto sublet_state_words = std::to_array<const char*>(
    {QT_TRANSLATE_NOOP("words", "planned"), QT_TRANSLATE_NOOP("words", "out"),
     QT_TRANSLATE_NOOP("words", "back")});

constexpr auto step_words =
    std::to_array<const char*>({QT_TRANSLATE_NOOP("words", "trial fit"),
                                QT_TRANSLATE_NOOP("words", "base color"),
                                QT_TRANSLATE_NOOP("words", "bonding flange ready"),
                                QT_TRANSLATE_NOOP("words", "glass set"),
                                QT_TRANSLATE_NOOP("words", "seam sealer and last bake"),
                                QT_TRANSLATE_NOOP("words", "cavity wax"),
                                QT_TRANSLATE_NOOP("words", "trim and liner panels"),
                                QT_TRANSLATE_NOOP("words", "handle from"),
                                QT_TRANSLATE_NOOP("words", "hung and fitted"),
                                QT_TRANSLATE_NOOP("words", "parts compounded"),
                                QT_TRANSLATE_NOOP("words", "mounted to the car"),
                                QT_TRANSLATE_NOOP("words", "compounded seams washed"),
                                QT_TRANSLATE_NOOP("words", "weatherstrip, trim, lamps"),
                                QT_TRANSLATE_NOOP("words", "lamps and moldings polished"),
                                QT_TRANSLATE_NOOP("words", "lamps and moldings installed"),
                                QT_TRANSLATE_NOOP("words", "weatherstrip seated, drain free"),
                                QT_TRANSLATE_NOOP("words", "panel closed on it"),
                                QT_TRANSLATE_NOOP("words", "rear door set to the quarter"),
                                QT_TRANSLATE_NOOP("words", "front door set to the rear door"),
                                QT_TRANSLATE_NOOP("words", "fender set"),
                                QT_TRANSLATE_NOOP("words", "hood set"),
                                QT_TRANSLATE_NOOP("words", "bumper cover, headlamps, grille"),
                                QT_TRANSLATE_NOOP("words", "door glass and vapor barrier"),
                                QT_TRANSLATE_NOOP("words", "door panel"),
                                QT_TRANSLATE_NOOP("words", "hinges fixed"),
                                QT_TRANSLATE_NOOP("words", "striker and latch"),
                                QT_TRANSLATE_NOOP("words", "rear lid set"),
                                QT_TRANSLATE_NOOP("words", "tail lamps, rear bumper"),
                                QT_TRANSLATE_NOOP("words", "moldings, cowl, pillar trim"),
                                QT_TRANSLATE_NOOP("words", "drive-away time over"),
                                QT_TRANSLATE_NOOP("words", "moved by driving"),
                                QT_TRANSLATE_NOOP("words", "adhesive may be handled"),
                                QT_TRANSLATE_NOOP("words", "clamps released"),
                                QT_TRANSLATE_NOOP("words", "adhesive at full strength"),
                                QT_TRANSLATE_NOOP("words", "loaded or driven"),
                                QT_TRANSLATE_NOOP("words", "battery and restraints by procedure"),
                                QT_TRANSLATE_NOOP("words", "ignition on"),
                                QT_TRANSLATE_NOOP("words", "bumper and radar brackets final"),
                                QT_TRANSLATE_NOOP("words", "calibration"),
                                QT_TRANSLATE_NOOP("words", "tires and alignment"),
                                QT_TRANSLATE_NOOP("words", "lamps aimed"),
                                QT_TRANSLATE_NOOP("words", "latch and secondary catch checked"),
                                QT_TRANSLATE_NOOP("words", "road test"),
                                QT_TRANSLATE_NOOP("words", "scan clear"),
                                QT_TRANSLATE_NOOP("words", "delivery"),
                                QT_TRANSLATE_NOOP("words", "film inside its window"),
                                QT_TRANSLATE_NOOP("words", "last polish"),
                                QT_TRANSLATE_NOOP("words", "final wash"),
                                QT_TRANSLATE_NOOP("words", "film may be washed")});

constexpr auto rule_kind_words =
    std::to_array<const char*>({QT_TRANSLATE_NOOP("words", "shown only"),
                                QT_TRANSLATE_NOOP("words", "needs a reason to break"),
                                QT_TRANSLATE_NOOP("words", "holds until its clock is over"),
                                QT_TRANSLATE_NOOP("words", "no override")});

constexpr auto rule_reason_words = std::to_array<const char*>(
    {QT_TRANSLATE_NOOP("words", "carmaker says so"), QT_TRANSLATE_NOOP("words", "no other way"),
     QT_TRANSLATE_NOOP("words", "done elsewhere"), QT_TRANSLATE_NOOP("words", "manager decided")});

constexpr auto fit_round_words = std::to_array<const char*>(
    {QT_TRANSLATE_NOOP("words", "trial fit"), QT_TRANSLATE_NOOP("words", "after hanging")});

constexpr auto signed_for_words = std::to_array<const char*>(
    {QT_TRANSLATE_NOOP("words", "check-in"), QT_TRANSLATE_NOOP("words", "delivery")});

template <class E, std::size_t N>
QString shown(E value, const std::array<const char*, N>& words) {
  static_assert(N == enum_words<E>.size());
  const auto index = static_cast<std::size_t>(value);
  return index < N ? QCoreApplication::translate("words", words[index]) : QString();
}
}  // namespace

QString words_of(job::WorkKind work_kind_word) {
  return shown(work_kind_word, work_kind_words);
}
QString words_of(job::Approval approval_word) {
  return shown(approval_word, approval_words);
}
QString words_of(job::WaitReason wait_word) {
  return shown(wait_word, wait_words);
}
QString words_of(job::PartState part_state_word) {
  return shown(part_state_word, part_state_words);
}
QString words_of(job::SubletKind sublet_kind_word) {
  return shown(sublet_kind_word, sublet_kind_words);
}
QString words_of(job::SubletState sublet_state_word) {
  return shown(sublet_state_word, sublet_state_words);
}
QString words_of(job::Step step_word) {
  return shown(step_word, step_words);
}
QString words_of(job::RuleKind rule_kind_word) {
  return shown(rule_kind_word, rule_kind_words);
}
QString words_of(job::RuleReason rule_reason_word) {
  return shown(rule_reason_word, rule_reason_words);
}
QString words_of(job::FitRound fit_round_word) {
  return shown(fit_round_word, fit_round_words);
}
QString words_of(job::SignedFor signed_for_word) {
  return shown(signed_for_word, signed_for_words);
}

}  // namespace jambline::screens
