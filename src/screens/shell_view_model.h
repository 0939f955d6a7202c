// screens/shell_view_model.h: what stands around every screen: the margin line, the banner and the
// undo row.
//
// Undo:    the row shows the last act of this device for 60 s after it was seen; undo() takes it
//          back, and after that puts it back again. A restart forgets it (it stays in the time
//          line).
// Banner:  what was just refused, until the next act or closeBanner(); else what stands until it is
//          solved (the trouble of the snapshot).
// Threads: GUI thread.
#pragma once

#include <QObject>
#include <optional>
#include <qqmlregistration.h>

#include "screens/act_words.h"
#include "screens/session.h"
#include "screens/sync_view_model.h"
#include "screens/words.h"

namespace jambline::screens {

class ShellViewModel final : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Made by the program and handed to Main")
  Q_PROPERTY(QString syncWords READ syncWords NOTIFY syncChanged)
  Q_PROPERTY(QString wallWords READ wallWords NOTIFY wallChanged)
  Q_PROPERTY(bool bannerShown READ bannerShown NOTIFY bannerChanged)
  Q_PROPERTY(bool bannerStands READ bannerStands NOTIFY bannerChanged)  // until it is solved
  Q_PROPERTY(bool bannerToKnow READ bannerToKnow NOTIFY bannerChanged)  // no act was refused
  Q_PROPERTY(QString bannerWhat READ bannerWhat NOTIFY bannerChanged)
  Q_PROPERTY(QString bannerKept READ bannerKept NOTIFY bannerChanged)
  Q_PROPERTY(QString bannerTodo READ bannerTodo NOTIFY bannerChanged)
  Q_PROPERTY(QString bannerDetails READ bannerDetails NOTIFY bannerChanged)
  Q_PROPERTY(bool undoShown READ undoShown NOTIFY undoChanged)
  Q_PROPERTY(bool undoTakenBack READ undoTakenBack NOTIFY undoChanged)
  Q_PROPERTY(bool undoPossible READ undoPossible NOTIFY undoChanged)
  Q_PROPERTY(QString undoWords READ undoWords NOTIFY undoChanged)
  Q_PROPERTY(int undoShape READ undoShape NOTIFY undoChanged)  // StateKind

 public:
  explicit ShellViewModel(Session& session, QObject* parent = nullptr);

  void follow(SyncViewModel& sync);  // which outlives this; without one: this device only

  QString syncWords() const { return sync_words_; }
  QString wallWords() const { return wall_; }
  bool bannerShown() const { return standing_ || refused_; }
  bool bannerStands() const { return standing_ && !refused_; }
  bool bannerToKnow() const { return shown_error() && only_to_know(*shown_error()); }
  QString bannerWhat() const { return banner().what; }
  QString bannerKept() const { return banner().kept; }
  QString bannerTodo() const { return banner().todo; }
  QString bannerDetails() const;
  bool undoShown() const { return act_ != nullptr; }
  bool undoTakenBack() const { return taken_back_; }
  bool undoPossible() const { return undoShown() && words_.may_undo; }
  QString undoWords() const { return taken_back_ ? words_.taken_back : words_.done; }
  int undoShape() const { return taken_back_ ? 0 : words_.shape; }

  Q_INVOKABLE void undo();
  Q_INVOKABLE void closeBanner();

 signals:
  void syncChanged();
  void wallChanged();
  void bannerChanged();
  void undoChanged();

 private:
  void take_snapshot();
  void second_passed();
  void show(const Error& error);
  const Error* shown_error() const;
  ErrorWords banner() const;

  Session& session_;
  QString sync_words_;
  QString wall_;
  std::optional<Error> standing_;
  std::optional<Error> refused_;
  std::shared_ptr<const engine::LastAct> act_;
  std::shared_ptr<const engine::LastAct> seen_;  // shown or already over
  ActWords words_;
  bool taken_back_ = false;
  Moment since_;
};

}  // namespace jambline::screens
