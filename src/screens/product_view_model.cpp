#include "screens/product_view_model.h"

#include <algorithm>

#include "screens/air_words.h"
#include "screens/cure_words.h"
#include "screens/text.h"
#include "screens/words.h"

namespace jambline::screens {

namespace {
using trade::CureMilestone;

QString label_of(ProductField field, const QString& unit) {
  switch (field) {
    case ProductField::Name:
      return ProductViewModel::tr("Name");
    case ProductField::Minimum:
      return ProductViewModel::tr("Colder than this it does not cure, %1").arg(unit);
    case ProductField::SurfaceMax:
      return ProductViewModel::tr("At most this to touch the film, %1").arg(unit);
    case ProductField::Rest:
      return ProductViewModel::tr("Rest after the bake");
    case ProductField::HeavyFactor:
      return ProductViewModel::tr("Rest of a run or heavy film, times");
    case ProductField::AirMin:
      return ProductViewModel::tr("Sprayed in air of at least, %1").arg(unit);
    case ProductField::AirMax:
      return ProductViewModel::tr("Sprayed in air of at most, %1").arg(unit);
    case ProductField::HumidityMin:
      return ProductViewModel::tr("Humidity at least, %");
    case ProductField::HumidityMax:
      return ProductViewModel::tr("Humidity at most, %");
    case ProductField::WaxWait:
      return ProductViewModel::tr("Before wax, coating or wrap");
  }
  return {};
}

QString hint_of(ProductField field) {
  if (field == ProductField::Name) return ProductViewModel::tr("as on the can");
  if (field == ProductField::Rest) return ProductViewModel::tr("60 min");
  if (field == ProductField::WaxWait) return ProductViewModel::tr("such as 60 d; else not said");
  return ProductViewModel::tr("not on the sheet");
}

// What is asked of paint only.
bool of_paint(ProductField field) {
  return field != ProductField::Name && field != ProductField::Minimum;
}
}  // namespace

ProductViewModel::ProductViewModel(Session& session, QObject* parent)
    : QObject(parent),
      session_(session),
      products_({"key", "title", "facts"}, this),
      fields_({"key", "title", "typed", "wrong", "hint"}, this),
      milestones_({"key", "title", "words", "wrong"}, this),
      tables_({"key", "title", "words", "wrong"}, this),
      rows_({"key", "temperature", "humidity", "minutes", "wrong"}, this) {
  connect(&session, &Session::shopChanged, this, &ProductViewModel::refresh);
  refresh();
}

bool ProductViewModel::manager() const {
  const auto* person = session_.shop().find(session_.person());
  return person && person->role == job::Role::Manager;
}

QStringList ProductViewModel::kinds() const {
  QStringList out;
  for (std::size_t i = 0; i < enum_words<job::ProductKind>.size(); ++i)
    out << sentence(words_of(static_cast<job::ProductKind>(i)));
  return out;
}

QStringList ProductViewModel::cures() const {
  QStringList out;
  for (std::size_t i = 0; i < enum_words<trade::CureKind>.size(); ++i)
    out << sentence(words_of(static_cast<trade::CureKind>(i)));
  return out;
}

QString ProductViewModel::cureNote() const {
  switch (form_.cure) {
    case trade::CureKind::TwoPack:
      return {};
    case trade::CureKind::Infrared:
      return tr("By the temperature of the surface, never of the lamp.");
    case trade::CureKind::Uv:
    case trade::CureKind::MoistureCure:
      break;
  }
  return tr("No heat clock is worked out: what is typed is shown as the sheet says it.");
}

QString ProductViewModel::pageTitle() const {
  switch (page_) {
    case Page::List:
      return tr("Products");
    case Page::Product:
      break;
    case Page::Milestone:
      return sentence(words_of(milestone_));
    case Page::Table:
      return tr("Drive-away table");
  }
  const QString name = form_.at(ProductField::Name).text.trimmed();
  return name.isEmpty() ? tr("New product") : name;
}

QString ProductViewModel::backWords() const {
  return page_ == Page::Product ? tr("All products") : tr("Back to the product");
}

void ProductViewModel::refresh() {
  std::vector<QVariantList> rows;
  for (const auto& one : session_.shop().air.products) {
    QStringList facts{words_of(one.said.kind)};
    if (one.said.activated) facts << tr("isocyanate hardener");
    if (one.said.retired) facts << tr("no longer used");
    if (one.said.steps.empty() && one.said.drive_away.empty()) facts << tr("no times entered");
    rows.push_back({text(one.product.hex()), text(one.said.product_name),
                    facts.join(QStringLiteral(" \u00b7 "))});
  }
  std::stable_sort(rows.begin(), rows.end(), [](const auto& a, const auto& b) {
    return a[1].toString().localeAwareCompare(b[1].toString()) < 0;
  });
  products_.set(std::move(rows));
  show_product();
  show_rows();
  emit changed();
}

void ProductViewModel::show_product() {
  std::vector<QVariantList> rows;
  for (std::size_t i = 0; i < product_fields; ++i) {
    const auto field = static_cast<ProductField>(i);
    if (of_paint(field) && !paint()) continue;
    const auto& typed = form_.at(field);
    rows.push_back(
        {QString::number(i), label_of(field, unit()), typed.text, typed.wrong, hint_of(field)});
  }
  fields_.set(std::move(rows));
  rows.clear();
  for (const auto milestone : milestones_of(form_.kind)) {
    ProductForm::Points points;
    if (const auto typed = form_.steps.find(milestone); typed != form_.steps.end())
      points = typed->second;
    QString wrong = points.wrong;
    for (const auto& row : points.rows)
      if (wrong.isEmpty()) wrong = row.wrong;
    const auto read = read_points(points, session_.units());
    rows.push_back({text(word_of(milestone)), sentence(words_of(milestone)),
                    !read           ? tr("does not hang together")
                    : read->empty() ? tr("not on the sheet")
                                    : points_words(*read, session_.units()),
                    wrong});
  }
  milestones_.set(std::move(rows));
  rows.clear();
  for (std::size_t i = 0; glass() && i < form_.tables.size(); ++i) {
    const auto& table = form_.tables[i];
    const auto count = std::count_if(table.rows.begin(), table.rows.end(),
                                     [](const auto& row) { return !row.empty(); });
    QString wrong = table.wrong;
    for (const auto& row : table.rows)
      if (wrong.isEmpty()) wrong = row.wrong;
    rows.push_back({QString::number(i),
                    table.case_name.trimmed().isEmpty() ? tr("No case named") : table.case_name,
                    count == 1 ? tr("1 row") : tr("%1 rows").arg(count), wrong});
  }
  tables_.set(std::move(rows));
}

const std::vector<ProductRow>* ProductViewModel::open_rows() const {
  if (page_ == Page::Table && table_ < form_.tables.size()) return &form_.tables[table_].rows;
  const auto typed = form_.steps.find(milestone_);
  return page_ == Page::Milestone && typed != form_.steps.end() ? &typed->second.rows : nullptr;
}

std::vector<ProductRow>* ProductViewModel::open_rows() {
  return const_cast<std::vector<ProductRow>*>(std::as_const(*this).open_rows());
}

void ProductViewModel::show_rows() {
  std::vector<QVariantList> rows;
  if (const auto* typed = open_rows())
    for (std::size_t i = 0; i < typed->size(); ++i) {
      const auto& row = (*typed)[i];
      rows.push_back({QString::number(i), row.temperature, row.humidity, row.minutes, row.wrong});
    }
  rows_.set(std::move(rows));
}

QString ProductViewModel::caseName() const {
  return page_ == Page::Table && table_ < form_.tables.size() ? form_.tables[table_].case_name
                                                              : QString();
}

QString ProductViewModel::rowsWrong() const {
  if (page_ == Page::Table && table_ < form_.tables.size()) return form_.tables[table_].wrong;
  const auto typed = form_.steps.find(milestone_);
  return page_ == Page::Milestone && typed != form_.steps.end() ? typed->second.wrong : QString();
}

void ProductViewModel::toList() {
  page_ = Page::List;
  form_ = form_of(nullptr, session_.units());
  refusal_.clear();
  refresh();
}

void ProductViewModel::open(const QString& product) {
  const auto id = ProductId::parse(product.toStdString());
  form_ = form_of(id ? session_.shop().air.find(ProductId{*id}) : nullptr, session_.units());
  page_ = Page::Product;
  refusal_.clear();
  fields_.set({});  // those of another product
  refresh();
}

void ProductViewModel::sayField(const QString& key, const QString& typed) {
  const auto field = key.toUInt();
  if (field >= product_fields || form_.texts[field].text == typed) return;
  form_.texts[field] = {typed, {}};
  refusal_.clear();
  show_product();
  emit changed();
}

void ProductViewModel::chooseKind(int kind) {
  form_.kind = static_cast<job::ProductKind>(kind);
  if (glass()) form_.cure = trade::CureKind::MoistureCure;
  if (glass()) form_.activated = false;
  refresh();
}

void ProductViewModel::chooseCure(int cure) {
  form_.cure = static_cast<trade::CureKind>(cure);
  refresh();
}

void ProductViewModel::sayActivated(bool activated) {
  form_.activated = activated;
  refresh();
}

void ProductViewModel::openMilestone(const QString& key) {
  const auto milestone = from_word<CureMilestone>(key.toStdString());
  if (!milestone) return;
  milestone_ = *milestone;
  page_ = Page::Milestone;
  auto& rows = form_.steps[milestone_].rows;
  if (rows.empty()) rows.emplace_back();
  rows_.set({});
  refresh();
}

void ProductViewModel::openTable(const QString& key) {
  table_ = key.isEmpty() ? form_.tables.size() : key.toUInt();
  if (table_ >= form_.tables.size()) {
    table_ = form_.tables.size();
    form_.tables.emplace_back().rows.emplace_back();
  }
  page_ = Page::Table;
  rows_.set({});
  refresh();
}

void ProductViewModel::sayRow(const QString& key, int column, const QString& typed) {
  auto* rows = open_rows();
  const auto at = key.toUInt();
  if (!rows || at >= rows->size()) return;
  auto& row = (*rows)[at];
  QString& cell = column == 0 ? row.temperature : column == 1 ? row.humidity : row.minutes;
  if (cell == typed) return;
  cell = typed;
  row.wrong.clear();
  show_rows();
  emit changed();
}

void ProductViewModel::sayCase(const QString& name) {
  if (page_ != Page::Table || table_ >= form_.tables.size()) return;
  if (form_.tables[table_].case_name == name) return;
  form_.tables[table_].case_name = name;
  form_.tables[table_].wrong.clear();
  emit changed();
}

void ProductViewModel::addRow() {
  if (auto* rows = open_rows()) rows->emplace_back();
  refresh();
}

void ProductViewModel::dropRow(const QString& key) {
  auto* rows = open_rows();
  const auto at = key.toUInt();
  if (!rows || at >= rows->size()) return;
  rows->erase(rows->begin() + static_cast<std::ptrdiff_t>(at));
  rows_.set({});  // the rows below it are others now
  refresh();
}

void ProductViewModel::dropTable() {
  if (page_ != Page::Table || table_ >= form_.tables.size()) return;
  form_.tables.erase(form_.tables.begin() + static_cast<std::ptrdiff_t>(table_));
  page_ = Page::Product;
  refresh();
}

void ProductViewModel::back() {
  bool good = true;
  if (page_ == Page::Milestone)
    good = read_points(form_.steps[milestone_], session_.units()).has_value();
  if (page_ == Page::Table && table_ < form_.tables.size())
    good = read_table(form_.tables[table_], session_.units()).has_value();
  if (page_ == Page::Product) {
    toList();
    return;
  }
  if (good) page_ = Page::Product;
  refresh();
}

void ProductViewModel::keep() {
  if (!manager() || page_ != Page::Product) return;
  const auto said = read_product(form_, session_.units());
  refusal_ = said ? QString() : tr("Not kept: look at what is marked.");
  show_product();
  emit changed();
  if (said) post(*said);
}

void ProductViewModel::retire(bool retired) {
  const auto* known = form_.id ? session_.shop().air.find(*form_.id) : nullptr;
  if (!known || !manager()) return;
  job::Product said = known->said;
  said.retired = retired;
  post(std::move(said));
}

void ProductViewModel::post(job::Product said) {
  session_.post(acts::SetProduct{form_.id, std::move(said)},
                [this](const Result<engine::Wrote>& wrote) {
                  if (wrote) {
                    toList();
                    emit kept();
                  } else if (wrote.error().code == Code::AlreadyDone && form_.id) {
                    toList();  // nothing was changed
                  } else {
                    refusal_ = words_of(wrote.error()).what;
                    emit changed();
                  }
                });
}

}  // namespace jambline::screens
