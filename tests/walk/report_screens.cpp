#include "report_screens.h"

#include <QTemporaryDir>

#include "item.h"
#include "rules.h"
#include "screens/bundle_view_model.h"
#include "screens/report_view_model.h"

namespace jambline::walk {

namespace {
QString throw_away_folder() {
  static const QTemporaryDir folder;
  return folder.path();
}

void wait_for(Shop& shop, const screens::PaperRun& run) {
  settle_until(shop, [&] { return !run.busy(); });
  settle(shop.window());
}

bool report(Shop& shop) {
  return place(shop, "Floor", "TimeLine") && press(shop, "reportAsked");
}

bool report_written(Shop& shop) {
  auto* one = model<screens::ReportViewModel>(shop, "report");
  if (!one || !report(shop)) return false;
  one->forCustomer();
  one->write(throw_away_folder());
  wait_for(shop, *one->run());
  return !one->written().isEmpty();
}

bool report_refused(Shop& shop) {
  auto* one = model<screens::ReportViewModel>(shop, "report");
  if (!one || !report(shop)) return false;
  one->write(QStringLiteral("/no folder of this name"));
  wait_for(shop, *one->run());
  return one->run()->failed();
}

bool bundle(Shop& shop) {
  if (!place(shop, "Floor", "TimeLine") || !press(shop, "bundleAsked")) return false;
  auto* one = model<screens::BundleViewModel>(shop, "bundle");
  settle_until(shop, [&] { return !one->spoken().isEmpty(); });
  return true;
}

bool bundle_written(Shop& shop) {
  auto* one = model<screens::BundleViewModel>(shop, "bundle");
  if (!one || !bundle(shop)) return false;
  one->write(throw_away_folder(), true);
  wait_for(shop, *one->run());
  return !one->check().isEmpty();
}
}  // namespace

std::vector<Screen> report_screens() {
  return {
      {"report", true, report},
      {"report-written", true, report_written},
      {"report-refused", true, report_refused},
      {"bundle", true, bundle},
      {"bundle-written", true, bundle_written},
  };
}

}  // namespace jambline::walk
