// What a hub brings, from the first page of a joining device to the last receipt. Our own design.
#include <algorithm>

#include "base/json.h"
#include "seal/receipt.h"
#include "tests/engine/two_devices.h"
#include "tests/log/refusing_log.h"

namespace jambline::engine {
namespace {

class TakePage : public testing::Test {
 protected:
  void SetUp() override {
    rosa = log::must(office.act(acts::AddPerson{"Rosa", job::Role::Manager}, {}))
               .entries.front()
               .payload.get<entries::PersonAdded>()
               .person;
    acts::OpenCar open;
    open.plate = "K 41-206";
    open.body = job::BodyShape::FourDoorSedan;
    open.panels = {{job::Panel::Hood, true}};
    car = log::must(office.act(open, rosa)).job;
  }
  void write_notes(int count) {
    for (int i = 0; i < count; ++i)
      log::must(office.act(acts::WriteNote{car, "note " + std::to_string(i)}, rosa));
  }
  ShopTablet office{"office"};
  ShopTablet booth{"booth tablet", true};
  PersonId rosa;
  JobId car;
};

TEST_F(TakePage, AnEmptyFolderThatWaitsFoundsNothingAndWritesNothing) {
  EXPECT_TRUE(booth.entries().empty());
  const auto now = booth.engine->snapshot();
  EXPECT_TRUE(now->read_only);
  ASSERT_TRUE(now->trouble);
  EXPECT_EQ(now->trouble->subject, "admission");
  const auto refused = booth.act(acts::AddRack{"rack 1"}, {});
  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.error().code, Code::NotYet);
  EXPECT_EQ(refused.error().subject, "admission");
  // Its key stays the one that was shown for comparing.
  const auto key = booth.key().key();
  booth.open();
  EXPECT_EQ(booth.key().key(), key);
  EXPECT_TRUE(booth.entries().empty());
}

TEST_F(TakePage, ThePageThatAdmitsLetsItWrite) {
  log::must(booth.take(office.entries()));
  EXPECT_EQ(booth.act(acts::AddRack{"rack 1"}, rosa).error().subject, "admission");
  log::must(office.admit(booth.admission(false), rosa));
  booth.take_from(office);
  EXPECT_FALSE(booth.engine->snapshot()->read_only);
  EXPECT_FALSE(booth.engine->snapshot()->trouble);
  const auto wrote = booth.act(acts::AddRack{"rack 1"}, rosa);
  ASSERT_TRUE(wrote);
  office.take_from(booth);
  EXPECT_EQ(office.shop().racks.size(), 1U);
  booth.open();
  EXPECT_FALSE(booth.engine->snapshot()->read_only);
}

TEST_F(TakePage, TapsGoBetweenSlicesAndReceiptsComeWithTheLast) {
  log::must(office.admit(booth.admission(false), rosa));
  const auto hub = log::key_number(77);
  std::optional<Result<Wrote>> let_in;
  office.engine->admit_hub({hub.key(), "hub"}, rosa,
                           [&](Result<Wrote> wrote) { let_in = std::move(wrote); });
  office.engine->drain();
  ASSERT_TRUE(let_in && *let_in);
  booth.take_from(office);
  write_notes(240);
  const auto all = office.entries();
  seal::Receipt receipt;
  receipt.shop = all.front().header.shop;
  receipt.device = all.back().header.device;
  receipt.seq = all.back().header.seq;
  receipt.hash = all.back().hash;
  seal::sign(receipt, hub);

  // A tap comes while each slice is written. It sees how much of the page is there, and whether its
  // cursor and receipt are.
  struct Seen {
    std::size_t entries;
    bool cursor;
  };
  std::vector<Seen> seen;
  booth.engine.reset();
  auto watched = std::make_unique<log::RefusingLog>(log::open_log(booth.folder.path()));
  auto* const slices = watched.get();
  booth.open(std::move(watched));
  slices->on_add_page = [&] {
    booth.engine->post(acts::WriteNote{car, "tap"}, rosa, [&](Result<Wrote> wrote) {
      EXPECT_TRUE(wrote);
      const auto log = log::open_log(booth.folder.path(), log::OpenMode::ReadOnly);
      const auto there = log::entries_of(*log);
      seen.push_back({static_cast<std::size_t>(std::count_if(there.begin(), there.end(),
                                                             [&](const auto& entry) {
                                                               return entry.header.device ==
                                                                      receipt.device;
                                                             })),
                      log::must(log->cursor("hub")) || !log::must(log->receipts()).empty()});
    });
  };
  log::must(booth.take(all, {receipt}, log::Cursor{"hub", "240"}));
  const std::size_t slices_of_the_page = (all.size() + 49) / 50;
  ASSERT_EQ(seen.size(), slices_of_the_page);
  for (std::size_t i = 0; i < seen.size(); ++i) {
    const bool last = i + 1 == seen.size();
    EXPECT_EQ(seen[i].entries, last ? all.size() : 50 * (i + 1)) << i;
    EXPECT_EQ(seen[i].cursor, last) << i;
  }
  const auto log = log::open_log(booth.folder.path(), log::OpenMode::ReadOnly);
  EXPECT_EQ(log::must(log->cursor("hub")), "240");
  EXPECT_EQ(log::must(log->receipts()).size(), 1U);
}

TEST_F(TakePage, ABadEntryStopsThePageAndWhatCameBeforeItStays) {
  log::must(office.admit(booth.admission(false), rosa));
  write_notes(80);
  auto all = office.entries();
  const std::size_t before_slices = 50;
  all[70].signature.bytes[0] ^= 1;
  const auto taken = booth.take(all, {}, log::Cursor{"hub", "80"});
  ASSERT_FALSE(taken);
  EXPECT_EQ(booth.entries().size(), before_slices);
  const auto log = log::open_log(booth.folder.path(), log::OpenMode::ReadOnly);
  EXPECT_FALSE(log::must(log->cursor("hub")));
}

TEST_F(TakePage, APageWithoutEntriesBringsItsReceiptsAndCursor) {
  log::must(office.take({}, {}, log::Cursor{"hub", "7"}));
  const auto log = log::open_log(office.folder.path(), log::OpenMode::ReadOnly);
  EXPECT_EQ(log::must(log->cursor("hub")), "7");
}

TEST_F(TakePage, WhileItsTailIsMissingNothingIsWritten) {
  office.engine->hold_for_tail(true);
  office.engine->drain();
  EXPECT_TRUE(office.engine->snapshot()->read_only);
  const auto refused = office.act(acts::AddRack{"rack 1"}, rosa);
  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.error().code, Code::NotYet);
  EXPECT_EQ(refused.error().subject, "tail");
  const auto not_admitted = office.admit({log::key_number(9).key(), "x", false}, rosa);
  ASSERT_FALSE(not_admitted);
  EXPECT_EQ(not_admitted.error().subject, "tail");
  office.engine->hold_for_tail(false);
  office.engine->drain();
  EXPECT_FALSE(office.engine->snapshot()->read_only);
  EXPECT_TRUE(office.act(acts::AddRack{"rack 1"}, rosa));
}

}  // namespace
}  // namespace jambline::engine
