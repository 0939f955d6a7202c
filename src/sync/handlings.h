// sync/handlings.h: the usual ways of handling a request; for sync/*.cpp only.
#pragma once

#include <functional>
#include <string>

#include "base/json.h"
#include "sync/hub_shop.h"
#include "sync/page.h"

namespace jambline::sync {

// The answer is known before any body.
class Answered final : public Handling {
 public:
  explicit Answered(Response response) : response_(std::move(response)) {}
  std::uint64_t most_body_bytes() const override { return 0; }
  std::optional<Response> take(std::span<const std::uint8_t>) override { return response_; }
  Outcome finish() override { return response_; }

 private:
  Response response_;
};

// A body that is small enough to be kept, then one answer.
class Whole final : public Handling {
 public:
  using Then = std::function<Outcome(const std::string& body)>;
  Whole(std::uint64_t most_bytes, Then then) : most_bytes_(most_bytes), then_(std::move(then)) {}
  std::uint64_t most_body_bytes() const override { return most_bytes_; }
  std::optional<Response> take(std::span<const std::uint8_t> piece) override {
    if (body_.size() + piece.size() > most_bytes_) return response_of(problem(Refusal::TooLarge));
    body_.append(reinterpret_cast<const char*>(piece.data()), piece.size());
    return std::nullopt;
  }
  Outcome finish() override { return then_(body_); }

 private:
  std::uint64_t most_bytes_;
  Then then_;
  std::string body_;
};

inline std::unique_ptr<Handling> answered(Response response) {
  return std::make_unique<Answered>(std::move(response));
}
inline std::unique_ptr<Handling> refused(Refusal refusal, std::string detail = {}) {
  return answered(response_of(problem(refusal, std::move(detail))));
}

template <class T>
Response json_answer(const T& value, int status = 200) {
  return {status, {{"Content-Type", std::string(json_media_type)}}, to_json(value)};
}

}  // namespace jambline::sync
