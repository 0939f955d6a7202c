// The rules that every screen keeps, and what is found against them in the window as it stands.
//
// Sources: targets of 72 dp, the main act of 76 and a desk's 44 from 1200 dp on are the design's
// own
//          (gloves); contrast is success criterion 1.4.3 of WCAG 2.1, 4.5:1, from the pixels drawn.
// Scope:   the topmost open sheet, or else the whole window.
#pragma once

#include <QImage>
#include <QQuickWindow>
#include <string>
#include <vector>

namespace jambline::walk {

struct Finding {
  std::string rule;  // "target", "inside", "cut", "overlap", "name", "tab", "main act", "contrast"
  std::string item;  // type, object name, spoken name
  std::string numbers;  // what was measured
};

inline constexpr double touch_dp = 72;
inline constexpr double main_dp = 76;
inline constexpr double desk_dp = 44;
inline constexpr double desk_from_dp = 1200;
inline constexpr double least_contrast = 4.5;

QQuickItem& scope_of(QQuickWindow& window);

std::vector<Finding> laid_out(QQuickWindow& window);  // every rule but the next two
std::vector<Finding> tabbed(QQuickWindow& window);    // presses Tab until it comes round
std::vector<Finding> contrasted(QQuickWindow& window, const QImage& picture);

// Until no more frames come.
void settle(QQuickWindow& window);

}  // namespace jambline::walk
