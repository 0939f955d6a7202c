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
constexpr qsizetype most_said = 80;  // letters of a search that found nothing

std::int64_t clocked_ms(const folds::FloorRow& car) {
  std::int64_t out = 0;
  for (const auto& operation : car.operations) out += operation.clocked_ms;
  return out;
}

bool before(RecordViewModel::Column column, const folds::FloorRow& a, const folds::FloorRow& b) {
  switch (column) {
    case RecordViewModel::Car:
      return plate_of(a).localeAwareCompare(plate_of(b)) < 0;
    case RecordViewModel::Color:
      return a.color.name < b.color.name;
    case RecordViewModel::State:
      return a.stages_done * std::max(1, b.stages) < b.stages_done * std::max(1, a.stages);
    case RecordViewModel::Opened:
      return a.opened_ms < b.opened_ms;
    case RecordViewModel::Promised:
      return a.promised_ms < b.promised_ms;
    case RecordViewModel::Delivered:
      return a.delivered_ms < b.delivered_ms;
    case RecordViewModel::Hours:
      return clocked_ms(a) < clocked_ms(b);
    case RecordViewModel::Marks:
      return a.marks_open < b.marks_open;
  }
  return false;
}
}  // namespace

RecordViewModel::RecordViewModel(Session& session, QObject* parent)
    : QAbstractListModel(parent),
      session_(session),
      integrity_(session),
      filter_(session),
      car_(session) {
  connect(&session_, &Session::snapshotChanged, this, &RecordViewModel::refresh);
  connect(&filter_, &RecordFilterViewModel::wordsGiven, this, &RecordViewModel::set_search);
  connect(&filter_, &RecordFilterViewModel::asked, this, &RecordViewModel::ask_anew);
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
  filter_.know_oldest(cars_ && !cars_->empty() ? std::optional(cars_->back().opened_ms)
                                               : std::nullopt);
  rebuild();
  if (asks()) ask(std::numeric_limits<int>::max());
}

RecordViewModel::Order RecordViewModel::order_of(const Cars& cars,
                                                 const std::shared_ptr<const Hits>& hits,
                                                 Column column, bool down) {
  Order out;
  if (!cars) return out;
  for (std::size_t at = 0; at < cars->size(); ++at)
    if (!hits || hits->contains((*cars)[at].job)) out.rows.push_back(at);
  std::stable_sort(out.rows.begin(), out.rows.end(), [&](std::size_t a, std::size_t b) {
    const auto& one = (*cars)[a];
    const auto& other = (*cars)[b];
    return down ? before(column, other, one) : before(column, one, other);
  });
  out.jobs.reserve(out.rows.size());
  for (const std::size_t at : out.rows) out.jobs.push_back((*cars)[at].job);
  return out;
}

void RecordViewModel::rebuild() {
  const int number = ++sorted_;
  if (!cars_ || cars_->size() <= at_once) {
    sorting_ = false;
    return show(cars_, hits_, order_of(cars_, hits_, sort_column_, sort_down_));
  }
  sorting_ = true;
  session_.calculate(this,
                     [this, number, cars = cars_, hits = hits_, column = sort_column_,
                      down = sort_down_]() -> std::function<void()> {
                       auto order = std::make_shared<Order>(order_of(cars, hits, column, down));
                       return [this, number, cars, hits, order] {
                         if (number != sorted_) return;
                         sorting_ = false;
                         show(cars, hits, std::move(*order));
                       };
                     });
}

void RecordViewModel::show(const Cars& cars, const std::shared_ptr<const Hits>& hits, Order order) {
  const bool same = order.jobs == jobs_;
  if (!same) beginResetModel();
  shown_cars_ = cars;
  shown_hits_ = hits;
  rows_ = std::move(order.rows);
  jobs_ = std::move(order.jobs);
  if (!same)
    endResetModel();
  else if (!rows_.empty())
    emit dataChanged(index(0), index(static_cast<int>(rows_.size()) - 1));
  emit changed();
}

const folds::FloorRow& RecordViewModel::row(int at) const {
  return (*shown_cars_)[rows_[static_cast<std::size_t>(at)]];
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
  if (!shown_hits_) return {};
  const auto of_car = shown_hits_->find(car.job);
  if (of_car == shown_hits_->end()) return {};
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
  filter_.know_words(wanted_.join(QChar(' ')));
  ask_anew();
}

void RecordViewModel::ask_anew() {
  if (asks()) return ask(first_page);
  stop_.request_stop();
  ++asked_;
  searching_ = false;
  hits_.reset();
  rebuild();
}

void RecordViewModel::ask(int most) {
  stop_.request_stop();
  stop_ = {};
  if (!kinds_) kinds_ = names_of_kinds();
  searching_ = true;
  emit changed();
  shelf::FindAsked asked = filter_.asked_now();
  asked.words = search_.toStdString();
  asked.most = most;
  session_.engine().find(std::move(asked), kinds_, stop_.get_token(),
                         [self = QPointer(this), number = ++asked_](Result<shelf::Found> answer) {
                           auto hits = std::make_shared<Hits>();
                           Result<bool> more = false;
                           if (answer) {
                             for (auto& car : answer->cars)
                               hits->emplace(car.row.job, std::move(car.hits));
                             more = answer->next.has_value();
                           } else {
                             more = fail(answer.error());
                           }
                           QMetaObject::invokeMethod(
                               QCoreApplication::instance(),
                               [self, number, more = std::move(more), hits = std::move(hits)] {
                                 if (self && number == self->asked_) self->found(more, hits);
                               },
                               Qt::QueuedConnection);
                         });
}

void RecordViewModel::found(const Result<bool>& more, std::shared_ptr<const Hits> hits) {
  searching_ = false;
  if (!more) {
    if (more.error().code != Code::Stopped) emit session_.failed(more.error());
    emit changed();
    return;
  }
  hits_ = std::move(hits);
  rebuild();
  if (*more) ask(std::numeric_limits<int>::max());
}

QString RecordViewModel::countWords() const {
  if (!cars_) return {};
  const auto all = static_cast<int>(cars_->size());
  if (shown_hits_) return tr("%1 of %2 cars").arg(rowCount()).arg(all);
  return all == 1 ? tr("1 car") : tr("%1 cars").arg(all);
}

QString RecordViewModel::emptyWords() const {
  if (empty()) return tr("No car was opened yet. Every car that is opened stays here.");
  if (wanted_.isEmpty()) return tr("No car fits these choices. Leave one out, or choose another.");
  QString typed = wanted_.join(QChar(' '));
  if (typed.size() > most_said) typed = typed.left(most_said) + QStringLiteral("…");
  return filter_.filters() ? tr("No car that fits these choices has \"%1\".").arg(typed)
                           : tr("No car fits \"%1\".").arg(typed);
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

int RecordViewModel::rowOf(const QString& jobId) const {
  const auto job = JobId::parse(jobId.toStdString());
  if (!job) return -1;
  const auto found = std::find(jobs_.begin(), jobs_.end(), JobId{*job});
  return found == jobs_.end() ? -1 : static_cast<int>(found - jobs_.begin());
}

QString RecordViewModel::jobIdAt(int row_at) const {
  if (row_at < 0 || row_at >= rowCount()) return {};
  return QString::fromStdString(row(row_at).job.hex());
}

}  // namespace jambline::screens
