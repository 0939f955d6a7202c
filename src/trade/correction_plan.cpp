#include "trade/correction_plan.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>
#include <set>

#include "trade/refusal.h"
#include "trade/rows.h"

namespace jambline::trade {

namespace {
constexpr std::size_t most_marks = 500;
constexpr double usual_area_mm2 = 300.0 * 300.0;
constexpr double least_min = 0.3;
constexpr double row_mm = 2;
constexpr std::size_t most_by_arcs = 16;  // circles; more are measured by rows
constexpr double areas_a_pad = 2.5;
constexpr double areas_a_towel = 4;
constexpr int own_weight = 10;
constexpr int whole_panel_marks = 8;
constexpr double whole_panel_percent = 35;

// Where a kind of mark starts, coarse to fine from there.
Round starts_at(MarkWork work) {
  switch (work) {
    case MarkWork::Nib:
    case MarkWork::Run:
    case MarkWork::Peel:
      return Round::Level;
    case MarkWork::Scratch:
      return Round::Refine;
    case MarkWork::Overspray:
      return Round::Polish;
    case MarkWork::Haze:
      return Round::Finish;
  }
  return Round::Level;
}

Status checked(const CorrectionPlan& in) {
  if (in.panels.empty()) return fail(refusal(Code::Missing, "panels", "no panel"));
  if (in.panels.size() > 40) return fail(refusal(Code::TooLarge, "panels", "40 at most"));
  if (in.rounds.empty()) return fail(refusal(Code::Missing, "rounds", "no round"));
  for (std::size_t i = 0; i < in.rounds.size(); ++i) {
    JAMBLINE_TRY(
        need(item("rounds", i, "radius_mm"), in.rounds[i].radius_mm, 5, 500, "5 to 500 mm"));
    JAMBLINE_TRY(
        need(item("rounds", i, "min_per_area"), in.rounds[i].min_per_area, 0.05, 60, "over 0"));
    JAMBLINE_TRY(need(item("rounds", i, "removal_um"), in.rounds[i].removal_um, 0, 50, "0 to 50"));
    JAMBLINE_TRY(
        need(item("rounds", i, "removal_sd_um"), in.rounds[i].removal_sd_um, 0, 50, "0 to 50"));
    JAMBLINE_TRY(need(item("rounds", i, "own_areas"), in.rounds[i].own_areas, 0, 1e6, "0 or more"));
    if (in.rounds[i].own_min_per_area)
      JAMBLINE_TRY(need(item("rounds", i, "own_min_per_area"), *in.rounds[i].own_min_per_area, 0.01,
                        600, "over 0"));
    if (i > 0 && in.rounds[i].round <= in.rounds[i - 1].round)
      return fail(
          refusal(Code::Malformed, item("rounds", i, "round"), "not finer than the one before"));
    if (i > 0 && in.rounds[i].radius_mm < in.rounds[i - 1].radius_mm)
      return fail(
          refusal(Code::Malformed, item("rounds", i, "radius_mm"), "narrower than the one before"));
  }
  JAMBLINE_TRY(need("keep_off_mm", in.keep_off_mm, 0, 100, "0 to 100 mm"));
  JAMBLINE_TRY(need("keep_off_fade_mm", in.keep_off_fade_mm, 0, 500, "0 to 500 mm"));
  JAMBLINE_TRY(need("plastic_speed", in.plastic_speed, 0.1, 1, "0.1 to 1"));
  JAMBLINE_TRY(need("change_min", in.change_min, 0, 60, "0 to 60 min"));
  JAMBLINE_TRY(need("clean_down_min", in.clean_down_min, 0, 60, "0 to 60 min"));
  std::set<std::string> names;
  for (std::size_t i = 0; i < in.panels.size(); ++i) {
    const PlanPanel& panel = in.panels[i];
    if (!names.insert(panel.panel).second)
      return fail(refusal(Code::Malformed, item("panels", i, "panel"), "the same name twice"));
    const Polygon outline{panel.outline};
    JAMBLINE_TRY(need_outline(item("panels", i, "outline"), panel.outline));
    JAMBLINE_TRY(need_place(item("panels", i, "stands_at"), panel.stands_at));
    JAMBLINE_TRY(need_lines(item("panels", i, "body_lines"), panel.body_lines));
    JAMBLINE_TRY(need_lines(item("panels", i, "clear_fade"), panel.clear_fade));
    if (panel.marks.size() > most_marks)
      return fail(refusal(Code::TooLarge, item("panels", i, "marks"), "500 at most"));
    std::set<std::string> marks;
    for (std::size_t k = 0; k < panel.marks.size(); ++k) {
      const std::string field = item("panels", i, "marks") + '[' + std::to_string(k) + ']';
      if (!marks.insert(panel.marks[k].mark).second)
        return fail(refusal(Code::Malformed, field + ".mark", "the same name twice"));
      JAMBLINE_TRY(need_place(field, {panel.marks[k].x_mm, panel.marks[k].y_mm}));
      if (!contains(outline, {panel.marks[k].x_mm, panel.marks[k].y_mm}))
        return fail(refusal(Code::OutOfRange, field, "off its panel"));
    }
  }
  return {};
}

// A panel with what has to be kept off, and the marks that are worked on.
class Work {
 public:
  Work(const PlanPanel& panel, const CorrectionPlan& plan, std::vector<PlanLeftOut>& left_out)
      : panel_(panel),
        plan_(plan),
        outline_{panel.outline},
        by_hand_(bounds(panel.outline), row_mm),
        by_machine_(by_hand_) {
    for (const PlanMark& mark : panel.marks) {
      const Point_mm at{mark.x_mm, mark.y_mm};
      const Marked one{&mark, at, clearance(at)};
      if (!panel.may_be_cut) {
        left_out.push_back({panel.panel, mark.mark, LeftOut::DoNotCut});
      } else if (distance_to_lines_mm(at, panel.clear_fade) < plan.keep_off_fade_mm) {
        left_out.push_back({panel.panel, mark.mark, LeftOut::ClearFade});
      } else if (!takes(one, plan.rounds.back().round)) {
        left_out.push_back({panel.panel, mark.mark, LeftOut::NoRound});
      } else {
        marks_.push_back(one);
      }
    }
    if (marks_.empty()) return;
    by_hand_.add_inside(outline_);
    Rows kept_off(bounds(panel.outline), row_mm);
    kept_off.add_near_edge(outline_, plan.keep_off_mm);
    for (const PanelLine& line : panel.body_lines) kept_off.add_near(line.points, plan.keep_off_mm);
    by_machine_ = by_hand_.without(kept_off);
  }

  const PlanPanel& panel() const { return panel_; }
  bool any(Round round) const {
    return std::any_of(marks_.begin(), marks_.end(),
                       [&](const Marked& one) { return takes(one, round); });
  }
  std::size_t count() const { return marks_.size(); }

  std::vector<PlanArea> areas(const RoundRule& rule) const {
    std::vector<const Marked*> machine, hand;
    for (const Marked& one : marks_)
      if (takes(one, rule.round)) (by_hand(one) ? hand : machine).push_back(&one);
    std::vector<PlanArea> out;
    for (const auto& group : touching(machine, 2 * rule.radius_mm))
      out.push_back(area_of(group, rule, rule.radius_mm, false));
    const double spot_mm = plan_.rounds.front().radius_mm;
    for (const auto& group : touching(hand, 2 * spot_mm))
      out.push_back(area_of(group, rule, spot_mm, true));
    return out;
  }

  // Of the deepest mark's whole sequence.
  std::pair<double, double> removal() const {
    double most = 0, most_variance = 0;
    for (const Marked& one : marks_) {
      double sum = 0, variance = 0;
      for (const RoundRule& rule : plan_.rounds) {
        if (!takes(one, rule.round)) continue;
        sum += rule.removal_um;
        variance += rule.removal_sd_um * rule.removal_sd_um;
      }
      if (sum > most) most = sum, most_variance = variance;
    }
    return {most, std::sqrt(most_variance)};
  }

 private:
  struct Marked {
    const PlanMark* mark;
    Point_mm at;
    double clearance_mm;  // to the nearest edge or body line
  };
  bool by_hand(const Marked& one) const { return one.clearance_mm < plan_.keep_off_mm; }

  double clearance(Point_mm at) const {
    return std::min(distance_to_edge_mm(at, outline_), distance_to_lines_mm(at, panel_.body_lines));
  }
  // By hand is finest only.
  bool takes(const Marked& one, Round round) const {
    if (by_hand(one)) return round == plan_.rounds.back().round;
    return round >= one.mark->proved_start.value_or(starts_at(one.mark->work));
  }

  using Group = std::vector<const Marked*>;
  // What touches is one, over a grid so that it goes with n log n.
  static std::vector<Group> touching(const std::vector<const Marked*>& in, double reach_mm) {
    std::vector<std::size_t> root(in.size());
    std::iota(root.begin(), root.end(), std::size_t{0});
    const auto top = [&](std::size_t i) {
      while (root[i] != i) i = root[i] = root[root[i]];
      return i;
    };
    std::map<std::pair<long, long>, std::vector<std::size_t>> cells;
    for (std::size_t i = 0; i < in.size(); ++i) {
      const long column = std::lround(std::floor(in[i]->at.x_mm / reach_mm));
      const long row = std::lround(std::floor(in[i]->at.y_mm / reach_mm));
      for (long dx = -1; dx <= 1; ++dx)
        for (long dy = -1; dy <= 1; ++dy) {
          const auto cell = cells.find({column + dx, row + dy});
          if (cell == cells.end()) continue;
          for (const std::size_t other : cell->second)
            if (distance_mm(in[i]->at, in[other]->at) <= reach_mm) root[top(i)] = top(other);
        }
      cells[{column, row}].push_back(i);
    }
    std::map<std::size_t, Group> groups;
    for (std::size_t i = 0; i < in.size(); ++i) groups[top(i)].push_back(in[i]);
    std::vector<Group> out;
    out.reserve(groups.size());
    for (auto& [key, group] : groups) out.push_back(std::move(group));
    return out;
  }

  PlanArea area_of(const Group& group, const RoundRule& rule, double radius_mm, bool hand) const {
    PlanArea out;
    out.by_hand = hand;
    std::vector<Circle_mm> circles;
    bool free = true;
    for (const Marked* one : group) {
      out.marks.push_back(one->mark->mark);
      out.center.x_mm += one->at.x_mm / static_cast<double>(group.size());
      out.center.y_mm += one->at.y_mm / static_cast<double>(group.size());
      circles.push_back({one->at, radius_mm});
      free = free && one->clearance_mm >= radius_mm + plan_.keep_off_mm;
    }
    for (const Circle_mm& circle : circles)
      out.reach_mm =
          std::max(out.reach_mm, distance_mm(out.center, circle.center) + circle.radius_mm);
    out.area_mm2 = free && circles.size() <= most_by_arcs
                       ? circles_union_area_mm2(circles)
                       : clipped_area(circles, hand ? by_hand_ : by_machine_);
    const double own = rule.own_min_per_area.value_or(rule.min_per_area);
    const double weight = static_cast<double>(rule.own_areas) / (rule.own_areas + own_weight);
    const double usual = std::lerp(rule.min_per_area, own, weight);
    out.minutes = std::max(least_min, usual * out.area_mm2 / usual_area_mm2);
    if (panel_.plastic) out.minutes /= plan_.plastic_speed;
    return out;
  }

  double clipped_area(const std::vector<Circle_mm>& circles, const Rows& within) const {
    Rows all(bounds(panel_.outline), row_mm);
    for (const Circle_mm& one : circles) all.add_circle(one.center, one.radius_mm);
    return all.common_area_mm2(within);
  }

  const PlanPanel& panel_;
  const CorrectionPlan& plan_;
  Polygon outline_;
  Rows by_hand_;     // the whole panel
  Rows by_machine_;  // less what is kept off
  std::vector<Marked> marks_;
};

class Planner {
 public:
  explicit Planner(const CorrectionPlan& in) : in_(in) {
    for (const PlanPanel& panel : in.panels) works_.emplace_back(panel, in, out_.left_out);
  }

  CorrectionPlanResult plan() {
    if (in_.one_panel_at_a_time) {
      for (const std::size_t at : order(all_with_work()))
        for (const RoundRule& rule : in_.rounds)
          if (works_[at].any(rule.round)) station(at, rule);
    } else {
      for (const RoundRule& rule : in_.rounds) {
        std::vector<std::size_t> in_round;
        for (std::size_t i = 0; i < works_.size(); ++i)
          if (works_[i].any(rule.round)) in_round.push_back(i);
        for (const std::size_t at : order(in_round)) station(at, rule);
      }
    }
    count();
    advise();
    basis();
    return std::move(out_);
  }

 private:
  std::vector<std::size_t> all_with_work() const {
    std::vector<std::size_t> out;
    for (std::size_t i = 0; i < works_.size(); ++i)
      if (works_[i].count() > 0) out.push_back(i);
    return out;
  }

  const std::vector<std::size_t>& order(const std::vector<std::size_t>& of) {
    const auto [known, fresh] = orders_.try_emplace(of);
    if (fresh) {
      std::vector<Point_mm> places;
      places.reserve(of.size());
      for (const std::size_t at : of) places.push_back(in_.panels[at].stands_at);
      for (const std::size_t place : shortest_walk(places)) known->second.push_back(of[place]);
    }
    return known->second;
  }

  void station(std::size_t at, const RoundRule& rule) {
    PlanStation next{rule.round, in_.panels[at].panel, works_[at].areas(rule), false, false};
    next.tape_edges = rule.round == Round::Compound;
    next.clean_down = rule.round == Round::Level || rule.round == Round::Refine;
    if (!out_.stations.empty()) {
      if (out_.stations.back().round != rule.round) ++out_.changes;
      out_.walk_mm += distance_mm(last_at_, in_.panels[at].stands_at);
    }
    last_at_ = in_.panels[at].stands_at;
    out_.stations.push_back(std::move(next));
  }

  void count() {
    // Cleaned once before compounding, whatever was sanded there before.
    std::map<std::string, PlanStation*> last_sanded;
    for (PlanStation& one : out_.stations)
      if (one.clean_down) {
        auto& last = last_sanded[one.panel];
        if (last) last->clean_down = false;
        last = &one;
      }
    std::map<Round, int> areas;
    for (const PlanStation& one : out_.stations) {
      areas[one.round] += static_cast<int>(one.areas.size());
      for (const PlanArea& area : one.areas) out_.minutes += area.minutes;
      if (one.clean_down) out_.minutes += in_.clean_down_min;
    }
    out_.minutes += out_.changes * in_.change_min;
    for (const auto& [round, many] : areas)
      out_.kit.push_back({round, static_cast<int>(std::ceil(many / areas_a_pad)),
                          static_cast<int>(std::ceil(many / areas_a_towel))});
  }

  void advise() {
    std::map<std::string, double> widest;
    for (const PlanStation& one : out_.stations) {
      double sum = 0;
      for (const PlanArea& area : one.areas) sum += area.area_mm2;
      widest[one.panel] = std::max(widest[one.panel], sum);
    }
    for (const Work& work : works_) {
      if (work.count() == 0) continue;
      const double covered =
          100 * widest[work.panel().panel] / area_mm2(Polygon{work.panel().outline});
      const auto [removal, sd] = work.removal();
      out_.advice.push_back({work.panel().panel,
                             work.count() > whole_panel_marks || covered > whole_panel_percent,
                             covered, removal, sd});
    }
  }

  void basis() {
    Basis& basis = out_.basis;
    basis.method =
        in_.one_panel_at_a_time
            ? "All rounds on a panel, then the next panel by the shortest walk."
            : "Each round on all panels, fewest changes of pad and tool, then the shortest walk.";
    const CorrectionPlan usually;
    const auto set = [&](const char* name, double value, double default_value, const char* unit) {
      basis.term(name, value, unit, usual(value, default_value));
    };
    set("keep off edges and body lines", in_.keep_off_mm, usually.keep_off_mm, "mm");
    set("keep off a clear fade", in_.keep_off_fade_mm, usually.keep_off_fade_mm, "mm");
    set("change of pad or tool", in_.change_min, usually.change_min, "min");
    set("clean down, a panel", in_.clean_down_min, usually.clean_down_min, "min");
    set("speed on plastic", in_.plastic_speed, usually.plastic_speed, "");
    basis.term("least time an area", least_min, "min", common_practice);
    basis.term("areas a pad", areas_a_pad, "", common_practice);
    basis.term("areas a towel", areas_a_towel, "", common_practice);
    basis.term("own minutes count half from", own_weight, "areas", common_practice);
    basis.term("whole panel from more marks than", whole_panel_marks, "", common_practice);
    basis.term("whole panel from more covered than", whole_panel_percent, "%", common_practice);
    for (const RoundRule& rule : in_.rounds) {
      const std::string name(word_of(rule.round));
      basis.term(name + ", radius", rule.radius_mm, "mm", common_practice);
      basis.term(name + ", minutes for 300 x 300 mm", rule.min_per_area, "min", common_practice);
      if (rule.own_min_per_area)
        basis.term(name + ", own minutes from " + std::to_string(rule.own_areas) + " areas",
                   *rule.own_min_per_area, "min", measured);
      basis.term(name + ", removal", rule.removal_um, "um", common_practice);
      basis.term(name + ", removal, spread (1 sd)", rule.removal_sd_um, "um", common_practice);
    }
    basis.term("walk", out_.walk_mm, "mm", computed);
    basis.term("changes", out_.changes, "", computed);
    basis.term("minutes", out_.minutes, "min", computed);
  }

  const CorrectionPlan& in_;
  CorrectionPlanResult out_;
  std::vector<Work> works_;
  std::map<std::vector<std::size_t>, std::vector<std::size_t>> orders_;
  Point_mm last_at_;
};

}  // namespace

std::vector<RoundRule> usual_rounds() {
  return {{Round::Level, 20, 0.5, 2.5, 1.0, {}, 0},
          {Round::Refine, 60, 1.0, 1.5, 0.6, {}, 0},
          {Round::Compound, 90, 2.0, 1.5, 0.6, {}, 0},
          {Round::Polish, 120, 2.0, 0.7, 0.3, {}, 0},
          {Round::Finish, 150, 1.5, 0.3, 0.12, {}, 0}};
}

Result<CorrectionPlanResult> correction_plan(const CorrectionPlan& in) {
  JAMBLINE_TRY(checked(in));
  return Planner(in).plan();
}

}  // namespace jambline::trade
