#include "screens/dirt_over_time_view_model.h"

#include <algorithm>
#include <set>

#include "base/spans.h"
#include "screens/correct_words.h"
#include "screens/rate_units.h"
#include "screens/text.h"
#include "screens/words.h"

namespace jambline::screens {

namespace {

QVariantMap sentence_part(const QString& words, const QString& key = {}, bool changed = false) {
  return {{QStringLiteral("text"), words},
          {QStringLiteral("key"), key},
          {QStringLiteral("changed"), changed}};
}

std::shared_ptr<const DirtPoints::Plates> plates_of(
    const std::shared_ptr<const std::vector<folds::FloorRow>>& record) {
  auto out = std::make_shared<DirtPoints::Plates>();
  if (!record) return out;
  for (const auto& car : *record)
    out->emplace(car.job, car.plate.empty() ? text(car.vin).right(8) : text(car.plate));
  return out;
}
}  // namespace

DirtOverTimeViewModel::DirtOverTimeViewModel(Session& session, QObject* parent)
    : QObject(parent),
      session_(session),
      events_({"key", "title", "stateWords", "said", "details", "strong", "tooFew", "ratio", "low",
               "high", "unbounded"},
              this),
      look_rows_({"key", "look", "words", "meaning"}, this),
      causes_({"key", "words", "count", "countWords", "quiet"}, this),
      painters_({"key", "name", "said", "ranked"}, this) {
  connect(&session_, &Session::snapshotChanged, this, &DirtOverTimeViewModel::refresh);
}

void DirtOverTimeViewModel::wake() {
  if (awake_) return;
  awake_ = true;
  session_.engine().want_lessons();
  session_.engine().want_record();
  refresh();
}

void DirtOverTimeViewModel::rest() {
  awake_ = false;
}

bool DirtOverTimeViewModel::is_manager() const {
  const auto* person = session_.shop().find(session_.person());
  return person && person->role == job::Role::Manager;
}

DirtSaying DirtOverTimeViewModel::saying() const {
  return {session_.units(), session_.zone(), session_.now().wall_ms};
}

folds::DirtAsked DirtOverTimeViewModel::asked() const {
  folds::DirtAsked out{booth_, painter_, std::nullopt};
  const std::int64_t now_ms = session_.now().wall_ms;
  if (since_ == Since::Year) out.since_ms = now_ms - 365 * day_ms;
  if (since_ == Since::ThreeMonths) out.since_ms = now_ms - 91 * day_ms;
  return out;
}

void DirtOverTimeViewModel::refresh() {
  if (!awake_) return;
  const auto& now = session_.snapshot();
  const bool manager = is_manager();
  if (!manager) painter_.reset();
  const bool other = now.lessons != lessons_ || now.shop != shop_ || manager != was_manager_;
  if (now.record != record_ || !plates_) plates_ = plates_of(now.record);
  record_ = now.record;
  lessons_ = now.lessons;
  shop_ = now.shop;
  was_manager_ = manager;
  if (other)
    ask();
  else
    say();
}

void DirtOverTimeViewModel::ask() {
  if (!lessons_ || !shop_) return;
  const int number = ++number_asked_;
  session_.calculate(this, [this, number, question = asked(), manager = is_manager(),
                            lessons = lessons_, shop = shop_] {
    auto numbers = dirt_numbers(question, manager, *lessons, shop->booth_events);
    return [this, number, given = std::move(numbers)] {
      if (number == number_asked_) take(given);
    };
  });
}

void DirtOverTimeViewModel::take(Result<DirtNumbers> numbers) {
  const QString was = chosenJob();
  trouble_.clear();
  if (!numbers) {
    const ErrorWords words = words_of(numbers.error());
    trouble_ = QStringList{words.what, words.kept, words.todo}.join(QChar(' '));
    numbers_ = std::make_shared<DirtNumbers>();
    state_ = Failed;
  } else {
    const bool any = std::any_of(lessons_->begin(), lessons_->end(),
                                 [](const folds::Lesson& one) { return one.counted; });
    state_ = !numbers->cars.empty() ? Shown : any ? NothingFits : NoCars;
    numbers_ = std::make_shared<DirtNumbers>(*std::move(numbers));
  }
  const auto& cars = numbers_->cars;
  const auto same = std::find_if(cars.begin(), cars.end(), [&](const DirtCar& car) {
    return text(car.lesson.job.hex()) == was;
  });
  chosen_ = same == cars.end() ? -1 : static_cast<int>(same - cars.begin());
  say();
}

void DirtOverTimeViewModel::say() {
  points_.set(numbers_, plates_, saying());
  list_points();
  list_events();
  list_causes();
  list_painters();
  emit changed();
  emit chosenChanged();
}

void DirtOverTimeViewModel::list_points() {
  const Units units = session_.units();
  const QString zone = session_.zone();
  days_.clear();
  for (auto* list : {&rates_, &lows_, &highs_, &centers_}) list->clear();
  looks_.clear();
  std::map<trade::ChartSignal, int> counts;
  for (const auto& car : numbers_->cars) {
    // In the hour that comes twice, a later car stays the later one.
    days_ << std::max(local_days(car.lesson.sprayed_ms, zone), days_.isEmpty() ? 0 : days_.last());
    rates_ << per_area(car.point.rate_m2, units);
    lows_ << per_area(car.point.limits.low, units);
    highs_ << per_area(car.point.limits.high, units);
    centers_ << per_area(car.point.limits.center, units);
    looks_ << static_cast<int>(car.point.signal);
    ++counts[car.point.signal];
  }
  std::vector<QVariantList> rows;
  for (const auto& [look, count] : counts)
    if (look != trade::ChartSignal::None)
      rows.push_back({static_cast<int>(look), static_cast<int>(look),
                      tr("%1: %2").arg(sentence(look_words(look)), cars_words(count)),
                      look_meaning(look)});
  look_rows_.set(std::move(rows));
}

void DirtOverTimeViewModel::list_events() {
  flag_days_.clear();
  flag_words_.clear();
  flag_strong_.clear();
  std::vector<QVariantList> rows;
  const DirtSaying now = saying();
  const auto count = static_cast<int>(
      std::count_if(numbers_->changes.begin(), numbers_->changes.end(),
                    [](const DirtChange& event) { return event.effect.has_value(); }));
  for (const auto& event : numbers_->changes) {
    const QString title = event_title(event, now);
    flag_days_ << local_days(event.happened_ms(), now.zone);
    // The axis says the year.
    flag_words_ << event_title(event, {now.units, now.zone, event.happened_ms()});
    flag_strong_ << (event.flagged() ? 1 : 0);
    const auto effect = event.effect.value_or(trade::EventEffect{});
    const auto& done = event.change.done;
    const bool one_booth = std::all_of(
        done.begin(), done.end(), [&](const auto& one) { return one.booth == done.front().booth; });
    const auto* booth = shop_->find(done.front().booth);
    const bool named = booth && one_booth && !booth_ && shop_->booths.size() > 1;
    rows.push_back({text(done.front().event.hex()),
                    named ? tr("%1, %2").arg(title, text(booth->name)) : title, event_state(event),
                    event_words(event), event_details(event, count), event.flagged(),
                    !event.enough(), effect.ratio, effect.interval.low, effect.interval.high,
                    effect.unbounded});
  }
  std::reverse(rows.begin(), rows.end());
  events_.set(std::move(rows));
}

void DirtOverTimeViewModel::list_causes() {
  std::vector<QVariantList> rows;
  most_cars_ = numbers_->cause_not_said;
  for (const auto& one : numbers_->causes) {
    most_cars_ = std::max(most_cars_, one.cars);
    rows.push_back({one.cause ? text(std::string(word_of(*one.cause))) : QStringLiteral("open"),
                    one.cause ? sentence(words_of(*one.cause)) : tr("Left open"), one.cars,
                    cars_words(one.cars), !one.cause.has_value()});
  }
  if (numbers_->cause_not_said > 0)
    rows.push_back({QStringLiteral("not said"), tr("Nothing said yet"), numbers_->cause_not_said,
                    cars_words(numbers_->cause_not_said), true});
  causes_.set(std::move(rows));
}

void DirtOverTimeViewModel::list_painters() {
  std::vector<QVariantList> rows;
  for (const auto& one : numbers_->painters)
    rows.push_back({text(one.person.hex()), session_.name_of(one.person),
                    painter_words(one, saying()), one.ranked});
  painters_.set(std::move(rows));
}

QString DirtOverTimeViewModel::paintersNote() const {
  const auto& all = numbers_->painters;
  if (all.empty()) return tr("No clock ran on the spraying of these cars.");
  if (std::none_of(all.begin(), all.end(), [](const DirtPainter& one) { return one.ranked; }))
    return tr("Fewer than 20 cars each: not ranked.");
  return tr("Nibs per area that each sprayed, alone or with others. Cars and booths differ too.");
}

QVariantList DirtOverTimeViewModel::question() const {
  QVariantList out;
  if (hasBooth())
    out << sentence_part(tr("Dirt of"))
        << sentence_part(choices(QStringLiteral("booth")).value(choiceOf(QStringLiteral("booth"))),
                         QStringLiteral("booth"), booth_.has_value());
  else
    out << sentence_part(tr("Dirt of all cars"));
  out << sentence_part(tr("in"))
      << sentence_part(choices(QStringLiteral("since")).value(choiceOf(QStringLiteral("since"))),
                       QStringLiteral("since"), since_ != Since::Year);
  if (is_manager())
    out << sentence_part(tr("sprayed by"))
        << sentence_part(
               choices(QStringLiteral("painter")).value(choiceOf(QStringLiteral("painter"))),
               QStringLiteral("painter"), painter_.has_value());
  return out;
}

std::vector<PersonId> DirtOverTimeViewModel::painters_of_cars() const {
  std::set<PersonId> sprayed;
  if (lessons_)
    for (const auto& lesson : *lessons_)
      sprayed.insert(lesson.painters.begin(), lesson.painters.end());
  std::vector<PersonId> out;
  for (const auto& person : session_.shop().people)
    if (sprayed.count(person.person)) out.push_back(person.person);
  return out;
}

QStringList DirtOverTimeViewModel::choices(const QString& key) const {
  QStringList out;
  if (key == QStringLiteral("booth")) {
    out << tr("all booths");
    for (const auto& booth : session_.shop().booths) out << text(booth.name);
  } else if (key == QStringLiteral("since")) {
    out << tr("the last 3 months") << tr("the last 12 months") << tr("all time");
  } else if (key == QStringLiteral("painter") && is_manager()) {
    out << tr("anyone");
    for (const auto& person : painters_of_cars()) out << session_.name_of(person);
  }
  return out;
}

int DirtOverTimeViewModel::choiceOf(const QString& key) const {
  if (key == QStringLiteral("since")) return static_cast<int>(since_);
  if (key == QStringLiteral("booth") && booth_) {
    const auto& booths = session_.shop().booths;
    for (std::size_t i = 0; i < booths.size(); ++i)
      if (booths[i].booth == *booth_) return static_cast<int>(i) + 1;
  }
  if (key == QStringLiteral("painter") && painter_) {
    const auto people = painters_of_cars();
    const auto found = std::find(people.begin(), people.end(), *painter_);
    if (found != people.end()) return static_cast<int>(found - people.begin()) + 1;
  }
  return 0;
}

void DirtOverTimeViewModel::answerWith(const QString& key, int row) {
  if (row < 0 || row >= choices(key).size()) return;
  const auto at = static_cast<std::size_t>(row) - 1;  // 0 is the first choice: all
  if (key == QStringLiteral("since")) since_ = static_cast<Since>(row);
  if (key == QStringLiteral("booth")) {
    booth_.reset();
    if (row > 0) booth_ = session_.shop().booths[at].booth;
  }
  if (key == QStringLiteral("painter")) {
    painter_.reset();
    if (row > 0) painter_ = painters_of_cars()[at];
  }
  emit changed();
  ask();
}

void DirtOverTimeViewModel::askAll() {
  booth_.reset();
  painter_.reset();
  since_ = Since::Always;
  emit changed();
  ask();
}

QString DirtOverTimeViewModel::answer() const {
  return numbers_->cars.empty() ? QString() : answer_words(*numbers_, saying());
}

QString DirtOverTimeViewModel::unitWords() const {
  return tr("nibs per %1 sprayed, one point a car").arg(area_unit(session_.units()));
}

QString DirtOverTimeViewModel::chartName() const {
  return tr("Chart of %1, %2. %3")
      .arg(cars_words(static_cast<int>(numbers_->cars.size())), unitWords(), answer());
}

void DirtOverTimeViewModel::choose(int point) {
  const int next = points_.car(point) ? point : -1;
  if (next == chosen_) return;
  chosen_ = next;
  emit chosenChanged();
}

QString DirtOverTimeViewModel::chosenPlate() const {
  const auto* car = chosen_car();
  return car ? points_.plate(car->lesson.job) : QString();
}

QString DirtOverTimeViewModel::chosenTitle() const {
  const auto* car = chosen_car();
  if (!car) return {};
  const DirtSaying now = saying();
  return tr("%1, %2").arg(chosenPlate(), date_words(car->lesson.sprayed_ms, now.now_ms, now.zone));
}

QString DirtOverTimeViewModel::chosenWords() const {
  const auto* car = chosen_car();
  return car ? car_words(*car, saying()) : QString();
}

QString DirtOverTimeViewModel::chosenJob() const {
  const auto* car = chosen_car();
  return car ? text(car->lesson.job.hex()) : QString();
}

void DirtOverTimeViewModel::openSum() {
  sum_.show(tr("How this is worked out"), answer(), numbers_->basis, session_.units(),
            tr("The limits are those of each car's own sprayed area: a small area varies more. An "
               "event splits the line; that the dirt changed then is no proof that it came from "
               "it."));
}

}  // namespace jambline::screens
