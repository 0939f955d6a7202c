#include <QStringList>
#include <algorithm>

#include "screens/car_view_model.h"
#include "screens/text.h"
#include "screens/units.h"

namespace jambline::screens {

namespace {
const std::vector<Hash>& heads_of(const folds::CarView& car, std::string_view label) {
  return label == "plate"   ? car.plate_heads
         : label == "vin"   ? car.vin_heads
         : label == "color" ? car.color_heads
                            : car.promise_heads;
}
}  // namespace

QString CarViewModel::side_words(const entries::Entry& entry) const {
  const auto when = [&](std::int64_t ms) {
    return time_words(ms, session_.now().wall_ms, session_.zone());
  };
  QString said;
  if (const auto* plate = entry.payload.get_if<entries::PlateSet>()) said = text(plate->plate);
  if (const auto* vin = entry.payload.get_if<entries::VinSet>()) said = text(vin->vin);
  if (const auto* color = entry.payload.get_if<entries::ColorSet>())
    said = QStringLiteral("%1 %2").arg(text(color->color.code), text(color->color.name)).trimmed();
  if (const auto* promise = entry.payload.get_if<entries::PromiseSet>())
    said = when(promise->promised_ms);
  if (said.isEmpty()) said = tr("nothing");
  return tr("%1 · %2, %3").arg(said, session_.name_of(entry.person), when(entry.wall_ms));
}

// What stands first, then the others; of each who said it and when.
std::vector<const entries::Entry*> CarViewModel::sides_of(
    const folds::LabelConflict& conflict) const {
  std::vector<const entries::Entry*> out;
  const auto& lines = session_.snapshot().timeline;
  const auto* car = session_.car();
  if (!lines || !car) return out;
  const auto& others = conflict.other_hashes;
  const auto is_other = [&](const Hash& hash) {
    return std::find(others.begin(), others.end(), hash) != others.end();
  };
  const auto& heads = heads_of(*car, conflict.label);
  for (const auto& entry : *lines)
    if (std::find(heads.begin(), heads.end(), entry.hash) != heads.end()) out.push_back(&entry);
  std::stable_partition(out.begin(), out.end(),
                        [&](const auto* entry) { return !is_other(entry->hash); });
  // Of several that say what stands the last one is told.
  const auto first_other = std::find_if(out.begin(), out.end(),
                                        [&](const auto* entry) { return is_other(entry->hash); });
  if (first_other - out.begin() > 1) out.erase(out.begin(), first_other - 1);
  return out;
}

void CarViewModel::show_conflicts() {
  std::vector<QVariantList> rows;
  if (const auto* car = session_.car()) {
    for (const auto& conflict : car->conflicts) {
      QStringList sides;
      for (const auto* entry : sides_of(conflict)) sides << side_words(*entry);
      if (sides.size() < 2) continue;
      const QString title = conflict.label == "plate"   ? tr("Plate")
                            : conflict.label == "vin"   ? tr("VIN")
                            : conflict.label == "color" ? tr("Color")
                                                        : tr("Promised");
      rows.push_back({text(conflict.label), title, sides,
                      tr("%1, two say different things: %2").arg(title, sides.join(tr("; ")))});
    }
  }
  conflicts_.set(std::move(rows));
}

QString CarViewModel::refusedWords() const {
  const auto* car = session_.car();
  const int refused = car ? car->refused_entries : 0;
  if (refused == 0) return {};
  return refused == 1 ? tr("1 entry is refused. Nothing goes by it.")
                      : tr("%1 entries are refused. Nothing goes by them.").arg(refused);
}

void CarViewModel::settle(int row, int side) {
  const auto* car = session_.car();
  if (!car || row < 0 || row >= conflicts_.rowCount()) return;
  const auto label = conflicts_.value(row, "key").toString().toStdString();
  for (const auto& conflict : car->conflicts) {
    if (conflict.label != label) continue;
    const auto sides = sides_of(conflict);
    if (side < 0 || side >= static_cast<int>(sides.size())) return;
    const auto& said = sides[static_cast<std::size_t>(side)]->payload;
    if (const auto* plate = said.get_if<entries::PlateSet>())
      session_.post(acts::SetPlate{car->job, plate->plate});
    if (const auto* vin = said.get_if<entries::VinSet>())
      session_.post(acts::SetVin{car->job, vin->vin, true});
    if (const auto* color = said.get_if<entries::ColorSet>())
      session_.post(acts::SetColor{car->job, color->color});
    if (const auto* promise = said.get_if<entries::PromiseSet>())
      session_.post(acts::SetPromise{car->job, promise->promised_ms});
    return;
  }
}

}  // namespace jambline::screens
