// screens/sprayed_view_model.h: what was sprayed on the car: mixes with their pot life, coats, who
// sprayed where and what he went without; the way to the air and to the bake.
//
// Mix:     startMix, then chooseProduct and the rest, then keepMix. The batch begins as that of the
//          product's last mix on this device. "0, 2, 5 min ago": it is logged outside the mixing
//          room's door.
// Coats:   startCoats of a mix, then panels (planned ones), then keepCoats.
// Pot:     countdowns() has each pot life from 5 minutes before its end until 10 minutes after it,
// of
//          every car that this device had on the tape since the program runs.
// Threads: GUI thread. Errors go to Session::failed.
#pragma once

#include <QObject>
#include <QStringList>
#include <optional>
#include <qqmlregistration.h>
#include <set>

#include "folds/pot_life.h"
#include "screens/bake_view_model.h"
#include "screens/climate_view_model.h"
#include "screens/countdown_view_model.h"
#include "screens/row_list.h"
#include "screens/session.h"

namespace jambline::screens {

class SprayedViewModel final : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Made by the program and handed to Main")
  Q_PROPERTY(jambline::screens::ClimateViewModel* climate READ climate CONSTANT)
  Q_PROPERTY(jambline::screens::BakeViewModel* bake READ bake CONSTANT)
  Q_PROPERTY(bool writable READ writable NOTIFY changed)
  Q_PROPERTY(bool hasPerson READ hasPerson NOTIFY changed)
  // The way to this screen in one line.
  Q_PROPERTY(bool ofInterest READ ofInterest NOTIFY changed)
  Q_PROPERTY(QString rowWords READ rowWords NOTIFY changed)
  Q_PROPERTY(int rowShape READ rowShape NOTIFY changed)
  // Roles: key, title, words, potWords, potShape, coats (lines), asksCoats.
  Q_PROPERTY(QAbstractItemModel* mixes READ mixes CONSTANT)
  Q_PROPERTY(int mixCount READ mixCount NOTIFY changed)
  // Roles: key, title, words, lines (what was passed over), alarm, shape.
  Q_PROPERTY(QAbstractItemModel* sprays READ sprays CONSTANT)
  Q_PROPERTY(int sprayCount READ sprayCount NOTIFY changed)
  Q_PROPERTY(QString mainText READ mainText NOTIFY changed)
  Q_PROPERTY(QString mainSecond READ mainSecond NOTIFY changed)
  Q_PROPERTY(QString mainMix READ mainMix NOTIFY changed)  // its coats are next; "": a mix is
  // The mix that is typed.
  Q_PROPERTY(QAbstractItemModel* products READ products CONSTANT)  // key, title, words, chosen
  Q_PROPERTY(int productCount READ productCount NOTIFY mixChanged)
  Q_PROPERTY(bool productChosen READ productChosen NOTIFY mixChanged)
  Q_PROPERTY(bool changing READ changing NOTIFY mixChanged)
  Q_PROPERTY(QString batch READ batch WRITE setBatch NOTIFY mixChanged)
  Q_PROPERTY(bool asksApproval READ asksApproval NOTIFY mixChanged)
  Q_PROPERTY(bool approved READ approved WRITE setApproved NOTIFY mixChanged)
  Q_PROPERTY(QString approvalWords READ approvalWords NOTIFY mixChanged)
  Q_PROPERTY(int agoMin READ agoMin WRITE setAgoMin NOTIFY mixChanged)
  Q_PROPERTY(QString mixText READ mixText NOTIFY mixChanged)
  Q_PROPERTY(QString mixSecond READ mixSecond NOTIFY mixChanged)
  Q_PROPERTY(bool mixWaits READ mixWaits NOTIFY mixChanged)
  Q_PROPERTY(QString labelKey READ labelKey NOTIFY changed)  // the label's missing shot; "" none
  // The coats that are typed.
  Q_PROPERTY(QString coatsTitle READ coatsTitle NOTIFY coatsChanged)
  Q_PROPERTY(int body READ body NOTIFY coatsChanged)
  Q_PROPERTY(QAbstractItemModel* panels READ panels CONSTANT)  // key, title, chosen
  Q_PROPERTY(QStringList chosenPanels READ chosenPanels NOTIFY coatsChanged)
  Q_PROPERTY(int coats READ coats WRITE setCoats NOTIFY coatsChanged)
  Q_PROPERTY(int flashMin READ flashMin WRITE setFlashMin NOTIFY coatsChanged)
  Q_PROPERTY(QString gun READ gun WRITE setGun NOTIFY coatsChanged)
  Q_PROPERTY(bool heavy READ heavy WRITE setHeavy NOTIFY coatsChanged)
  Q_PROPERTY(QString coatsSecond READ coatsSecond NOTIFY coatsChanged)
  Q_PROPERTY(bool coatsWait READ coatsWait NOTIFY coatsChanged)

 public:
  explicit SprayedViewModel(Session& session, QObject* parent = nullptr);

  ClimateViewModel* climate() { return &climate_; }
  BakeViewModel* bake() { return &bake_; }
  bool writable() const;
  bool hasPerson() const { return session_.hasPerson(); }
  bool ofInterest() const;
  QString rowWords() const;
  int rowShape() const;
  QAbstractItemModel* mixes() { return &mixes_; }
  int mixCount() const { return mixes_.rowCount(); }
  QAbstractItemModel* sprays() { return &sprays_; }
  int sprayCount() const { return sprays_.rowCount(); }
  QString mainText() const;
  QString mainSecond() const;
  QString mainMix() const;
  std::vector<Countdown> countdowns() const;

  QAbstractItemModel* products() { return &products_; }
  int productCount() const { return products_.rowCount(); }
  bool productChosen() const { return draft_.product.has_value(); }
  bool changing() const { return draft_.changes.has_value(); }
  QString batch() const { return draft_.batch; }
  void setBatch(const QString& batch);
  bool asksApproval() const;
  bool approved() const { return draft_.approved; }
  void setApproved(bool approved);
  QString approvalWords() const;
  int agoMin() const { return draft_.ago_min; }
  void setAgoMin(int minutes);
  QString mixText() const;
  QString mixSecond() const;
  bool mixWaits() const;
  QString labelKey() const;

  QString coatsTitle() const;
  int body() const;
  QAbstractItemModel* panels() { return &panels_; }
  QStringList chosenPanels() const;
  int coats() const { return coats_.coats; }
  void setCoats(int coats);
  int flashMin() const { return coats_.flash_min; }
  void setFlashMin(int minutes);
  QString gun() const { return coats_.gun; }
  void setGun(const QString& gun);
  bool heavy() const { return coats_.heavy; }
  void setHeavy(bool heavy);
  QString coatsSecond() const;
  bool coatsWait() const;

  Q_INVOKABLE void startMix(const QString& mix);           // "": a new one
  Q_INVOKABLE void chooseProduct(const QString& product);  // "": none
  Q_INVOKABLE void keepMix();
  Q_INVOKABLE void startCoats(const QString& mix);
  Q_INVOKABLE void flipPanel(const QString& panel);
  Q_INVOKABLE void keepCoats();

 signals:
  void changed();
  void mixChanged();
  void coatsChanged();
  void mixKept();
  void coatsKept();

 private:
  struct MixDraft {
    std::optional<ProductId> product;
    std::optional<MixId> changes;
    QString batch;
    bool approved = false;
    int ago_min = 0;
  };
  struct CoatsDraft {
    std::optional<MixId> mix;
    std::set<job::Panel> panels;
    int coats = 2;
    int flash_min = 10;
    QString gun;
    bool heavy = false;
  };
  struct Pot {
    JobId job;
    MixId mix;
    double ends_ms{};  // since boot
    QString name;
  };
  void refresh();
  void show_mixes();
  void show_sprays();
  void show_products();
  void show_panels();
  void look_at_pots();
  void second_passed();
  QString pot_words(const folds::PotLifeOfMix* life) const;
  int pot_shape(const folds::PotLifeOfMix* life) const;
  QStringList coat_lines(const folds::CarView& car, const folds::MixView& mix) const;
  QString name_of(const ProductId& product) const;
  QString kept(const QString& key) const;
  void keep(const QString& key, const QString& words);

  Session& session_;
  ClimateViewModel climate_;
  BakeViewModel bake_;
  RowList mixes_, sprays_, products_, panels_;
  MixDraft draft_;
  CoatsDraft coats_;
  std::optional<JobId> job_;
  std::vector<Pot> pots_;
  std::int64_t last_minute_ = -1;
};

}  // namespace jambline::screens
