// A shop with two booths, an air hood, a register in order and a car at spraying.
#pragma once

#include "folds/booth_state.h"
#include "screens/before_gun_view_model.h"
#include "screens/sprayed_view_model.h"
#include "tests/screens/shop_desk.h"

namespace jambline::screens {

class GunDesk : public ShopDesk {
 protected:
  void SetUp() override {
    ShopDesk::SetUp();
    act(acts::NameShop{"Shop", "Etc/UTC"});
    mara_ = add("Mara", job::Role::Manager);
    be(mara_);
    ivo_ = add("Ivo", job::Role::Painter);
    act(acts::AddBooth{"Booth 1", job::BoothKind::Downdraft});
    act(acts::AddBooth{"Mixing room", job::BoothKind::MixingRoom});
    booth_ = session_->shop().booths.front().booth;
    hood_ = respirator("hood 7", job::RespiratorKind::SuppliedHood);
    be(ivo_);
    open_spray_car(job::Drive::Combustion);
  }
  void open_spray_car(job::Drive drive) {
    acts::OpenCar open;
    open.plate = "K 41-" + std::to_string(206 + ++cars_);
    open.color = {"G7", "deep green", "#1F4D3A"};
    open.body = job::BodyShape::FourDoorSedan;
    open.drive = drive;
    open.panels = {{job::Panel::Hood, true}, {job::Panel::FrontBumper, false}};
    open.operations = {{job::Stage::BeforeTheGun, "", 30}, {job::Stage::Spray, "", 60}};
    JobId job;
    session_->post(open, [&](const Result<engine::Wrote>& wrote) {
      ASSERT_TRUE(wrote);
      job = wrote->job;
    });
    settle();
    session_->openCar(QString::fromStdString(job.hex()));
    settle();
    ASSERT_NE(session_->car(), nullptr);
  }
  RespiratorId respirator(const char* model, job::RespiratorKind kind, const char* allowed = "") {
    act(acts::SetRespirator{{},
                            {model, kind, trade::FactorScheme::Us, job::usual_us_factor(kind),
                             "29 CFR 1910.134", 2006, allowed, false}});
    return session_->shop().air.respirators.back().respirator;
  }
  int today() const { return static_cast<int>(clock_.moment.wall_ms / 86'400'000); }
  void register_everything() {
    const PersonId before = session_->person();
    be(mara_);
    act(acts::CheckBreathingAir{{true, true, true, today() - 10, 90}});
    act(acts::SetDue{ivo_, job::DueKind::PainterTraining, today() + 100});
    job::BoothFacts facts;
    facts.most_pressure_pa = 150;
    act(acts::SetBoothFacts{booth_, facts});
    act(acts::ReadBooth{booth_, job::BoothReading::FilterPressure, {80}});
    be(before);
  }
  ProductId product(const char* name, job::ProductKind kind, bool activated,
                    std::vector<trade::CurePoint> pot_life = {}) {
    const PersonId before = session_->person();
    be(mara_);
    job::Product said;
    said.product_name = name;
    said.kind = kind;
    said.activated = activated;
    said.air_min_c = 18;
    said.air_max_c = 28;
    said.humidity_max_percent = 70;
    if (!pot_life.empty()) said.steps = {{trade::CureMilestone::PotLife, std::move(pot_life)}};
    act(acts::SetProduct{{}, said});
    be(before);
    return session_->shop().air.products.back().product;
  }
  static QString key(job::GunItem item) {
    const auto word = word_of(item);
    return QString::fromUtf8(word.data(), static_cast<qsizetype>(word.size()));
  }
  static QVariant cell(QAbstractItemModel* rows, int row, const char* role) {
    return rows->data(rows->index(row, 0), rows->roleNames().key(role));
  }
  // Of the row with that key; invalid: no such row.
  static QVariant of(QAbstractItemModel* rows, const QString& key, const char* role) {
    for (int row = 0; row < rows->rowCount(); ++row)
      if (cell(rows, row, "key").toString() == key) return cell(rows, row, role);
    return {};
  }
  static void answer_now(BeforeGunViewModel& screen) {
    for (std::size_t i = 0; i < enum_words<job::GunItem>.size(); ++i)
      if (const auto item = static_cast<job::GunItem>(i); job::is_of_now(item))
        screen.press(key(item));
  }
  void say(BeforeGunViewModel& screen, job::GunItem item, const QString& words,
           const QString& note = {}) {
    screen.openItem(key(item));
    const auto row = screen.openAnswers().indexOf(words);
    ASSERT_GE(row, 0) << words.toStdString() << " of "
                      << screen.openAnswers().join(", ").toStdString();
    screen.choose(static_cast<int>(row), note);
  }
  folds::BoothWordNow booth_now() {
    return folds::booth_state(*session_->shop().find(booth_), session_->shop().air.find(booth_),
                              clock_.moment)
        .word;
  }
  void wait_min(double minutes) { clock_.advance_ms(static_cast<std::int64_t>(minutes * 60'000)); }

  PersonId mara_, ivo_;
  BoothId booth_;
  RespiratorId hood_;
  int cars_ = 0;
};

}  // namespace jambline::screens
