// folds/air_fold.h: folds what the shop's own stream says of booths, protection, limits, products
// and samples into an AirView. A part of ShopFold, which keeps what was withdrawn.
#pragma once

#include <map>

#include "folds/air_view.h"
#include "folds/heads.h"

namespace jambline::folds {

class AirFold {
 public:
  void apply(const entries::Entry& entry);
  AirView view(const Withdrawals& withdrawals) const;

 private:
  template <class T>
  struct Thing {
    entries::Order first;
    Heads<T> said;
  };
  struct Cartridge {
    double schedule_h{};
    std::string schedule_basis;
    friend bool operator==(const Cartridge&, const Cartridge&) = default;
  };
  struct Said {
    Hash entry;
    PersonId by;
    Stamp at;
    entries::BoothSaid said;
  };
  struct Read {
    Hash entry;
    PersonId by;
    entries::Order order;
    std::int64_t wall_ms{};
    entries::BoothRead said;
  };
  void view_booths(AirView& out, const Withdrawals& withdrawals) const;
  void view_people(AirView& out, const Withdrawals& withdrawals) const;
  std::vector<double> used_h(const PersonId& person, const RespiratorId& respirator,
                             const entries::Order& since, const Withdrawals& withdrawals) const;

  std::map<BoothId, Heads<job::BoothFacts>> facts_;
  std::vector<Read> reads_;  // by order
  std::vector<Said> said_;   // by order
  std::map<RespiratorId, Thing<job::Respirator>> respirators_;
  std::map<FitTestId, Heads<entries::FitTestDone>> fit_tests_;
  std::map<std::pair<PersonId, RespiratorId>, Heads<Cartridge>> cartridges_;
  Heads<job::BreathingAir> air_;
  std::map<PersonId, Heads<bool>> flags_;
  std::map<std::pair<PersonId, job::DueKind>, Heads<int>> dues_;
  std::map<LimitId, Heads<job::ExposureLimit>> limits_;
  std::map<ProductId, Thing<job::Product>> products_;
  std::map<SampleId, Heads<entries::ExposureSampled>> samples_;
};

}  // namespace jambline::folds
