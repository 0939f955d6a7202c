// Report and bundle on the screen: what is asked of who makes them, and what is said of what came.
#include "screens/report_view_model.h"

#include "screens/bundle_view_model.h"
#include "tests/screens/shop_desk.h"
#include "tests/screens/until.h"

namespace jambline::screens {
namespace {

class PaperDesk : public ShopDesk {
 protected:
  void SetUp() override {
    ShopDesk::SetUp();
    be(add("Ivo", job::Role::Painter));
    open_car();
    report_ = std::make_unique<ReportViewModel>(
        *session_, QStringLiteral("/documents"),
        [this](const ReportWanted& wanted, const std::filesystem::path& file,
               const std::stop_token& stop, const PaperProgress& went_on) {
          wanted_ = wanted;
          file_ = file;
          went_on(0.5);
          if (waits_for_stop_)
            while (!stop.stop_requested()) std::this_thread::yield();
          return stop.stop_requested() ? Result<PaperMade>(fail(Code::Stopped, "write", "a.pdf"))
                                       : made_;
        },
        [this](const std::filesystem::path&) { return printed_; });
    bundle_ = std::make_unique<BundleViewModel>(
        *session_, QStringLiteral("/documents"),
        [] { return QStringLiteral("0123-4567-89ab-cdef-0123-4567-89ab-cdef"); },
        [this](const PaperOf&, const std::filesystem::path&, bool without_missing,
               const std::stop_token&, const PaperProgress&) {
          without_missing_ = without_missing;
          return made_;
        });
    report_->ask();
    bundle_->ask();
    settle();
  }
  void TearDown() override {
    report_.reset();
    bundle_.reset();
    ShopDesk::TearDown();
  }
  void wait_for(PaperRun& run) {
    ASSERT_TRUE(until([&] { return !run.busy(); }));
  }

  Result<PaperMade> made_ = PaperMade{1'200'000, 12, 0, {}};
  PrintSaid printed_;
  bool waits_for_stop_ = false;
  ReportWanted wanted_;
  std::filesystem::path file_;
  bool without_missing_ = false;
  std::unique_ptr<ReportViewModel> report_;
  std::unique_ptr<BundleViewModel> bundle_;
};

TEST_F(PaperDesk, WhatIsTurnedOffIsAskedForWithoutItAndSaid) {
  EXPECT_EQ(report_->leftOutWords(), QString());
  report_->forCustomer();
  report_->setLetter(false);
  EXPECT_TRUE(report_->leftOutWords().contains(QStringLiteral("role and a number")));
  report_->write(QStringLiteral("/somewhere"));
  wait_for(*report_->run());
  EXPECT_FALSE(wanted_.hours || wanted_.names || wanted_.letter_paper);
  EXPECT_TRUE(wanted_.pictures);
  EXPECT_EQ(wanted_.of.by, session_->person());
  EXPECT_EQ(file_.parent_path(), "/somewhere");
  EXPECT_EQ(file_.filename().string().rfind("Report K 41-206 2026-09-21 ", 0), 0U);
  EXPECT_EQ(report_->written().toStdString(), file_.string());
  EXPECT_TRUE(report_->run()->kept().contains(QStringLiteral("12 pages, 1.2 MB")));
  report_->setNames(true);  // what was written is another one
  EXPECT_EQ(report_->written(), QString());
}

TEST_F(PaperDesk, AStopSaysThatNothingWasWritten) {
  waits_for_stop_ = true;
  report_->write(QStringLiteral("/somewhere"));
  EXPECT_TRUE(report_->run()->busy());
  report_->run()->stop();
  wait_for(*report_->run());
  EXPECT_EQ(report_->written(), QString());
  EXPECT_TRUE(report_->run()->what().contains(QStringLiteral("No report was written")));
  EXPECT_FALSE(report_->run()->failed());
}

TEST_F(PaperDesk, NothingIsCalledPrintedBeforeThePrinterTookIt) {
  report_->print();  // nothing is written yet
  EXPECT_FALSE(report_->run()->busy());
  report_->write(QStringLiteral("/somewhere"));
  wait_for(*report_->run());
  for (const auto answer : {PrintSaid::Answer::NoProgram, PrintSaid::Answer::Refused}) {
    printed_ = {answer, QStringLiteral("lp: no default destination available.")};
    report_->print();
    wait_for(*report_->run());
    EXPECT_TRUE(report_->run()->failed());
    EXPECT_FALSE(report_->run()->what().contains(QStringLiteral("Handed")));
    EXPECT_FALSE(report_->run()->todo().isEmpty());
  }
  printed_ = {PrintSaid::Answer::Accepted, QStringLiteral("request id is desk-12 (1 file)")};
  report_->print();
  wait_for(*report_->run());
  EXPECT_FALSE(report_->run()->failed());
  EXPECT_TRUE(report_->run()->todo().contains(QStringLiteral("desk-12")));
}

TEST_F(PaperDesk, ADiskThatIsFullIsSaidInWords) {
  made_ = fail(Code::DiskFull, "write", "a.pdf");
  report_->write(QStringLiteral("/somewhere"));
  wait_for(*report_->run());
  EXPECT_TRUE(report_->run()->failed());
  EXPECT_EQ(report_->written(), QString());
  EXPECT_FALSE(report_->run()->todo().isEmpty());
}

TEST_F(PaperDesk, ABundleOffersToGoWithoutPicturesThatAreNotHere) {
  made_ = fail(Error{Code::NoSuchFile, "bundle", "picture", {}}.with("picture", "00ff"));
  bundle_->write(QStringLiteral("/somewhere"), false);
  wait_for(*bundle_->run());
  EXPECT_TRUE(bundle_->picturesMissing());
  EXPECT_EQ(bundle_->check(), QString());
  made_ = PaperMade{5'000'000, 0, 1, {}};
  bundle_->write(QStringLiteral("/somewhere"), true);
  wait_for(*bundle_->run());
  EXPECT_TRUE(without_missing_);
  EXPECT_FALSE(bundle_->picturesMissing());
  EXPECT_TRUE(bundle_->check().startsWith(
      QStringLiteral("python3 verify_bundle.py --shop 0123-4567-89ab-cdef-")));
  EXPECT_TRUE(bundle_->run()->kept().contains(QStringLiteral("1 picture missing")));
}

TEST_F(PaperDesk, TheFingerprintStandsInGroupsAndIsReadSignBySign) {
  EXPECT_EQ(bundle_->fingerprint(),
            QStringLiteral("0123  4567  89ab  cdef\n0123  4567  89ab  cdef"));
  EXPECT_TRUE(bundle_->spoken().startsWith(QStringLiteral("0 1 2 3 , 4 5")));
}

}  // namespace
}  // namespace jambline::screens
