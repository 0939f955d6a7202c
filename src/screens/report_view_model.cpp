#include "screens/report_view_model.h"

#include "screens/picture_rows.h"
#include "screens/sync_words.h"
#include "screens/text.h"

namespace jambline::screens {

namespace {
// Measured over demo cars and cameras (bench-record, figure pdf_mb): what a picture and the words
// take.
constexpr std::int64_t picture_bytes = 75'000;
constexpr std::int64_t words_bytes = 90'000;
}  // namespace

ReportViewModel::ReportViewModel(Session& session, QString place, WriteReport write,
                                 PrintPaper print, QObject* parent)
    : QObject(parent),
      session_(session),
      place_(std::move(place)),
      write_(std::move(write)),
      print_(std::move(print)) {
  connect(&session, &Session::snapshotChanged, this, &ReportViewModel::changed);
}

QString ReportViewModel::insideWords() const {
  const PaperOf of = paper_of(session_);
  if (!of) return {};
  const auto pictures = wanted_.pictures ? of.car->pictures.size() : 0;
  return tr("From %1, with %2: about %3.")
      .arg(entries_words(of.entries->size()), pictures_words(pictures),
           bytes_words(words_bytes + static_cast<std::int64_t>(pictures) * picture_bytes));
}

QString ReportViewModel::leftOutWords() const {
  QStringList out;
  if (!wanted_.hours) out << tr("No estimates, clocked hours or waits.");
  if (!wanted_.names)
    out << tr("People as a role and a number. Notes, own words and signatures are left out.");
  if (!wanted_.pictures) out << tr("No pictures.");
  return out.join(QChar('\n'));
}

void ReportViewModel::setHours(bool with) {
  wanted_.hours = with;
  turned();
}
void ReportViewModel::setNames(bool with) {
  wanted_.names = with;
  turned();
}
void ReportViewModel::setPictures(bool with) {
  wanted_.pictures = with;
  turned();
}
void ReportViewModel::setLetter(bool letter) {
  wanted_.letter_paper = letter;
  turned();
}

void ReportViewModel::turned() {
  written_.clear();
  run_.forget();
  emit changed();
}

void ReportViewModel::ask() {
  if (!run_.busy()) {
    wanted_ = {};
    wanted_.letter_paper = session_.units() == Units::Us;
    turned();
  }
  emit asked();
}

void ReportViewModel::forCustomer() {
  wanted_.hours = false;
  wanted_.names = false;
  turned();
}

void ReportViewModel::write(const QString& folder) {
  ReportWanted wanted = wanted_;
  wanted.of = paper_of(session_);
  wanted.units = session_.units();
  if (!wanted.of || run_.busy()) return;
  const auto file = paper_folder(folder) /
                    paper_file_name(tr("Report"), wanted.of, QStringLiteral(".pdf")).toStdString();
  run_.start(tr("Checking the entries and setting the pages"),
             [this, wanted, file, write = write_](const std::stop_token& stop,
                                                  const PaperProgress& went_on) -> PaperRun::Then {
               const auto made = write(wanted, file, stop, went_on);
               return [this, made, file] { show(made, file); };
             });
  emit changed();
}

void ReportViewModel::show(const Result<PaperMade>& made, const std::filesystem::path& file) {
  if (!made) {
    run_.say(made.error(), {tr("Stopped. No report was written."), tr("The record is as it was."),
                            tr("Write it when there is time.")});
    emit changed();
    return;
  }
  written_ = QString::fromStdString(file.string());
  const QString pages = made->pages == 1 ? tr("1 page") : tr("%1 pages").arg(made->pages);
  QStringList todo;
  if (made->missing > 0)
    todo << tr("%1 not on this device, or damaged: the page says so.")
                .arg(pictures_words(static_cast<std::uint64_t>(made->missing)));
  if (made->bad)
    todo << tr("The log is not in order, and the report says where. Check it in Record.");
  run_.say({tr("Saved as %1").arg(written_),
            tr("%1, %2.").arg(pages, bytes_words(static_cast<std::int64_t>(made->bytes))),
            todo.join(QChar('\n'))},
           made->bad.has_value());
  emit changed();
}

void ReportViewModel::print() {
  if (written_.isEmpty() || run_.busy()) return;
  run_.start(tr("Handing it to the printer"),
             [this, file = written_.toStdString(), print = print_](
                 const std::stop_token&, const PaperProgress&) -> PaperRun::Then {
               const PrintSaid said = print(file);
               return [this, said] { show(said); };
             });
  emit changed();
}

void ReportViewModel::show(const PrintSaid& said) {
  const QString saved = tr("The report is saved as %1").arg(written_);
  switch (said.answer) {
    case PrintSaid::Answer::Accepted:
      run_.say({tr("Handed to the printer."), saved, said.words}, false);
      break;
    case PrintSaid::Answer::NoProgram:
      run_.say({tr("This device cannot print: it has no printing program."), saved,
                tr("Print the file elsewhere, or have the program lp of the package cups-client "
                   "installed.")},
               true);
      break;
    case PrintSaid::Answer::Refused:
      run_.say({tr("It was not printed: %1").arg(said.words), saved,
                tr("Set a printer up on this device, or print the file elsewhere.")},
               true);
      break;
  }
  emit changed();
}

}  // namespace jambline::screens
