// screens/form.h: what every short form shares: what was typed is read field by field, and the
// first field that cannot be kept says why in words; what was typed stays.
//
// Fields: named by the form; a screen shows wrongWords at the field that wrongField names.
// Kept:   kept() follows when it is on disk. A refusal of acts/ comes as a banner, and the form
//         stays open.
// Threads: GUI thread.
#pragma once

#include <QObject>
#include <optional>
#include <qqmlregistration.h>
#include <string>

#include "screens/session.h"

namespace jambline::screens {

class Form : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("A screen has one of its own kind")
  Q_PROPERTY(QString wrongField READ wrongField NOTIFY wrongChanged)  // "" none
  Q_PROPERTY(QString wrongWords READ wrongWords NOTIFY wrongChanged)

 public:
  explicit Form(Session& session, QObject* parent);

  QString wrongField() const { return wrong_field_; }
  QString wrongWords() const { return wrong_words_; }
  Q_INVOKABLE void nothingWrong();

 signals:
  void wrongChanged();
  void kept();

 protected:
  Session& session() const { return session_; }
  // Each nullopt has said at its field what is wrong with it.
  std::optional<double> number(const QString& field, const QString& text, double least,
                               double most);
  std::optional<int> whole(const QString& field, const QString& text, int least, int most);
  std::optional<int> day(const QString& field, const QString& text);
  std::optional<std::string> words(const QString& field, const QString& text);
  void refuse(const QString& field, const QString& words);
  bool refused() const { return !wrong_field_.isEmpty(); }
  void keep_as(acts::Command command);
  int today() const;
  bool is_manager() const;

 private:
  Session& session_;
  QString wrong_field_;
  QString wrong_words_;
};

}  // namespace jambline::screens
