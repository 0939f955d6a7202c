#include "trade/vin.h"

#include <algorithm>

namespace jambline::trade {

namespace {
constexpr std::size_t vin_length = 17;
constexpr std::size_t check_index = 8;
constexpr std::size_t year_index = 9;

// Letters and digits that hands and cameras take for each other; from practice, no source.
constexpr std::array<std::string_view, 23> lookalikes{
    "0O", "0Q", "0D", "1I", "1L", "1J", "17", "2Z", "2S", "5S", "6G", "8B",
    "8H", "8S", "3B", "38", "4A", "UV", "VY", "MN", "MW", "CG", "KX"};

std::string normalised(std::string_view text) {
  std::string out;
  for (char sign : text) {
    if (sign == ' ' || sign == '-' || (sign >= '\t' && sign <= '\r')) continue;
    if (sign >= 'a' && sign <= 'z') sign = static_cast<char>(sign - 'a' + 'A');
    out.push_back(sign);
  }
  return out;
}

// -1 when a place other than 9 has no value.
int sum_of(std::string_view vin) {
  int sum = 0;
  for (std::size_t i = 0; i < vin_length; ++i) {
    if (i == check_index) continue;
    const int value = vin_value(vin[i]);
    if (value < 0) return -1;
    sum += value * vin_weights[i];
  }
  return sum;
}

char check_sign(int sum) {
  const int rest = sum % 11;
  return rest == 10 ? 'X' : static_cast<char>('0' + rest);
}

bool passes(std::string_view vin) {
  const int sum = sum_of(vin);
  return sum >= 0 && vin[check_index] == check_sign(sum);
}

std::vector<VinSuspect> suspects_of(const std::string& vin) {
  std::vector<VinSuspect> out;
  std::string trial = vin;
  for (std::size_t i = 0; i < vin_length; ++i) {
    for (const std::string_view pair : lookalikes) {
      const std::size_t found = pair.find(vin[i]);
      if (found == std::string_view::npos) continue;
      trial[i] = pair[1 - found];
      const VinSuspect suspect{static_cast<int>(i) + 1, trial[i]};
      if (passes(trial) && std::find(out.begin(), out.end(), suspect) == out.end())
        out.push_back(suspect);
    }
    trial[i] = vin[i];
  }
  return out;
}

std::vector<int> model_years_of(std::string_view vin) {
  static constexpr std::string_view cycle = "ABCDEFGHJKLMNPRSTVWXY123456789";
  const std::size_t place = cycle.find(vin[year_index]);
  if (place == std::string_view::npos) return {};
  const int early = 1980 + static_cast<int>(place);
  const bool digit = vin[6] >= '0' && vin[6] <= '9';
  return digit ? std::vector{early, early + 30} : std::vector{early + 30, early};
}
}  // namespace

int vin_value(char sign) {
  if (sign >= '0' && sign <= '9') return sign - '0';
  static constexpr std::string_view letters = "ABCDEFGHJKLMNPRSTUVWXYZ";
  static constexpr std::string_view values = "12345678123457923456789";
  const std::size_t place = letters.find(sign);
  return place == std::string_view::npos ? -1 : values[place] - '0';
}

VinCheck check_vin(std::string_view text) {
  VinCheck out;
  out.text = normalised(text);
  out.length_right = out.text.size() == vin_length;
  for (std::size_t i = 0; i < out.text.size(); ++i)
    if (vin_value(out.text[i]) < 0) out.forbidden_places.push_back(static_cast<int>(i) + 1);
  if (!out.length_right) return out;

  out.model_years = model_years_of(out.text);
  const int sum = sum_of(out.text);
  if (sum >= 0) {
    out.summed = true;
    out.sum = sum;
    out.expected = check_sign(sum);
    out.passes = out.text[check_index] == out.expected;
  }
  if (!out.passes) out.suspects = suspects_of(out.text);
  return out;
}

}  // namespace jambline::trade
