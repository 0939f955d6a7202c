#include "screens/act_words.h"

#include <QCoreApplication>
#include <algorithm>

#include "screens/air_words.h"
#include "screens/correct_words.h"
#include "screens/picture_words.h"
#include "screens/retention_words.h"
#include "screens/state_kind.h"
#include "screens/text.h"
#include "screens/visit_words.h"
#include "screens/words.h"

namespace jambline::screens {

namespace {
QString act_tr(const char* words) {
  return QCoreApplication::translate("acts", words);
}
ActWords plain(const QString& done, const QString& taken_back, StateKind kind = StateKind::Done) {
  return {done, taken_back, shape_of(kind), true};
}
ActWords final_act(const QString& done, StateKind kind = StateKind::Done) {
  return {done, {}, shape_of(kind), false};
}

struct Teller {
  const engine::LastAct& act;
  const folds::CarView* car;
  const folds::ShopView& shop;

  QString name(const PersonId& person) const {
    const auto* one = shop.find(person);
    return one && !one->name.empty() ? text(one->name) : act_tr("someone");
  }
  QString panel(job::Panel of) const {
    return sentence(words_of(of, car ? car->body : job::BodyShape::FourDoorSedan));
  }
  QString operation(const OperationId& of) const {
    const auto* one = car ? car->find(of) : nullptr;
    if (!one) return act_tr("clock");
    return one->title.empty() ? words_of(one->stage) : text(one->title);
  }
  QString booth(const BoothId& of) const {
    const auto* one = shop.find(of);
    return one ? text(one->name) : act_tr("a booth");
  }
  const folds::MarkView* placed_mark() const {
    if (!car) return nullptr;
    for (const auto& panel_view : car->panels)
      for (const auto& mark : panel_view.marks)
        for (const auto& entry : act.entries)
          if (entry.second == mark.placed) return &mark;
    return nullptr;
  }
  const folds::MarkView* find(const MarkId& of) const {
    if (!car) return nullptr;
    for (const auto& panel_view : car->panels)
      for (const auto& mark : panel_view.marks)
        if (mark.mark == of) return &mark;
    return nullptr;
  }
  QString mark_name(const folds::MarkView* mark) const {
    if (!mark) return act_tr("Mark");
    return sentence(words_of(mark->defect)) + QChar(' ') + QString::number(mark->number);
  }

  ActWords operator()(const acts::NameShop&) const { return final_act(act_tr("Shop named")); }
  ActWords operator()(const acts::AddPerson& one) const {
    return final_act(act_tr("%1 added").arg(text(one.name)));
  }
  ActWords operator()(const acts::RenamePerson& one) const {
    return final_act(act_tr("Name changed to %1").arg(text(one.name)));
  }
  ActWords operator()(const acts::ChangeRole& one) const {
    return final_act(act_tr("%1 is now %2").arg(name(one.person), words_of(one.role)));
  }
  ActWords operator()(const acts::LetPersonGo& one) const {
    return final_act(act_tr("%1 has left the shop").arg(name(one.person)));
  }
  ActWords operator()(const acts::NameDevice& one) const {
    return plain(act_tr("Device is now %1").arg(text(one.name)),
                 act_tr("Device is called as before"));
  }
  ActWords operator()(const acts::AddRack& one) const {
    return final_act(act_tr("Rack %1 added").arg(text(one.name)));
  }
  ActWords operator()(const acts::AddBooth& one) const {
    return plain(act_tr("Booth %1 added").arg(text(one.name)),
                 act_tr("Booth %1 taken back").arg(text(one.name)));
  }
  ActWords operator()(const acts::ChangeBooth& one) const {
    return plain(act_tr("Booth is now %1, %2").arg(text(one.name), words_of(one.kind)),
                 act_tr("Booth is as before"));
  }
  ActWords operator()(const acts::LogBoothEvent& one) const {
    return plain(act_tr("%1: %2").arg(sentence(booth(one.booth)), words_of(one.what)),
                 act_tr("%1: taken back").arg(sentence(words_of(one.what))));
  }
  ActWords operator()(const acts::CorrectBoothEvent& one) const {
    return plain(act_tr("Corrected: %1").arg(words_of(one.what)), act_tr("As it was before"));
  }
  ActWords operator()(const acts::OpenCar& one) const {
    return final_act(act_tr("%1 opened").arg(text(one.plate.empty() ? one.vin : one.plate)));
  }
  ActWords operator()(const acts::SetPlate& one) const {
    return plain(act_tr("Plate set to %1").arg(text(one.plate)), act_tr("Plate is as before"));
  }
  ActWords operator()(const acts::SetVin&) const {
    return plain(act_tr("VIN set"), act_tr("VIN is as before"));
  }
  ActWords operator()(const acts::SetColor& one) const {
    return plain(act_tr("Color set to %1").arg(text(one.color.name)), act_tr("Color is as before"));
  }
  ActWords operator()(const acts::SetPromise&) const {
    return plain(act_tr("Promise set"), act_tr("Promise is as before"));
  }
  ActWords operator()(const acts::PlanPanel& one) const {
    return plain(act_tr("%1 planned").arg(panel(one.plan.panel)),
                 act_tr("%1 is as before").arg(panel(one.plan.panel)));
  }
  ActWords operator()(const acts::SayBooth& one) const {
    return plain(act_tr("Sprayed in %1").arg(booth(one.booth)), act_tr("Booth is as before"));
  }
  ActWords operator()(const acts::PlanOperation& one) const {
    const QString what = one.operation.title.empty() ? sentence(words_of(one.operation.stage))
                                                     : text(one.operation.title);
    return plain(act_tr("%1 planned").arg(what), act_tr("%1 taken back").arg(what));
  }
  ActWords operator()(const acts::ChangeEstimate& one) const {
    const QString what = sentence(operation(one.operation));
    return plain(act_tr("%1: hours changed").arg(what), act_tr("%1: hours as before").arg(what));
  }
  ActWords operator()(const acts::FinishStage& one) const {
    const QString what = sentence(words_of(one.stage));
    const bool clock_too = act.entries.size() > 1;
    return plain(!one.done   ? act_tr("%1 open again").arg(what)
                 : clock_too ? act_tr("%1 done, clock stopped").arg(what)
                             : act_tr("%1 done").arg(what),
                 clock_too ? act_tr("%1 is as before, clock runs").arg(what)
                           : act_tr("%1 is as before").arg(what));
  }
  ActWords operator()(const acts::WriteNote&) const {
    return plain(act_tr("Note written"), act_tr("Note taken back"));
  }
  ActWords operator()(const acts::Deliver&) const {
    return plain(act_tr("Car delivered"), act_tr("Delivery taken back"));
  }
  ActWords operator()(const acts::PlaceMark& one) const {
    const auto* mark = placed_mark();
    const QString what = mark ? mark_name(mark) : sentence(words_of(one.defect));
    return plain(act_tr("%1 placed").arg(what), act_tr("%1 taken back").arg(what), StateKind::Ring);
  }
  ActWords operator()(const acts::MoveMark& one) const {
    const QString what = mark_name(find(one.mark));
    return plain(act_tr("%1 moved").arg(what), act_tr("%1 is back in its place").arg(what),
                 StateKind::Ring);
  }
  ActWords operator()(const acts::DescribeMark& one) const {
    const QString what = mark_name(find(one.mark));
    return plain(act_tr("%1 described").arg(what), act_tr("%1 is as before").arg(what),
                 StateKind::Ring);
  }
  ActWords operator()(const acts::WithdrawMark&) const {
    return plain(act_tr("Mark taken away"), act_tr("Mark stands again"), StateKind::Ring);
  }
  ActWords operator()(const acts::SayDirtAllOver& one) const {
    const QString what = panel(one.panel);
    if (one.dirt == job::DirtClass::None)
      return plain(act_tr("%1: no dirt all over").arg(what), act_tr("%1 is as before").arg(what));
    return plain(act_tr("%1: dirt all over, %2").arg(what, words_of(one.dirt)),
                 act_tr("%1 is as before").arg(what), StateKind::Ring);
  }
  ActWords operator()(const acts::GiveVerdict& one) const {
    const StateKind kind = one.verdict == job::Verdict::Clean       ? StateKind::Done
                           : one.verdict == job::Verdict::ToCorrect ? StateKind::Ring
                           : one.verdict == job::Verdict::Redo      ? StateKind::Respray
                                                                    : StateKind::Waits;
    return plain(act_tr("%1: %2").arg(panel(one.panel), words_of(one.verdict)),
                 act_tr("%1: verdict taken back").arg(panel(one.panel)), kind);
  }
  ActWords operator()(const acts::SetCause& one) const {
    return plain(one.cause ? act_tr("What threw it: %1").arg(words_of(*one.cause))
                           : act_tr("What threw it: left open"),
                 act_tr("What threw it is as before"));
  }
  ActWords operator()(const acts::ReadFilm& one) const {
    return plain(act_tr("%1: %2").arg(panel(one.panel), readings_words(one.typed, one.unit)),
                 act_tr("%1: reading taken back").arg(panel(one.panel)));
  }
  ActWords operator()(const acts::AnswerBeforeCut&) const {
    return plain(act_tr("Checked before cutting"), act_tr("Check taken back"));
  }
  ActWords operator()(const acts::FinishRound& one) const {
    const QString what = act_tr("%1: %2").arg(panel(one.panel), words_of(one.round));
    return plain(one.how == job::RoundHow::Skipped ? act_tr("%1 skipped").arg(what)
                                                   : act_tr("%1 done").arg(what),
                 act_tr("%1 taken back").arg(what));
  }
  ActWords operator()(const acts::EndMark& one) const {
    const QString what = mark_name(find(one.mark));
    const StateKind kind = one.end == job::MarkEnd::Gone       ? StateKind::Done
                           : one.end == job::MarkEnd::CameBack ? StateKind::Ring
                                                               : StateKind::Respray;
    return plain(one.end == job::MarkEnd::BurnThrough
                     ? act_tr("%1: burn-through, panel to redo").arg(what)
                     : act_tr("%1: %2").arg(what, words_of(one.end)),
                 act_tr("%1 is as before").arg(what), kind);
  }
  ActWords operator()(const acts::TakePicture& one) const {
    const QString what = one.place.panel
                             ? act_tr("Picture of %1").arg(panel(*one.place.panel).toLower())
                             : act_tr("Picture, %1").arg(words_of(one.place.stage));
    return plain(act_tr("%1 kept").arg(what), act_tr("%1 taken back").arg(what));
  }
  ActWords operator()(const acts::FilePicture& one) const {
    return plain(act_tr("Picture moved to %1").arg(words_of(one.place.stage)),
                 act_tr("Picture is where it was"));
  }
  ActWords operator()(const acts::NotePicture& one) const {
    const QString what = sentence(words_of(one.drawn.shape));
    return plain(act_tr("%1 drawn").arg(what), act_tr("%1 taken back").arg(what));
  }
  ActWords operator()(const acts::CheckEdges& one) const {
    return plain(act_tr("Edges: %1").arg(edges_words(one.finds)), act_tr("Edges as before"),
                 one.finds.empty() ? StateKind::Done : StateKind::Ring);
  }
  ActWords operator()(const acts::SetShotList& one) const {
    return plain(act_tr("Shots of %1 set").arg(words_of(one.stage)), act_tr("Shots as before"));
  }
  ActWords operator()(const acts::SetBoothFacts& one) const {
    return plain(act_tr("%1: facts set").arg(booth(one.booth)),
                 act_tr("%1: facts as before").arg(booth(one.booth)));
  }
  ActWords operator()(const acts::ReadBooth& one) const {
    const QString what = act_tr("%1: %2").arg(booth(one.booth), words_of(one.what));
    return plain(act_tr("%1 logged").arg(what), act_tr("%1 taken back").arg(what));
  }
  ActWords operator()(const acts::StartSpray& one) const {
    return final_act(act_tr("Spraying in %1").arg(booth(one.booth)), StateKind::Running);
  }
  ActWords operator()(const acts::GunDown& one) const {
    return final_act(act_tr("Gun down in %1, clearance counts").arg(booth(one.booth)),
                     StateKind::Waits);
  }
  ActWords operator()(const acts::SayExhaust& one) const {
    return final_act(
        act_tr("%1: %2").arg(booth(one.booth), words_of(one.what)),
        one.what == job::BoothWord::FreshAirDoorsShut ? StateKind::Running : StateKind::Waits);
  }
  ActWords operator()(const acts::LogClearanceOver& one) const {
    return final_act(act_tr("%1: clearance time is over").arg(booth(one.booth)));
  }
  ActWords operator()(const acts::ReportSprayedWithout&) const {
    return final_act(act_tr("Reported: it was sprayed without"), StateKind::Must);
  }
  ActWords operator()(const acts::SetRespirator& one) const {
    return plain(act_tr("%1 kept").arg(text(one.said.model)),
                 act_tr("%1 as before").arg(text(one.said.model)));
  }
  ActWords operator()(const acts::RecordFitTest& one) const {
    return plain(act_tr("Fit test of %1 kept").arg(name(one.person)),
                 act_tr("Fit test taken back"));
  }
  ActWords operator()(const acts::ChangeCartridge& one) const {
    return plain(act_tr("Cartridge of %1 changed").arg(name(one.person)),
                 act_tr("Cartridge as before"));
  }
  ActWords operator()(const acts::CheckBreathingAir&) const {
    return plain(act_tr("Breathing air logged"), act_tr("Breathing air as before"));
  }
  ActWords operator()(const acts::SayDoNotSpray& one) const {
    return final_act(one.do_not_spray ? act_tr("%1: do not spray").arg(name(one.person))
                                      : act_tr("%1 may spray again").arg(name(one.person)),
                     one.do_not_spray ? StateKind::Must : StateKind::Done);
  }
  ActWords operator()(const acts::SetDue& one) const {
    return plain(
        act_tr("%1 of %2: due day set").arg(sentence(words_of(one.what)), name(one.person)),
        act_tr("Due day as before"));
  }
  ActWords operator()(const acts::SetLimit& one) const {
    return plain(act_tr("Limit of %1 set").arg(text(one.said.substance)),
                 act_tr("Limit as before"));
  }
  ActWords operator()(const acts::SetProduct& one) const {
    return plain(act_tr("%1 kept").arg(text(one.said.product_name)),
                 act_tr("%1 as before").arg(text(one.said.product_name)));
  }
  ActWords operator()(const acts::LogSample& one) const {
    return plain(act_tr("Sample of %1 logged").arg(text(one.substance)),
                 act_tr("Sample taken back"));
  }
  ActWords operator()(const acts::OpenFirstAid& one) const {
    return final_act(act_tr("First aid: %1").arg(words_of(one.what)), StateKind::Must);
  }
  ActWords operator()(const acts::MixProduct&) const {
    return plain(act_tr("Mix logged"), act_tr("Mix taken back"));
  }
  ActWords operator()(const acts::SayCoats& one) const {
    return plain(act_tr("%1 coats logged").arg(one.coats), act_tr("Coats taken back"));
  }
  ActWords operator()(const acts::ReadBakeLimit&) const {
    return plain(act_tr("Bake limit read"), act_tr("Bake limit taken back"));
  }
  ActWords operator()(const acts::SayBake& one) const {
    return plain(one.on ? act_tr("Bake started") : act_tr("Bake ended"), act_tr("Bake as before"),
                 one.on ? StateKind::Running : StateKind::Done);
  }
  ActWords operator()(const acts::ReadPanelTemperature& one) const {
    return plain(act_tr("Temperature of %1 logged").arg(words_of(one.group)),
                 act_tr("Temperature taken back"));
  }
  ActWords operator()(const acts::CheckThumbnail& one) const {
    return plain(one.firm ? act_tr("Thumbnail: firm") : act_tr("Thumbnail: not yet"),
                 act_tr("Thumbnail taken back"), one.firm ? StateKind::Done : StateKind::Waits);
  }
  ActWords operator()(const acts::SayBonded& one) const {
    return plain(act_tr("%1 set").arg(sentence(text(one.what))),
                 act_tr("%1: taken back").arg(sentence(text(one.what))));
  }
  ActWords operator()(const acts::ReadClimate&) const {
    return plain(act_tr("Air logged"), act_tr("Air taken back"));
  }
  ActWords operator()(const acts::StartClock& one) const {
    const QString what = sentence(operation(one.operation));
    return plain(act_tr("%1 started, %2").arg(what, name(one.worker)), act_tr("Start taken back"),
                 StateKind::Running);
  }
  ActWords operator()(const acts::PauseClock& one) const {
    return plain(act_tr("Clock of %1 paused").arg(name(one.worker)), act_tr("Pause taken back"),
                 StateKind::Paused);
  }
  ActWords operator()(const acts::StopClock& one) const {
    return plain(act_tr("Clock of %1 stopped").arg(name(one.worker)), act_tr("Stop taken back"),
                 StateKind::None);
  }
  ActWords operator()(const acts::OfferRelease& one) const {
    const QString what = one.panel ? panel(*one.panel) : act_tr("The car");
    return plain(act_tr("%1 offered").arg(what), act_tr("%1: offer taken back").arg(what),
                 StateKind::Waits);
  }
  ActWords operator()(const acts::TakeRelease&) const { return final_act(act_tr("Taken over")); }
  ActWords operator()(const acts::ReturnRelease&) const {
    return final_act(act_tr("Given back"), StateKind::None);
  }
  ActWords operator()(const acts::SettleRelease& one) const {
    return final_act(act_tr("%1 has it").arg(name(one.taker)));
  }
  ActWords operator()(const acts::FinishOperation& one) const {
    const QString what = sentence(operation(one.operation));
    return one.done ? plain(act_tr("%1 done").arg(what), act_tr("%1 open again").arg(what))
                    : plain(act_tr("%1 open again").arg(what), act_tr("%1 done").arg(what));
  }
  ActWords operator()(const acts::AnswerSupplement& one) const {
    const QString what = sentence(operation(one.operation));
    return plain(act_tr("%1: approval %2").arg(what, words_of(one.approval)),
                 act_tr("%1: approval taken back").arg(what));
  }
  ActWords operator()(const acts::SayCheckIn&) const {
    return plain(act_tr("Checked in"), act_tr("Check-in taken back"));
  }
  ActWords operator()(const acts::SayPart& one) const {
    const QString what = text(one.said.part_name);
    return plain(act_tr("%1: %2").arg(what, words_of(one.said.state)),
                 act_tr("%1: taken back").arg(what), StateKind::Waits);
  }
  ActWords operator()(const acts::SaySublet& one) const {
    const QString what = sentence(words_of(one.said.kind));
    return plain(act_tr("%1: %2").arg(what, words_of(one.said.state)),
                 act_tr("%1: taken back").arg(what), StateKind::Waits);
  }
  ActWords operator()(const acts::SayWait& one) const {
    const QString what = words_of(one.reason);
    return one.waits
               ? plain(act_tr("Waits for %1").arg(what), act_tr("It goes on"), StateKind::Waits)
               : plain(act_tr("It goes on"), act_tr("Waits for %1").arg(what));
  }
  ActWords operator()(const acts::Sign& one) const {
    return final_act(act_tr("Signed by %1").arg(text(one.signer)));
  }
  ActWords operator()(const acts::SayCameBack&) const {
    return plain(act_tr("Car is back in the shop"), act_tr("Comeback taken back"), StateKind::None);
  }
  ActWords operator()(const acts::AmendClock&) const {
    return plain(act_tr("Clock amended"), act_tr("Amendment taken back"));
  }
  ActWords operator()(const acts::SayStep& one) const {
    const QString what = sentence(words_of(one.step));
    return one.done ? plain(what, act_tr("%1: open again").arg(what))
                    : plain(act_tr("%1: open again").arg(what), what);
  }
  ActWords operator()(const acts::MeasureFit& one) const {
    const QString what = panel(one.panel);
    return plain(act_tr("%1: gaps logged").arg(what), act_tr("%1: gaps taken back").arg(what));
  }
  ActWords operator()(const acts::MoveFasteners& one) const {
    const QString what = panel(one.panel);
    return plain(act_tr("%1 moved").arg(what), act_tr("%1: move taken back").arg(what));
  }
  ActWords operator()(const acts::SetCalendar&) const {
    return plain(act_tr("Open hours set"), act_tr("Open hours as before"));
  }
  ActWords operator()(const acts::SetRule& one) const {
    return plain(act_tr("Rule set: %1").arg(words_of(one.said.after)), act_tr("Rule as before"));
  }
  ActWords operator()(const acts::SetRetention& one) const {
    return plain(act_tr("Time to keep set: %1").arg(words_of(one.record)),
                 act_tr("Time to keep as before"));
  }
  ActWords operator()(const acts::Withdraw&) const {
    return plain(act_tr("Entry taken back"), act_tr("Entry stands again"), StateKind::None);
  }
  ActWords operator()(const acts::UndoAction&) const {
    return plain(act_tr("Taken back"), act_tr("Put back"), StateKind::None);
  }
};
}  // namespace

ActWords words_of(const engine::LastAct& act, const folds::CarView* car,
                  const folds::ShopView& shop) {
  return act.command.visit(Teller{act, car, shop});
}

}  // namespace jambline::screens
