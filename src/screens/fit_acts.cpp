// What a finger or a key does on the fit screen, and what it says about that.
#include <algorithm>
#include <cmath>

#include "job/body_shape.h"
#include "screens/fit_view_model.h"
#include "screens/map_geometry.h"
#include "screens/panel_rows.h"
#include "screens/shot_rows.h"
#include "screens/visit_words.h"
#include "screens/words.h"

namespace jambline::screens {

using job::FitRound;
using job::Stage;

namespace {
constexpr double most_gap_mm = 50;
constexpr double most_flush_mm = 30;
constexpr double most_move_mm = 100;
constexpr int most_spots = 40;

QString word_of_stage(Stage stage) {
  const std::string_view word = word_of(stage);
  return QString::fromUtf8(word.data(), static_cast<qsizetype>(word.size()));
}
}  // namespace

QString FitViewModel::panel() const {
  return panel_ ? word_of_panel(*panel_) : QString();
}

QString FitViewModel::panelTitle() const {
  return panel_ && car() ? sentence(words_of(*panel_, car()->body)) : QString();
}

QString FitViewModel::title() const {
  const auto& edges = edges_of();
  if (edges.empty()) return tr("Fit");
  return tr("%1 to %2")
      .arg(panelTitle(), neighbor_words(edges[static_cast<std::size_t>(edge_)], car()->body));
}

QString FitViewModel::datumWords() const {
  if (!panel_ || !car()) return {};
  const auto datum = job::datum_of(car()->body, *panel_);
  return datum ? tr("Set to the %1, which stays.").arg(words_of(*datum, car()->body))
               : tr("Set to the structure, which stays.");
}

QStringList FitViewModel::rounds() const {
  return {tr("Trial fit, before paint"), tr("After hanging")};
}

QString FitViewModel::edgeFrom() const {
  const auto& edges = edges_of();
  return edges.empty() ? QString() : end_words(edges[static_cast<std::size_t>(edge_)].from);
}

QString FitViewModel::edgeTo() const {
  const auto& edges = edges_of();
  return edges.empty() ? QString()
                       : end_words(job::opposite(edges[static_cast<std::size_t>(edge_)].from));
}

QString FitViewModel::wantedWords() const {
  if (!panel_) return {};
  const auto found = drafts_.find(*panel_);
  if (found == drafts_.end()) return {};
  std::optional<double> low;
  std::optional<double> high;
  for (const Spot& one : found->second.spots) {
    if (one.edge != edge_) continue;
    const double mm = wanted_mm(one);
    low = std::min(low.value_or(mm), mm);
    high = std::max(high.value_or(mm), mm);
  }
  if (!low) return {};
  return wanted_span_words(*low, *high);
}

QString FitViewModel::answerNote() const {
  const FitRound round = last() ? last()->round : round_;
  if (said_.answer == FitAnswer::Inside)
    return round == FitRound::TrialFit && guessed_round() == FitRound::TrialFit
               ? tr("Mark hinges and latch now, and take their picture.")
               : QString();
  if (!said_.moves_any()) return {};
  const QString rigid =
      tr("For a rigid panel: hinge-side lift, bump stops, striker pull and a bent panel are not in "
         "it.");
  const QString first =
      round == FitRound::TrialFit
          ? tr("Tape or guard both edges first.")
          : tr("Painted panels go to their witness marks first. Tape or guard both edges: a move "
               "by slot chips them.");
  return first + QChar(' ') + rigid;
}

QString FitViewModel::marksWords() const {
  const auto wanted = marks_shot();
  if (!wanted) return {};
  switch (wanted->state) {
    case folds::ShotState::Missing:
      return tr("no picture yet");
    case folds::ShotState::KeptThoughPoor:
      return tr("in a poor picture");
    default:
      return tr("in the picture");
  }
}

int FitViewModel::marksShape() const {
  const auto wanted = marks_shot();
  if (!wanted) return shape_of(StateKind::None);
  return shape_of(wanted->state == folds::ShotState::Missing ? StateKind::Waits : StateKind::Done);
}

QString FitViewModel::marksStage() const {
  return word_of_stage(Stage::BodyAndTrialFit);
}

QString FitViewModel::marksKey() const {
  const auto wanted = marks_shot();
  return wanted ? key_of(*wanted) : QString();
}

QString FitViewModel::shutWords() const {
  if (!car()) return {};
  if (car()->unknown_entries > 0)
    return tr("This car has entries from a newer version. You can read it.");
  return session_.readOnly() ? tr("This device can only read now.") : QString();
}

QString FitViewModel::spot_words(int spot) const {
  const auto found = panel_ ? drafts_.find(*panel_) : drafts_.end();
  if (found == drafts_.end()) return {};
  const auto& spots = found->second.spots;
  if (spot < 0 || spot >= static_cast<int>(spots.size())) return {};
  const auto& edge =
      edges_of()[static_cast<std::size_t>(spots[static_cast<std::size_t>(spot)].edge)];
  return tr("Point %1, to the %2").arg(number_of(spot)).arg(neighbor_words(edge, car()->body));
}

QString FitViewModel::typedTitle() const {
  const Spot* spot = chosen();
  if (!spot) return {};
  if (kind_ == Kind::Wanted)
    return tr("Wanted to the %1")
        .arg(neighbor_words(edges_of()[static_cast<std::size_t>(spot->edge)], car()->body));
  return kind_ == Kind::Flush ? tr("Flush: %1").arg(spot_words(spot_)) : spot_words(spot_);
}

QString FitViewModel::typedNote() const {
  const Spot* spot = chosen();
  if (!spot) return {};
  if (kind_ == Kind::Flush)
    return tr("%1 than the neighbor. A panel behind is flush to 1 mm low of the one ahead.")
        .arg(low_ ? tr("Lower") : tr("Higher"));
  if (kind_ == Kind::Wanted) return tr("For every point of this edge; the carmaker's number wins.");
  const bool typed = wanted_.count({*panel_, spot->edge}) > 0;
  const bool trial =
      round_ == FitRound::AfterHanging &&
      folds::wanted_at(*car(), *panel_, spot->place.at.x_mm, spot->place.at.y_mm).from_trial_fit;
  const QString wanted = gap_words(wanted_mm(*spot));
  if (typed) return tr("wanted %1").arg(wanted);
  return trial ? tr("wanted %1, as the trial fit was set").arg(wanted)
               : tr("wanted %1, the carmaker's number wins").arg(wanted);
}

QString FitViewModel::typedSoFar() const {
  const auto found = panel_ ? drafts_.find(*panel_) : drafts_.end();
  if (found == drafts_.end()) return {};
  QStringList out;
  for (const Spot& one : found->second.spots) {
    if (one.edge != edge_) continue;
    const auto& mm = kind_ == Kind::Flush ? one.flush_mm : one.gap_mm;
    out << (mm ? gap_number(*mm) : QStringLiteral("\u2013"));
  }
  return out.join(QStringLiteral("   "));
}

bool FitViewModel::typedHere() const {
  const Spot* spot = chosen();
  return spot && (kind_ == Kind::Flush ? spot->flush_mm.has_value() : spot->gap_mm.has_value());
}

QString FitViewModel::unitKey() const {
  if (kind_ == Kind::Flush) return low_ ? tr("lower") : tr("higher");
  return thick_ ? tr("below 10") : tr("10 and more");
}

void FitViewModel::setPending(int pending) {
  if (pending == pending_) return;
  pending_ = pending;
  emit changed();
}

int FitViewModel::typedCount() const {
  const auto found = panel_ ? drafts_.find(*panel_) : drafts_.end();
  if (found == drafts_.end()) return 0;
  const auto& spots = found->second.spots;
  return static_cast<int>(std::count_if(spots.begin(), spots.end(),
                                        [](const Spot& one) { return one.gap_mm.has_value(); }));
}

FitViewModel::Act FitViewModel::mainAct() const {
  if (!car() || !writable()) return Act::None;
  if (!panel_) {
    if (!nextPanel().isEmpty()) return Act::OpenPanel;
    return latchAsked() ? Act::CheckLatch : Act::None;
  }
  switch (said_.answer) {
    case FitAnswer::ToMove:
    case FitAnswer::SlotsEnd:
      return said_.moves_any() && typedCount() == 0 ? Act::MoveAsSaid : Act::Measure;
    case FitAnswer::Inside:
      if (typedCount() > 0 || !is_set(*panel_)) return Act::Measure;
      if (latchAsked()) return Act::CheckLatch;
      return nextPanel().isEmpty() ? Act::Measure : Act::NextPanel;
    default:
      return Act::Measure;
  }
}

QString FitViewModel::mainText() const {
  switch (mainAct()) {
    case Act::None:
      return {};
    case Act::OpenPanel:
    case Act::NextPanel: {
      const auto next = panel_of_word(nextPanel());
      const QString words = next ? words_of(*next, car()->body) : QString();
      return mainAct() == Act::OpenPanel ? tr("Fit of the %1").arg(words)
                                         : tr("Next: the %1").arg(words);
    }
    case Act::MoveAsSaid:
      return tr("Moved as said, measure again");
    case Act::CheckLatch:
      return tr("Latch and secondary catch checked");
    case Act::Measure:
      break;
  }
  if (typedCount() > 0) return tr("Go on measuring");
  return last() ? tr("Measure again") : tr("Measure, point 1");
}

QString FitViewModel::mainSecond() const {
  if (mainWaits()) return tr("say who you are first");
  if (mainAct() != Act::Measure || !panel_) return {};
  return rounds()[round()];
}

bool FitViewModel::mainWaits() const {
  const Act act = mainAct();
  return (act == Act::MoveAsSaid || act == Act::CheckLatch) && !session_.hasPerson();
}

QString FitViewModel::keepText() const {
  if (!session_.hasPerson()) return tr("Say who you are first");
  if (pending_ >= 0) return tr("Take %1").arg(gap_words(pending_ / 10.0));
  switch (typedCount()) {
    case 0:
      return tr("Two gaps at least");
    case 1:
      return tr("One gap more");
    default:
      return tr("Keep %1 gaps").arg(typedCount());
  }
}

bool FitViewModel::keepWaits() const {
  return !session_.hasPerson() || !writable() || (pending_ < 0 && typedCount() < 2);
}

QString FitViewModel::nextPanel() const {
  if (!car()) return {};
  for (const auto panel : panels_to_set())
    if (panel != panel_ && !is_set(panel)) return word_of_panel(panel);
  return {};
}

void FitViewModel::openPanel(const QString& panel) {
  const auto wanted = panel_of_word(panel);
  panel_ = wanted && car() && !job::fit_edges(car()->body, *wanted).empty() ? wanted : std::nullopt;
  edge_ = 0;
  spot_ = -1;
  kind_ = Kind::Gap;
  thick_ = low_ = false;
  pending_ = -1;
  wrong_.clear();
  typed_moves_.clear();
  if (car()) round_ = guessed_round();
  if (const auto* fit = last(); fit && !fit->points.empty()) edge_ = draft().spots.front().edge;
  refresh();
}

void FitViewModel::chooseRound(int round) {
  if (round < 0 || round >= static_cast<int>(enum_words<FitRound>.size())) return;
  round_ = static_cast<FitRound>(round);
  refresh();
}

void FitViewModel::chooseEdge(int edge) {
  if (edge < 0 || edge >= static_cast<int>(edges_of().size())) return;
  edge_ = edge;
  spot_ = -1;
  wrong_.clear();
  refresh();
}

void FitViewModel::chooseSpot(int spot) {
  if (!panel_ || spot < 0 || spot >= static_cast<int>(draft().spots.size())) return;
  spot_ = spot;
  edge_ = draft().spots[static_cast<std::size_t>(spot)].edge;
  wrong_.clear();
  refresh();
}

bool FitViewModel::tap(double x_mm, double y_mm, double reach_mm) {
  const auto* drawing = car() && panel_ ? job::pattern(car()->body).find(*panel_) : nullptr;
  if (!drawing) return false;
  const trade::Point_mm at = upright(*drawing).back({x_mm, y_mm});
  auto& spots = draft().spots;
  int best = -1;
  double best_mm = reach_mm;
  for (std::size_t i = 0; i < spots.size(); ++i)
    if (const double away = trade::distance_mm(spots[i].place.at, at); away < best_mm) {
      best_mm = away;
      best = static_cast<int>(i);
    }
  const auto near = job::nearest_edge(edges_of(), at);
  const bool on_edge = near && near->away_mm <= reach_mm;
  // Between two points of the edge a new one is meant.
  if (best >= 0 && (!on_edge || best_mm < reach_mm * 0.7 ||
                    spots.size() >= static_cast<std::size_t>(most_spots))) {
    chooseSpot(best);
    return true;
  }
  if (!on_edge || spots.size() >= static_cast<std::size_t>(most_spots)) return false;
  const Spot fresh{static_cast<int>(near->edge), near->place, near->along_mm, {}, {}, {}};
  const auto where = std::find_if(spots.begin(), spots.end(), [&](const Spot& one) {
    return one.edge == fresh.edge && one.along_mm > fresh.along_mm;
  });
  auto after = where;
  if (where == spots.end())
    for (auto one = spots.begin(); one != spots.end(); ++one)
      if (one->edge == fresh.edge) after = one + 1;
  chooseSpot(static_cast<int>(spots.insert(after, fresh) - spots.begin()));
  return true;
}

void FitViewModel::begin(int kind) {
  if (!panel_ || kind < 0 || kind > static_cast<int>(Kind::Wanted)) return;
  kind_ = static_cast<Kind>(kind);
  wrong_.clear();
  const auto& spots = draft().spots;
  if (!chosen() || chosen()->edge != edge_) {
    int first = -1;
    int open = -1;
    for (std::size_t i = 0; i < spots.size(); ++i) {
      if (spots[i].edge != edge_) continue;
      if (first < 0) first = static_cast<int>(i);
      if (open < 0 && !spots[i].gap_mm) open = static_cast<int>(i);
    }
    spot_ = open >= 0 ? open : first;
  }
  refresh();
}

// To the next point of the edge that has no number yet, then to the next edge.
void FitViewModel::go_on() {
  const auto& spots = draft().spots;
  const auto open = [&](const Spot& one) {
    return kind_ == Kind::Flush ? one.gap_mm && !one.flush_mm : !one.gap_mm;
  };
  const auto count = static_cast<int>(spots.size());
  for (const bool same_edge : {true, false})
    for (int step = 1; step < count; ++step) {
      const int at = (spot_ + step) % count;
      const Spot& one = spots[static_cast<std::size_t>(at)];
      if ((same_edge && one.edge != edge_) || !open(one)) continue;
      spot_ = at;
      edge_ = one.edge;
      return;
    }
}

void FitViewModel::tell_wrong(const QString& words) {
  wrong_ = words;
  refresh();
}

void FitViewModel::type(int value) {
  Spot* spot = panel_ ? chosen() : nullptr;
  if (!spot || value < 0) return;
  pending_ = -1;
  const double mm = value / 10.0;
  if (kind_ == Kind::Flush) {
    if (mm > most_flush_mm) return tell_wrong(tr("%1 is no step of a panel.").arg(gap_words(mm)));
    if (!spot->gap_mm) return tell_wrong(tr("Type the gap of this point first."));
    spot->flush_mm = low_ ? -mm : mm;
  } else {
    if (mm > most_gap_mm)
      return tell_wrong(tr("%1 is no gap. Type it again; the others stand.").arg(gap_words(mm)));
    if (kind_ == Kind::Wanted)
      wanted_[{*panel_, spot->edge}] = mm;
    else
      spot->gap_mm = mm;
  }
  wrong_.clear();
  if (kind_ == Kind::Wanted)
    kind_ = Kind::Gap;
  else
    go_on();
  refresh();
  emit taken();
}

void FitViewModel::pressUnit() {
  if (kind_ == Kind::Flush)
    low_ = !low_;
  else
    thick_ = !thick_;
  emit changed();
}

void FitViewModel::leaveOut() {
  Spot* spot = panel_ ? chosen() : nullptr;
  if (!spot) return;
  spot->flush_mm.reset();
  if (kind_ != Kind::Flush) spot->gap_mm.reset();
  wrong_.clear();
  refresh();
}

void FitViewModel::keep() {
  if (pending_ >= 0) return type(pending_);
  if (!panel_ || keepWaits()) return;
  acts::MeasureFit said{car()->job, *panel_, round_, {}};
  for (const Spot& one : draft().spots) {
    if (!one.gap_mm) continue;
    said.points.push_back({one.place.at.x_mm, one.place.at.y_mm, one.place.direction_deg,
                           *one.gap_mm, wanted_mm(one), one.flush_mm, wanted_flush_mm(one)});
  }
  session_.post(said, [this, panel = *panel_](const Result<engine::Wrote>& wrote) {
    if (!wrote) {
      const ErrorWords why = words_of(wrote.error());
      return tell_wrong(why.what + QChar(' ') + why.kept);
    }
    drafts_.erase(panel);
    spot_ = -1;
    kind_ = Kind::Gap;
    refresh();
    emit kept();
  });
}

void FitViewModel::post_moves(std::vector<job::FastenerMove> moves, bool typed) {
  session_.post(acts::MoveFasteners{car()->job, *panel_, std::move(moves)},
                [this, typed](const Result<engine::Wrote>& wrote) {
                  if (!wrote) {
                    const ErrorWords why = words_of(wrote.error());
                    return tell_wrong(why.what + QChar(' ') + why.kept);
                  }
                  typed_moves_.clear();
                  refresh();
                  if (typed) emit movesKept();
                  emit moved();
                });
}

void FitViewModel::moveAsSaid() {
  if (mainAct() != Act::MoveAsSaid || mainWaits()) return;
  std::vector<job::FastenerMove> moves;
  for (const auto& one : said_.moves)
    if (one.move.x_mm != 0 || one.move.y_mm != 0 || one.move.lift_mm != 0)
      moves.push_back(one.move);
  post_moves(std::move(moves), false);
}

// What can be moved there, with what is proposed for it.
void FitViewModel::show_move_fields() {
  std::vector<QVariantList> rows;
  if (panel_) {
    const job::PanelWays ways = job::ways_of(car()->body, *panel_);
    for (const auto& fastener : job::fasteners_of(car()->body, *panel_)) {
      const auto said = std::find_if(said_.moves.begin(), said_.moves.end(), [&](const auto& one) {
        return one.move.fastener == fastener.fastener_name;
      });
      const auto add = [&](const char* axis, double travel_mm, job::CarWay way, double proposed) {
        if (travel_mm <= 0) return;
        const QString key =
            QString::fromStdString(fastener.fastener_name) + QChar('/') + QString::fromLatin1(axis);
        const auto typed = typed_moves_.find(key);
        const QString text = typed != typed_moves_.end() ? typed->second
                             : proposed == 0             ? QString()
                                                         : gap_number(proposed);
        rows.push_back({key, sentence(fastener_words(fastener.fastener_name)),
                        tr("mm %1; minus is %2").arg(words_of(way), words_of(job::opposite(way))),
                        text});
      };
      const bool known = said != said_.moves.end();
      add("x", fastener.travel_x_mm, ways.x, known ? said->move.x_mm : 0);
      add("y", fastener.travel_y_mm, ways.y, known ? said->move.y_mm : 0);
      add("lift", fastener.travel_lift_mm, ways.lift, known ? said->move.lift_mm : 0);
    }
  }
  move_fields_.set(std::move(rows));
}

void FitViewModel::sayMove(const QString& key, const QString& text) {
  typed_moves_[key] = text;
  wrong_.clear();
  emit changed();
}

bool FitViewModel::keepMoves() {
  if (!panel_ || !writable() || !session_.hasPerson()) return false;
  show_move_fields();
  std::vector<job::FastenerMove> moves;
  for (int row = 0; row < move_fields_.rowCount(); ++row) {
    const QString key = move_fields_.value(row, "key").toString();
    const QString text = move_fields_.value(row, "text").toString().simplified();
    if (text.isEmpty()) continue;
    QString plain = text;
    plain.replace(QChar(0x2212), QLatin1Char('-'));
    const auto mm = typed_number(plain);
    if (!mm || std::abs(*mm) > most_move_mm) {
      tell_wrong(mm ? tr("%1 mm is no move of a slot.").arg(text)
                    : tr("“%1” is no number. Nothing was kept.").arg(text));
      return false;
    }
    if (*mm == 0) continue;
    const std::string name = key.section(QLatin1Char('/'), 0, 0).toStdString();
    if (moves.empty() || moves.back().fastener != name) moves.push_back({name, 0, 0, 0});
    const QString axis = key.section(QLatin1Char('/'), 1);
    (axis == QLatin1String("x")   ? moves.back().x_mm
     : axis == QLatin1String("y") ? moves.back().y_mm
                                  : moves.back().lift_mm) = *mm;
  }
  if (moves.empty()) {
    tell_wrong(tr("Nothing was moved by these numbers."));
    return false;
  }
  post_moves(std::move(moves), true);
  return true;
}

void FitViewModel::checkLatch() {
  if (!latchAsked() || !writable()) return;
  session_.post(acts::SayStep{car()->job, job::Step::LatchAndCatchChecked, true, {}});
}

void FitViewModel::openSum(bool flush) {
  if (flush ? !flushKnown() : !known()) return;
  const QString panel = words_of(*panel_, car()->body);
  const auto& basis = flush ? (*of_->flush)->basis : (*of_->gaps)->basis;
  sum_.show(flush ? tr("Flush of the %1").arg(panel) : tr("Gaps of the %1").arg(panel), said_.word,
            basis, session_.units(),
            tr("For a rigid panel. Hinge-side lift, bump stops, striker pull and a bent panel are "
               "not in it."));
  emit sumOpened();
}

}  // namespace jambline::screens
