#include "screens/form.h"

#include <QLocale>
#include <cmath>

#include "screens/typed_times.h"
#include "screens/units.h"

namespace jambline::screens {

namespace {
constexpr int most_text_bytes = 200;

QString typed_plain(double value) {
  return QLocale::c().toString(value, 'g', 12);
}
}  // namespace

Form::Form(Session& session, QObject* parent) : QObject(parent), session_(session) {}

void Form::nothingWrong() {
  if (wrong_field_.isEmpty()) return;
  wrong_field_.clear();
  wrong_words_.clear();
  emit wrongChanged();
}

void Form::refuse(const QString& field, const QString& words) {
  if (refused()) return;  // the first one is put right first
  wrong_field_ = field;
  wrong_words_ = words;
  emit wrongChanged();
}

std::optional<double> Form::number(const QString& field, const QString& text, double least,
                                   double most) {
  const auto value = typed_number(text);
  if (text.trimmed().isEmpty())
    refuse(field, tr("This is still empty."));
  else if (!value)
    refuse(field, tr("This is no number."));
  else if (*value < least || *value > most)
    refuse(field, tr("It can be from %1 to %2.").arg(typed_plain(least), typed_plain(most)));
  else
    return value;
  return std::nullopt;
}

std::optional<int> Form::whole(const QString& field, const QString& text, int least, int most) {
  const auto value = number(field, text, least, most);
  if (!value) return std::nullopt;
  if (*value != std::floor(*value)) {
    refuse(field, tr("A whole number."));
    return std::nullopt;
  }
  return static_cast<int>(*value);
}

std::optional<int> Form::day(const QString& field, const QString& text) {
  const auto value = typed_day(text);
  if (text.trimmed().isEmpty())
    refuse(field, tr("This is still empty."));
  else if (!value)
    refuse(field, tr("Month, day, year: 3/9/2026."));
  return value;
}

std::optional<std::string> Form::words(const QString& field, const QString& text) {
  std::string out = text.trimmed().toStdString();
  if (out.empty())
    refuse(field, tr("This is still empty."));
  else if (out.size() > most_text_bytes)
    refuse(field, tr("This is too long."));
  else
    return out;
  return std::nullopt;
}

void Form::keep_as(acts::Command command) {
  session_.post(std::move(command), [this](const Result<engine::Wrote>& wrote) {
    if (wrote) emit kept();
  });
}

int Form::today() const {
  return today_of(session_.now().wall_ms, session_.zone());
}

bool Form::is_manager() const {
  const auto* one = session_.shop().find(session_.person());
  return one && one->role == job::Role::Manager;
}

}  // namespace jambline::screens
