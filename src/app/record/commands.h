// app/record/commands.h: the commands of jambline-record, one file each.
//
// Shape:   main.cpp reads the command line into what was asked; the command prints its answer.
// Result:  the program's exit code: 0 all in order, 1 something is wrong with what was looked at,
//          2 the command could not be carried out.
#pragma once

#include <string>

namespace jambline::app {

struct ListAsked {
  std::string folder = ".";
  bool json = false;
};
int list(const ListAsked& asked);

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

struct BundleAsked {
  std::string folder = ".";
  std::string car;  // plate, a part of it, or the job's id
  std::string to;   // the ZIP; must not be there
  bool without_missing = false;
};
// Checked again after it was written: 1 when the log itself is not in order.
int bundle(const BundleAsked& asked);

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
