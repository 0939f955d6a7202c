// screens/product_form.h: a product's sheet as it is typed: words at every field, read back into a
// job::Product, with what is wrong said at the field and what was typed kept.
//
// Units:  temperatures in the device's unit; durations "45", "16 h", "1 h 30 min", "7 d".
// Empty:  a field that may be empty is none; a milestone without points is not on the sheet.
#pragma once

#include <QString>
#include <array>
#include <map>
#include <optional>
#include <vector>

#include "folds/air_view.h"
#include "screens/units.h"

namespace jambline::screens {

enum class ProductField {
  Name,
  Minimum,
  SurfaceMax,
  Rest,
  HeavyFactor,
  AirMin,
  AirMax,
  HumidityMin,
  HumidityMax,
  WaxWait
};
inline constexpr std::size_t product_fields = 10;

struct ProductRow {
  QString temperature;
  QString humidity;  // of a drive-away table
  QString minutes;
  QString wrong;
  bool empty() const {
    return temperature.trimmed().isEmpty() && humidity.trimmed().isEmpty() &&
           minutes.trimmed().isEmpty();
  }
};

struct ProductForm {
  struct Text {
    QString text;
    QString wrong;
  };
  struct Points {
    std::vector<ProductRow> rows;
    QString wrong;
  };
  struct Table {
    QString case_name;
    std::vector<ProductRow> rows;
    QString wrong;
  };
  std::optional<ProductId> id;
  job::ProductKind kind{};
  trade::CureKind cure{};
  bool activated = true;
  bool retired = false;
  std::array<Text, product_fields> texts;
  std::map<trade::CureMilestone, Points> steps;
  std::vector<Table> tables;

  Text& at(ProductField field) { return texts[static_cast<std::size_t>(field)]; }
  const Text& at(ProductField field) const { return texts[static_cast<std::size_t>(field)]; }
};

ProductForm form_of(const folds::ProductView* product, Units units);  // null: an empty one
bool is_paint(job::ProductKind kind);
// Which milestones the sheet of such a product has.
std::vector<trade::CureMilestone> milestones_of(job::ProductKind kind);

// None: something is wrong, and it is said in `wrong` of the row or of the whole.
std::optional<std::vector<trade::CurePoint>> read_points(ProductForm::Points& points, Units units);
std::optional<std::vector<trade::DriveAwayRow>> read_table(ProductForm::Table& table, Units units);
std::optional<job::Product> read_product(ProductForm& form, Units units);

QString duration_text(double minutes);  // as it is typed

}  // namespace jambline::screens
