#include <algorithm>

#include "acts/decisions.h"
#include "folds/booth_state.h"

namespace jambline::acts {

namespace {

Status within(const std::optional<double>& value, double least, double most, const char* doing,
              const char* field) {
  return value ? in_range(*value, least, most, doing, field) : Status();
}

Result<const folds::BoothView*> booth_of(const Scene& scene, const BoothId& booth,
                                         const char* doing) {
  if (const auto* found = scene.world.shop.find(booth)) return found;
  return fail(Code::Unknown, doing, "booth");
}

Status person_known(const Scene& scene, const PersonId& person, const char* doing) {
  if (const auto* found = scene.world.shop.find(person); found && !found->left) return {};
  return fail(Code::Unknown, doing, "person");
}

template <class Kind>
Status may_say(const Scene& scene, const char* doing, const std::string& subject) {
  if (scene.may_say<Kind>()) return {};
  return fail(Code::NotAllowed, doing, subject);
}

Status facts_fit(const job::BoothFacts& facts, const char* doing) {
  JAMBLINE_TRY(within(facts.volume_m3, 1, 100'000, doing, "volume"));
  JAMBLINE_TRY(within(facts.wanted_m_s, 0.01, 10, doing, "required velocity"));
  JAMBLINE_TRY(within(facts.rated_exhaust_m3_h, 1, 1e7, doing, "exhaust"));
  JAMBLINE_TRY(within(facts.most_pressure_pa, 1, 5000, doing, "filter pressure"));
  JAMBLINE_TRY(in_range(facts.mixing_factor, 1, 10, doing, "mixing factor"));
  JAMBLINE_TRY(within(facts.fixed_clear_min, 1, 1440, doing, "fixed time"));
  JAMBLINE_TRY(in_range(facts.extra_factor, 1, 10, doing, "extra factor"));
  JAMBLINE_TRY(in_range(facts.smoke_valid_days, 1, 36500, doing, "smoke test"));
  // A value that is required is required by somebody.
  if (facts.wanted_m_s && facts.wanted_from.empty())
    return fail(Code::Missing, doing, "required by");
  if (facts.extra_factor != 1 && facts.extra_factor_name.empty())
    return fail(Code::Missing, doing, "name of the factor");
  return {};
}
}  // namespace

Drafts decide_one(const Scene& scene, const SetBoothFacts& command) {
  const char* const doing = "set a booth";
  JAMBLINE_ASSIGN(const auto* booth, booth_of(scene, command.booth, doing));
  JAMBLINE_TRY(facts_fit(command.facts, doing));
  const auto* known = scene.world.shop.air.find(command.booth);
  if (known && known->facts == command.facts && known->facts_heads.size() == 1)
    return fail(Code::AlreadyDone, doing, booth->name);
  return std::vector<Draft>{
      {{},
       entries::BoothFactsSet{command.booth, command.facts,
                              known ? known->facts_heads : std::vector<Hash>{}}}};
}

Drafts decide_one(const Scene& scene, const ReadBooth& command) {
  const char* const doing = "read a booth";
  JAMBLINE_ASSIGN(const auto* booth, booth_of(scene, command.booth, doing));
  if (command.values.empty()) return fail(Code::Missing, doing, "reading");
  if (command.values.size() > 100)
    return fail(Error{Code::TooLarge, doing, "reading", {{"limit", "100"}}});
  JAMBLINE_TRY(not_to_come(command.happened_ms, scene, doing));
  JAMBLINE_TRY(in_range(command.instrument_percent, 0, 50, doing, "instrument"));
  for (const double value : command.values) {
    switch (command.what) {
      case job::BoothReading::Velocity:
        JAMBLINE_TRY(in_range(value, 0.01, 20, doing, "velocity"));
        break;
      case job::BoothReading::FilterPressure:
        JAMBLINE_TRY(in_range(value, 0, 5000, doing, "filter pressure"));
        break;
      case job::BoothReading::Exhaust:
        JAMBLINE_TRY(in_range(value, 1, 1e7, doing, "exhaust"));
        break;
      case job::BoothReading::SmokeTest:
        if (booth->kind == job::BoothKind::MixingRoom)
          return fail(Code::NotAllowed, doing, booth->name);
        JAMBLINE_TRY(in_range(value, 0.1, 600, doing, "smoke test"));
        break;
    }
  }
  return std::vector<Draft>{{{},
                             entries::BoothRead{command.booth, command.what, command.values,
                                                command.instrument_percent, command.happened_ms}}};
}

Drafts decide_one(const Scene& scene, const GunDown& command) {
  const char* const doing = "put the gun down";
  JAMBLINE_ASSIGN(const auto* booth, booth_of(scene, command.booth, doing));
  const auto state =
      folds::booth_state(*booth, scene.world.shop.air.find(command.booth), scene.context.now);
  const folds::BoothSaidView* up = nullptr;
  for (const auto& one : state.up)
    if (command.spray ? one.spray == command.spray : one.by == scene.context.person) up = &one;
  // Whoever taps for a painter with wet gloves taps for the only one there.
  if (!up && !command.spray && state.up.size() == 1) up = &state.up.front();
  if (!up) return fail(Code::NotRunning, doing, booth->name);
  return std::vector<Draft>{
      {{}, entries::BoothSaid{command.booth, job::BoothWord::GunDown, up->spray, up->job, {}}}};
}

Drafts decide_one(const Scene& scene, const SayExhaust& command) {
  const char* const doing = "say the exhaust";
  JAMBLINE_ASSIGN(const auto* booth, booth_of(scene, command.booth, doing));
  switch (command.what) {
    case job::BoothWord::FreshAirDoorsShut:
    case job::BoothWord::FanStopped:
    case job::BoothWord::Bake:
    case job::BoothWord::DoorOpened:
      break;
    default:
      return fail(Code::OutOfRange, doing, booth->name);
  }
  return std::vector<Draft>{{{}, entries::BoothSaid{command.booth, command.what, {}, {}, {}}}};
}

Drafts decide_one(const Scene& scene, const LogClearanceOver& command) {
  const char* const doing = "log the clearance";
  JAMBLINE_ASSIGN(const auto* booth, booth_of(scene, command.booth, doing));
  const auto state =
      folds::booth_state(*booth, scene.world.shop.air.find(command.booth), scene.context.now);
  if (state.word == folds::BoothWordNow::Idle) return fail(Code::AlreadyDone, doing, booth->name);
  if (state.word != folds::BoothWordNow::TimeOver)
    return fail(Error{Code::NotYet, doing, booth->name, {{"what", "clearance"}}});
  return std::vector<Draft>{
      {{}, entries::BoothSaid{command.booth, job::BoothWord::ClearanceOver, {}, {}, {}}}};
}

Drafts decide_one(const Scene& scene, const SetRespirator& command) {
  const char* const doing = "set a respirator";
  job::Respirator said = command.said;
  JAMBLINE_ASSIGN(said.model, typed(said.model, doing, "model", most_text_bytes));
  JAMBLINE_ASSIGN(said.authority, typed(said.authority, doing, "authority", most_text_bytes));
  JAMBLINE_TRY(may_say<entries::RespiratorSet>(scene, doing, said.model));
  JAMBLINE_TRY(in_range(said.assigned_factor, 1, 10'000, doing, "factor"));
  JAMBLINE_TRY(in_range(said.year, 1900, 2200, doing, "year"));
  RespiratorId id;
  std::vector<Hash> heads;
  if (command.respirator) {
    const auto* known = scene.world.shop.air.find(*command.respirator);
    if (!known) return fail(Code::Unknown, doing, "respirator");
    if (known->said == said) return fail(Code::AlreadyDone, doing, said.model);
    id = known->respirator;
    heads = known->heads;
  } else {
    for (const auto& one : scene.world.shop.air.respirators)
      if (one.said.model == said.model && one.said.kind == said.kind && !one.said.retired)
        return fail(Code::AlreadyDone, doing, said.model);
    id = scene.context.random.make<RespiratorId>();
  }
  return std::vector<Draft>{{{}, entries::RespiratorSet{id, std::move(said), std::move(heads)}}};
}

Drafts decide_one(const Scene& scene, const RecordFitTest& command) {
  const char* const doing = "record a fit test";
  JAMBLINE_TRY(person_known(scene, command.person, doing));
  const auto* respirator = scene.world.shop.air.find(command.respirator);
  if (!respirator) return fail(Code::Unknown, doing, "respirator");
  JAMBLINE_TRY(may_say<entries::FitTestDone>(scene, doing, respirator->said.model));
  if (!job::fits_tightly(respirator->said.kind))
    return fail(Code::NotAllowed, doing, respirator->said.model);
  const auto& said = command.said;
  if (said.method == job::FitMethod::Quantitative) {
    if (said.exercise_factors.empty()) return fail(Code::Missing, doing, "factor");
    for (const double factor : said.exercise_factors)
      JAMBLINE_TRY(in_range(factor, 1, 1e7, doing, "factor"));
  } else if (respirator->said.kind != job::RespiratorKind::HalfAirPurifying) {
    return fail(Code::NotAllowed, doing, "qualitative");
  }
  JAMBLINE_TRY(not_to_come(said.tested_day * 86'400'000LL, scene, doing));
  JAMBLINE_TRY(in_range(said.valid_days, 1, 36'500, doing, "days"));
  FitTestId id;
  std::vector<Hash> heads;
  if (command.corrects) {
    const auto* person = scene.world.shop.air.find(command.person);
    const folds::FitTestView* known = nullptr;
    if (person)
      for (const auto& one : person->fit_tests)
        if (one.test == *command.corrects) known = &one;
    if (!known) return fail(Code::Unknown, doing, "fit test");
    id = known->test;
    heads = known->heads;
  } else {
    id = scene.context.random.make<FitTestId>();
  }
  return std::vector<Draft>{
      {{}, entries::FitTestDone{id, command.person, command.respirator, said, std::move(heads)}}};
}

Drafts decide_one(const Scene& scene, const ChangeCartridge& command) {
  const char* const doing = "change a cartridge";
  JAMBLINE_TRY(person_known(scene, command.person, doing));
  const auto* respirator = scene.world.shop.air.find(command.respirator);
  if (!respirator) return fail(Code::Unknown, doing, "respirator");
  if (!job::has_cartridge(respirator->said.kind))
    return fail(Code::NotAllowed, doing, respirator->said.model);
  JAMBLINE_TRY(in_range(command.schedule_h, 0.1, 10'000, doing, "hours"));
  JAMBLINE_ASSIGN(std::string basis,
                  typed(command.schedule_basis, doing, "basis", most_text_bytes));
  std::vector<Hash> heads;
  if (const auto* person = scene.world.shop.air.find(command.person))
    for (const auto& one : person->cartridges)
      if (one.respirator == command.respirator) heads = one.heads;
  return std::vector<Draft>{
      {{},
       entries::CartridgeChanged{command.person, command.respirator, command.schedule_h,
                                 std::move(basis), std::move(heads)}}};
}

Drafts decide_one(const Scene& scene, const CheckBreathingAir& command) {
  const char* const doing = "check the breathing air";
  JAMBLINE_TRY(not_to_come(command.said.checked_day * 86'400'000LL, scene, doing));
  JAMBLINE_TRY(in_range(command.said.valid_days, 1, 36'500, doing, "days"));
  const auto& known = scene.world.shop.air.breathing_air;
  if (known && known->said == command.said) return fail(Code::AlreadyDone, doing, "air");
  return std::vector<Draft>{
      {{}, entries::BreathingAirChecked{command.said, known ? known->heads : std::vector<Hash>{}}}};
}

Drafts decide_one(const Scene& scene, const SayDoNotSpray& command) {
  const char* const doing = "say do not spray";
  JAMBLINE_TRY(person_known(scene, command.person, doing));
  const std::string name = scene.world.shop.find(command.person)->name;
  // Anybody may stop himself; only a manager lets somebody spray again.
  const bool stops_himself = command.do_not_spray && command.person == scene.context.person;
  if (!stops_himself && !scene.may(entries::Right::Manager))
    return fail(Code::NotAllowed, doing, name);
  const auto* known = scene.world.shop.air.find(command.person);
  const bool now = known && known->do_not_spray;
  if (now == command.do_not_spray && (!known || known->flag_heads.size() < 2))
    return fail(Code::AlreadyDone, doing, name);
  return std::vector<Draft>{
      {{},
       entries::DoNotSpraySaid{command.person, command.do_not_spray,
                               known ? known->flag_heads : std::vector<Hash>{}}}};
}

Drafts decide_one(const Scene& scene, const SetDue& command) {
  const char* const doing = "set a due day";
  JAMBLINE_TRY(person_known(scene, command.person, doing));
  JAMBLINE_TRY(may_say<entries::DueSet>(scene, doing, std::string(word_of(command.what))));
  JAMBLINE_TRY(in_range(command.due_day, 18'262, 100'000, doing, "day"));
  std::vector<Hash> heads;
  if (const auto* person = scene.world.shop.air.find(command.person))
    for (const auto& one : person->dues)
      if (one.what == command.what) {
        if (one.due_day == command.due_day && one.heads.size() == 1)
          return fail(Code::AlreadyDone, doing, std::string(word_of(command.what)));
        heads = one.heads;
      }
  return std::vector<Draft>{
      {{}, entries::DueSet{command.person, command.what, command.due_day, std::move(heads)}}};
}

Drafts decide_one(const Scene& scene, const SetLimit& command) {
  const char* const doing = "set a limit";
  job::ExposureLimit said = command.said;
  JAMBLINE_ASSIGN(said.substance, typed(said.substance, doing, "substance", most_text_bytes));
  JAMBLINE_TRY(may_say<entries::LimitSet>(scene, doing, said.substance));
  JAMBLINE_ASSIGN(said.authority, typed(said.authority, doing, "authority", most_text_bytes));
  JAMBLINE_ASSIGN(said.source, typed(said.source, doing, "source", most_text_bytes));
  if (said.unit != "ppm" && said.unit != "mg/m3") return fail(Code::OutOfRange, doing, "unit");
  JAMBLINE_TRY(in_range(said.value, 1e-12, 1e9, doing, "limit"));
  JAMBLINE_TRY(in_range(said.year, 1900, 2200, doing, "year"));
  LimitId id;
  std::vector<Hash> heads;
  if (command.limit) {
    const auto& limits = scene.world.shop.air.limits;
    const auto known = std::find_if(limits.begin(), limits.end(),
                                    [&](const auto& one) { return one.limit == *command.limit; });
    if (known == limits.end()) return fail(Code::Unknown, doing, "limit");
    if (known->said == said) return fail(Code::AlreadyDone, doing, said.substance);
    id = known->limit;
    heads = known->heads;
  } else {
    id = scene.context.random.make<LimitId>();
  }
  return std::vector<Draft>{{{}, entries::LimitSet{id, std::move(said), std::move(heads)}}};
}

Drafts decide_one(const Scene& scene, const LogSample& command) {
  const char* const doing = "log a sample";
  JAMBLINE_TRY(person_known(scene, command.person, doing));
  JAMBLINE_ASSIGN(std::string substance,
                  typed(command.substance, doing, "substance", most_text_bytes));
  if (command.unit != "ppm" && command.unit != "mg/m3")
    return fail(Code::OutOfRange, doing, "unit");
  JAMBLINE_TRY(in_range(command.value, 0, 1e9, doing, "value"));
  JAMBLINE_TRY(not_to_come(command.from_ms, scene, doing));
  JAMBLINE_TRY(not_to_come(command.to_ms, scene, doing));
  if (command.to_ms <= command.from_ms) return fail(Code::OutOfRange, doing, "time");
  if (command.respirator && !scene.world.shop.air.find(*command.respirator))
    return fail(Code::Unknown, doing, "respirator");
  return std::vector<Draft>{{{},
                             entries::ExposureSampled{scene.context.random.make<SampleId>(),
                                                      command.person,
                                                      std::move(substance),
                                                      command.value,
                                                      command.unit,
                                                      command.from_ms,
                                                      command.to_ms,
                                                      command.respirator,
                                                      {}}}};
}

Drafts decide_one(const Scene&, const OpenFirstAid& command) {
  return std::vector<Draft>{{{}, entries::FirstAidOpened{command.what}}};
}

}  // namespace jambline::acts
