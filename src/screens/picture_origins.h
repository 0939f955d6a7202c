// screens/picture_origins.h: tells the pictures of the car on the tape where each was taken and
// what small one travels before it, for the time until its file is here.
//
// Threads: GUI thread. Follows the session.
#pragma once

#include <QObject>

#include "screens/picture_store.h"
#include "screens/session.h"

namespace jambline::screens {

class PictureOrigins final : public QObject {
  Q_OBJECT
 public:
  // Both outlive this.
  PictureOrigins(Session& session, PictureStore& store, QObject* parent = nullptr);

 private:
  void refresh();

  Session& session_;
  PictureStore& store_;
  std::shared_ptr<const std::vector<entries::Entry>> seen_;
  std::vector<QString> names_seen_;
};

}  // namespace jambline::screens
