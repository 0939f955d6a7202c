#include "base/json.h"

#include <algorithm>
#include <bit>
#include <charconv>
#include <cmath>
#include <cstdlib>
#include <new>
#include <simdjson.h>

namespace jambline {

namespace {
namespace dom = simdjson::dom;
using Raw = std::array<unsigned char, 16>;
static_assert(sizeof(dom::element) == 16 && sizeof(dom::object::iterator) == 16 &&
              sizeof(dom::array::iterator) == 16);

template <class T>
T load(const unsigned char (&raw)[16]) {
  alignas(T) unsigned char bytes[sizeof(T)];
  std::memcpy(bytes, raw, sizeof(T));
  return *std::launder(reinterpret_cast<T*>(bytes));
}
template <class T>
void store(unsigned char (&raw)[16], const T& value) {
  std::memcpy(raw, &value, sizeof(T));
}
dom::object object_of(const unsigned char (&raw)[16]) {
  dom::object members;
  if (load<dom::element>(raw).get(members) != simdjson::SUCCESS) std::abort();  // type() was asked
  return members;
}
dom::array list_of(const unsigned char (&raw)[16]) {
  dom::array items;
  if (load<dom::element>(raw).get(items) != simdjson::SUCCESS) std::abort();
  return items;
}
constexpr std::size_t most_text_bytes = 64U << 20U;
}  // namespace

struct JsonFill {
  static JsonValue::Type type_of(dom::element element) {
    using Type = JsonValue::Type;
    switch (element.type()) {
      case dom::element_type::ARRAY:
        return Type::List;
      case dom::element_type::OBJECT:
        return Type::Object;
      case dom::element_type::INT64:
        return Type::Integer;
      case dom::element_type::UINT64:  // past int64: not a whole number of ours
      case dom::element_type::DOUBLE:
        return Type::Number;
      case dom::element_type::STRING:
        return Type::Text;
      case dom::element_type::BOOL:
        return Type::Bool;
      case dom::element_type::NULL_VALUE:
        break;
    }
    return Type::Null;
  }
  static void fill(JsonValue& out, dom::element element) {
    store(out.raw_, element);
    out.type_ = type_of(element);
  }
};

bool JsonValue::boolean() const {
  return load<dom::element>(raw_).get_bool().value_unsafe();
}
std::int64_t JsonValue::integer() const {
  return load<dom::element>(raw_).get_int64().value_unsafe();
}
std::optional<std::uint64_t> JsonValue::large() const {
  const auto element = load<dom::element>(raw_);
  if (element.type() != dom::element_type::UINT64) return std::nullopt;
  return element.get_uint64().value_unsafe();
}
double JsonValue::number() const {
  return load<dom::element>(raw_).get_double().value_unsafe();
}
std::string_view JsonValue::text() const {
  return load<dom::element>(raw_).get_string().value_unsafe();
}
std::size_t JsonValue::size() const {
  const auto element = load<dom::element>(raw_);
  return element.is_array() ? list_of(raw_).size() : object_of(raw_).size();
}

JsonMembers::JsonMembers(const JsonValue& object) : object_(object) {
  const auto members = object_of(object.raw_);
  store(next_, members.begin());
  store(end_, members.end());
}

bool JsonMembers::find(std::string_view name, JsonValue& out) {
  auto next = load<dom::object::iterator>(next_);
  if (next != load<dom::object::iterator>(end_) && next.key() == name) {
    JsonFill::fill(out, next.value());
    store(next_, ++next);
    return true;
  }
  dom::element found;
  if (object_of(object_.raw_).at_key(name).get(found) != simdjson::SUCCESS) return false;
  JsonFill::fill(out, found);
  return true;
}

std::string_view JsonMembers::first_unasked(const std::vector<std::string_view>& asked) const {
  for (const auto member : object_of(object_.raw_))
    if (std::find(asked.begin(), asked.end(), member.key) == asked.end()) return member.key;
  return {};
}

JsonItems::JsonItems(const JsonValue& list) {
  const auto items = list_of(list.raw_);
  store(next_, items.begin());
  store(end_, items.end());
}

bool JsonItems::next(JsonValue& out) {
  auto next = load<dom::array::iterator>(next_);
  if (!(next != load<dom::array::iterator>(end_))) return false;
  JsonFill::fill(out, *next);
  store(next_, ++next);
  return true;
}

Result<JsonValue> JsonDocument::parse(std::string_view text) {
  thread_local dom::parser parser(most_text_bytes);
  dom::element root;
  if (text.size() > most_text_bytes) return fail(Code::TooLarge, "read JSON", "");
  if (text.data() == nullptr) text = "";
  const auto error = parser.parse(text.data(), text.size()).get(root);
  if (error != simdjson::SUCCESS)
    return fail(
        Error{Code::Malformed, "read JSON", "", {{"cause", simdjson::error_message(error)}}});
  JsonValue value;
  JsonFill::fill(value, root);
  return value;
}

namespace json {

void write_text(std::string& out, std::string_view text) {
  static constexpr char digits[] = "0123456789abcdef";
  out.push_back('"');
  for (const char sign : text) {
    const auto byte = static_cast<unsigned char>(sign);
    switch (sign) {
      case '"':
        out += "\\\"";
        break;
      case '\\':
        out += "\\\\";
        break;
      case '\n':
        out += "\\n";
        break;
      case '\r':
        out += "\\r";
        break;
      case '\t':
        out += "\\t";
        break;
      default:
        if (byte < 0x20) {
          out += "\\u00";
          out.push_back(digits[byte >> 4]);
          out.push_back(digits[byte & 15]);
        } else {
          out.push_back(sign);
        }
    }
  }
  out.push_back('"');
}

namespace {
constexpr double past_every_integer = 9223372036854775808.0;  // 2^63

template <class... How>
void append_chars(std::string& out, How... number_and_format) {
  std::array<char, 32> buffer;
  const auto end =
      std::to_chars(buffer.data(), buffer.data() + buffer.size(), number_and_format...).ptr;
  out.append(buffer.data(), end);
}
}  // namespace

void write_number(std::string& out, double number) {
  if (number == 0)
    out += std::signbit(number) ? "-0.0" : "0";
  else if (std::abs(number) >= past_every_integer)
    append_chars(out, number, std::chars_format::scientific);
  else
    append_chars(out, number);
}
void write_integer(std::string& out, std::int64_t number) {
  append_chars(out, number);
}
void write_unsigned(std::string& out, std::uint64_t number) {
  append_chars(out, number);
}

void Reading::refuse(Code code, std::string cause) {
  error = Error{code, "read JSON", "", {{"field", ""}, {"cause", std::move(cause)}}};
}

void Reading::below(std::string_view name) {
  path.insert(0, path.empty() || path.front() == '[' ? "" : ".");
  path.insert(0, name);
}

void Reading::below(std::size_t place) {
  path.insert(0, path.empty() || path.front() == '[' ? "" : ".");
  path.insert(0, '[' + std::to_string(place) + ']');
}

Error Reading::finished() {
  Error out = std::move(*error);
  out.subject = path;
  out.args.front().second = std::move(path);
  return out;
}

bool Reading::in_range(const Field& field, double value) {
  if (std::isfinite(value) && value >= field.min && value <= field.max) return true;
  std::string found;
  std::string low;
  std::string high;
  write_number(found, value);
  write_number(low, field.min);
  write_number(high, field.max);
  error = Error{Code::OutOfRange,
                "read JSON",
                "",
                {{"field", ""}, {"value", found}, {"min", low}, {"max", high}}};
  return false;
}

void schema_open(std::string& out, const Field& field, std::string_view type) {
  out += "{\"type\":";
  write_text(out, type);
  if (field.unit.empty() && field.doc.empty()) return;
  std::string words(field.doc);
  if (!field.unit.empty())
    words += (words.empty() ? "" : "; ") + std::string("unit: ") + std::string(field.unit);
  out += ",\"description\":";
  write_text(out, words);
}

void schema_range(std::string& out, const Field& field) {
  if (std::isfinite(field.min)) {
    out += ",\"minimum\":";
    write_number(out, field.min);
  }
  if (std::isfinite(field.max)) {
    out += ",\"maximum\":";
    write_number(out, field.max);
  }
}

}  // namespace json
}  // namespace jambline
