// tests/fuzz/targets.h: what is thrown at every decoder, by libFuzzer (preset fuzz) and, in every
// build, by fuzz_test over the seeds and 2,000 seeded mutations of them.
//
// Each target takes any bytes and ends the program when a promise is broken: that whatever decodes
// encodes to the same bytes again, that limits hold, that nothing reads outside its input.
#pragma once

#include <cstdint>
#include <span>
#include <string>
#include <vector>

namespace jambline::fuzz {

using Input = std::span<const std::uint8_t>;

struct Target {
  const char* name;
  void (*run)(Input);
  std::vector<std::string> (*seeds)();
};

void run_entry(Input input);
void run_receipt(Input input);
void run_pack(Input input);
void run_membership(Input input);
void run_json(Input input);
void run_payload(Input input);
void run_estimates(Input input);
void run_bundle(Input input);
std::vector<std::string> bundle_seeds();

// What goes over the network, and small files.
void run_message(Input input);
void run_page(Input input);
void run_invitation(Input input);
void run_target(Input input);
void run_tus(Input input);
void run_request(Input input);  // at a hub
void run_answer(Input input);   // at a device
void run_kept(Input input);
void run_control(Input input);
std::vector<std::string> message_seeds();
std::vector<std::string> page_seeds();
std::vector<std::string> invitation_seeds();
std::vector<std::string> target_seeds();
std::vector<std::string> tus_seeds();
std::vector<std::string> request_seeds();
std::vector<std::string> answer_seeds();
std::vector<std::string> kept_seeds();
std::vector<std::string> control_seeds();

const std::vector<Target>& entry_targets();
const std::vector<Target>& network_targets();

}  // namespace jambline::fuzz
