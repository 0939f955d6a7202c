#include "app/papers/job_report_words.h"

#include <algorithm>
#include <array>
#include <set>

#include "app/papers/report_telling.h"
#include "screens/picture_rows.h"
#include "screens/picture_words.h"
#include "screens/text.h"
#include "screens/words.h"
#include "seal/fingerprint.h"

namespace jambline::app {

namespace {
using screens::text;
using screens::words_of;

constexpr qsizetype hash_signs = 16;

QString color_words(const job::Color& color) {
  const QString name = text(color.name);
  if (color.code.empty()) return name;
  return name.isEmpty() ? text(color.code) : report_tr("%1, code %2").arg(name, text(color.code));
}

QString car_title(const folds::CarView& car) {
  if (!car.plate.empty()) return text(car.plate);
  return car.vin.empty() ? report_tr("a car without a plate") : text(car.vin);
}

report::ReportFacts title_facts(const ReportTelling& tell, const ReportSource& source,
                                const ReportProof& proof) {
  const auto& car = tell.car;
  report::ReportFacts out;
  fact(out, report_tr("Plate"), text(car.plate));
  fact(out, report_tr("VIN"),
       car.vin.empty() || car.vin_passes
           ? text(car.vin)
           : report_tr("%1, its check digit does not fit").arg(text(car.vin)));
  fact(out, report_tr("Color"), color_words(car.color));
  fact(out, report_tr("Body"), report_tr("%1, %2").arg(words_of(car.body), words_of(car.drive)));
  fact(out, report_tr("Opened"), tell.when(car.opened_ms));
  fact(out, report_tr("Promised"), car.promised_ms ? tell.when(*car.promised_ms) : QString());
  fact(out, report_tr("Delivered"),
       car.delivered_ms ? tell.when(*car.delivered_ms) : report_tr("not yet"));
  fact(out, report_tr("Made"), report_tr("%1 (%2)").arg(tell.when(tell.now.wall_ms), tell.zone));
  fact(out, report_tr("Made by"),
       source.made_by ? tell.who(source.made_by) : report_tr("jambline-record"));
  fact(out, report_tr("Job"), text(car.job.hex()));
  fact(out, report_tr("Shop's fingerprint"), text(seal::fingerprint(proof.shop)));
  for (const auto& one : car.conflicts) {
    QStringList others;
    for (const auto& other : one.others) others << text(other);
    fact(out, report_tr("Disputed"),
         report_tr("%1: %2 stands too").arg(text(one.label), others.join(QStringLiteral(", "))));
  }
  return out;
}

QStringList left_out(const ReportChoice& choice) {
  QStringList out;
  if (!choice.hours)
    out << report_tr(
        "Without hours: estimates, clocked hours, waits and what was put right in "
        "them are left out.");
  if (!choice.names)
    out << report_tr(
        "Without names: people are named by their role and a number. Notes, complaints, reasons "
        "in own words, firms, signatures and words on pictures are left out.");
  if (!choice.pictures) out << report_tr("Without pictures.");
  return out;
}

QString refused_count(const ReportTelling& tell) {
  QStringList out;
  if (tell.car.refused_entries > 0)
    out << report_tr("%1 of them are refused and not obeyed").arg(tell.car.refused_entries);
  if (tell.car.unknown_entries > 0)
    out << report_tr("%1 are of a newer version and not shown").arg(tell.car.unknown_entries);
  return out.isEmpty() ? QString() : report_tr("; ") + out.join(report_tr("; "));
}
}  // namespace

Section pictures_section(const ReportTelling& tell) {
  Section out{report_tr("Pictures"), {}};
  if (!tell.choice.pictures || tell.car.pictures.empty()) return out;
  report::ReportPictures block;
  block.small_copy = report_tr("small copy");
  block.not_here = report_tr("The picture is not on the device where this was made.");
  block.damaged = report_tr("The picture is damaged here: its bytes are not those that were kept.");
  const screens::PictureTelling telling{tell.car, tell.shop, tell.zone, tell.now.wall_ms};
  for (const auto* one : screens::pictures_by_stage(tell.car)) {
    QStringList words{tell.who_when(one->by, one->wall_ms)};
    if (const QString poor = screens::poor_words(*one); !poor.isEmpty()) words << poor;
    if (one->edges) words << report_tr("edges: %1").arg(screens::edges_words(one->edges->finds));
    for (const auto& note : one->notes)
      if (const QString said = tell.own_words(note.drawn.text); !said.isEmpty()) words << said;
    words << report_tr("file %1").arg(text(one->facts.file.hex()).left(hash_signs));
    block.pictures.push_back({one->facts.file, one->facts.preview,
                              report_tr("%1: %2").arg(screens::sentence(words_of(one->place.stage)),
                                                      screens::title_of(*one, telling)),
                              words.join(screens::dot)});
  }
  out.blocks.emplace_back(std::move(block));
  return out;
}

Section proof_section(const ReportTelling& tell, const ReportProof& proof) {
  Section out{report_tr("How to check this"), {}};
  say(out,
      report_tr("This report is for reading and proves nothing by itself. Each act in it is an "
                "entry that a device of the shop signed, chained to the entry before. Ask the "
                "shop for the evidence bundle of this job: it holds the entries themselves and "
                "a small program that checks them without this shop and without Jambline. Ask "
                "for the fingerprint by another way than this paper, and compare."));
  report::ReportFacts facts;
  fact(facts, report_tr("Shop's fingerprint"), text(seal::fingerprint(proof.shop)));
  fact(facts, report_tr("Entries of this job"),
       QString::number(tell.entries.size()) + refused_count(tell));
  std::set<DeviceId> devices;
  for (const auto& entry : tell.entries) devices.insert(entry.order.device);
  if (proof.audit) {
    for (const auto& head : proof.audit->heads)
      if (devices.count(head.device) > 0)
        fact(facts, report_tr("Device %1").arg(text(head.device.hex()).left(8)),
             report_tr("proven up to entry %1 when this was made").arg(head.seq));
    if (const auto& bad = proof.audit->first_bad)
      fact(facts, report_tr("Not in order"),
           report_tr("%1 Entry %2 of device %3 is the first bad one; nothing is said about what "
                     "comes after it.")
               .arg(words_of(*bad).what, text(bad->arg("seq")), text(bad->arg("device")).left(8)));
  } else {
    fact(facts, report_tr("Not checked"), words_of(proof.audit.error()).what);
  }
  fact(facts, report_tr("Last receipt"),
       proof.last_receipt ? report_tr("the shop's hub had entry %1 of device %2 on %3")
                                .arg(proof.last_receipt->seq)
                                .arg(text(proof.last_receipt->device.hex()).left(8),
                                     tell.when(proof.last_receipt->received_ms))
                          : report_tr("none: no hub has said that it has entries of this job"));
  add(out, std::move(facts));
  return out;
}

report::JobReport job_report(const ReportSource& source, const ReportProof& proof,
                             const ReportChoice& choice) {
  const ReportTelling tell(source, choice);
  report::JobReport out;
  out.shop = text(source.shop.name);
  out.title = report_tr("Job report");
  out.subtitle = QStringList{car_title(source.car), color_words(source.car.color)}.join(
      source.car.color.name.empty() && source.car.color.code.empty() ? QString() : screens::dot);
  out.facts = title_facts(tell, source, proof);
  out.left_out = left_out(choice);
  for (auto& section :
       std::array{work_section(tell), amendments_section(tell), panels_section(tell),
                  film_section(tell), spray_section(tell), cure_section(tell), fit_section(tell),
                  checks_section(tell), releases_section(tell), notes_section(tell),
                  pictures_section(tell), proof_section(tell, proof)})
    if (!section.blocks.empty()) out.sections.push_back(std::move(section));
  out.running_head = report_tr("Job report, %1, %2").arg(car_title(source.car), out.shop);
  out.foot =
      report_tr("Made %1 (%2)%3. Shop %4")
          .arg(tell.when(source.now.wall_ms), source.zone,
               source.made_by ? report_tr(" by %1").arg(tell.who(source.made_by)) : QString(),
               text(seal::fingerprint(proof.shop)));
  out.page_words = report_tr("%1 of %2");
  out.family = QStringLiteral("B612");
  out.page = choice.page;
  return out;
}

}  // namespace jambline::app
