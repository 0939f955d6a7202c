#include "engine/integrity.h"

#include <algorithm>
#include <map>

#include "base/json.h"
#include "entries/shop_kinds.h"

namespace jambline::engine {

namespace {
constexpr std::uint64_t entries_between_looks = 4096;
constexpr double audit_part = 0.8;  // of the progress: signatures cost most

class Looking {
 public:
  Looking(const seal::Members& members, const std::vector<seal::Receipt>& receipts)
      : members_(members) {
    for (const auto& receipt : receipts) {
      if (!seal::verify(receipt) || !members.hubs().contains(receipt.hub)) continue;
      auto& at = received_[receipt.device][receipt.seq];
      if (at == nullptr || receipt.received_ms < at->received_ms) at = &receipt;
    }
  }

  void look(const log::Said& said) {
    const auto& header = said.header;
    std::uint64_t& last = last_[header.device];
    if (header.seq > last + 1) {
      Finding gap = of(FindingKind::Gap, said);
      gap.seq_first = last + 1;
      gap.seq_last = header.seq - 1;
      put(gap);
    }
    last = std::max(last, header.seq);
    clock(said);
    if (said.erased) put(of(FindingKind::Erased, said));
    if (const Status may = members_.may(header.device, header.seq, said.hash);
        !may && may.error().code == Code::Revoked)
      put(of(FindingKind::Quarantined, said));
    if (header.kind == entries::WorkTakenOver::kind) taken_over(said);
    late(said);
  }

  void give(Integrity& out) {
    for (auto& [kind, found] : found_)
      std::move(found.begin(), found.end(), std::back_inserter(out.findings));
    out.counts = counts_;
    for (const auto& head : out.audit.heads) {
      Proven proven{head.device, {}, head.seq, {}};
      if (const auto* member = members_.find(head.device)) proven.name = member->name;
      const auto of_device = received_.find(head.device);
      if (of_device != received_.end() && !of_device->second.empty()) {
        const auto& receipt = *of_device->second.rbegin()->second;
        proven.hub =
            Proven::ByHub{members_.hubs().at(receipt.hub), receipt.seq, receipt.received_ms};
      }
      out.proven.push_back(std::move(proven));
    }
  }

 private:
  static Finding of(FindingKind kind, const log::Said& said) {
    const auto& header = said.header;
    return {kind,           header.device,  header.seq, header.seq, said.hash,
            header.subject, header.wall_ms, 0,          {}};
  }

  // Goes on with the last finding where it is the next entry of the same.
  void put(Finding finding) {
    auto& found = found_[finding.kind];
    auto& open = open_[{finding.kind, finding.device}];
    const bool same = open && open->seq_last + 1 == finding.seq_first &&
                      open->received_ms == finding.received_ms && open->from == finding.from &&
                      finding.kind != FindingKind::Forked && finding.kind != FindingKind::TakenOver;
    if (same) {
      open->seq_last = finding.seq_last;
      if (open->place < found.size()) found[open->place].seq_last = finding.seq_last;
      return;
    }
    ++counts_[static_cast<std::size_t>(finding.kind)];
    open = Open{finding.seq_last, finding.received_ms, finding.from, most_findings};
    if (found.size() >= most_findings) return;
    open->place = found.size();
    found.push_back(finding);
  }

  void clock(const log::Said& said) {
    const auto flags = said.header.clock_flags;
    if (flags & seal::clock_flag::before_2025) put(of(FindingKind::ClockBefore2025, said));
    if (flags & seal::clock_flag::stepped_back) put(of(FindingKind::ClockSteppedBack, said));
    if (flags & seal::clock_flag::jumped) put(of(FindingKind::ClockJumped, said));
  }

  void taken_over(const log::Said& said) {
    const auto read = from_json<entries::WorkTakenOver>(said.payload);
    if (!read) return;
    Finding finding = of(read->why == entries::TakenOverWhy::CopiedFolder ? FindingKind::Forked
                                                                          : FindingKind::TakenOver,
                         said);
    finding.from = read->from;
    finding.seq_last = finding.seq_first + read->origins.size();
    put(finding);
  }

  void late(const log::Said& said) {
    const auto of_device = received_.find(said.header.device);
    if (of_device == received_.end()) return;
    const auto receipt = of_device->second.lower_bound(said.header.seq);
    if (receipt == of_device->second.end()) return;
    const std::int64_t received_ms = receipt->second->received_ms;
    if (received_ms - said.header.wall_ms <= late_ms) return;
    Finding finding = of(FindingKind::Late, said);
    finding.received_ms = received_ms;
    put(finding);
  }

  struct Open {
    std::uint64_t seq_last;
    std::int64_t received_ms;
    std::optional<DeviceId> from;
    std::size_t place;
  };
  const seal::Members& members_;
  std::map<DeviceId, std::map<std::uint64_t, const seal::Receipt*>> received_;
  std::map<DeviceId, std::uint64_t> last_;
  std::map<FindingKind, std::vector<Finding>> found_;
  std::map<std::pair<FindingKind, DeviceId>, std::optional<Open>> open_;
  std::array<std::uint64_t, finding_kinds> counts_{};
};
}  // namespace

Result<Integrity> check_integrity(const std::filesystem::path& folder, const std::stop_token& stop,
                                  const std::function<void(double part_done)>& progress) {
  Integrity out;
  const auto audit_progress = [&](double part_done) {
    if (progress) progress(part_done * audit_part);
  };
  JAMBLINE_ASSIGN(out.audit, log::EntryLog::audit(folder, stop, audit_progress));
  auto opened = log::EntryLog::open(folder, log::OpenMode::ReadOnly);
  if (!opened) {
    out.stopped_at = opened.error();
    return out;
  }
  log::EntryLog& log = **opened;
  JAMBLINE_ASSIGN(const auto receipts, log.receipts());
  Looking looking(log.members(), receipts);
  const auto all = static_cast<double>(std::max<log::Arrival>(log.last_arrival(), 1));
  std::uint64_t done = 0;
  const Status read = log.said_after(0, [&](const log::Said& said) {
    if (done++ % entries_between_looks == 0) {
      if (stop.stop_requested()) return false;
      if (progress)
        progress(audit_part + (1 - audit_part) * static_cast<double>(said.arrival) / all);
    }
    looking.look(said);
    return true;
  });
  if (stop.stop_requested()) return fail(Code::Stopped, "check", "log.db");
  if (!read) out.stopped_at = read.error();
  looking.give(out);
  if (progress) progress(1);
  return out;
}

}  // namespace jambline::engine
