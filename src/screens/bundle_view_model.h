// screens/bundle_view_model.h: the evidence bundle of the car on the tape: what goes in, where it
// was written, how anybody checks it.
//
// Promise: a new file each time; checked after it was written, and what the check found is said.
//          Names and hours stand in what the devices signed: there is no bundle without them.
// Threads: GUI; the file is made on a thread of its own.
#pragma once

#include <QObject>
#include <qqmlregistration.h>

#include "screens/paper_run.h"
#include "screens/session.h"

namespace jambline::screens {

class BundleViewModel final : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Made by the program and handed to TimeLine")
  Q_PROPERTY(QString insideWords READ insideWords NOTIFY changed)
  Q_PROPERTY(QString fingerprint READ fingerprint NOTIFY changed)  // in groups, two lines
  Q_PROPERTY(QString spoken READ spoken NOTIFY changed)            // the same to be read aloud
  Q_PROPERTY(QString place READ place CONSTANT)
  Q_PROPERTY(QString check READ check NOTIFY changed)  // how to check it; "" not written yet
  Q_PROPERTY(bool picturesMissing READ picturesMissing NOTIFY changed)  // refused for that
  Q_PROPERTY(jambline::screens::PaperRun* run READ run CONSTANT)

 public:
  // The shop's; "" where it cannot be read. Called on the calc lane.
  using Fingerprint = std::function<QString()>;

  BundleViewModel(Session& session, QString place, Fingerprint fingerprint, WriteBundle write,
                  QObject* parent = nullptr);

  QString insideWords() const;
  QString fingerprint() const { return fingerprint_lines(fingerprint_); }
  QString spoken() const;
  QString place() const { return place_; }
  QString check() const;
  bool picturesMissing() const { return pictures_missing_; }
  PaperRun* run() { return &run_; }

  Q_INVOKABLE void ask();  // asked()
  Q_INVOKABLE void write(const QString& folder, bool withoutMissing);

 signals:
  void changed();
  void asked();

 private:
  void show(const Result<PaperMade>& made, const std::filesystem::path& file);

  Session& session_;
  QString place_;
  Fingerprint read_fingerprint_;
  QString fingerprint_;
  WriteBundle write_;
  QString written_;
  bool pictures_missing_ = false;
  PaperRun run_{this};
};

}  // namespace jambline::screens
