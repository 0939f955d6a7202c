// Booths: adding one, logging what was done to it in two taps, earlier, corrected; times to come
// are refused; and where a car was sprayed.
#include "screens/booth_view_model.h"

#include "screens/correct_words.h"
#include "tests/screens/shop_desk.h"

namespace jambline::screens {
namespace {

using job::BoothEvent;

class BoothScreen : public ShopDesk {
 protected:
  void SetUp() override {
    ShopDesk::SetUp();
    be(add("Ivo", job::Role::Painter));
  }
  static QVariant value(QAbstractItemModel* rows, int row, const char* role) {
    return rows->data(rows->index(row, 0), rows->roleNames().key(role));
  }
  QString add_booth(BoothViewModel& screen, const char* name) {
    screen.openBooth({});
    screen.keepBooth(QString::fromLatin1(name), 0);
    settle();
    return value(screen.booths(), screen.boothCount() - 1, "key").toString();
  }
  QString age(BoothViewModel& screen, BoothEvent event) {
    return value(screen.booths(), 0, "ages").toStringList().value(static_cast<int>(event));
  }
  const auto& logged() { return session_->shop().booth_events; }
};

TEST_F(BoothScreen, ABoothIsAddedAndChanged) {
  BoothViewModel screen(*session_);
  EXPECT_EQ(screen.boothCount(), 0);
  const QString key = add_booth(screen, "  Booth 1 ");
  ASSERT_EQ(screen.boothCount(), 1);
  EXPECT_EQ(value(screen.booths(), 0, "title"), "Booth 1");
  EXPECT_EQ(age(screen, BoothEvent::NewHose), "not yet");
  screen.openBooth(key);
  EXPECT_EQ(screen.openName(), "Booth 1");
  int kept = 0;
  QObject::connect(&screen, &BoothViewModel::boothKept, &screen, [&] { ++kept; });
  screen.keepBooth("Big booth", 3);
  settle();
  EXPECT_EQ(value(screen.booths(), 0, "title"), "Big booth");
  EXPECT_EQ(screen.openKind(), 3);
  EXPECT_EQ(kept, 1);
  screen.keepBooth("   ", 0);
  screen.keepBooth("x", 17);
  settle();
  EXPECT_EQ(screen.openName(), "Big booth");
  EXPECT_FALSE(failed_);
  add_booth(screen, "Big booth");
  EXPECT_TRUE(failed_) << "two booths of one name";
}

TEST_F(BoothScreen, AnEventIsLoggedAndItsAgeStandsOnTheBooth) {
  BoothViewModel screen(*session_);
  const QString key = add_booth(screen, "Booth 1");
  int kept = 0;
  QObject::connect(&screen, &BoothViewModel::eventKept, &screen, [&] { ++kept; });
  screen.startEvent(key, static_cast<int>(BoothEvent::NewHose));
  EXPECT_FALSE(screen.asksFilters());
  screen.keepEvent();
  settle();
  EXPECT_EQ(kept, 1);
  ASSERT_EQ(logged().size(), 1U);
  EXPECT_EQ(logged()[0].what, BoothEvent::NewHose);
  EXPECT_EQ(logged()[0].happened_ms, clock_.moment.wall_ms);
  EXPECT_EQ(age(screen, BoothEvent::NewHose), "just now");
  clock_.advance_ms(3LL * 24 * 3'600'000);
  act(acts::AddRack{"rack 1"});
  EXPECT_EQ(age(screen, BoothEvent::NewHose), "3 days ago");
}

TEST_F(BoothScreen, EarlierIsSaidInStepsAndATimeToComeIsRefusedInWords) {
  BoothViewModel screen(*session_);
  const QString key = add_booth(screen, "Booth 1");
  screen.startEvent(key, static_cast<int>(BoothEvent::Cleaned));
  EXPECT_FALSE(screen.earlier());
  screen.shift(10);
  EXPECT_FALSE(screen.earlier());
  EXPECT_EQ(screen.whenRefused(), "That time is still to come. The latest is now.");
  screen.shift(-24 * 60);
  screen.shift(-60);
  EXPECT_EQ(screen.whenRefused(), "");
  EXPECT_TRUE(screen.earlier());
  screen.keepEvent();
  settle();
  ASSERT_EQ(logged().size(), 1U);
  EXPECT_EQ(logged()[0].happened_ms, clock_.moment.wall_ms - 25LL * 3'600'000);
  EXPECT_EQ(age(screen, BoothEvent::Cleaned), "25 h ago");
  EXPECT_FALSE(failed_);
}

TEST_F(BoothScreen, OldFiltersStillInTheBuildingStandOnTheBooth) {
  BoothViewModel screen(*session_);
  const QString key = add_booth(screen, "Booth 1");
  screen.startEvent(key, static_cast<int>(BoothEvent::FiltersChanged));
  EXPECT_TRUE(screen.asksFilters());
  screen.keepFilterChange(false);
  settle();
  EXPECT_TRUE(value(screen.booths(), 0, "filtersStillIn").toBool());
  screen.filtersOut(key);
  settle();
  EXPECT_FALSE(value(screen.booths(), 0, "filtersStillIn").toBool());
  ASSERT_EQ(logged().size(), 1U) << "the same event, corrected";
  EXPECT_EQ(logged()[0].old_filters_out, true);
}

TEST_F(BoothScreen, AnEventIsCorrectedLater) {
  BoothViewModel screen(*session_);
  const QString first = add_booth(screen, "Booth 1");
  const QString second = add_booth(screen, "Booth 2");
  screen.startEvent(first, static_cast<int>(BoothEvent::FiltersChanged));
  screen.keepFilterChange(true);
  settle();
  screen.openBooth(first);
  ASSERT_EQ(screen.openEvents(), 1);
  screen.startCorrecting(value(screen.events(), 0, "key").toString());
  ASSERT_TRUE(screen.correcting());
  screen.changeWhat(static_cast<int>(BoothEvent::NewSuits));
  screen.changeBooth(second);
  screen.shift(-60);
  screen.keepEvent();
  settle();
  ASSERT_EQ(logged().size(), 1U);
  EXPECT_EQ(logged()[0].what, BoothEvent::NewSuits);
  EXPECT_EQ(logged()[0].booth, session_->shop().booths[1].booth);
  EXPECT_EQ(logged()[0].old_filters_out, std::nullopt);
  EXPECT_EQ(logged()[0].happened_ms, clock_.moment.wall_ms - 3'600'000);
  EXPECT_EQ(screen.openEvents(), 0);
  EXPECT_FALSE(failed_);
}

TEST_F(BoothScreen, NobodyChosenLogsNothing) {
  BoothViewModel screen(*session_);
  const QString key = add_booth(screen, "Booth 1");
  session_->choosePerson({});
  EXPECT_FALSE(screen.mayKeep());
  screen.startEvent(key, 1);
  screen.keepEvent();
  screen.startEvent("not a booth", 1);
  screen.startEvent(key, 99);
  screen.startCorrecting("neither");
  settle();
  EXPECT_TRUE(logged().empty());
}

TEST_F(BoothScreen, WhereACarWasSprayedIsOneTap) {
  BoothViewModel screen(*session_);
  open_car();
  EXPECT_FALSE(screen.spraysCar()) << "a shop without a booth is asked nothing";
  const QString key = add_booth(screen, "Booth 1");
  EXPECT_TRUE(screen.spraysCar());
  EXPECT_EQ(screen.sprayedWords(), "Sprayed in this booth?");
  const QString other = add_booth(screen, "Booth 2");
  EXPECT_EQ(screen.sprayedWords(), "Sprayed in which booth?");
  screen.saySprayedIn(other);
  settle();
  EXPECT_EQ(screen.sprayedWords(), "Sprayed in Booth 2");
  EXPECT_TRUE(value(screen.sprayedIn(), 1, "chosen").toBool());
  screen.saySprayedIn(other);
  screen.saySprayedIn(key);
  settle();
  EXPECT_EQ(car().booth, session_->shop().booths[0].booth);
  EXPECT_FALSE(failed_);
}

TEST_F(BoothScreen, EveryKindAndEventHasWordsAndADrawing) {
  BoothViewModel screen(*session_);
  for (int i = 0; i < screen.kindCount(); ++i) EXPECT_FALSE(screen.kindWords(i).isEmpty()) << i;
  for (int i = 0; i < screen.eventCount(); ++i) {
    EXPECT_FALSE(screen.eventWords(i).isEmpty()) << i;
    EXPECT_TRUE(std::filesystem::exists(std::filesystem::path(JAMBLINE_SOURCE_DIR) / "icons" /
                                        (screen.eventIcon(i).toStdString() + ".svg")))
        << i;
  }
  EXPECT_EQ(screen.kindWords(-1) + screen.eventWords(5) + screen.eventIcon(-1), "");
}

}  // namespace
}  // namespace jambline::screens
