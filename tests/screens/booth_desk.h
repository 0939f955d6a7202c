// A shop with booths, a supplied-air hood and a car; who sprays, waits and puts the gun down.
#pragma once

#include "device/knocks.h"
#include "folds/booth_state.h"
#include "tests/screens/shop_desk.h"

namespace jambline::screens {

struct CountedKnocks final : device::Knocks {
  bool answers() const override { return loud; }
  void knock() override { ++count; }
  bool loud = true;
  int count = 0;
};

class BoothDesk : public ShopDesk {
 protected:
  void SetUp() override {
    ShopDesk::SetUp();
    rosa_ = add("Rosa", job::Role::Manager);
    ivo_ = add("Ivo", job::Role::Painter);
    be(rosa_);
    booth_ = add_booth("Booth 1", job::BoothKind::Downdraft);
    act(acts::SetRespirator{{},
                            {"hood 7", job::RespiratorKind::SuppliedHood, trade::FactorScheme::Us,
                             25, "29 CFR 1910.134", 2006, "", false}});
    hood_ = session_->shop().air.respirators.back().respirator;
    be(ivo_);
    open_car();
  }
  BoothId add_booth(const char* name, job::BoothKind kind) {
    act(acts::AddBooth{name, kind});
    return session_->shop().booths.back().booth;
  }
  static QString key(const BoothId& booth) { return QString::fromStdString(booth.hex()); }
  void smoke_test(const BoothId& booth, double minutes, int days_ago = 0) {
    act(acts::ReadBooth{booth,
                        job::BoothReading::SmokeTest,
                        {minutes},
                        5,
                        clock_.moment.wall_ms - days_ago * 86'400'000LL});
  }
  // Everything that is asked on the spot is answered; the register is empty and passed over.
  void spray(const BoothId& booth) {
    using job::GunItem;
    acts::StartSpray start{car().job, booth, hood_, true, {}};
    for (std::size_t i = 0; i < enum_words<GunItem>.size(); ++i) {
      const auto item = static_cast<GunItem>(i);
      if (job::is_of_now(item))
        start.checks.push_back({item, job::CutAnswer::Yes, {}, {}});
      else if (job::class_of(item) == job::CheckClass::Must)
        start.checks.push_back({item, job::CutAnswer::No, job::GunReason::RecordNotHere, {}});
    }
    act(start);
    ASSERT_FALSE(failed_) << failed_->operation << " " << failed_->subject;
  }
  // As the program's own second hand does, `minutes` later.
  void later(double minutes) {
    clock_.advance_ms(static_cast<std::int64_t>(minutes * 60'000));
    emit session_->secondPassed();
  }

  PersonId rosa_, ivo_;
  BoothId booth_;
  RespiratorId hood_;
  CountedKnocks knocks_;
};

}  // namespace jambline::screens
