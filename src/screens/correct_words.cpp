#include "screens/correct_words.h"

#include <QCoreApplication>
#include <QStringList>
#include <array>

namespace jambline::screens {

namespace {
constexpr auto looked_words = std::to_array<const char*>(
    {QT_TRANSLATE_NOOP("words", "white fiber"), QT_TRANSLATE_NOOP("words", "colored fiber"),
     QT_TRANSLATE_NOOP("words", "hard grain"), QT_TRANSLATE_NOOP("words", "gel or seed"),
     QT_TRANSLATE_NOOP("words", "dry overspray"), QT_TRANSLATE_NOOP("words", "insect")});

constexpr auto end_words = std::to_array<const char*>({QT_TRANSLATE_NOOP("words", "gone"),
                                                       QT_TRANSLATE_NOOP("words", "came back"),
                                                       QT_TRANSLATE_NOOP("words", "burn-through")});

constexpr auto booth_kind_words = std::to_array<const char*>(
    {QT_TRANSLATE_NOOP("words", "downdraft"), QT_TRANSLATE_NOOP("words", "semi-downdraft"),
     QT_TRANSLATE_NOOP("words", "side draft"), QT_TRANSLATE_NOOP("words", "cross draft"),
     QT_TRANSLATE_NOOP("words", "prep deck"), QT_TRANSLATE_NOOP("words", "mixing room")});

constexpr auto booth_event_words = std::to_array<const char*>(
    {QT_TRANSLATE_NOOP("words", "filters changed"), QT_TRANSLATE_NOOP("words", "new hose"),
     QT_TRANSLATE_NOOP("words", "new suits"), QT_TRANSLATE_NOOP("words", "airline filter changed"),
     QT_TRANSLATE_NOOP("words", "cleaned")});

constexpr auto cause_words = std::to_array<const char*>(
    {QT_TRANSLATE_NOOP("words", "hose"), QT_TRANSLATE_NOOP("words", "suit or sleeve"),
     QT_TRANSLATE_NOOP("words", "gun or cup"), QT_TRANSLATE_NOOP("words", "masking"),
     QT_TRANSLATE_NOOP("words", "seams and gaps"), QT_TRANSLATE_NOOP("words", "fell from above"),
     QT_TRANSLATE_NOOP("words", "stirred-up floor"), QT_TRANSLATE_NOOP("words", "air line"),
     QT_TRANSLATE_NOOP("words", "material"), QT_TRANSLATE_NOOP("words", "static"),
     QT_TRANSLATE_NOOP("words", "prep dust"), QT_TRANSLATE_NOOP("words", "tack cloth or wipe"),
     QT_TRANSLATE_NOOP("words", "bake air"), QT_TRANSLATE_NOOP("words", "interior fiber"),
     QT_TRANSLATE_NOOP("words", "insect"), QT_TRANSLATE_NOOP("words", "chance")});

constexpr auto cut_item_words =
    std::to_array<const char*>({QT_TRANSLATE_NOOP("words", "eye protection"),
                                QT_TRANSLATE_NOOP("words", "nitrile gloves, snug"),
                                QT_TRANSLATE_NOOP("words", "wet or extracted, mask by the sheet"),
                                QT_TRANSLATE_NOOP("words", "hearing"),
                                QT_TRANSLATE_NOOP("words", "cord dry, ground-fault outlet"),
                                QT_TRANSLATE_NOOP("words", "nothing loose, pad turns off edges"),
                                QT_TRANSLATE_NOOP("words", "panel cool, thumbnail firm"),
                                QT_TRANSLATE_NOOP("words", "finish is not matte"),
                                QT_TRANSLATE_NOOP("words", "trim and sharp edges taped"),
                                QT_TRANSLATE_NOOP("words", "car held, hood or hatch propped"),
                                QT_TRANSLATE_NOOP("words", "vent seams covered"),
                                QT_TRANSLATE_NOOP("words", "breaks from vibration")});

constexpr auto reason_words = std::to_array<const char*>(
    {QT_TRANSLATE_NOOP("words", "none at hand"), QT_TRANSLATE_NOOP("words", "broken"),
     QT_TRANSLATE_NOOP("words", "sheet allows it"), QT_TRANSLATE_NOOP("words", "manager decided")});

constexpr auto when_words = std::to_array<const char*>(
    {QT_TRANSLATE_NOOP("words", "before base"), QT_TRANSLATE_NOOP("words", "before cutting"),
     QT_TRANSLATE_NOOP("words", "after a sequence")});

constexpr auto gauge_words = std::to_array<const char*>(
    {QT_TRANSLATE_NOOP("words", "total"), QT_TRANSLATE_NOOP("words", "clear")});

constexpr auto gauge_unit_words = std::to_array<const char*>(
    {QT_TRANSLATE_NOOP("words", "µm"), QT_TRANSLATE_NOOP("words", "mil")});

constexpr auto round_words = std::to_array<const char*>(
    {QT_TRANSLATE_NOOP("words", "level"), QT_TRANSLATE_NOOP("words", "refine"),
     QT_TRANSLATE_NOOP("words", "compound"), QT_TRANSLATE_NOOP("words", "polish"),
     QT_TRANSLATE_NOOP("words", "finish")});

constexpr auto how_words = std::to_array<const char*>({QT_TRANSLATE_NOOP("words", "as planned"),
                                                       QT_TRANSLATE_NOOP("words", "added"),
                                                       QT_TRANSLATE_NOOP("words", "skipped")});

// A table has a word for each value of its enum, in the enum's order.
template <class E, std::size_t N>
QString look_up(const std::array<const char*, N>& table, E value) {
  static_assert(N == enum_words<E>.size());
  const auto at = static_cast<std::size_t>(value);
  return at < N ? QCoreApplication::translate("words", table[at]) : QString();
}
}  // namespace

QString words_of(job::ParticleLook look) {
  return look_up(looked_words, look);
}
QString words_of(job::MarkEnd end) {
  return look_up(end_words, end);
}
QString words_of(job::BoothKind booth_kind) {
  return look_up(booth_kind_words, booth_kind);
}
QString words_of(job::BoothEvent booth_event) {
  return look_up(booth_event_words, booth_event);
}
QString words_of(job::DirtCause cause) {
  return look_up(cause_words, cause);
}
QString words_of(job::CutItem cut_item) {
  return look_up(cut_item_words, cut_item);
}
QString words_of(job::OverrideReason reason) {
  return look_up(reason_words, reason);
}
QString words_of(job::FilmWhen when) {
  return look_up(when_words, when);
}
QString words_of(job::FilmGauge gauge) {
  return look_up(gauge_words, gauge);
}
QString words_of(job::FilmUnit unit) {
  return look_up(gauge_unit_words, unit);
}
QString words_of(job::Round round) {
  return look_up(round_words, round);
}
QString words_of(job::RoundHow how) {
  return look_up(how_words, how);
}

QString readings_words(const std::vector<double>& typed, job::FilmUnit unit) {
  QStringList out;
  for (const double reading : typed) out << QString::number(reading, 'g', 5);
  return out.join(QStringLiteral(", ")) + QChar(' ') + words_of(unit);
}

}  // namespace jambline::screens
