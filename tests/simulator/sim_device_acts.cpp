// What people do on a device.
#include "seal/digest.h"
#include "tests/property/devices.h"
#include "tests/simulator/sim_device.h"

namespace jambline::simulator {

SimDevice::Wrote SimDevice::act(const acts::Command& command, const PersonId& person,
                                Random& random) {
  std::map<JobId, folds::CarView> views;
  for (const auto& [job, fold] : shadow->device().folds().jobs) views.emplace(job, fold.view());
  const auto shop = shadow->device().folds().shop.view();
  acts::World world{shop,
                    [&](const JobId& job) -> const folds::CarView* {
                      const auto found = views.find(job);
                      return found == views.end() ? nullptr : &found->second;
                    },
                    [&](const PersonId& worker) -> std::optional<JobId> {
                      for (const auto& [job, view] : views)
                        for (const auto& running : view.running)
                          if (running.person == worker) return job;
                      return std::nullopt;
                    }};
  const auto* own = log_->members().find(key.device());
  world.manager_device = own && own->manager;
  const Moment now = clock.now();
  JAMBLINE_ASSIGN(const auto decided,
                  acts::decide(world, command, {person, random, now.wall_ms, now}));
  std::vector<log::Draft> drafts;
  for (const auto& one : decided) {
    const auto written = entries::write(one.payload);
    drafts.push_back({one.subject, written.kind, written.schema, written.payload});
  }
  return append(std::move(drafts), person, random);
}

SimDevice::Wrote SimDevice::take_picture(const acts::TakePicture& asked, const std::string& bytes,
                                         const std::string& preview, const PersonId& person,
                                         Random& random) {
  acts::TakePicture command = asked;
  JAMBLINE_ASSIGN(command.facts.preview, blobs_->put(seal::bytes_of(preview)));
  JAMBLINE_ASSIGN(command.facts.file, blobs_->put(seal::bytes_of(bytes)));
  command.facts.size_bytes = static_cast<std::int64_t>(bytes.size());
  command.facts.width_px = 1600;
  command.facts.height_px = 1200;
  command.facts.word = trade::PhotoWord::Good;
  return act(command, person, random);
}

}  // namespace jambline::simulator
