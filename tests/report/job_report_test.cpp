// A report written and read back by Debian's pdftotext and pdfinfo; a disk that fills up in the
// middle of it.
#include "report/job_report.h"

#include <QTemporaryDir>
#include <array>
#include <cstdio>
#include <filesystem>
#include <gtest/gtest.h>

#include "report/note.h"
#include "tests/blobs/faulty_files.h"

namespace jambline::report {
namespace {

std::string output_of(const std::string& command) {
  std::string out;
  FILE* pipe = popen((command + " 2>&1").c_str(), "r");
  std::array<char, 4096> buffer;
  while (const std::size_t count = fread(buffer.data(), 1, buffer.size(), pipe))
    out.append(buffer.data(), count);
  EXPECT_EQ(pclose(pipe), 0) << command << "\n" << out;
  return out;
}

std::size_t count_of(const std::string& words, const std::string& wanted) {
  std::size_t out = 0;
  for (auto at = words.find(wanted); at != std::string::npos; at = words.find(wanted, at + 1))
    ++out;
  return out;
}

JobReport long_report(PageSize page) {
  JobReport out;
  out.shop = QStringLiteral("Test shop");
  out.title = QStringLiteral("Job report");
  out.subtitle = QStringLiteral("K 41-206");
  out.facts = {{QStringLiteral("Plate"), QStringLiteral("K 41-206")}};
  out.left_out = {QStringLiteral("Without names.")};
  ReportTable table{{{QStringLiteral("Panel"), 1}, {QStringLiteral("Mean, µm"), 1, true}}, {}};
  for (int row = 0; row < 150; ++row)
    table.rows.push_back({QStringLiteral("Row %1").arg(row), QString::number(40 + row)});
  out.sections.push_back({QStringLiteral("Film thickness"), {table}});
  out.sections.push_back(
      {QStringLiteral("Pictures"),
       {ReportPictures{{{Hash{}, {}, QStringLiteral("Hood"), QStringLiteral("15:40")}},
                       QStringLiteral("small copy"),
                       QStringLiteral("not on this device"),
                       QStringLiteral("damaged")}}});
  out.running_head = QStringLiteral("Job report, K 41-206");
  out.foot = QStringLiteral("Made Nov 24, 2026 15:40");
  out.page_words = QStringLiteral("%1 of %2");
  out.family = QStringLiteral("B612");
  out.page = page;
  return out;
}

struct Written {
  QTemporaryDir folder;
  std::filesystem::path file = std::filesystem::path(folder.path().toStdString()) / "a.pdf";
  blobs::PosixFiles files;
  Result<ReportWritten> operator()(const JobReport& report, const std::stop_token& stop = {}) {
    return write_job_report(report, nullptr, files, file, stop, {});
  }
  std::size_t files_there() const {
    std::size_t count = 0;
    for (const auto& one : std::filesystem::directory_iterator(file.parent_path()))
      count += one.exists() ? 1 : 0;
    return count;
  }
};

TEST(JobReport, A4AndLetterWithEveryRowAndTheHeadOfTheTableOnEachPage) {
  for (const auto& [page, size] :
       {std::pair{PageSize::A4, "595"}, std::pair{PageSize::Letter, "612 x 792"}}) {
    Written write;
    const auto wrote = write(long_report(page));
    ASSERT_TRUE(wrote);
    EXPECT_GE(wrote->pages, 4);
    EXPECT_EQ(wrote->not_printed, 1);
    EXPECT_EQ(wrote->bytes, std::filesystem::file_size(write.file));
    const std::string info = output_of("pdfinfo " + write.file.string());
    EXPECT_NE(info.find(size), std::string::npos) << info;
    EXPECT_NE(info.find("Pages:           " + std::to_string(wrote->pages)), std::string::npos)
        << info;
    const std::string words = output_of("pdftotext -layout " + write.file.string() + " -");
    for (int row = 0; row < 150; ++row)
      EXPECT_EQ(count_of(words, "Row " + std::to_string(row) + " "), 1U) << row;
    EXPECT_GE(count_of(words, "Mean, µm"), static_cast<std::size_t>(wrote->pages) - 1);
    for (int number = 1; number <= wrote->pages; ++number)
      EXPECT_EQ(count_of(words, std::to_string(number) + " of " + std::to_string(wrote->pages)),
                1U);
    EXPECT_EQ(count_of(words, "Job report, K 41-206"), static_cast<std::size_t>(wrote->pages) - 1);
    EXPECT_EQ(count_of(words, "not on this device"), 1U);
  }
}

TEST(JobReport, NothingIsWrittenOverAndAStopLeavesNothing) {
  Written write;
  ASSERT_TRUE(write(long_report(PageSize::A4)));
  const auto size = std::filesystem::file_size(write.file);
  const auto again = write(long_report(PageSize::Letter));
  ASSERT_FALSE(again);
  EXPECT_EQ(again.error().code, Code::AlreadyDone);
  EXPECT_EQ(std::filesystem::file_size(write.file), size);
  EXPECT_EQ(write.files_there(), 1U);

  Written stopped;
  std::stop_source stop;
  stop.request_stop();
  const auto none = stopped(long_report(PageSize::A4), stop.get_token());
  ASSERT_FALSE(none);
  EXPECT_EQ(none.error().code, Code::Stopped);
  EXPECT_EQ(stopped.files_there(), 0U);
}

TEST(JobReport, AFolderThatIsNotThereOrMayNotBeWrittenIsSaid) {
  blobs::PosixFiles files;
  const auto report = long_report(PageSize::A4);
  const auto missing = write_job_report(report, nullptr, files, "/no such folder/a.pdf", {}, {});
  ASSERT_FALSE(missing);
  EXPECT_EQ(missing.error().code, Code::NoSuchFile);
  const auto refused = write_job_report(report, nullptr, files, "/proc/a.pdf", {}, {});
  ASSERT_FALSE(refused);
  EXPECT_NE(refused.error().code, Code::AlreadyDone);
}

// The disk of memory has the folder of the real one.
TEST(JobReport, ADiskThatFillsUpAtAnyWriteLeavesNothingHalf) {
  const std::filesystem::path folder = "/tmp";
  const auto report = long_report(PageSize::A4);
  std::uint64_t writes = 0;
  {
    test::FaultyFiles files;
    ASSERT_TRUE(files.make_folder(folder));
    ASSERT_TRUE(write_job_report(report, nullptr, files, folder / "jambline-full.pdf", {}, {}));
    writes = files.writes();
    EXPECT_EQ(files.list(folder)->size(), 1U);
  }
  ASSERT_GT(writes, 10U);
  for (const std::uint64_t at : {std::uint64_t{1}, writes / 3, writes / 2, writes}) {
    test::FaultyFiles files;
    ASSERT_TRUE(files.make_folder(folder));
    files.full_at_write(at);
    const auto wrote =
        write_job_report(report, nullptr, files, folder / "jambline-full.pdf", {}, {});
    ASSERT_FALSE(wrote) << at;
    EXPECT_EQ(wrote.error().code, Code::DiskFull) << at;
    EXPECT_TRUE(files.list(folder)->empty()) << at;
  }
}

TEST(Note, IsWholeOrNotThere) {
  QTemporaryDir folder;
  const auto file = std::filesystem::path(folder.path().toStdString()) / "note.pdf";
  Note note;
  note.title = QStringLiteral("Hand-over note");
  note.family = QStringLiteral("B612");
  note.parts = {{QStringLiteral("The car"), {{QStringLiteral("Plate"), QStringLiteral("K 41")}}}};
  ASSERT_TRUE(write_note(note, file));
  EXPECT_NE(output_of("pdftotext " + file.string() + " -").find("K 41"), std::string::npos);
  const auto again = write_note(note, file);
  ASSERT_FALSE(again);
  EXPECT_EQ(again.error().code, Code::AlreadyDone);
  EXPECT_FALSE(write_note(note, "/proc/note.pdf"));
}

}  // namespace
}  // namespace jambline::report
