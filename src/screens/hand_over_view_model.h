// screens/hand_over_view_model.h: the hand-over note of the car on the tape: shown, and written as
// a PDF into a folder that a person chooses.
//
// Saved:   a new file each time, named by plate and time; nothing is written over. `write` does it,
//          and comes from the program.
// Threads: GUI thread; the note and the file are made on the calc lane. What came of it stands in
//          what, kept and todo.
#pragma once

#include <QObject>
#include <QVariantList>
#include <filesystem>
#include <functional>
#include <qqmlregistration.h>

#include "screens/hand_over_words.h"
#include "screens/row_list.h"
#include "screens/session.h"

namespace jambline::screens {

class HandOverViewModel final : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Made by the program and handed to Main")
  Q_PROPERTY(QString title READ title NOTIFY changed)
  Q_PROPERTY(QString subtitle READ subtitle NOTIFY changed)
  Q_PROPERTY(QString shop READ shop NOTIFY changed)
  // A row is a heading (part) or a line of it. Roles: key, part, label, words.
  Q_PROPERTY(QAbstractItemModel* lines READ lines CONSTANT)
  Q_PROPERTY(QString signedWords READ signedWords NOTIFY changed)  // "" nobody signed
  Q_PROPERTY(QVariantList strokes READ strokes NOTIFY changed)
  Q_PROPERTY(QString foot READ foot NOTIFY changed)
  Q_PROPERTY(bool isDelivered READ isDelivered NOTIFY changed)
  Q_PROPERTY(QString place READ place CONSTANT)  // where it goes unless another folder is typed
  Q_PROPERTY(bool busy READ busy NOTIFY changed)
  Q_PROPERTY(QString what READ what NOTIFY changed)  // what came of saving it; "" nothing yet
  Q_PROPERTY(QString kept READ kept NOTIFY changed)
  Q_PROPERTY(QString todo READ todo NOTIFY changed)
  Q_PROPERTY(bool failed READ failed NOTIFY changed)

 public:
  using Write = std::function<Status(const HandOverNote&, const std::filesystem::path& file)>;

  HandOverViewModel(Session& session, QString place, Write write, QObject* parent = nullptr);

  QString title() const { return note_.title; }
  QString subtitle() const { return note_.subtitle; }
  QString shop() const { return note_.shop; }
  QAbstractItemModel* lines() { return &lines_; }
  QString signedWords() const { return note_.signed_words; }
  QVariantList strokes() const;
  QString foot() const { return note_.foot; }
  bool isDelivered() const { return session_.car() && session_.car()->delivered_ms; }
  QString place() const { return place_; }
  bool busy() const { return busy_; }
  QString what() const { return what_; }
  QString kept() const { return kept_; }
  QString todo() const { return todo_; }
  bool failed() const { return failed_; }

  Q_INVOKABLE void ask();  // makes it anew: asked()
  Q_INVOKABLE void save(const QString& folder);

 signals:
  void changed();
  void asked();

 private:
  void follow();
  void work_out();
  void show();
  void say(const QString& what, const QString& kept, const QString& todo, bool failed);

  Session& session_;
  QString place_;
  Write write_;
  RowList lines_;
  HandOverNote note_;
  std::optional<JobId> job_;  // of the note
  std::shared_ptr<const folds::CarView> car_;
  std::uint64_t asked_ = 0;
  bool busy_ = false;
  bool failed_ = false;
  QString what_, kept_, todo_;
};

}  // namespace jambline::screens
