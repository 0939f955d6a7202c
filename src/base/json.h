// base/json.h: JSON text of a described value, and back.
//
// Writing: fields in description order, no spaces, shortest numbers that read back equal
//          (std::to_chars; with an exponent from 2^63 on, minus zero as -0.0), an absent optional
//          is left out. NaN and infinity are programmer errors.
// Reading: every described field that is not optional must be there; numbers must be finite and in
//          the field's range; enum words must be known; text must be UTF-8. Strict::Yes also
//          refuses members that nobody described. Errors are Malformed, Missing or OutOfRange and
//          name the field by its path ("panels[2].x_mm").
// Threads: any; each thread has its own parser. Limit: 64 MiB of text.
// Source:  RFC 8259; parsed by simdjson.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <utility>

#include "base/describe.h"
#include "base/error.h"

namespace jambline {

enum class Strict : bool { No, Yes };

// One value of a parsed document; valid while the JsonDocument lives.
class JsonValue {
 public:
  enum class Type : std::uint8_t { Null, Bool, Integer, Number, Text, List, Object };
  Type type() const { return type_; }
  bool boolean() const;          // Type::Bool
  std::int64_t integer() const;  // Type::Integer
  // A whole number past the range of integer() that still fits here; its type() is Number.
  std::optional<std::uint64_t> large() const;
  double number() const;          // Integer or Number
  std::string_view text() const;  // Type::Text
  std::size_t size() const;       // List or Object

 private:
  friend class JsonDocument;
  friend class JsonMembers;
  friend class JsonItems;
  friend struct JsonFill;
  alignas(8) unsigned char raw_[16]{};
  Type type_ = Type::Null;
};

// The members of an object. find() is O(1) when asked in the order of writing.
class JsonMembers {
 public:
  explicit JsonMembers(const JsonValue& object);
  bool find(std::string_view name, JsonValue& out);
  // The first member that find() never gave out, or empty.
  std::string_view first_unasked(const std::vector<std::string_view>& asked) const;

 private:
  JsonValue object_;
  alignas(8) unsigned char next_[16]{};
  alignas(8) unsigned char end_[16]{};
};

class JsonItems {
 public:
  explicit JsonItems(const JsonValue& list);
  bool next(JsonValue& out);

 private:
  alignas(8) unsigned char next_[16]{};
  alignas(8) unsigned char end_[16]{};
};

// Parses with the calling thread's parser: a second parse on the same thread ends the first.
class JsonDocument {
 public:
  static Result<JsonValue> parse(std::string_view text);
};

namespace json {

void write_text(std::string& out, std::string_view text);
void write_number(std::string& out, double number);
void write_integer(std::string& out, std::int64_t number);
void write_unsigned(std::string& out, std::uint64_t number);

template <class T>
void write(std::string& out, const T& value);

struct Writer {
  std::string& out;
  bool first = true;
  template <class T>
  void operator()(const Field& field, const T& value) {
    if constexpr (is_optional<T>) {
      if (!value) return;
    }
    if (!first) out.push_back(',');
    first = false;
    write_text(out, field.name);
    out.push_back(':');
    if constexpr (is_optional<T>)
      write(out, *value);
    else
      write(out, value);
  }
};

template <class T>
void write(std::string& out, const T& value) {
  if constexpr (std::is_same_v<T, bool>) {
    out += value ? "true" : "false";
  } else if constexpr (WordedEnum<T>) {
    write_text(out, word_of(value));
  } else if constexpr (std::unsigned_integral<T>) {
    write_unsigned(out, value);
  } else if constexpr (std::integral<T>) {
    write_integer(out, value);
  } else if constexpr (std::floating_point<T>) {
    write_number(out, value);
  } else if constexpr (is_bytes<T>) {
    out.push_back('"');
    out += value.hex();
    out.push_back('"');
  } else if constexpr (is_vector<T>) {
    out.push_back('[');
    bool first = true;
    for (const auto& item : value) {
      if (!first) out.push_back(',');
      first = false;
      write(out, item);
    }
    out.push_back(']');
  } else if constexpr (Described<T>) {
    out.push_back('{');
    Writer writer{out};
    T::describe(value, writer);
    out.push_back('}');
  } else {
    write_text(out, value);
  }
}

// The first error; its path is put together on the way out, so that good text costs nothing.
struct Reading {
  Strict strict = Strict::No;
  std::string path = {};
  std::optional<Error> error = {};

  void refuse(Code code, std::string cause);
  bool in_range(const Field& field, double value);
  void below(std::string_view name);
  void below(std::size_t place);
  Error finished();
};

template <class T>
bool read(Reading& at, const Field& field, const JsonValue& in, T& out);

struct Reader {
  Reading& at;
  JsonMembers members;
  bool strict;
  std::vector<std::string_view> asked = {};

  template <class T>
  void operator()(const Field& field, T& value) {
    if (at.error) return;
    if (strict) asked.push_back(field.name);
    JsonValue member;
    const bool found = members.find(field.name, member);
    if (!found || member.type() == JsonValue::Type::Null) {
      if constexpr (is_optional<T>)
        value.reset();
      else
        at.refuse(Code::Missing, "");
    } else if constexpr (is_optional<T>) {
      read(at, field, member, value.emplace());
    } else {
      read(at, field, member, value);
    }
    if (at.error) at.below(field.name);
  }
};

template <class T>
bool read(Reading& at, const Field& field, const JsonValue& in, T& out) {
  using Type = JsonValue::Type;
  const Type type = in.type();
  if constexpr (std::is_same_v<T, bool>) {
    if (type != Type::Bool) return at.refuse(Code::Malformed, "wants true or false"), false;
    out = in.boolean();
  } else if constexpr (WordedEnum<T>) {
    if (type != Type::Text) return at.refuse(Code::Malformed, "wants a word"), false;
    const auto value = from_word<T>(in.text());
    if (!value) return at.refuse(Code::Unknown, "unknown word " + std::string(in.text())), false;
    out = *value;
  } else if constexpr (std::integral<T>) {
    if constexpr (std::is_same_v<T, std::uint64_t>) {
      if (const auto large = in.large()) {
        if (!at.in_range(field, static_cast<double>(*large))) return false;
        out = *large;
        return true;
      }
    }
    if (type != Type::Integer) return at.refuse(Code::Malformed, "wants a whole number"), false;
    const std::int64_t value = in.integer();
    if (!std::in_range<T>(value)) return at.refuse(Code::OutOfRange, std::to_string(value)), false;
    if (!at.in_range(field, static_cast<double>(value))) return false;
    out = static_cast<T>(value);
  } else if constexpr (std::floating_point<T>) {
    if (type != Type::Integer && type != Type::Number)
      return at.refuse(Code::Malformed, "wants a number"), false;
    const double value = in.number();
    if (!at.in_range(field, value)) return false;
    out = value;
  } else if constexpr (is_bytes<T>) {
    if (type != Type::Text) return at.refuse(Code::Malformed, "wants hex text"), false;
    if (!from_hex(in.text(), out.bytes)) return at.refuse(Code::Malformed, "wants hex text"), false;
  } else if constexpr (is_vector<T>) {
    if (type != Type::List) return at.refuse(Code::Malformed, "wants a list"), false;
    out.clear();
    out.reserve(in.size());
    JsonItems items(in);
    JsonValue item;
    while (items.next(item)) {
      if (read(at, field, item, out.emplace_back())) continue;
      at.below(out.size() - 1);
      return false;
    }
  } else if constexpr (Described<T>) {
    if (type != Type::Object) return at.refuse(Code::Malformed, "wants an object"), false;
    Reader reader{at, JsonMembers(in), at.strict == Strict::Yes};
    T::describe(out, reader);
    if (at.error) return false;
    if (reader.strict) {
      const std::string_view extra = reader.members.first_unasked(reader.asked);
      if (!extra.empty()) {
        at.refuse(Code::Unknown, "no such field");
        at.below(extra);
        return false;
      }
    }
  } else {
    if (type != Type::Text) return at.refuse(Code::Malformed, "wants text"), false;
    out = std::string(in.text());
  }
  return true;
}

// JSON Schema (draft 2020-12) of one described struct.
void schema_open(std::string& out, const Field& field, std::string_view type);
void schema_range(std::string& out, const Field& field);

template <class T>
void schema(std::string& out, const Field& field);

struct SchemaFields {
  std::string& out;
  std::string required = {};
  bool first = true;
  template <class T>
  void operator()(const Field& field, T&) {
    using Value = std::remove_const_t<T>;
    if (!first) out.push_back(',');
    first = false;
    write_text(out, field.name);
    out.push_back(':');
    if constexpr (is_optional<Value>) {
      schema<typename Value::value_type>(out, field);
    } else {
      schema<Value>(out, field);
      if (!required.empty()) required.push_back(',');
      write_text(required, field.name);
    }
  }
};

template <class T>
void schema(std::string& out, const Field& field) {
  if constexpr (std::is_same_v<T, bool>) {
    schema_open(out, field, "boolean");
  } else if constexpr (WordedEnum<T>) {
    schema_open(out, field, "string");
    out += ",\"enum\":[";
    for (std::size_t i = 0; i < enum_words<T>.size(); ++i) {
      if (i) out.push_back(',');
      write_text(out, enum_words<T>[i]);
    }
    out.push_back(']');
  } else if constexpr (std::integral<T>) {
    schema_open(out, field, "integer");
    schema_range(out, field);
  } else if constexpr (std::floating_point<T>) {
    schema_open(out, field, "number");
    schema_range(out, field);
  } else if constexpr (is_bytes<T>) {
    schema_open(out, field, "string");
    out += ",\"pattern\":\"^[0-9a-f]{" + std::to_string(2 * T::size) + "}$\"";
  } else if constexpr (is_vector<T>) {
    schema_open(out, field, "array");
    out += ",\"items\":";
    schema<typename T::value_type>(out, Field{{}, field.unit, {}, field.min, field.max});
  } else if constexpr (Described<T>) {
    schema_open(out, field, "object");
    out += ",\"additionalProperties\":false,\"properties\":{";
    T value{};
    SchemaFields fields{out};
    T::describe(value, fields);
    out += "},\"required\":[" + fields.required + "]";
  } else {
    schema_open(out, field, "string");
  }
  out.push_back('}');
}

}  // namespace json

template <class T>
std::string to_json(const T& value) {
  std::string out;
  json::write(out, value);
  return out;
}

// Into a value that is there already; after an error it holds what was read until then.
template <class T>
Status read_json(std::string_view text, T& out, Strict strict = Strict::No) {
  JAMBLINE_ASSIGN(const JsonValue value, JsonDocument::parse(text));
  json::Reading at{strict};
  json::read(at, Field{}, value, out);
  if (at.error) return fail(at.finished());
  return {};
}

template <class T>
Result<T> from_json(std::string_view text, Strict strict = Strict::No) {
  T out{};
  JAMBLINE_TRY(read_json(text, out, strict));
  return out;
}

template <Described T>
std::string json_schema() {
  std::string out;
  json::schema<T>(out, Field{});
  return out;
}

}  // namespace jambline
