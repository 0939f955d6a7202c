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
}  // namespace

void JobFold::apply(const entries::Entry& entry) {
  using namespace entries;
  const auto place = std::lower_bound(seen_.begin(), seen_.end(), entry.hash);
  if (place != seen_.end() && *place == entry.hash) return;
  seen_.insert(place, entry.hash);
  std::visit(
      [&](const auto& said) {
        using T = std::decay_t<decltype(said)>;
        if constexpr (std::is_same_v<T, CarOpened>) {
          opened_.write(entry, {}, Opened{said.body, said.drive});
        } else if constexpr (std::is_same_v<T, PlateSet>) {
          plate_.write(entry, said.replaces, said.plate);
        } else if constexpr (std::is_same_v<T, VinSet>) {
          vin_.write(entry, said.replaces, Vin{said.vin, said.passes});
        } else if constexpr (std::is_same_v<T, ColorSet>) {
          color_.write(entry, said.replaces, said.color);
        } else if constexpr (std::is_same_v<T, PromiseSet>) {
          promise_.write(entry, said.replaces, said.promised_ms);
        } else if constexpr (std::is_same_v<T, PanelPlanned>) {
          panels_[said.plan.panel].plan.write(entry, said.replaces, said.plan);
        } else if constexpr (std::is_same_v<T, OperationPlanned>) {
          operations_[said.operation].write(entry, said.replaces,
                                            Operation{said.stage, said.title, said.estimate_min});
        } else if constexpr (std::is_same_v<T, StageDone>) {
          stages_[said.stage].write(entry, said.replaces, said.done);
        } else if constexpr (std::is_same_v<T, CarDelivered>) {
          delivered_.write(entry, {}, said.open_points);
        } else if constexpr (std::is_same_v<T, MarkPlaced>) {
          Mark& mark = marks_[said.mark];
          if (mark.placed && !(entry.order < mark.order)) return;
          mark.placed = true;
          mark.order = entry.order;
          mark.hash = entry.hash;
          mark.by = entry.person;
          mark.wall_ms = entry.wall_ms;
          mark.panel = said.panel;
          mark.stage = said.stage;
          mark.place.write(entry, {}, Place{said.x_mm, said.y_mm});
          mark.words.write(entry, {}, Words{said.defect, said.size, said.layer});
        } else if constexpr (std::is_same_v<T, MarkMoved>) {
          marks_[said.mark].place.write(entry, said.replaces, Place{said.x_mm, said.y_mm});
        } else if constexpr (std::is_same_v<T, MarkDescribed>) {
          marks_[said.mark].words.write(entry, said.replaces,
                                        Words{said.defect, said.size, said.layer});
        } else if constexpr (std::is_same_v<T, DirtAllOver>) {
          panels_[said.panel].dirt.write(entry, said.replaces, said.dirt);
        } else if constexpr (std::is_same_v<T, VerdictGiven>) {
          panels_[said.panel].verdict.write(entry, said.replaces,
                                            Verdict{said.verdict, said.edges_and_back});
        } else if constexpr (std::is_same_v<T, ClockActed>) {
          clock_acts_.push_back({act_kind(said.act), said.worker, said.operation, entry.wall_ms,
                                 entry.boottime_ms, entry.boot, entry.order.hlc, entry.order.device,
                                 entry.order.seq, entry.hash});
        } else if constexpr (std::is_same_v<T, ReleaseOffered>) {
          Heads<Offer>& offers = said.panel ? panels_[*said.panel].release : car_release_;
          offers.write(entry, said.replaces, Offer{said.release, said.to, said.rack});
        } else if constexpr (std::is_same_v<T, ReleaseAnswered>) {
          answers_[said.release].write(entry, said.replaces, Answer{said.taken, said.reason});
        } else if constexpr (std::is_same_v<T, Withdrawn>) {
          withdrawals_.add(entry.hash, said.target);
        } else if constexpr (std::is_same_v<T, UnknownEntry>) {
          unknown_.push_back(entry.hash);
        }
      },
      entry.payload);
}

ReleaseView JobFold::release_view(const Heads<Offer>& offers) const {
  ReleaseView out;
  const auto heads = offers.heads(withdrawals_);
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
  if (const auto found = answers_.find(offer.value.release); found != answers_.end()) {
    const auto answers = found->second.heads(withdrawals_);
    out.answer_heads = hashes_of(answers);
    if (!answers.empty()) {
      const auto& answer = *answers.back();
      out.state = answer.value.taken ? ReleaseState::Taken : ReleaseState::Returned;
      out.taker = answer.person;
      out.reason = answer.value.reason;
      out.wall_ms = answer.wall_ms;
      out.disputed = out.disputed || answers.size() > 1;
    }
  }
  return out;
}

CarView JobFold::view() const {
  CarView out;
  out.job = job_;
  out.entries = entries();
  out.unknown_entries = static_cast<int>(unknown_.size());
  if (const auto opened = opened_.heads(withdrawals_); !opened.empty()) {
    out.opened = true;
    out.opened_ms = opened.front()->wall_ms;
    out.body = opened.front()->value.body;
    out.drive = opened.front()->value.drive;
  }
  if (const auto delivered = delivered_.heads(withdrawals_); !delivered.empty())
    out.delivered_ms = delivered.front()->wall_ms;
  view_labels(out);
  view_panels(out);
  view_hours(out);
  out.car_release = release_view(car_release_);
  return out;
}

}  // namespace jambline::folds
