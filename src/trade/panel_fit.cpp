#include "trade/panel_fit.h"

#include <Eigen/Dense>
#include <cmath>
#include <numbers>

#include "trade/refusal.h"

namespace jambline::trade {

namespace {
using Vector = Eigen::Vector3d;
using Equations = Eigen::Matrix<double, Eigen::Dynamic, 3>;

constexpr double degree = std::numbers::pi / 180;
constexpr double meter = 1000;
constexpr double slack = 1e-9;

Status checked(const PanelFit& in) {
  if (in.points.size() < 2) return fail(refusal(Code::Missing, "points", "two at least"));
  if (in.points.size() > 60) return fail(refusal(Code::TooLarge, "points", "60 at most"));
  if (in.fasteners.empty()) return fail(refusal(Code::Missing, "fasteners", "none to move it at"));
  if (in.fasteners.size() > 10) return fail(refusal(Code::TooLarge, "fasteners", "10 at most"));
  JAMBLINE_TRY(need("tolerance_mm", in.tolerance_mm, 0.01, 20, "0.01 to 20 mm"));
  for (std::size_t i = 0; i < in.points.size(); ++i) {
    const FitPoint& one = in.points[i];
    JAMBLINE_TRY(need(item("points", i, "x_mm"), one.x_mm, -1e4, 1e4, "within 10 m"));
    JAMBLINE_TRY(need(item("points", i, "y_mm"), one.y_mm, -1e4, 1e4, "within 10 m"));
    JAMBLINE_TRY(
        need(item("points", i, "direction_deg"), one.direction_deg, -720, 720, "an angle"));
    JAMBLINE_TRY(need(item("points", i, "found_mm"), one.found_mm, -50, 100, "-50 to 100 mm"));
    JAMBLINE_TRY(need(item("points", i, "wanted_mm"), one.wanted_mm, -50, 100, "-50 to 100 mm"));
    JAMBLINE_TRY(need(item("points", i, "weight"), one.weight, 0.001, 1000, "over 0"));
  }
  for (std::size_t i = 0; i < in.fasteners.size(); ++i) {
    const FitFastener& one = in.fasteners[i];
    JAMBLINE_TRY(need(item("fasteners", i, "x_mm"), one.x_mm, -1e4, 1e4, "within 10 m"));
    JAMBLINE_TRY(need(item("fasteners", i, "y_mm"), one.y_mm, -1e4, 1e4, "within 10 m"));
    JAMBLINE_TRY(need(item("fasteners", i, "travel_x_mm"), one.travel_x_mm, 0, 100, "0 to 100 mm"));
    JAMBLINE_TRY(need(item("fasteners", i, "travel_y_mm"), one.travel_y_mm, 0, 100, "0 to 100 mm"));
  }
  return {};
}

// Unknowns in millimetres that a meter away makes, so that all three are of one size.
Vector gap_row(const FitPoint& point) {
  const double nx = std::cos(point.direction_deg * degree);
  const double ny = std::sin(point.direction_deg * degree);
  return {-nx, -ny, -(-nx * point.y_mm + ny * point.x_mm) / meter};
}
Vector flush_row(double x_mm, double y_mm) {
  return {1, x_mm / meter, y_mm / meter};
}

// Rows g and bounds h of g u <= h; a fastener gives two or four.
struct Slots {
  Equations g;
  Eigen::VectorXd h;
};

Slots slots_of(const PanelFit& in) {
  const int each = in.flush ? 2 : 4;
  Slots out{Equations(each * static_cast<int>(in.fasteners.size()), 3),
            Eigen::VectorXd(each * static_cast<int>(in.fasteners.size()))};
  int row = 0;
  const auto add = [&](const Vector& along, double travel_mm) {
    out.g.row(row) = along.transpose();
    out.h(row++) = travel_mm;
    out.g.row(row) = -along.transpose();
    out.h(row++) = travel_mm;
  };
  for (const FitFastener& one : in.fasteners) {
    if (in.flush) {
      add(flush_row(one.x_mm, one.y_mm), one.travel_x_mm);
    } else {
      add({1, 0, -one.y_mm / meter}, one.travel_x_mm);
      add({0, 1, one.x_mm / meter}, one.travel_y_mm);
    }
  }
  return out;
}

struct Problem {
  Eigen::Matrix3d
      q;  // of the squares, with a whisper of a ridge where the points leave a move open
  Vector c;
};

// The best with these rows touching, or nothing when they contradict each other.
bool best_touching(const Problem& problem, const Slots& slots, const std::vector<int>& touching,
                   Vector& u, Eigen::VectorXd& pressure) {
  const int k = static_cast<int>(touching.size());
  Eigen::MatrixXd system = Eigen::MatrixXd::Zero(3 + k, 3 + k);
  Eigen::VectorXd right(3 + k);
  system.topLeftCorner<3, 3>() = problem.q;
  right.head<3>() = problem.c;
  for (int i = 0; i < k; ++i) {
    system.block(0, 3 + i, 3, 1) = slots.g.row(touching[static_cast<std::size_t>(i)]).transpose();
    system.block(3 + i, 0, 1, 3) = slots.g.row(touching[static_cast<std::size_t>(i)]);
    right(3 + i) = slots.h(touching[static_cast<std::size_t>(i)]);
  }
  const Eigen::FullPivLU<Eigen::MatrixXd> solved(system);
  if (solved.rank() < 3 + k) return false;
  const Eigen::VectorXd found = solved.solve(right);
  u = found.head<3>();
  pressure = found.tail(k);
  return true;
}

Vector best_within(const Problem& problem, const Slots& slots, std::vector<int>& touching_out) {
  const int rows = static_cast<int>(slots.h.size());
  Vector best = Vector::Zero();
  double least = std::numeric_limits<double>::infinity();
  std::vector<int> touching;
  const auto consider = [&] {
    Vector u;
    Eigen::VectorXd pressure;
    if (!best_touching(problem, slots, touching, u, pressure)) return;
    if ((slots.g * u - slots.h).maxCoeff() > slack) return;
    if (pressure.size() > 0 && pressure.minCoeff() < -slack) return;
    const double cost = u.dot(problem.q * u) / 2 - problem.c.dot(u);
    if (cost >= least - 1e-12) return;
    least = cost;
    best = u;
    touching_out = touching;
  };
  consider();
  for (int i = 0; i < rows; ++i) {
    touching = {i};
    consider();
    for (int j = i + 1; j < rows; ++j) {
      touching = {i, j};
      consider();
      for (int k = j + 1; k < rows; ++k) {
        touching = {i, j, k};
        consider();
      }
    }
  }
  return best;
}
}  // namespace

Result<PanelFitResult> panel_fit(const PanelFit& in) {
  JAMBLINE_TRY(checked(in));
  const int n = static_cast<int>(in.points.size());
  Equations a(n, 3);
  Eigen::VectorXd wish(n);
  Eigen::VectorXd weight(n);
  for (int i = 0; i < n; ++i) {
    const FitPoint& one = in.points[static_cast<std::size_t>(i)];
    a.row(i) = (in.flush ? flush_row(one.x_mm, one.y_mm) : gap_row(one)).transpose();
    wish(i) = one.wanted_mm - one.found_mm;
    weight(i) = one.weight;
  }
  Problem problem{a.transpose() * weight.asDiagonal() * a,
                  a.transpose() * weight.asDiagonal() * wish};
  problem.q += 1e-12 * Eigen::Matrix3d::Identity();
  const Slots slots = slots_of(in);
  std::vector<int> touching;
  const Vector u = best_within(problem, slots, touching);
  const Vector free = problem.q.ldlt().solve(problem.c);

  PanelFitResult out;
  const auto rms = [&](const Vector& move) {
    return std::sqrt((a * move - wish).cwiseAbs2().cwiseProduct(weight).sum() / weight.sum());
  };
  out.rms_mm = rms(u);
  out.free_rms_mm = rms(free);
  out.shift_x_mm = u(0);
  out.shift_y_mm = u(1);
  out.turn_deg = in.flush ? u(2) : u(2) / meter / degree;
  out.stopped_by_slots = !touching.empty();
  out.datum_is_out = (a * free - wish).cwiseAbs().maxCoeff() > in.tolerance_mm;
  out.reached = (a * u - wish).cwiseAbs().maxCoeff() <= in.tolerance_mm;
  for (int i = 0; i < n; ++i) {
    const FitPoint& one = in.points[static_cast<std::size_t>(i)];
    const double after = one.found_mm + a.row(i).dot(u);
    out.points.push_back({one.name, one.found_mm, after, after - one.wanted_mm});
  }
  const int each = in.flush ? 2 : 4;
  for (std::size_t i = 0; i < in.fasteners.size(); ++i) {
    const int row = each * static_cast<int>(i);
    FitMove move{in.fasteners[i].name, slots.g.row(row).dot(u), 0, false};
    if (!in.flush) move.y_mm = slots.g.row(row + 2).dot(u);
    for (const int one : touching)
      move.at_its_end = move.at_its_end || (one >= row && one < row + each);
    out.moves.push_back(move);
  }

  out.basis.method = in.flush ? "One lift and two tilts by least squares within the slots."
                              : "Two shifts and one small turn by least squares within the slots.";
  if (!in.datum.empty()) out.basis.method += " The datum is the " + in.datum + ".";
  out.basis.term("points", n, "", measured);
  out.basis.term("fasteners", static_cast<double>(in.fasteners.size()), "", entered);
  out.basis.term("tolerance", in.tolerance_mm, "mm",
                 usual(in.tolerance_mm, PanelFit{}.tolerance_mm));
  out.basis.term("left after a free move, rms", out.free_rms_mm, "mm", computed);
  out.basis.term("left within the slots, rms", out.rms_mm, "mm", computed);
  out.basis.term("farthest off after it", (a * u - wish).cwiseAbs().maxCoeff(), "mm", computed);
  out.basis.term("slot ends that stop it", static_cast<double>(touching.size()), "", computed);
  for (const FitPoint& one : in.points) {
    out.basis.term("found at " + one.name, one.found_mm, "mm", measured);
    out.basis.term("wanted at " + one.name, one.wanted_mm, "mm", entered);
  }
  return out;
}

RigidFit rigid_fit(const std::vector<Point_mm>& from, const std::vector<Point_mm>& to) {
  const double n = static_cast<double>(from.size());
  Point_mm middle_from, middle_to;
  for (std::size_t i = 0; i < from.size(); ++i) {
    middle_from.x_mm += from[i].x_mm / n;
    middle_from.y_mm += from[i].y_mm / n;
    middle_to.x_mm += to[i].x_mm / n;
    middle_to.y_mm += to[i].y_mm / n;
  }
  double across = 0, along = 0;
  for (std::size_t i = 0; i < from.size(); ++i) {
    const double ax = from[i].x_mm - middle_from.x_mm, ay = from[i].y_mm - middle_from.y_mm;
    const double bx = to[i].x_mm - middle_to.x_mm, by = to[i].y_mm - middle_to.y_mm;
    across += ax * by - ay * bx;
    along += ax * bx + ay * by;
  }
  const double turn = std::atan2(across, along);
  const double c = std::cos(turn), s = std::sin(turn);
  RigidFit out{turn / degree, middle_to.x_mm - c * middle_from.x_mm + s * middle_from.y_mm,
               middle_to.y_mm - s * middle_from.x_mm - c * middle_from.y_mm, 0};
  double squares = 0;
  for (std::size_t i = 0; i < from.size(); ++i) {
    const double x = c * from[i].x_mm - s * from[i].y_mm + out.shift_x_mm - to[i].x_mm;
    const double y = s * from[i].x_mm + c * from[i].y_mm + out.shift_y_mm - to[i].y_mm;
    squares += x * x + y * y;
  }
  out.rms_mm = std::sqrt(squares / n);
  return out;
}

}  // namespace jambline::trade
