#include "screens/fit_words.h"

#include <QCoreApplication>
#include <QLocale>
#include <QStringList>
#include <algorithm>
#include <cmath>

#include "screens/words.h"

namespace jambline::screens {

namespace {
QString fit_tr(const char* words) {
  return QCoreApplication::translate("fit", words);
}

// Of the fasteners that are known: their own names in the entries.
[[maybe_unused]] constexpr const char* fastener_names[] = {
    QT_TRANSLATE_NOOP("fit", "left hinge to hood"),
    QT_TRANSLATE_NOOP("fit", "right hinge to hood"),
    QT_TRANSLATE_NOOP("fit", "left bump stop"),
    QT_TRANSLATE_NOOP("fit", "right bump stop"),
    QT_TRANSLATE_NOOP("fit", "latch"),
    QT_TRANSLATE_NOOP("fit", "left hinge to lid"),
    QT_TRANSLATE_NOOP("fit", "right hinge to lid"),
    QT_TRANSLATE_NOOP("fit", "striker"),
    QT_TRANSLATE_NOOP("fit", "left hinge"),
    QT_TRANSLATE_NOOP("fit", "right hinge"),
    QT_TRANSLATE_NOOP("fit", "left striker"),
    QT_TRANSLATE_NOOP("fit", "right striker"),
    QT_TRANSLATE_NOOP("fit", "upper hinge to body"),
    QT_TRANSLATE_NOOP("fit", "lower hinge to body"),
    QT_TRANSLATE_NOOP("fit", "upper roller"),
    QT_TRANSLATE_NOOP("fit", "lower roller"),
    QT_TRANSLATE_NOOP("fit", "middle roller"),
    QT_TRANSLATE_NOOP("fit", "upper rear bolt"),
    QT_TRANSLATE_NOOP("fit", "lower rear bolt"),
    QT_TRANSLATE_NOOP("fit", "upper front bolt"),
    QT_TRANSLATE_NOOP("fit", "left bracket"),
    QT_TRANSLATE_NOOP("fit", "right bracket"),
    QT_TRANSLATE_NOOP("fit", "middle support")};

double tenths(double mm) {
  return std::round(mm * 10) / 10;
}

const trade::PanelFitResult* good(const std::optional<Result<trade::PanelFitResult>>& of) {
  return of && *of ? &**of : nullptr;
}

struct Off {
  std::string point;
  double now_mm = 0;    // where it is
  double after_mm = 0;  // where it comes
  double off_now_mm = 0;
  double off_after_mm = 0;
  bool flush = false;
};

struct Numbers {
  std::vector<Off> points;
  double tolerance_mm = 0.5;
  double wanted_low_mm = 1e9;
  double wanted_high_mm = -1e9;
  const Off* worst_now() const { return worst(&Off::off_now_mm); }
  const Off* worst_after() const { return worst(&Off::off_after_mm); }

 private:
  const Off* worst(double Off::*by) const {
    const auto found = std::max_element(
        points.begin(), points.end(),
        [by](const Off& a, const Off& b) { return std::abs(a.*by) < std::abs(b.*by); });
    return found == points.end() ? nullptr : &*found;
  }
};

void add(Numbers& out, const trade::PanelFit& asked, const trade::PanelFitResult& result) {
  out.tolerance_mm = asked.tolerance_mm;
  for (std::size_t i = 0; i < asked.points.size(); ++i) {
    const auto& point = asked.points[i];
    const auto& said = result.points[i];
    out.points.push_back({point.name, said.before_mm, said.after_mm,
                          said.before_mm - point.wanted_mm, said.off_mm, asked.flush});
    if (asked.flush) continue;
    out.wanted_low_mm = std::min(out.wanted_low_mm, point.wanted_mm);
    out.wanted_high_mm = std::max(out.wanted_high_mm, point.wanted_mm);
  }
}

QString at_point(const Off& off) {
  return off.flush ? fit_tr("point %1, flush").arg(QString::fromStdString(off.point))
                   : fit_tr("point %1").arg(QString::fromStdString(off.point));
}

// "3.5 to 4.5", or how far all may be from what is wanted.
QString band_words(const Numbers& numbers) {
  if (numbers.wanted_high_mm - numbers.wanted_low_mm < 0.05)
    return fit_tr("inside %1 to %2 mm")
        .arg(gap_number(numbers.wanted_low_mm - numbers.tolerance_mm),
             gap_number(numbers.wanted_low_mm + numbers.tolerance_mm));
  return fit_tr("within %1 mm of what is wanted").arg(gap_number(numbers.tolerance_mm));
}

QString ends_words(const std::vector<FitMoveSaid>& moves) {
  QStringList names;
  for (const auto& one : moves)
    if (one.at_its_end) names << one.name;
  if (names.isEmpty()) return {};
  return names.size() == 1 ? fit_tr("%1 is at its end").arg(sentence(names.first()))
                           : fit_tr("%1 are at their ends").arg(sentence(names.join(fit_tr(", "))));
}

// Where several slots end at once, each of them is said.
bool at_an_end(const folds::FitOfPanel& of, const trade::FitMove& move, bool is_flush) {
  constexpr double near_mm = 1e-6;
  const auto& asked = is_flush ? of.flush_asked->fasteners : of.gaps_asked.fasteners;
  return std::any_of(asked.begin(), asked.end(), [&](const trade::FitFastener& one) {
    return one.name == move.fastener &&
           (std::abs(move.x_mm) > one.travel_x_mm - near_mm ||
            (!is_flush && std::abs(move.y_mm) > one.travel_y_mm - near_mm));
  });
}

std::vector<FitMoveSaid> moves_of(const folds::CarView& car, const folds::FitView& fit,
                                  const folds::FitOfPanel& of, const trade::PanelFitResult* gaps,
                                  const trade::PanelFitResult* flush) {
  std::vector<FitMoveSaid> out;
  const job::PanelWays ways = job::ways_of(car.body, fit.panel);
  for (const auto& fastener : job::fasteners_of(car.body, fit.panel)) {
    FitMoveSaid one;
    one.move.fastener = fastener.fastener_name;
    one.at = {fastener.x_mm, fastener.y_mm};
    one.name = fastener_words(fastener.fastener_name);
    bool asked = false;
    const auto take = [&](const trade::PanelFitResult* result, bool is_flush) {
      if (!result) return;
      for (const auto& move : result->moves) {
        if (move.fastener != fastener.fastener_name) continue;
        asked = true;
        one.at_its_end =
            one.at_its_end || (result->stopped_by_slots && at_an_end(of, move, is_flush));
        if (is_flush) {
          one.move.lift_mm = tenths(move.x_mm);
        } else {
          one.move.x_mm = tenths(move.x_mm);
          one.move.y_mm = tenths(move.y_mm);
        }
      }
    };
    take(gaps, false);
    take(flush, true);
    if (!asked) continue;
    one.words = move_words(one.move, ways);
    if (one.words.isEmpty()) one.words = fit_tr("stays");
    out.push_back(std::move(one));
  }
  return out;
}

QString datum_words(const folds::CarView& car, const folds::FitView& fit) {
  return fit.datum ? fit_tr("the %1").arg(words_of(*fit.datum, car.body)) : fit_tr("the structure");
}

FitSaid plain(FitAnswer answer, StateKind state, const QString& word, const QString& more) {
  return {answer, state, word, more, {}};
}
}  // namespace

QString gap_number(double mm) {
  QString out = QLocale::c().toString(std::abs(tenths(mm)), 'f', 1);
  return tenths(mm) < 0 ? QChar(0x2212) + out : out;
}

QString gap_words(double mm) {
  return fit_tr("%1 mm").arg(gap_number(mm));
}

QString wanted_span_words(double low_mm, double high_mm) {
  if (high_mm - low_mm < 0.05) return fit_tr("wanted %1").arg(gap_words(low_mm));
  return fit_tr("wanted %1 to %2").arg(gap_number(low_mm), gap_words(high_mm));
}

QString fastener_words(const std::string& fastener_name) {
  return fit_tr(fastener_name.c_str());
}

QString neighbor_words(const job::FitEdge& edge, job::BodyShape body) {
  return edge.neighbor ? words_of(*edge.neighbor, body) : fit_tr("cowl");
}

QString words_of(job::CarWay way) {
  using job::CarWay;
  switch (way) {
    case CarWay::Front:
      return fit_tr("towards the front");
    case CarWay::Rear:
      return fit_tr("towards the rear");
    case CarWay::Left:
      return fit_tr("towards the left");
    case CarWay::Right:
      return fit_tr("towards the right");
    case CarWay::Up:
      return fit_tr("up");
    case CarWay::Down:
      return fit_tr("down");
    case CarWay::Out:
      return fit_tr("out");
    case CarWay::In:
      break;
  }
  return fit_tr("in");
}

QString end_words(job::CarWay way) {
  using job::CarWay;
  switch (way) {
    case CarWay::Front:
      return fit_tr("front");
    case CarWay::Rear:
      return fit_tr("rear");
    case CarWay::Left:
      return fit_tr("left");
    case CarWay::Right:
      return fit_tr("right");
    case CarWay::Up:
      return fit_tr("top");
    default:
      return fit_tr("bottom");
  }
}

QString move_words(const job::FastenerMove& move, const job::PanelWays& ways) {
  QStringList parts;
  const auto add = [&](double mm, job::CarWay positive) {
    if (std::abs(mm) < 0.05) return;
    parts << fit_tr("%1 %2").arg(gap_words(std::abs(mm)),
                                 words_of(mm > 0 ? positive : job::opposite(positive)));
  };
  add(move.x_mm, ways.x);
  add(move.y_mm, ways.y);
  add(move.lift_mm, ways.lift);
  return parts.join(fit_tr(", "));
}

bool FitSaid::moves_any() const {
  return std::any_of(moves.begin(), moves.end(), [](const FitMoveSaid& one) {
    return one.move.x_mm != 0 || one.move.y_mm != 0 || one.move.lift_mm != 0;
  });
}

FitSaid say_fit(const folds::CarView& car, const folds::FitView* fit,
                const std::optional<folds::FitOfPanel>& of) {
  if (!fit || !of)
    return plain(FitAnswer::NotMeasured, StateKind::Unseen, fit_tr("Not measured"),
                 fit_tr("Two points at least; along two edges they say more."));
  if (!of->gaps)
    return plain(FitAnswer::TooFew, StateKind::NotYet, fit_tr("One point says nothing of a move"),
                 fit_tr("Measure two at least."));
  const trade::PanelFitResult* gaps = good(of->gaps);
  const trade::PanelFitResult* flush = good(of->flush);
  if (!gaps)
    return plain(FitAnswer::NoAnswer, StateKind::Must, fit_tr("These points give no answer"),
                 words_of(of->gaps->error()).todo);
  if (folds::moved_since(car, *fit))
    return plain(FitAnswer::MovedSince, StateKind::Waits, fit_tr("Moved, not measured again"),
                 fit_tr("The gaps shown are from before the move."));

  Numbers numbers;
  add(numbers, of->gaps_asked, *gaps);
  if (flush && of->flush_asked) add(numbers, *of->flush_asked, *flush);
  const auto count = static_cast<int>(of->gaps_asked.points.size());
  const Off& now = *numbers.worst_now();
  const Off& after = *numbers.worst_after();
  FitSaid out;
  if (std::abs(now.off_now_mm) <= numbers.tolerance_mm) {
    return plain(FitAnswer::Inside, StateKind::Done,
                 fit_tr("All %1 points are %2").arg(count).arg(band_words(numbers)),
                 fit_tr("Farthest off: %1 at %2.").arg(gap_words(now.now_mm), at_point(now)));
  }
  out.moves = moves_of(car, *fit, *of, gaps, flush);
  if (gaps->datum_is_out || (flush && flush->datum_is_out)) {
    out.answer = FitAnswer::DatumOut;
    out.state = StateKind::Must;
    out.word = fit_tr("The datum itself is out: measure structure");
    out.more = fit_tr(
                   "No rigid move brings all points right: %1 stays at %2. Either %3 is out or a "
                   "panel is bent. Measure that point again first.")
                   .arg(at_point(after), gap_words(after.after_mm), datum_words(car, *fit));
    return out;
  }
  const bool reached = gaps->reached && (!flush || flush->reached);
  if (!reached) {
    out.answer = FitAnswer::SlotsEnd;
    out.state = StateKind::Must;
    const QString ends = ends_words(out.moves);
    out.word = ends.isEmpty() ? fit_tr("Cannot be reached with these slots")
                              : fit_tr("Cannot be reached with these slots: %1")
                                    .arg(ends.left(1).toLower() + ends.mid(1));
    out.more = fit_tr("At best %1 comes to %2.").arg(at_point(after), gap_words(after.after_mm));
    return out;
  }
  out.answer = FitAnswer::ToMove;
  out.state = StateKind::Waits;
  out.word = fit_tr("After this move all %1 points come %2").arg(count).arg(band_words(numbers));
  out.more = fit_tr("Farthest off then: %1 at %2.").arg(gap_words(after.after_mm), at_point(after));
  return out;
}

}  // namespace jambline::screens
