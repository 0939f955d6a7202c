#include "screens/history_view_model.h"

#include <algorithm>
#include <limits>

#include "job/body_shape.h"
#include "screens/panel_rows.h"
#include "screens/text.h"
#include "screens/units.h"
#include "screens/words.h"

namespace jambline::screens {

HistoryViewModel::HistoryViewModel(Session& session, TimeLineViewModel& time_line, QObject* parent)
    : QSortFilterProxyModel(parent),
      session_(session),
      time_line_(time_line),
      car_marks_({"ofMark", "number", "xMm", "yMm", "ended", "cameBack", "spoken"}, this) {
  setSourceModel(&time_line);
  connect(&session_, &Session::snapshotChanged, this, &HistoryViewModel::refresh);
}

void HistoryViewModel::wake() {
  awake_ = true;
  time_line_.set_group(TimeLineViewModel::All);
  timeline_.reset();
  follow_ = true;
  refresh();
}

void HistoryViewModel::rest() {
  awake_ = false;
  wanted_.reset();
}

void HistoryViewModel::refresh() {
  if (!awake_) return;
  auto next = session_.car() ? session_.snapshot().timeline : nullptr;
  if (next == timeline_) return;
  if (session_.job() != job_) follow_ = true;
  job_ = session_.job();
  timeline_ = std::move(next);
  tell();
  show_wanted();
}

void HistoryViewModel::tell() {
  const int number = ++told_;
  if (!timeline_ || timeline_->empty()) {
    telling_ = false;
    story_ = {};
    at_ = -1;
    invalidateFilter();
    emit storyChanged();
    emit handleChanged();
    return;
  }
  telling_ = true;
  const HistoryGiven given{timeline_, session_.snapshot().car, session_.snapshot().shop,
                           session_.zone(), session_.now().wall_ms};
  session_.calculate(this, [this, number, given]() -> std::function<void()> {
    auto story = std::make_shared<HistoryStory>(story_of(given));
    return [this, number, story] {
      if (number != told_) return;
      telling_ = false;
      story_ = std::move(*story);
      emit storyChanged();
      go(follow_ ? count() - 1 : std::min(at_, count() - 1));
    };
  });
}

void HistoryViewModel::go(int at) {
  at_ = at;
  invalidateFilter();
  emit handleChanged();
  ask();
}

void HistoryViewModel::ask() {
  if (!timeline_ || at_ < 0) return;
  if (asking_) {
    again_ = true;
    return;
  }
  asking_ = true;
  again_ = false;
  session_.calculate(this,
                     [this, timeline = timeline_, at = static_cast<std::size_t>(at_),
                      fold = fold_]() -> std::function<void()> {
                       auto car = std::make_shared<folds::CarView>(fold->at(timeline, at));
                       return [this, car] {
                         asking_ = false;
                         if (again_) return ask();
                         show(*car);
                       };
                     });
}

void HistoryViewModel::show(const folds::CarView& car) {
  const job::CarPattern& pattern = job::pattern(car.body);
  std::vector<QVariantList> rows;
  QVariantMap panels;
  int open = 0;
  int ended = 0;
  for (const auto& panel : car.panels) {
    const auto* drawn = pattern.find(panel.plan.panel);
    panels.insert(word_of_panel(panel.plan.panel), panel.verdict != job::Verdict::NotLookedAt);
    for (const auto& mark : panel.marks) {
      ++(mark.open() ? open : ended);
      if (!drawn) continue;
      const trade::Point_mm at = drawn->place.apply(trade::Point_mm{mark.x_mm, mark.y_mm});
      const QString title = tr("%1 %2, %3")
                                .arg(sentence(words_of(mark.defect)))
                                .arg(mark.number)
                                .arg(words_of(panel.plan.panel, car.body));
      const bool back = mark.end == job::MarkEnd::CameBack;
      rows.push_back({hex(mark.mark), mark.number, at.x_mm, at.y_mm, !mark.open(), back,
                      !mark.open() ? tr("%1, gone").arg(title)
                      : back       ? tr("%1, came back").arg(title)
                                   : tr("%1, open").arg(title)});
    }
  }
  car_marks_.set(std::move(rows));
  panels_ = std::move(panels);
  mark_words_ = open + ended == 0 ? tr("No mark on the car then")
                                  : tr("%1 open, %2 gone").arg(open).arg(ended);
  air_words_ = air_of(car);
  emit carChanged();
}

QString HistoryViewModel::air_of(const folds::CarView& car) const {
  const auto booth_name = [this](const BoothId& booth) {
    const auto* found = session_.shop().find(booth);
    return found ? text(found->name) : tr("a booth");
  };
  QStringList out;
  if (!car.air.sprays.empty()) {
    const auto& last = car.air.sprays.back();
    out << tr("Sprayed in %1, %2 %3")
               .arg(booth_name(last.booth), day_words(last.at.wall_ms, session_.zone()),
                    clock_words(last.at.wall_ms, session_.zone()));
  }
  if (!car.air.climates.empty()) {
    const auto& last = car.air.climates.back();
    out << tr("air %1, panel %2, humidity %3 %, read %4")
               .arg(temperature_words(last.air_c, session_.units()),
                    temperature_words(last.surface_c, session_.units()))
               .arg(last.humidity_percent, 0, 'f', 0)
               .arg(clock_words(last.at.wall_ms, session_.zone()));
  }
  return sentence(out.join(dot));
}

double HistoryViewModel::handleMs() const {
  if (at_ < 0 || at_ >= count()) return startMs();
  return static_cast<double>(story_.at_ms[static_cast<std::size_t>(at_)]);
}

QString HistoryViewModel::handleWords() const {
  if (!timeline_ || at_ < 0 || at_ >= std::min(count(), static_cast<int>(timeline_->size())))
    return {};
  const std::int64_t wall_ms = (*timeline_)[static_cast<std::size_t>(at_)].wall_ms;
  return tr("%1 %2, entry %3 of %4")
      .arg(day_words(wall_ms, session_.zone()), clock_words(wall_ms, session_.zone()))
      .arg(at_ + 1)
      .arg(count());
}

void HistoryViewModel::moveTo(double wall_ms) {
  const auto& all = story_.at_ms;
  if (all.empty()) return;
  const auto after = std::upper_bound(all.begin(), all.end(), static_cast<std::int64_t>(wall_ms));
  const int at = std::max(0, static_cast<int>(after - all.begin()) - 1);
  put(at);
}

void HistoryViewModel::put(int at) {
  follow_ = at + 1 >= count();
  if (at != at_) go(at);
}

void HistoryViewModel::step(int entries) {
  if (count() == 0) return;
  const auto wanted = std::clamp<std::int64_t>(std::int64_t{at_} + entries, 0, count() - 1);
  put(static_cast<int>(wanted));
}

void HistoryViewModel::showEntry(const QString& entry_id) {
  wanted_ = parsed<Hash>(entry_id);
  show_wanted();
}

void HistoryViewModel::show_wanted() {
  if (!wanted_ || !timeline_) return;
  const auto found = std::find_if(timeline_->begin(), timeline_->end(),
                                  [&](const auto& entry) { return entry.hash == *wanted_; });
  if (found == timeline_->end()) return;
  const QString entry_id = hex(*wanted_);
  wanted_.reset();
  go(static_cast<int>(found - timeline_->begin()));
  follow_ = at_ + 1 == static_cast<int>(timeline_->size());
  time_line_.open(entry_id);
}

bool HistoryViewModel::filterAcceptsRow(int row, const QModelIndex&) const {
  return time_line_.place_of(row) <= at_;
}

}  // namespace jambline::screens
