// engine/local_engine.h: the engine of a folder on this device; internal to engine/.
//
// Parts:   engine.cpp opens and publishes, engine_acts.cpp writes, engine_arrivals.cpp folds what
// was
//          written or has arrived, engine_files.cpp keeps drafts, PINs and pictures.
// Threads: every private function is of the work lane but those that say otherwise.
#pragma once

#include <map>
#include <mutex>
#include <set>

#include "engine/engine.h"
#include "engine/finder.h"
#include "engine/floor.h"
#include "engine/job_cache.h"
#include "engine/lane.h"
#include "engine/pictures.h"
#include "folds/rights_fold.h"
#include "folds/shop_fold.h"
#include "shelf/accounts.h"
#include "shelf/drafts.h"

namespace jambline::engine {

class LocalEngine final : public Engine {
 public:
  explicit LocalEngine(Parts parts) : parts_(std::move(parts)), pictures_(parts_.folder) {}
  Status start();
  ~LocalEngine() override;
  void post(acts::Command command, PersonId person, Done done) override;
  void watch(std::optional<JobId> job) override;
  void want_record() override;
  void want_lessons() override;
  void worked(std::int64_t from_ms, std::int64_t to_ms,
              std::function<void(Result<folds::Worked>)> done) override;
  void accounts(std::int64_t from_ms, std::int64_t to_ms, std::stop_token stop,
                std::function<void(Result<std::vector<folds::Account>>)> done) override;
  void find(shelf::FindAsked asked, std::shared_ptr<const shelf::Names> kinds, std::stop_token stop,
            std::function<void(Result<shelf::Found>)> done) override;
  void keep_draft(const std::string& form, const std::string& json) override;
  std::string draft(const std::string& form) const override;
  void set_pin(PersonId person, std::string pin, std::function<void(Status)> done) override;
  void try_pin(PersonId person, std::string pin,
               std::function<void(Result<seal::PinTry>)> done) override;
  void erase_name(PersonId person, PersonId by, std::function<void(Status)> done) override;
  void admit_device(Admission admission, PersonId by, Done done) override;
  void admit_hub(ShopHub hub, PersonId by, Done done) override;
  void revoke_device(DeviceId device, PersonId by, Done done) override;
  void take_over(std::vector<seal::SealedEntry> origins, entries::TakenOverWhy why, PersonId by,
                 Done done) override;
  void take_page(std::shared_ptr<const ArrivedPage> page,
                 std::function<void(Status)> done) override;
  void hold_for_tail(bool hold) override;
  void audit(std::function<void(double)> progress,
             std::function<void(Result<log::Audit>)> done) override;
  void stop_audit() override;
  void keep_picture(PictureBytes bytes, PictureBytes preview, acts::TakePicture command,
                    PersonId person, Done done) override;
  void leftovers(std::function<void(Result<std::vector<LeftoverPicture>>)> done) override;
  void drop_leftover(Hash file, std::function<void(Status)> done) override;
  void check_pictures(std::function<void(double)> progress,
                      std::function<void(Result<PictureCheck>)> done) override;
  void export_shop(std::filesystem::path folder, std::stop_token stop, Progress progress,
                   std::function<void(Result<log::Exported>)> done) override;
  void import_shop(std::filesystem::path folder, std::stop_token stop, Progress progress,
                   std::function<void(Result<log::Imported>)> done) override;
  std::shared_ptr<const Snapshot> snapshot() const override;
  void drain() override;
  const blobs::BlobStore* blobs() const override { return pictures_.store(); }
  blobs::BlobStore* blobs_to_fill() override {
    return barred_at_start_ ? nullptr : pictures_.store();
  }
  void calculate(std::function<void()> work) override { calc_->post(std::move(work)); }

 private:
  Status may_write() const;
  // Decides, appends, folds. Nothing is written, folded or shown unless all of it is on disk.
  Result<Wrote> act(const acts::Command& command, const PersonId& person);
  // It is on the disk: what fails from here on is told, but the act stands.
  Wrote written(const std::vector<log::Stored>& stored);
  // Entries that no command makes.
  void say(std::function<Result<std::vector<log::Stored>>()> write, Done done);
  Result<std::vector<log::Stored>> append(const log::Draft& draft, const PersonId& by);
  // The next slice of a page, then the rest after what is urgent.
  void take_slices(const std::shared_ptr<const ArrivedPage>& page, std::size_t from,
                   const std::function<void(Status)>& done);
  // On the lane of files, then named on the work lane.
  void put_picture(PictureBytes bytes, PictureBytes preview, acts::TakePicture command,
                   PersonId person, Done done);
  // The file is on the disk or could not be put there. Where it was meant to go is kept until its
  // entry is.
  void name_picture(const Status& put, const acts::TakePicture& command, const PersonId& person,
                    const Done& done);
  void forget_meant(const Hash& file, const std::optional<Hash>& preview);  // any thread
  std::stop_token new_stop();                                               // any thread
  Status erase_names(const PersonId& person, const PersonId& by);
  // What was erased is known by no fold any more.
  Status fold_shop_anew();
  // Takes written or arrived entries into shop, jobs and floor.
  Status fold(const std::vector<entries::Entry>& fresh, bool at_once);
  Status take_in_arrivals();
  void take_up_changed_jobs();
  void take_lessons();
  void publish_lists_later();
  // The record and the lessons, as far as screens want them.
  void publish_lists();
  // Without the device's own key nothing is written; what is there is shown. Nor before the device
  // is admitted.
  Status take_key(bool fresh);
  bool waits_for_admission() const;
  void note_trouble(Error error);
  // Something failed; the banner shows it.
  void tell(Error error);
  void open_pins();
  // On the lane of the PINs, which owns the file; the work lane owns what is published.
  void publish_pins();
  void publish();
  // Takes in what fresh entries say about who may say what; true when the shop is to be folded
  // anew.
  Result<bool> learn_rights(const std::vector<entries::Entry>& fresh);
  // The next piece of the log, for cars with entries of people whose rights changed; false: no
  // more.
  Result<bool> look_for_their_cars();
  void fold_car_again(const JobId& job);
  void take_up_changed_jobs_later();

  Parts parts_;
  log::EntryLog* log_ = nullptr;
  std::optional<seal::SigningKey> key_;
  std::optional<JobCache> jobs_;
  std::optional<Floor> floor_;
  std::optional<shelf::Drafts> drafts_;
  Pictures pictures_;
  folds::RightsFold rights_;
  folds::StreamRights shop_rights_;
  std::set<PersonId> other_rights_;  // whose entries are looked for
  log::Arrival looked_through_ = 0;  // so far
  folds::ShopFold shop_;
  std::shared_ptr<const folds::ShopView> shop_view_;
  std::shared_ptr<const LastAct> last_act_;
  std::shared_ptr<const std::vector<folds::FloorRow>> record_;
  std::shared_ptr<const std::vector<folds::Lesson>> lessons_;
  std::optional<JobId> watched_;
  std::optional<Error> trouble_;  // until the next act that is saved
  std::optional<Error> barred_;   // why nothing may be written; as long as the engine lives
  log::Arrival folded_ = 0;
  std::uint64_t published_ = 0;
  bool tail_is_missing_ = false;  // the hub knows entries of this device that are not here
  bool barred_at_start_ = false;  // the folder may not be written at all
  bool record_wanted_ = false;
  bool lessons_wanted_ = false;
  bool lists_queued_ = false;
  bool text_was_erased_ = false;  // of a car; the shelf is to forget it

  std::vector<PersonId> with_pin_;

  std::optional<seal::PeopleSecret> pins_;  // the lane of the PINs
  Finder finder_;                           // the lane of the search
  std::optional<shelf::Whereabouts> shelf_where_;
  std::optional<shelf::Accounts> accounts_;  // the same; once somebody asked

  mutable std::mutex mutex_;  // guards the three below
  std::shared_ptr<const Snapshot> snapshot_;
  std::map<std::string, std::string> draft_texts_;
  std::stop_source audit_stop_;

  // Last: the lanes end before what they use.
  std::unique_ptr<Lane> work_ = std::make_unique<Lane>();
  std::unique_ptr<Lane> calc_ = std::make_unique<Lane>(Lane::Place::Background);
  std::unique_ptr<Lane> pin_lane_ = std::make_unique<Lane>();
  std::unique_ptr<Lane> files_lane_ = std::make_unique<Lane>();
  std::unique_ptr<Lane> find_lane_ = std::make_unique<Lane>();
};

}  // namespace jambline::engine
