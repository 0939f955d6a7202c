#include "rules.h"

#include <QCoreApplication>
#include <QElapsedTimer>
#include <QHash>
#include <QKeyEvent>
#include <QSet>
#include <QTimer>
#include <cmath>
#include <cstdio>

#include "item.h"

namespace jambline::walk {

namespace {
using Found = std::vector<Finding>;

std::string numbers(const char* form, auto... values) {
  char text[160];
  std::snprintf(text, sizeof text, form, values...);
  return text;
}

std::string box_words(const QRectF& box) {
  return numbers("%.0f,%.0f %.0fx%.0f", box.x(), box.y(), box.width(), box.height());
}

bool holds(const QRectF& outer, const QRectF& inner, double slip) {
  return outer.adjusted(-slip, -slip, slip, slip).contains(inner);
}

struct Scroll {
  QRectF content;  // in the window, as it is scrolled now
  bool moves = false;
};

Scroll scroll_of(const QQuickItem& flickable) {
  const auto number = [&](const char* name) { return flickable.property(name).toDouble(); };
  const double width = std::max(number("contentWidth"), flickable.width());
  const double height = std::max(number("contentHeight"), flickable.height());
  const QRectF content(number("originX") - number("contentX"),
                       number("originY") - number("contentY"), width, height);
  return {flickable.mapRectToScene(content), flickable.property("interactive").toBool()};
}

// Why a box cannot be seen whole, or "": outside the window and nothing scrolls it there.
std::string out_of_sight(const QQuickItem& item, QRectF box, double least) {
  for (const QQuickItem* at = item.parentItem(); at; at = at->parentItem()) {
    const QRectF view = box_of(*at);
    if (at->inherits("QQuickFlickable")) {
      const Scroll scroll = scroll_of(*at);
      if (!holds(view, box, 1) && !scroll.moves)
        return numbers("%s outside %s, which does not scroll", box_words(box).c_str(),
                       box_words(view).c_str());
      const bool guessed = at->inherits("QQuickListView");  // the list has not seen all its rows
      if (!guessed && !holds(scroll.content, box, 1.5))
        return numbers("%s outside what scrolls, %s", box_words(box).c_str(),
                       box_words(scroll.content).c_str());
      if (view.height() < std::min(least, box.height()) - 0.5)
        return numbers("scrolls in a slit of %.0f", view.height());
      box = view;
      least = 0;
    } else if (at->clip() && !holds(view, box, 1)) {
      return numbers("%s cut by %s %s", box_words(box).c_str(), box_words(view).c_str(),
                     words_of(*at).c_str());
    }
  }
  const QRectF room(0, 0, item.window()->width(), item.window()->height());
  if (!holds(room, box, 0.5))
    return numbers("%s outside the window %.0fx%.0f", box_words(box).c_str(), room.width(),
                   room.height());
  return {};
}

// Rings, points and tags of a map lie where the paint has them, however close: the map picks among
// them.
bool on_map(const QQuickItem& item) {
  return is_kind(item, "PencilRing") || is_kind(item, "PanelTag") || is_kind(item, "FitSpot");
}

void check_target(QQuickItem& item, bool desk, Found& out) {
  if (on_map(item)) return;  // the map picks what is nearest to the finger
  const QRectF box = box_of(item);
  const bool slab = is_kind(item, "SlabButton");
  const double least = desk ? desk_dp : slab ? main_dp : touch_dp;
  if (box.height() < least - 0.5 || (box.width() < least - 0.5))
    out.push_back({"target", words_of(item),
                   numbers("%.1f x %.1f, least %.0f", box.width(), box.height(), least)});
  if (const std::string why = out_of_sight(item, box, least); !why.empty())
    out.push_back({"inside", words_of(item), why});
}

void check_name(QQuickItem& item, Found& out) {
  const auto role = role_of(item);
  if (role == QAccessible::NoRole || role == QAccessible::Client)
    out.push_back({"name", words_of(item), "no role"});
  else if (spoken(item).trimmed().isEmpty())
    out.push_back({"name", words_of(item), "no name"});
}

void check_letters(QQuickItem& item, Found& out) {
  const QRectF box = letters_box(item);
  if (item.inherits("QQuickText")) {
    const double wide = item.property("contentWidth").toDouble();
    const double high = item.property("contentHeight").toDouble();
    if (item.property("truncated").toBool())
      out.push_back({"cut", words_of(item), numbers("truncated at %.0f", item.width())});
    else if (wide > item.width() + 1.5 || high > item.height() + 1.5)
      out.push_back(
          {"cut", words_of(item),
           numbers("letters %.0f x %.0f in %.0f x %.0f", wide, high, item.width(), item.height())});
  } else if (item.implicitWidth() > item.width() + 1.5) {
    out.push_back({"cut", words_of(item),
                   numbers("letters %.0f in %.0f", item.implicitWidth(), item.width())});
  }
  const QQuickItem* whose = above(item, "Pressable");
  // A row beyond its list's edge gets its letters when it comes into sight.
  const bool not_yet_set = whose && box.isEmpty() && seen_part(*whose, box_of(*whose)).isEmpty();
  if (whose && whose->width() > 0 && !not_yet_set && !holds(box_of(*whose), box, 1.5))
    out.push_back({"cut", words_of(item),
                   numbers("%s sticks out of %s", box_words(box).c_str(),
                           box_words(box_of(*whose)).c_str())});
  if (const std::string why = out_of_sight(item, box, 0); !why.empty())
    out.push_back({"cut", words_of(item), why});
}

void check_overlaps(const std::vector<QQuickItem*>& letters,
                    const std::vector<QQuickItem*>& targets, Found& out) {
  const auto pairs = [&](const std::vector<QQuickItem*>& items, bool of_letters) {
    std::vector<std::pair<QQuickItem*, QRectF>> boxes;
    for (QQuickItem* item : items) {
      if (!of_letters && on_map(*item)) continue;
      QRectF box = of_letters ? letters_box(*item).adjusted(1, 2, -1, -2) : box_of(*item);
      box = seen_part(*item, box);
      if (!box.isEmpty()) boxes.emplace_back(item, box);
    }
    for (std::size_t i = 0; i < boxes.size(); ++i)
      for (std::size_t k = i + 1; k < boxes.size(); ++k) {
        const QRectF both = boxes[i].second.intersected(boxes[k].second);
        if (both.width() < 1 || both.height() < 1) continue;
        if (inside(*boxes[i].first, *boxes[k].first) || inside(*boxes[k].first, *boxes[i].first))
          continue;
        if (above(*boxes[i].first, "PatternMap") && above(*boxes[k].first, "PatternMap")) continue;
        out.push_back({"overlap", words_of(*boxes[i].first) + " and " + words_of(*boxes[k].first),
                       box_words(both)});
      }
  };
  pairs(letters, true);
  pairs(targets, false);
}

double channel(double value) {
  return value <= 0.03928 ? value / 12.92 : std::pow((value + 0.055) / 1.055, 2.4);
}

double luminance(const QColor& color) {
  return 0.2126 * channel(color.redF()) + 0.7152 * channel(color.greenF()) +
         0.0722 * channel(color.blueF());
}

double contrast(const QColor& one, const QColor& other) {
  const double a = luminance(one);
  const double b = luminance(other);
  return (std::max(a, b) + 0.05) / (std::min(a, b) + 0.05);
}

// The color that most of a box has beside the letters' own; theirs when there is no other.
QColor ground_of(const QImage& picture, const QRect& box, const QColor& ink) {
  QHash<QRgb, int> counts;
  QRgb best = ink.rgb();
  for (int y = box.top(); y <= box.bottom(); y += 2)
    for (int x = box.left(); x <= box.right(); x += 2) {
      const QRgb pixel = picture.pixel(x, y);
      if (pixel == ink.rgb()) continue;
      if (++counts[pixel] > counts.value(best)) best = pixel;
    }
  return QColor(best);
}

bool in_scope(QQuickItem& item) {
  return seen_opacity(item) > 0.05;
}
}  // namespace

QQuickItem& scope_of(QQuickWindow& window) {
  QQuickItem* out = window.contentItem();
  double z = 0;
  each(*window.contentItem(), [&](QQuickItem& item) {
    if (!item.property("opened").toBool() || role_of(item) != QAccessible::Dialog) return;
    if (item.z() < z) return;
    z = item.z();
    out = &item;
  });
  return *out;
}

std::vector<Finding> laid_out(QQuickWindow& window) {
  Found out;
  std::vector<QQuickItem*> letters;
  std::vector<QQuickItem*> targets;
  std::vector<QQuickItem*> slabs;
  const bool desk = window.width() >= desk_from_dp;
  each(scope_of(window), [&](QQuickItem& item) {
    if (!in_scope(item)) return;
    if (is_letters(item) && !letters_of(item).isEmpty()) letters.push_back(&item);
    if (is_interactive(item)) targets.push_back(&item);
    if (is_interactive(item) || item.activeFocusOnTab()) check_name(item, out);
    if (is_kind(item, "SlabButton")) slabs.push_back(&item);
  });
  for (QQuickItem* item : targets) check_target(*item, desk, out);
  for (QQuickItem* item : letters) check_letters(*item, out);
  check_overlaps(letters, targets, out);
  for (std::size_t i = 1; i < slabs.size(); ++i)
    out.push_back({"main act", words_of(*slabs[i]) + " beside " + words_of(*slabs[0]),
                   numbers("%zu of them", slabs.size())});
  return out;
}

std::vector<Finding> tabbed(QQuickWindow& window) {
  Found out;
  QQuickItem& scope = scope_of(window);
  QSet<const QQuickItem*> reached;  // and the list it stands in
  const QQuickItem* const first = window.activeFocusItem();
  int met = 0;
  for (QQuickItem* at = window.activeFocusItem(); at && (met == 0 || at != first) && met < 600;
       at = window.activeFocusItem()) {
    ++met;
    reached.insert(at);
    const QRectF seen = seen_part(*at, box_of(*at));
    if (met > 1 && is_interactive(*at) && !at->inherits("QQuickFlickable") && !on_map(*at) &&
        seen.height() < std::min(at->height(), desk_dp) - 0.5)
      out.push_back({"tab", words_of(*at),
                     numbers("has the focus, %.0f of %.0f in sight", seen.height(), at->height())});
    for (QQuickItem* within = at->parentItem(); within; within = within->parentItem())
      if (within->inherits("QQuickFlickable")) reached.insert(within);
    for (const auto type : {QEvent::KeyPress, QEvent::KeyRelease}) {
      QKeyEvent key(type, Qt::Key_Tab, Qt::NoModifier, QStringLiteral("\t"));
      QCoreApplication::sendEvent(&window, &key);
    }
    QCoreApplication::sendPostedEvents();  // an open sheet takes the focus back a moment later
  }
  each(scope, [&](QQuickItem& item) {
    if (!in_scope(item) || !item.isEnabled() || !is_interactive(item) || reached.contains(&item))
      return;
    if (role_of(item) == QAccessible::Row) return;  // the arrows walk in a table and in a list
    if (const auto* list = above(item, "QQuickListView"); list && reached.contains(list)) return;
    out.push_back({"tab", words_of(item), numbers("not among %d met", met)});
  });
  return out;
}

std::vector<Finding> contrasted(QQuickWindow& window, const QImage& picture) {
  Found out;
  each(scope_of(window), [&](QQuickItem& item) {
    if (!in_scope(item) || !is_letters(item) || letters_of(item).isEmpty()) return;
    const QRect box =
        seen_part(item, letters_box(item)).toAlignedRect().intersected(picture.rect());
    if (box.width() < 4 || box.height() < 8) return;
    const QColor ink = item.property("color").value<QColor>();
    const QColor ground = ground_of(picture, box, ink);
    const double found = contrast(ink, ground);
    if (found < least_contrast - 0.005)
      out.push_back(
          {"contrast", words_of(item),
           numbers("%.2f, %s on %s", found, qPrintable(ink.name()), qPrintable(ground.name()))});
  });
  return out;
}

void settle(QQuickWindow& window) {
  int frames = 0;
  const auto counting =
      QObject::connect(&window, &QQuickWindow::frameSwapped, &window, [&frames] { ++frames; });
  for (int round = 0, before = -1; round < 40 && before != frames; ++round) {
    before = frames;
    QElapsedTimer timer;
    timer.start();
    QTimer wakes;  // so that the thread sleeps between events and still sees when time is up
    wakes.start(5);
    do QCoreApplication::processEvents(QEventLoop::AllEvents | QEventLoop::WaitForMoreEvents);
    while (timer.elapsed() < 5);
  }
  QObject::disconnect(counting);
}

}  // namespace jambline::walk
