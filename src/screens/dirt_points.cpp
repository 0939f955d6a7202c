#include "screens/dirt_points.h"

#include "screens/rate_units.h"

namespace jambline::screens {

void DirtPoints::set(std::shared_ptr<const DirtNumbers> numbers,
                     std::shared_ptr<const Plates> plates, DirtSaying saying) {
  beginResetModel();
  numbers_ = std::move(numbers);
  plates_ = std::move(plates);
  saying_ = std::move(saying);
  endResetModel();
}

int DirtPoints::rowCount(const QModelIndex& parent) const {
  return parent.isValid() || !numbers_ ? 0 : static_cast<int>(numbers_->cars.size());
}

const DirtCar* DirtPoints::car(int point) const {
  return point < 0 || point >= rowCount() ? nullptr
                                          : &numbers_->cars[static_cast<std::size_t>(point)];
}

QString DirtPoints::plate(const JobId& job) const {
  if (!plates_) return {};
  const auto found = plates_->find(job);
  return found == plates_->end() ? QString() : found->second;
}

QVariant DirtPoints::data(const QModelIndex& index, int role) const {
  const DirtCar* one = index.isValid() ? car(rowCount() - 1 - index.row()) : nullptr;
  if (!one) return {};
  switch (role) {
    case JobIdRole:
      return QString::fromStdString(one->lesson.job.hex());
    case PlateRole:
      return plate(one->lesson.job);
    case DayRole:
      return date_words(one->lesson.sprayed_ms, saying_.now_ms, saying_.zone);
    case NibsRole:
      return QString::number(one->lesson.nibs);
    case AreaRole:
      return area_words(one->lesson.sprayed_m2 * 1e6, saying_.units);
    case RateRole:
      return rate_number(one->point.rate_m2, saying_.units);
    case LimitsRole:
      return limits_words(*one, saying_);
    case LookRole:
      return static_cast<int>(one->point.signal);
    case LookWordsRole:
      return look_words(one->point.signal);
    case SaidRole:
      return QStringList{plate(one->lesson.job),
                         date_words(one->lesson.sprayed_ms, saying_.now_ms, saying_.zone),
                         car_words(*one, saying_)}
          .join(QStringLiteral(", "));
    default:
      return {};
  }
}

QHash<int, QByteArray> DirtPoints::roleNames() const {
  return {{JobIdRole, "jobId"},   {PlateRole, "plate"}, {DayRole, "day"},
          {NibsRole, "nibs"},     {AreaRole, "area"},   {RateRole, "rate"},
          {LimitsRole, "limits"}, {LookRole, "look"},   {LookWordsRole, "lookWords"},
          {SaidRole, "said"}};
}

}  // namespace jambline::screens
