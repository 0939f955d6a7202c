// screens/first_aid_view_model.h: that first aid was opened, and for what, as an entry; the words
// stand in caution_words.h.
//
// Once:    a choice is written once as long as the page stays open; opened anew it is written anew.
//          It needs no network and nobody to be chosen, and a page that cannot be written is shown
//          all the same. Who was hurt is not asked and not kept.
// Flag:    who has trouble breathing and is chosen can say of himself "do not spray", by a second
//          tap; only a manager takes it back.
// Threads: GUI thread. Errors go to Session::failed.
#pragma once

#include <QObject>
#include <qqmlregistration.h>
#include <set>

#include "screens/session.h"

namespace jambline::screens {

class FirstAidViewModel final : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Made by the program and handed to Main")
  Q_PROPERTY(bool mayFlag READ mayFlag NOTIFY changed)
  Q_PROPERTY(QString flagWords READ flagWords NOTIFY changed)        // "Ivo: do not spray"
  Q_PROPERTY(QString writtenWords READ writtenWords NOTIFY changed)  // "" nothing yet

 public:
  explicit FirstAidViewModel(Session& session, QObject* parent = nullptr);

  bool mayFlag() const;
  QString flagWords() const;
  QString writtenWords() const;

  Q_INVOKABLE void pageOpened();
  Q_INVOKABLE void open(int choice);  // job::FirstAid
  Q_INVOKABLE bool asksFlag(int choice) const;
  Q_INVOKABLE void flag();

 signals:
  void changed();

 private:
  Session& session_;
  std::set<int> opened_;
  QString written_;
};

}  // namespace jambline::screens
