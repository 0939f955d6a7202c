// screens/correct_words.h: the words that people read for film, rounds, booths and causes.
#pragma once

#include <QString>

#include "entries/entry.h"

namespace jambline::screens {

QString words_of(job::ParticleLook look);
QString words_of(job::MarkEnd end);
QString words_of(job::BoothKind booth_kind);
QString words_of(job::BoothEvent booth_event);
QString words_of(job::DirtCause cause);
QString words_of(job::CutItem cut_item);
QString words_of(job::OverrideReason reason);
QString words_of(job::FilmWhen when);
QString words_of(job::FilmGauge gauge);
QString words_of(job::FilmUnit unit);
QString words_of(job::Round round);
QString words_of(job::RoundHow how);
// The readings as they were typed: "112, 115, 118 µm".
QString readings_words(const std::vector<double>& typed, job::FilmUnit unit);

}  // namespace jambline::screens
