// Every screen x empty, usual, full, error x light, dark x 412x892, 900x1200, 1440x900 x 100, 150
// % x longer words: the rules of rules.h. All of it, with
// pictures in build/*/screens, by JAMBLINE_WALK_ALL=1 (platform/linux/test --step walk), or where
// JAMBLINE_WALK names the screens; else each screen in each state, in the usual shop in each
// window, and of light, text, words and the other windows what the screen's turn is.
#include <QCoreApplication>
#include <QDir>
#include <QQmlComponent>
#include <QQmlEngine>
#include <gtest/gtest.h>

#include "findings.h"
#include "item.h"
#include "pseudo_words.h"
#include "screens.h"
#include "screens/settings_view_model.h"

namespace jambline::walk {
namespace {

const QSize sizes[] = {{412, 892}, {900, 1200}, {1440, 900}};

// Nothing moves, so that every picture is of a screen at rest.
bool stop_motion(QQuickWindow& window) {
  QQmlComponent component(qmlEngine(&window));
  component.setData(
      "import QtQml\nimport Jambline.Theme\n"
      "QtObject { Component.onCompleted: Theme.reducedMotion = true }",
      QUrl());
  const std::unique_ptr<QObject> made(component.create());
  return made != nullptr;
}

bool everything() {
  static const bool named = qEnvironmentVariableIsSet("JAMBLINE_WALK");
  static const bool out = qEnvironmentVariable("JAMBLINE_WALK_ALL", named ? "1" : "0") != "0";
  return out;
}

bool is_pictured(const View& view) {
  if (view.state == "empty") return view.text_percent == 100 && view.words == "source";
  if (view.state == "error")
    return view.size.width() == 412 && view.words == "source" && !view.dark;
  if (view.text_percent == 100 && view.words == "source") return true;
  return view.size.width() == 412 && !view.dark &&
         (view.text_percent == 100 || view.words == "source");
}

void keep_picture(const View& view, const QImage& picture) {
  static const QDir folder(QStringLiteral(JAMBLINE_SCREENS_DIR));
  folder.mkpath(QStringLiteral("."));
  const QString name = QStringLiteral("%1-%2-%3x%4%5%6%7.png")
                           .arg(QString::fromStdString(view.screen))
                           .arg(QString::fromStdString(view.state))
                           .arg(view.size.width())
                           .arg(view.size.height())
                           .arg(view.dark ? "-dark" : "")
                           .arg(view.text_percent == 100 ? "" : "-150")
                           .arg(view.words == "source" ? "" : "-pseudo");
  EXPECT_TRUE(picture.save(folder.filePath(name), "PNG", 80)) << qPrintable(name);
}

class Walker {
 public:
  Walker(Kind kind, std::string state) : kind_(kind), state_(std::move(state)) {}

  void walk() {
    for (const bool pseudo : {false, true}) {
      if (pseudo && !everything() && kind_ != Kind::Full && state_ != "usual") continue;
      PseudoWords words;
      if (pseudo) QCoreApplication::installTranslator(&words);
      shop_ = Shop::open(kind_);
      ASSERT_NE(shop_, nullptr) << "the shop did not open";
      view_ = {.screen = {}, .state = state_, .size = {}, .words = pseudo ? "pseudo" : "source"};
      prepare();
      through_all(kind_ != Kind::Empty);
      if (kind_ == Kind::Empty) {
        of_car_only_ = true;
        add_bare_car();
        through_all(true);
        of_car_only_ = false;
      }
      shop_.reset();
      if (pseudo) QCoreApplication::removeTranslator(&words);
    }
    EXPECT_TRUE(findings_.none()) << "\n" << findings_.report();
    EXPECT_EQ(warnings(), "");
    std::printf("%d views, %d pictures\n", views_, pictures_);
  }

 private:
  void prepare() {
    ASSERT_TRUE(stop_motion(shop_->window()));
    shop_->window().grabWindow();  // laid out once before anything is looked at
    settle(shop_->window());
    if (state_ == "full") {
      ASSERT_TRUE(shop_->put_on_tape(shop_->usual_car()));
      ASSERT_TRUE(shop_->undoable_act());
    }
    if (state_ == "error")
      emit shop_->program().session().failed(
          Error{Code::DiskFull, "append", "nib 7", {{"cause", "no space left on device"}}});
  }

  // The empty shop has no car: what belongs to one is looked at on one that has nothing yet.
  void add_bare_car() {
    ASSERT_TRUE(shop_->add_bare_car());
    shop_->program().session().leaveCar();
    shop_->program().engine().drain();
    settle(shop_->window());
  }

  // What was opened stays in memory and turns with the screen that is looked at: after some screens
  // the program is started anew, or the last ones take three times as long.
  void begin_anew() {
    constexpr int screens_a_start = 8;
    if (++since_start_ < screens_a_start) return;
    since_start_ = 0;
    shop_.reset();
    shop_ = Shop::open(kind_);
    ASSERT_NE(shop_, nullptr) << "the shop did not open";
    prepare();
    if (of_car_only_) add_bare_car();
  }

  // A screen is gone to once and then turned through sizes, text and light.
  void through_all(bool with_car) {
    number_ = 0;
    for (const Screen& screen : screens()) {
      ++number_;
      if (screen.of_car ? !with_car : of_car_only_) continue;
      if (screen.disputed && shop_->disputed_car().isEmpty()) continue;
      if (!everything() && !has_a_turn(screen.narrow_only)) continue;
      ASSERT_NO_FATAL_FAILURE(begin_anew());
      view_.screen = screen.name;
      turn(sizes[0], 100, false);
      if (!go_to(*shop_, screen)) {
        findings_.add(view_, {{"came", screen.name, "the screen did not come"}});
        continue;
      }
      look_at_it(screen.narrow_only);
    }
  }

  // The light costs most to turn, and is turned once a size; it is not turned where nobody looks.
  void look_at_it(bool narrow_only) {
    for (int size = 0; size < 3; ++size) {
      if (narrow_only && sizes[size].width() >= 840) continue;
      for (int look = 0; look < 4; ++look) {
        const auto& [dark, percent] = looks[look];
        View view = view_;
        view.size = sizes[size];
        view.text_percent = percent;
        view.dark = dark;
        if (dark && !is_pictured(view)) continue;  // what is dark only is where nothing lies
        if (!everything() && !is_its_turn(size, look, narrow_only ? 1 : 3)) continue;
        turn(sizes[size], percent, dark);
        settle(shop_->window());
        this->look();
      }
    }
  }

  // In the usual shop every window as it is by itself, in the other shops one; and with it another
  // look, that goes on with the screen, in a window that goes on with it. Longer words lie where
  // the room is short: on the phone with large text, in one of the two shops, and every other
  // screen in a wider window of the usual shop.
  bool is_its_turn(int size, int look, int windows) const {
    if (view_.words != "source") {
      const bool odd = number_ % 2 == 1;
      if (size == 0) return look == 1 && odd == (state_ == "usual");
      return look == 0 && !odd && state_ == "usual" && size == 1 + number_ / 2 % 2;
    }
    const int state = state_ == "empty" ? 0 : state_ == "usual" ? 1 : state_ == "full" ? 2 : 3;
    if (look == 0) return state_ == "usual" || size == (number_ + state) % windows;
    if (size != (number_ + state + 1) % windows) return false;
    return look == ((number_ + size + state) % 2 == 0 ? 1 : 3);
  }

  bool has_a_turn(bool narrow_only) const {
    for (int size = 0; size < (narrow_only ? 1 : 3); ++size)
      for (int look = 0; look < 4; ++look)
        if (is_its_turn(size, look, narrow_only ? 1 : 3)) return true;
    return false;
  }

  void turn(const QSize& size, int percent, bool dark) {
    using screens::SettingsViewModel;
    auto& settings = shop_->program().settings();
    shop_->window().resize(size);
    settings.set_text_percent(percent);
    settings.set_look(dark ? SettingsViewModel::Stall : SettingsViewModel::Booth);
    view_.size = size;
    view_.text_percent = percent;
    view_.dark = dark;
  }

  void look() {
    ++views_;
    QQuickWindow& window = shop_->window();
    findings_.add(view_, laid_out(window));
    if (is_pictured(view_)) {
      const QImage picture = window.grabWindow();
      if (everything()) keep_picture(view_, picture);
      findings_.add(view_, contrasted(window, picture));
      ++pictures_;
    }
    const bool tab = everything() || state_ == "usual" || view_.text_percent != 100;
    if (!view_.dark && tab) findings_.add(view_, tabbed(window));
  }

  // The order in which the light turns least.
  static constexpr std::pair<bool, int> looks[] = {
      {false, 100}, {false, 150}, {true, 150}, {true, 100}};

  Kind kind_;
  std::string state_;
  std::unique_ptr<Shop> shop_;
  View view_;
  bool of_car_only_ = false;
  Findings findings_;
  int since_start_ = 0;
  int number_ = 0;  // of the screen
  int views_ = 0;
  int pictures_ = 0;
};

TEST(Walk, EveryScreenOfAnEmptyShop) {
  Walker(Kind::Empty, "empty").walk();
}
TEST(Walk, EveryScreenOfAUsualShop) {
  Walker(Kind::Usual, "usual").walk();
}
TEST(Walk, EveryScreenOfAFullShop) {
  Walker(Kind::Full, "full").walk();
}
TEST(Walk, EveryScreenUnderARefusal) {
  Walker(Kind::Usual, "error").walk();
}

// The undo row comes and goes: a thumb that is on its way must still meet the main act.
TEST(Walk, TheMainActStandsStillWhenTheUndoRowComes) {
  const auto shop = Shop::open(Kind::Usual);
  ASSERT_NE(shop, nullptr);
  ASSERT_TRUE(stop_motion(shop->window()));
  std::map<std::string, QRectF> before;
  for (const bool done : {false, true}) {
    if (done) {
      ASSERT_TRUE(shop->undoable_act());
      settle(shop->window());
      ASSERT_NE(named(*shop->window().contentItem(), QStringLiteral("undoRow")), nullptr);
    }
    for (const Screen& screen : screens()) {
      if (screen.name != "floor" && screen.name != "car" && screen.name != "inspect-car" &&
          screen.name != "inspect-panel" && screen.name != "open-a-car-1-car")
        continue;
      ASSERT_TRUE(go_to(*shop, screen)) << screen.name;
      QQuickItem* slab = find(*shop->window().contentItem(),
                              [](QQuickItem& item) { return is_kind(item, "SlabButton"); });
      ASSERT_NE(slab, nullptr) << screen.name;
      const QRectF now = box_of(*slab);
      if (done)
        EXPECT_EQ(before[screen.name].bottom(), now.bottom()) << screen.name;
      else
        before[screen.name] = now;
    }
  }
}

}  // namespace
}  // namespace jambline::walk
