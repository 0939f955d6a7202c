#include <QGuiApplication>
#include <iostream>

#include "app/command_line_words.h"
#include "app/papers/job_report_file.h"
#include "app/record/car_story.h"
#include "app/record/commands.h"
#include "app/record/entry_lines.h"
#include "app/record/picture_lines.h"

namespace jambline::app {

namespace {
ReportChoice choice_of(const ReportAsked& asked) {
  ReportChoice out;
  out.hours = !asked.no_hours && !asked.customer;
  out.names = !asked.no_names && !asked.customer;
  out.pictures = !asked.no_pictures;
  out.page = asked.a4 ? report::PageSize::A4 : report::PageSize::Letter;
  const bool metric = asked.metric || (asked.a4 && !asked.us);
  out.units = metric ? screens::Units::Metric : screens::Units::Us;
  return out;
}
}  // namespace

int report(const ReportAsked& asked) {
  const auto found = car_in_folder(asked.folder, asked.car);
  if (!found) return 2;
  const auto& folder = found->folder;
  const auto entries = time_line(folder, found->car->job);
  if (!entries) {
    std::cerr << said(entries.error());
    return 2;
  }
  // Qt sets type without a screen.
  if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
  int count = 1;
  char name[] = "jambline-record";
  char* names[] = {name, nullptr};
  const QGuiApplication set_type(count, names);

  const SystemClock clock;
  const std::string zone = folder.shop.zone.empty() ? "UTC" : folder.shop.zone;
  const ReportSource source{*found->car, folder.shop, *entries,
                            {},          clock.now(), QString::fromStdString(zone)};
  const auto wrote =
      write_report(asked.folder, source, choice_of(asked), asked.to, {}, [&](double part_done) {
        if (!asked.quiet)
          std::cerr << "\rwriting " << static_cast<int>(100 * part_done) << " %" << std::flush;
      });
  if (!asked.quiet) std::cerr << "\r              \r";
  if (!wrote) {
    std::cerr << said(wrote.error());
    return 2;
  }
  std::cout << "wrote  " << one_line(asked.to) << ", " << wrote->pdf.pages
            << (wrote->pdf.pages == 1 ? " page, " : " pages, ") << bytes_of(wrote->pdf.bytes)
            << '\n';
  if (wrote->pdf.not_printed > 0)
    std::cout << wrote->pdf.not_printed << " pictures are missing or damaged here; it says so\n";
  if (!wrote->bad) return 0;
  std::cout << "BAD    first bad entry: " << said(*wrote->bad);
  return 1;
}

}  // namespace jambline::app
