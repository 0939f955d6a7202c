// What a leaver wrote and signed, erased by entry: the chain stays provable, in the folder and in a
// bundle.
#include "tests/record/run.h"
#include "tests/record/shop_with_pictures.h"

namespace jambline {
namespace {

TEST(Forget, NotesAndSignaturesOfALeaverGoWithTheNameAndTheChainStaysProvable) {
  ShopWithPictures shop;
  shop.act(acts::WriteNote{shop.green, "seen by me alone"}, shop.mara);
  shop.act(acts::WriteNote{shop.other, "and on the red one"}, shop.mara);
  shop.act(acts::Sign{shop.green, job::SignedFor::CheckIn, "Mara", {{{{0.1, 0.1}, {0.9, 0.2}}}}});
  shop.act(acts::AddPerson{"Wanda", job::Role::Manager}, {});
  const PersonId manager = shop.engine->snapshot()->shop->people.back().person;
  shop.act(acts::LetPersonGo{shop.mara}, manager);
  expect_words(run("show 'K 41-206'" + shop.at()), "seen by me alone");
  std::optional<Status> erased;
  shop.engine->erase_name(shop.mara, manager, [&](Status done) { erased = std::move(done); });
  shop.engine->drain();
  ASSERT_TRUE(erased && *erased);
  for (const auto& note : shop.engine->snapshot()->car->visit.notes)
    EXPECT_NE(note.text, "seen by me alone");

  const Said show = run("show 'K 41-206'" + shop.at());
  EXPECT_EQ(show.words.find("seen by me alone"), std::string::npos);
  EXPECT_EQ(show.words.find("Mara"), std::string::npos);
  expect_words(show, "Note erased");
  expect_words(show, "door open");  // of somebody who is still here
  const Said found = run("find alone" + shop.at());
  EXPECT_EQ(found.words.find("K 41-206"), std::string::npos) << found.words;
  const Said verified = run("verify --quiet " + shop.folder.string());
  EXPECT_EQ(verified.code, 0) << verified.words;
  expect_words(verified, "of them with erased payload");
  EXPECT_EQ(verified.words.find(", 0 of them with erased"), std::string::npos);

  const std::string file = (shop.folder / "car.zip").string();
  EXPECT_EQ(run("bundle 'K 41-206' --to " + file + shop.at()).code, 0);
  const Said bundle = run("verify --quiet " + file);
  EXPECT_EQ(bundle.code, 0) << bundle.words;
  expect_words(bundle, "2 of them with erased payload");
  EXPECT_EQ(test::whole_file(file).find("seen by me alone"), std::string::npos);
}

}  // namespace
}  // namespace jambline
