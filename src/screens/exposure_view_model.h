// screens/exposure_view_model.h: what was sampled of the air that people breathe, shift by shift,
// against the limits that hold, with what the respirator that was worn may be worn up to beside it.
//
// Results: 8 hours, the worst 15 minutes and the highest sample (against ceilings) by
//          trade/exposure.h, computed on the calculation lane; every one opens to its sum. Of each
//          one word is said: over or below a named limit. What cannot be compared says why.
// Samples: typed with their times; from after to means the next day. One that is wrong is taken
//          back with a reason and typed anew.
// Threads: GUI thread. Errors go to Session::failed.
#pragma once

#include <QStringList>

#include "folds/exposure_of_shift.h"
#include "screens/form.h"
#include "screens/row_list.h"
#include "screens/sum_rows.h"

namespace jambline::screens {

class ExposureViewModel final : public jambline::screens::Form {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Made by the program and handed to Main")
  // Roles: key, title, when, words, shape, isOpen, spoken.
  Q_PROPERTY(QAbstractItemModel* shifts READ shifts CONSTANT)
  Q_PROPERTY(int shiftCount READ shiftCount NOTIFY changed)
  Q_PROPERTY(bool mayKeep READ mayKeep NOTIFY changed)
  // The shift that is chosen; "" none.
  Q_PROPERTY(QString shift READ shift NOTIFY changed)
  Q_PROPERTY(QString shiftTitle READ shiftTitle NOTIFY changed)
  Q_PROPERTY(bool working READ working NOTIFY changed)  // the results are being computed
  // Roles: key, title, when, worn, spoken.
  Q_PROPERTY(QAbstractItemModel* samples READ samples CONSTANT)
  // Roles: key, title, from, value, unit, limitWords, over.
  Q_PROPERTY(QAbstractItemModel* results READ results CONSTANT)
  Q_PROPERTY(int resultCount READ resultCount NOTIFY changed)
  Q_PROPERTY(QString refusedWords READ refusedWords NOTIFY changed)  // why nothing is computed
  Q_PROPERTY(QString sampledWords READ sampledWords NOTIFY changed)
  Q_PROPERTY(QString mixtureWords READ mixtureWords NOTIFY changed)
  Q_PROPERTY(bool mixtureOver READ mixtureOver NOTIFY changed)
  Q_PROPERTY(QString leftOutWords READ leftOutWords NOTIFY changed)
  // Roles: key, title, from, value, why, over, word, opens.
  Q_PROPERTY(QAbstractItemModel* worn READ worn CONSTANT)
  Q_PROPERTY(int wornCount READ wornCount NOTIFY changed)
  Q_PROPERTY(jambline::screens::SumRows* sum READ sum CONSTANT)
  // What the form offers. Roles: key, title.
  Q_PROPERTY(QAbstractItemModel* people READ people CONSTANT)
  Q_PROPERTY(QAbstractItemModel* respirators READ respirators CONSTANT)
  Q_PROPERTY(QStringList substances READ substances NOTIFY changed)
  Q_PROPERTY(QStringList units READ unitNames CONSTANT)
  Q_PROPERTY(QString todayText READ todayText NOTIFY changed)
  Q_PROPERTY(QStringList reasons READ reasons CONSTANT)

 public:
  explicit ExposureViewModel(Session& session, QObject* parent = nullptr);

  QAbstractItemModel* shifts() { return &shift_rows_; }
  int shiftCount() const { return shift_rows_.rowCount(); }
  bool mayKeep() const { return session().hasPerson() && !session().readOnly(); }
  QString shift() const { return chosen_; }
  QString shiftTitle() const;
  bool working() const { return working_; }
  QAbstractItemModel* samples() { return &samples_; }
  QAbstractItemModel* results() { return &results_; }
  int resultCount() const { return results_.rowCount(); }
  QString refusedWords() const { return refused_words_; }
  QString sampledWords() const { return sampled_words_; }
  QString mixtureWords() const { return mixture_words_; }
  bool mixtureOver() const { return mixture_over_; }
  QString leftOutWords() const { return left_out_words_; }
  QAbstractItemModel* worn() { return &worn_; }
  int wornCount() const { return worn_.rowCount(); }
  SumRows* sum() { return &sum_; }
  QAbstractItemModel* people() { return &people_; }
  QAbstractItemModel* respirators() { return &respirators_; }
  QStringList substances() const;
  QStringList unitNames() const;
  QString todayText() const;
  QStringList reasons() const;

  Q_INVOKABLE void choose(const QString& shift);
  Q_INVOKABLE void openResult(const QString& key);
  Q_INVOKABLE bool openWorn(const QString& key);
  Q_INVOKABLE int unitOf(const QString& substance) const;  // of its limits; -1: not one
  Q_INVOKABLE QString dayWords(const QString& day) const;
  // "45 min", "8 h, to the next day"; "" while times are missing
  Q_INVOKABLE QString lengthWords(const QString& from, const QString& to) const;
  // Fields: person, substance, value, day, from, to.
  Q_INVOKABLE void keep(const QString& person, const QString& substance, const QString& value,
                        int unit, const QString& day, const QString& from, const QString& to,
                        const QString& respirator);
  Q_INVOKABLE void takeBack(const QString& sample, const QString& reason);

  const trade::Exposure* asked() const;  // of the chosen shift
  const Result<trade::ExposureResult>* result() const;

 signals:
  void changed();

 private:
  struct Known {
    QString key;
    folds::Shift shift;
    folds::ShiftExposure exposure;
    std::optional<Result<trade::ExposureResult>> result;
  };
  void refresh();
  void compute();
  void show();
  using Rows = std::vector<QVariantList>;
  Rows sample_rows(const Known& known) const;
  Rows result_rows(const Known& known) const;
  Rows worn_rows(const Known& known) const;
  void say(const Known* known);
  QString when(std::int64_t from_ms, std::int64_t to_ms) const;
  const Known* chosen() const;

  std::vector<Known> known_;
  QString chosen_;
  int generation_ = 0;
  bool working_ = false;
  folds::AirView seen_;
  RowList shift_rows_;
  RowList samples_;
  RowList results_;
  RowList worn_;
  RowList people_;
  RowList respirators_;
  SumRows sum_;
  QString refused_words_;
  QString sampled_words_;
  QString mixture_words_;
  bool mixture_over_ = false;
  QString left_out_words_;
};

}  // namespace jambline::screens
