// How pieces are set onto pages: kept together, heads repeated, nothing lost.
#include "report/page_flow.h"

#include <gtest/gtest.h>

namespace jambline::report {
namespace {

Piece piece(double height, bool with_next = false) {
  Piece out;
  out.height = height;
  out.with_next = with_next;
  return out;
}

TEST(PageFlow, WhatBelongsTogetherGoesOverTogether) {
  const std::vector<Piece> pieces{piece(60), piece(20, true), piece(30), piece(10)};
  const auto pages = onto_pages(pieces, 100);
  ASSERT_EQ(pages.size(), 2U);
  ASSERT_EQ(pages[0].size(), 1U);
  ASSERT_EQ(pages[1].size(), 3U);
  EXPECT_EQ(pages[1][0].piece, &pieces[1]);
  EXPECT_EQ(pages[1][1].top, 20);
}

TEST(PageFlow, ATablesHeadStandsAgainOnEachPageThatItGoesOnTo) {
  auto head = std::make_shared<Piece>(piece(10));
  std::vector<Piece> pieces{*head};
  pieces[0].head = head;
  pieces[0].is_head = true;
  for (int i = 0; i < 20; ++i) {
    pieces.push_back(piece(9));
    pieces.back().head = head;
  }
  const auto pages = onto_pages(pieces, 100);
  ASSERT_EQ(pages.size(), 2U);
  EXPECT_EQ(pages[0].front().piece, &pieces[0]);
  EXPECT_EQ(pages[1].front().piece, head.get());
  EXPECT_EQ(pages[1][1].top, 10);
  EXPECT_EQ(pages[0].size() + pages[1].size(), pieces.size() + 1);
}

TEST(PageFlow, NothingIsAboveThePageAndTheRoomAboveAPieceGoesAtItsHead) {
  std::vector<Piece> pieces{piece(95), piece(20)};
  pieces[0].above = pieces[1].above = 15;
  const auto pages = onto_pages(pieces, 100);
  ASSERT_EQ(pages.size(), 2U);
  EXPECT_EQ(pages[0][0].top, 0);
  EXPECT_EQ(pages[1][0].top, 0);
}

TEST(PageFlow, ABlockHigherThanAPageIsTornWhereItHasTo) {
  std::vector<Piece> pieces;
  for (int i = 0; i < 8; ++i) pieces.push_back(piece(40, i < 7));
  const auto pages = onto_pages(pieces, 100);
  std::size_t placed = 0;
  for (const auto& page : pages) {
    for (const auto& one : page) EXPECT_LE(one.top + one.piece->height, 100);
    placed += page.size();
  }
  EXPECT_EQ(placed, pieces.size());
}

}  // namespace
}  // namespace jambline::report
