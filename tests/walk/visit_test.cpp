// One car from check-in to delivered and back again, with three people on one tablet and a finger
// and the keys only. The program is killed in the middle, while two clocks run. The hours at the
// end are those of the table below, counted by hand; the note is read back by Debian's pdftotext.
#include "visit_test.h"

#include <QTemporaryDir>
#include <csignal>
#include <cstdio>
#include <cstdlib>
#include <gtest/gtest.h>
#include <sys/wait.h>

#include "base/spans.h"
#include "item.h"
#include "tests/threads/screen_hand.h"

namespace jambline::walk {

namespace {
constexpr std::int64_t eight_ms = 1'789'977'600'000;  // Mon 2026-09-21 08:00 UTC

// Minutes from 08:00, as the finger taps below.
//          check-in 0-12        walk-around 150-156
//   Rosa:  12                 + 6                          = 18
//          prep 15-90           wash 120-140
//   Jo:    75                 + 20                         = 95
//          prep 25-60, 70-95    inspect 95-110
//   Ivo:   35 + 25            + 15                         = 75
constexpr int rosa_min = 18;
constexpr int jo_min = 95;
constexpr int ivo_min = 75;
constexpr int killed_at_min = 40;
constexpr int opened_again_min = 50;

class Tablet {
 public:
  bool open(const std::filesystem::path& folder, int minute) {
    clock_.moment = {eight_ms, 5'000'000, BootId{{1}}, 0};
    at(minute);
    app::Options options;
    options.size = QSize(412, 892);
    auto opened = app::Program::open(folder, clock_, options);
    if (!opened) return false;
    program_ = std::move(*opened);
    if (!program_->show()) return false;
    hand_ = std::make_unique<ScreenHand>(*program_);
    return true;
  }
  void at(int minute) {
    const std::int64_t on = eight_ms + minute * minute_ms - clock_.moment.wall_ms;
    clock_.advance_ms(on);
    if (program_) emit program_->session().secondPassed();
  }
  engine::Engine& engine() { return program_->engine(); }
  const folds::CarView* car() { return engine().snapshot()->car.get(); }

  void settle() {
    for (int i = 0; i < 2; ++i) {
      engine().drain();
      hand_->wait_for_quiet(30, 400);
    }
  }
  bool wait_for(const std::function<bool()>& so) { return hand_->wait_for(so); }
  QQuickItem* seen(const std::function<bool(QQuickItem&)>& fits) {
    QQuickItem* out = nullptr;
    wait_for([&] { return (out = find(*hand_->window().contentItem(), fits)) != nullptr; });
    return out;
  }
  QQuickItem* seen(const char* name) {
    return seen([&](QQuickItem& item) { return item.objectName() == QLatin1String(name); });
  }
  QString text_of(const char* name) {
    QQuickItem* item = seen(name);
    return item ? item->property("text").toString() : QString();
  }

  // `across`: where on it, in parts of its width.
  bool tap(QQuickItem* item, double across = 0.5) {
    if (!item) return false;
    for (int i = 0; i < 12 && !middle_of(*item); ++i) scroll();
    std::optional<QPointF> middle;
    // What still slides in is not where a finger sees it.
    const bool still = wait_for([&] {
      const auto before = middle;
      hand_->wait_for_quiet(40, 300);
      middle = middle_of(*item);
      return middle && middle == before;
    });
    if (!still) return false;
    hand_->touch(*middle + QPointF(item->width() * (across - 0.5), 0));
    settle();
    hand_->wait_for([] { return false; }, 260);  // a second touch within 250 ms is not taken
    return true;
  }
  bool tap(const char* name) {
    QQuickItem* item = seen(name);
    if (!item) std::printf("%s is not there\n", name);
    return tap(item);
  }
  bool tap_kind(const char* type) {
    return tap(seen([&](QQuickItem& item) { return is_kind(item, type); }));
  }
  // The clock, then the person.
  bool be(const char* name) {
    if (!open_clock()) return false;
    const bool chosen = tap(seen([&](QQuickItem& item) {
      return is_kind(item, "PersonTile") && item.property("personName").toString() == name;
    }));
    return chosen && close_sheet() && program_->session().personName() == name;
  }
  // Beside the tab that switches the clock.
  bool open_clock() { return tap(seen("clockRule"), 0.15); }
  bool close_sheet() {
    QQuickItem* close = find(*hand_->window().contentItem(), [](QQuickItem& item) {
      return item.objectName() == QLatin1String("sheetClose");
    });
    return !close || tap(close);
  }
  bool type(const char* field, const QString& words) {
    if (!tap(field)) return false;
    key(Qt::Key_A, QString(), Qt::ControlModifier);
    for (const QChar letter : words) key(0, letter, Qt::NoModifier);
    settle();
    return true;
  }
  bool sign(const QString& name) {
    if (!type("signerName", name)) return false;
    QQuickItem* glass = seen("signatureGlass");
    if (!glass) return false;
    const auto place = [&](double x, double y) {
      return glass->mapToScene(QPointF(glass->width() * x, glass->height() * y));
    };
    hand_->press(place(0.1, 0.5));
    for (int i = 1; i <= 8; ++i) {
      hand_->move(place(0.1 + 0.09 * i, i % 2 ? 0.2 : 0.7));
      hand_->wait_for_quiet(10, 40);
    }
    hand_->release(place(0.82, 0.7));
    settle();
    return tap("signatureKeep");
  }
  void keep_picture(const char* name) {
    hand_->window().grabWindow().save(
        QStringLiteral(JAMBLINE_SCREENS_DIR "/visit-%1.png").arg(QLatin1String(name)));
  }
  // Of all closed spans of a person on the car.
  int minutes_of(const char* name) {
    std::int64_t ms = 0;
    for (const auto& span : car()->worked)
      if (engine().snapshot()->shop->find(span.person)->name == name)
        ms += span.end_ms - span.start_ms;
    return static_cast<int>(ms / minute_ms);
  }

 private:
  std::optional<QPointF> middle_of(QQuickItem& item) {
    QRectF seen = item.mapRectToScene(QRectF(0, 0, item.width(), item.height()));
    for (auto* above = item.parentItem(); above; above = above->parentItem())
      if (above->clip())
        seen &= above->mapRectToScene(QRectF(0, 0, above->width(), above->height()));
    seen &= QRectF(QPointF(0, 0), QSizeF(hand_->window().size()));
    if (seen.height() < item.height() * 0.9) return std::nullopt;
    return seen.center();
  }
  void scroll() {
    QPointF at(20, 330);
    hand_->press(at);
    for (int step = 0; step < 10; ++step) {
      at.ry() -= 20;
      hand_->move(at);
      hand_->wait_for_quiet(10, 40);
    }
    hand_->wait_for([] { return false; }, 120);  // no flick
    hand_->release(at);
    settle();
  }
  void key(int code, const QString& text, Qt::KeyboardModifiers with) {
    for (const auto what : {QEvent::KeyPress, QEvent::KeyRelease}) {
      QKeyEvent event(what, code, with, text);
      QCoreApplication::sendEvent(&hand_->window(), &event);
    }
  }

  FakeClock clock_;
  std::unique_ptr<app::Program> program_;
  std::unique_ptr<ScreenHand> hand_;
};

// A shop that wants no pictures, and a car with its work planned; a part is still to come.
bool set_up(engine::Engine& engine) {
  bool good = true;
  PersonId by;
  const auto act = [&](acts::Command command) {
    engine.post(std::move(command), by,
                [&](const Result<engine::Wrote>& wrote) { good = good && wrote.has_value(); });
    engine.drain();
  };
  act(acts::NameShop{"Yard", "UTC"});
  act(acts::AddPerson{"Rosa", job::Role::Manager});
  by = engine.snapshot()->shop->people.front().person;
  act(acts::AddPerson{"Jo", job::Role::BodyTechnician});
  act(acts::AddPerson{"Ivo", job::Role::Painter});
  acts::OpenCar car;
  car.plate = "K 41-207";
  car.color = {"G7", "deep green", "#1F4D3A"};
  car.body = job::BodyShape::FourDoorSedan;
  car.panels = {{job::Panel::Hood, true}};
  for (const auto& [stage, minutes] :
       {std::pair(job::Stage::CheckIn, 10), std::pair(job::Stage::Prep, 120),
        std::pair(job::Stage::Inspect, 15), std::pair(job::Stage::Wash, 15),
        std::pair(job::Stage::WalkAround, 10)}) {
    act(acts::SetShotList{stage, {}});
    car.operations.push_back({stage, "", minutes});
  }
  act(car);
  act(acts::SayPart{
      engine.snapshot()->floor->front().job, {}, {"antenna", job::PartState::Ordered, {}}});
  return good;
}

bool check_in(Tablet& tablet) {
  if (!tablet.tap("odometerRow")) return false;
  for (const char* digit : {"key_4", "key_8", "key_2", "key_1", "key_0"})
    if (!tablet.tap(digit)) return false;
  return tablet.tap("odometerDone") && tablet.tap("fuel3") && tablet.tap("keys2") &&
         tablet.tap("checkInMain") && tablet.tap("checkInMain") && tablet.sign("Dana Whitlow");
}
}  // namespace

int first_half(const char* folder) {
  Tablet tablet;
  if (!tablet.open(folder, 0) || !set_up(tablet.engine())) return 3;
  tablet.settle();
  const auto step = [&](int minute, bool done, int code) {
    if (!done) {
      tablet.keep_picture("stuck");
      std::exit(code);
    }
    tablet.at(minute);
  };
  step(0, tablet.be("Rosa") && tablet.tap_kind("FloorCard"), 4);
  step(12, tablet.tap("carMain") && check_in(tablet), 5);
  step(15, tablet.tap("tape") && tablet.tap("carMain"), 6);
  step(25, tablet.be("Jo") && tablet.tap("carMain"), 7);
  step(killed_at_min, tablet.be("Ivo") && tablet.tap("carMain"), 8);
  std::raise(SIGKILL);
  return 9;
}

namespace {

std::string output_of(const std::string& line) {
  std::string out;
  FILE* pipe = popen(line.c_str(), "r");
  if (!pipe) return out;
  char part[512];
  while (std::fgets(part, sizeof part, pipe)) out += part;
  EXPECT_EQ(pclose(pipe), 0) << line;
  return out;
}

TEST(WholeVisit, FromCheckInToDeliveredAndBackWithThreePeopleAndAKill) {
  const QTemporaryDir folder;
  const std::string path = folder.path().toStdString();
  const std::string self = std::filesystem::read_symlink("/proc/self/exe").string();
  const int status = std::system((self + " --first-half " + path).c_str());
  ASSERT_TRUE(WIFEXITED(status) && WEXITSTATUS(status) == 128 + SIGKILL) << status;

  Tablet tablet;
  ASSERT_TRUE(tablet.open(path, opened_again_min));
  tablet.settle();
  ASSERT_TRUE(tablet.be("Ivo") && tablet.tap_kind("FloorCard"));
  ASSERT_TRUE(tablet.wait_for([&] { return tablet.car() != nullptr; }));
  EXPECT_EQ(tablet.car()->visit.check_in->said.odometer, 48210);
  EXPECT_EQ(tablet.car()->visit.signatures.front().signer, "Dana Whitlow");
  EXPECT_EQ(tablet.car()->running.size(), 2U) << "nothing was closed by the kill";
  tablet.at(60);
  ASSERT_TRUE(tablet.open_clock() && tablet.tap("pauseClock"));
  tablet.at(70);
  ASSERT_TRUE(tablet.tap("pauseClock") && tablet.close_sheet());
  tablet.at(90);
  ASSERT_TRUE(tablet.be("Jo") && tablet.tap("carMain"));
  tablet.at(95);
  ASSERT_TRUE(tablet.be("Ivo") && tablet.tap("carMain") && tablet.tap("lookOverNext"));
  ASSERT_TRUE(tablet.tap("panelMain"));
  tablet.at(110);
  ASSERT_TRUE(tablet.tap("tape") && tablet.tap("carMain"));
  tablet.at(120);
  ASSERT_TRUE(tablet.be("Jo") && tablet.tap("carMain"));
  tablet.at(140);
  ASSERT_TRUE(tablet.tap("carMain"));
  tablet.at(150);
  ASSERT_TRUE(tablet.be("Rosa") && tablet.tap("carMain"));
  tablet.keep_picture("walk-around");
  ASSERT_TRUE(tablet.tap("walkAroundMain")) << "it waits and asks for the signature";
  EXPECT_FALSE(tablet.car()->delivered_ms);
  ASSERT_TRUE(tablet.sign("Dana Whitlow"));
  tablet.at(156);
  ASSERT_TRUE(tablet.tap("walkAroundMain"));
  ASSERT_TRUE(tablet.wait_for([&] { return tablet.car()->delivered_ms.has_value(); }));
  EXPECT_EQ(tablet.minutes_of("Rosa"), rosa_min);
  EXPECT_EQ(tablet.minutes_of("Jo"), jo_min);
  EXPECT_EQ(tablet.minutes_of("Ivo"), ivo_min);
  EXPECT_TRUE(tablet.car()->running.empty());
  std::int64_t all_ms = 0;
  for (const auto& operation : tablet.car()->operations) all_ms += operation.clocked_ms;
  EXPECT_EQ(all_ms, (rosa_min + jo_min + ivo_min) * minute_ms);

  const QTemporaryDir desk;
  ASSERT_NE(tablet.seen("noteSave"), nullptr) << "the note comes by itself";
  ASSERT_TRUE(tablet.type("notePlace", desk.path() + "/none") && tablet.tap("noteSave"));
  EXPECT_TRUE(tablet.text_of("noteWhat").startsWith("This is not there"));
  ASSERT_TRUE(tablet.type("notePlace", desk.path()) && tablet.tap("noteSave"));
  ASSERT_TRUE(tablet.wait_for([&] { return tablet.text_of("noteWhat").startsWith("Saved as"); }))
      << tablet.text_of("noteWhat").toStdString();
  tablet.keep_picture("note");
  const std::string words =
      output_of("pdftotext -layout " + desk.path().toStdString() + "/*.pdf -");
  for (const char* said : {"Hand-over note", "K 41-207", "Signed by Dana Whitlow", "48,210",
                           "the part is still to come", "30 to 90 days"})
    EXPECT_NE(words.find(said), std::string::npos) << said << "\n" << words;
  for (const char* own : {"Rosa", "Jo ", "Ivo", "Prep", "min"})
    EXPECT_EQ(words.find(own), std::string::npos) << own << "\n" << words;

  tablet.at(3 * 1440);
  ASSERT_TRUE(tablet.tap("recordTab") && tablet.tap_kind("RecordCard"));
  ASSERT_TRUE(tablet.tap("carMain") && tablet.tap("complaint7") && tablet.tap("comebackMain"));
  EXPECT_FALSE(tablet.car()->delivered_ms);
  ASSERT_EQ(tablet.car()->visit.comebacks.size(), 1U);
  EXPECT_EQ(tablet.car()->visit.comebacks.front().complaint, "wind noise");
  tablet.keep_picture("comeback");
  ASSERT_TRUE(tablet.tap("floorTab"));
  EXPECT_NE(tablet.seen([](QQuickItem& item) { return is_kind(item, "FloorCard"); }), nullptr);
}

}  // namespace
}  // namespace jambline::walk
