#include "screens/picture_rows.h"

#include <QCoreApplication>
#include <QDateTime>
#include <QTimeZone>
#include <algorithm>
#include <cstdlib>

#include "base/spans.h"
#include "folds/shots_of_car.h"
#include "screens/picture_words.h"
#include "screens/units.h"
#include "screens/words.h"

namespace jambline::screens {

namespace {

QString picture_tr(const char* text) {
  return QCoreApplication::translate("pictures", text);
}

QString counted(std::int64_t count, const char* one, const char* many) {
  return count == 1 ? picture_tr(one) : picture_tr(many).arg(count);
}

QString apart_words(std::int64_t apart_ms) {
  const std::int64_t ms = std::abs(apart_ms);
  const auto whole = [ms](std::int64_t unit_ms) { return (ms + unit_ms / 2) / unit_ms; };
  if (ms >= 360 * day_ms)
    return counted(whole(365 * day_ms), QT_TRANSLATE_NOOP("pictures", "a year"),
                   QT_TRANSLATE_NOOP("pictures", "%1 years"));
  if (ms >= 2 * day_ms)
    return counted(whole(day_ms), QT_TRANSLATE_NOOP("pictures", "a day"),
                   QT_TRANSLATE_NOOP("pictures", "%1 days"));
  if (ms >= 55 * minute_ms)
    return counted(whole(hour_ms), QT_TRANSLATE_NOOP("pictures", "an hour"),
                   QT_TRANSLATE_NOOP("pictures", "%1 hours"));
  return counted(whole(minute_ms), QT_TRANSLATE_NOOP("pictures", "a minute"),
                 QT_TRANSLATE_NOOP("pictures", "%1 minutes"));
}

QString mark_words(const folds::CarView& car, const MarkId& mark) {
  for (const auto& panel : car.panels)
    for (const auto& one : panel.marks)
      if (one.mark == mark) return words_of(one.defect);
  return {};
}

QString joined(const QStringList& words, job::Stage stage) {
  QStringList said;
  for (const QString& one : words)
    if (!one.isEmpty()) said << one;
  return sentence(said.isEmpty() ? words_of(stage) : said.join(QStringLiteral(", ")));
}

QString shot_words(const entries::PicturePlace& place, const folds::ShopView& shop) {
  if (!place.shot) return {};
  for (const auto& shot : folds::shots_of(shop, place.stage))
    if (shot.shot == *place.shot) return name_of(shot);
  return {};
}
}  // namespace

QString title_of(const entries::PicturePlace& place, job::BodyShape body,
                 const folds::ShopView& shop) {
  return joined({place.panel ? words_of(*place.panel, body) : QString(), shot_words(place, shop)},
                place.stage);
}

QString title_of(const folds::PictureView& picture, const PictureTelling& telling) {
  const auto& place = picture.place;
  return joined({place.panel ? words_of(*place.panel, telling.car.body) : QString(),
                 shot_words(place, telling.shop),
                 place.mark ? mark_words(telling.car, *place.mark) : QString()},
                place.stage);
}

QString line_of(const folds::PictureView& picture, const PictureTelling& telling) {
  const auto* person = telling.shop.find(picture.by);
  const QString who = person && !person->name.empty() ? QString::fromStdString(person->name)
                                                      : picture_tr("someone");
  return picture_tr("%1, %2").arg(who, time_words(picture.wall_ms, telling.now_ms, telling.zone));
}

QString poor_words(const folds::PictureView& picture) {
  if (picture.facts.word == trade::PhotoWord::Good) return {};
  return picture.kept_though_poor ? picture_tr("%1, kept anyway").arg(words_of(picture.facts.word))
                                  : words_of(picture.facts.word);
}

QString camera_clock_words(const folds::PictureView& picture, const QString& zone) {
  if (!picture.facts.camera_time) return {};
  QDateTime said =
      QDateTime::fromString(QString::fromStdString(*picture.facts.camera_time), Qt::ISODate);
  if (!said.isValid()) return QString::fromStdString(*picture.facts.camera_time);
  const QString words = said.toString(QStringLiteral("yyyy-MM-dd HH:mm"));
  if (picture.facts.camera_offset_min)
    said.setOffsetFromUtc(*picture.facts.camera_offset_min * 60);
  else
    said.setTimeZone(QTimeZone(zone.toLatin1()).isValid() ? QTimeZone(zone.toLatin1())
                                                          : QTimeZone::utc());
  const std::int64_t apart_ms = said.toMSecsSinceEpoch() - picture.wall_ms;
  if (std::abs(apart_ms) < 2 * minute_ms) return words;
  return (apart_ms < 0 ? picture_tr("%1, %2 earlier") : picture_tr("%1, %2 later"))
      .arg(words, apart_words(apart_ms));
}

QString bytes_words(std::int64_t bytes) {
  if (bytes < 1'000'000) return picture_tr("%1 kB").arg((bytes + 500) / 1000);
  return picture_tr("%1 MB").arg(static_cast<double>(bytes) / 1e6, 0, 'f', 1);
}

std::vector<const folds::PictureView*> pictures_by_stage(const folds::CarView& car) {
  std::vector<const folds::PictureView*> out;
  out.reserve(car.pictures.size());
  for (const auto& picture : car.pictures) out.push_back(&picture);
  std::stable_sort(out.begin(), out.end(),
                   [](const auto* a, const auto* b) { return a->place.stage < b->place.stage; });
  return out;
}

}  // namespace jambline::screens
