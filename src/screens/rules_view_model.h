// screens/rules_view_model.h: what the shop wants done before what when a car is put together.
//
// Rows:    by how strict they are, the strictest first, then by step; retired ones last.
// Who:     anybody reads them; a manager (`manager`) retires one, puts it back and adds one. What
//          protects the car's occupants cannot be retired (`fixed`). Rules that would go in a
//          circle are refused with the names of the circle, at the form.
// Threads: GUI thread. What was chosen stays when it cannot be kept.
#pragma once

#include <QStringList>

#include "screens/form.h"
#include "screens/row_list.h"

namespace jambline::screens {

class RulesViewModel final : public jambline::screens::Form {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Made by the program and handed to Main")
  // Roles: key, heading, title (what waits), before, why, shape, retired, fixed.
  Q_PROPERTY(QAbstractItemModel* rules READ rules CONSTANT)
  Q_PROPERTY(bool manager READ manager NOTIFY changed)
  Q_PROPERTY(QAbstractItemModel* steps READ steps CONSTANT)  // key, title, words, chosen
  Q_PROPERTY(QString before READ before NOTIFY formChanged)  // in words; "" not chosen
  Q_PROPERTY(QString after READ after NOTIFY formChanged)
  Q_PROPERTY(QStringList kinds READ kinds CONSTANT)
  Q_PROPERTY(int kind READ kind WRITE setKind NOTIFY formChanged)

 public:
  explicit RulesViewModel(Session& session, QObject* parent = nullptr);

  QAbstractItemModel* rules() { return &rows_; }
  bool manager() const { return is_manager() && !session().readOnly(); }
  QAbstractItemModel* steps() { return &steps_; }
  QString before() const;
  QString after() const;
  QStringList kinds() const;
  int kind() const { return static_cast<int>(draft_.kind); }
  void setKind(int kind);

  Q_INVOKABLE void retire(const QString& rule);
  Q_INVOKABLE void putBack(const QString& rule);
  Q_INVOKABLE void start();
  Q_INVOKABLE void chooseBefore(const QString& step);
  Q_INVOKABLE void chooseAfter(const QString& step);
  Q_INVOKABLE void keep(const QString& why);

 signals:
  void changed();
  void formChanged();

 private:
  void refresh();
  void set_retired(const QString& rule, bool retired);
  void say(acts::SetRule command);

  RowList rows_;
  RowList steps_;
  job::AssemblyRule draft_;
  bool before_chosen_ = false;
  bool after_chosen_ = false;
};

}  // namespace jambline::screens
