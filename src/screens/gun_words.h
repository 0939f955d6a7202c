// screens/gun_words.h: what is asked before the gun, in words: the question, what the shop's own
// records say of it and how old that is, and what to put right where a stop stands.
//
// Rules: days of a register stand as they were entered, whatever the zone; readings in the shop's
//        zone. Nothing here ever sounds like leave to go on.
#pragma once

#include <QString>

#include "folds/gun_facts.h"
#include "screens/session.h"

namespace jambline::screens {

struct GunWords {
  const Session& session;
  const folds::GunScene& scene;

  QString title(job::GunItem item) const;
  QString known(const folds::GunFact& fact) const;  // "fit test Mar 3, due Mar 3, 2027"
  QString put_right(job::GunItem item) const;       // of a stop

 private:
  const folds::RespiratorView* respirator() const;
  QString day(std::int64_t day_ms) const;
  QString record(const folds::GunFact& fact, const QString& done, const QString& due,
                 const QString& was_due, const QString& broken) const;
  QString filters(const folds::GunFact& fact) const;
  QString respirator_words(const folds::GunFact& fact) const;
};

QString class_words(job::CheckClass check_class);  // "stop"

}  // namespace jambline::screens
