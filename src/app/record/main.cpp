#include <CLI/CLI.hpp>

#include "app/record/commands.h"

namespace {
using namespace jambline::app;

constexpr const char* folder_words = "folder with log.db in it; this one by default";
void add_find(CLI::App& command, FindOptions& to) {
  command.add_option("words", to.words,
                     "each has to be found: half a plate, the end of a VIN, the beginning of any "
                     "word of color, notes, people, defects, causes, panels, reasons");
  command.add_option("--from", to.from, "opened on this day or later, 2026-09-21");
  command.add_option("--to", to.to, "opened on this day or before");
  command.add_option("--color", to.color, "words of the color's name or code");
  command.add_option("--person", to.person, "who had to do with it: a name, or a part of it");
  command.add_option("--booth", to.booth, "where it was sprayed");
  command.add_option("--defect", to.defect, "what was found on it: crater, run, nib");
  command.add_option("--cause", to.cause, "what threw the dirt: hose, suit");
  command.add_option("--next", to.next, "the stage that comes next");
  CLI::Option* in_shop = command.add_flag("--in-shop", to.in_shop, "not yet delivered");
  command.add_flag("--delivered", to.delivered, "delivered")->excludes(in_shop);
  command.add_flag("--late", to.late, "delivered after it was promised, or past that time now");
  command.add_flag("--redo", to.redo, "work was done again, or has to be");
  command.add_flag("--came-back", to.came_back, "came back after it was delivered");
  command.add_flag("--overrides", to.spray_override, "a must before the gun was passed over");
  command.add_flag("--other-overrides", to.other_override,
                   "a must before cutting, or the order of assembly, was passed over");
  command.add_flag("--sprayed-without", to.sprayed_without, "somebody said it was sprayed without");
  command.add_flag("--pictures-missing", to.pictures_missing,
                   "a stage was ended though pictures were missing");
  command.add_flag("--amended", to.amended, "hours were put right afterwards");
  command.add_flag("--disputed", to.disputed, "two answers stand");
  command.add_option("--most", to.most, "so many cars at once")->check(CLI::Range(1, 100'000));
  command.add_option("--after", to.after, "go on where an answer ended")
      ->check(CLI::NonNegativeNumber);
  command.add_option("--folder", to.folder, folder_words);
  command.add_flag("--json", to.json, "as JSON");
}

#ifdef JAMBLINE_PAPERS
void add_report(CLI::App& command, ReportAsked& to) {
  command.add_option("car", to.car, "plate, a part of it, or the job's id")->required();
  command.add_option("--to", to.to, "the PDF; a file that is there stays as it is")->required();
  command.add_option("--folder", to.folder, folder_words);
  CLI::Option* letter = command.add_flag("--letter", to.letter, "on US letter paper; the default");
  command.add_flag("--a4", to.a4, "on A4 paper")->excludes(letter);
  CLI::Option* us = command.add_flag("--us", to.us, "in inches, mils, °F; the default on letter");
  command.add_flag("--metric", to.metric, "in mm, µm, °C; the default on A4")->excludes(us);
  command.add_flag("--customer", to.customer, "without hours and names");
  command.add_flag("--no-hours", to.no_hours,
                   "without estimates, clocked hours, waits, and what was put right in them");
  command.add_flag("--no-names", to.no_names,
                   "people as a role and a number; own words and signatures left out");
  command.add_flag("--no-pictures", to.no_pictures, "without pictures");
  command.add_flag("--quiet", to.quiet, "no progress");
}
#endif

void add_ask(CLI::App& command, AskAsked& to) {
  command
      .add_option("question", to.question,
                  "hours, flow, first-time, dirt, sprays, due, late, pictures")
      ->required();
  command.add_option("--by", to.by, "of hours: operation, person, month");
  command.add_option("--from", to.from, "first day, 2026-09-21; else from the beginning");
  command.add_option("--to", to.to, "last day; else to the end");
  command.add_option("--folder", to.folder, folder_words);
  command.add_flag("--json", to.json, "as JSON, with the cars and entries of each row");
}

void add_export(CLI::App& command, ExportAsked& to) {
  command.add_option("--to", to.to, "a folder that is not there yet, or is empty")->required();
  command.add_option("--table", to.tables, "only these, by name; may be given several times");
  command.add_flag("--json", to.json, "as JSON; else CSV (RFC 4180)");
  command.add_option("--from", to.from, "cars that were in the shop on this day or later");
  command.add_option("--to-day", to.to_day, "cars that were in the shop on this day or before");
  command.add_option("--folder", to.folder, folder_words);
}
}  // namespace

int main(int argc, char** argv) {
  CLI::App program("Looks into a shop's record, and changes nothing.", "jambline-record");
  program.set_version_flag("--version", "jambline-record " JAMBLINE_VERSION);
  program.require_subcommand(1);
  int exit_code = 0;

  ListAsked asked_list;
  CLI::App* one = program.add_subcommand("list", "all cars, newest first, one line each");
  one->add_option("--folder", asked_list.folder, folder_words);
  one->add_flag("--json", asked_list.json, "as JSON");
  one->callback([&] { exit_code = list(asked_list); });

  FindOptions to_find;
  add_find(*program.add_subcommand("find", "cars by any words of their record, newest first"),
           to_find);
  program.get_subcommand("find")->callback([&] { exit_code = find(to_find); });

  ShowAsked asked_show;
  one = program.add_subcommand("show", "one car: panels, marks, hours and its time line in words");
  one->add_option("car", asked_show.car, "plate, a part of it, or the job's id")->required();
  one->add_option("--folder", asked_show.folder, folder_words);
  one->add_flag("--json", asked_show.json, "as JSON");
  one->callback([&] { exit_code = show(asked_show); });

  HoursAsked asked_hours;
  one = program.add_subcommand("hours", "who worked on what, by day, car and operation");
  one->add_option("folder,--folder", asked_hours.folder, folder_words);
  one->add_option("--from", asked_hours.from,
                  "first day, 2026-09-21; else Monday of the last week that has hours");
  one->add_option("--to", asked_hours.to, "last day; else one day, or with no --from a week");
  one->add_option("--person", asked_hours.person, "name, or a part of it; else everybody");
  CLI::Option* csv = one->add_flag("--csv", asked_hours.csv, "as a table for other programs");
  one->add_option("--round", asked_hours.round_min,
                  "with --csv: one more column, to the nearest so many minutes, both ways alike")
      ->check(CLI::Range(1, 60))
      ->needs(csv);
  AskAsked hours_by{.folder = {}, .question = "hours", .by = {}};
  one->add_option("--by", hours_by.by, "estimate against clocked instead: operation, person, month")
      ->check(CLI::IsMember({"operation", "person", "month"}))
      ->excludes(csv);
  one->add_flag("--json", hours_by.json, "with --by: as JSON")->needs("--by");
  one->callback([&] {
    if (hours_by.by.empty()) {
      exit_code = hours(asked_hours);
      return;
    }
    hours_by.folder = asked_hours.folder;
    hours_by.from = asked_hours.from;
    hours_by.to = asked_hours.to;
    exit_code = ask(hours_by);
  });

  AskAsked asked_question;
  add_ask(
      *program.add_subcommand("ask", "what a manager asks of years, with the counts it rests on"),
      asked_question);
  program.get_subcommand("ask")->callback([&] { exit_code = ask(asked_question); });

  ExportAsked asked_export;
  add_export(*program.add_subcommand("export", "every table of the record for other programs"),
             asked_export);
  program.get_subcommand("export")->callback([&] { exit_code = export_tables(asked_export); });

  BundleAsked asked_bundle;
  one = program.add_subcommand(
      "bundle", "one car's entries, pictures and report as a ZIP that anybody can check");
  one->add_option("car", asked_bundle.car, "plate, a part of it, or the job's id")->required();
  one->add_option("--to", asked_bundle.to, "the ZIP; a file that is there stays as it is")
      ->required();
  one->add_option("--folder", asked_bundle.folder, folder_words);
  one->add_flag("--without-missing", asked_bundle.without_missing,
                "also when pictures are missing or damaged here; the check will say so");
  one->callback([&] { exit_code = bundle(asked_bundle); });

#ifdef JAMBLINE_PAPERS
  ReportAsked asked_report;
  add_report(
      *program.add_subcommand("report", "one car's record as a PDF, for insurer or customer"),
      asked_report);
  program.get_subcommand("report")->callback([&] { exit_code = report(asked_report); });
#endif

  VerifyAsked asked_verify;
  one = program.add_subcommand(
      "verify", "check chain, signatures, membership and pictures of a folder or bundle");
  one->add_option("folder", asked_verify.folder, "folder with log.db in it, or an evidence bundle")
      ->required();
  one->add_option("--shop", asked_verify.fingerprint, "the fingerprint that the shop has to have");
  one->add_flag("--quiet", asked_verify.quiet, "no progress");
  one->callback([&] { exit_code = verify(asked_verify); });

#ifdef JAMBLINE_PICTURES
  PicturesAsked asked_pictures;
  one = program.add_subcommand("pictures",
                               "copies of a car's pictures that do not say where they were taken");
  one->add_option("car", asked_pictures.car, "plate, a part of it, or the job's id")->required();
  one->add_option("--to", asked_pictures.to, "folder for the copies")->required();
  one->add_option("--folder", asked_pictures.folder, folder_words);
  one->callback([&] { exit_code = export_pictures(asked_pictures); });
#endif

  one = program.add_subcommand("catalogue", "every kind of entry with its fields, as CATALOGUE.md");
  one->callback([&] { exit_code = catalogue(); });

  try {
    program.parse(argc, argv);
  } catch (const CLI::ParseError& refused) {
    const int code = program.exit(refused);
    return code == 0 ? 0 : 2;
  }
  return exit_code;
}
