// The screen "Sending" follows what the exchange says, from any of its threads, and its acts reach
// it. Held against our own design (IA.md, exchange/exchange.h).
#include "screens/sync_view_model.h"

#include <QThread>

#include "screens/shell_view_model.h"
#include "screens/time_line_view_model.h"
#include "sync_desk.h"

namespace jambline::screens {
namespace {

using exchange::Contact;

class SyncScreen : public SyncDesk {
 protected:
  QString row(int at, const char* role) {
    auto* rows = sync_->rows();
    return rows->index(at, 0).data(rows->roleNames().key(role)).toString();
  }
};

TEST_F(SyncScreen, WithoutAnExchangeAllStaysOnThisDevice) {
  SyncViewModel alone(*session_);
  EXPECT_EQ(alone.contact(), SyncViewModel::NoHub);
  EXPECT_EQ(alone.marginWords(), "this device only");
  EXPECT_FALSE(alone.canJoin()) << "there is nothing to join with";
  EXPECT_EQ(alone.mainAct(), SyncViewModel::Export);
  alone.sendNow();
  alone.pause(true);
  alone.askForNewKey();
  EXPECT_EQ(alone.keepAddresses("192.168.1.20:8740"), QString());
  EXPECT_TRUE(sync_->canJoin()) << "with one, and no hub yet";
}

TEST_F(SyncScreen, TheMarginFollowsFromAnotherThread) {
  ShellViewModel shell(*session_);
  EXPECT_EQ(shell.syncWords(), "this device only");
  shell.follow(*sync_);
  auto state = good();
  state.entries_to_send = 8;
  state.entries_sent_now = 4;
  say(state);
  EXPECT_EQ(shell.syncWords(), "sending 4 of 12");
  state.entries_to_send = 0;
  state.all_sent_ms = clock_.moment.wall_ms;
  say(state);
  EXPECT_EQ(shell.syncWords(), "all sent 14:13");
  later(24 * 60);
  EXPECT_EQ(shell.syncWords(), "all sent Mon 14:13") << "another day has come";
}

TEST_F(SyncScreen, ThePlacesAreCounted) {
  auto state = good();
  const auto own = session_->snapshot().own_entries;
  state.entries_to_send = 2;
  state.entries_refused = 1;
  say(state);
  ASSERT_EQ(sync_->rows()->rowCount(), 3);
  EXPECT_EQ(row(0, "words"), "2 entries");
  EXPECT_EQ(row(1, "words"), QStringLiteral("%1 entries of this device, signed for").arg(own - 3));
  EXPECT_TRUE(row(2, "words").startsWith("1 entry: this device was ended"));
  state.pictures_to_fetch = 4;
  say(state);
  EXPECT_EQ(row(3, "words"), "4 pictures");
}

TEST_F(SyncScreen, TroubleIsSaidInThreePartsAndNotWhilePaused) {
  auto state = good();
  state.contact = Contact::Trying;
  state.trouble = Error{Code::WrongServer, "push", "hub", {{"address", "192.168.1.20:8740"}}};
  say(state);
  EXPECT_FALSE(sync_->troubleWhat().isEmpty());
  EXPECT_FALSE(sync_->troubleKept().isEmpty());
  EXPECT_FALSE(sync_->troubleTodo().isEmpty());
  EXPECT_TRUE(sync_->troubleDetails().contains("192.168.1.20:8740"));
  EXPECT_FALSE(sync_->troubleWhat().contains("192.168"));
  sync_->pause(true);
  settle();
  EXPECT_TRUE(sync_->paused());
  EXPECT_TRUE(sync_->troubleWhat().isEmpty());
  EXPECT_EQ(sync_->mainText(), "Go on");
  sync_->pause(false);
  settle();
  EXPECT_EQ(sync_->mainText(), "Send now");
  sync_->sendNow();
  EXPECT_EQ(exchange_->sends, 1);
}

TEST_F(SyncScreen, PicturesAndAddressesAreChosen) {
  say(good());
  sync_->choosePictures(SyncViewModel::Never);
  settle();
  EXPECT_EQ(exchange_->now.pictures_when, exchange::PicturesWhen::Never);
  EXPECT_EQ(sync_->picturesWhen(), SyncViewModel::Never);
  sync_->choosePictures(3);
  EXPECT_EQ(exchange_->now.pictures_when, exchange::PicturesWhen::Never);

  EXPECT_FALSE(sync_->keepAddresses("office:banana").isEmpty());
  EXPECT_FALSE(sync_->keepAddresses(" ").isEmpty());
  EXPECT_TRUE(exchange_->now.at.empty());
  EXPECT_EQ(sync_->keepAddresses("192.168.1.20:8740, [fe80::1]:9000"), QString());
  settle();
  ASSERT_EQ(exchange_->now.at.size(), 2U);
  EXPECT_EQ(sync_->addresses(), "192.168.1.20:8740, [fe80::1]:9000");
}

TEST_F(SyncScreen, ACopiedFolderAsksForANewAdmissionAndARestart) {
  auto state = good();
  state.contact = Contact::Forked;
  state.fork = exchange::Fork{120, 7};
  say(state);
  EXPECT_TRUE(sync_->forkWords().contains("120"));
  EXPECT_TRUE(sync_->forkWords().contains("7 entries"));
  EXPECT_EQ(sync_->mainAct(), SyncViewModel::AskAnew);
  int restarts = 0;
  QObject::connect(&*sync_, &SyncViewModel::restartWanted, &*sync_, [&] { ++restarts; });
  exchange_->answer = fail(Code::NoContact, "ask", "hub");
  sync_->askForNewKey();
  settle();
  EXPECT_EQ(restarts, 0);
  EXPECT_FALSE(sync_->notice().isEmpty());
  exchange_->answer = fail(Code::NotYet, "ask", "restart");
  sync_->askForNewKey();
  settle();
  EXPECT_EQ(restarts, 1);
  EXPECT_TRUE(sync_->notice().isEmpty());
  state.digits = "042 917";
  say(state);
  EXPECT_FALSE(sync_->mayAskAnew()) << "it was asked";
  EXPECT_EQ(sync_->digitsSpoken(), "0 4 2, 9 1 7");
}

TEST_F(SyncScreen, ARevokedDeviceCanOnlyExport) {
  auto state = good();
  state.contact = Contact::Revoked;
  say(state);
  EXPECT_EQ(sync_->mainAct(), SyncViewModel::Export);
  EXPECT_FALSE(sync_->maySend());
  sync_->sendNow();
  sync_->pause(true);
  EXPECT_EQ(exchange_->sends, 0);
  EXPECT_FALSE(exchange_->now.paused);
}

TEST_F(SyncScreen, AnEntrySaysWhereItIs) {
  TimeLineViewModel line(*session_);
  line.follow(*sync_);
  const auto& entries = *session_->snapshot().timeline;
  const auto& last = entries.back();
  line.open(QString::fromStdString(last.hash.hex()));
  EXPECT_EQ(line.openPlace(), "On this device only");
  say(good());
  EXPECT_EQ(line.openPlace(), "Here, not sent yet");
  exchange_->places[last.order.seq] = exchange::Place::OnHub;
  say(good());
  EXPECT_EQ(line.openPlace(), "On the hub, signed for");
  exchange_->places[last.order.seq] = exchange::Place::Refused;
  say(good());
  EXPECT_TRUE(line.openPlace().startsWith("Refused by the hub"));

  let_second_in();
  second_->act(acts::WriteNote{car().job, "from over there"}, ivo_);
  second_->to_first();
  settle();
  line.open(QString::fromStdString(session_->snapshot().timeline->back().hash.hex()));
  EXPECT_EQ(line.openPlace(), "Came from tablet 2");
}

TEST_F(SyncScreen, FilesThatCameAreLookedForAgainAndMissedOnesAreFetchedFirst) {
  const Hash file{{7}};
  const Hash small{{8}};
  bool came = false;
  PictureStore store([&](const PictureAsk& ask) -> Result<QImage> {
    if (ask.file == small || came)
      return QImage(ask.file == small ? 4 : 40, 4, QImage::Format_RGB32);
    return fail(Code::NoSuchFile, "show a picture", ask.file.hex());
  });
  sync_->serve(store);
  say(good());
  store.set_origins({{file, {small, QStringLiteral("tablet 2")}}});
  const int asker = 0;
  const PictureAsk ask{file, 160};
  const auto get = [&] {
    for (int i = 0; i < 500 && store.get(ask, &asker).state == PictureStore::State::Waiting; ++i) {
      QCoreApplication::processEvents(QEventLoop::AllEvents, 10);
      QThread::msleep(2);
    }
    return store.get(ask, &asker);
  };
  EXPECT_EQ(get().state, PictureStore::State::NotHere);
  EXPECT_EQ(get().image.width(), 4) << "its preview stands in";
  EXPECT_EQ(store.device_of(file), "tablet 2");
  EXPECT_EQ(exchange_->wanted, std::vector<Hash>{file});
  came = true;
  auto state = good();
  say(state);
  EXPECT_EQ(get().state, PictureStore::State::NotHere) << "nobody said that something came";
  state.pictures_came = 1;
  say(state);
  EXPECT_EQ(get().state, PictureStore::State::Here);
  EXPECT_EQ(get().image.width(), 40);
  EXPECT_EQ(store.bytes(), get().image.sizeInBytes());
}

}  // namespace
}  // namespace jambline::screens
