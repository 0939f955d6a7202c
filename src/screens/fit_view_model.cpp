#include "screens/fit_view_model.h"

#include <algorithm>
#include <cmath>

#include "job/body_shape.h"
#include "screens/map_geometry.h"
#include "screens/panel_rows.h"
#include "screens/visit_words.h"
#include "screens/words.h"

namespace jambline::screens {

using job::FitRound;
using job::Panel;
using job::Stage;

namespace {
// From what is welded on: each is set to the one before it.
constexpr Panel order_of_setting[] = {
    Panel::LeftRearDoor,   Panel::RightRearDoor, Panel::SlidingDoor,    Panel::LeftFrontDoor,
    Panel::RightFrontDoor, Panel::LeftFender,    Panel::RightFender,    Panel::Hood,
    Panel::FrontBumper,    Panel::Decklid,       Panel::Hatch,          Panel::Liftgate,
    Panel::Tailgate,       Panel::LeftCargoDoor, Panel::RightCargoDoor, Panel::RearBumper};

bool stage_done(const folds::CarView& car, Stage stage) {
  return std::any_of(car.stages.begin(), car.stages.end(),
                     [&](const auto& one) { return one.stage == stage && one.done; });
}

bool is_open(FitAnswer answer) {
  return answer == FitAnswer::ToMove || answer == FitAnswer::SlotsEnd ||
         answer == FitAnswer::DatumOut || answer == FitAnswer::MovedSince;
}
}  // namespace

FitViewModel::FitViewModel(Session& session, QObject* parent)
    : QObject(parent),
      session_(session),
      sum_(this),
      panels_({"key", "title", "words", "shape"}, this),
      edges_({"key", "title", "words", "chosen"}, this),
      spots_({"key", "number", "xMm", "yMm", "words", "spoken", "chosen", "ofEdge", "off", "known"},
             this),
      bars_({"key", "number", "before", "predicted", "measured", "beforeWords", "predictedWords",
             "measuredWords", "low", "high", "off"},
            this),
      moves_({"key", "title", "words", "atEnd", "xMm", "yMm", "dxMm", "dyMm"}, this),
      move_fields_({"key", "title", "label", "text"}, this) {
  connect(&session_, &Session::carOrShopChanged, this, &FitViewModel::refresh);
  refresh();
}

const folds::FitView* FitViewModel::last() const {
  return car() && panel_ ? folds::last_fit(*car(), *panel_) : nullptr;
}

const folds::FitView* FitViewModel::before_move() const {
  const folds::FitView* now = last();
  const folds::FitView* out = nullptr;
  if (!now) return nullptr;
  for (const auto& fit : car()->assembly.fits) {
    if (fit.panel != *panel_ || !(fit.order < now->order)) continue;
    for (const auto& moved : car()->assembly.moves)
      if (moved.panel == *panel_ && fit.order < moved.order && moved.order < now->order) out = &fit;
  }
  return out;
}

std::vector<Panel> FitViewModel::panels_to_set() const {
  std::vector<Panel> out;
  if (!car()) return out;
  for (const Panel panel : order_of_setting) {
    if (job::fit_edges(car()->body, panel).empty()) continue;
    if (car()->find(panel) || folds::last_fit(*car(), panel)) out.push_back(panel);
  }
  return out;
}

const FitViewModel::Known& FitViewModel::known_of(Panel panel) const {
  const auto* fit = folds::last_fit(*car(), panel);
  std::vector<Hash> moves;
  for (const auto& one : car()->assembly.moves)
    if (one.panel == panel) moves.push_back(one.entry);
  const std::optional<FitId> id = fit ? std::optional(fit->fit) : std::nullopt;
  Known& out = known_[panel];
  if (out.fit == id && out.moves == moves && !out.said.word.isEmpty()) return out;
  out.fit = id;
  out.moves = std::move(moves);
  out.of = folds::fit_of_panel(*car(), panel);
  out.said = say_fit(*car(), fit, out.of);
  return out;
}

FitRound FitViewModel::guessed_round() const {
  const auto& stages = car()->stages;
  const bool sprays = std::any_of(stages.begin(), stages.end(),
                                  [](const auto& one) { return one.stage == Stage::Spray; });
  const bool hung = stage_done(*car(), sprays ? Stage::Spray : Stage::BodyAndTrialFit);
  return hung ? FitRound::AfterHanging : FitRound::TrialFit;
}

// Inside, and in the round that the car is at.
bool FitViewModel::is_set(Panel panel) const {
  const auto* fit = folds::last_fit(*car(), panel);
  return fit && known_of(panel).said.answer == FitAnswer::Inside && fit->round >= guessed_round();
}

void FitViewModel::forget() {
  panel_.reset();
  drafts_.clear();
  known_.clear();
  wanted_.clear();
  typed_moves_.clear();
  edge_ = 0;
  spot_ = -1;
  kind_ = Kind::Gap;
  thick_ = low_ = false;
  pending_ = -1;
  wrong_.clear();
}

const std::vector<job::FitEdge>& FitViewModel::edges_of() const {
  static const std::vector<job::FitEdge> none;
  return car() && panel_ ? job::fit_edges(car()->body, *panel_) : none;
}

std::vector<trade::Polyline> FitViewModel::drawn_edges() const {
  std::vector<trade::Polyline> out;
  for (const auto& edge : edges_of()) {
    trade::Polyline line;
    for (const auto& point : edge.line) line.push_back(drawn(point));
    out.push_back(std::move(line));
  }
  return out;
}

trade::Point_mm FitViewModel::drawn(trade::Point_mm flat) const {
  const auto* drawing = car() && panel_ ? job::pattern(car()->body).find(*panel_) : nullptr;
  return drawing ? upright(*drawing).apply(flat) : flat;
}

// The points of an edge that was measured, the usual ones of the others; measured edges first.
std::vector<FitViewModel::Spot> FitViewModel::laid_out(const folds::FitView* fit) const {
  const auto& edges = edges_of();
  std::vector<Spot> measured;
  std::vector<int> order;
  for (std::size_t i = 0; fit && i < fit->points.size(); ++i) {
    const auto& point = fit->points[i];
    const auto near = job::nearest_edge(edges, {point.x_mm, point.y_mm});
    if (!near) continue;
    const auto edge = static_cast<int>(near->edge);
    measured.push_back(
        {edge, {{point.x_mm, point.y_mm}, point.direction_deg}, near->along_mm, i, {}, {}});
    if (std::find(order.begin(), order.end(), edge) == order.end()) order.push_back(edge);
  }
  for (int edge = 0; edge < static_cast<int>(edges.size()); ++edge)
    if (std::find(order.begin(), order.end(), edge) == order.end()) order.push_back(edge);
  std::vector<Spot> out;
  for (const int edge : order) {
    const std::size_t before = out.size();
    for (const Spot& one : measured)
      if (one.edge == edge) out.push_back(one);
    if (out.size() > before) continue;
    for (const auto& place : edges[static_cast<std::size_t>(edge)].usual) {
      const auto near = job::nearest_edge({edges[static_cast<std::size_t>(edge)]}, place.at);
      out.push_back({edge, place, near->along_mm, {}, {}, {}});
    }
  }
  return out;
}

void FitViewModel::carry_over(const Draft& from, std::vector<Spot>& to) const {
  for (const Spot& one : from.spots) {
    if (!one.gap_mm) continue;
    const auto same = std::find_if(to.begin(), to.end(), [&](const Spot& other) {
      return other.edge == one.edge && trade::distance_mm(other.place.at, one.place.at) < 1;
    });
    if (same == to.end()) {
      to.push_back({one.edge, one.place, one.along_mm, {}, one.gap_mm, one.flush_mm});
      continue;
    }
    same->gap_mm = one.gap_mm;
    same->flush_mm = one.flush_mm;
  }
}

FitViewModel::Draft& FitViewModel::draft() {
  const folds::FitView* fit = last();
  const std::optional<FitId> id = fit ? std::optional(fit->fit) : std::nullopt;
  const auto found = drafts_.find(*panel_);
  if (found != drafts_.end() && found->second.of == id) return found->second;
  Draft fresh{id, laid_out(fit)};
  if (found != drafts_.end()) carry_over(found->second, fresh.spots);
  return drafts_[*panel_] = std::move(fresh);
}

FitViewModel::Spot* FitViewModel::chosen() {
  const auto found = panel_ ? drafts_.find(*panel_) : drafts_.end();
  if (found == drafts_.end() || spot_ < 0) return nullptr;
  auto& spots = found->second.spots;
  const auto at = static_cast<std::size_t>(spot_);
  return at < spots.size() ? &spots[at] : nullptr;
}

const FitViewModel::Spot* FitViewModel::chosen() const {
  const auto found = panel_ ? drafts_.find(*panel_) : drafts_.end();
  if (found == drafts_.end() || spot_ < 0) return nullptr;
  const auto& spots = found->second.spots;
  const auto at = static_cast<std::size_t>(spot_);
  return at < spots.size() ? &spots[at] : nullptr;
}

double FitViewModel::wanted_mm(const Spot& spot) const {
  const auto typed = wanted_.find({*panel_, spot.edge});
  if (typed != wanted_.end()) return typed->second;
  if (round_ == FitRound::AfterHanging)
    return folds::wanted_at(*car(), *panel_, spot.place.at.x_mm, spot.place.at.y_mm).gap_mm;
  // A trial fit goes on to what was wanted of it, not to where it is.
  if (const auto* trial = folds::last_fit(*car(), *panel_, FitRound::TrialFit))
    for (const auto& point : trial->points)
      if (trade::distance_mm({point.x_mm, point.y_mm}, spot.place.at) < folds::same_point_mm)
        return point.wanted_gap_mm;
  return folds::usual_gap_mm;
}

double FitViewModel::wanted_flush_mm(const Spot& spot) const {
  if (round_ == FitRound::TrialFit) return 0;
  return folds::wanted_at(*car(), *panel_, spot.place.at.x_mm, spot.place.at.y_mm).flush_mm;
}

void FitViewModel::refresh() {
  const std::optional<JobId> now = car() ? std::optional(car()->job) : std::nullopt;
  if (now != job_) {
    forget();
    job_ = now;
  }
  if (panel_ && job::fit_edges(car()->body, *panel_).empty()) panel_.reset();
  of_.reset();
  said_ = {};
  if (panel_) {
    const Known& known = known_of(*panel_);
    of_ = known.of;
    said_ = known.said;
    const int count = static_cast<int>(draft().spots.size());
    if (spot_ >= count) spot_ = -1;
  }
  show_panels();
  show_edges();
  show_bars();
  show_moves();
  show_move_fields();
  emit changed();
}

void FitViewModel::show_panels() {
  std::vector<QVariantList> rows;
  for (const Panel panel : panels_to_set()) {
    const Known& known = known_of(panel);
    const auto* fit = folds::last_fit(*car(), panel);
    const bool before = known.said.answer == FitAnswer::Inside && !is_set(panel);
    QString words = known.said.word;
    if (fit) words = tr("%1: %2").arg(sentence(words_of(fit->round)), words);
    if (before) words = tr("%1; not measured after hanging").arg(words);
    rows.push_back({word_of_panel(panel), sentence(words_of(panel, car()->body)), words,
                    shape_of(before ? StateKind::Unseen : known.said.state)});
  }
  panels_.set(std::move(rows));
}

void FitViewModel::show_edges() {
  std::vector<QVariantList> edges;
  std::vector<QVariantList> spots;
  if (panel_) {
    const auto& all = draft().spots;
    const folds::FitView* fit = last();
    std::vector<int> typed(edges_of().size(), 0);
    std::vector<int> measured(edges_of().size(), 0);
    for (std::size_t i = 0; i < all.size(); ++i) {
      const Spot& one = all[i];
      const auto edge = static_cast<std::size_t>(one.edge);
      typed[edge] += one.gap_mm ? 1 : 0;
      measured[edge] += one.measured ? 1 : 0;
      std::optional<double> gap_mm = one.gap_mm;
      bool off = false;
      if (!gap_mm && one.measured && fit) {
        const auto& point = fit->points[*one.measured];
        gap_mm = point.gap_mm;
        off = std::abs(point.gap_mm - point.wanted_gap_mm) > trade::PanelFit{}.tolerance_mm;
      }
      const trade::Point_mm at = drawn(one.place.at);
      const int number = number_of(static_cast<int>(i));
      const QString to = neighbor_words(edges_of()[edge], car()->body);
      const QString spoken =
          gap_mm ? tr("Point %1, to the %2, %3").arg(number).arg(to, gap_words(*gap_mm))
                 : tr("Point %1, to the %2, not measured").arg(number).arg(to);
      spots.push_back({static_cast<int>(i), number, at.x_mm, at.y_mm,
                       gap_mm ? gap_number(*gap_mm) : QString(), spoken,
                       static_cast<int>(i) == spot_, one.edge == edge_, off, gap_mm.has_value()});
    }
    for (std::size_t i = 0; i < edges_of().size(); ++i) {
      const QString words = typed[i] > 0      ? tr("%1 typed").arg(typed[i])
                            : measured[i] > 0 ? tr("%1 measured").arg(measured[i])
                                              : tr("not measured");
      edges.push_back({static_cast<int>(i), sentence(neighbor_words(edges_of()[i], car()->body)),
                       words, static_cast<int>(i) == edge_});
    }
  }
  edges_.set(std::move(edges));
  spots_.set(std::move(spots));
}

void FitViewModel::show_bars() {
  std::vector<QVariantList> rows;
  before_title_ = predicted_title_ = measured_title_ = bars_wanted_ = QString();
  double wanted_low_mm = 1e9;
  double wanted_high_mm = -1e9;
  bars_top_mm_ = 5;
  if (panel_) {
    const folds::FitView* fit = last();
    const auto& all = draft().spots;
    const bool typed = std::any_of(
        all.begin(), all.end(), [&](const Spot& one) { return one.edge == edge_ && one.gap_mm; });
    const bool is_moved = fit && folds::moved_since(*car(), *fit);
    // What the first bar is of, and what was computed from it.
    const folds::FitView* first = typed || is_moved ? fit : before_move();
    const bool now_alone = fit && !first && said_.answer == FitAnswer::Inside;
    if (!first && !now_alone) first = fit;
    std::optional<folds::FitOfPanel> computed;
    if (first) computed = folds::fit_as_measured(*car(), *first);
    const trade::PanelFitResult* after =
        computed && computed->gaps && *computed->gaps ? &**computed->gaps : nullptr;
    if (first == fit && !typed && !is_moved && !said_.moves_any()) after = nullptr;
    const bool last_bar = typed || is_moved || now_alone || first != fit;
    if (first) before_title_ = last_bar ? tr("before") : tr("now");
    if (after) predicted_title_ = last_bar ? tr("predicted") : tr("after the move");
    if (last_bar || !first) measured_title_ = tr("now");
    for (std::size_t i = 0; i < all.size(); ++i) {
      const Spot& one = all[i];
      if (one.edge != edge_) continue;
      std::optional<double> before;
      std::optional<double> predicted;
      std::optional<double> measured;
      const double wanted =
          fit && one.measured && !typed ? fit->points[*one.measured].wanted_gap_mm : wanted_mm(one);
      for (std::size_t p = 0; first && p < first->points.size(); ++p) {
        const auto& point = first->points[p];
        if (trade::distance_mm({point.x_mm, point.y_mm}, one.place.at) > folds::same_point_mm)
          continue;
        before = point.gap_mm;
        if (after) predicted = after->points[p].after_mm;
        break;
      }
      if (typed)
        measured = one.gap_mm;
      else if (last_bar && !is_moved && fit && one.measured)
        measured = fit->points[*one.measured].gap_mm;
      const double tolerance = trade::PanelFit{}.tolerance_mm;
      wanted_low_mm = std::min(wanted_low_mm, wanted);
      wanted_high_mm = std::max(wanted_high_mm, wanted);
      const std::optional<double>& newest = measured_title_.isEmpty() ? before : measured;
      for (const auto& mm : {before, predicted, measured, std::optional(wanted + tolerance)})
        if (mm) bars_top_mm_ = std::max(bars_top_mm_, *mm * 1.12);
      const auto words = [](const std::optional<double>& mm) {
        return mm ? gap_number(*mm) : QStringLiteral("\u2013");
      };
      rows.push_back({static_cast<int>(i), number_of(static_cast<int>(i)), before.value_or(-1),
                      predicted.value_or(-1), measured.value_or(-1), words(before),
                      words(predicted), words(measured), wanted - tolerance, wanted + tolerance,
                      newest && std::abs(*newest - wanted) > tolerance});
    }
  }
  if (!rows.empty()) bars_wanted_ = wanted_span_words(wanted_low_mm, wanted_high_mm);
  bars_.set(std::move(rows));
}

void FitViewModel::show_moves() {
  std::vector<QVariantList> rows;
  arrows_.clear();
  int letter = 0;
  for (const auto& one : said_.moves) {
    const trade::Point_mm at = drawn(one.at);
    const trade::Point_mm to = drawn({one.at.x_mm + one.move.x_mm, one.at.y_mm + one.move.y_mm});
    arrows_.push_back({at, to.x_mm - at.x_mm, to.y_mm - at.y_mm});
    rows.push_back({QString(QChar('A' + letter++)), sentence(one.name), one.words, one.at_its_end,
                    at.x_mm, at.y_mm, to.x_mm - at.x_mm, to.y_mm - at.y_mm});
  }
  // Without an answer the fasteners are still drawn where they are.
  if (rows.empty() && panel_)
    for (const auto& one : job::fasteners_of(car()->body, *panel_)) {
      const trade::Point_mm at = drawn({one.x_mm, one.y_mm});
      rows.push_back({QString(QChar('A' + letter++)), sentence(fastener_words(one.fastener_name)),
                      QString(), false, at.x_mm, at.y_mm, 0.0, 0.0});
    }
  moves_.set(std::move(rows));
}

QPointF FitViewModel::insideOf(double x_mm, double y_mm, double margin_mm) const {
  const auto* drawing = car() && panel_ ? job::pattern(car()->body).find(*panel_) : nullptr;
  if (!drawing) return {x_mm, y_mm};
  const auto box = trade::bounds(upright(*drawing).apply(drawing->shape.outline).corners);
  const auto within = [margin_mm](double at, double low, double high) {
    return high - low < 2 * margin_mm ? at : std::clamp(at, low + margin_mm, high - margin_mm);
  };
  return {within(x_mm, box.low.x_mm, box.high.x_mm), within(y_mm, box.low.y_mm, box.high.y_mm)};
}

bool FitViewModel::isHeavy() const {
  return panel_ && job::opens(*panel_) && said_.moves_any();
}

bool FitViewModel::latchAsked() const {
  return car() && folds::latch_to_check(*car());
}

std::optional<folds::WantedShot> FitViewModel::marks_shot() const {
  if (!car() || !panel_) return std::nullopt;
  for (const auto& usual : job::usual_shots(Stage::BodyAndTrialFit)) {
    if (usual.shot_name != "hinge and latch marks") continue;
    for (auto& wanted : folds::shots_of_car(*car(), session_.shop(), Stage::BodyAndTrialFit))
      if (wanted.shot.shot == usual.shot && wanted.panel == panel_) return wanted;
  }
  return std::nullopt;
}

bool FitViewModel::ofInterest() const {
  if (!car() || car()->delivered_ms || panels_to_set().empty()) return latchAsked();
  const auto panels = panels_to_set();
  if (latchAsked() || std::any_of(panels.begin(), panels.end(), [this](Panel panel) {
        return is_open(known_of(panel).said.answer);
      }))
    return true;
  const auto next = folds::floor_row(*car()).next_stage;
  return next == Stage::BodyAndTrialFit || next == Stage::Assemble || next == Stage::Fit;
}

QString FitViewModel::rowWords() const {
  if (latchAsked()) return tr("latch and secondary catch not checked since a move");
  int inside = 0;
  int open = 0;
  int count = 0;
  for (const Panel panel : panels_to_set()) {
    const FitAnswer answer = known_of(panel).said.answer;
    ++count;
    inside += is_set(panel) ? 1 : 0;
    open += is_open(answer) ? 1 : 0;
  }
  if (open > 0) return tr("%1 of %2 panels to set, %3 inside").arg(open).arg(count).arg(inside);
  if (inside == 0) return tr("not measured yet");
  return tr("%1 of %2 panels inside").arg(inside).arg(count);
}

int FitViewModel::rowShape() const {
  if (latchAsked()) return shape_of(StateKind::Must);
  StateKind out = StateKind::Done;
  for (const Panel panel : panels_to_set()) {
    const FitAnswer answer = known_of(panel).said.answer;
    if (is_open(answer)) return shape_of(StateKind::Waits);
    if (!is_set(panel)) out = StateKind::Unseen;
  }
  return shape_of(out);
}

}  // namespace jambline::screens
