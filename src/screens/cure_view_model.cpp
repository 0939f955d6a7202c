#include "screens/cure_view_model.h"

#include <algorithm>
#include <cmath>

#include "screens/air_words.h"
#include "screens/text.h"
#include "screens/words.h"

namespace jambline::screens {

namespace {
using trade::CureMilestone;
using trade::CureWord;

constexpr double least_surface_c = -20;
constexpr double most_surface_c = 150;

QString names(const std::vector<job::Panel>& panels, job::BodyShape body) {
  QStringList out;
  for (const auto panel : panels) out << words_of(panel, body);
  return out.join(QStringLiteral(", "));
}

bool shown(CureMilestone milestone) {
  return milestone != CureMilestone::PotLife;
}

// The surface from the last coat until now, in a frame of one by one.
struct SurfaceLine {
  QVariantList points;
  double limit = 0;
  QString words;
};

SurfaceLine line_of(const folds::CureOfGroup& clock, Units units) {
  SurfaceLine out;
  const auto& in = *clock.asked;
  if (in.readings.empty() || in.now_min <= 0) return out;
  const auto [coldest, hottest] =
      std::minmax_element(in.readings.begin(), in.readings.end(),
                          [](const auto& a, const auto& b) { return a.surface_c < b.surface_c; });
  const double low_c = std::min(in.surface_max_c, coldest->surface_c);
  const double high_c = std::max(in.surface_max_c, hottest->surface_c);
  const auto height = [&](double c) { return (c - low_c) / std::max(1.0, high_c - low_c); };
  for (const auto& read : in.readings)
    out.points << std::min(1.0, read.at_min / in.now_min) << height(read.surface_c);
  out.points << 1.0 << height(in.readings.back().surface_c);
  out.limit = height(in.surface_max_c);
  out.words = CureViewModel::tr("%1 to %2 since the coat; dashed: at most %3 to touch it")
                  .arg(temperature_words(coldest->surface_c, units),
                       temperature_words(hottest->surface_c, units),
                       temperature_words(in.surface_max_c, units));
  return out;
}

}  // namespace

CureViewModel::CureViewModel(Session& session, CureWork& work, QObject* parent)
    : QObject(parent),
      session_(session),
      work_(work),
      clocks_({"key", "title", "product", "panels", "surface", "note", "noteShape", "asksThumbnail",
               "thumbnail", "steps", "hasSum", "line", "limit", "lineWords"},
              this),
      bonds_({"key", "title", "facts", "words", "shape", "note", "strength", "hasSum"}, this),
      groups_({"key", "title", "facts", "chosen"}, this),
      sum_(this) {
  connect(&work, &CureWork::changed, this, &CureViewModel::refresh);
  connect(&session, &Session::carOrShopChanged, this, &CureViewModel::refresh);
  refresh();
}

CureSeen CureViewModel::seen() const {
  return {work_.at(), session_.zone(), session_.units()};
}

QString CureViewModel::key_of(const folds::CureOfGroup& clock) const {
  return text(clock.mix.hex()) + QChar(' ') + text(word_of(clock.group));
}

const folds::CureOfGroup* CureViewModel::clock(const QString& key) const {
  for (const auto& one : work_.cures())
    if (key_of(one) == key) return &one;
  return nullptr;
}

std::vector<const folds::CureOfGroup*> CureViewModel::on_top() const {
  std::vector<const folds::CureOfGroup*> out;
  const auto& all = work_.cures();
  for (const auto& one : all) {
    const auto covered = [&](job::Panel panel) {
      return std::any_of(all.begin(), all.end(), [&](const auto& other) {
        return one.coated.order < other.coated.order &&
               std::find(other.panels.begin(), other.panels.end(), panel) != other.panels.end();
      });
    };
    if (!std::all_of(one.panels.begin(), one.panels.end(), covered)) out.push_back(&one);
  }
  std::stable_sort(out.begin(), out.end(),
                   [](const auto* a, const auto* b) { return b->coated.order < a->coated.order; });
  return out;
}

RowList* CureViewModel::steps_of(const QString& key) {
  auto& list = steps_[key];
  if (!list)
    list = std::make_unique<RowList>(
        QByteArrayList{"key", "title", "words", "shape", "sheet", "spoken"}, this);
  return list.get();
}

void CureViewModel::refresh() {
  const auto job = session_.job();
  if (job != job_) {
    group_.reset();
    refusal_.clear();
  }
  job_ = job;
  show_clocks();
  show_bonds();
  show_groups();
  emit changed();
}

void CureViewModel::show_clocks() {
  std::vector<QVariantList> rows;
  const auto* car = session_.car();
  if (!car) {
    clocks_.set({});
    return;
  }
  const CureSeen now = seen();
  for (const auto* shown_one : on_top()) {
    const auto& one = *shown_one;
    const auto* product = session_.shop().air.find(one.product);
    const QString key = key_of(one);
    std::vector<QVariantList> steps;
    bool sand_asks = false;
    const bool computed = one.result && *one.result;
    for (std::size_t i = 0; i < one.asked->steps.size(); ++i) {
      const auto& step = one.asked->steps[i];
      if (!shown(step.milestone)) continue;
      StandingWords said{tr("not counted"), StateKind::Unseen};
      if (computed) {
        const auto& standing = (*one.result)->standings[i];
        said = standing_words(one, standing, now);
        const bool film = step.milestone == CureMilestone::SandFrom ||
                          step.milestone == CureMilestone::PolishFrom;
        sand_asks =
            sand_asks ||
            (film && (standing.word == CureWord::Reached || standing.word == CureWord::Gated));
      }
      const QString title = sentence(words_of(step.milestone));
      const QString sheet = points_words(step.points, now.units);
      steps.push_back({text(word_of(step.milestone)), title, said.words, shape_of(said.shape),
                       trade::touches_film(step.milestone) && one.learned.factor > 1
                           ? tr("sheet: %1. %2").arg(sheet, learned_words(one.learned))
                           : tr("sheet: %1").arg(sheet),
                       tr("%1: %2. Sheet: %3").arg(title, said.words, sheet)});
    }
    steps_of(key)->set(std::move(steps));
    const auto note = clock_words_of(one, product, now);
    QString surface = tr("not read");
    if (one.surface_c)
      surface = tr("%1, read %2")
                    .arg(temperature_words(*one.surface_c, now.units),
                         time_words(one.read_at->wall_ms, now.at.wall_ms, now.zone));
    const auto thumbnail = one.asked->thumbnail;
    const QString name = product ? text(product->said.product_name) : tr("product not known here");
    const SurfaceLine line = line_of(one, now.units);
    rows.push_back({key, sentence(words_of(one.group)), name, names(one.panels, car->body), surface,
                    note.words, shape_of(note.shape),
                    writable() && sand_asks && thumbnail != trade::ThumbnailCheck::Firm,
                    thumbnail == trade::ThumbnailCheck::Firm     ? tr("thumbnail firm")
                    : thumbnail == trade::ThumbnailCheck::NotYet ? tr("thumbnail said not yet")
                                                                 : QString(),
                    QVariant::fromValue<QAbstractItemModel*>(steps_of(key)), computed, line.points,
                    line.limit, line.words});
  }
  clocks_.set(std::move(rows));
}

void CureViewModel::show_bonds() {
  std::vector<QVariantList> rows;
  const CureSeen now = seen();
  for (const auto& one : work_.bonds()) {
    const auto* product = session_.shop().air.find(one.product);
    QStringList facts;
    facts << (product ? text(product->said.product_name) : tr("product not known here"));
    if (!one.case_name.empty()) facts << text(one.case_name);
    facts << tr("set %1").arg(time_words(one.set_ms, now.at.wall_ms, now.zone));
    QStringList strength;
    if (one.strength && *one.strength)
      for (const auto& standing : (*one.strength)->standings)
        strength << tr("%1: %2").arg(
            sentence(words_of(standing.milestone)),
            strength_words(standing, one.strength_asked->now_min, now).words);
    else if (product)
      for (const auto& step : product->said.steps)
        strength << tr("%1: air not logged, sheet: %2")
                        .arg(sentence(words_of(step.milestone)),
                             points_words(step.points, now.units));
    QString words, note;
    StateKind shape = StateKind::None;
    if (one.glass) {
      const bool over = one.drive_from_ms && *one.drive_from_ms <= now.at.wall_ms;
      words =
          over ? tr("Its time of the maker's table is over")
               : do_not_drive_words(folds::DoNotDrive{one.drive_from_ms}, now.at.wall_ms, now.zone);
      shape = over ? StateKind::Done : StateKind::Must;
      note = drive_away_note(one, now.units);
    } else if (strength.isEmpty()) {
      words = tr("No times of its sheet are entered: clamps stay on till the sheet says so.");
      shape = StateKind::Unseen;
    }
    rows.push_back({text(one.bond.hex()), sentence(text(one.what)), facts.join(dot), words,
                    shape_of(shape), note, strength.join(QChar('\n')),
                    (one.result && *one.result) || (one.strength && *one.strength)});
  }
  bonds_.set(std::move(rows));
}

void CureViewModel::show_groups() {
  std::vector<QVariantList> rows;
  const CureSeen now = seen();
  for (std::size_t i = 0; i < enum_words<job::PanelGroup>.size(); ++i) {
    const auto group = static_cast<job::PanelGroup>(i);
    const folds::CureOfGroup* last = nullptr;
    for (const auto& one : work_.cures())
      if (one.group == group && (!last || last->coated.order < one.coated.order)) last = &one;
    if (!last) continue;
    rows.push_back({text(word_of(group)), sentence(words_of(group)),
                    last->surface_c
                        ? tr("%1, read %2")
                              .arg(temperature_words(*last->surface_c, now.units),
                                   time_words(last->read_at->wall_ms, now.at.wall_ms, now.zone))
                        : tr("not read"),
                    group == group_});
  }
  groups_.set(std::move(rows));
}

QString CureViewModel::doNotDrive() const {
  return do_not_drive_words(work_.do_not_drive(), session_.now().wall_ms, session_.zone());
}

QString CureViewModel::keysWords() const {
  return tr("The keys stay with the glass tech.");
}

bool CureViewModel::writable() const {
  const auto* car = session_.car();
  return car && !session_.readOnly() && car->unknown_entries == 0 && !car->delivered_ms;
}

QString CureViewModel::emptyWords() const {
  const auto* car = session_.car();
  if (!car || clockCount() > 0) return {};
  if (!work_.ready() && !car->air.mixes.empty()) return tr("The clocks are worked out.");
  if (!car->air.mixes.empty())
    return tr("A mix is logged, its coats are not: the clock starts with the last coat.");
  return tr("Nothing sprayed is logged on this car. A mix and its coats start the clock.");
}

const trade::CureStanding* CureViewModel::next_milestone(const folds::CureOfGroup& clock) const {
  if (!clock.result || !*clock.result) return nullptr;
  for (const auto& standing : (*clock.result)->standings)
    if (shown(standing.milestone) && !runs_out(standing.milestone) &&
        standing_words(clock, standing, seen()).shape != StateKind::Done)
      return &standing;
  return nullptr;
}

// What is next on the clock of the last coat; of several groups the one that is furthest behind.
StandingWords CureViewModel::row() const {
  const auto reached = [&](const folds::CureOfGroup& clock) {
    std::ptrdiff_t count = 0;
    if (clock.result && *clock.result)
      for (const auto& standing : (*clock.result)->standings)
        count += standing_words(clock, standing, seen()).shape == StateKind::Done ? 1 : 0;
    return count;
  };
  const folds::CureOfGroup* last = nullptr;
  for (const auto* one : on_top())
    if (!last || (last->coated.order == one->coated.order && reached(*one) < reached(*last)))
      last = one;
  if (!last)
    return {bondCount() == 0   ? tr("nothing sprayed is logged")
            : bondCount() == 1 ? tr("1 bonded part")
                               : tr("%1 bonded parts").arg(bondCount()),
            StateKind::None};
  if (const auto* next = next_milestone(*last))
    return {tr("%1, %2: %3")
                .arg(sentence(words_of(last->group)), words_of(next->milestone),
                     short_standing(*last, *next, seen())),
            standing_words(*last, *next, seen()).shape};
  const auto* product = session_.shop().air.find(last->product);
  const bool heat = product && (product->said.cure == trade::CureKind::TwoPack ||
                                product->said.cure == trade::CureKind::Infrared);
  if (heat && last->result && *last->result)
    return {tr("all milestones are reached"), StateKind::Done};
  return clock_words_of(*last, product, seen());
}

QString CureViewModel::rowWords() const {
  return row().words;
}

int CureViewModel::rowShape() const {
  return shape_of(row().shape);
}

std::vector<Countdown> CureViewModel::countdowns() const {
  constexpr double told_s = 30 * 60;
  std::vector<Countdown> out;
  const auto* car = session_.car();
  if (!car || !writable()) return out;
  const double since_s = (static_cast<double>(session_.now().since_boot_ms) -
                          static_cast<double>(work_.at().since_boot_ms)) /
                         1000;
  for (const auto* one : on_top()) {
    const auto* next = next_milestone(*one);
    if (!next || next->word != CureWord::NotYet || !next->reached_min) continue;
    if (next->milestone == CureMilestone::DustFree) continue;  // nobody waits for it
    const double left_s = std::max(0.0, (*next->reached_min - one->asked->now_min) * 60 - since_s);
    if (left_s > told_s) continue;
    const QString what =
        tr("%1 %2, %3").arg(session_.carTitle(), words_of(one->group), words_of(next->milestone));
    Countdown count;
    count.key = QStringLiteral("cure ") + key_of(*one) + text(word_of(next->milestone));
    count.margin = tr("%1 %2").arg(what, short_standing(*one, *next, seen()));
    count.row =
        tr("%1: about %2")
            .arg(what, left_s > 60 ? duration_words(std::llround(left_s * 1000)) : tr("now"));
    count.left_s = left_s;
    count.shape = StateKind::NotYet;
    out.push_back(std::move(count));
  }
  return out;
}

QString CureViewModel::mainText() const {
  if (!writable()) return {};
  return readable() ? tr("Log panel temperature") : tr("Mix and coats");
}

std::optional<job::PanelGroup> CureViewModel::waits_for_reading() const {
  const folds::CureOfGroup* best = nullptr;
  for (const auto* each : on_top()) {
    const auto& one = *each;
    const bool again = !one.read_at || one.read_again;
    const bool best_again = best && (!best->read_at || best->read_again);
    if (!best || (again && !best_again) ||
        (again == best_again && one.read_at && best->read_at &&
         one.read_at->order < best->read_at->order))
      best = &one;
  }
  return best ? std::optional(best->group) : std::nullopt;
}

QString CureViewModel::mainSecond() const {
  if (mainText().isEmpty()) return {};
  if (mainWaits()) return tr("say who you are first");
  if (!readable()) return tr("what was sprayed");
  const auto next = waits_for_reading();
  return next ? words_of(*next) : QString();
}

QString CureViewModel::groupTitle() const {
  return group_ ? sentence(words_of(*group_)) : QString();
}

void CureViewModel::startReading() {
  group_ = waits_for_reading();
  refusal_.clear();
  show_groups();
  emit changed();
}

void CureViewModel::chooseGroup(const QString& group) {
  group_ = from_word<job::PanelGroup>(group.toStdString());
  refusal_.clear();
  show_groups();
  emit changed();
}

QString CureViewModel::logWords(int typed, bool minus) const {
  if (typed < 0) return {};
  return tr("Log %1").arg(
      temperature_words(celsius_of(minus ? -typed : typed, session_.units()), session_.units()));
}

void CureViewModel::logTemperature(int typed, bool minus) {
  const auto* car = session_.car();
  if (!car || !group_ || typed < 0 || !writable()) return;
  const double surface_c = celsius_of(minus ? -typed : typed, session_.units());
  if (surface_c < least_surface_c || surface_c > most_surface_c) {
    refusal_ = tr("No panel is %1. It takes %2 to %3.")
                   .arg(temperature_words(surface_c, session_.units()),
                        temperature_words(least_surface_c, session_.units()),
                        temperature_words(most_surface_c, session_.units()));
    emit changed();
    return;
  }
  refusal_.clear();
  const auto group = *group_;
  session_.post(acts::ReadPanelTemperature{car->job, group, surface_c},
                [this, group](const Result<engine::Wrote>& wrote) {
                  if (!wrote) return;
                  // The next one that nobody read since its coat.
                  group_.reset();
                  for (const auto* one : on_top())
                    if (!group_ && one->group != group && (!one->read_at || one->read_again))
                      group_ = one->group;
                  show_groups();
                  emit changed();
                  emit logged();
                  if (!group_) emit allRead();
                });
}

void CureViewModel::checkThumbnail(const QString& key, bool firm) {
  const auto* car = session_.car();
  const auto* one = clock(key);
  if (car && one && writable()) session_.post(acts::CheckThumbnail{car->job, one->group, firm});
}

bool CureViewModel::openSum(const QString& key) {
  const auto* one = clock(key);
  if (!one || !one->result || !*one->result) return false;
  const auto* next = next_milestone(*one);
  sum_.show(sentence(words_of(one->group)),
            next ? tr("%1: %2").arg(sentence(words_of(next->milestone)),
                                    standing_words(*one, *next, seen()).words)
                 : tr("All milestones are reached"),
            (*one->result)->basis, session_.units(),
            tr("Minutes are counted from the last coat, %1.")
                .arg(time_words(one->coated.wall_ms, session_.now().wall_ms, session_.zone())));
  return true;
}

bool CureViewModel::openBondSum(const QString& key) {
  for (const auto& one : work_.bonds()) {
    if (text(one.bond.hex()) != key) continue;
    const auto now_ms = session_.now().wall_ms;
    if (one.result && *one.result) {
      const bool over = one.drive_from_ms && *one.drive_from_ms <= now_ms;
      sum_.show(
          sentence(text(one.what)),
          over ? tr("Its time of the maker's table is over")
               : do_not_drive_words(folds::DoNotDrive{one.drive_from_ms}, now_ms, session_.zone()),
          (*one.result)->basis, session_.units(), drive_away_note(one, session_.units()));
      return true;
    }
    if (one.strength && *one.strength) {
      sum_.show(sentence(text(one.what)), tr("Handling and full strength"), (*one.strength)->basis,
                session_.units());
      return true;
    }
  }
  return false;
}

}  // namespace jambline::screens
