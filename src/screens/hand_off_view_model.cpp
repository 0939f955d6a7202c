#include "screens/hand_off_view_model.h"

#include <algorithm>

#include "screens/plate.h"
#include "screens/state_kind.h"
#include "screens/text.h"
#include "screens/words.h"

namespace jambline::screens {

namespace {
using folds::PartAt;
using folds::ReleaseState;

QString key_of(const folds::FloorRow& car, const PartAt& part) {
  return text(car.job.hex()) + QChar('/') +
         (part.panel ? text(std::string(word_of(*part.panel))) : QString());
}

StateKind shape_of_part(const PartAt& part) {
  if (part.disputed) return StateKind::Disputed;
  switch (part.state) {
    case ReleaseState::Offered:
      return StateKind::Waits;
    case ReleaseState::Taken:
      return StateKind::Done;
    case ReleaseState::Returned:
      return StateKind::Must;
    case ReleaseState::None:
      break;
  }
  return StateKind::NotYet;
}

// Each word somewhere, in any order.
bool fits(const QString& query, const QString& said) {
  const QStringList words = query.simplified().split(QChar(' '), Qt::SkipEmptyParts);
  return std::all_of(words.begin(), words.end(),
                     [&](const QString& word) { return said.contains(word, Qt::CaseInsensitive); });
}
}  // namespace

HandOffViewModel::HandOffViewModel(Session& session, QObject* parent)
    : QObject(parent),
      session_(session),
      offers_({"key", "title", "words"}, this),
      found_({"key", "title", "words", "shape"}, this) {
  connect(&session, &Session::snapshotChanged, this, &HandOffViewModel::refresh);
  refresh();
}

QString HandOffViewModel::name_of(const folds::FloorRow& car, const PartAt& part) const {
  return part.panel ? words_of(*part.panel, car.body) : tr("whole car");
}

QString HandOffViewModel::place(const PartAt& part, bool says_to) const {
  QStringList out;
  const QString giver = session_.name_of(part.giver);
  if (part.disputed) out << tr("disputed");
  switch (part.state) {
    case ReleaseState::Taken:
      out << (part.taker ? tr("with %1").arg(session_.name_of(*part.taker)) : tr("taken"));
      break;
    case ReleaseState::Returned:
      out << tr("sent back, with %1").arg(giver);
      break;
    case ReleaseState::Offered:
      for (const auto& rack : session_.shop().racks)
        if (rack.rack == part.rack) out << text(rack.name);
      if (part.to && says_to) out << tr("for the %1").arg(words_of(*part.to));
      out << tr("from %1").arg(giver);
      break;
    case ReleaseState::None:
      out << (part.clean ? tr("clean, not on a rack yet") : tr("not clean yet"));
      break;
  }
  return out.join(tr(", "));
}

bool HandOffViewModel::for_me(const PartAt& part) const {
  const auto* person = session_.shop().find(session_.person());
  return person && part.state == ReleaseState::Offered && !part.disputed &&
         part.to == person->role && part.giver != person->person;
}

void HandOffViewModel::refresh() {
  struct Offer {
    std::int64_t wall_ms;
    QVariantList row;
  };
  std::vector<Offer> offers;
  std::vector<QVariantList> found;
  part_count_ = 0;
  for (const auto& car : *session_.snapshot().floor) {
    for (const auto& part : car.parts) {
      ++part_count_;
      const QString key = key_of(car, part);
      const QString name = name_of(car, part);
      const QString where = place(part, true);
      const QString title = tr("%1, %2").arg(sentence(name), plate_of(car));
      const QString said = title + QChar(' ') + text(car.color.name) + QChar(' ') + where;
      if (fits(query_, said)) found.push_back({key, title, where, shape_of(shape_of_part(part))});
      if (for_me(part))
        offers.push_back({part.wall_ms,
                          {key, tr("Take the %1").arg(name),
                           tr("%1 \u00b7 %2").arg(plate_of(car), place(part, false))}});
    }
  }
  std::stable_sort(offers.begin(), offers.end(),
                   [](const Offer& a, const Offer& b) { return a.wall_ms < b.wall_ms; });
  offer_count_ = static_cast<int>(offers.size());
  std::vector<QVariantList> shown;
  for (auto& one : offers)
    if (static_cast<int>(shown.size()) < offers_shown) shown.push_back(std::move(one.row));
  offers_.set(std::move(shown));
  found_.set(std::move(found));
  emit changed();
}

QString HandOffViewModel::moreWords(int shown) const {
  const int more = offer_count_ - shown;
  return more <= 0   ? QString()
         : more == 1 ? tr("1 more part is offered to you")
                     : tr("%1 more parts are offered to you").arg(more);
}

QString HandOffViewModel::foundWords() const {
  if (part_count_ == 0) return tr("No part is loose and none was handed on.");
  if (query_.trimmed().isEmpty())
    return part_count_ == 1 ? tr("1 part") : tr("%1 parts").arg(part_count_);
  return tr("%1 of %2 parts").arg(foundCount()).arg(part_count_);
}

void HandOffViewModel::setQuery(const QString& query) {
  if (query == query_) return;
  query_ = query;
  refresh();
}

void HandOffViewModel::open(const QString& key) {
  session_.openCar(key.section(QChar('/'), 0, 0));
}

}  // namespace jambline::screens
