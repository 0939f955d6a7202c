// screens/visit_words.h: the words that people read for the visit, the order of assembly and fit.
#pragma once

#include <QString>

#include "entries/entry.h"

namespace jambline::screens {

QString words_of(job::WorkKind work_kind_word);
QString words_of(job::Approval approval_word);
QString words_of(job::WaitReason wait_word);
QString words_of(job::PartState part_state_word);
QString words_of(job::SubletKind sublet_kind_word);
QString words_of(job::SubletState sublet_state_word);
QString words_of(job::Step step_word);
QString words_of(job::RuleKind rule_kind_word);
QString words_of(job::RuleReason rule_reason_word);
QString words_of(job::FitRound fit_round_word);
QString words_of(job::SignedFor signed_for_word);

}  // namespace jambline::screens
