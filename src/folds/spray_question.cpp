#include "folds/spray_question.h"

#include <map>

namespace jambline::folds {

namespace {

bool record_missing(const AccountPassedOver& one) {
  return one.reason == job::GunReason::RecordNotHere;
}

class SprayCount {
 public:
  explicit SprayCount(const std::string& zone) : names_(zone) {}

  void start(const Account& car, const AccountSpray& spray) {
    const bool over = !spray.passed_over.empty();
    const bool facts =
        !spray.not_met.empty() ||
        std::any_of(spray.passed_over.begin(), spray.passed_over.end(), record_missing);
    const auto things = static_cast<double>(spray.passed_over.size() + spray.not_met.size());
    const QuestionCase one{car.job, car.plate, spray.at_ms, things, spray.entry};
    for (SprayRow* row : {&out_.all, &person(spray.by), &month(spray.at_ms)}) {
      ++row->starts;
      row->with_overrides += over ? 1 : 0;
      row->facts_missing += facts ? 1 : 0;
      if (over || facts) row->cases.push_back(one);
    }
    for (const auto& passed : spray.passed_over) {
      SprayRow& row = item(passed.item);
      ++row.starts;
      ++row.with_overrides;
      row.facts_missing += record_missing(passed) ? 1 : 0;
      row.cases.push_back({car.job, car.plate, spray.at_ms, 1, spray.entry});
      SprayReason& reason = reasons_[passed.reason];
      reason.reason = passed.reason;
      ++reason.times;
      reason.cases.push_back({car.job, car.plate, spray.at_ms, 1, spray.entry});
    }
    for (const auto missed : spray.not_met) {
      SprayRow& row = item(missed);
      ++row.starts;
      ++row.facts_missing;
      row.cases.push_back({car.job, car.plate, spray.at_ms, 1, spray.entry});
    }
  }

  void without(const Account& car, const AccountWithout& said) {
    const auto things = static_cast<double>(said.items.size());
    for (SprayRow* row : {&out_.all, &person(said.by), &month(said.at_ms)}) {
      ++row->without;
      row->cases.push_back({car.job, car.plate, said.at_ms, things, said.entry});
    }
    for (const auto one : said.items) {
      SprayRow& row = item(one);
      ++row.without;
      row.cases.push_back({car.job, car.plate, said.at_ms, 1, said.entry});
    }
  }

  SprayAnswer finished() {
    take(items_, out_.items);
    take(people_, out_.people);
    take(months_, out_.months);
    for (auto& [key, reason] : reasons_) {
      most_first(reason.cases);
      out_.reasons.push_back(std::move(reason));
    }
    most_first(out_.all.cases);
    std::stable_sort(out_.items.begin(), out_.items.end(), [](const auto& a, const auto& b) {
      return std::tie(a.with_overrides, a.without, a.starts) >
             std::tie(b.with_overrides, b.without, b.starts);
    });
    std::stable_sort(out_.people.begin(), out_.people.end(),
                     [](const auto& a, const auto& b) { return a.starts > b.starts; });
    std::stable_sort(out_.reasons.begin(), out_.reasons.end(),
                     [](const auto& a, const auto& b) { return a.times > b.times; });
    return std::move(out_);
  }

 private:
  SprayRow& item(job::GunItem one) {
    SprayRow& row = items_[one];
    row.item = one;
    return row;
  }
  SprayRow& person(const PersonId& one) {
    SprayRow& row = people_[one];
    row.person = one;
    return row;
  }
  SprayRow& month(std::int64_t ms) {
    const std::string name = names_.of(ms);
    SprayRow& row = months_[name];
    row.month = name;
    return row;
  }
  template <class Key>
  static void take(std::map<Key, SprayRow>& from, std::vector<SprayRow>& to) {
    for (auto& [key, row] : from) {
      most_first(row.cases);
      to.push_back(std::move(row));
    }
  }

  SprayAnswer out_;
  std::map<job::GunItem, SprayRow> items_;
  std::map<PersonId, SprayRow> people_;
  std::map<std::string, SprayRow> months_;
  std::map<std::optional<job::GunReason>, SprayReason> reasons_;
  Months names_;
};

}  // namespace

SprayAnswer spray_question(const std::vector<Account>& accounts, const Period& period,
                           const std::string& zone) {
  SprayCount count(zone);
  for (const auto& car : accounts) {
    for (const auto& spray : car.sprays)
      if (period.holds(spray.at_ms)) count.start(car, spray);
    for (const auto& said : car.without)
      if (period.holds(said.at_ms)) count.without(car, said);
  }
  return count.finished();
}

}  // namespace jambline::folds
