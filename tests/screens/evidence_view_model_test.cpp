// What threw it: too few, chance, a sign that points, the cause set, left open, changed and
// disputed.
#include "screens/evidence_view_model.h"

#include "base/random.h"
#include "folds/dirt_of_car.h"
#include "log/entry_log.h"
#include "screens/correct_words.h"
#include "screens/words.h"
#include "tests/screens/shop_desk.h"

namespace jambline::screens {
namespace {

using job::DirtCause;
using job::Panel;
using job::Verdict;
using Word = EvidenceViewModel::Word;
using Act = EvidenceViewModel::Act;

QString value(QAbstractItemModel* rows, int row, const char* role) {
  return rows->data(rows->index(row, 0), rows->roleNames().key(role)).toString();
}

class EvidenceScreen : public ShopDesk {
 protected:
  void SetUp() override {
    ShopDesk::SetUp();
    ivo = add("Ivo", job::Role::Painter);
    be(ivo);
    open_car();
  }
  void nib(double x_mm, double y_mm, std::optional<job::ParticleLook> look = {}) {
    acts::PlaceMark mark{car().job, Panel::Hood, x_mm, y_mm, job::DefectKind::Nib, 1, {}};
    mark.look = look;
    act(mark);
    ASSERT_FALSE(failed_) << failed_->subject;
  }
  void cluster(int nibs) {
    for (int i = 0; i < nibs; ++i) nib(480 + 14 * i, 700 + 11 * (i % 3));
  }
  void look_at_the_rest() { act(acts::GiveVerdict{car().job, Panel::FrontBumper, Verdict::Clean}); }

  // As from a device that knew of nothing that was said here.
  void say_elsewhere(DirtCause cause) {
    const JobId job = car().job;
    close();
    clock_.advance_ms(60'000);
    {
      const auto key = seal::SigningKey::load(std::filesystem::path(folder_) / "device.key");
      log::OpenOptions options;
      options.ballast_bytes = 0;
      auto log = log::EntryLog::open(folder_, log::OpenMode::Write, options);
      ASSERT_TRUE(key && log);
      auto text = entries::write(entries::CauseSet{{}, cause});
      const log::Draft draft{job, text.kind, text.schema, std::move(text.payload)};
      SeededRandom random(5);
      ASSERT_TRUE((*log)->append(*key, ivo, {&draft, 1}, clock_.moment, random));
    }
    open();
    session_->openCar(QString::fromStdString(job.hex()));
    settle();
    be(ivo);
  }

  PersonId ivo;
};

TEST_F(EvidenceScreen, NothingIsSaidBeforeEveryPanelIsLookedAt) {
  EvidenceViewModel screen(*session_);
  cluster(9);
  EXPECT_FALSE(screen.ready());
  EXPECT_EQ(screen.word(), Word::None);
  look_at_the_rest();
  EXPECT_TRUE(screen.ready());
  EXPECT_EQ(screen.word(), Word::Points);
  EXPECT_EQ(screen.countWords(), "9 marks, 1 panel");
}

TEST_F(EvidenceScreen, FewMarksAreTooFewToSay) {
  cluster(5);
  look_at_the_rest();
  EvidenceViewModel screen(*session_);
  settle();
  EXPECT_EQ(screen.word(), Word::TooFew);
  EXPECT_EQ(screen.answer(), "Too few to say: 5 marks");
  EXPECT_EQ(screen.lookAt(), "8 or more on a car, or 6 on one panel, can say something.");
  EXPECT_EQ(screen.mainText(), "Leave it open");
}

// Six marks spread over the whole hood: no sign of the hood stands out.
TEST_F(EvidenceScreen, SpreadMarksLookLikeChance) {
  const auto& hood = job::pattern(job::BodyShape::FourDoorSedan).find(Panel::Hood)->shape;
  const double w = hood.width_mm(), h = hood.height_mm();
  for (const double x : {0.3, 0.5, 0.7})
    for (const double y : {0.36, 0.64}) nib(w * x, h * y);
  look_at_the_rest();
  EvidenceViewModel screen(*session_);
  settle();
  EXPECT_EQ(screen.word(), Word::Chance) << screen.answer().toStdString();
  EXPECT_EQ(screen.answer(), "Looks like chance");
  EXPECT_EQ(screen.signs()->rowCount(), 3);
  EXPECT_EQ(value(screen.signs(), 0, "chance"), "weak");
}

TEST_F(EvidenceScreen, AClusterPointsAndIsShownOnTheMap) {
  cluster(9);
  look_at_the_rest();
  EvidenceViewModel screen(*session_);
  screen.setShown(true);
  settle();
  ASSERT_EQ(screen.word(), Word::Points);
  EXPECT_EQ(screen.answer(), "Points to one thing dropped or a burst: hose, cup, cap or sleeve");
  EXPECT_EQ(screen.lookAt(), "Look at hose skin, cup vent, suit cuffs, gun cap.");
  EXPECT_EQ(screen.mapPanel(), "hood");
  const SignDrawing drawing = screen.drawing();
  EXPECT_EQ(drawing.marks.size(), 9U);
  EXPECT_TRUE(std::any_of(drawing.marks.begin(), drawing.marks.end(),
                          [](const auto& mark) { return mark.speaks; }));
  EXPECT_EQ(value(screen.causes(), 0, "key"), "hose");
  EXPECT_EQ(value(screen.causes(), 0, "pointed"), "true");
  EXPECT_EQ(screen.mainText(), "Set cause: hose");
  screen.showPanel("");
  EXPECT_EQ(screen.mapPanel(), "");
  screen.showSign(value(screen.signs(), 1, "key"));
  EXPECT_EQ(screen.mapPanel(), "hood");
  screen.showSign(value(screen.signs(), 1, "key"));
  EXPECT_EQ(screen.mapPanel(), "") << "the chosen one again";
}

// The numbers behind a sign are those of the calculation on the same dirt.
TEST_F(EvidenceScreen, ASignOpensToTheNumbersOfTheCalculation) {
  cluster(9);
  look_at_the_rest();
  EvidenceViewModel screen(*session_);
  settle();
  const auto asked = folds::dirt_of_car(car(), job::pattern(car().body), {});
  const auto judged = trade::dirt_pattern(asked);
  ASSERT_TRUE(judged);
  ASSERT_TRUE(screen.result());
  const auto& first = judged->evidence.front();
  EXPECT_EQ(screen.result()->evidence.front().chance, first.chance);
  EXPECT_EQ(screen.result()->evidence.front().holm_chance, first.holm_chance);
  EXPECT_EQ(value(screen.signs(), 0, "chance"), chance_words(100 * first.holm_chance));
  screen.openSum(value(screen.signs(), 0, "key"));
  EXPECT_EQ(screen.sum()->seed(), QString::number(asked.seed));
  QStringList names;
  for (int i = 0; i < screen.sum()->rows()->rowCount(); ++i)
    names << value(screen.sum()->rows(), i, "name");
  for (const char* name : {"seen", "expected by chance", "chance of this sign alone",
                           "chance over all signs of the car", "patterns drawn"})
    EXPECT_TRUE(names.contains(QString::fromLatin1(name))) << name;
}

TEST_F(EvidenceScreen, AMarkMoreMakesAnOlderAnswerVoid) {
  cluster(9);
  look_at_the_rest();
  EvidenceViewModel screen(*session_);
  screen.setShown(true);
  settle();
  ASSERT_EQ(screen.word(), Word::Points);
  session_->post(acts::PlaceMark{car().job, Panel::Hood, 300, 300, {}, 1, {}});
  int worked = 0;
  QObject::connect(&screen, &EvidenceViewModel::changed, &screen, [&] {
    worked += screen.word() == Word::Working && screen.drawing().marks.size() == 10 ? 1 : 0;
  });
  settle();
  EXPECT_GT(worked, 0) << "the marks are on the map meanwhile";
  EXPECT_EQ(screen.word(), Word::Points);
  EXPECT_EQ(screen.countWords(), "10 marks, 1 panel");
}

TEST_F(EvidenceScreen, TheCauseIsSetChangedAndLeftOpen) {
  cluster(9);
  look_at_the_rest();
  EvidenceViewModel screen(*session_);
  settle();
  int back = 0;
  QObject::connect(&screen, &EvidenceViewModel::backAsked, &screen, [&] { ++back; });
  EXPECT_EQ(screen.setWords(), "");
  screen.act();
  settle();
  ASSERT_TRUE(car().cause);
  EXPECT_EQ(car().cause->cause, DirtCause::Hose);
  EXPECT_EQ(screen.mainAct(), Act::Back);
  EXPECT_TRUE(screen.setWords().startsWith("Hose, said by Ivo")) << screen.setWords().toStdString();
  EXPECT_EQ(back, 0);
  screen.pick("suit or sleeve");
  EXPECT_EQ(screen.mainText(), "Change the cause: suit or sleeve");
  screen.act();
  settle();
  EXPECT_EQ(car().cause->cause, DirtCause::Suit);
  screen.pick("");
  EXPECT_EQ(screen.mainAct(), Act::LeaveOpen);
  screen.act();
  settle();
  ASSERT_TRUE(car().cause);
  EXPECT_FALSE(car().cause->cause);
  EXPECT_TRUE(screen.setWords().startsWith("Left open by Ivo"));
  int said = 0;
  for (const auto& entry : *session_->snapshot().timeline)
    said += entry.payload.is<entries::CauseSet>() ? 1 : 0;
  EXPECT_EQ(said, 3) << "the older ones stay in the time line";
  EXPECT_EQ(screen.mainAct(), Act::Back);
  screen.act();
  EXPECT_EQ(back, 1);
  EXPECT_FALSE(failed_);
}

TEST_F(EvidenceScreen, TwoThatDisagreeAreBothShownAndOneTapSettlesIt) {
  cluster(9);
  look_at_the_rest();
  act(acts::SetCause{car().job, DirtCause::Hose});
  say_elsewhere(DirtCause::Masking);
  EvidenceViewModel screen(*session_);
  settle();
  ASSERT_TRUE(screen.disputed());
  EXPECT_EQ(screen.setWords(), "Two people say different things");
  ASSERT_EQ(screen.disputeWords().size(), 2);
  EXPECT_TRUE(screen.disputeWords()[0].startsWith("Hose: Ivo"));
  EXPECT_TRUE(screen.disputeWords()[1].startsWith("Masking: Ivo"));
  EXPECT_EQ(screen.mainAct(), Act::SetCause);
  screen.settle(7);
  screen.settle(0);
  settle();
  EXPECT_FALSE(screen.disputed());
  EXPECT_EQ(car().cause->cause, DirtCause::Hose);
  EXPECT_TRUE(screen.disputeWords().isEmpty());
  EXPECT_FALSE(failed_);
}

TEST_F(EvidenceScreen, WhoIsNotChosenSetsNothing) {
  cluster(9);
  look_at_the_rest();
  session_->choosePerson({});
  EvidenceViewModel screen(*session_);
  settle();
  EXPECT_TRUE(screen.mainWaits());
  screen.act();
  screen.pick("no such cause");
  settle();
  EXPECT_FALSE(car().cause);
}

TEST_F(EvidenceScreen, LooksOfParticlesSpeakInWords) {
  using job::ParticleLook;
  nib(300, 300, ParticleLook::WhiteFiber);
  nib(500, 600, ParticleLook::WhiteFiber);
  nib(700, 900, ParticleLook::Insect);
  act(acts::SayDirtAllOver{car().job, Panel::FrontBumper, job::DirtClass::From10To20});
  look_at_the_rest();
  EvidenceViewModel screen(*session_);
  settle();
  ASSERT_GE(screen.clueCount(), 2);
  int row = 0;
  while (value(screen.clues(), row, "title") != "White fiber" && row < screen.clueCount()) ++row;
  ASSERT_LT(row, screen.clueCount());
  EXPECT_EQ(value(screen.clues(), row, "note"), "2 of 3 marks that somebody described");
  EXPECT_EQ(value(screen.clues(), row, "pointsTo"), "suit, wipe or paper");
  EXPECT_EQ(value(screen.causes(), 0, "pointed"), "true");
}

TEST_F(EvidenceScreen, ACarWithoutDirtHasNothingToSay) {
  EvidenceViewModel screen(*session_);
  act(acts::GiveVerdict{car().job, Panel::Hood, Verdict::Clean});
  look_at_the_rest();
  EXPECT_FALSE(screen.ready());
  screen.setShown(true);
  settle();
  EXPECT_EQ(screen.answer(), "No dirt is marked");
  EXPECT_EQ(screen.mainAct(), Act::None);
  session_->leaveCar();
  settle();
  EXPECT_EQ(screen.word(), Word::None);
  EXPECT_TRUE(screen.drawing().marks.empty());
}

TEST(EvidenceWords, EverySignLookAndCauseHasWords) {
  for (std::size_t i = 0; i < enum_words<Clue>.size(); ++i) {
    const ClueWords words = words_of(static_cast<Clue>(i));
    EXPECT_FALSE(words.title.isEmpty()) << i;
    EXPECT_FALSE(words.points_to.isEmpty()) << i;
    EXPECT_FALSE(words.look_at.isEmpty()) << i;
    EXPECT_EQ(causes_of(static_cast<Clue>(i)).empty(), static_cast<Clue>(i) == Clue::DryOverspray);
  }
  for (std::size_t i = 0; i < enum_words<DirtCause>.size(); ++i) {
    EXPECT_FALSE(words_of(static_cast<DirtCause>(i)).isEmpty()) << i;
    EXPECT_TRUE(
        std::filesystem::exists(std::filesystem::path(JAMBLINE_SOURCE_DIR) / "icons" /
                                (icon_of(static_cast<DirtCause>(i)).toStdString() + ".svg")))
        << i;
  }
  for (std::size_t i = 0; i < enum_words<trade::DirtSign>.size(); ++i) {
    trade::DirtEvidence one;
    one.sign = static_cast<trade::DirtSign>(i);
    one.chance = one.holm_chance = 0.2;
    EXPECT_FALSE(note_of(one, 6, Units::Metric).isEmpty()) << i;
    EXPECT_FALSE(basis_of(one, {}).method.empty()) << i;
  }
}

TEST(EvidenceWords, TheLevelIsTheMiddleOfTheLine) {
  EXPECT_DOUBLE_EQ(line_at(1), 0);
  EXPECT_DOUBLE_EQ(line_at(trade::dirt_level), 0.5);
  EXPECT_DOUBLE_EQ(line_at(1e-9), 1);
}

TEST(EvidenceWords, AClusterAtAGapIsAnotherStory) {
  trade::DirtPattern asked;
  asked.panels.resize(1);
  asked.panels[0].panel = "hood";
  asked.panels[0].seams = {{{{0, 0}, {1000, 0}}}};
  trade::DirtEvidence one;
  one.sign = trade::DirtSign::Cluster;
  one.panel = "hood";
  one.cluster = trade::DirtCluster{{500, 90}, 100, 4};
  EXPECT_EQ(clue_of(one, asked), Clue::ClusterAtGap);
  one.cluster->center.y_mm = 300;
  EXPECT_EQ(clue_of(one, asked), Clue::Cluster);
}

TEST(SignDrawing, ShowsTheSignOnItsPanelAndAllMarks) {
  const auto& body = job::pattern(job::BodyShape::FourDoorSedan);
  const auto& hood = body.find(Panel::Hood)->shape;
  trade::DirtPattern asked;
  asked.panels.resize(1);
  auto& panel = asked.panels[0];
  panel.panel = "hood";
  panel.outline = hood.outline.corners;
  for (const auto& strip : hood.reach_over) panel.reach_strips.push_back({strip.corners});
  const auto middle = trade::bounds(hood.outline.corners).high;
  panel.marks = {{middle.x_mm / 2, middle.y_mm / 2}, hood.reach_over.front().corners.front()};
  trade::DirtEvidence strip;
  strip.sign = trade::DirtSign::ReachStrip;
  strip.panel = "hood";
  for (const auto alone : {std::optional<Panel>(Panel::Hood), std::optional<Panel>()}) {
    const auto drawn = sign_drawing(asked, body, alone, &strip);
    EXPECT_EQ(drawn.areas.size(), hood.reach_over.size());
    ASSERT_EQ(drawn.marks.size(), 2U);
    EXPECT_FALSE(drawn.marks[0].speaks);
    EXPECT_TRUE(drawn.marks[1].speaks);
  }
  EXPECT_TRUE(sign_drawing(asked, body, Panel::Roof, &strip).marks.empty());
  EXPECT_TRUE(sign_drawing(asked, body, Panel::Hood, nullptr).areas.empty());
}

}  // namespace
}  // namespace jambline::screens
