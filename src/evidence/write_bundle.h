// evidence/write_bundle.h: one ZIP of a job that can be checked by who trusts neither the shop nor
// this program.
//
// Shape:   the job's entries whole, membership and erasures of the shop whole, of every other entry
//          of every device its header, receipts, the pictures that the job's entries name, a report
//          for people, FORMAT.md, BUNDLE.md and verify_bundle.py. The same log gives the same
//          bytes. Nothing is judged here: what is wrong in the log is in the bundle, and
//          check_bundle() names it.
// Durable: as zip_writer.h: whole under its name, or nothing.
// Errors:  Unknown (no entry of this job), AlreadyDone (a file of that name), NoSuchFile with arg
//          picture (the original is not on this device) and BadHash with arg picture (damaged
//          here), both only without `without_missing`; DiskFull, ReadOnly, FileFailed, Stopped;
//          those of log/entry_log.h while reading.
// Threads: the log's owner; reads the log in slices.
#pragma once

#include <filesystem>
#include <functional>
#include <stop_token>
#include <string>
#include <vector>

#include "blobs/blob_store.h"
#include "log/entry_log.h"

namespace jambline::evidence {

struct BundleWanted {
  JobId job;
  std::filesystem::path to;
  std::string report;  // plain text, put in as report.txt
  bool without_missing =
      false;  // also when pictures are missing or damaged: check_bundle() says so
};

struct BundleWritten {
  std::uint64_t entries = 0;  // of the job
  std::uint64_t receipts = 0;
  std::uint64_t pictures = 0;
  std::uint64_t bytes = 0;    // of the file
  std::vector<Hash> missing;  // pictures that are named and not in it
};

// `pictures` null: the folder has none.
Result<BundleWritten> write_bundle(log::EntryLog& log, const blobs::BlobStore* pictures,
                                   const BundleWanted& wanted, const std::stop_token& stop,
                                   const std::function<void(double part_done)>& progress);

}  // namespace jambline::evidence
