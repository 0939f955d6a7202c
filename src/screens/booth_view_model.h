// screens/booth_view_model.h: the shop's booths, what was done to them and when, and in which one
// the car on the tape was sprayed.
//
// Event:   startEvent or startCorrecting fills a draft, keepEvent writes it as one command. Its
// time
//          is now until it is moved into the past, in steps; a time to come is refused in words.
// Filters: a change of filters asks whether the old ones are out of the building; as long as the
//          newest change says no, the booth says so (they can heat up by themselves).
// Sprayed: with one booth in the shop it is the answer that one tap gives; with several they are
//          choices; without any nothing is asked.
// Air:     each booth says what stands in it now, counts down second by second where something
//          counts, and shows its filter, smoke test and air (screens/booth_air_words.h); what of
//          all booths is due most is the main act.
// Threads: GUI thread. Errors go to Session::failed.
#pragma once

#include <QObject>
#include <QStringList>
#include <optional>
#include <qqmlregistration.h>

#include "screens/booth_air_words.h"
#include "screens/row_list.h"
#include "screens/session.h"
#include "screens/sum_rows.h"

namespace jambline::screens {

class BoothViewModel final : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Made by the program and handed to Main")
  // Roles: key, title, kindWords, ages (by event: "12 days ago"), filtersStillIn; stateShape,
  // stateWords, stateLine, countdown, live (something stands in it), sprayed (may be sprayed in);
  // filter, smoke and air, each with Note, Missing, Out and Sum (it opens).
  Q_PROPERTY(QAbstractItemModel* booths READ booths CONSTANT)
  Q_PROPERTY(int boothCount READ boothCount NOTIFY changed)
  Q_PROPERTY(QString firstBooth READ firstBooth NOTIFY changed)  // "" there is none
  Q_PROPERTY(bool readOnly READ readOnly NOTIFY changed)
  // What is due: what (None: nothing is), the booth's key, the act and why.
  Q_PROPERTY(Due due READ due NOTIFY changed)
  Q_PROPERTY(QString dueBooth READ dueBooth NOTIFY changed)
  Q_PROPERTY(QString dueText READ dueText NOTIFY changed)
  Q_PROPERTY(QString dueSecond READ dueSecond NOTIFY changed)
  Q_PROPERTY(jambline::screens::SumRows* sum READ sum CONSTANT)
  Q_PROPERTY(int kindCount READ kindCount CONSTANT)
  Q_PROPERTY(int eventCount READ eventCount CONSTANT)
  // The booth that is open: its name and kind as they stand, and what was done to it, newest first.
  // Roles of its events: key, title, icon, note.
  Q_PROPERTY(QString openName READ openName NOTIFY openChanged)  // "" none, or a new one
  Q_PROPERTY(int openKind READ openKind NOTIFY openChanged)
  Q_PROPERTY(QAbstractItemModel* events READ events CONSTANT)
  Q_PROPERTY(int openEvents READ openEvents NOTIFY openChanged)
  // The draft.
  Q_PROPERTY(bool correcting READ correcting NOTIFY draftChanged)
  Q_PROPERTY(int what READ what NOTIFY draftChanged)  // job::BoothEvent
  Q_PROPERTY(QString draftTitle READ draftTitle NOTIFY draftChanged)
  Q_PROPERTY(QString draftBooth READ draftBooth NOTIFY draftChanged)  // its key
  Q_PROPERTY(QString whenDay READ whenDay NOTIFY draftChanged)
  Q_PROPERTY(QString whenTime READ whenTime NOTIFY draftChanged)
  Q_PROPERTY(bool earlier READ earlier NOTIFY draftChanged)  // said to be before now
  Q_PROPERTY(QString whenRefused READ whenRefused NOTIFY draftChanged)
  Q_PROPERTY(bool asksFilters READ asksFilters NOTIFY draftChanged)
  Q_PROPERTY(bool mayKeep READ mayKeep NOTIFY draftChanged)  // somebody is chosen
  // The car on the tape. Roles: key, title, chosen.
  Q_PROPERTY(QAbstractItemModel* sprayedIn READ sprayedIn CONSTANT)
  Q_PROPERTY(bool spraysCar READ spraysCar NOTIFY changed)  // it can be said of the car
  Q_PROPERTY(QString sprayedWords READ sprayedWords NOTIFY changed)

 public:
  // In the order of BoothDueKind.
  enum class Due { None, LogOver, ChangeFilters, ReadPressure, SmokeTest, ReadVelocity };
  Q_ENUM(Due)
  enum class Figure { Filter, Smoke, Air };
  Q_ENUM(Figure)

  explicit BoothViewModel(Session& session, QObject* parent = nullptr);

  QAbstractItemModel* booths() { return &booths_; }
  int boothCount() const { return booths_.rowCount(); }
  QString firstBooth() const { return booths_.value(0, "key").toString(); }
  bool readOnly() const { return session_.readOnly(); }
  Due due() const { return static_cast<Due>(due_.what); }
  QString dueBooth() const;
  QString dueText() const { return due_.text; }
  QString dueSecond() const { return due_.second; }
  SumRows* sum() { return &sum_; }
  int kindCount() const;
  int eventCount() const;
  QString openName() const;
  int openKind() const;
  QAbstractItemModel* events() { return &events_; }
  int openEvents() const { return events_.rowCount(); }
  bool correcting() const { return draft_.corrects.has_value(); }
  int what() const { return static_cast<int>(draft_.what); }
  QString draftTitle() const;
  QString draftBooth() const;
  QString whenDay() const;
  QString whenTime() const;
  bool earlier() const { return draft_.happened_ms.has_value(); }
  QString whenRefused() const { return draft_.refused; }
  bool asksFilters() const { return draft_.what == job::BoothEvent::FiltersChanged; }
  bool mayKeep() const { return session_.hasPerson(); }
  QAbstractItemModel* sprayedIn() { return &sprayed_in_; }
  bool spraysCar() const;
  QString sprayedWords() const;

  Q_INVOKABLE QString kindWords(int kind) const;
  Q_INVOKABLE QString eventWords(int event) const;
  Q_INVOKABLE QString eventIcon(int event) const;

  Q_INVOKABLE void openSum(const QString& booth, Figure figure);  // nothing where there is no sum
  Q_INVOKABLE void openBooth(const QString& booth);               // "": a new one
  Q_INVOKABLE void keepBooth(const QString& name, int kind);      // the open one, or a new one

  Q_INVOKABLE void startEvent(const QString& booth, int event);
  Q_INVOKABLE void startCorrecting(const QString& event);
  Q_INVOKABLE void changeBooth(const QString& booth);
  Q_INVOKABLE void changeWhat(int event);
  Q_INVOKABLE void shift(int minutes);
  Q_INVOKABLE void sayNow();
  Q_INVOKABLE void keepEvent();  // nothing is said of old filters
  Q_INVOKABLE void keepFilterChange(bool oldFiltersOut);
  Q_INVOKABLE void filtersOut(const QString& booth);  // those of the newest change are out now

  Q_INVOKABLE void saySprayedIn(const QString& booth);

 signals:
  void changed();
  void openChanged();
  void draftChanged();
  void boothKept();
  void eventKept();
  void sumOpened();

 private:
  struct Draft {
    BoothId booth;
    job::BoothEvent what{};
    std::optional<std::int64_t> happened_ms;
    std::optional<BoothEventId> corrects;
    std::optional<bool> old_filters_out;  // as it stood
    QString refused;
  };
  void refresh();
  void second_passed();
  QVariantList row_of(const folds::BoothView& booth);
  void show_events();
  void keep(std::optional<bool> old_filters_out);
  std::int64_t draft_ms() const;
  const folds::BoothEventView* newest(const BoothId& booth, job::BoothEvent what) const;
  bool filters_still_in(const BoothId& booth) const;

  Session& session_;
  RowList booths_;
  RowList events_;
  RowList sprayed_in_;
  SumRows sum_;
  BoothDue due_;
  bool counts_ = false;      // the rows change by the second
  std::int64_t minute_ = 0;  // of the last refresh
  BoothId open_;
  Draft draft_;
};

QString ago_words(std::int64_t then_ms,
                  std::int64_t now_ms);  // "just now", "3 h ago", "12 days ago"

}  // namespace jambline::screens
