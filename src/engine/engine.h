// engine/engine.h: the one door: decide, append, fold, publish.
//
// Lanes:   the work lane (one thread) owns log, folds and shelf. post() queues a command and
// returns
//          at once; `done` is called on the work lane after COMMIT and fold, with the entries
//          written or the reason why nothing was. Nothing on it takes over 5 ms but the commit;
//          imports come in slices of 50 entries and yield to taps. The calc lane takes long work on
//          immutable values; it can be stopped.
// Publish: after every change `published` is called on the work lane with a new immutable Snapshot.
//          Hand it to the GUI thread with a queued call. Snapshots share what did not change.
// Crash:   what was reported as done is on disk. Folds are rebuilt from the log; the shelf (floor
//          rows, positions, drafts) may be deleted at any time.
// Errors:  those of log/entry_log.h at open; those of acts/decide.h and the log in `done`.
#pragma once

#include <cstdint>
#include <filesystem>
#include <functional>
#include <memory>
#include <optional>
#include <stop_token>
#include <string>
#include <vector>

#include "acts/commands.h"
#include "base/clock.h"
#include "base/error.h"
#include "base/random.h"
#include "blobs/blob_store.h"
#include "engine/shop_devices.h"
#include "entries/entry.h"
#include "folds/account.h"
#include "folds/car_view.h"
#include "folds/floor_view.h"
#include "folds/lesson.h"
#include "folds/shop_view.h"
#include "folds/worked.h"
#include "log/entry_log.h"
#include "log/shop_folder.h"
#include "seal/people_secret.h"
#include "shelf/find.h"

namespace jambline::engine {

// What the last act of this device wrote, for the undo row.
struct LastAct {
  acts::Command command;
  PersonId person;
  std::int64_t wall_ms{};
  std::vector<std::pair<JobId, Hash>> entries;
};

struct Snapshot {
  std::uint64_t number = 0;  // grows by one with each publish
  std::shared_ptr<const folds::ShopView> shop;
  std::shared_ptr<const std::vector<folds::FloorRow>> floor;  // cars not delivered, by promise
  std::shared_ptr<const std::vector<folds::FloorRow>>
      record;  // all cars, newest first; null until asked
  std::shared_ptr<const std::vector<folds::Lesson>>
      lessons;                                // of all cars, by job; null until asked
  std::shared_ptr<const folds::CarView> car;  // the watched one, or null
  std::shared_ptr<const std::vector<entries::Entry>>
      timeline;                             // of the watched car, in display order
  std::shared_ptr<const LastAct> last_act;  // null after a restart
  std::vector<PersonId> with_pin;           // who is asked for a PIN here
  std::uint64_t own_entries = 0;            // entries of this device
  std::vector<ShopDevice> devices;          // of the shop, own first
  std::vector<ShopHub> hubs;
  bool read_only = false;        // folder read-only or newer schema
  std::optional<Error> trouble;  // what stands until it is solved (disk full, newer schema)
};

// What a hub brought (log::Page, kept).
struct ArrivedPage {
  std::vector<seal::SealedEntry> entries;
  std::vector<seal::Receipt> receipts;
  std::optional<log::Cursor> cursor;
};

struct Wrote {
  std::vector<entries::Entry> entries;
  JobId job;  // of OpenCar: the new job
};

// A picture that was put on the disk and never got its entry.
struct LeftoverPicture {
  Hash file;
  std::uint64_t size_bytes{};
  std::optional<acts::TakePicture> meant;  // when that is known
  PersonId person;                         // who took it, when that is known
};

struct NamedPicture {
  JobId job;
  PictureId picture;
  Hash file;
  entries::PicturePlace place;  // as it was kept first
};
struct PictureCheck {
  std::uint64_t files = 0;  // looked at, each once
  std::uint64_t bytes = 0;
  std::vector<NamedPicture> damaged;   // other bytes than those that were kept
  std::vector<NamedPicture> not_here;  // no file of that name in this folder
  bool stopped = false;                // not everything was looked at
};

class Engine {
 public:
  struct Parts {
    std::filesystem::path folder;  // log.db, shelf.db, device.key, people.secret live here
    const Clock& clock;
    std::unique_ptr<Random> random;
    std::string device_name;
    std::function<void(std::shared_ptr<const Snapshot>)> published;
    std::unique_ptr<log::EntryLog> log = {};  // tests hand in one that refuses; else opened here
    // The folder is to join a shop: none is founded, and nothing is written (NotYet, "admission")
    // until entries have come that admit this device's key.
    bool awaits_admission = false;
  };
  // Opens the folder, makes key and shop when it is empty (founder without people yet), folds what
  // the shelf does not have. Blocks: call before the event loop, it is short whatever the history.
  static Result<std::unique_ptr<Engine>> open(Parts parts);
  virtual ~Engine() = default;  // finishes what was queued, then stops both lanes

  using Done = std::function<void(Result<Wrote>)>;
  virtual void post(acts::Command command, PersonId person, Done done) = 0;
  virtual void watch(std::optional<JobId> job) = 0;  // whose view and time line are published
  virtual void want_record() = 0;                    // publish all cars from now on
  virtual void want_lessons() = 0;  // publish what all cars teach from now on; taps go between

  // Who worked on what and what cars waited for in [from, to), by start. On the work lane, as is
  // `done`.
  virtual void worked(std::int64_t from_ms, std::int64_t to_ms,
                      std::function<void(Result<folds::Worked>)> done) = 0;

  // What the cars say that were in the shop, or worked on, in [from, to), by opening. On the lane
  // of find(), as is `done`; it can be stopped.
  virtual void accounts(std::int64_t from_ms, std::int64_t to_ms, std::stop_token stop,
                        std::function<void(Result<std::vector<folds::Account>>)> done) = 0;

  // The cars that fit (shelf/find.h), newest first. On a lane of its own, beside acts and
  // calculations; `done` is called there. What was reported as done before is in it; what arrived
  // is as soon as its car was folded again. `kinds` names the kinds of the record in the caller's
  // language (folds::named_kinds), made once and handed in each time; the shop's names come from
  // the last snapshot, and `now_ms` from this engine's clock. Who asks anew stops the older
  // question: it is answered with Stopped.
  virtual void find(shelf::FindAsked asked, std::shared_ptr<const shelf::Names> kinds,
                    std::stop_token stop, std::function<void(Result<shelf::Found>)> done) = 0;

  // Half-typed forms: kept at once in drafts.db, given back after a kill.
  virtual void keep_draft(const std::string& form, const std::string& json) = 0;  // "" forgets it
  virtual std::string draft(const std::string& form) const = 0;  // read at open; any thread

  // PINs of this folder (seal/people_secret.h), on a lane of their own; `done` is called there. An
  // empty one removes it.
  virtual void set_pin(PersonId person, std::string pin, std::function<void(Status)> done) = 0;
  virtual void try_pin(PersonId person, std::string pin,
                       std::function<void(Result<seal::PinTry>)> done) = 0;

  // Erases every name that the log holds of somebody who has left (acts/decide.h says who may), his
  // notes, his words on pictures and his signatures (engine/erase.h); taps go between. Cannot be
  // taken back. `done` is called on the work lane; when it fails in between, what was erased stays
  // so and the rest goes with the next try.
  virtual void erase_name(PersonId person, PersonId by, std::function<void(Status)> done) = 0;

  // Devices and hubs let in and out (engine/shop_devices.h), as entries of membership. `done` is
  // called on the work lane.
  virtual void admit_device(Admission admission, PersonId by, Done done) = 0;
  virtual void admit_hub(ShopHub hub, PersonId by, Done done) = 0;
  virtual void revoke_device(DeviceId device, PersonId by, Done done) = 0;
  // Says again what entries of another device said (EntryLog::say_again), those that are not yet
  // said again; AlreadyDone when all are.
  virtual void take_over(std::vector<seal::SealedEntry> origins, entries::TakenOverWhy why,
                         PersonId by, Done done) = 0;

  // What a hub brought, in slices of 50 with taps between; receipts and cursor go with the last
  // one. `done` is called on the work lane. After an error what came before it stays.
  virtual void take_page(std::shared_ptr<const ArrivedPage> page,
                         std::function<void(Status)> done) = 0;
  // While true no act is written (NotYet, "tail"): the hub knows entries of this device that are
  // not here. Any thread.
  virtual void hold_for_tail(bool hold) = 0;

  // The whole chain, on the calc lane; `progress` and `done` are called there.
  virtual void audit(std::function<void(double)> progress,
                     std::function<void(Result<log::Audit>)> done) = 0;
  virtual void stop_audit() = 0;

  // Pictures: the file goes into blobs first, on a lane of its own, then the entry that names it.
  // A kill in between leaves the file behind; leftovers() finds it, with where it was meant to go.
  // `preview`, a small JPEG of it or null, is kept first and named by command.facts.preview.
  // `command.facts.file` has to be the hash of the bytes (else BadHash). `done` is called on the
  // work lane; with an error nothing is in the record, and the bytes are still the caller's.
  using PictureBytes = std::shared_ptr<const std::vector<std::uint8_t>>;
  virtual void keep_picture(PictureBytes bytes, PictureBytes preview, acts::TakePicture command,
                            PersonId person, Done done) = 0;
  // Null when the folder has none and cannot be written.
  virtual const blobs::BlobStore* blobs() const = 0;
  // The same for files of pictures that come from a hub; null where nothing may be written.
  virtual blobs::BlobStore* blobs_to_fill() = 0;
  // Files of blobs/ that no entry names. On the calc lane; `done` is called there.
  virtual void leftovers(std::function<void(Result<std::vector<LeftoverPicture>>)> done) = 0;
  // The file goes, unless an entry names it (NotAllowed). On the calc lane.
  virtual void drop_leftover(Hash file, std::function<void(Status)> done) = 0;
  // Hashes the files of all pictures again, on the calc lane; stopped by stop_audit().
  virtual void check_pictures(std::function<void(double)> progress,
                              std::function<void(Result<PictureCheck>)> done) = 0;

  // Long work of a screen on values of its own, on the calc lane, one after another. Taps do not
  // wait for it.
  virtual void calculate(std::function<void()> work) = 0;

  // A whole shop as plain files, and back, by the same checks (log/shop_folder.h). In slices on the
  // work lane: taps go before them. `progress` and `done` are called on the work lane; a stop is
  // seen between slices.
  using Progress = std::function<void(double part_done)>;
  virtual void export_shop(std::filesystem::path folder, std::stop_token stop, Progress progress,
                           std::function<void(Result<log::Exported>)> done) = 0;
  virtual void import_shop(std::filesystem::path folder, std::stop_token stop, Progress progress,
                           std::function<void(Result<log::Imported>)> done) = 0;

  virtual std::shared_ptr<const Snapshot> snapshot() const = 0;  // the last published; any thread
  virtual void drain() = 0;  // returns when everything queued before is done (tests, demo maker)
};

}  // namespace jambline::engine
