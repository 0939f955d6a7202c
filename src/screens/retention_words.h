// screens/retention_words.h: the words that people read for classes of records and how long they
// are kept.
#pragma once

#include <QString>

#include "job/retention.h"

namespace jambline::screens {

QString words_of(job::RecordClass record_class_word);  // "time cards"
QString covers_of(job::RecordClass record);            // what is in that class
QString years_of(int years);                           // "1 year", "5 years"
QString usual_words(job::RecordClass record);          // "5 years, the most recent 2 in the shop"
QString usual_source(job::RecordClass record);  // "OSHA, 29 CFR 1910.1020(d)(1), text of 1996"

}  // namespace jambline::screens
