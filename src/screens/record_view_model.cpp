#include "screens/record_view_model.h"

#include <QCoreApplication>
#include <QPointer>
#include <algorithm>
#include <limits>

#include "screens/found_words.h"
#include "screens/plate.h"
#include "screens/units.h"
#include "screens/words.h"

namespace jambline::screens {

namespace {
std::int64_t clocked_ms(const folds::FloorRow& car) {
  std::int64_t out = 0;
  for (const auto& operation : car.operations) out += operation.clocked_ms;
  return out;
}
}  // namespace

RecordViewModel::RecordViewModel(Session& session, QObject* parent)
    : QAbstractListModel(parent), session_(session), integrity_(session) {
  connect(&session_, &Session::snapshotChanged, this, &RecordViewModel::refresh);
}

RecordViewModel::~RecordViewModel() {
  stop_.request_stop();
}

void RecordViewModel::wake() {
  if (awake_) return;
  awake_ = true;
  session_.engine().want_record();
  refresh();
}

void RecordViewModel::refresh() {
  if (!awake_ || session_.snapshot().record == cars_) return;
  cars_ = session_.snapshot().record;
  rebuild();
  if (!wanted_.isEmpty()) ask(std::numeric_limits<int>::max());
}

void RecordViewModel::rebuild() {
  std::vector<std::size_t> rows;
  if (cars_) {
    rows.reserve(cars_->size());
    for (std::size_t at = 0; at < cars_->size(); ++at) {
      const auto& car = (*cars_)[at];
      if (filtered_ && !hits_.contains(car.job)) continue;
      rows.push_back(at);
    }
    std::stable_sort(rows.begin(), rows.end(), [this](std::size_t a, std::size_t b) {
      const auto& one = (*cars_)[a];
      const auto& other = (*cars_)[b];
      return sort_down_ ? before(other, one) : before(one, other);
    });
  }
  std::vector<JobId> jobs;
  jobs.reserve(rows.size());
  for (const std::size_t at : rows) jobs.push_back((*cars_)[at].job);
  if (jobs == jobs_) {
    rows_ = std::move(rows);
    if (!rows_.empty()) emit dataChanged(index(0), index(static_cast<int>(rows_.size()) - 1));
  } else {
    beginResetModel();
    rows_ = std::move(rows);
    jobs_ = std::move(jobs);
    endResetModel();
  }
  emit changed();
}

bool RecordViewModel::before(const folds::FloorRow& a, const folds::FloorRow& b) const {
  switch (sort_column_) {
    case Car:
      return plate_of(a).localeAwareCompare(plate_of(b)) < 0;
    case Color:
      return a.color.name < b.color.name;
    case State:
      return a.stages_done * std::max(1, b.stages) < b.stages_done * std::max(1, a.stages);
    case Opened:
      return a.opened_ms < b.opened_ms;
    case Promised:
      return a.promised_ms < b.promised_ms;
    case Delivered:
      return a.delivered_ms < b.delivered_ms;
    case Hours:
      return clocked_ms(a) < clocked_ms(b);
    case Marks:
      return a.marks_open < b.marks_open;
  }
  return false;
}

const folds::FloorRow& RecordViewModel::row(int at) const {
  return (*cars_)[rows_[static_cast<std::size_t>(at)]];
}

int RecordViewModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

QVariant RecordViewModel::data(const QModelIndex& index, int role) const {
  if (!checkIndex(index, CheckIndexOption::IndexIsValid)) return {};
  const auto& car = row(index.row());
  const auto when = [this](std::optional<std::int64_t> wall_ms) {
    if (!wall_ms) return QString();
    return time_words(*wall_ms, session_.now().wall_ms, session_.zone());
  };
  switch (role) {
    case JobIdRole:
      return QString::fromStdString(car.job.hex());
    case PlateRole:
      return plate_of(car);
    case ColorRole:
      return QString::fromStdString(car.color.name);
    case ColorHexRole:
      return QString::fromStdString(car.color.hex);
    case BodyRole:
      return words_of(car.body);
    case VinRole:
      return QString::fromStdString(car.vin);
    case OpenedRole:
      return when(car.opened_ms);
    case PromisedRole:
      return when(car.promised_ms);
    case DeliveredRole:
      return when(car.delivered_ms);
    case StateRole:
      return state_words(car);
    case HoursRole:
      return hours_words(clocked_ms(car));
    case MarksRole:
      return car.marks_open;
    case DisputedRole:
      return car.disputed;
    case HitRole:
      return hit_words(car);
    default:
      return {};
  }
}

QHash<int, QByteArray> RecordViewModel::roleNames() const {
  return {{JobIdRole, "jobId"},         {PlateRole, "plate"},
          {ColorRole, "color"},         {ColorHexRole, "colorHex"},
          {BodyRole, "body"},           {VinRole, "vin"},
          {OpenedRole, "opened"},       {PromisedRole, "promised"},
          {DeliveredRole, "delivered"}, {StateRole, "stateWords"},
          {HoursRole, "hours"},         {MarksRole, "marks"},
          {DisputedRole, "disputed"},   {HitRole, "hit"}};
}

QString RecordViewModel::state_words(const folds::FloorRow& car) const {
  if (car.delivered_ms) return tr("delivered");
  if (car.read_only) return tr("has entries of a newer version");
  if (car.disputed) return tr("disputed");
  if (car.next_stage) return tr("next: %1").arg(words_of(*car.next_stage));
  return car.stages > 0 ? tr("all planned stages done") : tr("nothing planned");
}

QString RecordViewModel::hit_words(const folds::FloorRow& car) const {
  const auto of_car = hits_.find(car.job);
  if (of_car == hits_.end()) return {};
  QStringList out;
  for (const auto& hit : of_car->second)
    if (const QString words = words_of(hit, car); !words.isEmpty() && !out.contains(words))
      out << words;
  return out.join(QStringLiteral(" · "));
}

void RecordViewModel::set_search(const QString& search) {
  if (search == search_) return;
  search_ = search;
  QStringList wanted;
  for (const QString& word : search.split(QChar(' '), Qt::SkipEmptyParts))
    if (std::any_of(word.begin(), word.end(), [](QChar sign) { return sign.isLetterOrNumber(); }))
      wanted << word;
  if (wanted == wanted_) {
    emit changed();
    return;
  }
  wanted_ = wanted;
  if (!wanted_.isEmpty()) return ask(first_page);
  stop_.request_stop();
  ++asked_;
  searching_ = filtered_ = false;
  hits_.clear();
  rebuild();
}

void RecordViewModel::ask(int most) {
  stop_.request_stop();
  stop_ = {};
  if (!kinds_) kinds_ = names_of_kinds();
  searching_ = true;
  emit changed();
  shelf::FindAsked asked;
  asked.words = search_.toStdString();
  asked.most = most;
  session_.engine().find(std::move(asked), kinds_, stop_.get_token(),
                         [self = QPointer(this), number = ++asked_](Result<shelf::Found> answer) {
                           QMetaObject::invokeMethod(
                               QCoreApplication::instance(),
                               [self, number, answer = std::move(answer)] {
                                 if (self && number == self->asked_) self->found(answer);
                               },
                               Qt::QueuedConnection);
                         });
}

void RecordViewModel::found(const Result<shelf::Found>& answer) {
  searching_ = false;
  if (!answer) {
    if (answer.error().code != Code::Stopped) emit session_.failed(answer.error());
    emit changed();
    return;
  }
  filtered_ = true;
  hits_.clear();
  for (const auto& car : answer->cars) hits_.emplace(car.row.job, car.hits);
  rebuild();
  if (answer->next) ask(std::numeric_limits<int>::max());
}

QString RecordViewModel::countWords() const {
  if (!cars_) return {};
  const auto all = static_cast<int>(cars_->size());
  if (filtered_) return tr("%1 of %2 cars").arg(rowCount()).arg(all);
  return all == 1 ? tr("1 car") : tr("%1 cars").arg(all);
}

void RecordViewModel::sortBy(Column column) {
  sort_down_ = column == sort_column_ ? !sort_down_ : column != Car && column != Color;
  sort_column_ = column;
  rebuild();
}

void RecordViewModel::dropLastWord() {
  QStringList words = search_.split(QChar(' '), Qt::SkipEmptyParts);
  if (!words.isEmpty()) words.removeLast();
  set_search(words.join(QChar(' ')));
}

QString RecordViewModel::jobIdAt(int row_at) const {
  if (row_at < 0 || row_at >= rowCount()) return {};
  return QString::fromStdString(row(row_at).job.hex());
}

}  // namespace jambline::screens
