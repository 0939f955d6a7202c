// app/papers/report_telling.h: what every section of the job report is told from.
#pragma once

#include <QCoreApplication>
#include <QString>
#include <map>

#include "app/papers/job_report_words.h"

namespace jambline::app {

inline QString report_tr(const char* words) {
  return QCoreApplication::translate("job-report", words);
}

class ReportTelling {
 public:
  ReportTelling(const ReportSource& source, const ReportChoice& choice);

  const folds::CarView& car;
  const folds::ShopView& shop;
  const std::vector<entries::Entry>& entries;
  const ReportChoice& choice;
  QString zone;
  Moment now;

  // The name; without names the role and a number: "painter 1".
  QString who(const PersonId& person) const;
  QString when(std::int64_t wall_ms) const;  // "Nov 24, 2026 15:40"
  QString day(std::int64_t wall_ms) const;   // "Nov 24, 2026"
  QString who_when(const PersonId& person, std::int64_t wall_ms) const;
  QString panel(job::Panel panel) const;
  QString panels(const std::vector<job::Panel>& panels) const;
  QString booth(const BoothId& booth) const;
  QString product(const ProductId& product) const;
  // What somebody wrote in own words; empty without names.
  QString own_words(const std::string& text) const;

 private:
  std::map<PersonId, QString> numbered_;
};

using Section = report::ReportSection;

Section work_section(const ReportTelling& tell);
Section amendments_section(const ReportTelling& tell);
Section panels_section(const ReportTelling& tell);
Section film_section(const ReportTelling& tell);
Section spray_section(const ReportTelling& tell);
Section cure_section(const ReportTelling& tell);
Section fit_section(const ReportTelling& tell);
Section checks_section(const ReportTelling& tell);
Section releases_section(const ReportTelling& tell);
Section notes_section(const ReportTelling& tell);
Section pictures_section(const ReportTelling& tell);
Section proof_section(const ReportTelling& tell, const ReportProof& proof);

// A table goes in when it has rows, facts when there are any.
void add(Section& to, report::ReportTable table);
void add(Section& to, report::ReportFacts facts);
void say(Section& to, const QString& words, bool quiet = false);
void fact(report::ReportFacts& to, const QString& label, const QString& words);

}  // namespace jambline::app
