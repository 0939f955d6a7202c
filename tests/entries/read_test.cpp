#include <gtest/gtest.h>

#include "entries/entry.h"

namespace jambline::entries {
namespace {

std::string why_unknown(std::uint16_t kind, std::uint16_t schema, std::string_view payload) {
  const Payload read_back = read(kind, schema, payload, false);
  const auto* unknown = read_back.get_if<UnknownEntry>();
  EXPECT_NE(unknown, nullptr) << kind << ' ' << payload.substr(0, 80);
  return unknown ? unknown->why : std::string();
}

TEST(ReadEntry, AKindThatNobodyKnowsIsKeptAsUnknown) {
  EXPECT_EQ(why_unknown(4711, 1, "{}"), "unknown kind 4711");
  EXPECT_EQ(why_unknown(65535, 1, ""), "unknown kind 65535");
}

TEST(ReadEntry, AnotherSchemaOfAKnownKindIsUnknown) {
  const std::string text = R"({"text":"door open"})";
  EXPECT_TRUE(read(NoteWritten::kind, 1, text, false).is<NoteWritten>());
  EXPECT_EQ(why_unknown(NoteWritten::kind, 2, text), "unknown schema 2 of NoteWritten");
  EXPECT_EQ(why_unknown(NoteWritten::kind, 0, text), "unknown schema 0 of NoteWritten");
}

TEST(ReadEntry, MembersThatALaterVersionAddedAreReadOver) {
  const auto note = read(NoteWritten::kind, 1, R"({"text":"a","shade":3})", false);
  ASSERT_TRUE(note.is<NoteWritten>());
  EXPECT_EQ(note.get<NoteWritten>().text, "a");
}

TEST(ReadEntry, AnErasedPayloadIsErasedWhateverItsKind) {
  EXPECT_TRUE(read(NoteWritten::kind, 1, "", true).is<ErasedPayload>());
  EXPECT_TRUE(read(4711, 9, "", true).is<ErasedPayload>());
}

TEST(ReadEntry, MembershipIsLeftToTheSeal) {
  for (std::uint16_t kind = 1; kind <= 5; ++kind)
    EXPECT_TRUE(read(kind, 1, "\xFF", false).is<MembershipAct>()) << kind;
}

TEST(ReadEntry, PayloadsThatDoNotFitAreUnknownAndNameTheField) {
  EXPECT_EQ(why_unknown(NoteWritten::kind, 1, "{}"), "Missing at text");
  EXPECT_EQ(why_unknown(NoteWritten::kind, 1, R"({"text":7})"), "Malformed at text");
  EXPECT_EQ(why_unknown(CarDelivered::kind, 1, R"({"open_points":-1})"),
            "OutOfRange at open_points");
  EXPECT_EQ(why_unknown(CarOpened::kind, 1, R"({"body":"rocket","drive":"hybrid"})"),
            "Unknown at body");
  const std::string hash(64, 'a');
  EXPECT_EQ(why_unknown(PlateSet::kind, 1, R"({"plate":"K","replaces":["x"]})"),
            "Malformed at replaces[0]");
  EXPECT_TRUE(read(PlateSet::kind, 1, R"({"plate":"K","replaces":[")" + hash + R"("]})", false)
                  .is<PlateSet>());
}

std::string mark_at(std::string_view x_mm) {
  return R"({"mark":"00000000000000000000000000000001","panel":"hood","x_mm":)" +
         std::string(x_mm) +
         R"(,"y_mm":1,"defect":"nib","size":1,"layer":"not said","stage":"inspect"})";
}

TEST(ReadEntry, NumbersThatAreNoneAreUnknown) {
  ASSERT_TRUE(read(MarkPlaced::kind, 1, mark_at("1.5"), false).is<MarkPlaced>());
  for (const char* number :
       {"NaN", "nan", "Infinity", "-Infinity", "1e400", "null", "\"NaN\"", "0x1"})
    why_unknown(MarkPlaced::kind, 1, mark_at(number));
  why_unknown(MarkPlaced::kind, 1, mark_at("10000.1"));
  why_unknown(MarkPlaced::kind, 1, mark_at("-1e300"));
}

// Sequences that no UTF-8 text holds: RFC 3629 sections 3 and 4 (lone and over-long bytes,
// surrogates, past U+10FFFF, cut short).
TEST(ReadEntry, BrokenTextIsUnknown) {
  for (const std::string_view bytes : {"\x80", "\xC0\xAF", "\xE0\x80\xAF", "\xED\xA0\x80",
                                       "\xF4\x90\x80\x80", "\xF8\x88\x80\x80\x80", "\xC3", "\xFE"})
    why_unknown(NoteWritten::kind, 1, R"({"text":")" + std::string(bytes) + R"("})");
  why_unknown(NoteWritten::kind, 1, std::string("{\"text\":\"a\0b\"}", 14));
}

TEST(ReadEntry, TheLargestPayloadReadsAndSoDoesNonsenseOfThatSize) {
  const std::size_t most = 64U << 10U;
  const std::string text = R"({"text":")" + std::string(most - 11, 'n') + R"("})";
  ASSERT_EQ(text.size(), most);
  const auto note = read(NoteWritten::kind, 1, text, false);
  ASSERT_TRUE(note.is<NoteWritten>());
  EXPECT_EQ(note.get<NoteWritten>().text.size(), most - 11);
  for (const char sign : {'[', '{', '"', '\\', '\0', '\xFF', '9'})
    why_unknown(NoteWritten::kind, 1, std::string(most, sign));
  why_unknown(NoteWritten::kind, 1, std::string_view{});
}

}  // namespace
}  // namespace jambline::entries
