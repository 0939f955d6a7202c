// The shops that the screens are walked in, each in a throw-away folder with the real engine.
//
// Empty: no car, nobody; after add_bare_car() one person and a car with one panel, no work and no
// mark. Usual: the demo shop. Full: the longest names that fit, many cars, people, operations and
// marks,
//        clocks that run over, parts on every way, and an act to undo.
#pragma once

#include <QTemporaryDir>
#include <gtest/gtest.h>
#include <memory>
#include <source_location>

#include "app/jambline/program.h"
#include "rules.h"
#include "tests/screens/until.h"

namespace jambline::walk {

enum class Kind { Empty, Usual, Full };

class Shop {
 public:
  // Null when the folder, the shop or the window could not be made.
  static std::unique_ptr<Shop> open(Kind kind);

  app::Program& program() { return *program_; }
  QQuickWindow& window() { return *program_->window(); }
  std::filesystem::path folder() const { return folder_.path().toStdString(); }
  bool has_car() const { return !car_.isEmpty(); }

  bool add_bare_car();  // Empty
  bool put_on_tape(const QString& job);
  QString usual_car() const { return car_; }          // being looked over, most marks
  QString disputed_car() const { return disputed_; }  // or ""
  bool throw_dirt();  // a cluster of nibs on the car on the tape, and every panel looked at
  bool day_after();   // clocks that ran are asked about
  void wait_min(double minutes);  // the clock goes on
  bool undoable_act();            // one more act, so that the undo row shows
  bool all_worked_out();          // waits for what is calculated, forecasts among it

 private:
  Shop() = default;
  static const Shop* made_once(Kind kind);
  bool start();
  bool fill();
  void look_over(const std::vector<PersonId>& crew);
  bool fill_car(const std::vector<PersonId>& crew);
  engine::Wrote act(acts::Command command, const PersonId& by);
  PersonId first_person() const;
  void choose_cars();

  QTemporaryDir folder_;
  FakeClock clock_;
  std::unique_ptr<app::Program> program_;
  QString car_;
  QString disputed_;
  bool is_day_after_ = false;
  std::optional<JobId> dirty_;
  int refused_ = 0;
};

// Waits for what the program has to bring and lays the window out; it is a failure when it does not
// come.
template <class So>
bool settle_until(Shop& shop, So so, std::source_location at = std::source_location::current()) {
  const bool came = until(so);
  settle(shop.window());
  EXPECT_TRUE(came) << "what " << at.file_name() << ":" << at.line() << " waits for";
  return came;
}

// The view model of a name, or null.
template <class Model>
Model* model(Shop& shop, const char* name) {
  auto* models = shop.window().property("models").value<QObject*>();
  return models ? qobject_cast<Model*>(models->property(name).value<QObject*>()) : nullptr;
}

}  // namespace jambline::walk
