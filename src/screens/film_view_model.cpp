#include "screens/film_view_model.h"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "folds/planned_car.h"
#include "screens/correct_words.h"
#include "screens/map_geometry.h"
#include "screens/panel_rows.h"
#include "screens/words.h"

namespace jambline::screens {

using job::FilmGauge;
using job::FilmUnit;
using job::FilmWhen;

FilmViewModel::FilmViewModel(Session& session, QObject* parent)
    : QObject(parent),
      session_(session),
      sum_(this),
      spots_({"key", "placed", "xMm", "yMm", "chosen", "words", "spoken"}, this),
      readings_({"key", "words", "chosen", "spoken"}, this),
      kept_({"key", "title", "words", "mean", "note", "chosen", "spoken"}, this),
      result_(fail(Code::Missing, "read the film", "panel")) {
  connect(&session_, &Session::carOrShopChanged, this, &FilmViewModel::refresh);
  connect(&session_, &Session::unitsChanged, this, [this] {
    unit_ = session_.units() == Units::Us ? FilmUnit::Mil : FilmUnit::Micron;
    refresh();
  });
  unit_ = session_.units() == Units::Us ? FilmUnit::Mil : FilmUnit::Micron;
  refresh();
}

const folds::PanelView* FilmViewModel::view() const {
  return session_.car() && panel_ ? session_.car()->find(*panel_) : nullptr;
}

const job::PatternPanel* FilmViewModel::drawing() const {
  return view() ? job::pattern(session_.car()->body).find(*panel_) : nullptr;
}

void FilmViewModel::openPanel(const QString& panel) {
  const auto wanted = panel_of_word(panel);
  const bool planned = wanted && session_.car() && session_.car()->find(*wanted);
  panel_ = planned ? wanted : std::nullopt;
  places_.clear();
  chosen_.reset();
  corrects_.reset();
  wrong_.clear();
  thick_ = false;
  guess();
  refresh();
  if (view()) session_.engine().want_lessons();
}

// What is read most likely: at prep the total, later before cutting, after rounds what is left.
void FilmViewModel::guess() {
  const folds::PanelView* panel = view();
  if (!panel) return;
  const folds::CarView& car = *session_.car();
  bool painted = panel->verdict != job::Verdict::NotLookedAt || !panel->marks.empty() ||
                 !panel->rounds.empty();
  for (const auto& stage : car.stages)
    painted = painted || (stage.stage == job::Stage::Spray && stage.done);
  const folds::FilmView* last = panel->film.empty() ? nullptr : &panel->film.back();
  const bool cut =
      last && std::any_of(panel->rounds.begin(), panel->rounds.end(),
                          [&](const auto& round) { return last->order < round.order; });
  when_ = !painted ? FilmWhen::BeforeBase : cut ? FilmWhen::AfterSequence : FilmWhen::BeforeCutting;
  const bool metal = trade::is_metal(panel->plan.substrate);
  gauge_ = !metal                                   ? FilmGauge::Clear
           : when_ == FilmWhen::BeforeBase || !last ? FilmGauge::Total
                                                    : last->gauge;
  spot_ = next_spot(0);
}

void FilmViewModel::refresh() {
  const std::optional<JobId> now =
      session_.car() ? std::optional(session_.car()->job) : std::nullopt;
  if (now != job_) {
    job_ = now;
    typed_.clear();
    places_.clear();
    panel_.reset();
    chosen_.reset();
    corrects_.reset();
    wrong_.clear();
  }
  if (corrects_ && !corrected()) corrects_.reset();
  if (const auto& lessons = session_.snapshot().lessons;
      lessons && lessons.get() != lessons_seen_) {
    lessons_seen_ = lessons.get();
    learned_ = folds::shop_lessons(*lessons).sequences;
  }
  work_out();
  show_rows();
  emit changed();
}

void FilmViewModel::work_out() {
  if (!view()) {
    film_ = {};
    said_ = {};
    result_ = fail(Code::Missing, "read the film", "panel");
    return;
  }
  film_ = folds::film_of_panel(*view(), {folds::whole_sequence()}, learned_);
  result_ = trade::film_budget(film_.budget);
  said_ = say_film(film_, result_, units_of_film(unit_));
}

QString FilmViewModel::typed_key() const {
  return QStringLiteral("%1/%2/%3/%4/%5")
      .arg(panel())
      .arg(spot_)
      .arg(when())
      .arg(gauge())
      .arg(static_cast<int>(unit_));
}

std::vector<double>& FilmViewModel::typed() {
  return typed_[typed_key()];
}

const std::vector<double>& FilmViewModel::typed() const {
  static const std::vector<double> none;
  const auto found = typed_.find(typed_key());
  return found == typed_.end() ? none : found->second;
}

const folds::FilmView* FilmViewModel::corrected() const {
  if (corrects_ && view())
    for (const auto& film : view()->film)
      if (film.reading == *corrects_) return &film;
  return nullptr;
}

bool FilmViewModel::has_reading(int spot) const {
  const auto& films = view()->film;
  return std::any_of(films.begin(), films.end(), [&](const auto& film) {
    if (film.spot != spot || film.when != when_ || film.gauge != gauge_) return false;
    if (when_ != FilmWhen::AfterSequence) return true;
    const auto& rounds = view()->rounds;  // one after later rounds is a reading of its own
    return std::none_of(rounds.begin(), rounds.end(),
                        [&](const auto& round) { return film.order < round.order; });
  });
}

std::vector<int> FilmViewModel::known_spots() const {
  std::vector<int> out;
  const auto add = [&](int spot) {
    if (std::find(out.begin(), out.end(), spot) == out.end()) out.push_back(spot);
  };
  if (view())
    for (const auto& film : view()->film) add(film.spot);
  add(spot_);
  std::sort(out.begin(), out.end());
  return out;
}

int FilmViewModel::next_spot(int after) const {
  int most = 0;
  std::vector<int> spots;
  for (const auto& film : view()->film) {
    spots.push_back(film.spot);
    most = std::max(most, film.spot);
  }
  std::sort(spots.begin(), spots.end());
  for (const int spot : spots)
    if (spot > after && !has_reading(spot)) return spot;
  return std::min(std::max(most, after) + 1, job::most_spots);
}

std::optional<FilmViewModel::Place> FilmViewModel::worst_mark() const {
  const folds::MarkView* worst = nullptr;
  for (const auto& mark : view()->marks)
    if (mark.open() && (!worst || mark.size > worst->size)) worst = &mark;
  return worst ? std::optional(Place{worst->x_mm, worst->y_mm}) : std::nullopt;
}

std::optional<FilmViewModel::Place> FilmViewModel::place_of(int spot) const {
  if (const auto tapped = places_.find(spot); tapped != places_.end()) return tapped->second;
  std::optional<Place> out;
  for (const auto& film : view()->film)
    if (film.spot == spot && film.x_mm && film.y_mm) out = Place{*film.x_mm, *film.y_mm};
  if (out || spot != 1) return out;
  if (const auto mark = worst_mark()) return mark;
  const auto middle = label_spot(drawing()->shape.outline, drawing()->shape.glass).middle;
  return Place{middle.x_mm, middle.y_mm};
}

void FilmViewModel::show_rows() {
  std::vector<QVariantList> spots;
  std::vector<QVariantList> readings;
  std::vector<QVariantList> kept;
  if (view() && drawing()) {
    const trade::Placement upright_place = upright(*drawing());
    for (const int spot : known_spots()) {
      const auto place = place_of(spot);
      const trade::Point_mm at =
          place ? upright_place.apply(trade::Point_mm{place->first, place->second})
                : trade::Point_mm{};
      const bool done = has_reading(spot);
      spots.push_back({spot, place.has_value(), at.x_mm, at.y_mm, spot == spot_,
                       done ? tr("read") : tr("not read"),
                       tr("Spot %1, %2").arg(spot).arg(done ? tr("read") : tr("not read"))});
    }
    for (std::size_t i = 0; i < typed().size(); ++i) {
      const QString words = typed_words(typed()[i]);
      const int at = static_cast<int>(i);
      readings.push_back(
          {at, words, chosen_ == at, tr("Reading %1, %2. Type it again.").arg(at + 1).arg(words)});
    }
    for (const auto& film : view()->film) {
      const QString title =
          tr("Spot %1 · %2 · %3").arg(film.spot).arg(words_of(film.when), words_of(film.gauge));
      const QString words = readings_words(film.typed, film.unit);
      const QString mean = film_words(film.mean_um, units_of_film(unit_));
      kept.push_back({QString::fromStdString(film.reading.hex()), title, words, mean,
                      taken_words(film), corrects_ == film.reading,
                      tr("%1: %2, mean %3. Opens it to type again.").arg(title, words, mean)});
    }
  }
  spots_.set(std::move(spots));
  readings_.set(std::move(readings));
  kept_.set(std::move(kept));
}

QString FilmViewModel::panel() const {
  return panel_ ? word_of_panel(*panel_) : QString();
}

QString FilmViewModel::panelTitle() const {
  return view() ? sentence(words_of(*panel_, session_.car()->body)) : QString();
}

QString FilmViewModel::panelFacts() const {
  if (!view()) return {};
  return QStringList{words_of(view()->plan.substrate), words_of(view()->plan.finish),
                     words_of(view()->plan.treatment)}
      .join(QStringLiteral(" · "));
}

QString FilmViewModel::askedWords() const {
  if (!view() || !asks_reading(film_, result_) || view()->open_marks() == 0) return {};
  return tr("One reading at the worst mark says more than the estimate.");
}

double FilmViewModel::afterUm() const {
  return result_ && !result_->after.empty() ? result_->after.back().left.mean_um : clearUm();
}

QString FilmViewModel::afterWords() const {
  return known() ? film_words(std::max(0.0, afterUm()), units_of_film(unit_)) : QString();
}

QString FilmViewModel::keepWords() const {
  return tr("keep %1").arg(film_number_words(keepUm(), units_of_film(unit_)));
}

QStringList FilmViewModel::whens() const {
  QStringList out;
  for (std::size_t i = 0; i < enum_words<FilmWhen>.size(); ++i)
    out << sentence(words_of(static_cast<FilmWhen>(i)));
  return out;
}

QStringList FilmViewModel::gauges() const {
  return {tr("Total, to metal"), tr("Clear, ultrasonic")};
}

QString FilmViewModel::gaugeWords() const {
  if (!view()) return {};
  if (gauge_ == FilmGauge::Total && !trade::is_metal(view()->plan.substrate))
    return tr("This gauge reads nothing on %1. Use an ultrasonic gauge, or the coats.")
        .arg(words_of(view()->plan.substrate));
  if (gauge_ == FilmGauge::Clear && when_ == FilmWhen::BeforeBase)
    return tr("Before base there is no clear to read. Read the total.");
  return {};
}

QString FilmViewModel::hintWords() const {
  if (!view()) return {};
  if (!gaugeWords().isEmpty()) return gaugeWords();
  const auto& films = view()->film;
  const bool paired = gauge_ != FilmGauge::Total || when_ == FilmWhen::BeforeBase ||
                      std::any_of(films.begin(), films.end(), [&](const auto& film) {
                        return film.spot == spot_ && film.when == FilmWhen::BeforeBase;
                      });
  if (!paired)
    return tr("No total of this spot before base: a total now says nothing of the clear.");
  return tr("Three readings or more inside a circle of 4 cm");
}

// What a reading after work says of the one before it.
QString FilmViewModel::taken_words(const folds::FilmView& film) const {
  if (!film.taken_um) return {};
  const QString much = film_words(std::abs(*film.taken_um), units_of_film(unit_));
  return *film.taken_um < 0 ? tr("%1 more than before the work: spot or gauge differ").arg(much)
                            : tr("%1 taken since the one before").arg(much);
}

QString FilmViewModel::spotWords() const {
  return corrected() ? tr("Spot %1 again").arg(spot_) : tr("Spot %1").arg(spot_);
}

double FilmViewModel::mean_um() const {
  const auto& all = typed();
  if (all.empty()) return 0;
  return in_um(std::accumulate(all.begin(), all.end(), 0.0) / static_cast<double>(all.size()));
}

QString FilmViewModel::meanWords() const {
  if (typed().empty()) return tr("no reading yet");
  return tr("mean of %1: %2").arg(readingCount()).arg(film_words(mean_um(), units_of_film(unit_)));
}

int FilmViewModel::digits() const {
  return (tenths() ? 2 : 3) + (thick_ ? 1 : 0);
}

QString FilmViewModel::unitWords() const {
  return words_of(unit_);
}

QString FilmViewModel::unitKey() const {
  return words_of(unit_ == FilmUnit::Mil ? FilmUnit::Micron : FilmUnit::Mil);
}

QString FilmViewModel::thickWords() const {
  return tenths() ? tr("10 mil and more") : tr("1,000 µm and more");
}

QString FilmViewModel::correcting() const {
  return corrected() ? QString::fromStdString(corrects_->hex()) : QString();
}

QString FilmViewModel::mainText() const {
  if (!view()) return {};
  if (!session_.hasPerson()) return tr("Say who you are first");
  if (pending_ >= 0) return tr("Take %1").arg(typed_words(tenths() ? pending_ / 10.0 : pending_));
  const int missing = job::least_readings - readingCount();
  if (missing == 1) return tr("%1: 1 reading more").arg(spotWords());
  if (missing > 1) return tr("%1: %2 readings more").arg(spotWords()).arg(missing);
  return corrected() ? tr("Keep spot %1 as typed now").arg(spot_)
                     : tr("Keep spot %1, next spot").arg(spot_);
}

QString FilmViewModel::mainSecond() const {
  return readingCount() > 0 ? meanWords() : QString();
}

bool FilmViewModel::mainWaits() const {
  if (!view() || !session_.hasPerson() || !gaugeWords().isEmpty()) return true;
  return pending_ < 0 && !may_keep();
}

bool FilmViewModel::may_keep() const {
  return view() && session_.hasPerson() && !session_.readOnly() &&
         session_.car()->unknown_entries == 0 && readingCount() >= job::least_readings &&
         gaugeWords().isEmpty();
}

}  // namespace jambline::screens
