// screens/air_words.h: the words that people read for booths, protection, spraying, cure and
// limits.
#pragma once

#include <QString>

#include "entries/entry.h"

namespace jambline::screens {

QString words_of(job::BoothWord booth_said_word);
QString words_of(job::BoothReading booth_reading_word);
QString words_of(job::RespiratorKind respirator_word);
QString words_of(job::FitMethod fit_method_word);
QString words_of(job::DueKind due_word);
QString words_of(job::GunItem gun_item_word);
QString words_of(job::GunReason gun_reason_word);
QString words_of(job::ProductKind product_word);
QString words_of(job::PanelGroup panel_group_word);
QString words_of(job::FirstAid first_aid_word);
QString words_of(trade::FactorScheme scheme_word);
QString words_of(trade::LimitKind limit_kind_word);
QString words_of(trade::CureKind cure_word);
QString words_of(trade::CureMilestone milestone_word);

}  // namespace jambline::screens
