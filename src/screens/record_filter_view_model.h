// screens/record_filter_view_model.h: what the record is asked beside the typed words, as a
// sentence whose parts are chosen, added and left out; and the questions that are kept under a
// name.
//
// Sentence: parts of a SentenceFilter; "where" and "opened" are always said, "add" opens what can
// be
//           added. Days ("this week") count from the day on which it is asked, also in a kept one.
// Kept:     on this device (engine/saved_questions.h), with the typed words; each name once. What
// was
//           removed can be put back until something else is removed.
// Threads:  GUI.
#pragma once

#include <QObject>
#include <QVariantList>
#include <optional>
#include <qqmlregistration.h>
#include <utility>

#include "screens/find_sentence.h"
#include "screens/row_list.h"
#include "screens/session.h"

namespace jambline::screens {

class RecordFilterViewModel final : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Part of RecordViewModel")
  Q_PROPERTY(QVariantList sentence READ sentence NOTIFY changed)
  Q_PROPERTY(QString color READ color NOTIFY changed)  // as it was typed
  Q_PROPERTY(bool asks READ asks NOTIFY changed)       // words or a part
  Q_PROPERTY(bool mayKeep READ mayKeep NOTIFY changed)
  Q_PROPERTY(QString suggestedName READ suggestedName NOTIFY changed)
  Q_PROPERTY(QAbstractItemModel* kept READ kept CONSTANT)  // name, words, chosen
  Q_PROPERTY(int keptCount READ keptCount NOTIFY changed)
  Q_PROPERTY(QString chosen READ chosen NOTIFY changed)    // the kept one that is asked; "" none
  Q_PROPERTY(QString removed READ removed NOTIFY changed)  // its name, until it is put back
  Q_PROPERTY(QString wrongName READ wrongName NOTIFY changed)  // why a name cannot be; "" it can

 public:
  explicit RecordFilterViewModel(Session& session, QObject* parent = nullptr);

  QVariantList sentence() const;
  QString color() const { return QString::fromStdString(question_.asked.color); }
  bool asks() const { return is_set(question_) || !question_.asked.words.empty(); }
  bool filters() const { return is_set(question_); }
  bool mayKeep() const { return asks() && chosen().isEmpty(); }
  QString suggestedName() const;
  QAbstractItemModel* kept() { return &rows_; }
  int keptCount() const { return static_cast<int>(kept_.size()); }
  QString chosen() const;
  QString removed() const { return removed_ ? text_of(removed_->second.name) : QString(); }
  QString wrongName() const { return wrong_name_; }

  shelf::FindAsked asked_now() const;     // words too
  void know_words(const QString& words);  // as they are typed
  void know_oldest(std::optional<std::int64_t> opened_ms) { oldest_ms_ = opened_ms; }

  Q_INVOKABLE QString titleOf(const QString& key) const;
  Q_INVOKABLE QVariantList
  choices(const QString& key) const;  // {text, chosen}; of "add": {text, key}
  Q_INVOKABLE bool isMany(const QString& key) const;
  Q_INVOKABLE bool isSet(const QString& key) const;
  Q_INVOKABLE void choose(const QString& key, int row);
  Q_INVOKABLE void sayColor(const QString& color);
  Q_INVOKABLE void leaveOut(const QString& key);
  Q_INVOKABLE void clear();  // parts and words

  Q_INVOKABLE bool keep(const QString& name);    // false: wrongName says why
  Q_INVOKABLE bool rename(const QString& name);  // the chosen one
  Q_INVOKABLE void remove();                     // the chosen one; it stays asked
  Q_INVOKABLE void putBack();
  Q_INVOKABLE void open(const QString& name);  // asks it; the chosen one: asks nothing any more
  Q_INVOKABLE void nameAgain();                // forgets wrongName

 signals:
  void changed();
  void asked();                           // another question
  void wordsGiven(const QString& words);  // of one that was opened

 private:
  static QString text_of(const std::string& text) { return QString::fromStdString(text); }
  FindWorld world() const;
  QString told(const engine::SavedQuestion& question) const;
  const engine::SavedQuestion* find_chosen() const;
  bool may_be_called(const QString& name, const engine::SavedQuestion* itself);
  void ask_anew();
  void put_down();  // keeps the list
  void refresh();

  Session& session_;
  engine::SavedQuestion question_;  // what is asked; without a name
  std::optional<std::int64_t> oldest_ms_;
  std::vector<engine::SavedQuestion> kept_;
  std::optional<std::pair<std::size_t, engine::SavedQuestion>> removed_;
  QString wrong_name_;
  RowList rows_;
};

}  // namespace jambline::screens
