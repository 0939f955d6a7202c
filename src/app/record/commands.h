// app/record/commands.h: the commands of jambline-record, one file each.
//
// Shape:   main.cpp reads the command line into what was asked; the command prints its answer.
// Result:  the program's exit code: 0 all in order, 1 something is wrong with what was looked at,
//          2 the command could not be carried out.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

namespace jambline::app {

struct ListAsked {
  std::string folder = ".";
  bool json = false;
};
int list(const ListAsked& asked);

// Everything that is given has to hold.
struct FindOptions {
  std::string folder = ".";
  std::vector<std::string> words;
  std::string from;  // "2026-09-21", opened that day or later
  std::string to;    // opened that day or before
  std::string color;
  std::string person;  // names and kinds: whole or a part of them
  std::string booth;
  std::string defect;
  std::string cause;
  std::string next;
  bool in_shop = false;
  bool delivered = false;
  bool late = false;
  bool redo = false;
  bool came_back = false;
  bool spray_override = false;
  bool other_override = false;
  bool sprayed_without = false;
  bool pictures_missing = false;
  bool amended = false;
  bool disputed = false;
  int most = 50;
  std::int64_t after = 0;  // where a page ended
  bool json = false;
};
// The answers of the program's own search (shelf/find.h).
int find(const FindOptions& options);

struct ShowAsked {
  std::string folder = ".";
  std::string car;  // plate, a part of it, or the job's id
  bool json = false;
};
int show(const ShowAsked& asked);

struct HoursAsked {
  std::string folder = ".";
  std::string from;    // "2026-09-21"; empty: Monday of the last week that has hours
  std::string to;      // the last day; empty: seven days in all, or that of `from` alone
  std::string person;  // name or a part of it; empty: everybody who has hours then
  bool csv = false;
  int round_min = 0;  // 0: exact; only in the table
};
// Sums are those of the program's own day and week sheets; what still runs is named, not counted.
int hours(const HoursAsked& asked);

struct AskAsked {
  std::string folder = ".";
  std::string question;          // folds/questions.h: "hours", "flow", "late"
  std::string by = "operation";  // of hours
  std::string from;              // first day, in the shop's zone; empty: from the beginning
  std::string to;                // last day; empty: to the end
  bool json = false;
};
// The answers of the program's own pages, by the same functions.
int ask(const AskAsked& asked);

struct ExportAsked {
  std::string folder = ".";
  std::string to;  // a folder that is not there, or is empty
  std::vector<std::string> tables;
  std::string from;    // cars in the shop or worked on from this day
  std::string to_day;  // to the end of this one
  bool json = false;
};
int export_tables(const ExportAsked& asked);

struct BundleAsked {
  std::string folder = ".";
  std::string car;  // plate, a part of it, or the job's id
  std::string to;   // the ZIP; must not be there
  bool without_missing = false;
};
// Checked again after it was written: 1 when the log itself is not in order.
int bundle(const BundleAsked& asked);

struct ReportAsked {
  std::string folder = ".";
  std::string car;  // plate, a part of it, or the job's id
  std::string to;   // the PDF; must not be there
  bool letter = false;
  bool a4 = false;
  bool metric = false;
  bool us = false;
  bool customer = false;  // as no_hours and no_names
  bool no_hours = false;
  bool no_names = false;
  bool no_pictures = false;
  bool quiet = false;
};
// Only in programs that are built with Qt. The words are those of the screens. 1 when the log
// itself is not in order: the report says where.
int report(const ReportAsked& asked);

struct VerifyAsked {
  std::string folder;       // or an evidence bundle
  std::string fingerprint;  // that the shop has to have; empty: any
  bool quiet = false;
};
int verify(const VerifyAsked& asked);

struct PicturesAsked {
  std::string folder = ".";
  std::string car;  // plate, a part of it, or the job's id
  std::string to;   // folder for the copies; made when it is not there
};
// Only in programs that are built with the folder `picture`.
int export_pictures(const PicturesAsked& asked);

int catalogue();

}  // namespace jambline::app
