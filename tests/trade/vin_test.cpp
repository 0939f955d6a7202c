#include "trade/vin.h"

#include <algorithm>
#include <gtest/gtest.h>

namespace jambline::trade {
namespace {

TEST(Vin, BlanksHyphensAndSmallLettersAreTakenAsMeant) {
  const VinCheck check = check_vin("  1m8gdm9a-xkp 042788\n");
  EXPECT_EQ(check.text, "1M8GDM9AXKP042788");
  EXPECT_TRUE(check.passes);
  EXPECT_TRUE(check.suspects.empty());
}

TEST(Vin, AWrongLengthIsNotSummed) {
  for (const char* text : {"", "1M8GDM9AXKP04278", "1M8GDM9AXKP0427888"}) {
    const VinCheck check = check_vin(text);
    EXPECT_FALSE(check.length_right) << text;
    EXPECT_FALSE(check.summed) << text;
    EXPECT_FALSE(check.passes) << text;
    EXPECT_TRUE(check.model_years.empty()) << text;
  }
}

TEST(Vin, ForbiddenLettersAreNamedByPlaceAndTheirPartnersProposed) {
  const VinCheck check = check_vin("IM8GDM9AXKPO42788");
  EXPECT_EQ(check.forbidden_places, (std::vector{1, 12}));
  EXPECT_FALSE(check.summed);
  EXPECT_FALSE(check.passes);
  const VinCheck one = check_vin("1M8GDM9AXKPO42788");
  EXPECT_EQ(one.forbidden_places, std::vector{12});
  EXPECT_NE(std::find(one.suspects.begin(), one.suspects.end(), VinSuspect{12, '0'}),
            one.suspects.end());
}

TEST(Vin, SignsThatAreNoLettersAreForbiddenToo) {
  EXPECT_EQ(check_vin("1M8GDM9AXKP04278\xC3").forbidden_places, std::vector{17});
  EXPECT_EQ(check_vin("1M8GDM9AXKP04278*").forbidden_places, std::vector{17});
}

TEST(Vin, AMisreadSignIsAmongTheSuspects) {
  const VinCheck check = check_vin("SGZCZ43D13S812715");  // first sign was a 5
  EXPECT_FALSE(check.passes);
  EXPECT_NE(std::find(check.suspects.begin(), check.suspects.end(), VinSuspect{1, '5'}),
            check.suspects.end());
  for (const VinSuspect& suspect : check.suspects) {
    std::string repaired = check.text;
    repaired[static_cast<std::size_t>(suspect.place - 1)] = suspect.instead;
    EXPECT_TRUE(check_vin(repaired).passes) << repaired;
  }
}

TEST(Vin, PlaceNineMayBeTheMisreadOne) {
  const VinCheck check = check_vin("1M8GDM9AKKP042788");  // an X read as K
  EXPECT_EQ(check.expected, 'X');
  EXPECT_NE(std::find(check.suspects.begin(), check.suspects.end(), VinSuspect{9, 'X'}),
            check.suspects.end());
  // A forbidden sign at place 9 leaves the sum as it is.
  const VinCheck forbidden = check_vin("11111111I11111111");
  EXPECT_TRUE(forbidden.summed);
  EXPECT_EQ(forbidden.expected, '1');
  EXPECT_FALSE(forbidden.passes);
  EXPECT_EQ(forbidden.forbidden_places, std::vector{9});
}

}  // namespace
}  // namespace jambline::trade
