// screens/settings_view_model.h: how this device shows things: units, light, text size.
//
// A change holds at once and is told by changed(); app/ writes it to device.toml off this thread.
// GUI thread.
#pragma once

#include <QObject>
#include <qqmlregistration.h>

#include "device/device_settings.h"
#include "screens/session.h"

namespace jambline::screens {

class SettingsViewModel final : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Made by the program and handed to Main")
  Q_PROPERTY(UnitChoice units READ units WRITE set_units NOTIFY changed)
  Q_PROPERTY(Look look READ look WRITE set_look NOTIFY changed)
  Q_PROPERTY(int textPercent READ text_percent WRITE set_text_percent NOTIFY changed)
  Q_PROPERTY(bool dark READ dark NOTIFY changed)

 public:
  enum UnitChoice { Metric, Us };
  Q_ENUM(UnitChoice)
  enum Look { Booth, Stall, Device };
  Q_ENUM(Look)

  // `device_dark`: how the desktop looks, for Look::Device.
  SettingsViewModel(Session& session, device::Settings settings, bool device_dark,
                    QObject* parent = nullptr);

  const device::Settings& settings() const { return settings_; }
  UnitChoice units() const { return static_cast<UnitChoice>(settings_.units); }
  Look look() const { return static_cast<Look>(settings_.look); }
  int text_percent() const { return settings_.text_percent; }
  bool dark() const;

  void set_units(UnitChoice units);
  void set_look(Look look);
  void set_text_percent(int percent);

 signals:
  void changed();

 private:
  void take(const device::Settings& next);

  Session& session_;
  device::Settings settings_;
  bool device_dark_;
};

}  // namespace jambline::screens
