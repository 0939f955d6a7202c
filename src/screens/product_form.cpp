#include "screens/product_form.h"

#include <QCoreApplication>
#include <QLocale>
#include <algorithm>
#include <cmath>

#include "screens/text.h"
#include "screens/typed_words.h"

namespace jambline::screens {

namespace {
using trade::CureMilestone;

QString product_tr(const char* words) {
  return QCoreApplication::translate("product", words);
}

QString number_text(double value) {
  QString out = QLocale::c().toString(value, 'f', 2);
  while (out.endsWith(QChar('0'))) out.chop(1);
  if (out.endsWith(QChar('.'))) out.chop(1);
  return out;
}

QString temperature_text(const std::optional<double>& celsius, Units units) {
  return celsius ? number_text(temperature_shown(*celsius, units)) : QString();
}

QString percent_text(const std::optional<double>& percent) {
  return percent ? number_text(*percent) : QString();
}

ProductRow row_of(double at_c, double minutes, Units units) {
  return {temperature_text(at_c, units), {}, duration_text(minutes), {}};
}

std::optional<double> read_temperature(const QString& typed, double least_c, double most_c,
                                       Units units, QString& wrong) {
  const auto shown = typed_number(typed);
  if (!shown) {
    wrong = typed.trimmed().isEmpty()
                ? product_tr(QT_TRANSLATE_NOOP("product", "The temperature is missing."))
                : product_tr(QT_TRANSLATE_NOOP("product", "That is no temperature: %1."))
                      .arg(typed.trimmed());
    return std::nullopt;
  }
  const double celsius = celsius_of(*shown, units);
  if (celsius >= least_c - 1e-6 && celsius <= most_c + 1e-6) return celsius;
  wrong = product_tr(QT_TRANSLATE_NOOP("product", "%1 cannot be: it takes %2 to %3."))
              .arg(temperature_words(celsius, units), temperature_words(least_c, units),
                   temperature_words(most_c, units));
  return std::nullopt;
}

std::optional<double> read_minutes(const QString& typed, double least, double most,
                                   QString& wrong) {
  const auto minutes = typed_minutes(typed);
  if (minutes && *minutes >= least && *minutes <= most) return minutes;
  wrong = typed.trimmed().isEmpty()
              ? product_tr(QT_TRANSLATE_NOOP("product", "The time is missing."))
          : minutes ? product_tr(QT_TRANSLATE_NOOP("product", "%1 cannot be.")).arg(typed.trimmed())
                    : product_tr(QT_TRANSLATE_NOOP("product",
                                                   "That is no time: %1. Type it as 45 min "
                                                   "or 16 h."))
                          .arg(typed.trimmed());
  return std::nullopt;
}

std::optional<double> read_number(const QString& typed, double least, double most, QString& wrong) {
  const auto value = typed_number(typed);
  if (value && *value >= least && *value <= most) return value;
  wrong = product_tr(QT_TRANSLATE_NOOP("product", "It takes %1 to %2."))
              .arg(number_text(least), number_text(most));
  return std::nullopt;
}

// False: it is wrong. An empty field is none, or the usual value.
bool read_into(ProductForm::Text& field, const auto& read, auto& to) {
  field.wrong.clear();
  if (field.text.trimmed().isEmpty()) return true;
  const auto value = read(field);
  if (value) to = *value;
  return value.has_value();
}

// What the calculation itself says against the points of one milestone.
QString against(const std::vector<trade::CurePoint>& points, Units units) {
  auto sorted = points;
  std::stable_sort(sorted.begin(), sorted.end(),
                   [](const auto& a, const auto& b) { return a.at_c < b.at_c; });
  for (std::size_t i = 1; i < sorted.size(); ++i) {
    if (sorted[i].at_c == sorted[i - 1].at_c)
      return product_tr(QT_TRANSLATE_NOOP("product", "Two times at one temperature: %1."))
          .arg(temperature_words(sorted[i].at_c, units));
    if (sorted[i].minutes > sorted[i - 1].minutes)
      return product_tr(
                 QT_TRANSLATE_NOOP("product",
                                   "The points contradict each other: slower at %1 than at %2."))
          .arg(temperature_words(sorted[i].at_c, units),
               temperature_words(sorted[i - 1].at_c, units));
  }
  trade::CureClock probe;
  probe.steps = {{CureMilestone::Full, points}};
  probe.readings = {{0, 20}};
  if (!trade::cure_clock(probe))
    return product_tr(QT_TRANSLATE_NOOP("product", "These points do not hang together."));
  return {};
}
}  // namespace

QString duration_text(double minutes) {
  const double whole_h = minutes / 60;
  if (minutes >= 2880 && std::fmod(minutes, 1440) == 0)
    return product_tr(QT_TRANSLATE_NOOP("product", "%1 d")).arg(number_text(minutes / 1440));
  if (minutes >= 120 && whole_h == std::round(whole_h))
    return product_tr(QT_TRANSLATE_NOOP("product", "%1 h")).arg(number_text(whole_h));
  return product_tr(QT_TRANSLATE_NOOP("product", "%1 min")).arg(number_text(minutes));
}

bool is_paint(job::ProductKind kind) {
  return kind != job::ProductKind::PanelAdhesive && kind != job::ProductKind::GlassUrethane;
}

std::vector<CureMilestone> milestones_of(job::ProductKind kind) {
  if (!is_paint(kind)) return {CureMilestone::HandlingStrength, CureMilestone::FullStrength};
  std::vector<CureMilestone> out;
  for (std::size_t i = 0; i <= static_cast<std::size_t>(CureMilestone::PotLife); ++i)
    out.push_back(static_cast<CureMilestone>(i));
  return out;
}

ProductForm form_of(const folds::ProductView* product, Units units) {
  ProductForm out;
  const job::Product usual;
  const job::Product& said = product ? product->said : usual;
  if (product) out.id = product->product;
  if (product) out.activated = said.activated;
  out.kind = said.kind;
  out.cure = said.cure;
  out.retired = said.retired;
  out.at(ProductField::Name).text = text(said.product_name);
  out.at(ProductField::Minimum).text = temperature_text(said.minimum_c, units);
  out.at(ProductField::SurfaceMax).text = temperature_text(said.surface_max_c, units);
  out.at(ProductField::Rest).text = duration_text(said.rest_after_bake_min);
  out.at(ProductField::HeavyFactor).text = number_text(said.heavy_factor);
  out.at(ProductField::AirMin).text = temperature_text(said.air_min_c, units);
  out.at(ProductField::AirMax).text = temperature_text(said.air_max_c, units);
  out.at(ProductField::HumidityMin).text = percent_text(said.humidity_min_percent);
  out.at(ProductField::HumidityMax).text = percent_text(said.humidity_max_percent);
  if (said.wax_wait_days)
    out.at(ProductField::WaxWait).text = duration_text(*said.wax_wait_days * 1440);
  for (const auto& step : said.steps)
    for (const auto& point : step.points)
      out.steps[step.milestone].rows.push_back(row_of(point.at_c, point.minutes, units));
  for (const auto& table : said.drive_away) {
    ProductForm::Table& typed = out.tables.emplace_back();
    typed.case_name = text(table.case_name);
    for (const auto& row : table.rows) {
      typed.rows.push_back(row_of(row.at_c, row.minutes, units));
      typed.rows.back().humidity = number_text(row.humidity_percent);
    }
  }
  return out;
}

std::optional<std::vector<trade::CurePoint>> read_points(ProductForm::Points& points, Units units) {
  std::vector<trade::CurePoint> out;
  bool good = true;
  points.wrong.clear();
  for (auto& row : points.rows) {
    row.wrong.clear();
    if (row.empty()) continue;
    const auto at_c = read_temperature(row.temperature, -20, 200, units, row.wrong);
    const auto minutes = at_c ? read_minutes(row.minutes, 0.1, 1e6, row.wrong) : std::nullopt;
    good = good && minutes;
    if (minutes) out.push_back({*at_c, *minutes});
  }
  if (!good) return std::nullopt;
  if (!out.empty()) points.wrong = against(out, units);
  if (!points.wrong.isEmpty()) return std::nullopt;
  return out;
}

std::optional<std::vector<trade::DriveAwayRow>> read_table(ProductForm::Table& table, Units units) {
  std::vector<trade::DriveAwayRow> out;
  bool good = true;
  table.wrong.clear();
  for (auto& row : table.rows) {
    row.wrong.clear();
    if (row.empty()) continue;
    const auto at_c = read_temperature(row.temperature, -40, 60, units, row.wrong);
    const auto percent = at_c ? read_number(row.humidity, 0, 100, row.wrong) : std::nullopt;
    if (at_c && !percent)
      row.wrong = product_tr(QT_TRANSLATE_NOOP("product", "Humidity: %1")).arg(row.wrong);
    const auto minutes = percent ? read_minutes(row.minutes, 1, 1e5, row.wrong) : std::nullopt;
    good = good && minutes;
    if (minutes) out.push_back({*at_c, *percent, *minutes});
  }
  if (table.case_name.trimmed().isEmpty())
    table.wrong = product_tr(QT_TRANSLATE_NOOP("product", "The airbag and belt case is missing."));
  else if (good && out.empty())
    table.wrong = product_tr(QT_TRANSLATE_NOOP("product", "The table has no row yet."));
  if (!good || !table.wrong.isEmpty()) return std::nullopt;
  return out;
}

std::optional<job::Product> read_product(ProductForm& form, Units units) {
  job::Product out;
  out.product_name = form.at(ProductField::Name).text.trimmed().toStdString();
  out.kind = form.kind;
  out.cure = form.cure;
  out.activated = form.activated;
  out.retired = form.retired;
  bool good = true;
  form.at(ProductField::Name).wrong.clear();
  if (out.product_name.empty()) {
    form.at(ProductField::Name).wrong =
        product_tr(QT_TRANSLATE_NOOP("product", "The name is missing."));
    good = false;
  }
  const auto within_c = [&](double least, double most) {
    return [=](ProductForm::Text& field) {
      return read_temperature(field.text, least, most, units, field.wrong);
    };
  };
  const auto within = [](double least, double most) {
    return
        [=](ProductForm::Text& field) { return read_number(field.text, least, most, field.wrong); };
  };
  good = read_into(form.at(ProductField::Minimum), within_c(-20, 60), out.minimum_c) && good;
  good = read_into(form.at(ProductField::SurfaceMax), within_c(10, 60), out.surface_max_c) && good;
  good =
      read_into(
          form.at(ProductField::Rest),
          [](ProductForm::Text& field) { return read_minutes(field.text, 0, 10000, field.wrong); },
          out.rest_after_bake_min) &&
      good;
  good = read_into(form.at(ProductField::HeavyFactor), within(1, 10), out.heavy_factor) && good;
  good = read_into(form.at(ProductField::AirMin), within_c(-45, 60), out.air_min_c) && good;
  good = read_into(form.at(ProductField::AirMax), within_c(-45, 60), out.air_max_c) && good;
  good = read_into(form.at(ProductField::HumidityMin), within(0, 100), out.humidity_min_percent) &&
         good;
  good = read_into(form.at(ProductField::HumidityMax), within(0, 100), out.humidity_max_percent) &&
         good;
  std::optional<double> wait_min;
  good = read_into(
             form.at(ProductField::WaxWait),
             [](ProductForm::Text& field) {
               return read_minutes(field.text, 0, 365 * 1440, field.wrong);
             },
             wait_min) &&
         good;
  if (wait_min) out.wax_wait_days = *wait_min / 1440;
  const auto crossed = [&](const std::optional<double>& least, const std::optional<double>& most,
                           ProductField field) {
    if (!least || !most || *least <= *most) return;
    form.at(field).wrong = product_tr(QT_TRANSLATE_NOOP("product", "This is under the least."));
    good = false;
  };
  crossed(out.air_min_c, out.air_max_c, ProductField::AirMax);
  crossed(out.humidity_min_percent, out.humidity_max_percent, ProductField::HumidityMax);
  for (const auto milestone : milestones_of(form.kind)) {
    const auto typed = form.steps.find(milestone);
    if (typed == form.steps.end()) continue;
    const auto points = read_points(typed->second, units);
    good = good && points;
    if (points && !points->empty()) out.steps.push_back({milestone, *points});
  }
  if (form.kind == job::ProductKind::GlassUrethane)
    for (auto& table : form.tables) {
      auto rows = read_table(table, units);
      good = good && rows;
      if (rows) out.drive_away.push_back({table.case_name.trimmed().toStdString(), *rows});
    }
  return good ? std::optional(std::move(out)) : std::nullopt;
}

}  // namespace jambline::screens
