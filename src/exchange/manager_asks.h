// exchange/manager_asks.h: what a manager's device asks of the hub, as requests, and the answers
// read.
//
// Errors:  of reading an answer: NotAllowed (no manager), Busy, NoSuchFile, WrongServer (no answer
//          of this protocol).
#pragma once

#include "sync/messages.h"
#include "sync/problem.h"
#include "sync/target.h"

namespace jambline::exchange {

sync::Request manager_request(sync::Method method, const sync::Target& target,
                              const sync::Token& token);
// The body when it is good.
Result<std::string> read_answer(const Result<sync::Response>& answer);

}  // namespace jambline::exchange
