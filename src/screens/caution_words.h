// screens/caution_words.h: every caution of the program in one place: what is said of staying out,
// of clearing, of waste and of first aid. Screens take their words from here and write none of
// their own.
//
// Rule:    what to do first, then the time, then what it rests on, then its limit. Never that a
//          place, a film or a person is without danger, and never leave to go in: a test holds that
//          over this file and over every translated text of the program.
// QML:     Cautions { id: cautions }; its properties never change.
// Source:  first aid: routes and first steps as in the first-aid codes of the NIOSH Pocket Guide
//          (hexamethylene diisocyanate) and NIOSH publication 96-111. Waste and static, times, "do
//          not drive", "do not be alone", lifting and stored energy: common practice, no source.
//          The product's safety data sheet and the local rule win.
// Threads: GUI thread.
#pragma once

#include <QObject>
#include <QString>
#include <QStringList>
#include <QVariantList>
#include <qqmlregistration.h>

#include "job/stage.h"

namespace jambline::screens {

enum class Caution : std::uint8_t {
  StayOut,
  StayOutUnless,
  Spraying,
  LocalRule,
  DeviceOutside,
  LeaveOutside,
  AirStaysOn,
  CountsOnly,
  FanStopped,
  Baking,
  DoorOpened,
  NoFreshAir,
  NoTime,
  OpenDeck,
  TimeOver,
  WeakerBasis,
  ProgramRuns,
  NoSound,
  GunDownForAnother,
  WasteTitle,
  WasteSource,
  OldFilters,
  OldFiltersIn,
  BeforeBake,
  BatteryPack,
  Lifting,
  StoredEnergy,
};

QString words_of(Caution caution);
QStringList waste_words();  // of the card at the end of spraying
// Where parts come off, are hung or fitted, and near what holds energy; empty elsewhere.
QStringList stage_cautions(job::Stage stage);

class Cautions : public QObject {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(QString stayOut READ stayOut CONSTANT)
  Q_PROPERTY(QString stayOutUnless READ stayOutUnless CONSTANT)
  Q_PROPERTY(QString spraying READ spraying CONSTANT)
  Q_PROPERTY(QString localRule READ localRule CONSTANT)
  Q_PROPERTY(QString deviceOutside READ deviceOutside CONSTANT)
  Q_PROPERTY(QString leaveOutside READ leaveOutside CONSTANT)
  Q_PROPERTY(QString airStaysOn READ airStaysOn CONSTANT)
  Q_PROPERTY(QString countsOnly READ countsOnly CONSTANT)
  Q_PROPERTY(QString gunDownForAnother READ gunDownForAnother CONSTANT)
  Q_PROPERTY(QString wasteTitle READ wasteTitle CONSTANT)
  Q_PROPERTY(QString wasteSource READ wasteSource CONSTANT)
  Q_PROPERTY(QStringList waste READ waste CONSTANT)
  Q_PROPERTY(QString oldFilters READ oldFilters CONSTANT)
  Q_PROPERTY(QString oldFiltersIn READ oldFiltersIn CONSTANT)
  Q_PROPERTY(QString beforeBake READ beforeBake CONSTANT)
  Q_PROPERTY(QString batteryPack READ batteryPack CONSTANT)
  Q_PROPERTY(QString lifting READ lifting CONSTANT)
  Q_PROPERTY(QString storedEnergy READ storedEnergy CONSTANT)
  // First aid. choices: title, icon, call, steps, after; in the order of job::FirstAid.
  Q_PROPERTY(QVariantList choices READ choices CONSTANT)
  Q_PROPERTY(QString number READ number CONSTANT)
  Q_PROPERTY(QString sheetLine READ sheetLine CONSTANT)
  Q_PROPERTY(QString sources READ sources CONSTANT)

 public:
  explicit Cautions(QObject* parent = nullptr) : QObject(parent) {}

  QString stayOut() const { return words_of(Caution::StayOut); }
  QString stayOutUnless() const { return words_of(Caution::StayOutUnless); }
  QString spraying() const { return words_of(Caution::Spraying); }
  QString localRule() const { return words_of(Caution::LocalRule); }
  QString deviceOutside() const { return words_of(Caution::DeviceOutside); }
  QString leaveOutside() const { return words_of(Caution::LeaveOutside); }
  QString airStaysOn() const { return words_of(Caution::AirStaysOn); }
  QString countsOnly() const { return words_of(Caution::CountsOnly); }
  QString gunDownForAnother() const { return words_of(Caution::GunDownForAnother); }
  QString wasteTitle() const { return words_of(Caution::WasteTitle); }
  QString wasteSource() const { return words_of(Caution::WasteSource); }
  QStringList waste() const { return waste_words(); }
  QString oldFilters() const { return words_of(Caution::OldFilters); }
  QString oldFiltersIn() const { return words_of(Caution::OldFiltersIn); }
  QString beforeBake() const { return words_of(Caution::BeforeBake); }
  QString batteryPack() const { return words_of(Caution::BatteryPack); }
  QString lifting() const { return words_of(Caution::Lifting); }
  QString storedEnergy() const { return words_of(Caution::StoredEnergy); }
  QVariantList choices() const;
  QString number() const;
  QString sheetLine() const;
  QString sources() const;
};

}  // namespace jambline::screens
