// Every code and everything that a decision can refuse has a message of three parts in plain words;
// estimate files of another shape are said by name.

#include "acts/estimate_csv.h"
#include "screens/open_car_view_model.h"
#include "tests/bad_input/desk.h"
#include "tests/bad_input/plain_words.h"

namespace jambline::bad_input {
namespace {

TEST(Words, ThisCheckOfWordsCanFail) {
  const QString good = QStringLiteral("Nothing was changed.");
  EXPECT_EQ(complaint({good, good, good}), "");
  EXPECT_NE(complaint({good, good, QString()}), "");
  for (const char* bad :
       {"front_bumper is gone.", "DiskFull.", "log.db is gone.", "Device 6fa0c3d2e1b4 is gone.",
        "The database is gone.", "Gone: %1.", "No end"})
    EXPECT_NE(complaint({QString::fromLatin1(bad), good, good}), "") << bad;
}

TEST(Words, EveryCodeHasItsThreeParts) {
  std::vector<std::string> subjects;
  for (const auto word : enum_words<job::Panel>) subjects.emplace_back(word);
  for (const auto word : enum_words<job::Stage>) subjects.emplace_back(word);
  for (const char* one :
       {"log.db", "device.key", "device.toml", "drafts.db", "shelf.db", "VIN", "clock", "Ivo", ""})
    subjects.emplace_back(one);
  for (int i = 0; i <= static_cast<int>(Code::NotYet); ++i)
    for (const auto& subject : subjects)
      for (const char* operation :
           {"make", "open", "read", "append", "place a mark", "read the estimate"})
        expect_plain({static_cast<Code>(i),
                      operation,
                      subject,
                      {{"field", "stage"}, {"limit", "9"}, {"place", "3"}}});
}

TEST(Words, ANameOrPlateIsShownAsItIs) {
  EXPECT_EQ(screens::words_of(Error{Code::NotRunning, "stop", "5 %1 Ivo", {}}).what,
            "No clock runs for 5 %1 Ivo.");
}

TEST(Words, WhatOnlyAManagersDeviceDoesSaysWhere) {
  const auto words = screens::words_of(
      Error{Code::NotAllowed, "add a person", "Ivo", {{"device", "no manager's"}}});
  EXPECT_TRUE(words.what.startsWith("This device may not do this")) << words.what.toStdString();
  EXPECT_EQ(words.todo, "Do it on a device of the manager.");
}

struct Sheet {
  const char* name;
  QByteArray bytes;
  const char* says;  // in the first part of the message
};

TEST(EstimateFile, EveryOtherShapeIsSaidAndTheFormStaysAsItWas) {
  QByteArray many("stage,title,hours\n");
  for (int i = 0; i < 10'000; ++i) many += "prep,a,1\n";
  const QByteArray plain("stage,title,hours\nprep,Fender,1.5\n");
  const QString wide = QString::fromUtf8(plain);
  const QByteArray utf16("\xFF\xFE" + QByteArray(reinterpret_cast<const char*>(wide.utf16()),
                                                 static_cast<qsizetype>(wide.size()) * 2));
  const Sheet sheets[] = {
      {"semicolons", "stage;title;hours\nprep;Fender;1,5\n", "semicolons"},
      {"another encoding", utf16, "not plain text"},
      {"a picture", "\x89PNG\r\n\x1A\n\xFF", "not plain text"},
      {"no head", "prep,Fender,1.5\n", "no column named stage"},
      {"another head", "stage,what,hours\nprep,Fender,1.5\n", "no column named title"},
      {"empty", "", "no column named stage"},
      {"10,000 rows", many, "more than 2000 rows"},
      {"too large", QByteArray(static_cast<qsizetype>(acts::most_estimate_bytes) + 1, 'x'),
       "too large"},
      {"a quote that never closes in the head", "\"stage,title,hours\nprep,Fender,1\n",
       "no column named stage"},
  };
  Desk desk;
  screens::OpenCarViewModel form(desk.session());
  form.setPlate("N 7");
  const QString path = QString::fromStdString((desk.path() / "sheet.txt").string());
  for (const Sheet& sheet : sheets) {
    put_bytes(path.toStdString(), sheet.bytes.toStdString());
    form.dropCsv();
    form.readCsv(path);
    desk.wait([&] { return form.csvShown(); });
    ASSERT_TRUE(form.csvShown()) << sheet.name;
    const auto read = acts::read_estimate_csv(
        {sheet.bytes.constData(), static_cast<std::size_t>(sheet.bytes.size())});
    ASSERT_FALSE(read) << sheet.name;
    expect_plain(read.error());
    const auto words = screens::words_of(read.error());
    EXPECT_TRUE(words.what.contains(QLatin1String(sheet.says)))
        << sheet.name << ": " << words.what.toStdString();
    for (const QString& part : {words.what, words.kept, words.todo})
      EXPECT_TRUE(form.csvWords().contains(part)) << form.csvWords().toStdString();
    EXPECT_EQ(form.csvCount(), 0) << sheet.name;
    EXPECT_EQ(form.plate(), "N 7");
  }
  form.dropCsv();
  form.readCsv(path + "-gone");
  desk.wait([&] { return form.csvShown(); });
  EXPECT_TRUE(form.csvWords().startsWith("There is no such file: sheet.txt-gone."));
}

TEST(EstimateFile, RowsThatDoNotFitAreNamedWithTheirLineAndTheOthersStand) {
  Desk desk;
  screens::OpenCarViewModel form(desk.session());
  form.readCsv("stage,title,hours\nprep,Fender,-1\nprep,Door,2\nprep,Hood,\"1\nmask,x,1\n");
  ASSERT_TRUE(form.csvShown());
  EXPECT_EQ(form.csvCount(), 1);
  const auto* rows = form.csvRows();
  QStringList shown;
  for (int i = 0; i < rows->rowCount(); ++i)
    shown << rows->data(rows->index(i, 0), rows->roleNames().key("text")).toString() + ": " +
                 rows->data(rows->index(i, 0), rows->roleNames().key("why")).toString();
  ASSERT_EQ(shown.size(), 3);
  EXPECT_TRUE(shown[0].startsWith("Line 2: prep,Fender,-1")) << shown[0].toStdString();
  EXPECT_TRUE(shown[0].endsWith("hours are not 0 to 1000")) << shown[0].toStdString();
  EXPECT_TRUE(shown[1].startsWith("Line 4: ")) << shown[1].toStdString();
  EXPECT_TRUE(shown[1].endsWith("a quote that never closes")) << shown[1].toStdString();
}

TEST(Words, WhatHasToComeFirstAndWhatIsStillToComeAreSaid) {
  Desk desk;
  const auto& shop = desk.shop();
  ASSERT_TRUE(
      engine::act(desk.engine(), acts::AddPerson{"Jo", job::Role::BodyTechnician}, shop.ivo));
  const PersonId jo = desk.engine().snapshot()->shop->people.back().person;
  const acts::FinishRound cut{shop.job, job::Panel::Hood, job::Round::Level, {}, {shop.mark}, 1, 9};
  const auto too_early = engine::act(desk.engine(), cut, jo);
  ASSERT_FALSE(too_early);
  expect_plain(too_early.error());
  EXPECT_EQ(screens::words_of(too_early.error()).todo, "Answer before you cut first.");
  const auto ahead = engine::act(
      desk.engine(), acts::LogBoothEvent{shop.booth, job::BoothEvent::Cleaned, 4'000'000'000'000},
      shop.ivo);
  ASSERT_FALSE(ahead);
  expect_plain(ahead.error());
  EXPECT_EQ(screens::words_of(ahead.error()).what, "This time is still to come.");
}

TEST(Vin, AWrongCheckSignIsRefusedWithItsPlaceAndTakenAsTypedWithAMark) {
  // A VIN of ones checks (49 CFR 565.15(c)); with a 2 at place 9 it does not.
  Desk desk;
  const std::string wrong = "11111111211111111";
  const auto refused =
      engine::act(desk.engine(), acts::SetVin{desk.shop().job, wrong}, desk.shop().ivo);
  ASSERT_FALSE(refused);
  expect_plain(refused.error());
  const auto words = screens::words_of(refused.error());
  EXPECT_EQ(words.what, "This VIN does not check. Look at place 9.");
  EXPECT_EQ(words.todo, "Read it again, or use it as typed.");
  screens::OpenCarViewModel form(desk.session());
  form.setPlate("K");
  form.setVin(QString::fromStdString(wrong));
  EXPECT_TRUE(form.vinWords().startsWith("This VIN does not check."))
      << form.vinWords().toStdString();
  ASSERT_TRUE(
      engine::act(desk.engine(), acts::SetVin{desk.shop().job, wrong, true}, desk.shop().ivo));
  EXPECT_EQ(desk.engine().snapshot()->car->vin, wrong);
  EXPECT_FALSE(desk.engine().snapshot()->car->vin_passes);
}

}  // namespace
}  // namespace jambline::bad_input
