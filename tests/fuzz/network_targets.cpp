#include "tests/fuzz/targets.h"

namespace jambline::fuzz {

const std::vector<Target>& network_targets() {
  static const std::vector<Target> all{{"message", run_message, message_seeds},
                                       {"page", run_page, page_seeds},
                                       {"invitation", run_invitation, invitation_seeds},
                                       {"target", run_target, target_seeds},
                                       {"tus", run_tus, tus_seeds},
                                       {"request", run_request, request_seeds},
                                       {"answer", run_answer, answer_seeds},
                                       {"kept", run_kept, kept_seeds},
                                       {"control", run_control, control_seeds}};
  return all;
}

}  // namespace jambline::fuzz
