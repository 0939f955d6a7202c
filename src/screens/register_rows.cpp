#include "screens/register_rows.h"

#include <QCoreApplication>
#include <QStringList>
#include <algorithm>

#include "screens/air_words.h"
#include "screens/exposure_words.h"
#include "screens/text.h"
#include "screens/typed_times.h"
#include "screens/words.h"

namespace jambline::screens {

namespace {
constexpr int soon_days = 30;

QString register_tr(const char* words) {
  return QCoreApplication::translate("register", words);
}

QString hours(double value) {
  return register_tr(QT_TRANSLATE_NOOP("register", "%1 h")).arg(concentration_number(value));
}

const folds::RespiratorView* model_of(const folds::AirView& air, const RespiratorId& respirator) {
  return air.find(respirator);
}

QString model_words(const folds::AirView& air, const RespiratorId& respirator) {
  const auto* known = model_of(air, respirator);
  return known ? text(known->said.model)
               : register_tr(QT_TRANSLATE_NOOP("register", "a respirator that is not here"));
}

RegisterRow fit_row(const folds::AirView& air, const folds::FitTestView& test, int today) {
  const auto& said = test.said;
  const auto due = due_words(said.tested_day + said.valid_days, today);
  RegisterRow row;
  row.key = QStringLiteral("fit ") + text(test.respirator.hex());
  row.kind = register_tr(QT_TRANSLATE_NOOP("register", "Fit test"));
  row.title = register_tr(QT_TRANSLATE_NOOP("register", "Fit test, %1"))
                  .arg(model_words(air, test.respirator));
  if (!said.size.empty())
    row.title =
        register_tr(QT_TRANSLATE_NOOP("register", "%1, size %2")).arg(row.title, text(said.size));
  row.note = register_tr(QT_TRANSLATE_NOOP("register", "%1, tested %2"))
                 .arg(words_of(said.method), date_of_day(said.tested_day));
  row.state = due.state;
  row.state_words = due.words;
  bool passes = said.passed;
  if (said.method == job::FitMethod::Quantitative) {
    trade::FitTest asked;
    asked.exercise_factors = said.exercise_factors;
    const auto* known = model_of(air, test.respirator);
    asked.facepiece = known ? job::facepiece_of(known->said.kind) : trade::Facepiece::Full;
    asked.age_days = today - said.tested_day;
    asked.valid_days = said.valid_days;
    const auto result = trade::fit_test(asked);
    passes = result && result->passes;
    if (result) {
      row.words = register_tr(QT_TRANSLATE_NOOP("register", "fit factor %1, pass mark %2"))
                      .arg(concentration_number(result->overall_factor, result->pass_mark),
                           concentration_number(result->pass_mark));
      row.basis = result->basis;
    }
  } else {
    row.words = passes ? register_tr(QT_TRANSLATE_NOOP("register", "passed"))
                       : register_tr(QT_TRANSLATE_NOOP("register", "not passed"));
  }
  if (said.tested_day > today) {
    row.state = StateKind::Must;
    row.state_words = register_tr(QT_TRANSLATE_NOOP("register", "the day is still to come"));
  } else if (!passes) {
    row.state = StateKind::Must;
    row.state_words = said.method == job::FitMethod::Quantitative
                          ? register_tr(QT_TRANSLATE_NOOP("register", "under the pass mark"))
                          : register_tr(QT_TRANSLATE_NOOP("register", "not passed"));
  }
  return row;
}

RegisterRow cartridge_row(const folds::AirView& air, const folds::CartridgeView& cartridge,
                          const RegisterDay& day) {
  RegisterRow row;
  row.key = QStringLiteral("cartridge ") + text(cartridge.respirator.hex());
  row.kind = register_tr(QT_TRANSLATE_NOOP("register", "Cartridge"));
  row.title = register_tr(QT_TRANSLATE_NOOP("register", "Cartridge, %1"))
                  .arg(model_words(air, cartridge.respirator));
  row.note = register_tr(QT_TRANSLATE_NOOP("register", "changed %1; schedule of %2 rests on: %3"))
                 .arg(date_of_day(today_of(cartridge.changed_ms, day.zone)),
                      hours(cartridge.schedule_h), text(cartridge.schedule_basis));
  const auto left =
      trade::cartridge_left({cartridge.schedule_h, cartridge.schedule_basis, cartridge.used_h});
  if (!left) {
    row.state = StateKind::Must;
    row.state_words = register_tr(QT_TRANSLATE_NOOP("register", "its hours cannot be counted"));
    return row;
  }
  row.basis = left->basis;
  row.words = left->left_h > 0
                  ? register_tr(QT_TRANSLATE_NOOP("register", "%1 left")).arg(hours(left->left_h))
                  : register_tr(QT_TRANSLATE_NOOP("register", "%1 over")).arg(hours(-left->left_h));
  row.state = left->change ? StateKind::Must : StateKind::Done;
  row.state_words = left->change
                        ? register_tr(QT_TRANSLATE_NOOP("register", "change it"))
                        : register_tr(QT_TRANSLATE_NOOP("register", "within its schedule"));
  return row;
}

RegisterRow due_row(const folds::PersonAirView* known, job::DueKind what, int today) {
  RegisterRow row;
  row.key = QStringLiteral("due %1").arg(static_cast<int>(what));
  row.title = sentence(words_of(what));
  row.kind = row.title;
  row.state = StateKind::NotYet;
  row.state_words = register_tr(QT_TRANSLATE_NOOP("register", "no day entered"));
  if (!known) return row;
  for (const auto& one : known->dues) {
    if (one.what != what) continue;
    const auto due = due_words(one.due_day, today);
    row.state = due.state;
    row.state_words = due.words;
  }
  return row;
}

// What is not kept presses more than what is in date.
int pressing(const RegisterRow& row) {
  switch (row.state) {
    case StateKind::Must:
      return 3;
    case StateKind::Waits:
      return 2;
    case StateKind::NotYet:
      return 1;
    default:
      return 0;
  }
}
}  // namespace

DueWords due_words(int due_day, int today) {
  const QString date = date_of_day(due_day);
  if (due_day < today)
    return {StateKind::Must,
            register_tr(QT_TRANSLATE_NOOP("register", "overdue since %1")).arg(date)};
  if (due_day - today <= soon_days)
    return {StateKind::Waits, register_tr(QT_TRANSLATE_NOOP("register", "due %1, %2"))
                                  .arg(date, days_apart_words(due_day, today))};
  return {StateKind::Done, register_tr(QT_TRANSLATE_NOOP("register", "in date to %1")).arg(date)};
}

std::vector<RegisterRow> register_rows(const folds::AirView& air, const PersonId& person,
                                       const RegisterDay& day) {
  std::vector<RegisterRow> out;
  const int today = today_of(day.now_ms, day.zone);
  const auto* known = air.find(person);
  std::vector<const folds::FitTestView*> last;  // of each respirator; the list is by day
  if (known)
    for (const auto& test : known->fit_tests) {
      const auto same = std::find_if(last.begin(), last.end(), [&](const auto* one) {
        return one->respirator == test.respirator;
      });
      if (same != last.end())
        *same = &test;
      else
        last.push_back(&test);
    }
  for (const auto* test : last) out.push_back(fit_row(air, *test, today));
  if (last.empty()) {
    RegisterRow none;
    none.key = QStringLiteral("fit");
    none.title = register_tr(QT_TRANSLATE_NOOP("register", "Fit test"));
    none.note =
        register_tr(QT_TRANSLATE_NOOP("register",
                                      "What fits tightly is tested, on an airline too. A loose "
                                      "hood is not."));
    none.state = StateKind::NotYet;
    none.state_words = register_tr(QT_TRANSLATE_NOOP("register", "none kept"));
    out.push_back(std::move(none));
  }
  if (known)
    for (const auto& cartridge : known->cartridges)
      out.push_back(cartridge_row(air, cartridge, day));
  for (std::size_t i = 0; i < enum_words<job::DueKind>.size(); ++i)
    out.push_back(due_row(known, static_cast<job::DueKind>(i), today));
  return out;
}

RegisterRow worst_of(const std::vector<RegisterRow>& rows) {
  const auto worst = std::max_element(rows.begin(), rows.end(), [](const auto& a, const auto& b) {
    return pressing(a) < pressing(b);
  });
  return worst == rows.end() ? RegisterRow{} : *worst;
}

RegisterRow breathing_air_row(const folds::AirView& air, const RegisterDay& day) {
  RegisterRow row;
  row.key = QStringLiteral("air");
  row.title = register_tr(QT_TRANSLATE_NOOP("register", "Breathing air"));
  row.state = StateKind::NotYet;
  row.state_words = register_tr(QT_TRANSLATE_NOOP("register", "no record kept"));
  row.note = register_tr(QT_TRANSLATE_NOOP("register",
                                           "Grade D, CO alarm and low-flow alarm, as the record "
                                           "of the compressor says."));
  if (!air.breathing_air) return row;
  const auto& said = air.breathing_air->said;
  const int today = today_of(day.now_ms, day.zone);
  const auto due = due_words(said.checked_day + said.valid_days, today);
  row.state = due.state;
  row.state_words = due.words;
  QStringList bad;
  if (!said.grade_d) bad << register_tr(QT_TRANSLATE_NOOP("register", "Grade D is not met"));
  if (!said.co_alarm_works)
    bad << register_tr(QT_TRANSLATE_NOOP("register", "CO alarm does not work"));
  if (!said.low_flow_alarm_works)
    bad << register_tr(QT_TRANSLATE_NOOP("register", "low-flow alarm does not work"));
  row.words = bad.isEmpty()
                  ? register_tr(QT_TRANSLATE_NOOP("register", "Grade D met, both alarms work"))
                  : bad.join(register_tr(QT_TRANSLATE_NOOP("register", "; ")));
  row.note =
      register_tr(QT_TRANSLATE_NOOP("register", "checked %1")).arg(date_of_day(said.checked_day));
  if (said.checked_day > today) {
    row.state = StateKind::Must;
    row.state_words = register_tr(QT_TRANSLATE_NOOP("register", "the day is still to come"));
  } else if (!bad.isEmpty()) {
    row.state = StateKind::Must;
    row.state_words = register_tr(QT_TRANSLATE_NOOP("register", "put it right"));
  }
  return row;
}

}  // namespace jambline::screens
