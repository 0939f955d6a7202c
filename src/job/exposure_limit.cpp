#include "job/exposure_limit.h"

namespace jambline::job {

namespace {
using trade::FactorScheme;
using trade::LimitKind;

// What the limits of one list have in common.
struct List {
  std::string unit;
  std::string authority;
  int year{};
  std::string source;
  std::optional<FactorScheme> scheme = {};
};

struct Row {
  std::string substance;
  LimitKind kind{};
  double value{};
  std::optional<double> dangerous = {};
};

// The order gives the ids: new ones are added at the end only.
std::vector<UsualLimit> made() {
  constexpr double mdi_dangerous_ppm = 7.3;  // printed as 75 mg/m3; 10.24 mg/m3 are 1 ppm
  constexpr double tdi_dangerous_ppm = 2.5;
  const List niosh{"ppm", "NIOSH (recommended)", 2019, "NIOSH Pocket Guide; year from memory",
                   FactorScheme::Us};
  List niosh_10_min = niosh;
  niosh_10_min.source = "NIOSH Pocket Guide, over 10 minutes; year from memory";
  const List osha{"ppm", "OSHA", 1971, "29 CFR 1910.1000 table Z-1; year from memory",
                  FactorScheme::Us};
  const List uk{"mg/m3", "UK HSE, EH40", 2020, "EH40/2005, fourth edition; edition from memory",
                FactorScheme::Uk};
  const std::string annex = "directive 98/24/EC annex I, as amended by (EU) 2024/869";
  const List eu_until{"mg/m3", "EU directive 98/24/EC annex I (until 2028)", 2024, annex};
  const List eu_after{"mg/m3", "EU directive 98/24/EC annex I (from 2029)", 2024, annex};
  std::vector<UsualLimit> out;
  const auto add = [&](const List& list, const Row& row) {
    LimitId id;
    id.bytes.back() = static_cast<std::uint8_t>(out.size() + 1);
    out.push_back({id,
                   {row.substance, row.kind, row.value, list.unit, list.authority, list.year,
                    list.source, false, list.scheme, row.dangerous}});
  };
  add(niosh, {"HDI", LimitKind::EightHours, 0.005});
  add(niosh_10_min, {"HDI", LimitKind::Ceiling, 0.02});
  add(osha, {"MDI", LimitKind::Ceiling, 0.02, mdi_dangerous_ppm});
  add(niosh, {"MDI", LimitKind::EightHours, 0.005, mdi_dangerous_ppm});
  add(osha, {"2,4-TDI", LimitKind::Ceiling, 0.02, tdi_dangerous_ppm});
  add(niosh, {"IPDI", LimitKind::EightHours, 0.005});
  add(niosh, {"IPDI", LimitKind::FifteenMinutes, 0.02});
  add(uk, {"isocyanates as NCO", LimitKind::EightHours, 0.02});
  add(uk, {"isocyanates as NCO", LimitKind::FifteenMinutes, 0.07});
  add(eu_until, {"diisocyanates as NCO", LimitKind::EightHours, 0.01});
  add(eu_until, {"diisocyanates as NCO", LimitKind::FifteenMinutes, 0.02});
  add(niosh_10_min, {"MDI", LimitKind::Ceiling, 0.02, mdi_dangerous_ppm});
  add(eu_after, {"diisocyanates as NCO", LimitKind::EightHours, 0.006});
  add(eu_after, {"diisocyanates as NCO", LimitKind::FifteenMinutes, 0.012});
  return out;
}
}  // namespace

const std::vector<UsualLimit>& usual_limits() {
  static const auto all = made();
  return all;
}

}  // namespace jambline::job
