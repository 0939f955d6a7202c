#include "screens/record_filter_view_model.h"

#include <algorithm>

#include "screens/words.h"

namespace jambline::screens {

namespace {
constexpr qsizetype most_name = 60;

QVariantMap part_row(const QString& text, const QString& key, bool changed) {
  return {{QStringLiteral("text"), text},
          {QStringLiteral("key"), key},
          {QStringLiteral("changed"), changed}};
}
bool always_said(FindPart part) {
  return part == FindPart::Where || part == FindPart::Opened;
}
}  // namespace

RecordFilterViewModel::RecordFilterViewModel(Session& session, QObject* parent)
    : QObject(parent),
      session_(session),
      kept_(engine::saved_questions(session.engine())),
      rows_({"called", "words", "chosen"}, this) {
  refresh();
}

FindWorld RecordFilterViewModel::world() const {
  return {&session_.shop(), session_.now().wall_ms, session_.zone(), oldest_ms_};
}

QVariantList RecordFilterViewModel::sentence() const {
  QVariantList out;
  for (std::size_t i = 0; i < find_parts; ++i) {
    const auto part = static_cast<FindPart>(i);
    const bool set = is_set(part, question_);
    if (set || always_said(part))
      out << part_row(said(part, question_, world()), key_of(part), set);
  }
  return out << part_row(tr("and …"), QStringLiteral("add"), false);
}

QString RecordFilterViewModel::told(const engine::SavedQuestion& question) const {
  QStringList out;
  if (!question.asked.words.empty()) out << tr("\"%1\"").arg(text_of(question.asked.words));
  for (std::size_t i = 0; i < find_parts; ++i)
    if (const auto part = static_cast<FindPart>(i); is_set(part, question))
      out << said(part, question, world());
  return screens::sentence(out.join(tr(", ")));
}

QString RecordFilterViewModel::suggestedName() const {
  return told(question_).left(most_name);
}

shelf::FindAsked RecordFilterViewModel::asked_now() const {
  return screens::asked_now(question_, world());
}

void RecordFilterViewModel::know_words(const QString& words) {
  const std::string typed = words.simplified().toStdString();
  if (typed == question_.asked.words) return;
  question_.asked.words = typed;
  refresh();
}

QString RecordFilterViewModel::titleOf(const QString& key) const {
  const auto part = part_of(key);
  return part ? name_of(*part) : tr("Only cars that fit");
}

QVariantList RecordFilterViewModel::choices(const QString& key) const {
  QVariantList out;
  const auto part = part_of(key);
  if (!part) {
    for (std::size_t i = 0; i < find_parts; ++i) {
      const auto one = static_cast<FindPart>(i);
      const bool nothing_there = one != FindPart::Color && choices_of(one, world()).isEmpty();
      if (!is_set(one, question_) && !always_said(one) && !nothing_there)
        out << part_row(name_of(one), key_of(one), false);
    }
    return out;
  }
  const QList<int> chosen = chosen_of(*part, question_, world());
  const QStringList words = choices_of(*part, world());
  for (qsizetype row = 0; row < words.size(); ++row)
    out << QVariantMap{{QStringLiteral("text"), words[row]},
                       {QStringLiteral("chosen"), chosen.contains(static_cast<int>(row))}};
  return out;
}

bool RecordFilterViewModel::isMany(const QString& key) const {
  const auto part = part_of(key);
  return part && has_many(*part);
}

bool RecordFilterViewModel::isSet(const QString& key) const {
  const auto part = part_of(key);
  return part && is_set(*part, question_);
}

void RecordFilterViewModel::choose(const QString& key, int row) {
  const auto part = part_of(key);
  if (!part) return;
  screens::choose(*part, row, question_, world());
  ask_anew();
}

void RecordFilterViewModel::sayColor(const QString& color) {
  question_.asked.color = color.simplified().toStdString();
  ask_anew();
}

void RecordFilterViewModel::leaveOut(const QString& key) {
  const auto part = part_of(key);
  if (!part || !is_set(*part, question_)) return;
  leave_out(*part, question_);
  ask_anew();
}

void RecordFilterViewModel::clear() {
  question_ = {};
  emit wordsGiven({});
  ask_anew();
}

void RecordFilterViewModel::ask_anew() {
  refresh();
  emit asked();
}

const engine::SavedQuestion* RecordFilterViewModel::find_chosen() const {
  for (const auto& one : kept_)
    if (one.asked == question_.asked && one.opened == question_.opened) return &one;
  return nullptr;
}

QString RecordFilterViewModel::chosen() const {
  const auto* found = find_chosen();
  return found ? text_of(found->name) : QString();
}

bool RecordFilterViewModel::may_be_called(const QString& name,
                                          const engine::SavedQuestion* itself) {
  wrong_name_.clear();
  if (name.isEmpty()) wrong_name_ = tr("A kept question needs a name.");
  if (name.size() > most_name) wrong_name_ = tr("At most %1 letters.").arg(most_name);
  for (const auto& one : kept_)
    if (&one != itself && text_of(one.name).compare(name, Qt::CaseInsensitive) == 0)
      wrong_name_ = tr("There is a question of this name.");
  if (!wrong_name_.isEmpty()) emit changed();
  return wrong_name_.isEmpty();
}

void RecordFilterViewModel::nameAgain() {
  wrong_name_.clear();
  emit changed();
}

bool RecordFilterViewModel::keep(const QString& name) {
  const QString called = name.simplified();
  if (!mayKeep() || !may_be_called(called, nullptr)) return false;
  kept_.push_back(question_);
  kept_.back().name = called.toStdString();
  put_down();
  return true;
}

bool RecordFilterViewModel::rename(const QString& name) {
  const auto* found = find_chosen();
  const QString called = name.simplified();
  if (!found || !may_be_called(called, found)) return false;
  kept_[static_cast<std::size_t>(found - kept_.data())].name = called.toStdString();
  put_down();
  return true;
}

void RecordFilterViewModel::remove() {
  const auto* found = find_chosen();
  if (!found) return;
  const auto at = found - kept_.data();
  removed_ = {static_cast<std::size_t>(at), *found};
  kept_.erase(kept_.begin() + at);
  put_down();
}

void RecordFilterViewModel::putBack() {
  if (!removed_) return;
  const auto at = std::min(removed_->first, kept_.size());
  kept_.insert(kept_.begin() + static_cast<std::ptrdiff_t>(at), std::move(removed_->second));
  removed_.reset();
  put_down();
}

void RecordFilterViewModel::open(const QString& name) {
  if (!name.isEmpty() && name == chosen()) return clear();
  for (const auto& one : kept_)
    if (text_of(one.name) == name) {
      question_ = one;
      question_.name.clear();
      emit wordsGiven(text_of(question_.asked.words));
      return ask_anew();
    }
}

void RecordFilterViewModel::put_down() {
  engine::keep_questions(session_.engine(), kept_);
  refresh();
}

void RecordFilterViewModel::refresh() {
  const auto* asked_one = find_chosen();
  std::vector<QVariantList> rows;
  for (const auto& one : kept_) rows.push_back({text_of(one.name), told(one), &one == asked_one});
  rows_.set(std::move(rows));
  emit changed();
}

}  // namespace jambline::screens
