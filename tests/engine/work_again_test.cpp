// Work of a device that is no more, said again by another: once, whole, with what it replaced. Our
// own design.
#include "engine/work_again.h"

#include "engine/shop_devices.h"
#include "tests/engine/two_devices.h"

namespace jambline::engine {
namespace {

class WorkAgain : public TwoTablets {
 protected:
  Result<Wrote> take_over(std::vector<seal::SealedEntry> origins) {
    std::optional<Result<Wrote>> out;
    office.engine->take_over(std::move(origins), entries::TakenOverWhy::AfterRevocation, rosa,
                             [&](Result<Wrote> wrote) { out = std::move(wrote); });
    office.engine->drain();
    return std::move(*out);
  }
  std::vector<seal::SealedEntry> of_booth() const {
    std::vector<seal::SealedEntry> out;
    for (const auto& entry : booth.entries())
      if (entry.header.device == booth.key().device()) out.push_back(entry);
    return out;
  }
  const folds::PanelView& hood() const { return *office.car().find(job::Panel::Hood); }
};

TEST_F(WorkAgain, AVerdictSaidAgainReplacesWhatItReplaced) {
  log::must(office.act(acts::GiveVerdict{car, job::Panel::Hood, job::Verdict::ToCorrect}, rosa));
  booth.take_from(office);
  log::must(booth.act(mark(300), tom));
  log::must(booth.act(acts::GiveVerdict{car, job::Panel::Hood, job::Verdict::Redo}, tom));
  log::must(booth.act(acts::GiveVerdict{car, job::Panel::Hood, job::Verdict::Clean}, tom));
  log::must(office.revoke(booth.key().device(), rosa));
  EXPECT_FALSE(office.take(of_booth()));  // as a hub keeps it in quarantine
  EXPECT_EQ(hood().verdict, job::Verdict::ToCorrect);

  const auto wrote = take_over(of_booth());
  ASSERT_TRUE(wrote) << code_name(wrote.error().code);
  EXPECT_EQ(hood().verdict, job::Verdict::Clean);
  EXPECT_FALSE(hood().disputed);
  ASSERT_EQ(hood().marks.size(), 1U);
  EXPECT_EQ(hood().marks.front().by, tom);
  EXPECT_FALSE(log::audit(office.folder.path()).first_bad);
  // It says whose work it was, and which.
  const auto& over = wrote->entries.front().payload.get<entries::WorkTakenOver>();
  EXPECT_EQ(over.from, booth.key().device());
  EXPECT_EQ(over.origins.size(), wrote->entries.size() - 1);

  // Once is enough.
  const auto twice = take_over(of_booth());
  ASSERT_FALSE(twice);
  EXPECT_EQ(twice.error().code, Code::AlreadyDone);
  EXPECT_EQ(hood().marks.size(), 1U);
}

TEST_F(WorkAgain, WhatCameLaterFitsOnWhatWasSaidAgainBefore) {
  log::must(booth.act(acts::GiveVerdict{car, job::Panel::Hood, job::Verdict::Redo}, tom));
  const auto first = of_booth();
  log::must(booth.act(acts::GiveVerdict{car, job::Panel::Hood, job::Verdict::Clean}, tom));
  log::must(office.revoke(booth.key().device(), rosa));
  log::must(take_over(first));
  EXPECT_EQ(hood().verdict, job::Verdict::Redo);
  office.open();  // the names are found again in the log
  log::must(take_over(of_booth()));
  EXPECT_EQ(hood().verdict, job::Verdict::Clean);
  EXPECT_FALSE(hood().disputed);
}

TEST_F(WorkAgain, NothingToSayAgainIsSaidSo) {
  const auto none = take_over({});
  ASSERT_FALSE(none);
  EXPECT_EQ(none.error().code, Code::AlreadyDone);
}

TEST_F(WorkAgain, WhatACopiedFolderHadErasedIsErasedAgain) {
  const log::TempFolder copied, moved;
  const auto old_key = log::key_number(1), new_key = log::key_number(2);
  auto old_log = log::small_log(copied.path(), 0);
  SeededRandom random(5);
  const auto name = entries::write(entries::PersonNamed{random.make<PersonId>(), "Ottilie", {}});
  const log::Draft said[] = {draft_of(Admission{new_key.key(), "tablet", false}),
                             {{}, name.kind, name.schema, name.payload}};
  const auto stored = log::must(old_log->append(old_key, {}, said, log::at(1000), random));
  const Hash target = stored.back().entry.hash;
  auto new_log = log::open_log(moved.path());
  log::must(new_log->add(log::entries_of(*old_log)));
  const auto kinds = entries::erasable_kinds();
  const auto erasure =
      log::must(old_log->erase_payload(old_key, {}, target, "left", kinds, log::at(2000), random));

  const auto again = [&](entries::TakenOverWhy why) {
    return say_work_again(*new_log, new_key, {erasure.entry}, why, {}, log::at(3000), random);
  };
  // Of a revoked device nobody obeys that.
  EXPECT_EQ(again(entries::TakenOverWhy::AfterRevocation).error().code, Code::AlreadyDone);
  EXPECT_FALSE(log::must(new_log->find(target))->entry.erased);
  EXPECT_EQ(log::must(again(entries::TakenOverWhy::CopiedFolder)).size(), 1U);
  EXPECT_TRUE(log::must(new_log->find(target))->entry.erased);
  EXPECT_FALSE(log::audit(moved.path()).first_bad);
  EXPECT_EQ(again(entries::TakenOverWhy::CopiedFolder).error().code, Code::AlreadyDone);
}

}  // namespace
}  // namespace jambline::engine
