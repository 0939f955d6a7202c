#include "app/jambline/papers.h"

#include <QStandardPaths>

#include "app/papers/job_report_file.h"
#include "device/print.h"

namespace jambline::app {

namespace {
void make_documents(const std::filesystem::path& file) {
  const std::filesystem::path documents =
      QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation).toStdString();
  std::error_code ignored;  // what could not be made is said to be missing
  if (file.parent_path() == documents) std::filesystem::create_directories(documents, ignored);
}

ReportSource source_of(const screens::PaperOf& of) {
  return {*of.car, *of.shop, *of.entries, of.by, of.now, of.zone};
}
}  // namespace

screens::WriteReport report_writer(const std::filesystem::path& folder) {
  return [folder](const screens::ReportWanted& wanted, const std::filesystem::path& file,
                  const std::stop_token& stop,
                  const screens::PaperProgress& progress) -> Result<screens::PaperMade> {
    make_documents(file);
    const ReportChoice choice{wanted.hours, wanted.names, wanted.pictures,
                              wanted.letter_paper ? report::PageSize::Letter : report::PageSize::A4,
                              wanted.units};
    JAMBLINE_ASSIGN(const auto made,
                    write_report(folder, source_of(wanted.of), choice, file, stop, progress));
    return screens::PaperMade{made.pdf.bytes, made.pdf.pages, made.pdf.not_printed, made.bad};
  };
}

screens::WriteBundle bundle_writer(const std::filesystem::path& folder) {
  return [folder](const screens::PaperOf& of, const std::filesystem::path& file,
                  bool without_missing, const std::stop_token& stop,
                  const screens::PaperProgress& progress) -> Result<screens::PaperMade> {
    make_documents(file);
    JAMBLINE_ASSIGN(const auto made,
                    write_bundle(folder, source_of(of), file, without_missing, stop, progress));
    return screens::PaperMade{made.zip.bytes, 0, static_cast<int>(made.zip.missing.size()),
                              made.bad};
  };
}

screens::PrintSaid print_paper(const std::filesystem::path& file) {
  const device::Printed said = device::print(file);
  using Answer = screens::PrintSaid::Answer;
  switch (said.answer) {
    case device::Printed::Answer::Accepted:
      return {Answer::Accepted, said.words};
    case device::Printed::Answer::NoProgram:
      return {Answer::NoProgram, said.words};
    case device::Printed::Answer::Refused:
      break;
  }
  return {Answer::Refused, said.words};
}

std::function<QString()> fingerprint_reader(const std::filesystem::path& folder) {
  return [folder] { return QString::fromStdString(fingerprint_of(folder)); };
}

}  // namespace jambline::app
