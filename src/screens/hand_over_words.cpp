#include "screens/hand_over_words.h"

#include <QCoreApplication>
#include <QDateTime>
#include <QRegularExpression>
#include <QTimeZone>
#include <algorithm>
#include <array>
#include <cmath>

#include "base/spans.h"
#include "screens/check_in_view_model.h"
#include "screens/open_point_words.h"
#include "screens/text.h"
#include "screens/this_visit.h"
#include "screens/typed_times.h"
#include "screens/units.h"
#include "screens/words.h"

namespace jambline::screens {

namespace {

QString hand_over_tr(const char* words) {
  return QCoreApplication::translate("hand-over", words);
}
QString date_of(std::int64_t wall_ms, const QString& zone) {
  return date_of_day(today_of(wall_ms, zone));
}

HandOverPart the_car(const folds::CarView& car, const QString& zone) {
  HandOverPart out{hand_over_tr(QT_TRANSLATE_NOOP("hand-over", "The car")), {}};
  const auto add = [&](const QString& label, const QString& words) {
    if (!words.isEmpty()) out.lines.push_back({label, words});
  };
  add(hand_over_tr(QT_TRANSLATE_NOOP("hand-over", "Plate")), text(car.plate));
  add(hand_over_tr(QT_TRANSLATE_NOOP("hand-over", "VIN")), text(car.vin));
  add(hand_over_tr(QT_TRANSLATE_NOOP("hand-over", "Color")),
      QStringList{text(car.color.name), text(car.color.code)}
          .filter(QRegularExpression(QStringLiteral(".")))
          .join(QStringLiteral(" · ")));
  add(hand_over_tr(QT_TRANSLATE_NOOP("hand-over", "Came in")), date_of(visit_start_ms(car), zone));
  if (checked_in(car))
    add(hand_over_tr(QT_TRANSLATE_NOOP("hand-over", "As it came")),
        check_in_words(car.visit.check_in->said, car.drive).join(QStringLiteral(" · ")));
  if (car.delivered_ms)
    add(hand_over_tr(QT_TRANSLATE_NOOP("hand-over", "Handed over")),
        date_of(*car.delivered_ms, zone));
  return out;
}

HandOverPart what_was_done(const folds::CarView& car) {
  HandOverPart out{hand_over_tr(QT_TRANSLATE_NOOP("hand-over", "What was done")), {}};
  QStringList painted;
  for (const auto& panel : car.panels)
    if (panel.plan.treatment != job::Treatment::NotRefinished)
      painted << words_of(panel.plan.panel, car.body);
  if (!painted.isEmpty())
    out.lines.push_back({hand_over_tr(QT_TRANSLATE_NOOP("hand-over", "Refinished")),
                         sentence(painted.join(QStringLiteral(", ")))});
  QStringList set;
  for (const auto& bond : car.air.bonds) set << text(bond.what);
  if (!set.isEmpty())
    out.lines.push_back({hand_over_tr(QT_TRANSLATE_NOOP("hand-over", "Bonded")),
                         sentence(set.join(QStringLiteral(", ")))});
  for (const auto& one : car.visit.comebacks)
    out.lines.push_back({hand_over_tr(QT_TRANSLATE_NOOP("hand-over", "Looked into")),
                         sentence(text(one.complaint))});
  return out;
}

HandOverPart still_open(const folds::CarView& car, const std::vector<folds::OpenPoint>& open) {
  HandOverPart out{hand_over_tr(QT_TRANSLATE_NOOP("hand-over", "Still to come")), {}};
  for (const auto& point : open)
    if (const QString words = customer_words(point, car.body); !words.isEmpty())
      out.lines.push_back({{}, words});
  return out;
}

// What was coated last, and how long the sheets of all that was coated ask for.
struct Wait {
  std::optional<std::int64_t> coated_ms;
  std::optional<double> days;
};
Wait wait_of(const folds::CarView& car, const folds::ShopView& shop) {
  Wait out;
  for (const auto& mix : car.air.mixes) {
    const auto* product = shop.air.find(mix.product);
    if (!product || mix.coats.empty()) continue;
    for (const auto& coat : mix.coats)
      out.coated_ms = std::max(out.coated_ms.value_or(coat.at.wall_ms), coat.at.wall_ms);
    if (product->said.wax_wait_days)
      out.days = std::max(out.days.value_or(0), *product->said.wax_wait_days);
  }
  return out;
}

HandOverPart new_paint(const folds::CarView& car, const folds::ShopView& shop,
                       const QString& zone) {
  HandOverPart out{hand_over_tr(QT_TRANSLATE_NOOP("hand-over", "The new paint")), {}};
  const auto say = [&](const QString& words) { out.lines.push_back({{}, words}); };
  const bool matte = std::any_of(car.panels.begin(), car.panels.end(), [](const auto& panel) {
    return panel.plan.finish == job::Finish::Matte &&
           panel.plan.treatment != job::Treatment::NotRefinished;
  });
  const Wait wait = wait_of(car, shop);
  const QString never = hand_over_tr(
      QT_TRANSLATE_NOOP("hand-over", "No wax, sealant, coating or wrap on the new paint"));
  if (wait.days && wait.coated_ms) {
    const auto days = static_cast<int>(std::ceil(*wait.days));
    say(hand_over_tr(
            QT_TRANSLATE_NOOP("hand-over",
                              "%1 before %2: %3 days after it was painted, as its sheet says. What "
                              "is left in the paint has to get out."))
            .arg(never, date_of(*wait.coated_ms + days * day_ms, zone))
            .arg(days));
  } else {
    say(hand_over_tr(
            QT_TRANSLATE_NOOP("hand-over",
                              "%1 for 30 to 90 days; the sheet of the paint wins, ask us for it. "
                              "What is left in the paint has to get out."))
            .arg(never));
  }
  say(hand_over_tr(
      QT_TRANSLATE_NOOP("hand-over",
                        "In the first week wash it by hand, in the shade, with plenty of water: "
                        "no brushes, no pressure washer.")));
  say(hand_over_tr(QT_TRANSLATE_NOOP(
      "hand-over", "Bird droppings, tree sap and fuel: rinse them off the same day.")));
  if (matte)
    say(hand_over_tr(
        QT_TRANSLATE_NOOP("hand-over",
                          "Matte or satin paint is never polished and never waxed: it would "
                          "shine there for good.")));
  return out;
}

HandOverPart set_glass(const folds::CarView& car, const folds::ShopView& shop,
                       const QString& zone) {
  HandOverPart out{hand_over_tr(QT_TRANSLATE_NOOP("hand-over", "The new glass")), {}};
  for (const auto& bond : car.air.bonds) {
    const auto* product = shop.air.find(bond.product);
    if (!product || product->said.kind != job::ProductKind::GlassUrethane) continue;
    out.lines.push_back({{},
                         hand_over_tr(QT_TRANSLATE_NOOP("hand-over", "%1, set on %2."))
                             .arg(sentence(text(bond.what)),
                                  date_of(bond.set_ms.value_or(bond.at.wall_ms), zone))});
  }
  if (!out.lines.empty())
    out.lines.push_back({{},
                         hand_over_tr(QT_TRANSLATE_NOOP(
                             "hand-over",
                             "For two days leave a window open a crack, close doors gently, no "
                             "pressure washer. The maker of the adhesive wins."))});
  return out;
}

QString file_name_of(const folds::CarView& car, const Moment& now, const QString& zone) {
  QString plate;
  for (const QChar sign : text(car.plate))
    plate += sign.isLetterOrNumber() || sign == QChar('-') ? sign : QChar(' ');
  const auto at = QDateTime::fromMSecsSinceEpoch(now.wall_ms, QTimeZone(zone.toLatin1()));
  return hand_over_tr(QT_TRANSLATE_NOOP("hand-over", "Hand-over %1 %2.pdf"))
      .arg(plate.simplified(), at.toString(QStringLiteral("yyyy-MM-dd HHmmss")))
      .simplified();
}
}  // namespace

HandOverNote hand_over_note(const folds::CarView& car, const folds::ShopView& shop,
                            const std::vector<folds::OpenPoint>& open, const Moment& now,
                            const QString& zone) {
  HandOverNote out;
  out.title = hand_over_tr(QT_TRANSLATE_NOOP("hand-over", "Hand-over note"));
  out.shop = text(shop.name);
  out.subtitle = QStringList{text(car.plate), date_of(car.delivered_ms.value_or(now.wall_ms), zone)}
                     .filter(QRegularExpression(QStringLiteral(".")))
                     .join(QStringLiteral(", "));
  for (HandOverPart& part :
       std::array{the_car(car, zone), what_was_done(car), still_open(car, open),
                  new_paint(car, shop, zone), set_glass(car, shop, zone)})
    if (!part.lines.empty()) out.parts.push_back(std::move(part));
  if (const auto* one = signature_for(car, job::SignedFor::Delivery)) {
    out.signed_words = hand_over_tr(QT_TRANSLATE_NOOP("hand-over", "Signed by %1, %2"))
                           .arg(text(one->signer), date_of(one->wall_ms, zone));
    out.strokes = one->strokes;
  }
  out.foot = hand_over_tr(
      QT_TRANSLATE_NOOP("hand-over",
                        "Care of paint and glass is common practice; the makers' sheets "
                        "win. Ask us when anything looks different."));
  out.file_name = file_name_of(car, now, zone);
  return out;
}

}  // namespace jambline::screens
