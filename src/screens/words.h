// screens/words.h: the words that people read for codes and values; every one through qsTr.
#pragma once

#include <QString>

#include "base/error.h"
#include "entries/entry.h"
#include "job/car.h"
#include "job/mark.h"
#include "job/panel.h"
#include "job/person.h"
#include "job/stage.h"

namespace jambline::screens {

QString words_of(job::Panel panel, job::BodyShape body);  // "left fender", "left door"
QString words_of(job::BodyShape body);
QString words_of(job::Drive drive);
QString words_of(job::Finish finish);
QString words_of(job::Treatment treatment);
QString words_of(trade::Substrate substrate);
QString words_of(job::Stage stage);
QString words_of(job::DefectKind kind);  // "nib", "overspray past masking"
QString words_of(job::Layer layer);
QString words_of(job::DirtClass dirt);
QString words_of(job::Verdict verdict);
QString words_of(job::Role role);
QString sentence(QString words);  // first letter upper case

// What happened, what stands, and what to do: the three lines of a banner; none is ever empty.
struct ErrorWords {
  QString what;
  QString kept;
  QString todo;
};
ErrorWords words_of(const Error& error);
// No act was refused: the device has something to say (its clock, its settings).
bool only_to_know(const Error& error);

}  // namespace jambline::screens
