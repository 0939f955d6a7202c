// screens/booth_facts_view_model.h: what the shop knows of one booth, as a form: volume, required
// velocity and by whom, exhaust, most pressure, how its time is worked out.
//
// Shape:   a field has its key, label, unit, text as typed and what is wrong with it. Numbers are
//          typed in the device's units; empty says that nothing is known. Only what bears on the
//          kind of booth is asked: an open deck has no formula, a mixing room no clearance.
// Refuses: at the field, in words: no number, out of its range (job/booth.h), a velocity that
// nobody
//          requires, a factor without a name. What was typed stays.
// Threads: GUI thread. Other errors go to Session::failed.
#pragma once

#include <QObject>
#include <optional>
#include <qqmlregistration.h>
#include <vector>

#include "screens/row_list.h"
#include "screens/session.h"

namespace jambline::screens {

class BoothFactsViewModel final : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Made by the program and handed to Main")
  Q_PROPERTY(QString title READ title NOTIFY changed)
  // Roles: key, label, unit, typed, hint, wrong, digits (a number is typed).
  Q_PROPERTY(QAbstractItemModel* fields READ fields CONSTANT)
  Q_PROPERTY(QString knownWords READ knownWords NOTIFY changed)  // the time as it stands, or none
  Q_PROPERTY(bool mayKeep READ mayKeep NOTIFY changed)

 public:
  explicit BoothFactsViewModel(Session& session, QObject* parent = nullptr);

  QString title() const;
  QAbstractItemModel* fields() { return &fields_; }
  QString knownWords() const;
  bool mayKeep() const { return session_.hasPerson(); }

  Q_INVOKABLE void open(const QString& booth);
  Q_INVOKABLE void type(const QString& key, const QString& text);
  Q_INVOKABLE void keep();

 signals:
  void changed();
  void kept();

 private:
  struct Typed {
    std::string_view key;
    QString text;
    QString wrong;
  };
  void show();
  const folds::BoothView* booth() const;
  // The facts as they are typed; none when something is wrong, which then stands at its field.
  std::optional<job::BoothFacts> read();

  Session& session_;
  RowList fields_;
  BoothId booth_;
  std::vector<Typed> typed_;
};

}  // namespace jambline::screens
