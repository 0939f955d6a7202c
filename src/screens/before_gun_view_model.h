// screens/before_gun_view_model.h: what is answered before the gun is picked up: where, who,
// through what he breathes, what is sprayed; and then the start.
//
// Answers: items of now are never filled in, and are let go of when the person, the car, the booth
//          or the respirator is another one, after 15 minutes, and with the start. What rests on
//          records is filled in with its age; what they do not bear out is asked.
// Stop:    not met: `stopped`, and nothing but report(), which says afterwards that it was sprayed.
// Must:    not met: passed over by the person's name and a reason, which the car keeps for good.
// Product: activated when any mix that is to be sprayed is; without a mix, until somebody says
//          otherwise. Promise: nothing here says that anything is without danger.
// Threads: GUI thread. Errors go to Session::failed; the answers stay.
#pragma once

#include <QObject>
#include <QStringList>
#include <map>
#include <optional>
#include <qqmlregistration.h>
#include <set>

#include "folds/gun_facts.h"
#include "screens/row_list.h"
#include "screens/session.h"

namespace jambline::screens {

class BeforeGunViewModel final : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Made by the program and handed to Main")
  Q_PROPERTY(bool here READ here NOTIFY changed)  // a car is on the tape and can be written to
  Q_PROPERTY(QString title READ title NOTIFY changed)
  Q_PROPERTY(QString leftWords READ leftWords NOTIFY changed)    // "5 left"; "" none
  Q_PROPERTY(QString emptyWords READ emptyWords NOTIFY changed)  // why nothing is asked
  // Of the car on the tape, or of those that wait; "" there is nothing to spray.
  Q_PROPERTY(QString carWords READ carWords NOTIFY changed)
  // Cars to be sprayed, when none is on the tape. Roles: key, title, words.
  Q_PROPERTY(QAbstractItemModel* cars READ cars CONSTANT)
  Q_PROPERTY(int carCount READ carCount NOTIFY changed)
  Q_PROPERTY(QAbstractItemModel* booths READ booths CONSTANT)  // key, title, words, chosen
  Q_PROPERTY(int boothCount READ boothCount NOTIFY changed)
  Q_PROPERTY(QString boothWords READ boothWords NOTIFY changed)
  Q_PROPERTY(QString boothNote READ boothNote NOTIFY changed)  // what stands in it now
  Q_PROPERTY(
      QAbstractItemModel* respirators READ respirators CONSTANT)  // key, title, words, chosen
  Q_PROPERTY(int respiratorCount READ respiratorCount NOTIFY changed)
  Q_PROPERTY(QString respiratorWords READ respiratorWords NOTIFY changed)
  Q_PROPERTY(QAbstractItemModel* mixes READ mixes CONSTANT)  // key, title, words, chosen
  Q_PROPERTY(int mixCount READ mixCount NOTIFY changed)
  Q_PROPERTY(bool activated READ activated NOTIFY changed)
  Q_PROPERTY(QString productWords READ productWords NOTIFY changed)
  // Borne out by the records. Roles: key, title, words, spoken.
  Q_PROPERTY(QAbstractItemModel* known READ known CONSTANT)
  // Stops and musts to answer. Roles: key, title, words, classWords, answerWords, shape, alarm,
  // spoken.
  Q_PROPERTY(QAbstractItemModel* asked READ asked CONSTANT)
  Q_PROPERTY(QAbstractItemModel* shoulds READ shoulds CONSTANT)  // key, title, words, said, spoken
  Q_PROPERTY(bool stopped READ stopped NOTIFY changed)
  // Stops that are not met. Roles: key, title, words (what to put right).
  Q_PROPERTY(QAbstractItemModel* stops READ stops CONSTANT)
  Q_PROPERTY(QString reportedWords READ reportedWords NOTIFY changed)  // "" nothing was
  Q_PROPERTY(QString mainText READ mainText NOTIFY changed)
  Q_PROPERTY(QString mainSecond READ mainSecond NOTIFY changed)
  Q_PROPERTY(bool mainWaits READ mainWaits NOTIFY changed)
  Q_PROPERTY(bool hasPerson READ hasPerson NOTIFY changed)
  // The item whose answers are open.
  Q_PROPERTY(QString openTitle READ openTitle NOTIFY openChanged)
  Q_PROPERTY(QString openWords READ openWords NOTIFY openChanged)
  Q_PROPERTY(QStringList openAnswers READ openAnswers NOTIFY openChanged)
  Q_PROPERTY(int openAnswer READ openAnswer NOTIFY openChanged)  // row of openAnswers; -1 none
  Q_PROPERTY(bool openNow READ openNow NOTIFY openChanged)       // the first answer is "yes, now"
  Q_PROPERTY(bool openTakesNote READ openTakesNote NOTIFY openChanged)
  Q_PROPERTY(QString openNote READ openNote NOTIFY openChanged)
  Q_PROPERTY(QString openWho READ openWho NOTIFY openChanged)

 public:
  explicit BeforeGunViewModel(Session& session, QObject* parent = nullptr);

  bool here() const;
  QString title() const;
  QString leftWords() const;
  QString emptyWords() const;
  QString carWords() const;
  QAbstractItemModel* cars() { return &cars_; }
  int carCount() const { return cars_.rowCount(); }
  QAbstractItemModel* booths() { return &booths_; }
  int boothCount() const { return booths_.rowCount(); }
  QString boothWords() const;
  QString boothNote() const;
  QAbstractItemModel* respirators() { return &respirators_; }
  int respiratorCount() const { return respirators_.rowCount(); }
  QString respiratorWords() const;
  QAbstractItemModel* mixes() { return &mixes_; }
  int mixCount() const { return mixes_.rowCount(); }
  bool activated() const;
  QString productWords() const;
  QAbstractItemModel* known() { return &known_; }
  QAbstractItemModel* asked() { return &asked_; }
  QAbstractItemModel* shoulds() { return &shoulds_; }
  bool stopped() const { return !unmet_.empty(); }
  QAbstractItemModel* stops() { return &stops_; }
  QString reportedWords() const { return reported_; }
  QString mainText() const;
  QString mainSecond() const;
  bool mainWaits() const;
  bool hasPerson() const { return session_.hasPerson(); }
  QString openTitle() const;
  QString openWords() const;
  QStringList openAnswers() const;
  int openAnswer() const;
  bool openNow() const { return open_ && job::is_of_now(*open_); }
  bool openTakesNote() const;
  QString openNote() const;
  QString openWho() const;

  Q_INVOKABLE void open(const QString& booth);  // begins anew; "": the car's booth, or the only one
  Q_INVOKABLE void chooseCar(const QString& job);
  Q_INVOKABLE void chooseBooth(const QString& booth);
  Q_INVOKABLE void chooseRespirator(const QString& respirator);
  Q_INVOKABLE void flipMix(const QString& mix);
  Q_INVOKABLE void sayActivated(bool activated);  // only where no mix says it
  Q_INVOKABLE void press(const QString& key);     // yes; answered or not borne out: its answers
  Q_INVOKABLE void openItem(const QString& key);
  Q_INVOKABLE void openNext();                               // the first that is not answered
  Q_INVOKABLE void choose(int answer, const QString& note);  // a row of openAnswers
  Q_INVOKABLE void flipShould(const QString& key);  // that of the air: airAsked(), then sayAirRead
  Q_INVOKABLE void sayAirRead();
  Q_INVOKABLE void start();
  Q_INVOKABLE void report();  // it was sprayed although these stops were not met

 signals:
  void changed();
  void openChanged();
  void opened();                       // the answers of one item
  void respiratorAsked();              // which one is worn
  void airAsked();                     // air and surface are read first
  void started(const QString& booth);  // it is on disk
  void reported();

 private:
  struct Said {
    job::CutAnswer answer{};
    std::optional<job::GunReason> reason;
    std::string note;
    std::uint64_t at_ms{};  // since boot
  };
  struct Choice {
    QString words;
    std::optional<job::CutAnswer> answer;  // none: as if nothing had been said
    std::optional<job::GunReason> reason;
  };
  void refresh();
  void show_rows();
  void show_choices();
  void forget_old();
  void forget(std::initializer_list<job::GunItem> items);
  void guess_respirator();
  void guess_mixes();
  folds::GunScene scene() const;
  const folds::GunFact* fact(job::GunItem item) const;
  const Said* said(job::GunItem item) const;
  std::vector<const folds::MixView*> fresh_mixes() const;
  bool borne_out(const folds::GunFact& fact) const;
  bool answered(const folds::GunFact& fact) const;
  QString pot_words() const;
  std::pair<int, int> left() const;  // stops, musts
  std::vector<Choice> choices(job::GunItem item) const;
  void remember_respirator();
  void after_start(const folds::CarView& car, const BoothId& booth);

  Session& session_;
  RowList cars_, booths_, respirators_, mixes_, known_, asked_, shoulds_, stops_;
  std::vector<folds::GunFact> facts_;
  std::vector<job::GunItem> unmet_;  // stops
  std::map<job::GunItem, Said> said_;
  std::optional<JobId> job_;
  PersonId person_;
  std::optional<BoothId> booth_;
  std::optional<RespiratorId> respirator_;
  std::set<MixId> sprayed_;
  std::size_t mixes_seen_ = 0;
  bool activated_said_ = true;
  std::optional<job::GunItem> open_;
  QString reported_;
  bool starting_ = false;
};

}  // namespace jambline::screens
