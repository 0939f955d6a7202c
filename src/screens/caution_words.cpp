#include "screens/caution_words.h"

#include <QVariantMap>
#include <algorithm>
#include <initializer_list>

namespace jambline::screens {

namespace {
QVariantMap choice(const QString& title, const char* icon, bool call, const QStringList& steps,
                   const QString& after) {
  return {{QStringLiteral("title"), title},
          {QStringLiteral("icon"), QString::fromLatin1(icon)},
          {QStringLiteral("call"), call},
          {QStringLiteral("steps"), steps},
          {QStringLiteral("after"), after}};
}
}  // namespace

QString words_of(Caution caution) {
  switch (caution) {
    case Caution::StayOut:
      return Cautions::tr("Stay out");
    case Caution::StayOutUnless:
      return Cautions::tr("or supplied air on, air hood or full face shut");
    case Caution::Spraying:
      return Cautions::tr("Spraying, stay out");
    case Caution::LocalRule:
      return Cautions::tr("Then your local rule decides, not this clock.");
    case Caution::DeviceOutside:
      return Cautions::tr(
          "This device stays outside the booth, the mixing room and any place where someone sprays "
          "or washes guns.");
    case Caution::LeaveOutside:
      return Cautions::tr("Leave this device outside");
    case Caution::AirStaysOn:
      return Cautions::tr(
          "Air hood or mask stays on between coats, until you are outside or the count is over.");
    case Caution::CountsOnly:
      return Cautions::tr(
          "It counts only with the exhaust on fresh air and the doors shut. What stops that starts "
          "the whole time again.");
    case Caution::FanStopped:
      return Cautions::tr("The fan stopped. Nothing counts.");
    case Caution::Baking:
      return Cautions::tr("Bake sends the air round again. Nothing counts.");
    case Caution::DoorOpened:
      return Cautions::tr("A door was opened. Nothing counts.");
    case Caution::NoFreshAir:
      return Cautions::tr("Nobody said that the exhaust runs on fresh air. Nothing counts.");
    case Caution::NoTime:
      return Cautions::tr(
          "There is no time to go by: no smoke test, no volume with its exhaust, no fixed time.");
    case Caution::OpenDeck:
      return Cautions::tr(
          "An open deck is no mixed room and gets no time by formula: a smoke test or the shop's "
          "fixed time.");
    case Caution::TimeOver:
      return Cautions::tr("The time is over");
    case Caution::WeakerBasis:
      return Cautions::tr("the weaker basis: do a smoke test");
    case Caution::ProgramRuns:
      return Cautions::tr("Knocks at the end, only while this program runs. Leave it open.");
    case Caution::NoSound:
      return Cautions::tr("This device gives no sound. Look here, and leave the program open.");
    case Caution::GunDownForAnother:
      return Cautions::tr(
          "Only when %1 stands outside and the gun is down. From then on the time counts.");
    case Caution::WasteTitle:
      return Cautions::tr("End of spraying: waste, cans, static");
    case Caution::WasteSource:
      return Cautions::tr(
          "Common practice, no source. The safety data sheet and the local rule win.");
    case Caution::OldFilters:
      return Cautions::tr(
          "Old filters out of the building? Used filters can heat up by themselves: wet or sealed "
          "outdoors, as the local rule says.");
    case Caution::OldFiltersIn:
      return Cautions::tr(
          "Old filters are still in the building. They can heat up by themselves: keep them wet or "
          "sealed outdoors, as the local rule says.");
    case Caution::BeforeBake:
      return Cautions::tr(
          "Out of the car: aerosols, loose batteries, key fobs, fuel cans. Windows as the carmaker "
          "says. The bake counts from the panel's temperature, not the air's.");
    case Caution::BatteryPack:
      return Cautions::tr(
          "Not charging. Only trained people touch orange cables. A damaged, hot, hissing or "
          "submerged pack never goes into the booth: outside, away from cars and buildings, and "
          "call the fire service.");
    case Caution::Lifting:
      return Cautions::tr("Hood, door, lid, glass: two people. Prop it before a strut comes off.");
    case Caution::StoredEnergy:
      return Cautions::tr(
          "Airbags, belts, high voltage: only trained people, by the carmaker's procedure. Battery "
          "off and its wait over before work near them.");
  }
  return {};
}

QStringList stage_cautions(job::Stage stage) {
  QStringList out;
  using job::Stage;
  const auto is = [&](std::initializer_list<Stage> stages) {
    return std::find(stages.begin(), stages.end(), stage) != stages.end();
  };
  if (is({Stage::Teardown, Stage::BodyAndTrialFit, Stage::Assemble, Stage::Glass, Stage::Fit}))
    out << words_of(Caution::Lifting);
  if (is({Stage::Teardown, Stage::BodyAndTrialFit, Stage::Assemble, Stage::Glass,
          Stage::SensorsAndScan}))
    out << words_of(Caution::StoredEnergy);
  return out;
}

QStringList waste_words() {
  return {
      Cautions::tr("Wipes, tack cloths and towels: into the listed metal can, lid shut, emptied "
                   "every day."),
      Cautions::tr("Used filters: wet or sealed outdoors, as the local rule says."),
      Cautions::tr("Activated leftovers: lid off until they have set. Shut in, the can bursts."),
      Cautions::tr("Gun: in the enclosed washer, gloves and respirator on."),
      Cautions::tr("Car, stands and cans stay grounded. No dry wiping of plastic."),
  };
}

QString Cautions::number() const {
  return tr("Call your local emergency number");
}

QString Cautions::sheetLine() const {
  return tr(
      "Bring the can or its safety data sheet to the doctor. Where the sheet says otherwise, "
      "do as the sheet says.");
}

QString Cautions::sources() const {
  return tr(
      "Sources: first-aid codes of the NIOSH Pocket Guide (HDI), NIOSH publication 96-111. Times "
      "and the evening rule are common practice, no source. This page replaces no doctor.");
}

QVariantList Cautions::choices() const {
  return {
      choice(tr("Hard to breathe, tight chest, cough"), "air", true,
             {tr("Stop. Keep your air hood or mask on and walk out."),
              tr("Fresh air. Sit upright. Loosen what is tight."),
              tr("Trouble breathing: call the emergency number now. Do not drive yourself."),
              tr("Own inhaler: use it as prescribed."),
              tr("It can come back 4 to 12 hours later, in the evening too. Do not be alone.")},
             tr("Do not mix, spray, sand fresh 2K or go into the booth until a doctor has cleared "
                "you.")),
      choice(tr("In the eye"), "eye", true,
             {tr("Rinse at once with plenty of water, lids held open. At least 15 minutes."),
              tr("Contact lenses out while you rinse, if they come out easily."),
              tr("Do not rub. Rinse away from the other eye."),
              tr("Then to a doctor, with a helper driving.")},
             tr("Pain, blurred sight or a splash of hardener: call the emergency number.")),
      choice(tr("On the skin"), "hand", false,
             {tr("Take off what is wet, gloves too."),
              tr("Wash at once with soap and plenty of water, or the cleanser of the safety data "
                 "sheet."),
              tr("Never thinner."), tr("Redness, rash or blisters: to a doctor.")},
             tr("Wheezing or a tight chest after skin contact: treat it as hard to breathe.")),
      choice(tr("Cut or stung by the gun's pressure"), "gun", true,
             {tr("This is an emergency, even when it looks like a pinprick."),
              tr("Call the emergency number. Say: injected under high pressure, and with what."),
              tr("Do not squeeze it, do not bind it off. Keep the hand still and high."),
              tr("Nothing to eat or drink until a surgeon has seen it.")},
             tr("Do not wait for pain or swelling. Hours count.")),
      choice(
          tr("Fan stopped, or the air hood failed"), "fan", false,
          {tr("Gun down."), tr("Air hood or mask stays on. Out."),
           tr("Door shut behind you. Keep the others out."),
           tr("Nobody goes back in without supplied air.")},
          tr("No smell does not mean no mist. Cough or tight chest, now or in the evening: treat "
             "it as hard to breathe.")),
  };
}

}  // namespace jambline::screens
