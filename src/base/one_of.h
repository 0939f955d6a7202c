#pragma once

// One value of one kind out of a list: what std::variant is, for lists of dozens. What a compiler
// does for a std::variant grows with the square of its kinds in every file that makes one, and its
// symbols name all of them; here it is the one kind that is made, and the list has a name (D-124).
//
//   struct PayloadKinds : Kinds<NoteWritten, PlateSet> {};
//   struct Payload : OneOf<PayloadKinds> { using OneOf::OneOf; };
//   extern template const KindActs<PayloadKinds> OneOf<PayloadKinds>::acts;
// and once, in a source that includes base/one_of_acts.h, the same without `extern`.
//
// Holds the first kind when it is made of nothing. Is copied and moved as the kind it holds; what
// was moved from keeps its kind. Every kind moves without throwing.
#include <algorithm>
#include <array>
#include <cstddef>
#include <cstdint>
#include <new>
#include <type_traits>
#include <typeinfo>
#include <utility>

namespace jambline {

template <class Begin, class... Rest>
struct Kinds {
  using First = Begin;
  static constexpr std::size_t count = 1 + sizeof...(Rest);
  static constexpr std::size_t most_bytes = std::max({sizeof(First), sizeof(Rest)...});
  static constexpr std::size_t most_align = std::max({alignof(First), alignof(Rest)...});

  template <class Kind>
  static consteval std::size_t place_of() {  // `count`: it is none of them
    const bool same[] = {std::is_same_v<Kind, First>, std::is_same_v<Kind, Rest>...};
    std::size_t place = 0;
    while (place < count && !same[place]) ++place;
    return place;
  }

  // Calls `use.template operator()<Kind>()` for each, in order.
  template <class Use>
  static void each(Use&& use) {
    use.template operator()<First>();
    (use.template operator()<Rest>(), ...);
  }

  template <template <class> class Of, class Each>
  static constexpr std::array<Each, count> all_of() {
    return {Of<First>::all, Of<Rest>::all...};
  }

  // Room: `void` or `const void`.
  template <class Answer, class Room, class Use>
  static Answer call(std::size_t place, Room* room, Use& use) {
    static constexpr Answer (*calls[])(Room*, Use&) = {&call_one<Answer, Room, Use, First>,
                                                       &call_one<Answer, Room, Use, Rest>...};
    return calls[place](room, use);
  }

 private:
  template <class Answer, class Room, class Use, class Kind>
  static Answer call_one(Room* room, Use& use) {
    using Value = std::conditional_t<std::is_const_v<Room>, const Kind, Kind>;
    static_assert(std::is_same_v<Answer, decltype(use(std::declval<Value&>()))>,
                  "what is asked of one kind and of another has to answer alike");
    return use(*static_cast<Value*>(room));
  }
};

// What can be done to a value without knowing its kind.
struct ActsOnKind {
  void (*copy)(void* to, const void* from);
  void (*move)(void* to, void* from);
  void (*end)(void* value);
};
template <class List>
using KindActs = std::array<ActsOnKind, List::count>;

template <class List>
class OneOf {
 public:
  OneOf() { ::new (room_) typename List::First{}; }
  template <class Kind>
  requires(List::template place_of<Kind>() < List::count) OneOf(Kind value)
      : place_(List::template place_of<Kind>()) {
    ::new (room_) Kind(std::move(value));
  }
  OneOf(const OneOf& other) : place_(other.place_) { acts[place_].copy(room_, other.room_); }
  OneOf(OneOf&& other) noexcept : place_(other.place_) { acts[place_].move(room_, other.room_); }
  OneOf& operator=(const OneOf& other) {
    if (this == &other) return *this;
    OneOf copy(other);
    return *this = std::move(copy);
  }
  OneOf& operator=(OneOf&& other) noexcept {
    if (this == &other) return *this;
    acts[place_].end(room_);
    place_ = other.place_;
    acts[place_].move(room_, other.room_);
    return *this;
  }
  ~OneOf() { acts[place_].end(room_); }

  std::size_t index() const { return place_; }  // in the list

  template <class Kind>
  bool is() const {
    static_assert(List::template place_of<Kind>() < List::count);
    return place_ == List::template place_of<Kind>();
  }
  template <class Kind>
  const Kind* get_if() const {
    return is<Kind>() ? std::launder(reinterpret_cast<const Kind*>(room_)) : nullptr;
  }
  template <class Kind>
  Kind* get_if() {
    return is<Kind>() ? std::launder(reinterpret_cast<Kind*>(room_)) : nullptr;
  }
  template <class Kind>
  const Kind& get() const {  // a std::bad_cast when it holds another
    if (!is<Kind>()) throw std::bad_cast();
    return *get_if<Kind>();
  }
  template <class Kind>
  Kind& get() {
    if (!is<Kind>()) throw std::bad_cast();
    return *get_if<Kind>();
  }
  template <class Kind>
  Kind& emplace() {
    *this = OneOf(Kind{});
    return *get_if<Kind>();
  }

  // What `use` answers to the value as the kind that it is; the same type for every kind.
  template <class Use>
  auto visit(Use&& use) const {
    using Answer = decltype(use(std::declval<const typename List::First&>()));
    return List::template call<Answer, const void>(place_, room_, use);
  }
  template <class Use>
  auto visit(Use&& use) {
    using Answer = decltype(use(std::declval<typename List::First&>()));
    return List::template call<Answer, void>(place_, room_, use);
  }

  static const KindActs<List> acts;

 private:
  alignas(List::most_align) std::byte room_[List::most_bytes];
  std::uint16_t place_ = 0;
};

}  // namespace jambline
