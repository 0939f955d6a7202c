#include "screens/picture_store.h"

#include <QBuffer>
#include <condition_variable>
#include <fstream>

#include "tests/screens_pictures/picture_desk.h"

namespace jambline::screens {

namespace {
using State = PictureStore::State;

PictureAsk ask(std::uint8_t number) {
  return {Hash{{number}}, 160, {0, 0, 1, 1}, false};
}

// A lane that makes a picture only when the test says so, and tells the order.
class Slow : public PictureDesk {
 protected:
  Result<QImage> make(const PictureAsk& wanted) {
    std::unique_lock lock(mutex_);
    made_.push_back(static_cast<int>(wanted.file.bytes[0]));
    off_gui_ = off_gui_ && QThread::currentThread() != QCoreApplication::instance()->thread();
    wake_.notify_all();
    wake_.wait(lock, [this] { return open_; });
    if (fails_) return fail(Code::NoSuchFile, "show", "picture");
    return QImage(100, 100, QImage::Format_RGB32);
  }
  void wait_for_first() {
    std::unique_lock lock(mutex_);
    wake_.wait(lock, [this] { return !made_.empty(); });
  }
  void let_go() {
    const std::lock_guard lock(mutex_);
    open_ = true;
    wake_.notify_all();
  }
  std::vector<int> made() {
    const std::lock_guard lock(mutex_);
    return made_;
  }
  std::unique_ptr<PictureStore> slow(qsizetype most_bytes = PictureStore::usual_bytes) {
    return std::make_unique<PictureStore>([this](const PictureAsk& one) { return make(one); },
                                          most_bytes);
  }

  std::mutex mutex_;
  std::condition_variable wake_;
  std::vector<int> made_;
  bool open_ = false;
  bool fails_ = false;
  bool off_gui_ = true;
};

TEST_F(Slow, TheNewestAskIsMadeFirstAndNeverOnTheThreadThatDraws) {
  const auto store = slow();
  int a = 0, b = 0, c = 0;
  EXPECT_EQ(store->get(ask(1), &a).state, State::Waiting);
  wait_for_first();
  store->get(ask(2), &b);
  store->get(ask(3), &c);
  let_go();
  ASSERT_TRUE(until([&] { return store->get(ask(2), &b).state == State::Here; }));
  EXPECT_EQ(made(), (std::vector<int>{1, 3, 2}));
  EXPECT_TRUE(off_gui_);
}

TEST_F(Slow, WhatNobodyLooksAtAnyMoreIsNotMade) {
  const auto store = slow();
  int a = 0, b = 0, c = 0;
  store->get(ask(1), &a);
  wait_for_first();
  store->get(ask(2), &b);
  store->drop(&b);
  store->get(ask(3), &c);
  store->get(ask(4), &c);
  let_go();
  ASSERT_TRUE(until([&] { return store->get(ask(4), &c).state == State::Here; }));
  EXPECT_EQ(made(), (std::vector<int>{1, 4}));
}

TEST_F(Slow, MemoryStaysUnderItsBoundAndTheLongestUnusedGoes) {
  let_go();
  const qsizetype one = QImage(100, 100, QImage::Format_RGB32).sizeInBytes();
  const auto store = slow(3 * one);
  int asker = 0;
  for (const std::uint8_t number : {1, 2, 3}) {
    store->get(ask(number), &asker);
    ASSERT_TRUE(until([&] { return store->get(ask(number), &asker).state == State::Here; }));
  }
  store->get(ask(1), &asker);  // used again: 2 is the longest unused now
  ASSERT_TRUE(until([&] { return store->get(ask(4), &asker).state == State::Here; }));
  EXPECT_LE(store->bytes(), 3 * one);
  EXPECT_EQ(store->get(ask(1), &asker).state, State::Here);
  EXPECT_EQ(store->get(ask(2), &asker).state, State::Waiting);
}

TEST_F(Slow, WhatIsNotHereIsAskedAgainWhenToldToLookAgain) {
  fails_ = true;
  let_go();
  const auto store = slow();
  int asker = 0;
  ASSERT_TRUE(until([&] { return store->get(ask(1), &asker).state == State::NotHere; }));
  EXPECT_EQ(made().size(), 1U);
  fails_ = false;
  bool told = false;
  QObject::connect(store.get(), &PictureStore::came, store.get(), [&] { told = true; });
  store->look_again();
  ASSERT_TRUE(until([&] { return told; }));
  ASSERT_TRUE(until([&] { return store->get(ask(1), &asker).state == State::Here; }));
  EXPECT_EQ(made().size(), 2U);
}

TEST_F(PictureDesk, APictureIsShownADamagedOneIsNamedAndAMissingOneToo) {
  keep({job::Stage::CheckIn, {}, {}, {}});
  const Hash file = car().pictures.back().facts.file;
  int asker = 0;
  const PictureAsk small{file, 160, {0, 0, 1, 1}, false};
  PictureAsk checked = small;
  checked.checked = true;
  ASSERT_TRUE(until([&] { return store_->get(small, &asker).state == State::Here; }));
  EXPECT_EQ(store_->get(small, &asker).image.width(), 64);

  std::fstream bytes(blob_path(file), std::ios::in | std::ios::out | std::ios::binary);
  ASSERT_TRUE(bytes.good());
  bytes.seekp(40);
  bytes.put('\x55');
  bytes.close();
  ASSERT_TRUE(until([&] { return store_->get(checked, &asker).state == State::Damaged; }));

  std::filesystem::remove(blob_path(file));
  store_->look_again();
  ASSERT_TRUE(until([&] { return store_->get(checked, &asker).state == State::NotHere; }));
}

// What is looked at in full resolution is the part and no more.
TEST_F(PictureDesk, APartOfALargePictureComesInFullResolution) {
  QImage image(3000, 2000, QImage::Format_RGB32);
  image.fill(Qt::white);
  for (int y = 0; y < 2000; ++y) image.setPixelColor(1500, y, Qt::black);  // one pixel wide
  QByteArray png;
  QBuffer buffer(&png);
  buffer.open(QIODevice::WriteOnly);
  image.save(&buffer, "PNG");
  const Bytes bytes(png.begin(), png.end());
  engine_->keep_picture(std::make_shared<const Bytes>(bytes), nullptr,
                        command_of(bytes, {job::Stage::CheckIn, {}, {}, {}}), session_->person(),
                        [](const Result<engine::Wrote>& wrote) { ASSERT_TRUE(wrote); });
  settle();
  int asker = 0;
  const PictureAsk part{hash_of(bytes), 3000, {0.25, 0.25, 0.5, 0.5}, false};
  ASSERT_TRUE(until([&] { return store_->get(part, &asker).state == State::Here; }));
  const QImage got = store_->get(part, &asker).image;
  EXPECT_EQ(got.size(), QSize(1500, 1000));
  EXPECT_EQ(got.pixelColor(750, 500).name(), "#000000");
  EXPECT_EQ(got.pixelColor(748, 500).name(), "#ffffff");
}
}  // namespace

}  // namespace jambline::screens
