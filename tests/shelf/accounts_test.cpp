// What cars say to a manager's questions, read from the shelf beside its writer.
#include "shelf/accounts.h"

#include <gtest/gtest.h>

#include "shelf/shelf.h"
#include "tests/log/log_folder.h"

namespace jambline::shelf {
namespace {

const ShopId shop_of_accounts{{1}};

folds::CarView opened_car(std::uint8_t number, std::int64_t opened_ms,
                          std::optional<std::int64_t> delivered_ms) {
  folds::CarView car;
  car.job.bytes[15] = number;
  car.opened = true;
  car.opened_ms = opened_ms;
  car.delivered_ms = delivered_ms;
  return car;
}

class AccountsOfShelf : public testing::Test {
 protected:
  void put(const std::vector<folds::CarView>& cars) {
    std::vector<Car> rows;
    for (const auto& car : cars) rows.push_back(car_of(car));
    log::must(shelf.put(rows, ++arrival));
  }
  std::vector<int> in(std::int64_t from_ms, std::int64_t to_ms) {
    std::vector<int> out;
    for (const auto& one : log::must(accounts.read(from_ms, to_ms)))
      out.push_back(one.job.bytes[15]);
    return out;
  }
  using List = std::vector<int>;
  log::TempFolder folder;
  Shelf shelf = log::must(Shelf::open(folder.path(), shop_of_accounts));
  Accounts accounts = log::must(Accounts::open(shelf.where()));
  std::int64_t arrival = 0;
};

TEST_F(AccountsOfShelf, AreOfCarsThatWereThereInTheTime) {
  put({opened_car(3, 50, {}), opened_car(1, 10, 20), opened_car(2, 30, 40)});
  EXPECT_EQ(in(0, 100), (List{1, 2, 3})) << "by opening";
  EXPECT_EQ(in(20, 30), (List{1}));
  EXPECT_EQ(in(21, 30), (List{}));
  EXPECT_EQ(in(45, 51), (List{3}));
  EXPECT_EQ(in(1000, 2000), (List{3})) << "in work without an end";
}

TEST_F(AccountsOfShelf, FollowTheWriterAndAreThoseOfTheFold) {
  auto car = opened_car(1, 10, {});
  car.plate = "K 1";
  put({car});
  EXPECT_EQ(in(0, 100), (List{1}));
  car.delivered_ms = 20;
  put({car});
  const auto read = log::must(accounts.read(0, 100));
  ASSERT_EQ(read.size(), 1U);
  EXPECT_EQ(read[0], folds::account_of(car));
  EXPECT_EQ(in(21, 100), (List{}));
  log::must(shelf.drop(car.job, ++arrival));
  EXPECT_EQ(in(0, 100), (List{}));
  put({car});
  log::must(shelf.clear());
  EXPECT_EQ(in(0, 100), (List{}));
}

TEST_F(AccountsOfShelf, StopWhenTheyAreTold) {
  put({opened_car(1, 10, {})});
  std::stop_source stop;
  stop.request_stop();
  const auto read = accounts.read(0, 100, stop.get_token());
  ASSERT_FALSE(read);
  EXPECT_EQ(read.error().code, Code::Stopped);
  EXPECT_EQ(in(0, 100), (List{1})) << "and can be asked again";
}

}  // namespace
}  // namespace jambline::shelf
