#include "screens/settings_view_model.h"

namespace jambline::screens {

namespace {
Units units_of(device::UnitChoice choice) {
  return choice == device::UnitChoice::Metric ? Units::Metric : Units::Us;
}
}  // namespace

SettingsViewModel::SettingsViewModel(Session& session, device::Settings settings, bool device_dark,
                                     QObject* parent)
    : QObject(parent),
      session_(session),
      settings_(std::move(settings)),
      device_dark_(device_dark) {
  session.set_units(units_of(settings_.units));
  if (!settings_.person.empty() && !session.hasPerson())
    session.choosePerson(QString::fromStdString(settings_.person));
  connect(&session, &Session::personChanged, this, [this] {
    auto next = settings_;
    next.person = session_.personId().toStdString();
    take(next);
  });
}

bool SettingsViewModel::dark() const {
  if (settings_.look == device::Look::Device) return device_dark_;
  return settings_.look == device::Look::Stall;
}

void SettingsViewModel::take(const device::Settings& next) {
  if (next == settings_) return;
  settings_ = next;
  session_.set_units(units_of(settings_.units));
  emit changed();
}

void SettingsViewModel::set_units(UnitChoice units) {
  auto next = settings_;
  next.units = static_cast<device::UnitChoice>(units);
  take(next);
}

void SettingsViewModel::set_look(Look look) {
  auto next = settings_;
  next.look = static_cast<device::Look>(look);
  take(next);
}

void SettingsViewModel::set_text_percent(int percent) {
  auto next = settings_;
  next.text_percent = percent == 150 ? 150 : 100;
  take(next);
}

}  // namespace jambline::screens
