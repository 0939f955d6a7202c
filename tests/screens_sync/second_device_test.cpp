// What another device wrote, on this one: a spray that was started there is read-only here, and of
// two words about one label both stand with who and when until one press settles it. Held against
// our own design (IA.md).
#include "blobs/hasher.h"
#include "screens/car_view_model.h"
#include "screens/clearance_view_model.h"
#include "screens/countdown_view_model.h"
#include "screens/picture_origins.h"
#include "sync_desk.h"

namespace jambline::screens {
namespace {

struct QuietKnocks final : device::Knocks {
  bool answers() const override { return true; }
  void knock() override {}
};

class OfAnotherDevice : public SyncDesk {
 protected:
  void SetUp() override {
    SyncDesk::SetUp();
    act(acts::AddBooth{"Booth 1", job::BoothKind::Downdraft});
    booth_ = session_->shop().booths.back().booth;
    act(acts::SetRespirator{{},
                            {"hood 7", job::RespiratorKind::SuppliedHood, trade::FactorScheme::Us,
                             25, "29 CFR 1910.134", 2006, "", false}});
    hood_ = session_->shop().air.respirators.back().respirator;
    act(acts::ReadBooth{booth_, job::BoothReading::SmokeTest, {5}, 5, clock_.moment.wall_ms});
    let_second_in();
    settle();
  }
  acts::StartSpray start() {
    using job::GunItem;
    acts::StartSpray out{car().job, booth_, hood_, true, {}};
    for (std::size_t i = 0; i < enum_words<GunItem>.size(); ++i) {
      const auto item = static_cast<GunItem>(i);
      if (job::is_of_now(item))
        out.checks.push_back({item, job::CutAnswer::Yes, {}, {}});
      else if (job::class_of(item) == job::CheckClass::Must)
        out.checks.push_back({item, job::CutAnswer::No, job::GunReason::RecordNotHere, {}});
    }
    return out;
  }
  void from_second() {
    second_->to_first();
    settle();
  }

  BoothId booth_;
  RespiratorId hood_;
};

TEST_F(OfAnotherDevice, ASprayIsReadOnlyAlsoForWhoHoldsTheGun) {
  QuietKnocks knocks;
  ClearanceViewModel screen(*session_, knocks);
  screen.open(QString::fromStdString(booth_.hex()));
  second_->act(start(), ivo_);
  from_second();
  for (const PersonId& who : {mara_, ivo_}) {
    be(who);
    EXPECT_EQ(screen.state(), ClearanceViewModel::State::Spraying);
    EXPECT_EQ(screen.headWords(), "Spraying, stay out");
    EXPECT_FALSE(screen.mine());
    screen.gunDown();
    settle();
    EXPECT_EQ(screen.state(), ClearanceViewModel::State::Spraying) << "one tap does nothing here";
  }
  // Said twice it is gun down here too; and the count runs on both.
  screen.gunDownOf(screen.sprayers()->index(0, 0).data(Qt::UserRole).toString());
  settle();
  EXPECT_EQ(screen.state(), ClearanceViewModel::State::Counting);
  EXPECT_EQ(screen.headWords(), "Stay out");
}

TEST_F(OfAnotherDevice, ASprayOfThisDeviceIsStillOnesOwn) {
  QuietKnocks knocks;
  ClearanceViewModel screen(*session_, knocks);
  screen.open(QString::fromStdString(booth_.hex()));
  be(ivo_);
  act(start());
  EXPECT_TRUE(screen.mine());
  screen.gunDown();
  settle();
  EXPECT_EQ(screen.state(), ClearanceViewModel::State::Counting);
}

TEST_F(OfAnotherDevice, TwoPromisesStandWithWhoAndWhenUntilOneIsTaken) {
  CarViewModel screen(*session_);
  const std::int64_t now_ms = clock_.moment.wall_ms;
  act(acts::SetPromise{car().job, now_ms + 2 * 3'600'000});
  act(acts::SetPlate{car().job, "K 41-207"});
  clock_.advance_ms(60'000);
  second_->act(acts::SetPromise{car().job, now_ms + 4 * 3'600'000}, ivo_);
  second_->act(acts::SetPlate{car().job, "K 41-208"}, ivo_);
  from_second();
  ASSERT_EQ(screen.conflictCount(), 2);
  auto* rows = screen.conflicts();
  const auto sides = [&](int row) {
    return rows->index(row, 0).data(rows->roleNames().key("sides")).toStringList();
  };
  const auto title = [&](int row) {
    return rows->index(row, 0).data(rows->roleNames().key("title")).toString();
  };
  const int promise = title(0) == "Promised" ? 0 : 1;
  ASSERT_EQ(sides(promise).size(), 2);
  EXPECT_EQ(sides(promise).filter("16:13 · Mara, 14:13").size(), 1)
      << sides(promise).join("; ").toStdString();
  EXPECT_EQ(sides(promise).filter("18:13 · Ivo, 14:14").size(), 1)
      << sides(promise).join("; ").toStdString();
  const int taken = sides(promise)[0].contains("Mara") ? 0 : 1;
  screen.settle(promise, taken);
  settle();
  EXPECT_EQ(car().promised_ms, now_ms + 2 * 3'600'000);
  ASSERT_EQ(screen.conflictCount(), 1);
  EXPECT_EQ(title(0), "Plate");
  // Either is one press: what is shown, too.
  const QString shown = sides(0)[0].section(QChar(' '), 0, 1);
  EXPECT_EQ(QString::fromStdString(car().plate), shown);
  screen.settle(0, 0);
  settle();
  EXPECT_EQ(QString::fromStdString(car().plate), shown);
  EXPECT_EQ(screen.conflictCount(), 0);
  screen.settle(0, 5);
  screen.settle(4, 0);
  EXPECT_FALSE(failed_);
}

TEST_F(OfAnotherDevice, APictureSaysWhoseItIs) {
  PictureStore store([](const PictureAsk& ask) -> Result<QImage> {
    return fail(Code::NoSuchFile, "show a picture", ask.file.hex());
  });
  PictureOrigins origins(*session_, store);
  acts::TakePicture take;
  take.job = car().job;
  const auto bytes = std::make_shared<const std::vector<std::uint8_t>>(400, std::uint8_t{7});
  blobs::Hasher hasher;
  hasher.update(*bytes);
  const Hash file = *hasher.finish();
  take.facts.file = file;
  take.facts.size_bytes = 400;
  take.facts.word = trade::PhotoWord::Good;
  take.facts.width_px = 40;
  take.facts.height_px = 30;
  take.place.stage = job::Stage::Inspect;
  second_->engine().keep_picture(bytes, nullptr, take, ivo_,
                                 [](const Result<engine::Wrote>& wrote) { EXPECT_TRUE(wrote); });
  second_->engine().drain();
  from_second();
  EXPECT_EQ(store.device_of(file), "tablet 2");
  EXPECT_EQ(store.device_of(Hash{{8}}), "");
}

}  // namespace
}  // namespace jambline::screens
