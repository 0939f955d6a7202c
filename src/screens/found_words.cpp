#include "screens/found_words.h"

#include <QCoreApplication>

#include "screens/air_words.h"
#include "screens/correct_words.h"
#include "screens/visit_words.h"
#include "screens/words.h"

namespace jambline::screens {

namespace {
constexpr int most_round_a_hit = 24;  // signs on each side of it

QString found_tr(const char* text) {
  return QCoreApplication::translate("found", text);
}

// What is found, with as much of its line as a row has room for.
QString round_the_hit(const shelf::FindHit& hit) {
  const QString before = QString::fromUtf8(hit.text.data(), hit.begin);
  const QString word = QString::fromUtf8(hit.text.data() + hit.begin, hit.end - hit.begin);
  const QString after = QString::fromUtf8(hit.text.data() + hit.end,
                                          static_cast<qsizetype>(hit.text.size()) - hit.end);
  const auto dots = QStringLiteral("…");
  return (before.size() > most_round_a_hit ? dots + before.right(most_round_a_hit) : before) +
         word + (after.size() > most_round_a_hit ? after.left(most_round_a_hit) + dots : after);
}

QString words_of_code(const shelf::FindHit& hit) {
  const QString code = QString::fromStdString(hit.code);
  const QString name = QString::fromStdString(hit.text);
  const auto of = [&](std::string_view family) {
    return code.startsWith(QLatin1String(family.data(), static_cast<qsizetype>(family.size()))) &&
           code.size() > static_cast<qsizetype>(family.size()) &&
           code[static_cast<qsizetype>(family.size())].isDigit();
  };
  using folds::find_family;
  if (of(find_family<job::BodyShape>) || of(find_family<job::Stage>)) return {};
  if (of(find_family<job::DefectKind>)) return found_tr("mark: %1").arg(name);
  if (of(find_family<job::DirtCause>)) return found_tr("cause: %1").arg(name);
  if (of(find_family<job::Panel>)) return found_tr("panel: %1").arg(name);
  if (of(find_family<job::Verdict>)) return found_tr("panel is: %1").arg(name);
  if (of(find_family<job::WorkKind>)) return found_tr("work: %1").arg(name);
  if (of(find_family<job::WaitReason>)) return found_tr("waited: %1").arg(name);
  if (of(find_family<job::GunItem>)) return found_tr("before the gun: %1").arg(name);
  if (of(find_family<job::CutItem>)) return found_tr("before cutting: %1").arg(name);
  if (of(find_family<job::Step>)) return found_tr("against the order: %1").arg(name);
  return found_tr("reason: %1").arg(name);
}
// A panel by what most bodies call it.
struct KindNames {
  std::string operator()(job::Panel panel) const {
    return words_of(panel, job::BodyShape::FourDoorSedan).toStdString();
  }
  template <class E>
  std::string operator()(E kind) const {
    return words_of(kind).toStdString();
  }
};
}  // namespace

std::shared_ptr<const shelf::Names> names_of_kinds() {
  return std::make_shared<const shelf::Names>(folds::named_kinds(KindNames()));
}

QString words_of(const shelf::FindHit& hit, const folds::FloorRow& row) {
  switch (hit.field) {
    case folds::FindField::Plate:
      return {};
    case folds::FindField::Vin:
      return found_tr("VIN %1").arg(QString::fromStdString(row.vin));
    case folds::FindField::Color:
      return hit.text == row.color.name
                 ? QString()
                 : found_tr("color code %1").arg(QString::fromStdString(row.color.code));
    case folds::FindField::Notes:
      return found_tr("note: %1").arg(round_the_hit(hit));
    case folds::FindField::Work:
      return found_tr("work: %1").arg(round_the_hit(hit));
    case folds::FindField::Reasons:
      return found_tr("reason: %1").arg(round_the_hit(hit));
    case folds::FindField::Customer:
      return found_tr("customer: %1").arg(round_the_hit(hit));
    case folds::FindField::Kind:
      return words_of_code(hit);
    case folds::FindField::Person:
      return found_tr("person: %1").arg(QString::fromStdString(hit.text));
    case folds::FindField::Booth:
      return found_tr("booth: %1").arg(QString::fromStdString(hit.text));
    case folds::FindField::Product:
      return found_tr("product: %1").arg(QString::fromStdString(hit.text));
  }
  return {};
}

}  // namespace jambline::screens
