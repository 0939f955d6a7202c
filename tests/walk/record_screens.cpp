#include "record_screens.h"

#include "acts.h"
#include "item.h"
#include "rules.h"
#include "screens/history_view_model.h"
#include "screens/record_view_model.h"

namespace jambline::walk {

namespace {
using Record = screens::RecordViewModel;

// The record with nothing typed, chosen or open beside it.
Record* record(Shop& shop) {
  auto* record = model<Record>(shop, "record");
  if (!record || !place(shop, "Record", "None")) return nullptr;
  settle_until(shop, [&] { return record->loaded(); });
  record->filter()->clear();
  record->car()->choose({});
  settle_until(shop, [&] { return !record->searching(); });
  settle(shop.window());
  return record;
}

bool answered(Shop& shop, Record& record) {
  settle_until(shop, [&] { return !record.searching(); });
  settle(shop.window());
  return !record.searching();
}

bool found(Shop& shop, const QString& words) {
  auto* all = record(shop);
  if (!all) return false;
  all->set_search(words);
  return answered(shop, *all);
}

bool asks(Shop& shop) {
  auto* all = record(shop);
  if (!all) return false;
  all->filter()->choose(QStringLiteral("where"), 1);
  all->filter()->choose(QStringLiteral("opened"), 4);
  all->filter()->choose(QStringLiteral("late"), 0);
  return answered(shop, *all);
}

bool choices(Shop& shop, const char* word) {
  return record(shop) && press(shop, word);
}

// One kept question that is asked and one that is not.
bool kept_question(Shop& shop) {
  auto* all = record(shop);
  if (!all) return false;
  auto* filter = all->filter();
  if (filter->keptCount() == 0) {
    filter->choose(QStringLiteral("late"), 0);
    filter->keep(QStringLiteral("Late cars"));
    filter->choose(QStringLiteral("spray override"), 0);
    filter->keep(QStringLiteral("Late, and sprayed against a check"));
  }
  filter->open(QStringLiteral("Late cars"));
  return answered(shop, *all);
}

bool chosen(Shop& shop) {
  auto* all = record(shop);
  if (!all) return false;
  if (all->rowCount() == 0) return true;
  all->car()->choose(shop.usual_car().isEmpty() ? all->jobIdAt(0) : shop.usual_car());
  settle_until(shop, [&] { return all->car()->loaded(); });
  settle(shop.window());
  return all->car()->loaded();
}

screens::HistoryViewModel* history(Shop& shop) {
  auto* history = model<screens::HistoryViewModel>(shop, "history");
  if (!history || !place(shop, "Floor", "History")) return nullptr;
  settle_until(shop, [&] { return history->settled(); });
  settle(shop.window());
  return history;
}

bool history_at(Shop& shop, double part) {
  auto* shown = history(shop);
  if (!shown) return false;
  shown->step(static_cast<int>(shown->count() * part) - shown->place());
  settle_until(shop, [&] { return shown->settled(); });
  settle(shop.window());
  return true;
}

bool history_entry(Shop& shop) {
  auto* shown = history(shop);
  if (!shown) return false;
  auto* line = shown->timeLine();
  line->open(shown->data(shown->index(0, 0), screens::TimeLineViewModel::EntryIdRole).toString());
  settle_until(shop, [&] { return line->rawRead(); });
  settle(shop.window());
  return line->rawRead();
}

bool checked(Shop& shop, screens::IntegrityViewModel::Check check) {
  auto* all = record(shop);
  if (!all) return false;
  auto* integrity = all->integrity();
  const std::filesystem::path folder = shop.folder();
  integrity->check_by(
      check ? std::move(check)
            : [folder](const std::stop_token& stop, const std::function<void(double)>& progress) {
                return engine::check_integrity(folder, stop, progress);
              });
  if (!press_check(shop)) return false;
  integrity->start();
  settle_until(shop, [&] { return integrity->state() != screens::IntegrityViewModel::Running; });
  settle(shop.window());
  return integrity->state() != screens::IntegrityViewModel::Running;
}

// Every kind of finding, and an entry that is bad where `bad` is.
bool told(Shop& shop, bool bad) {
  engine::Integrity found;
  const DeviceId device{{7}};
  found.audit.entries = 1204;
  found.audit.heads = {{device, 1204, {}}};
  found.proven = {
      {device, "tablet 2", 1204, engine::Proven::ByHub{"office", 1180, 1'789'900'000'000}}};
  for (std::size_t i = 0; i < engine::finding_kinds; ++i) {
    engine::Finding one{static_cast<engine::FindingKind>(i)};
    one.device = device;
    one.seq_first = 100 * i + 1;
    one.seq_last = one.seq_first + i;
    one.wall_ms = 1'789'800'000'000;
    one.received_ms = one.kind == engine::FindingKind::Late ? 1'789'990'000'000 : 0;
    if (one.kind == engine::FindingKind::Forked) one.from = DeviceId{{9}};
    found.findings.push_back(one);
    found.counts[i] = i + 1;
  }
  if (bad)
    found.audit.first_bad = Error{Code::BadSignature, "check", "entry", {}}
                                .with("device", device.hex())
                                .with("seq", "1205");
  return checked(shop, [found](const std::stop_token&, const std::function<void(double)>&) {
    return Result<engine::Integrity>(found);
  });
}
}  // namespace

bool press_check(Shop& shop) {
  return press(shop, "recordCheck") || (press(shop, "questionsFold") && press(shop, "recordCheck"));
}

std::vector<Screen> record_screens() {
  return {
      {"record-found", false, [](Shop& shop) { return found(shop, QStringLiteral("nib")); }},
      {"record-nothing", false,
       [](Shop& shop) { return found(shop, QString(10'000, QChar('x'))); }},
      {"record-asks", false, asks},
      {"record-choices", false, [](Shop& shop) { return choices(shop, "word_opened"); }},
      {"record-adds", false, [](Shop& shop) { return choices(shop, "word_add"); }},
      {"record-kept", false, kept_question},
      {"record-name", false,
       [](Shop& shop) { return asks(shop) && (press(shop, "keptKeep") || true); }},
      {"record-chosen", true, chosen},
      {"history", true, [](Shop& shop) { return history(shop) != nullptr; }},
      {"history-early", true, [](Shop& shop) { return history_at(shop, 0.4); }},
      {"history-entry", true, history_entry},
      {"integrity-sound", false, [](Shop& shop) { return checked(shop, {}); }},
      {"integrity-told", false, [](Shop& shop) { return told(shop, false); }},
      {"integrity-bad", false, [](Shop& shop) { return told(shop, true); }},
  };
}

}  // namespace jambline::walk
