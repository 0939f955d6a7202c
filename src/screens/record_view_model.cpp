#include "screens/record_view_model.h"

#include <algorithm>
#include <numeric>

#include "screens/plate.h"
#include "screens/units.h"
#include "screens/words.h"

namespace jambline::screens {

namespace {
// Letters and digits only, small: "K 41-206" and "k41206" are the same.
QString folded(const QString& text) {
  QString out;
  out.reserve(text.size());
  for (const QChar sign : text)
    if (sign.isLetterOrNumber()) out.append(sign.toCaseFolded());
  return out;
}
QString folded(const std::string& text) {
  return folded(QString::fromStdString(text));
}

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

void RecordViewModel::wake() {
  if (awake_) return;
  awake_ = true;
  session_.engine().want_record();
  refresh();
}

void RecordViewModel::refresh() {
  if (!awake_ || session_.snapshot().record == cars_) return;
  const auto before = cars_;
  cars_ = session_.snapshot().record;
  rebuild();
}

void RecordViewModel::rebuild() {
  std::vector<std::size_t> rows;
  if (cars_) {
    rows.reserve(cars_->size());
    for (std::size_t at = 0; at < cars_->size(); ++at) {
      const auto& car = (*cars_)[at];
      if (!wanted_.isEmpty()) {
        const QString all = QStringList{folded(car.plate),          folded(car.vin),
                                        folded(car.color.name),     folded(car.color.code),
                                        folded(words_of(car.body)), folded(state_words(car))}
                                .join(QChar('\n'));
        if (!std::all_of(wanted_.begin(), wanted_.end(),
                         [&](const QString& word) { return all.contains(word); }))
          continue;
      }
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
  const QString vin = folded(car.vin);
  const QString code = folded(car.color.code);
  const QString shown = QStringList{folded(plate_of(car)), folded(car.color.name),
                                    folded(words_of(car.body)), folded(state_words(car))}
                            .join(QChar('\n'));
  for (const QString& word : wanted_) {
    if (shown.contains(word)) continue;
    if (vin.contains(word)) return tr("VIN %1").arg(QString::fromStdString(car.vin));
    if (code.contains(word)) return tr("color code %1").arg(QString::fromStdString(car.color.code));
  }
  return {};
}

void RecordViewModel::set_search(const QString& search) {
  if (search == search_) return;
  search_ = search;
  QStringList wanted;
  for (const QString& word : search.split(QChar(' '), Qt::SkipEmptyParts))
    if (const QString letters = folded(word); !letters.isEmpty()) wanted << letters;
  if (wanted == wanted_) {
    emit changed();
    return;
  }
  wanted_ = wanted;
  rebuild();
}

QString RecordViewModel::countWords() const {
  if (!cars_) return {};
  const auto all = static_cast<int>(cars_->size());
  if (!wanted_.isEmpty()) return tr("%1 of %2 cars").arg(rowCount()).arg(all);
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
