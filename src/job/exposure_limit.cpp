#include "job/exposure_limit.h"

namespace jambline::job {

namespace {
using trade::LimitKind;

std::vector<UsualLimit> made() {
  const std::vector<ExposureLimit> limits{
      {"HDI", LimitKind::EightHours, 0.005, "ppm", "NIOSH (recommended)", 2019,
       "NIOSH Pocket Guide, hexamethylene diisocyanate", false},
      {"HDI", LimitKind::Ceiling, 0.02, "ppm", "NIOSH (recommended)", 2019,
       "NIOSH Pocket Guide, hexamethylene diisocyanate; 10 minutes", false},
      {"MDI", LimitKind::Ceiling, 0.02, "ppm", "OSHA", 1971,
       "29 CFR 1910.1000 table Z-1; year from memory", false},
      {"MDI", LimitKind::EightHours, 0.005, "ppm", "NIOSH (recommended)", 2019,
       "NIOSH Pocket Guide, methylene bisphenyl isocyanate", false},
      {"2,4-TDI", LimitKind::Ceiling, 0.02, "ppm", "OSHA", 1971,
       "29 CFR 1910.1000 table Z-1; year from memory", false},
      {"IPDI", LimitKind::EightHours, 0.005, "ppm", "NIOSH (recommended)", 2019,
       "NIOSH Pocket Guide, isophorone diisocyanate", false},
      {"IPDI", LimitKind::FifteenMinutes, 0.02, "ppm", "NIOSH (recommended)", 2019,
       "NIOSH Pocket Guide, isophorone diisocyanate", false},
      {"isocyanates as NCO", LimitKind::EightHours, 0.02, "mg/m3", "UK HSE, EH40", 2020,
       "EH40/2005, fourth edition", false},
      {"isocyanates as NCO", LimitKind::FifteenMinutes, 0.07, "mg/m3", "UK HSE, EH40", 2020,
       "EH40/2005, fourth edition", false},
      {"diisocyanates as NCO", LimitKind::EightHours, 0.01, "mg/m3",
       "EU directive 98/24/EC annex I, until 2028", 2024, "directive (EU) 2024/869", false},
      {"diisocyanates as NCO", LimitKind::FifteenMinutes, 0.02, "mg/m3",
       "EU directive 98/24/EC annex I, until 2028", 2024, "directive (EU) 2024/869", false},
  };
  std::vector<UsualLimit> out;
  for (const auto& limit : limits) {
    LimitId id;
    id.bytes.back() = static_cast<std::uint8_t>(out.size() + 1);
    out.push_back({id, limit});
  }
  return out;
}
}  // namespace

const std::vector<UsualLimit>& usual_limits() {
  static const auto all = made();
  return all;
}

}  // namespace jambline::job
