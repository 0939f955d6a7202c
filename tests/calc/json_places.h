// tests/calc/json_places.h: every value of a JSON text with its path, and the text with one of them
// replaced or taken out. For well-formed text only.
#pragma once

#include <cctype>
#include <string>
#include <string_view>
#include <vector>

namespace jambline::app {

struct Place {
  std::string path;           // "panels[2].x_mm"; empty: the whole
  char kind{};                // n number, t text, b true or false, o object, l list, z null
  std::size_t begin{};        // of the value
  std::size_t end{};          // one past it
  std::size_t whole_begin{};  // with its name
};

class JsonPlaces {
 public:
  explicit JsonPlaces(std::string_view text) : text_(text) { value("", 0); }

  const std::vector<Place>& all() const { return places_; }
  const Place* find(std::string_view path) const {
    for (const Place& one : places_)
      if (one.path == path) return &one;
    return nullptr;
  }
  std::string said(const Place& place) const {
    return std::string(text_.substr(place.begin, place.end - place.begin));
  }
  std::string with(const Place& place, std::string_view value) const {
    return std::string(text_.substr(0, place.begin)).append(value).append(text_.substr(place.end));
  }
  std::string without(const Place& place) const {
    std::size_t from = place.whole_begin;
    std::size_t to = place.end;
    if (to < text_.size() && text_[to] == ',')
      ++to;
    else if (from > 0 && text_[from - 1] == ',')
      --from;
    return std::string(text_.substr(0, from)).append(text_.substr(to));
  }
  // An object with one more member.
  std::string with_member(const Place& object, std::string_view member) const {
    const bool empty = text_[object.begin + 1] == '}';
    return std::string(text_.substr(0, object.begin + 1))
        .append(member)
        .append(empty ? "" : ",")
        .append(text_.substr(object.begin + 1));
  }

 private:
  char now() const { return text_[at_]; }
  std::string word() {
    const std::size_t from = ++at_;
    while (now() != '"') at_ += now() == '\\' ? 2 : 1;
    return std::string(text_.substr(from, at_++ - from));
  }
  void value(const std::string& path, std::size_t whole_begin) {
    const std::size_t index = places_.size();
    places_.push_back({path, 'n', at_, 0, whole_begin});
    if (now() == '{') {
      places_[index].kind = 'o';
      ++at_;
      while (now() != '}') {
        const std::size_t from = at_;
        const std::string name = word();
        ++at_;  // the colon
        value(path.empty() ? name : path + "." + name, from);
        if (now() == ',') ++at_;
      }
      ++at_;
    } else if (now() == '[') {
      places_[index].kind = 'l';
      ++at_;
      for (std::size_t i = 0; now() != ']'; ++i) {
        value(path + "[" + std::to_string(i) + "]", at_);
        if (now() == ',') ++at_;
      }
      ++at_;
    } else if (now() == '"') {
      places_[index].kind = 't';
      word();
    } else {
      const char first = now();
      if (first == 't' || first == 'f') places_[index].kind = 'b';
      if (first == 'n') places_[index].kind = 'z';
      while (at_ < text_.size() && (std::isalnum(static_cast<unsigned char>(now())) ||
                                    now() == '.' || now() == '+' || now() == '-'))
        ++at_;
    }
    places_[index].end = at_;
  }

  std::string_view text_;
  std::size_t at_ = 0;
  std::vector<Place> places_;
};

// The last name of a path: "x_mm" of "panels[2].x_mm".
inline std::string last_name(const std::string& path) {
  std::string whole = path;
  while (whole.ends_with(']')) whole.resize(whole.rfind('['));
  return whole.substr(whole.rfind('.') + 1);
}

}  // namespace jambline::app
