// screens/demo_view_model.h: the demo shop, in a window and a throw-away folder of its own.
//
// Opening: the program starts itself once more with --demo; the own folder stays open, locked and
//          untouched here. The demo is closed with this program; its folder is gone with it.
// In it:   `isDemo` is true and leave() ends it.
// Threads: GUI thread.
#pragma once

#include <QObject>
#include <QProcess>
#include <QString>
#include <qqmlregistration.h>

namespace jambline::screens {

class DemoViewModel final : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Made by the program and handed to Main")
  Q_PROPERTY(bool isDemo READ isDemo CONSTANT)
  Q_PROPERTY(bool running READ running NOTIFY changed)
  Q_PROPERTY(QString note READ note NOTIFY changed)  // what goes on, or why it did not

 public:
  // `program` is started with `arguments`.
  DemoViewModel(bool is_demo, QString program, QStringList arguments, QObject* parent = nullptr);
  ~DemoViewModel() override;

  bool isDemo() const { return is_demo_; }
  bool running() const { return child_.state() != QProcess::NotRunning; }
  QString note() const { return note_; }

  Q_INVOKABLE void open();
  Q_INVOKABLE void leave();

 signals:
  void changed();

 private:
  void failed();

  bool is_demo_;
  QString program_;
  QStringList arguments_;
  QString note_;
  QProcess child_;
};

}  // namespace jambline::screens
