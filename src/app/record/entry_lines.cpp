#include "app/record/entry_lines.h"

#include <cctype>
#include <cstdio>

#include "base/json.h"
#include "base/zones.h"

namespace jambline::app {

namespace {

std::string sentence(std::string words) {
  if (!words.empty())
    words[0] = static_cast<char>(std::toupper(static_cast<unsigned char>(words[0])));
  return words;
}
template <WordedEnum E>
std::string words(E value) {
  return std::string(word_of(value));
}

std::string number(double value) {
  std::string out;
  json::write_number(out, value);
  return out;
}

// One overload a kind and none for "any other".
class Line {
 public:
  Line(const entries::Entry& entry, const Shop& shop) : entry_(entry), shop_(shop) {}

  std::string operator()(const entries::UnknownEntry&) const {
    return "Entry of a newer version, kept as it is";
  }
  std::string operator()(const entries::ErasedPayload&) const {
    if (entry_.kind == entries::NoteWritten::kind) return "Note erased";
    if (entry_.kind == entries::PersonNamed::kind) return "Name erased";
    return "Text erased";
  }
  std::string operator()(const entries::MembershipAct&) const {
    switch (entry_.kind) {
      case 1:
        return "Shop founded";
      case 2:
        return "Device admitted";
      case 3:
        return "Device revoked";
      case 4:
        return "Hub admitted";
      case 5:
        return "Text of an entry erased";
      default:
        return "Membership changed";
    }
  }
  std::string operator()(const entries::ShopNamed& said) const {
    return "Shop named " + said.shop_name + ", zone " + said.zone;
  }
  std::string operator()(const entries::PersonAdded& said) const {
    return name_of(said.person, shop_.view) + ": " + words(said.role);
  }
  std::string operator()(const entries::PersonNamed& said) const {
    return "Person named " + said.person_name;
  }
  std::string operator()(const entries::PersonLeft& said) const {
    return name_of(said.person, shop_.view) + " left";
  }
  std::string operator()(const entries::DeviceNamed& said) const {
    return "Device named " + said.device_name;
  }
  std::string operator()(const entries::WorkTakenOver& said) const {
    return std::to_string(said.origins.size()) + " entries of another device said again, " +
           std::string(word_of(said.why));
  }
  std::string operator()(const entries::RackPlaceAdded& said) const {
    return "Rack place " + said.rack_name + " added";
  }
  std::string operator()(const entries::BoothSet& said) const {
    return "Booth " + said.booth_name + ", " + words(said.booth_kind);
  }
  std::string operator()(const entries::BoothEventLogged& said) const {
    std::string out = sentence(booth(said.booth)) + ": " + words(said.what);
    if (said.old_filters_out)
      out += *said.old_filters_out ? ", old filters out of the building"
                                   : ", old filters still in the building";
    if (said.happened_ms) out += ", as of " + time_of(*said.happened_ms, shop_.view.zone);
    return out;
  }
  std::string operator()(const entries::Withdrawn& said) const {
    const auto target = shop_.history.target_of(said);
    std::string out = target.put_back ? "Put back" : "Taken back";
    out += target.entry ? ": " + line_of(*target.entry, shop_) : " an entry that is not here";
    if (!said.reason.empty()) out += ", because: " + said.reason;
    return out;
  }
  std::string operator()(const entries::CarOpened& said) const {
    return "Car opened: " + words(said.body) + ", " + words(said.drive);
  }
  std::string operator()(const entries::PlateSet& said) const { return "Plate " + said.plate; }
  std::string operator()(const entries::VinSet& said) const {
    return "VIN " + said.vin + (said.passes ? "" : ", used as typed, does not check");
  }
  std::string operator()(const entries::ColorSet& said) const {
    std::string out = "Color " + said.color.name;
    if (!said.color.code.empty()) out += ", code " + said.color.code;
    return out;
  }
  std::string operator()(const entries::PromiseSet& said) const {
    return "Promised " + time_of(said.promised_ms, shop_.view.zone);
  }
  std::string operator()(const entries::PanelPlanned& said) const {
    return sentence(words(said.plan.panel)) +
           " planned: " + (said.plan.on_car ? "on the car, " : "loose, ") +
           words(said.plan.substrate) + ", " + words(said.plan.finish) + ", " +
           words(said.plan.treatment);
  }
  std::string operator()(const entries::SprayedIn& said) const {
    return "Sprayed in " + booth(said.booth);
  }
  std::string operator()(const entries::OperationPlanned& said) const {
    std::string out = sentence(said.title.empty() ? words(said.stage) : said.title) + " planned";
    if (said.estimate_min > 0) out += ", " + std::to_string(said.estimate_min) + " min";
    return out;
  }
  std::string operator()(const entries::StageDone& said) const {
    std::string out = sentence(words(said.stage)) + (said.done ? " done" : " opened again");
    if (said.without_shots)
      out += ", pictures missing: " + std::to_string(said.shots_missing.value_or(0)) + " (" +
             words(*said.without_shots) + ")";
    return out;
  }
  std::string operator()(const entries::NoteWritten& said) const { return "Note: " + said.text; }
  std::string operator()(const entries::CarDelivered& said) const {
    if (said.open_points == 0) return "Car delivered";
    return "Car delivered with " + std::to_string(said.open_points) +
           (said.open_points == 1 ? " point open" : " points open");
  }
  std::string operator()(const entries::MarkPlaced& said) const {
    return mark(said.mark, said.defect) + " placed on the " + words(said.panel) +
           (said.look ? ", " + words(*said.look) : "");
  }
  std::string operator()(const entries::MarkMoved& said) const {
    const auto* known = shop_.history.mark(said.mark);
    return known ? mark(said.mark, known->defect) + " moved" : "Mark moved";
  }
  std::string operator()(const entries::MarkDescribed& said) const {
    const auto* known = shop_.history.mark(said.mark);
    std::string out = known ? "Mark " + std::to_string(known->number) : "Mark";
    out += " is " + words(said.defect) + ", size " + std::to_string(said.size);
    if (said.layer != job::Layer::NotSaid) out += ", " + words(said.layer);
    if (said.look) out += ", " + words(*said.look);
    return out;
  }
  std::string operator()(const entries::MarkEnded& said) const {
    const auto* known = shop_.history.mark(said.mark);
    return (known ? mark(said.mark, known->defect) : "Mark") + ": " + words(said.end);
  }
  std::string operator()(const entries::DirtAllOver& said) const {
    if (said.dirt == job::DirtClass::None)
      return sentence(words(said.panel)) + ": no dirt all over";
    return sentence(words(said.panel)) + ": dirt all over, " + words(said.dirt);
  }
  std::string operator()(const entries::VerdictGiven& said) const {
    return sentence(words(said.panel)) + ": " + words(said.verdict) +
           (said.edges_and_back ? ", edges and back looked at" : "");
  }
  std::string operator()(const entries::FilmRead& said) const {
    std::string out = sentence(words(said.panel)) + ", spot " + std::to_string(said.spot) +
                      (said.gauge == job::FilmGauge::Clear ? ": clear " : ": film ") +
                      words(said.when) + ", ";
    for (std::size_t i = 0; i < said.typed.size(); ++i) {
      if (i > 0) out += ", ";
      json::write_number(out, said.typed[i]);
    }
    return out + " " + words(said.unit);
  }
  std::string operator()(const entries::BeforeCutAnswered& said) const {
    std::string out = "Checked before cutting";
    bool first = true;
    for (const auto& check : said.checks) {
      if (check.answer != job::CutAnswer::No) continue;
      out += (first ? ", without: " : ", ") + words(check.item);
      if (check.reason) out += " (" + words(*check.reason) + ")";
      first = false;
    }
    return out;
  }
  std::string operator()(const entries::CauseSet& said) const {
    return "What threw it: " + (said.cause ? words(*said.cause) : "left open");
  }
  std::string operator()(const entries::RoundFinished& said) const {
    std::string out = sentence(words(said.panel)) + ": " + words(said.round);
    out += said.how == job::RoundHow::AsPlanned ? " done" : ", " + words(said.how);
    if (!said.marks.empty())
      out +=
          ", " + std::to_string(said.marks.size()) + (said.marks.size() == 1 ? " mark" : " marks");
    if (said.work_min) {
      out += ", ";
      json::write_number(out, *said.work_min);
      out += " min";
    }
    return out;
  }
  std::string operator()(const entries::PictureTaken& said) const {
    std::string out = "Picture, " + words(said.place.stage);
    if (said.place.panel) out += ", " + words(*said.place.panel);
    if (said.kept_though_poor) out += ", kept though " + words(said.facts.word);
    return out;
  }
  std::string operator()(const entries::PictureFiled& said) const {
    return "Picture moved to " + words(said.place.stage);
  }
  std::string operator()(const entries::PictureNoted& said) const {
    return sentence(words(said.drawn.shape)) + " on a picture" +
           (said.drawn.text.empty() ? "" : ": " + said.drawn.text);
  }
  std::string operator()(const entries::EdgesLookedAt& said) const {
    std::string out = "Edges on a picture: ";
    for (const auto find : said.finds)
      out += (find == said.finds.front() ? "" : ", ") + words(find);
    return said.finds.empty() ? out + "clean" : out;
  }
  std::string operator()(const entries::ShotListSet& said) const {
    return "Shots of " + words(said.stage) + " set: " + std::to_string(said.shots.size());
  }
  std::string operator()(const entries::BoothFactsSet& said) const {
    return sentence(booth(said.booth)) + ": facts set";
  }
  std::string operator()(const entries::BoothRead& said) const {
    std::string out = sentence(booth(said.booth)) + ": " + words(said.what);
    for (const double value : said.values) {
      out += ' ';
      json::write_number(out, value);
    }
    return out;
  }
  std::string operator()(const entries::BoothSaid& said) const {
    return sentence(booth(said.booth)) + ": " + words(said.what);
  }
  std::string operator()(const entries::RespiratorSet& said) const {
    return "Respirator " + said.said.model + ", " + words(said.said.kind);
  }
  std::string operator()(const entries::FitTestDone&) const { return "Fit test"; }
  std::string operator()(const entries::CartridgeChanged&) const { return "Cartridge changed"; }
  std::string operator()(const entries::BreathingAirChecked&) const {
    return "Breathing air checked";
  }
  std::string operator()(const entries::DoNotSpraySaid& said) const {
    return said.do_not_spray ? "Do not spray" : "May spray again";
  }
  std::string operator()(const entries::DueSet& said) const {
    return sentence(words(said.what)) + ": due day set";
  }
  std::string operator()(const entries::LimitSet& said) const {
    return "Limit of " + said.said.substance + " set, " + said.said.authority;
  }
  std::string operator()(const entries::ProductSet& said) const {
    return "Product " + said.said.product_name;
  }
  std::string operator()(const entries::ExposureSampled& said) const {
    return "Sample of " + said.substance;
  }
  std::string operator()(const entries::FirstAidOpened& said) const {
    return "First aid: " + words(said.what);
  }
  std::string operator()(const entries::SprayStarted& said) const {
    std::string out = "Spraying started in " + booth(said.booth);
    bool first = true;
    for (const auto& check : said.checks) {
      if (!check.reason) continue;
      out += (first ? ", without: " : ", ") + words(check.item) + " (" + words(*check.reason) + ")";
      first = false;
    }
    return out;
  }
  std::string operator()(const entries::SprayedWithout& said) const {
    std::string out = "It was sprayed in " + booth(said.booth) + " without: ";
    for (const auto item : said.items)
      out += (item == said.items.front() ? "" : ", ") + words(item);
    return out;
  }
  std::string operator()(const entries::Mixed& said) const {
    return said.batch.empty() ? "Mixed" : "Mixed, batch " + said.batch;
  }
  std::string operator()(const entries::Coated& said) const {
    std::string out = std::to_string(said.coats) + " coats on ";
    for (const auto panel : said.panels)
      out += (panel == said.panels.front() ? "" : ", ") + words(panel);
    return out;
  }
  std::string operator()(const entries::BakeLimitRead& said) const {
    return "Bake limit of the carmaker: " + number(said.most_c) + " C, " + number(said.most_min) +
           " min";
  }
  std::string operator()(const entries::BakeSaid& said) const {
    return said.on ? "Bake started" : "Bake ended";
  }
  std::string operator()(const entries::PanelTemperatureRead& said) const {
    return sentence(words(said.group)) + ": " + number(said.surface_c) + " C";
  }
  std::string operator()(const entries::ThumbnailChecked& said) const {
    return "Thumbnail on " + words(said.group) + (said.firm ? ": firm" : ": not yet");
  }
  std::string operator()(const entries::Bonded& said) const { return sentence(said.what) + " set"; }
  std::string operator()(const entries::ClimateRead& said) const {
    return "Air " + number(said.air_c) + " C, surface " + number(said.surface_c) + " C, " +
           number(said.humidity_percent) + " %";
  }
  std::string operator()(const entries::ClockActed& said) const {
    const auto* known = shop_.history.operation(said.operation);
    std::string what = "operation";
    if (known) what = known->title.empty() ? words(known->stage) : known->title;
    std::string out;
    switch (said.act) {
      case entries::ClockActKind::Start:
        out = sentence(what) + " started";
        break;
      case entries::ClockActKind::Pause:
        out = sentence(what) + " paused";
        break;
      case entries::ClockActKind::Switch:
        out = "Switched to " + what;
        break;
      case entries::ClockActKind::Stop:
        out = sentence(what) + " stopped";
        break;
    }
    if (said.happened_ms) out += ", as of " + time_of(*said.happened_ms, shop_.view.zone);
    if (said.worker != entry_.person) out += " for " + name_of(said.worker, shop_.view);
    return out;
  }
  std::string operator()(const entries::ReleaseOffered& said) const {
    std::string out = said.panel ? sentence(words(*said.panel)) : "Car";
    if (said.to)
      out += " offered to " + words(*said.to);
    else if (!said.rack)
      out += " offered";
    if (said.rack) out += (said.to ? ", on " : " hung on ") + rack(*said.rack);
    return out;
  }
  std::string operator()(const entries::ReleaseAnswered& said) const {
    const auto* known = shop_.history.release(said.release);
    std::string out = known && known->panel ? sentence(words(*known->panel))
                      : known               ? "Car"
                                            : "Part";
    if (said.taker)
      out += ": " + name_of(*said.taker, shop_.view) + " has it";
    else
      out += said.taken ? " taken" : " returned";
    if (!said.reason.empty()) out += ": " + said.reason;
    return out;
  }
  std::string operator()(const entries::CalendarSet&) const { return "Open hours set"; }
  std::string operator()(const entries::RuleSet& said) const {
    return (said.said.retired ? "Rule retired: " : "Rule: ") + words(said.said.before) +
           " before " + words(said.said.after) + ", " + words(said.said.kind);
  }
  std::string operator()(const entries::RetentionSet& said) const {
    return (said.years ? "Kept here for " + std::to_string(*said.years) +
                             (*said.years == 1 ? " year: " : " years: ")
                       : std::string("Kept as is usual: ")) +
           words(said.record);
  }
  std::string operator()(const entries::CheckedIn& said) const {
    return said.said.odometer
               ? "Checked in, " + std::to_string(*said.said.odometer) + " " + words(said.said.unit)
               : "Checked in";
  }
  std::string operator()(const entries::OperationDone& said) const {
    const auto* known = shop_.history.operation(said.operation);
    std::string what = "operation";
    if (known) what = known->title.empty() ? words(known->stage) : known->title;
    return sentence(what) + (said.done ? " done" : " opened again");
  }
  std::string operator()(const entries::PartSaid& said) const {
    return said.said.part_name + ": " + words(said.said.state);
  }
  std::string operator()(const entries::SubletSaid& said) const {
    return sentence(words(said.said.kind)) + ", " + said.said.who + ": " + words(said.said.state);
  }
  std::string operator()(const entries::WaitSaid& said) const {
    return (said.waits ? "Waits for " : "Goes on, waited for ") + words(said.reason);
  }
  std::string operator()(const entries::ClockAmended& said) const {
    return "Clock amended: " + said.reason;
  }
  std::string operator()(const entries::Signed& said) const {
    return "Signed for " + words(said.what) + " by " + said.signer;
  }
  std::string operator()(const entries::CameBack& said) const {
    return "Came back: " + said.complaint;
  }
  std::string operator()(const entries::StepSaid& said) const {
    std::string out = sentence(words(said.step));
    if (!said.done) return out + ": open again";
    if (!said.broken.empty()) out += ", against the rules: " + words(said.broken.front().reason);
    return out;
  }
  std::string operator()(const entries::FitMeasured& said) const {
    return sentence(words(said.panel)) + ": " + std::to_string(said.points.size()) +
           " gaps measured, " + words(said.round);
  }
  std::string operator()(const entries::FastenersMoved& said) const {
    return sentence(words(said.panel)) + " moved at " + std::to_string(said.moves.size()) +
           " places";
  }

 private:
  std::string mark(const MarkId& id, job::DefectKind defect) const {
    const auto* known = shop_.history.mark(id);
    return sentence(words(defect)) + (known ? " " + std::to_string(known->number) : "");
  }
  std::string booth(const BoothId& id) const {
    const auto* known = shop_.view.find(id);
    return known ? known->name : "a booth";
  }
  std::string rack(const RackId& id) const {
    for (const auto& one : shop_.view.racks)
      if (one.rack == id) return one.name;
    return "a rack";
  }

  const entries::Entry& entry_;
  const Shop& shop_;
};

}  // namespace

std::string one_line(std::string_view text) {
  std::string out(text);
  for (char& sign : out)
    if (static_cast<unsigned char>(sign) < 0x20 || sign == 0x7F) sign = ' ';
  return out;
}

std::string line_of(const entries::Entry& entry, const Shop& shop) {
  return one_line(entry.payload.visit(Line(entry, shop)));
}

std::string name_of(const PersonId& person, const folds::ShopView& shop) {
  const auto* known = shop.find(person);
  return known && !known->name.empty() ? one_line(known->name) : "someone";
}

std::string time_of(std::int64_t wall_ms, const std::string& zone) {
  const bool utc = zone.empty() || !zone_known(zone);
  const std::string used = utc ? "UTC" : zone;
  const auto date = local_date_at(used, wall_ms);
  const auto offset = offset_s_at(used, wall_ms);
  if (!date || !offset) return std::to_string(wall_ms) + " ms";
  const std::int64_t day_ms = 86'400'000;
  const std::int64_t into_day = ((wall_ms + *offset * 1000LL) % day_ms + day_ms) % day_ms;
  char out[48];
  std::snprintf(out, sizeof out, "%04d-%02d-%02d %02d:%02d%s", date->year, date->month, date->day,
                static_cast<int>(into_day / 3'600'000), static_cast<int>(into_day / 60'000 % 60),
                utc ? "Z" : "");
  return out;
}

}  // namespace jambline::app
