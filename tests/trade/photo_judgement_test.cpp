#include "trade/photo_judgement.h"

#include <gtest/gtest.h>

namespace jambline::trade {
namespace {

// Stripes of one pixel are as sharp as can be.
PhotoJudgement stripes(double dark, double light) {
  PhotoJudgement out;
  out.picture = {8, 4, {}};
  for (int y = 0; y < 4; ++y)
    for (int x = 0; x < 8; ++x) out.picture.gray.push_back(x % 2 ? light : dark);
  out.taken_width = 3000;
  out.taken_height = 4000;
  return out;
}

TEST(Photo, StripesAreSharpAndAnEvenGrayIsNot) {
  const auto sharp = judge_photo(stripes(80, 120));
  EXPECT_EQ(sharp->word, PhotoWord::Good);
  EXPECT_NEAR(sharp->sharpness, 80 * 80, 1e-9);  // two neighbors, 40 apart each
  EXPECT_NEAR(sharp->mean, 100, 1e-12);
  const auto even = judge_photo(stripes(100, 100));
  EXPECT_EQ(even->word, PhotoWord::Blurred);
  EXPECT_NEAR(even->sharpness, 0, 1e-9);
}

TEST(Photo, SizeIsSaidBeforeLightAndLightBeforeSharpness) {
  PhotoJudgement in = stripes(5, 15);
  EXPECT_EQ(judge_photo(in)->word, PhotoWord::TooDark);
  in.taken_width = in.taken_height = 1199;
  EXPECT_EQ(judge_photo(in)->word, PhotoWord::TooSmall);
  EXPECT_EQ(judge_photo(stripes(240, 250))->word, PhotoWord::TooBright);
  const auto clipped = judge_photo(stripes(0, 255));
  EXPECT_EQ(clipped->word, PhotoWord::Clipped);
  EXPECT_DOUBLE_EQ(clipped->clipped_percent, 100);
}

TEST(Photo, WhatCannotBeIsRefusedByName) {
  PhotoJudgement in = stripes(80, 120);
  in.picture.gray.pop_back();
  EXPECT_EQ(judge_photo(in).error().arg("field"), "picture.gray");
  in = stripes(80, 120);
  in.picture.gray[3] = 255.5;
  EXPECT_EQ(judge_photo(in).error().arg("field"), "picture.gray[3]");
  in = stripes(80, 120);
  in.picture.width = 2;
  EXPECT_EQ(judge_photo(in).error().arg("field"), "picture.width");
  in = stripes(80, 120);
  in.most_mean = 20;
  EXPECT_EQ(judge_photo(in).error().arg("field"), "most_mean");
}

}  // namespace
}  // namespace jambline::trade
