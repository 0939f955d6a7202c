#include "job/stage.h"

#include <array>

namespace jambline::job {

namespace {
constexpr StageCheck check_in[] = {{"plate or VIN, odometer", true},
                                   {"old damage"},
                                   {"warning lights"},
                                   {"fuel or charge"},
                                   {"keys"},
                                   {"high voltage and airbag state"},
                                   {"drive kind"}};
constexpr StageCheck teardown[] = {{"hidden damage"}, {"parts bagged"}, {"scan before"}};
constexpr StageCheck body[] = {{"gaps set with bare or primed panels", true},
                               {"witness marks", true},
                               {"adhesive clamp time"}};
constexpr StageCheck corrosion[] = {{"bare metal primed", true},
                                    {"seam sealer as from the factory"},
                                    {"bonding flange primed and kept free of color and clear"}};
constexpr StageCheck prep[] = {
    {"feather and block"}, {"guide coat gone"}, {"total film before base, one spot"}};
constexpr StageCheck color[] = {
    {"code and variant", true}, {"spray-out approved", true}, {"blend plan"}};
constexpr StageCheck mask[] = {{"tape on all edges", true},
                               {"jambs closed", true},
                               {"glass edge", true},
                               {"cowl", true},
                               {"wheel wells bagged", true},
                               {"blow-off outside the booth"},
                               {"tack last"}};
constexpr StageCheck gun[] = {
    {"supplied air or the respirator of the shop's written program", true},
    {"exhaust on, fresh-air mode", true},
    {"nobody unprotected in the booth", true}};
constexpr StageCheck spray[] = {{"coats, flash, gun, batch"},
                                {"air hood or mask stays on between coats", true}};
constexpr StageCheck cure[] = {
    {"purge on, count over", true}, {"bake limit", true}, {"panel temperature", true}};
constexpr StageCheck unmask[] = {{"at its milestone, back on itself, low and slow"}, {"gloves"}};
constexpr StageCheck inspect[] = {
    {"each panel face", true}, {"edges and back", true}, {"each loose part", true}};
constexpr StageCheck correct[] = {{"film word"}, {"thumbnail check", true}, {"matte check", true}};
constexpr StageCheck edges[] = {{"none open", true}};
constexpr StageCheck wax[] = {{"after the last bake, before trim panels", true}};
constexpr StageCheck assemble[] = {{"torque"}, {"new clips"}, {"connectors"}, {"drains free"}};
constexpr StageCheck glass[] = {{"drive-away time shown", true}};
constexpr StageCheck fit[] = {{"against the trial fit"}, {"latch and secondary catch", true}};
constexpr StageCheck sensors[] = {
    {"post-scan", true}, {"calibration", true}, {"lamps aimed"}, {"alignment if needed"}};
constexpr StageCheck polish[] = {{"film window"}, {"no matte", true}};
constexpr StageCheck wash[] = {{"no pressure on glass or fresh edge"},
                               {"jambs rinsed of compound"}};
constexpr StageCheck walk[] = {
    {"two people, second light"}, {"open points none, or signed", true}, {"wax waiting time told"}};
constexpr StageCheck comeback[] = {{"link to the car"}, {"cause"}, {"who pays"}};
}  // namespace

std::span<const StageCheck> checks_of(Stage stage) {
  switch (stage) {
    case Stage::CheckIn:
      return check_in;
    case Stage::Teardown:
      return teardown;
    case Stage::BodyAndTrialFit:
      return body;
    case Stage::Corrosion:
      return corrosion;
    case Stage::Prep:
      return prep;
    case Stage::Color:
      return color;
    case Stage::Mask:
      return mask;
    case Stage::BeforeTheGun:
      return gun;
    case Stage::Spray:
      return spray;
    case Stage::Cure:
      return cure;
    case Stage::Unmask:
      return unmask;
    case Stage::Inspect:
      return inspect;
    case Stage::Correct:
      return correct;
    case Stage::EdgesAndJambs:
      return edges;
    case Stage::CavityWax:
      return wax;
    case Stage::Assemble:
      return assemble;
    case Stage::Glass:
      return glass;
    case Stage::Fit:
      return fit;
    case Stage::SensorsAndScan:
      return sensors;
    case Stage::LastPolish:
      return polish;
    case Stage::Wash:
      return wash;
    case Stage::WalkAround:
      return walk;
    case Stage::Comeback:
      return comeback;
  }
  return {};
}

}  // namespace jambline::job
