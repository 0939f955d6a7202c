#include "folds/job_fold.h"

#include <algorithm>

namespace jambline::folds {

namespace {
trade::ClockActKind act_kind(entries::ClockActKind act) {
  switch (act) {
    case entries::ClockActKind::Start:
      return trade::ClockActKind::Start;
    case entries::ClockActKind::Pause:
      return trade::ClockActKind::Pause;
    case entries::ClockActKind::Switch:
      return trade::ClockActKind::Switch;
    case entries::ClockActKind::Stop:
      return trade::ClockActKind::Stop;
  }
  return trade::ClockActKind::Stop;
}

template <class T, class... Kinds>
inline constexpr bool is_one_of = (std::is_same_v<T, Kinds> || ...);

constexpr std::size_t usual_entries = 96;
constexpr std::size_t usual_clock_acts = 24;
}  // namespace

JobFold::JobFold(const JobId& job) : job_(job) {}
JobFold::JobFold(const JobFold&) = default;
JobFold::JobFold(JobFold&&) noexcept = default;
JobFold& JobFold::operator=(const JobFold&) = default;
JobFold& JobFold::operator=(JobFold&&) noexcept = default;
JobFold::~JobFold() = default;

void JobFold::apply(entries::Entry entry) {
  using namespace entries;
  if (seen_.empty()) seen_.reserve(usual_entries);
  if (seen_.empty() || seen_.back() < entry.order) {
    seen_.push_back(entry.order);
  } else {
    const auto place = std::lower_bound(seen_.begin(), seen_.end(), entry.order);
    if (*place == entry.order) return;
    seen_.insert(place, entry.order);
  }
  if (entry.refused != Refused::No) {
    ++refused_;
    return;
  }
  note_seen(entry);
  entry.payload.visit([&](auto& said) {
    using T = std::decay_t<decltype(said)>;
    if constexpr (std::is_same_v<T, CarOpened>) {
      opened_.write(entry, {}, Opened{said.body, said.drive});
    } else if constexpr (std::is_same_v<T, PlateSet>) {
      plate_.write(entry, std::move(said.replaces), std::move(said.plate));
    } else if constexpr (std::is_same_v<T, VinSet>) {
      vin_.write(entry, std::move(said.replaces), Vin{std::move(said.vin), said.passes});
    } else if constexpr (std::is_same_v<T, ColorSet>) {
      color_.write(entry, std::move(said.replaces), std::move(said.color));
    } else if constexpr (std::is_same_v<T, PromiseSet>) {
      promise_.write(entry, std::move(said.replaces), said.promised_ms);
    } else if constexpr (std::is_same_v<T, PanelPlanned>) {
      plans_.write(said.plan.panel, entry, std::move(said.replaces), said.plan);
    } else if constexpr (std::is_same_v<T, OperationPlanned>) {
      operations_.write(
          said.operation, entry, std::move(said.replaces),
          Operation{said.stage, std::move(said.title), said.estimate_min,
                    said.work.value_or(job::WorkKind::FirstTime), said.why.value_or(std::string()),
                    said.picture, said.approval.value_or(job::Approval::NotNeeded)});
    } else if constexpr (std::is_same_v<T, OperationDone>) {
      operations_done_.write(said.operation, entry, std::move(said.replaces), said.done);
    } else if constexpr (std::is_same_v<T, ClockAmended>) {
      const Hash target = said.target;
      auto replaces = std::move(said.replaces);
      amended_.write(target, entry, std::move(replaces), std::move(said));
    } else if constexpr (std::is_same_v<T, StageDone>) {
      stages_.write(said.stage, entry, std::move(said.replaces),
                    Done{said.done, said.without_shots, said.shots_missing});
    } else if constexpr (std::is_same_v<T, PictureTaken>) {
      const PictureId picture = said.picture;
      picture_places_.write(picture, entry, {}, said.place);
      pictures_.write(picture, entry, {}, std::move(said));
    } else if constexpr (std::is_same_v<T, PictureFiled>) {
      picture_places_.write(said.picture, entry, std::move(said.replaces), said.place);
    } else if constexpr (std::is_same_v<T, PictureNoted>) {
      const PictureNoteId note = said.note;
      auto replaces = std::move(said.replaces);
      picture_notes_.write(note, entry, std::move(replaces), std::move(said));
    } else if constexpr (std::is_same_v<T, EdgesLookedAt>) {
      edges_.write(said.picture, entry, std::move(said.replaces), std::move(said.finds));
    } else if constexpr (std::is_same_v<T, MarkPlaced>) {
      marks_.push_back({said.mark, entry.order, entry.hash, entry.person, entry.wall_ms, said.panel,
                        said.stage});
      places_.write(said.mark, entry, {}, Place{said.x_mm, said.y_mm});
      words_.write(said.mark, entry, {}, Words{said.defect, said.size, said.layer, said.look});
    } else if constexpr (std::is_same_v<T, MarkMoved>) {
      places_.write(said.mark, entry, std::move(said.replaces), Place{said.x_mm, said.y_mm});
    } else if constexpr (std::is_same_v<T, MarkDescribed>) {
      words_.write(said.mark, entry, std::move(said.replaces),
                   Words{said.defect, said.size, said.layer, said.look});
    } else if constexpr (std::is_same_v<T, MarkEnded>) {
      ends_.write(said.mark, entry, std::move(said.replaces), said.end);
    } else if constexpr (std::is_same_v<T, DirtAllOver>) {
      dirt_.write(said.panel, entry, std::move(said.replaces), said.dirt);
    } else if constexpr (std::is_same_v<T, VerdictGiven>) {
      verdicts_.write(said.panel, entry, std::move(said.replaces),
                      Verdict{said.verdict, said.edges_and_back});
    } else if constexpr (std::is_same_v<T, FilmRead>) {
      const ReadingId reading = said.reading;
      auto replaces = std::move(said.replaces);
      film_.write(reading, entry, std::move(replaces), std::move(said));
    } else if constexpr (std::is_same_v<T, BeforeCutAnswered>) {
      before_cut_.write(entry.person, entry, std::move(said.replaces), std::move(said.checks));
    } else if constexpr (std::is_same_v<T, CauseSet>) {
      cause_.write(entry, std::move(said.replaces), said.cause);
    } else if constexpr (std::is_same_v<T, RoundFinished>) {
      const RoundId id = said.id;
      rounds_.write(id, entry, {}, std::move(said));
    } else if constexpr (std::is_same_v<T, SprayedIn>) {
      booth_.write(entry, std::move(said.replaces), said.booth);
    } else if constexpr (std::is_same_v<T, ClockActed>) {
      if (clock_acts_.empty()) clock_acts_.reserve(usual_clock_acts);
      clock_acts_.push_back({act_kind(said.act), said.worker, said.operation, entry.wall_ms,
                             entry.boottime_ms, entry.boot, entry.order.hlc, entry.order.device,
                             entry.order.seq, entry.hash, said.happened_ms});
    } else if constexpr (std::is_same_v<T, ReleaseOffered>) {
      offers_.write(said.panel, entry, std::move(said.replaces),
                    Offer{said.release, said.to, said.rack});
    } else if constexpr (std::is_same_v<T, ReleaseAnswered>) {
      answers_.write(said.release, entry, std::move(said.replaces),
                     Answer{said.taken, std::move(said.reason), said.picture, said.taker});
    } else if constexpr (is_one_of<T, SprayStarted, SprayedWithout, Mixed, Coated, BakeLimitRead,
                                   BakeSaid, PanelTemperatureRead, ThumbnailChecked, Bonded,
                                   ClimateRead>) {
      air_.push_back(entry);
    } else if constexpr (is_one_of<T, CheckedIn, PartSaid, SubletSaid, WaitSaid, Signed, CameBack,
                                   CarDelivered, NoteWritten>) {
      visit_.push_back(entry);
    } else if constexpr (is_one_of<T, StepSaid, FitMeasured, FastenersMoved>) {
      assembly_.push_back(entry);
    } else if constexpr (std::is_same_v<T, Withdrawn>) {
      withdrawals_.add(entry.hash, said.target);
    } else if constexpr (std::is_same_v<T, UnknownEntry>) {
      unknown_.push_back(entry.hash);
    }
  });
}

void JobFold::note_seen(const entries::Entry& entry) {
  if (!entry.person) return;
  const auto place = std::lower_bound(
      last_by_.begin(), last_by_.end(), entry.person,
      [](const LastEntry& one, const PersonId& person) { return one.seen.person < person; });
  const LastEntry last{entry.order, {entry.person, entry.wall_ms, entry.boottime_ms, entry.boot}};
  if (place == last_by_.end() || place->seen.person != entry.person)
    last_by_.insert(place, last);
  else if (place->order < entry.order)
    *place = last;
}

ReleaseView JobFold::release_view(const Offers& offers, const Answers& all_answers) const {
  ReleaseView out;
  const auto heads = standing_heads(offers, withdrawals_);
  if (heads.empty()) return out;
  const auto& offer = *heads.back();
  out.state = ReleaseState::Offered;
  out.release = offer.value.release;
  out.giver = offer.person;
  out.to = offer.value.to;
  out.rack = offer.value.rack;
  out.wall_ms = offer.wall_ms;
  out.disputed = heads.size() > 1;
  out.offer_heads = hashes_of(heads);
  if (const auto& given = of_key(all_answers, offer.value.release); !given.empty()) {
    const auto answers = standing_heads(given, withdrawals_);
    out.answer_heads = hashes_of(answers);
    if (!answers.empty()) {
      const auto& answer = *answers.back();
      out.state = answer.value.taken ? ReleaseState::Taken : ReleaseState::Returned;
      out.taker = answer.value.taker.value_or(answer.person);
      out.reason = answer.value.reason;
      out.picture = answer.value.picture;
      out.wall_ms = answer.wall_ms;
      out.disputed = out.disputed || answers.size() > 1;
    }
  }
  if (out.disputed) out.takers = takers_of(heads, all_answers);
  return out;
}

// Who says that he has it: whoever took it, and of an offer that nobody took the giver.
std::vector<PersonId> JobFold::takers_of(const Offers& offers, const Answers& all_answers) const {
  std::vector<PersonId> out;
  const auto say = [&](const PersonId& person) {
    if (std::find(out.begin(), out.end(), person) == out.end()) out.push_back(person);
  };
  for (const auto* offer : offers) {
    const auto answers = standing_heads(of_key(all_answers, offer->value.release), withdrawals_);
    bool given_back = answers.empty();
    for (const auto* one : answers) {
      if (one->value.taken) say(one->value.taker.value_or(one->person));
      given_back = given_back || !one->value.taken;
    }
    if (given_back) say(offer->person);
  }
  return out;
}

CarView JobFold::view() const {
  CarView out;
  out.job = job_;
  out.entries = entries() - refused_;
  out.unknown_entries = static_cast<int>(unknown_.size());
  out.refused_entries = refused_;
  if (const auto opened = opened_.heads(withdrawals_); !opened.empty()) {
    out.opened = true;
    out.opened_ms = opened.front()->wall_ms;
    out.body = opened.front()->value.body;
    out.drive = opened.front()->value.drive;
  }
  view_labels(out);
  view_panels(out);
  view_correction(out);
  view_pictures(out);
  view_air(out);
  view_hours(out);
  view_visit(out);
  view_assembly(out);
  out.seen.reserve(last_by_.size());
  for (const auto& last : last_by_) out.seen.push_back(last.seen);
  return out;
}

}  // namespace jambline::folds
