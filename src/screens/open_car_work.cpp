// The work on the form of a new car: template, panels, operations and their import.
#include <QFile>
#include <QPointer>
#include <QUrl>
#include <algorithm>
#include <thread>

#include "job/body_shape.h"
#include "screens/open_car_view_model.h"
#include "screens/text.h"
#include "screens/words.h"

namespace jambline::screens {

namespace {
using acts::WorkTemplate;

template <class E>
E after(E value) {
  return static_cast<E>((static_cast<std::size_t>(value) + 1) % enum_words<E>.size());
}

QString title_of(WorkTemplate work) {
  switch (work) {
    case WorkTemplate::BumperAndFender:
      return OpenCarViewModel::tr("Bumper and fender");
    case WorkTemplate::OneSide:
      return OpenCarViewModel::tr("One side");
    case WorkTemplate::WholeFront:
      return OpenCarViewModel::tr("Whole front");
    case WorkTemplate::SinglePanel:
      return OpenCarViewModel::tr("Single panel");
    case WorkTemplate::OwnChoice:
      break;
  }
  return OpenCarViewModel::tr("Own choice");
}

QString why(acts::EstimateFault fault) {
  using acts::EstimateFault;
  switch (fault) {
    case EstimateFault::FieldCount:
      return OpenCarViewModel::tr("not as many columns as the head");
    case EstimateFault::UnknownStage:
      return OpenCarViewModel::tr("no such stage");
    case EstimateFault::HoursNotANumber:
      return OpenCarViewModel::tr("hours are no number");
    case EstimateFault::HoursOutOfRange:
      return OpenCarViewModel::tr("hours are not 0 to 1000");
    case EstimateFault::TitleTooLong:
      return OpenCarViewModel::tr("title is too long");
    case EstimateFault::TextAfterQuote:
      return OpenCarViewModel::tr("text after a closing quote");
    case EstimateFault::QuoteInside:
      return OpenCarViewModel::tr("a quote inside plain text");
    case EstimateFault::QuoteNeverCloses:
      break;
  }
  return OpenCarViewModel::tr("a quote that never closes");
}

Result<acts::EstimateRows> read_file(const QString& path) {
  QFile file(path);
  if (!file.open(QIODevice::ReadOnly))
    return fail(Code::NoSuchFile, "read the estimate", path.toStdString());
  const QByteArray bytes = file.read(static_cast<qint64>(acts::most_estimate_bytes) + 1);
  if (file.error() != QFileDevice::NoError)
    return fail(Code::FileFailed, "read the estimate", path.toStdString());
  return acts::read_estimate_csv({bytes.constData(), static_cast<std::size_t>(bytes.size())});
}
}  // namespace

void OpenCarViewModel::chooseWork(const QString& key, bool goOn) {
  const auto work = from_word<WorkTemplate>(key.toStdString());
  if (!work) return;
  draft_.work = work;
  if (*work != WorkTemplate::OwnChoice && draft_.body) {
    draft_.panels = acts::panels_of(*work, *draft_.body);
    work_out_operations();
  }
  if (goOn) draft_.page = *work == WorkTemplate::OwnChoice ? PanelsPage : PromisePage;
  keep();
}

job::PanelPlan* OpenCarViewModel::planned(const QString& key) {
  const auto panel = from_word<job::Panel>(key.toStdString());
  const auto found = std::find_if(draft_.panels.begin(), draft_.panels.end(),
                                  [&](const auto& plan) { return plan.panel == panel; });
  return found == draft_.panels.end() ? nullptr : &*found;
}

void OpenCarViewModel::flipPanel(const QString& key) {
  const auto panel = from_word<job::Panel>(key.toStdString());
  if (!panel || !draft_.body || !job::pattern(*draft_.body).find(*panel)) return;
  if (planned(key))
    std::erase_if(draft_.panels, [&](const auto& plan) { return plan.panel == *panel; });
  else
    draft_.panels.push_back(acts::usual_plan(*panel, *draft_.body));
  draft_.work = WorkTemplate::OwnChoice;
  work_out_operations();
  keep();
}

void OpenCarViewModel::flipOnCar(const QString& key) {
  if (auto* plan = planned(key)) plan->on_car = !plan->on_car;
  work_out_operations();
  keep();
}

void OpenCarViewModel::nextFinish(const QString& key) {
  if (auto* plan = planned(key)) plan->finish = after(plan->finish);
  keep();
}

void OpenCarViewModel::nextTreatment(const QString& key) {
  if (auto* plan = planned(key)) plan->treatment = after(plan->treatment);
  keep();
}

void OpenCarViewModel::nextSubstrate(const QString& key) {
  if (auto* plan = planned(key)) plan->substrate = after(plan->substrate);
  keep();
}

void OpenCarViewModel::work_out_operations() {
  if (draft_.own_operations) return;
  draft_.operations.clear();
  for (auto& one : acts::operations_of(draft_.panels))
    draft_.operations.push_back({one.stage, std::move(one.title), one.estimate_min});
}

void OpenCarViewModel::usualOperations() {
  draft_.own_operations = false;
  work_out_operations();
  keep();
}

void OpenCarViewModel::addTenths(int operation, int tenths) {
  if (operation < 0 || operation >= static_cast<int>(draft_.operations.size())) return;
  auto& minutes = draft_.operations[static_cast<std::size_t>(operation)].estimate_min;
  const int now_tenths = (minutes + 3) / 6;
  minutes = std::clamp(now_tenths + tenths, 0, 10000) * 6;
  draft_.own_operations = true;
  keep();
}

void OpenCarViewModel::removeOperation(int operation) {
  if (operation < 0 || operation >= static_cast<int>(draft_.operations.size())) return;
  draft_.operations.erase(draft_.operations.begin() + operation);
  draft_.own_operations = true;
  keep();
}

QString OpenCarViewModel::hoursSum() const {
  std::int64_t minutes = 0;
  for (const auto& one : draft_.operations) minutes += one.estimate_min;
  return hours_words(minutes * 60000);
}

QStringList OpenCarViewModel::painted() const {
  QStringList out;
  for (const auto& plan : draft_.panels) out.append(text(word_of(plan.panel)));
  return out;
}

void OpenCarViewModel::refresh_panels() {
  std::vector<QVariantList> works;
  for (std::size_t i = 0; i < enum_words<WorkTemplate>.size(); ++i) {
    const auto work = static_cast<WorkTemplate>(i);
    QStringList names;
    if (draft_.body)
      for (const auto& plan : acts::panels_of(work, *draft_.body))
        names.append(words_of(plan.panel, *draft_.body));
    works.push_back({text(word_of(work)), title_of(work),
                     work == WorkTemplate::OwnChoice ? tr("choose panels and hours")
                                                     : names.join(QStringLiteral(", ")),
                     draft_.work == work});
  }
  works_.set(std::move(works));
  std::vector<QVariantList> panels;
  if (draft_.body) {
    for (const auto& drawn : job::pattern(*draft_.body).panels) {
      const QString key = text(word_of(drawn.panel));
      const auto* plan = planned(key);
      const auto shown = plan ? *plan : acts::usual_plan(drawn.panel, *draft_.body);
      panels.push_back({key, sentence(words_of(drawn.panel, *draft_.body)), plan != nullptr,
                        shown.on_car, shown.on_car ? tr("on the car") : tr("loose"),
                        words_of(shown.finish), words_of(shown.treatment),
                        words_of(shown.substrate), !job::may_be_cut(shown.finish)});
    }
  }
  panels_.set(std::move(panels));
  std::vector<QVariantList> operations;
  for (std::size_t i = 0; i < draft_.operations.size(); ++i) {
    const auto& one = draft_.operations[i];
    operations.push_back({static_cast<int>(i),
                          one.title.empty() ? sentence(words_of(one.stage)) : text(one.title),
                          words_of(one.stage), hours_words(one.estimate_min * 60000LL)});
  }
  operations_.set(std::move(operations));
}

void OpenCarViewModel::readCsv(const QString& path_or_text) {
  if (path_or_text.trimmed().isEmpty()) return;
  if (path_or_text.contains(QLatin1Char('\n'))) {
    const QByteArray bytes = path_or_text.toUtf8();
    show_csv(acts::read_estimate_csv({bytes.constData(), static_cast<std::size_t>(bytes.size())}));
    return;
  }
  const QUrl url(path_or_text.trimmed());
  const QString path = url.isLocalFile() ? url.toLocalFile() : path_or_text.trimmed();
  auto* courier = new QObject;  // lives until the answer has been brought
  const QPointer<OpenCarViewModel> self(this);
  std::thread([path, courier, self] {
    auto rows = read_file(path);
    QMetaObject::invokeMethod(
        courier,
        [courier, self, given = std::move(rows)] {
          courier->deleteLater();
          if (self) self->show_csv(given);
        },
        Qt::QueuedConnection);
  }).detach();
}

void OpenCarViewModel::show_csv(const Result<acts::EstimateRows>& rows) {
  csv_shown_ = true;
  csv_operations_.clear();
  std::vector<QVariantList> shown;
  if (!rows) {
    const ErrorWords words = words_of(rows.error());
    csv_words_ = QStringList{words.what, words.kept, words.todo}.join(QChar(' '));
  } else {
    csv_operations_ = rows->operations;
    for (const auto& bad : rows->rejected)
      shown.push_back({static_cast<int>(shown.size()),
                       tr("Line %1: %2").arg(bad.line).arg(text(bad.text)), why(bad.why), false});
    for (const auto& good : rows->operations)
      shown.push_back(
          {static_cast<int>(shown.size()),
           good.title.empty() ? sentence(words_of(good.stage)) : text(good.title),
           tr("%1, %2").arg(words_of(good.stage), hours_words(good.estimate_min * 60000LL)), true});
    csv_words_ = tr("%1 of %2 rows fit").arg(csvCount()).arg(shown.size());
  }
  csv_rows_.set(std::move(shown));
  emit csvChanged();
}

void OpenCarViewModel::useCsv() {
  if (csv_operations_.empty()) return;
  draft_.operations.clear();
  for (auto& one : csv_operations_)
    draft_.operations.push_back({one.stage, std::move(one.title), one.estimate_min});
  draft_.own_operations = true;
  dropCsv();
  keep();
}

void OpenCarViewModel::dropCsv() {
  csv_shown_ = false;
  csv_words_.clear();
  csv_operations_.clear();
  csv_rows_.set({});
  emit csvChanged();
}

}  // namespace jambline::screens
