#include "screens/air_words.h"

#include <QCoreApplication>
#include <array>

namespace jambline::screens {

namespace {
constexpr auto booth_said_words = std::to_array<const char*>(
    {QT_TRANSLATE_NOOP("words", "spraying started"), QT_TRANSLATE_NOOP("words", "gun down"),
     QT_TRANSLATE_NOOP("words", "exhaust on fresh air, doors shut"),
     QT_TRANSLATE_NOOP("words", "fan stopped"), QT_TRANSLATE_NOOP("words", "switched to bake"),
     QT_TRANSLATE_NOOP("words", "door opened"), QT_TRANSLATE_NOOP("words", "clearance over")});

constexpr auto booth_reading_words = std::to_array<const char*>(
    {QT_TRANSLATE_NOOP("words", "air velocity"), QT_TRANSLATE_NOOP("words", "filter pressure"),
     QT_TRANSLATE_NOOP("words", "exhaust"), QT_TRANSLATE_NOOP("words", "smoke test")});

constexpr auto respirator_words = std::to_array<const char*>(
    {QT_TRANSLATE_NOOP("words", "half mask with cartridges"),
     QT_TRANSLATE_NOOP("words", "full face with cartridges"),
     QT_TRANSLATE_NOOP("words", "powered, tight"), QT_TRANSLATE_NOOP("words", "powered, loose"),
     QT_TRANSLATE_NOOP("words", "airline half mask"),
     QT_TRANSLATE_NOOP("words", "airline full face"),
     QT_TRANSLATE_NOOP("words", "supplied-air hood")});

constexpr auto fit_method_words = std::to_array<const char*>(
    {QT_TRANSLATE_NOOP("words", "quantitative"), QT_TRANSLATE_NOOP("words", "qualitative")});

constexpr auto due_date_words =
    std::to_array<const char*>({QT_TRANSLATE_NOOP("words", "health surveillance"),
                                QT_TRANSLATE_NOOP("words", "painter training"),
                                QT_TRANSLATE_NOOP("words", "respirator training")});

constexpr auto gun_item_words =
    std::to_array<const char*>({QT_TRANSLATE_NOOP("words", "the right respirator"),
                                QT_TRANSLATE_NOOP("words", "seal or hood airflow checked now"),
                                QT_TRANSLATE_NOOP("words", "exhaust on, fresh air"),
                                QT_TRANSLATE_NOOP("words", "nobody unprotected inside"),
                                QT_TRANSLATE_NOOP("words", "may spray"),
                                QT_TRANSLATE_NOOP("words", "gloves, suit, eyes"),
                                QT_TRANSLATE_NOOP("words", "fit test in date"),
                                QT_TRANSLATE_NOOP("words", "breathing air in date"),
                                QT_TRANSLATE_NOOP("words", "cartridge within its hours"),
                                QT_TRANSLATE_NOOP("words", "training in date, gun allowed"),
                                QT_TRANSLATE_NOOP("words", "filters in, gauge in range"),
                                QT_TRANSLATE_NOOP("words", "mix room fan, grounded, phones out"),
                                QT_TRANSLATE_NOOP("words", "color approved"),
                                QT_TRANSLATE_NOOP("words", "somebody knows"),
                                QT_TRANSLATE_NOOP("words", "sheets read, eyewash works"),
                                QT_TRANSLATE_NOOP("words", "drive kind known, car grounded"),
                                QT_TRANSLATE_NOOP("words", "air and surface in the window"),
                                QT_TRANSLATE_NOOP("words", "air line drained, hose clean"),
                                QT_TRANSLATE_NOOP("words", "blown off outside, wiped, tacked"),
                                QT_TRANSLATE_NOOP("words", "activator suits, pot life"),
                                QT_TRANSLATE_NOOP("words", "car checked for bake")});

constexpr auto gun_reason_words = std::to_array<const char*>(
    {QT_TRANSLATE_NOOP("words", "none at hand"), QT_TRANSLATE_NOOP("words", "broken"),
     QT_TRANSLATE_NOOP("words", "record is not here"),
     QT_TRANSLATE_NOOP("words", "manager decided")});

constexpr auto product_words = std::to_array<const char*>(
    {QT_TRANSLATE_NOOP("words", "primer"), QT_TRANSLATE_NOOP("words", "base"),
     QT_TRANSLATE_NOOP("words", "clear"), QT_TRANSLATE_NOOP("words", "single stage"),
     QT_TRANSLATE_NOOP("words", "panel adhesive"), QT_TRANSLATE_NOOP("words", "glass urethane")});

constexpr auto panel_group_words = std::to_array<const char*>(
    {QT_TRANSLATE_NOOP("words", "roof and hood"), QT_TRANSLATE_NOOP("words", "sides"),
     QT_TRANSLATE_NOOP("words", "rockers and low sides"),
     QT_TRANSLATE_NOOP("words", "plastic covers")});

constexpr auto first_aid_words = std::to_array<const char*>(
    {QT_TRANSLATE_NOOP("words", "hard to breathe"), QT_TRANSLATE_NOOP("words", "in the eye"),
     QT_TRANSLATE_NOOP("words", "on the skin"), QT_TRANSLATE_NOOP("words", "injected by the gun"),
     QT_TRANSLATE_NOOP("words", "fan stopped")});

constexpr auto scheme_words = std::to_array<const char*>(
    {QT_TRANSLATE_NOOP("words", "US"), QT_TRANSLATE_NOOP("words", "UK")});

constexpr auto limit_kind_words = std::to_array<const char*>(
    {QT_TRANSLATE_NOOP("words", "8 hours"), QT_TRANSLATE_NOOP("words", "15 minutes"),
     QT_TRANSLATE_NOOP("words", "ceiling")});

constexpr auto cure_words = std::to_array<const char*>(
    {QT_TRANSLATE_NOOP("words", "two-pack"), QT_TRANSLATE_NOOP("words", "infrared"),
     QT_TRANSLATE_NOOP("words", "UV"), QT_TRANSLATE_NOOP("words", "moisture cure")});

constexpr auto milestone_words = std::to_array<const char*>(
    {QT_TRANSLATE_NOOP("words", "dust free"), QT_TRANSLATE_NOOP("words", "pull tape"),
     QT_TRANSLATE_NOOP("words", "handle"), QT_TRANSLATE_NOOP("words", "sand from"),
     QT_TRANSLATE_NOOP("words", "polish from"), QT_TRANSLATE_NOOP("words", "polish until"),
     QT_TRANSLATE_NOOP("words", "assemble"), QT_TRANSLATE_NOOP("words", "last polish"),
     QT_TRANSLATE_NOOP("words", "full"), QT_TRANSLATE_NOOP("words", "pot life"),
     QT_TRANSLATE_NOOP("words", "handling strength"), QT_TRANSLATE_NOOP("words", "full strength")});

template <std::size_t N, class E>
QString air_word(const std::array<const char*, N>& words, E value) {
  return QCoreApplication::translate("words", words[static_cast<std::size_t>(value)]);
}
}  // namespace

QString words_of(job::BoothWord booth_said_word) {
  return air_word(booth_said_words, booth_said_word);
}
QString words_of(job::BoothReading booth_reading_word) {
  return air_word(booth_reading_words, booth_reading_word);
}
QString words_of(job::RespiratorKind respirator_word) {
  return air_word(respirator_words, respirator_word);
}
QString words_of(job::FitMethod fit_method_word) {
  return air_word(fit_method_words, fit_method_word);
}
QString words_of(job::DueKind due_word) {
  return air_word(due_date_words, due_word);
}
QString words_of(job::GunItem gun_item_word) {
  return air_word(gun_item_words, gun_item_word);
}
QString words_of(job::GunReason gun_reason_word) {
  return air_word(gun_reason_words, gun_reason_word);
}
QString words_of(job::ProductKind product_word) {
  return air_word(product_words, product_word);
}
QString words_of(job::PanelGroup panel_group_word) {
  return air_word(panel_group_words, panel_group_word);
}
QString words_of(job::FirstAid first_aid_word) {
  return air_word(first_aid_words, first_aid_word);
}
QString words_of(trade::FactorScheme scheme_word) {
  return air_word(scheme_words, scheme_word);
}
QString words_of(trade::LimitKind limit_kind_word) {
  return air_word(limit_kind_words, limit_kind_word);
}
QString words_of(trade::CureKind cure_word) {
  return air_word(cure_words, cure_word);
}
QString words_of(trade::CureMilestone milestone_word) {
  return air_word(milestone_words, milestone_word);
}

}  // namespace jambline::screens
