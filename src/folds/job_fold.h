// folds/job_fold.h: folds one car's entries into a CarView.
//
// Promise: the same set of entries gives the same view, in whatever order they come and however
//          often; rebuilt equals grown. What it does not understand makes the job read-only. A
//          refused entry is counted and changes nothing else.
// Cost:    apply() stores; view() works the values out, so that a rebuild of years is cheap.
#pragma once

#include <map>
#include <optional>
#include <vector>

#include "entries/entry.h"
#include "folds/car_view.h"
#include "folds/heads.h"
#include "trade/hours.h"

namespace jambline::folds {

class JobFold {
 public:
  explicit JobFold(const JobId& job);
  JobFold(const JobFold&);
  JobFold(JobFold&&) noexcept;
  JobFold& operator=(const JobFold&);
  JobFold& operator=(JobFold&&) noexcept;
  ~JobFold();
  void apply(entries::Entry entry);
  CarView view() const;
  int entries() const { return static_cast<int>(seen_.size()); }

 private:
  struct Words {
    job::DefectKind defect{};
    int size = 1;
    job::Layer layer{};
    std::optional<job::ParticleLook> look;
    friend bool operator==(const Words&, const Words&) = default;
  };
  struct Place {
    double x_mm{};
    double y_mm{};
    friend bool operator==(const Place&, const Place&) = default;
  };
  struct Mark {
    MarkId mark;
    entries::Order order;
    Hash hash;
    PersonId by;
    std::int64_t wall_ms{};
    job::Panel panel{};
    job::Stage stage{};
  };
  struct Verdict {
    job::Verdict verdict{};
    bool edges_and_back = false;
    friend bool operator==(const Verdict&, const Verdict&) = default;
  };
  struct Offer {
    ReleaseId release;
    std::optional<job::Role> to;
    std::optional<RackId> rack;
    friend bool operator==(const Offer&, const Offer&) = default;
  };
  struct Answer {
    bool taken = true;
    std::string reason;
    std::optional<PictureId> picture;
    std::optional<PersonId> taker;
    friend bool operator==(const Answer&, const Answer&) = default;
  };
  struct Vin {
    std::string vin;
    bool passes = false;
    friend bool operator==(const Vin&, const Vin&) = default;
  };
  struct Operation {
    job::Stage stage{};
    std::string title;
    int estimate_min = 0;
    job::WorkKind work{};
    std::string why;
    std::optional<PictureId> picture;
    job::Approval approval{};
    friend bool operator==(const Operation&, const Operation&) = default;
  };
  struct Opened {
    job::BodyShape body{};
    job::Drive drive{};
    friend bool operator==(const Opened&, const Opened&) = default;
  };

  using Offers = std::vector<const Write<Offer>*>;
  using Answers = std::map<ReleaseId, std::vector<const Write<Answer>*>>;
  ReleaseView release_view(const Offers& offers, const Answers& answers) const;
  std::vector<PersonId> takers_of(const Offers& offers, const Answers& answers) const;
  void view_panels(CarView& out) const;
  void view_correction(CarView& out) const;
  void view_pictures(CarView& out) const;
  void view_air(CarView& out) const;
  void view_hours(CarView& out) const;
  void view_operations(CarView& out) const;
  void view_visit(CarView& out) const;
  void view_assembly(CarView& out) const;
  void view_labels(CarView& out) const;

  JobId job_;
  struct LastEntry {
    entries::Order order;
    SeenView seen;
  };
  void note_seen(const entries::Entry& entry);

  std::vector<entries::Order> seen_;  // sorted
  std::vector<LastEntry> last_by_;    // by person
  Withdrawals withdrawals_;
  Heads<Opened> opened_;
  Heads<std::string> plate_;
  Heads<Vin> vin_;
  Heads<job::Color> color_;
  Heads<std::int64_t> promise_;
  Heads<BoothId> booth_;
  Heads<std::optional<job::DirtCause>> cause_;
  Writes<job::Panel, job::PanelPlan> plans_;
  Writes<job::Panel, Verdict> verdicts_;
  Writes<job::Panel, job::DirtClass> dirt_;
  Writes<std::optional<job::Panel>, Offer> offers_;  // no panel: the whole car
  Writes<ReleaseId, Answer> answers_;
  std::vector<Mark> marks_;
  Writes<MarkId, Place> places_;
  Writes<MarkId, Words> words_;
  Writes<MarkId, job::MarkEnd> ends_;
  Writes<ReadingId, entries::FilmRead> film_;
  Writes<RoundId, entries::RoundFinished> rounds_;
  Writes<PersonId, std::vector<job::CutCheck>> before_cut_;
  Writes<OperationId, Operation> operations_;
  struct Done {
    bool done = true;
    std::optional<job::WithoutShots> without_shots;
    std::optional<int> shots_missing;
    friend bool operator==(const Done&, const Done&) = default;
  };
  Writes<job::Stage, Done> stages_;
  Writes<PictureId, entries::PictureTaken> pictures_;
  Writes<PictureId, entries::PicturePlace> picture_places_;
  Writes<PictureNoteId, entries::PictureNoted> picture_notes_;
  Writes<PictureId, std::vector<job::DefectKind>> edges_;
  std::vector<entries::Entry> air_;  // of the kinds in folds/car_air_view.h, as they came
  Writes<OperationId, bool> operations_done_;
  Writes<Hash, entries::ClockAmended> amended_;
  std::vector<entries::Entry> visit_;     // of the kinds in folds/visit_view.h, as they came
  std::vector<entries::Entry> assembly_;  // of those in folds/assembly_view.h
  std::vector<trade::ClockAct> clock_acts_;
  std::vector<Hash> unknown_;
  int refused_ = 0;
};

}  // namespace jambline::folds
