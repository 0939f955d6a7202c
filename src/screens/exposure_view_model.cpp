#include "screens/exposure_view_model.h"

#include <algorithm>
#include <array>
#include <memory>

#include "base/spans.h"
#include "screens/exposure_words.h"
#include "screens/state_kind.h"
#include "screens/text.h"
#include "screens/typed_times.h"
#include "screens/units.h"

namespace jambline::screens {

namespace {
constexpr std::size_t most_shifts = 200;
constexpr auto units_of_samples = std::to_array<const char*>({"ppm", "mg/m3"});

// Of the samples that a limit speaks of, worn with that respirator.
double highest(const folds::Shift& shift, const job::ExposureLimit& limit,
               const RespiratorId& respirator) {
  double out = 0;
  for (const auto& sample : shift.samples)
    if (sample.substance == limit.substance && sample.unit == limit.unit &&
        sample.respirator == respirator)
      out = std::max(out, sample.value);
  return out;
}

std::int64_t minutes_between(int from, int to) {
  return (to > from ? to : to + 24 * 60) - from;
}
}  // namespace

ExposureViewModel::ExposureViewModel(Session& session, QObject* parent)
    : Form(session, parent),
      shift_rows_({"key", "title", "when", "words", "shape", "isOpen", "spoken"}, this),
      samples_({"key", "title", "when", "worn", "spoken"}, this),
      results_({"key", "title", "from", "value", "unit", "limitWords", "over"}, this),
      worn_({"key", "title", "from", "value", "why", "over", "word", "opens"}, this),
      people_({"key", "title"}, this),
      respirators_({"key", "title"}, this),
      sum_(this) {
  connect(&session, &Session::shopChanged, this, &ExposureViewModel::refresh);
  refresh();
}

void ExposureViewModel::refresh() {
  std::vector<QVariantList> people, respirators;
  const auto& shop = session().shop();
  for (const auto& person : shop.people)
    if (!person.left) people.push_back({hex(person.person), session().name_of(person.person)});
  for (const auto& one : shop.air.respirators)
    if (!one.said.retired) respirators.push_back({hex(one.respirator), text(one.said.model)});
  people_.set(std::move(people));
  respirators_.set(std::move(respirators));
  const bool same = generation_ > 0 && shop.air.samples == seen_.samples &&
                    shop.air.limits == seen_.limits && shop.air.respirators == seen_.respirators;
  if (!same) {
    seen_.samples = shop.air.samples;
    seen_.limits = shop.air.limits;
    seen_.respirators = shop.air.respirators;
    compute();
  }
  show();
}

void ExposureViewModel::compute() {
  auto shifts = folds::shifts_of(seen_);
  if (shifts.size() > most_shifts) shifts.resize(most_shifts);
  known_.clear();
  for (auto& shift : shifts) {
    const QString key = hex(shift.person) + QChar(' ') + QString::number(shift.from_ms);
    auto exposure = folds::exposure_of(shift, seen_);
    known_.push_back({key, std::move(shift), std::move(exposure), {}});
  }
  const int generation = ++generation_;
  working_ = !known_.empty();
  std::vector<trade::Exposure> asked;
  for (const auto& one : known_) asked.push_back(one.exposure.asked);
  session().calculate(this, [this, generation, asked = std::move(asked)] {
    auto results = std::make_shared<std::vector<Result<trade::ExposureResult>>>();
    for (const auto& one : asked) results->push_back(trade::compare_exposure(one));
    return [this, generation, results] {
      if (generation != generation_) return;
      for (std::size_t i = 0; i < known_.size(); ++i) known_[i].result = (*results)[i];
      working_ = false;
      show();
    };
  });
}

const ExposureViewModel::Known* ExposureViewModel::chosen() const {
  for (const auto& one : known_)
    if (one.key == chosen_) return &one;
  return nullptr;
}

QString ExposureViewModel::when(std::int64_t from_ms, std::int64_t to_ms) const {
  const QString zone = session().zone();
  return tr("%1 to %2").arg(clock_words(from_ms, zone), clock_words(to_ms, zone));
}

void ExposureViewModel::show() {
  if (!chosen()) chosen_ = known_.empty() ? QString() : known_.front().key;
  std::vector<QVariantList> rows;
  for (const auto& one : known_) {
    const QString name = session().name_of(one.shift.person);
    const QString day = day_words(one.shift.from_ms, session().zone());
    const QString span = tr("%1, %2").arg(day, when(one.shift.from_ms, one.shift.to_ms));
    StateKind state = StateKind::NotYet;
    QString words = one.result ? tr("nothing computed") : tr("not computed yet");
    if (one.result && *one.result) {
      const auto& against = (*one.result)->against;
      const auto over =
          std::count_if(against.begin(), against.end(), [](const auto& row) { return row.over; });
      const auto mixture = (*one.result)->mixture;
      // Below a limit is a word and no more: nothing here looks like all is well.
      state = over > 0 || mixture > 1 ? StateKind::Must : StateKind::None;
      words = over > 0      ? tr("over %1 of %2 limits").arg(over).arg(against.size())
              : mixture > 1 ? tr("mixture over 1")
                            : tr("below %1 limits").arg(against.size());
    }
    rows.push_back({one.key, name, span, words, shape_of(state), one.key == chosen_,
                    tr("%1, %2, %3. Opens the shift.").arg(name, span, words)});
  }
  shift_rows_.set(std::move(rows));
  const auto* known = chosen();
  const bool computed = known && known->result && *known->result;
  samples_.set(known ? sample_rows(*known) : Rows{});
  results_.set(computed ? result_rows(*known) : Rows{});
  worn_.set(computed ? worn_rows(*known) : Rows{});
  say(known);
  emit changed();
}

ExposureViewModel::Rows ExposureViewModel::sample_rows(const Known& known) const {
  Rows out;
  for (const auto& sample : known.shift.samples) {
    const QString title =
        tr("%1: %2").arg(text(sample.substance), concentration_words(sample.value, sample.unit));
    const auto* respirator =
        sample.respirator ? session().shop().air.find(*sample.respirator) : nullptr;
    const QString mask = respirator ? tr("in %1").arg(text(respirator->said.model))
                                    : tr("no respirator was entered");
    const QString span = when(sample.from_ms, sample.to_ms);
    out.push_back({hex(sample.sample), title, span, mask,
                   tr("%1, %2, %3. Asks whether to take it back.").arg(title, span, mask)});
  }
  return out;
}

ExposureViewModel::Rows ExposureViewModel::result_rows(const Known& known) const {
  Rows out;
  const auto& against = (*known.result)->against;
  for (std::size_t i = 0; i < against.size(); ++i) {
    const auto& row = against[i];
    const auto& limit = known.exposure.limits[i];
    const QString most = concentration_words(row.limit, row.unit);
    out.push_back({hex(limit.limit), limit_title(limit.said), limit_from(limit.said),
                   concentration_number(row.value, row.limit), concentration_unit(row.unit),
                   row.over                 ? tr("over %1").arg(most)
                   : row.value == row.limit ? tr("at %1, not over").arg(most)
                                            : tr("below %1").arg(most),
                   row.over});
  }
  return out;
}

ExposureViewModel::Rows ExposureViewModel::worn_rows(const Known& known) const {
  Rows out;
  const auto& limits = known.exposure.limits;
  for (std::size_t i = 0; i < known.exposure.worn.size(); ++i) {
    const auto& use = known.exposure.worn[i];
    const auto* respirator = session().shop().air.find(use.respirator);
    const auto limit = std::find_if(limits.begin(), limits.end(),
                                    [&](const auto& one) { return one.limit == use.limit; });
    if (!respirator || limit == limits.end()) continue;
    const auto said = words_of(use);
    const double most_sampled = highest(known.shift, limit->said, use.respirator);
    const bool over = said.result && most_sampled > said.result->most;
    QString word;
    if (said.result) {
      const QString sampled =
          concentration_words(most_sampled, limit->said.unit, said.result->most);
      word = over ? tr("the highest sample, %1, is over it").arg(sampled)
                  : tr("the highest sample, %1, is below it").arg(sampled);
    }
    out.push_back({QString::number(i),
                   tr("%1, factor %2")
                       .arg(text(respirator->said.model),
                            concentration_number(respirator->said.assigned_factor)),
                   tr("%1, %2").arg(limit_title(limit->said), limit_from(limit->said)),
                   said.result ? said.value : said.note, said.result ? said.note : QString(), over,
                   word, said.result.has_value()});
  }
  return out;
}

// What is to be said with the rows of the shift.
void ExposureViewModel::say(const Known* known) {
  refused_words_.clear();
  sampled_words_.clear();
  mixture_words_.clear();
  left_out_words_.clear();
  mixture_over_ = false;
  if (!known) return;
  QStringList unlike;
  for (const auto& sample : known->exposure.left_out) {
    const QString one = tr("%1 in %2").arg(text(sample.substance), concentration_unit(sample.unit));
    if (!unlike.contains(one)) unlike << one;
  }
  if (!unlike.isEmpty())
    left_out_words_ = tr("No limit that holds has this substance and unit: %1.")
                          .arg(unlike.join(QStringLiteral("; ")));
  if (!known->result) return;
  if (!*known->result) {
    refused_words_ =
        known->exposure.asked.limits.empty()
            ? tr("Nothing is computed: no limit fits these samples.")
        : known->result->error().code == Code::Malformed
            ? tr("Nothing is computed: two samples of one substance overlap. Take one of them "
                 "back.")
            : tr("Nothing is computed: the samples of this shift cannot be put together.");
    return;
  }
  double sampled_h = 0;
  for (const auto& sample : known->exposure.asked.samples) sampled_h += sample.to_h - sample.from_h;
  sampled_words_ =
      tr("%1 h of samples. What was not sampled counts as nothing, and a passed average is no pass "
         "of a ceiling.")
          .arg(concentration_number(sampled_h));
  if (const auto mixture = (*known->result)->mixture) {
    mixture_over_ = *mixture > 1;
    const QString sum = concentration_number(*mixture, 1);
    mixture_words_ =
        mixture_over_ ? tr("Mixture, the limits of one authority together: %1, over 1").arg(sum)
                      : tr("Mixture, the limits of one authority together: %1, below 1").arg(sum);
  }
}

QString ExposureViewModel::shiftTitle() const {
  const auto* known = chosen();
  if (!known) return {};
  return tr("%1, %2").arg(session().name_of(known->shift.person),
                          day_words(known->shift.from_ms, session().zone()));
}

const trade::Exposure* ExposureViewModel::asked() const {
  const auto* known = chosen();
  return known ? &known->exposure.asked : nullptr;
}

const Result<trade::ExposureResult>* ExposureViewModel::result() const {
  const auto* known = chosen();
  return known && known->result ? &*known->result : nullptr;
}

void ExposureViewModel::choose(const QString& shift) {
  chosen_ = shift;
  show();
}

void ExposureViewModel::openResult(const QString& key) {
  const auto* known = chosen();
  if (!known || !known->result || !*known->result) return;
  const auto& found = **known->result;
  for (std::size_t i = 0; i < found.against.size(); ++i) {
    const auto& limit = known->exposure.limits[i];
    if (hex(limit.limit) != key) continue;
    const auto& row = found.against[i];
    sum_.show(limit_title(limit.said), concentration_words(row.value, row.unit, row.limit),
              found.basis, session().units(), tr("Check the limit against today's local rule."));
  }
}

bool ExposureViewModel::openWorn(const QString& key) {
  const auto* known = chosen();
  bool good = false;
  const int at = key.toInt(&good);
  if (!known || !good || at < 0 || at >= static_cast<int>(known->exposure.worn.size()))
    return false;
  const auto said = words_of(known->exposure.worn[static_cast<std::size_t>(at)]);
  if (!said.result) return false;
  sum_.show(tr("Maximum use concentration"), said.value, said.result->basis, session().units(),
            tr("Within a working respirator program only. The maker's own limit for the device or "
               "the cartridge may be lower."));
  return true;
}

QStringList ExposureViewModel::substances() const {
  QStringList out;
  for (const auto& limit : session().shop().air.limits)
    if (!limit.said.retired && !out.contains(text(limit.said.substance)))
      out << text(limit.said.substance);
  return out;
}

QStringList ExposureViewModel::unitNames() const {
  QStringList out;
  for (const char* unit : units_of_samples) out << concentration_unit(unit);
  return out;
}

QString ExposureViewModel::todayText() const {
  return day_text(today());
}

QStringList ExposureViewModel::reasons() const {
  return {tr("typed wrong"), tr("not this person"), tr("the sampling failed")};
}

int ExposureViewModel::unitOf(const QString& substance) const {
  int out = -1;
  for (const auto& limit : session().shop().air.limits) {
    if (limit.said.retired || text(limit.said.substance) != substance.trimmed()) continue;
    const int unit = limit.said.unit == units_of_samples[1] ? 1 : 0;
    if (out >= 0 && out != unit) return -1;
    out = unit;
  }
  return out;
}

QString ExposureViewModel::dayWords(const QString& day) const {
  const auto typed = typed_day(day);
  return typed ? date_of_day(*typed) : QString();
}

QString ExposureViewModel::lengthWords(const QString& from, const QString& to) const {
  const auto begin = typed_minute(from);
  const auto end = typed_minute(to);
  if (!begin || !end) return {};
  const QString length = duration_words(minutes_between(*begin, *end) * minute_ms);
  return *end > *begin ? length : tr("%1, to the next day").arg(length);
}

void ExposureViewModel::keep(const QString& person, const QString& substance, const QString& value,
                             int unit, const QString& day, const QString& from, const QString& to,
                             const QString& respirator) {
  nothingWrong();
  if (unit < 0 || unit >= static_cast<int>(units_of_samples.size())) return;
  const auto of = parsed<PersonId>(person);
  if (!of || !session().shop().find(*of))
    refuse(QStringLiteral("person"), tr("Say who wore the sampler."));
  const auto what = words(QStringLiteral("substance"), substance);
  const auto found = number(QStringLiteral("value"), value, 0, 1e9);
  const auto on = Form::day(QStringLiteral("day"), day);
  const auto begin = typed_minute(from);
  const auto end = typed_minute(to);
  if (!begin) refuse(QStringLiteral("from"), tr("Hour and minutes: 7:10."));
  if (!end) refuse(QStringLiteral("to"), tr("Hour and minutes: 15:40."));
  if (refused()) return;
  const auto from_ms = wall_of(*on, *begin, session().zone());
  if (!from_ms) {
    refuse(QStringLiteral("day"), tr("No calendar has that day."));
    return;
  }
  const auto to_ms = wall_of(*end > *begin ? *on : *on + 1, *end, session().zone());
  if (!to_ms || *to_ms > session().now().wall_ms) {
    refuse(QStringLiteral("to"), tr("That time is still to come."));
    return;
  }
  acts::LogSample command;
  command.person = *of;
  command.substance = *what;
  command.value = *found;
  command.unit = units_of_samples[static_cast<std::size_t>(unit)];
  command.from_ms = *from_ms;
  command.to_ms = *to_ms;
  command.respirator = parsed<RespiratorId>(respirator);
  keep_as(command);
}

void ExposureViewModel::takeBack(const QString& sample, const QString& reason) {
  const auto id = parsed<SampleId>(sample);
  for (const auto& one : session().shop().air.samples)
    if (id && one.sample == *id && !one.heads.empty())
      keep_as(acts::Withdraw{{}, one.heads.back(), reason.toStdString()});
}

}  // namespace jambline::screens
