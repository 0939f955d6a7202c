// tests/screens_record/shown.h: a small shop with a session on it, as the program has it.
#pragma once

#include <QAbstractItemModel>
#include <QCoreApplication>
#include <string>
#include <utility>

#include "screens/session.h"
#include "tests/record/small_shop.h"
#include "tests/screens/until.h"

namespace jambline::screens {

class Shown {
 public:
  Shown() {
    shop.open([this](std::shared_ptr<const engine::Snapshot> snapshot) {
      if (session) session->publish(std::move(snapshot));
    });
    shop.work();
    session = std::make_unique<Session>(*shop.engine, shop.clock);
    session->choosePerson(QString::fromStdString(shop.ivo.hex()));
  }
  ~Shown() { shop.close(); }

  void open_green() {
    session->openCar(QString::fromStdString(shop.green.hex()));
    until([&] { return session->hasCar(); });
  }

  SmallShop shop;
  std::unique_ptr<Session> session;
};

inline std::string text(const QAbstractItemModel& model, int row, int role) {
  return model.data(model.index(row, 0), role).toString().toStdString();
}

// The first row whose text in `role` is `words`; -1: none.
inline int row_of(const QAbstractItemModel& model, int role, const std::string& words) {
  for (int row = 0; row < model.rowCount(); ++row)
    if (text(model, row, role) == words) return row;
  return -1;
}

}  // namespace jambline::screens
