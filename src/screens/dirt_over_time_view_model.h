// screens/dirt_over_time_view_model.h: how much dirt fell on the cars over time, what events at the
// booth changed, what people said threw it.
//
// Question: a sentence whose words open choices: the booth, the time and, for a manager only, the
//           painter. choices(key) are the words, answer(key, row) takes one.
// Lists:    the points of the chart in the order of days, for Theme's RateChart; the same as rows
//           (screens/dirt_points.h); events newest first; looks that stand out; causes; painters.
// Promise:  the numbers are those of trade::dirt_chart (screens/dirt_numbers.h), worked out on the
//           calc lane; the answer to an older question is dropped. An event tells that the dirt
//           changed then, never that it came from it.
// Threads:  GUI. Nothing comes and nothing is worked out but between wake() and rest(), while the
//           page is there.
#pragma once

#include <QObject>
#include <qqmlregistration.h>

#include "screens/dirt_points.h"
#include "screens/row_list.h"
#include "screens/session.h"
#include "screens/sum_rows.h"

namespace jambline::screens {

class DirtOverTimeViewModel final : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Made by the program and handed to Record")
  Q_PROPERTY(State state READ state NOTIFY changed)
  Q_PROPERTY(QVariantList question READ question NOTIFY changed)  // parts of a SentenceFilter
  Q_PROPERTY(QString answer READ answer NOTIFY changed)
  Q_PROPERTY(QString restsOn READ restsOn NOTIFY changed)
  Q_PROPERTY(QString trouble READ trouble NOTIFY changed)  // when Failed
  Q_PROPERTY(QString unitWords READ unitWords NOTIFY changed)
  Q_PROPERTY(QString chartName READ chartName NOTIFY changed)
  Q_PROPERTY(QList<qreal> days READ days NOTIFY changed)
  Q_PROPERTY(QList<qreal> rates READ rates NOTIFY changed)
  Q_PROPERTY(QList<qreal> lows READ lows NOTIFY changed)
  Q_PROPERTY(QList<qreal> highs READ highs NOTIFY changed)
  Q_PROPERTY(QList<qreal> centers READ centers NOTIFY changed)
  Q_PROPERTY(QList<int> looks READ looks NOTIFY changed)
  Q_PROPERTY(QList<qreal> flagDays READ flagDays NOTIFY changed)
  Q_PROPERTY(QStringList flagWords READ flagWords NOTIFY changed)
  Q_PROPERTY(QList<int> flagStrong READ flagStrong NOTIFY changed)
  Q_PROPERTY(int chosen READ chosen NOTIFY chosenChanged)  // a point of the chart; -1 none
  Q_PROPERTY(QString chosenTitle READ chosenTitle NOTIFY chosenChanged)
  Q_PROPERTY(QString chosenPlate READ chosenPlate NOTIFY chosenChanged)
  Q_PROPERTY(QString chosenWords READ chosenWords NOTIFY chosenChanged)
  Q_PROPERTY(QString chosenJob READ chosenJob NOTIFY chosenChanged)
  Q_PROPERTY(QAbstractItemModel* points READ points CONSTANT)
  Q_PROPERTY(QAbstractItemModel* events READ events CONSTANT)
  Q_PROPERTY(int eventCount READ eventCount NOTIFY changed)
  Q_PROPERTY(bool hasBooth READ hasBooth NOTIFY changed)
  Q_PROPERTY(QAbstractItemModel* lookRows READ lookRows CONSTANT)
  Q_PROPERTY(QAbstractItemModel* causes READ causes CONSTANT)
  Q_PROPERTY(int causeCount READ causeCount NOTIFY changed)
  Q_PROPERTY(int mostCars READ mostCars NOTIFY changed)  // of one cause
  Q_PROPERTY(QAbstractItemModel* painters READ painters CONSTANT)
  Q_PROPERTY(bool byPainter READ byPainter NOTIFY changed)
  Q_PROPERTY(QString paintersNote READ paintersNote NOTIFY changed)
  Q_PROPERTY(jambline::screens::SumRows* sum READ sum CONSTANT)

 public:
  enum State { Waiting, NoCars, NothingFits, Shown, Failed };
  Q_ENUM(State)

  explicit DirtOverTimeViewModel(Session& session, QObject* parent = nullptr);

  State state() const { return state_; }
  QVariantList question() const;
  QString answer() const;
  QString restsOn() const { return rests_on_words(*numbers_, saying()); }
  QString trouble() const { return trouble_; }
  QString unitWords() const;
  QString chartName() const;
  QList<qreal> days() const { return days_; }
  QList<qreal> rates() const { return rates_; }
  QList<qreal> lows() const { return lows_; }
  QList<qreal> highs() const { return highs_; }
  QList<qreal> centers() const { return centers_; }
  QList<int> looks() const { return looks_; }
  QList<qreal> flagDays() const { return flag_days_; }
  QStringList flagWords() const { return flag_words_; }
  QList<int> flagStrong() const { return flag_strong_; }
  int chosen() const { return chosen_; }
  QString chosenTitle() const;
  QString chosenPlate() const;
  QString chosenWords() const;
  QString chosenJob() const;
  QAbstractItemModel* points() { return &points_; }
  QAbstractItemModel* events() { return &events_; }
  int eventCount() const { return events_.count(); }
  bool hasBooth() const { return !session_.shop().booths.empty(); }
  QAbstractItemModel* lookRows() { return &look_rows_; }
  QAbstractItemModel* causes() { return &causes_; }
  int causeCount() const { return causes_.count(); }
  int mostCars() const { return most_cars_; }
  QAbstractItemModel* painters() { return &painters_; }
  bool byPainter() const { return is_manager(); }
  QString paintersNote() const;
  SumRows* sum() { return &sum_; }

  Q_INVOKABLE void wake();
  Q_INVOKABLE void rest();
  Q_INVOKABLE QStringList choices(const QString& key) const;
  Q_INVOKABLE int choiceOf(const QString& key) const;
  Q_INVOKABLE void answerWith(const QString& key, int row);
  Q_INVOKABLE void askAll();  // every booth, time and painter
  Q_INVOKABLE void choose(int point);
  Q_INVOKABLE void openSum();

 signals:
  void changed();
  void chosenChanged();

 private:
  enum class Since : std::uint8_t { ThreeMonths, Year, Always };

  bool is_manager() const;
  DirtSaying saying() const;
  folds::DirtAsked asked() const;
  void refresh();
  void ask();
  void take(Result<DirtNumbers> numbers);
  void say();
  void list_points();
  void list_events();
  void list_causes();
  void list_painters();
  const DirtCar* chosen_car() const { return points_.car(chosen_); }
  std::vector<PersonId> painters_of_cars() const;

  Session& session_;
  bool awake_ = false;
  State state_ = Waiting;
  std::optional<BoothId> booth_;
  Since since_ = Since::Year;
  std::optional<PersonId> painter_;
  int number_asked_ = 0;
  std::shared_ptr<const std::vector<folds::Lesson>> lessons_;
  std::shared_ptr<const folds::ShopView> shop_;
  std::shared_ptr<const std::vector<folds::FloorRow>> record_;
  std::shared_ptr<const DirtPoints::Plates> plates_;
  bool was_manager_ = false;
  std::shared_ptr<const DirtNumbers> numbers_ = std::make_shared<DirtNumbers>();
  QString trouble_;
  QList<qreal> days_, rates_, lows_, highs_, centers_;
  QList<int> looks_;
  QList<qreal> flag_days_;
  QStringList flag_words_;
  QList<int> flag_strong_;
  int chosen_ = -1;
  int most_cars_ = 0;
  DirtPoints points_{this};
  RowList events_;
  RowList look_rows_;
  RowList causes_;
  RowList painters_;
  SumRows sum_{this};
};

}  // namespace jambline::screens
