// evidence_ms  pointer release on the main act that gives the last verdict, to the first frame of
// the map with the answer in it, the slowest of the rounds.
//
// A sedan of all its panels with 200 marks spread by area, in a window of 412 x 892 on the software
// renderer. In each round the last verdict is taken back, a mark is placed, and the verdict given
// anew on the panel's screen: commit, fold, calculation on its lane and frame are in the figure.
// `evidence_map_p95_ms`: a touch on the map of "what threw it" to the frame that shows what was
// touched, while the answer is being worked out (those only count), 95th of 100.
#include "tests/bench/screens/evidence.h"

#include <QGuiApplication>
#include <QLocale>
#include <random>

#include "base/clock.h"
#include "screens/evidence_view_model.h"
#include "screens/inspect_view_model.h"
#include "tests/bench/figures.h"
#include "tests/bench/screens/bench_hand.h"
#include "tests/bench/screens/shops.h"
#include "tests/bench/screens/shown.h"

namespace jambline::bench {

namespace {
using Word = screens::EvidenceViewModel::Word;

constexpr int marks = 200;
constexpr int rounds = 40;
constexpr int touches = 40;

class Bench {
 public:
  explicit Bench(app::Program& program) : program_(program), hand_(program, 200) {}

  void prepare() {
    hand_.choose_painter();
    job_ = hand_.open_sedan("B 13-200", pattern().panels, {{job::Stage::Inspect, "", 60}});
    hand_.throw_nibs(job_, pattern().panels, marks);
    last_ = pattern().panels.back().panel;
    for (const auto& one : session().car()->panels)
      if (one.plan.panel != last_ && one.verdict == job::Verdict::NotLookedAt)
        hand_.post(acts::GiveVerdict{job_, one.plan.panel, job::Verdict::Clean});
  }

  double verdict_ms() {
    place_mark(*pattern().find(job::Panel::Hood));
    const auto* panel = session().car()->find(last_);
    if (panel->verdict != job::Verdict::NotLookedAt)
      hand_.post(acts::UndoAction{{{job_, panel->verdict_heads.front()}}});
    must_be(hand_.wait_for([&] {
      return session().car()->find(last_)->verdict == job::Verdict::NotLookedAt && !said().ready();
    }),
            "the verdict stays");
    const auto word = word_of(last_);
    program_.inspect().openPanel(
        QString::fromUtf8(word.data(), static_cast<qsizetype>(word.size())));
    must_be(hand_.go("Floor", "Panel"), "the panel's screen does not come");
    hand_.wait_for_quiet();
    auto* main = hand_.find_named("panelMain");
    must_be(main != nullptr, "no main act");
    const QPointF at = main->mapToScene(QPointF(main->width() / 2, main->height() / 2));
    hand_.press(at);
    return ms_to_frame([&] { hand_.release(at); },
                       [&] {
                         const auto* row = hand_.find_named("evidenceRow");
                         return row && row->isVisible() && is_answered() &&
                                hand_.find("InspectCar");
                       });
  }

  // Milliseconds, or none when the answer was there before the touch was shown.
  std::optional<double> touch_ms() {
    auto* map = hand_.find_named("evidenceMap");
    must_be(map != nullptr, "no map");
    apart_ = !apart_;  // two quick touches of one place are a double click to Qt
    const QPointF at =
        map->mapToScene(QPointF(map->width() / 2 + (apart_ ? 60 : -60), map->height() / 2));
    program_.evidence().showPanel(QStringLiteral("hood"));
    hand_.wait_for_quiet();
    hand_.press(at);
    place_mark(*pattern().find(job::Panel::Hood));
    must_be(hand_.wait_for([&] { return said().word() == Word::Working || is_answered(); }),
            "nothing is worked out");
    bool meanwhile = false;
    const double ms = ms_to_frame([&] { hand_.release(at); },
                                  [&] {
                                    meanwhile = said().word() == Word::Working;
                                    return said().mapPanel().isEmpty();
                                  });
    must_be(hand_.wait_for([&] { return is_answered(); }), "no answer comes");
    hand_.wait_for_quiet();
    return meanwhile ? std::optional(ms) : std::nullopt;
  }

  void go_to_evidence() {
    must_be(hand_.go("Floor", "Evidence"), "the screen does not come");
    must_be(hand_.wait_for([&] { return is_answered(); }), "no answer comes");
    hand_.wait_for_quiet();
  }
  QString answer() const { return said().answer(); }

 private:
  const job::CarPattern& pattern() const { return BenchHand::sedan(); }
  screens::Session& session() { return program_.session(); }
  screens::EvidenceViewModel& said() const { return program_.evidence(); }
  bool is_answered() const { return said().word() != Word::None && said().word() != Word::Working; }
  void place_mark(const job::PatternPanel& panel) { hand_.throw_nib(job_, panel); }
  double ms_to_frame(const std::function<void()>& act, const std::function<bool()>& so) {
    long long shown_ns = 0;
    const auto frame = QObject::connect(&hand_.window(), &QQuickWindow::frameSwapped, &here_, [&] {
      if (shown_ns == 0 && so()) shown_ns = monotonic_ns();
    });
    const long long from_ns = monotonic_ns();
    act();
    must_be(hand_.wait_for([&] { return shown_ns != 0; }), "it was not shown");
    QObject::disconnect(frame);
    return static_cast<double>(shown_ns - from_ns) / 1e6;
  }

  app::Program& program_;
  BenchHand hand_;
  JobId job_;
  job::Panel last_{};
  bool apart_ = false;
  QObject here_;
};
}  // namespace

int evidence(int argc, char** argv) {
  const BenchFolder folder;
  make_demo(folder.path(), {.delivered = 40, .in_work = 4});
  QGuiApplication gui(argc, argv);
  QLocale::setDefault(QLocale(QLocale::English, QLocale::UnitedStates));
  SystemClock clock;
  app::Options options;
  options.size = QSize(412, 892);
  auto program = must(app::Program::open(folder.path(), clock, options), "open the program");
  must_be(program->show(), "no window");
  Bench bench(*program);
  bench.prepare();
  std::vector<double> all;
  for (int i = 0; i < rounds; ++i) all.push_back(bench.verdict_ms());
  std::sort(all.begin(), all.end());
  std::printf("evidence: %d marks on a sedan, \"%s\"\n", marks, qPrintable(bench.answer()));
  figure("evidence_median_ms", all[all.size() / 2], "ms");
  figure("evidence_ms", all[all.size() * 95 / 100 - 1], "ms");
  figure("evidence_most_ms", all.back(), "ms");
  bench.go_to_evidence();
  std::vector<double> meanwhile;
  for (int i = 0; i < touches; ++i)
    if (const auto ms = bench.touch_ms()) meanwhile.push_back(*ms);
  must_be(!meanwhile.empty(), "no touch was shown while the answer was worked out");
  std::sort(meanwhile.begin(), meanwhile.end());
  std::printf("evidence: %zu of %d touches were shown before the answer\n", meanwhile.size(),
              touches);
  figure("evidence_map_p95_ms", meanwhile[meanwhile.size() * 95 / 100], "ms");
  return 0;
}

}  // namespace jambline::bench
