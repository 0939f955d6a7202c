// screens/shop_folder_view_model.h: the whole shop out to a folder, and a folder's entries in.
//
// Out:     a new folder below the given one, named by the day and time; until there is a hub this
// is
//          the backup. In: entries of the same shop, by the checks of the log; what passes stays.
// Threads: GUI thread; the work is done by the engine in slices, taps go before it, it can be
// stopped.
#pragma once

#include <QObject>
#include <QString>
#include <qqmlregistration.h>
#include <stop_token>

#include "screens/session.h"

namespace jambline::screens {

class ShopFolderViewModel final : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Made by the program and handed to Main")
  Q_PROPERTY(QString place READ place CONSTANT)  // where exports go unless another is typed
  Q_PROPERTY(bool busy READ busy NOTIFY changed)
  Q_PROPERTY(double progress READ progress NOTIFY changed)  // 0 to 1
  Q_PROPERTY(QString what READ what NOTIFY changed)         // what happened, or goes on
  Q_PROPERTY(QString kept READ kept NOTIFY changed)
  Q_PROPERTY(QString todo READ todo NOTIFY changed)

 public:
  ShopFolderViewModel(Session& session, QString place, QObject* parent = nullptr);
  ~ShopFolderViewModel() override;

  QString place() const { return place_; }
  bool busy() const { return busy_; }
  double progress() const { return progress_; }
  QString what() const { return what_; }
  QString kept() const { return kept_; }
  QString todo() const { return todo_; }

  Q_INVOKABLE void exportTo(const QString& place);
  Q_INVOKABLE void importFrom(const QString& folder);
  Q_INVOKABLE void stop() { stop_.request_stop(); }

 signals:
  void changed();

 private:
  void begin(const QString& what);
  void end(const QString& what, const QString& kept, const QString& todo);
  void end(const Error& error);
  engine::Engine::Progress on_progress();

  Session& session_;
  QString place_;
  std::stop_source stop_;
  bool busy_ = false;
  double progress_ = 0;
  QString what_, kept_, todo_;
};

}  // namespace jambline::screens
