// screens/fit_test_form.h: a fit test of a person in one model and size: the factors of the
// exercises are typed one by one without the grimace, and the overall factor is shown as it grows.
//
// Overall: the harmonic mean of trade/protection.h against the pass mark of the facepiece; it opens
//          to its sum. A test under the mark is kept too, and says so.
// Method:  qualitative only for a half mask that one breathes through; there one says whether it
//          passed.
// Who:     a manager keeps it.
// Threads: GUI thread. Errors go to Session::failed.
#pragma once

#include <vector>

#include "screens/form.h"
#include "screens/row_list.h"
#include "screens/sum_rows.h"

namespace jambline::screens {

class FitTestForm final : public jambline::screens::Form {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Owned by the register")
  // What fits tightly. Roles: key, title, note, chosen.
  Q_PROPERTY(QAbstractItemModel* respirators READ respirators CONSTANT)
  Q_PROPERTY(int respiratorCount READ respiratorCount NOTIFY changed)
  Q_PROPERTY(bool mayKeep READ mayKeep NOTIFY changed)
  Q_PROPERTY(bool quantitative READ quantitative NOTIFY changed)
  Q_PROPERTY(bool mayBeQualitative READ mayBeQualitative NOTIFY changed)
  Q_PROPERTY(bool passed READ passed NOTIFY changed)       // qualitative
  Q_PROPERTY(QString factors READ factors NOTIFY changed)  // "812, 640"
  Q_PROPERTY(int factorCount READ factorCount NOTIFY changed)
  Q_PROPERTY(QString overall READ overall NOTIFY changed)  // "684.2"; "" no factor yet
  Q_PROPERTY(QString markWords READ markWords NOTIFY changed)
  Q_PROPERTY(bool under READ under NOTIFY changed)
  Q_PROPERTY(QString day READ dayText NOTIFY changed)
  Q_PROPERTY(QString size READ size NOTIFY changed)
  Q_PROPERTY(QString validDays READ validDays NOTIFY changed)
  Q_PROPERTY(jambline::screens::SumRows* sum READ sum CONSTANT)

 public:
  FitTestForm(Session& session, QObject* parent);

  QAbstractItemModel* respirators() { return &respirators_; }
  int respiratorCount() const { return respirators_.rowCount(); }
  bool mayKeep() const { return is_manager(); }
  bool quantitative() const { return said_.method == job::FitMethod::Quantitative; }
  bool mayBeQualitative() const;
  bool passed() const { return said_.passed; }
  QString factors() const;
  int factorCount() const { return static_cast<int>(said_.exercise_factors.size()); }
  QString overall() const;
  QString markWords() const;
  bool under() const;
  QString dayText() const;
  QString size() const;
  QString validDays() const;
  SumRows* sum() { return &sum_; }

  void open(const PersonId& person);
  Q_INVOKABLE void chooseRespirator(const QString& key);
  Q_INVOKABLE void chooseMethod(bool quantitative);
  Q_INVOKABLE void sayPassed(bool passed);
  Q_INVOKABLE void typeFactor(int factor);
  Q_INVOKABLE void dropFactor();
  Q_INVOKABLE void openSum();
  Q_INVOKABLE void keep(const QString& size, const QString& day, const QString& validDays);
  Q_INVOKABLE QString dayWords(const QString& day) const;  // "Mar 9, 2026", "" not a day

 signals:
  void changed();

 private:
  void refresh();
  const folds::RespiratorView* chosen() const;
  std::optional<trade::FitTestResult> result() const;

  PersonId person_;
  std::optional<RespiratorId> respirator_;
  job::FitTest said_;
  RowList respirators_;
  SumRows sum_;
};

}  // namespace jambline::screens
