#include "screens/retention_words.h"

#include <QCoreApplication>
#include <array>

namespace jambline::screens {

namespace {
struct ClassWords {
  const char* name;
  const char* covers;
};
constexpr auto record_class_words = std::to_array<ClassWords>(
    {{QT_TRANSLATE_NOOP("retention", "payroll"),
      QT_TRANSLATE_NOOP("retention", "what wages are worked out from")},
     {QT_TRANSLATE_NOOP("retention", "time cards"),
      QT_TRANSLATE_NOOP("retention", "when each person began and stopped each day")},
     {QT_TRANSLATE_NOOP("retention", "spraying"),
      QT_TRANSLATE_NOOP("retention", "painters' training, booth filters, guns")},
     {QT_TRANSLATE_NOOP("retention", "fit tests"),
      QT_TRANSLATE_NOOP("retention", "of each person's respirator")},
     {QT_TRANSLATE_NOOP("retention", "exposure and medical"),
      QT_TRANSLATE_NOOP("retention",
                        "what a person breathed; a doctor's records are kept elsewhere, for as "
                        "long as the person works here and 30 years more")},
     {QT_TRANSLATE_NOOP("retention", "cars"),
      QT_TRANSLATE_NOOP("retention", "what was done, with notes, pictures and signatures")}});
static_assert(record_class_words.size() == enum_words<job::RecordClass>.size());

QString retention_tr(const char* words) {
  return QCoreApplication::translate("retention", words);
}
const ClassWords& told(job::RecordClass record) {
  return record_class_words[static_cast<std::size_t>(record)];
}
QString latin(std::string_view words) {
  return QString::fromUtf8(words.data(), static_cast<qsizetype>(words.size()));
}
}  // namespace

QString words_of(job::RecordClass record_class_word) {
  return retention_tr(told(record_class_word).name);
}

QString covers_of(job::RecordClass record) {
  return retention_tr(told(record).covers);
}

QString years_of(int years) {
  return years == 1 ? retention_tr("1 year") : retention_tr("%1 years").arg(years);
}

QString usual_words(job::RecordClass record) {
  const auto& usual = job::usual_retention(record);
  if (usual.until_next) return retention_tr("until the next one");
  if (!usual.years) return retention_tr("as the shop says");
  if (!usual.on_site_years) return years_of(*usual.years);
  return retention_tr("%1, the most recent %2 in the shop")
      .arg(years_of(*usual.years))
      .arg(*usual.on_site_years);
}

QString usual_source(job::RecordClass record) {
  const auto& usual = job::usual_retention(record);
  if (usual.source.empty()) return retention_tr("common practice, no source");
  return retention_tr("%1, %2, text of %3")
      .arg(latin(usual.authority), latin(usual.source))
      .arg(usual.text_year);
}

}  // namespace jambline::screens
