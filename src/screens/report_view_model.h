// screens/report_view_model.h: the report of the car on the tape as a PDF: what goes in, where it
// was written, printing it.
//
// Promise: a new file each time, named by plate and time; nothing is written over. Nothing is said
//          to be printed before the printing program has taken it.
// Threads: GUI; the file is made and handed to the printer on a thread of their own.
#pragma once

#include <QObject>
#include <qqmlregistration.h>

#include "screens/paper_run.h"
#include "screens/session.h"

namespace jambline::screens {

class ReportViewModel final : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Made by the program and handed to TimeLine")
  Q_PROPERTY(
      QString insideWords READ insideWords NOTIFY changed)  // entries, pictures, about how much
  Q_PROPERTY(QString leftOutWords READ leftOutWords NOTIFY changed)  // "" all is in
  Q_PROPERTY(bool hours READ hours WRITE setHours NOTIFY changed)
  Q_PROPERTY(bool names READ names WRITE setNames NOTIFY changed)
  Q_PROPERTY(bool pictures READ pictures WRITE setPictures NOTIFY changed)
  Q_PROPERTY(bool letter READ letter WRITE setLetter NOTIFY changed)
  Q_PROPERTY(QString place READ place CONSTANT)  // where it goes unless another folder is typed
  Q_PROPERTY(QString written READ written NOTIFY changed)  // the file; "" none yet
  Q_PROPERTY(jambline::screens::PaperRun* run READ run CONSTANT)

 public:
  ReportViewModel(Session& session, QString place, WriteReport write, PrintPaper print,
                  QObject* parent = nullptr);

  QString insideWords() const;
  QString leftOutWords() const;
  bool hours() const { return wanted_.hours; }
  bool names() const { return wanted_.names; }
  bool pictures() const { return wanted_.pictures; }
  bool letter() const { return wanted_.letter_paper; }
  void setHours(bool with);
  void setNames(bool with);
  void setPictures(bool with);
  void setLetter(bool letter);
  QString place() const { return place_; }
  QString written() const { return written_; }
  PaperRun* run() { return &run_; }

  Q_INVOKABLE void ask();  // of the car on the tape, with all in it: asked()
  Q_INVOKABLE void forCustomer();
  Q_INVOKABLE void write(const QString& folder);
  Q_INVOKABLE void print();

 signals:
  void changed();
  void asked();

 private:
  void turned();
  void show(const Result<PaperMade>& made, const std::filesystem::path& file);
  void show(const PrintSaid& said);

  Session& session_;
  QString place_;
  WriteReport write_;
  PrintPaper print_;
  ReportWanted wanted_;
  QString written_;
  PaperRun run_{this};
};

}  // namespace jambline::screens
