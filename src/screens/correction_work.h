// screens/correction_work.h: the correction of the car on the tape, planned and how far it has
// come; what the screens of plan and walk and the car have in common.
//
// Plan:    worked out on the calc lane whenever the car or a choice changes; `ready` says that it
// is
//          that of the shown car. Kept with the car's half-typed forms: the way of going round, the
//          proved starts, from when it may be sanded.
// Film:    with a cure clock of its panels nothing is cut before the milestone of its round (sand
//          from, polish from, last polish), unless somebody says why; without one a person says
//          from when, as before.
// Threads: GUI thread. Errors: `refused` says why there is no plan.
#pragma once

#include <QObject>
#include <atomic>
#include <memory>
#include <set>

#include "folds/planned_car.h"
#include "screens/cure_words.h"
#include "screens/cure_work.h"
#include "screens/session.h"

namespace jambline::screens {

class CorrectionWork final : public QObject {
  Q_OBJECT

 public:
  struct Planned {
    std::shared_ptr<const folds::CarView> car;
    folds::PlannedCar plan;
    const folds::Walk& walk() const { return plan.walk; }
  };
  enum class Sand { NotSaid, SheetAllows, From };

  explicit CorrectionWork(Session& session, QObject* parent = nullptr);

  void follow_cure(CureWork& cure);  // whose clocks hold the work back

  const Planned* planned() const { return planned_.get(); }  // null: none, see refused
  const std::optional<Error>& refused() const { return refused_; }
  bool ready() const { return !waiting_; }
  job::Stage stage() const;
  const folds::OperationView* operation() const;  // of that stage, the one that runs first
  std::vector<job::Panel> panels_done() const;    // corrected, nothing open: clean or not?
  const folds::PlanChoice& choice() const { return choice_; }
  const folds::ShopLessons& lessons() const { return lessons_; }

  void go_by_panel(bool by_panel);
  void say_heavy_film_is_hard(bool hard);
  void prove_start(job::DefectKind kind, std::optional<job::Round> start);

  Sand sand() const { return sand_; }
  std::int64_t sand_from_ms() const { return sand_from_ms_; }
  bool may_begin() const;  // the time has come, or the sheet says so
  // What the clocks say of the panels of this round; of the one that comes next without one.
  FilmGate gate(const folds::WalkStep& step) const;
  FilmGate gate() const;
  // Why a stage that touches the film waits: unmask, assemble, last polish; "" it does not.
  QString stage_words(job::Stage stage) const;
  QString window_words() const;  // until when it can be polished; "" no clock says so
  bool early(const folds::WalkStep& step) const;  // somebody said why it goes on before its time
  void say_early(const folds::WalkStep& step);
  void sheet_allows();
  void sand_from(std::int64_t wall_ms);
  void ask_sand_again();

 signals:
  void changed();

 private:
  void follow();
  void plan();
  void read_kept();
  void keep() const;
  void choose_anew();
  trade::CureMilestone milestone_of(const folds::WalkStep& step) const;

  Session& session_;
  CureWork* cure_ = nullptr;
  std::optional<JobId> job_;
  std::shared_ptr<const folds::CarView> car_;
  folds::ShopLessons lessons_;
  const void* lessons_seen_ = nullptr;
  folds::PlanChoice choice_;
  Sand sand_ = Sand::NotSaid;
  std::int64_t sand_from_ms_ = 0;
  std::set<trade::CureMilestone> early_;
  std::shared_ptr<const Planned> planned_;
  std::optional<Error> refused_;
  std::shared_ptr<std::atomic<std::uint64_t>> asked_;  // the newest; older ones are not worked out
  bool waiting_ = false;
};

}  // namespace jambline::screens
