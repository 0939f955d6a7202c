#include "screens/open_car_view_model.h"

#include <QCoreApplication>
#include <algorithm>

#include "base/json.h"
#include "screens/text.h"
#include "screens/words.h"
#include "trade/vin.h"

namespace jambline::screens {

namespace {
constexpr const char* car_form = "open car";

struct ShopColor {
  const char* name;
  const char* hex;
};
// Our own invented shop colors; only the tint on screens comes of them.
constexpr ShopColor shop_colors[] = {{QT_TRANSLATE_NOOP("ShopColor", "chalk"), "#F0EEE6"},
                                     {QT_TRANSLATE_NOOP("ShopColor", "kiln black"), "#1C1C1E"},
                                     {QT_TRANSLATE_NOOP("ShopColor", "wet slate"), "#59616A"},
                                     {QT_TRANSLATE_NOOP("ShopColor", "tin"), "#B3B8BB"},
                                     {QT_TRANSLATE_NOOP("ShopColor", "deep green"), "#1F4F3B"},
                                     {QT_TRANSLATE_NOOP("ShopColor", "harbor blue"), "#23476F"},
                                     {QT_TRANSLATE_NOOP("ShopColor", "brick"), "#8F2F24"},
                                     {QT_TRANSLATE_NOOP("ShopColor", "mustard"), "#C79A2C"},
                                     {QT_TRANSLATE_NOOP("ShopColor", "dry sand"), "#B8A488"},
                                     {QT_TRANSLATE_NOOP("ShopColor", "plum"), "#50294A"}};

template <class E>
std::vector<QVariantList> choices(std::optional<E> chosen) {
  std::vector<QVariantList> rows;
  for (std::size_t i = 0; i < enum_words<E>.size(); ++i) {
    const E value = static_cast<E>(i);
    rows.push_back({text(word_of(value)), sentence(words_of(value)), chosen == value});
  }
  return rows;
}
}  // namespace

OpenCarViewModel::OpenCarViewModel(Session& session, QObject* parent)
    : QObject(parent),
      session_(session),
      colors_({"key", "title", "paint", "chosen"}, this),
      bodies_({"key", "title", "chosen", "shape"}, this),
      drives_({"key", "title", "chosen"}, this),
      works_({"key", "title", "second", "chosen"}, this),
      panels_({"key", "title", "painted", "onCar", "place", "finish", "treatment", "substrate",
               "doNotCut"},
              this),
      operations_({"key", "title", "stage", "hours"}, this),
      promises_({"key", "title", "chosen"}, this),
      days_({"key", "title", "chosen"}, this),
      times_({"key", "title", "chosen"}, this),
      csv_rows_({"key", "text", "why", "good"}, this) {
  if (auto kept = from_json<OpenCarDraft>(session.engine().draft(car_form)))
    draft_ = std::move(*kept);
  connect(&session, &Session::shopChanged, this, &OpenCarViewModel::refresh);
  refresh();
}

void OpenCarViewModel::keep() {
  session_.engine().keep_draft(car_form, to_json(draft_));
  refresh();
}

QString OpenCarViewModel::missing(int page) const {
  if (page == CarPage) {
    if (plate().trimmed().isEmpty()) return tr("type a plate or stock number");
    if (vinState() == VinState::Fails || vinState() == VinState::Short)
      return tr("look at the VIN, or use it as typed");
  }
  if (page == BodyPage && !draft_.body) return tr("choose a body");
  if (page == WorkPage && !draft_.work) return tr("choose the work");
  if (page == PanelsPage && draft_.panels.empty()) return tr("choose a panel");
  return {};
}

QString OpenCarViewModel::openWaitsFor() const {
  for (const int page : {CarPage, BodyPage, PanelsPage})
    if (const QString words = missing(page); !words.isEmpty()) return words;
  return {};
}

QString OpenCarViewModel::summary() const {
  QStringList parts;
  if (!colorName().isEmpty()) parts.append(colorName());
  if (draft_.body) parts.append(words_of(*draft_.body));
  if (!draft_.panels.empty())
    parts.append(panelCount() == 1 ? tr("1 panel") : tr("%1 panels").arg(panelCount()));
  return parts.join(QStringLiteral(" · "));
}

void OpenCarViewModel::setPlate(const QString& plate) {
  if (plate.toStdString() == draft_.plate) return;
  draft_.plate = plate.toStdString();
  keep();
}

void OpenCarViewModel::setVin(const QString& vin) {
  if (vin.toStdString() == draft_.vin) return;
  draft_.vin = vin.toStdString();
  draft_.vin_as_typed = false;
  keep();
}

OpenCarViewModel::VinState OpenCarViewModel::vinState() const {
  const auto check = trade::check_vin(draft_.vin);
  if (check.text.empty()) return VinState::Empty;
  if (check.passes) return VinState::Passes;
  if (draft_.vin_as_typed) return VinState::AsTyped;
  return check.text.size() < 17 ? VinState::Short : VinState::Fails;
}

QString OpenCarViewModel::vinWords() const {
  switch (vinState()) {
    case VinState::Empty:
      return {};
    case VinState::AsTyped:
      return tr("Used as typed, marked as not checked.");
    case VinState::Short:
      return tr("%1 of 17 signs.").arg(trade::check_vin(draft_.vin).text.size());
    case VinState::Passes:
    case VinState::Fails:
      break;
  }
  return vin_check_words(draft_.vin);
}

void OpenCarViewModel::scan_with(VinScanViewModel& scan) {
  scan_ = &scan;
  connect(&scan, &VinScanViewModel::used, this, [this](const QString& vin, bool as_typed) {
    setVin(vin);
    if (as_typed) useVinAsTyped();
  });
}

void OpenCarViewModel::useVinAsTyped() {
  draft_.vin_as_typed = true;
  keep();
}

void OpenCarViewModel::setColorCode(const QString& code) {
  if (code.toStdString() == draft_.color.code) return;
  draft_.color.code = code.toStdString();
  keep();
}

void OpenCarViewModel::setColorName(const QString& name) {
  if (name.toStdString() == draft_.color.name) return;
  draft_.color.name = name.toStdString();
  keep();
}

void OpenCarViewModel::chooseColor(const QString& key) {
  for (const auto& one : shop_colors) {
    if (key != QLatin1String(one.hex)) continue;
    draft_.color.hex = one.hex;
    draft_.color.name = QCoreApplication::translate("ShopColor", one.name).toStdString();
  }
  keep();
}

void OpenCarViewModel::chooseBody(const QString& key, bool goOn) {
  const auto body = from_word<job::BodyShape>(key.toStdString());
  if (!body) return;
  if (draft_.body != body) {
    draft_.body = body;
    draft_.panels =
        draft_.work ? acts::panels_of(*draft_.work, *body) : std::vector<job::PanelPlan>{};
    work_out_operations();
  }
  if (goOn) draft_.page = WorkPage;
  keep();
}

void OpenCarViewModel::chooseDrive(const QString& key) {
  if (const auto drive = from_word<job::Drive>(key.toStdString())) draft_.drive = *drive;
  keep();
}

void OpenCarViewModel::next() {
  if (!missing(draft_.page).isEmpty()) return;
  if (draft_.page == WorkPage && draft_.work != acts::WorkTemplate::OwnChoice &&
      !draft_.panels.empty())
    draft_.page = PromisePage;
  else
    draft_.page = std::min<int>(draft_.page + 1, PromisePage);
  keep();
}

void OpenCarViewModel::back() {
  goTo(draft_.page - 1);
}

void OpenCarViewModel::goTo(int page) {
  draft_.page = std::clamp<int>(page, CarPage, PromisePage);
  keep();
}

void OpenCarViewModel::open() {
  if (opening_ || !openWaitsFor().isEmpty()) return;
  acts::OpenCar command;
  command.plate = plate().trimmed().toStdString();
  command.vin = trade::check_vin(draft_.vin).text;
  command.vin_as_typed = draft_.vin_as_typed;
  command.color = draft_.color;
  command.body = *draft_.body;
  command.drive = draft_.drive;
  command.promised_ms = draft_.promised_ms;
  command.panels = draft_.panels;
  for (const auto& one : draft_.operations)
    command.operations.push_back({one.stage, one.title, one.estimate_min});
  opening_ = true;
  emit changed();
  session_.post(std::move(command), [this](const Result<engine::Wrote>& wrote) {
    opening_ = false;
    if (!wrote) {
      emit changed();
      return;
    }
    clear();
    emit opened(QString::fromStdString(wrote->job.hex()));
  });
}

void OpenCarViewModel::clear() {
  draft_ = {};
  session_.engine().keep_draft(car_form, "");
  dropCsv();
  refresh();
}

void OpenCarViewModel::refresh() {
  std::vector<QVariantList> colors;
  for (const auto& one : shop_colors)
    colors.push_back({QString::fromLatin1(one.hex),
                      sentence(QCoreApplication::translate("ShopColor", one.name)),
                      QString::fromLatin1(one.hex), draft_.color.hex == one.hex});
  colors_.set(std::move(colors));
  auto bodies = choices(draft_.body);
  for (std::size_t i = 0; i < bodies.size(); ++i) bodies[i].append(static_cast<int>(i));
  bodies_.set(std::move(bodies));
  drives_.set(choices(std::optional(draft_.drive)));
  refresh_panels();
  refresh_promise();
  emit changed();
}

}  // namespace jambline::screens
