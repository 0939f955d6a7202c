#include "screens/entry_words.h"

#include <QCoreApplication>
#include <QStringList>

#include "screens/air_words.h"
#include "screens/correct_words.h"
#include "screens/picture_words.h"
#include "screens/retention_words.h"
#include "screens/units.h"
#include "screens/visit_words.h"
#include "screens/words.h"
#include "seal/header.h"

namespace jambline::screens {

namespace {

// One overload a kind and none for "any other".
class Line {
  Q_DECLARE_TR_FUNCTIONS(EntryWords)

 public:
  Line(const entries::Entry& entry, const Telling& telling) : entry_(entry), telling_(telling) {}

  QString operator()(const entries::UnknownEntry&) const {
    return tr("Entry of a newer version, kept as it is");
  }
  QString operator()(const entries::ErasedPayload&) const {
    if (entry_.kind == entries::NoteWritten::kind) return tr("Note erased");
    if (entry_.kind == entries::PersonNamed::kind) return tr("Name erased");
    return tr("Text erased");
  }
  QString operator()(const entries::MembershipAct&) const {
    switch (entry_.kind) {
      case 1:
        return tr("Shop founded");
      case 2:
        return tr("Device admitted");
      case 3:
        return tr("Device revoked");
      case 4:
        return tr("Hub admitted");
      case 5:
        return tr("Text of an entry erased");
      default:
        return tr("Membership changed");
    }
  }
  QString operator()(const entries::ShopNamed& said) const {
    return tr("Shop named %1, zone %2").arg(text(said.shop_name), text(said.zone));
  }
  QString operator()(const entries::PersonAdded& said) const {
    return tr("%1: %2").arg(name(said.person), words_of(said.role));
  }
  QString operator()(const entries::PersonNamed& said) const {
    return tr("Person named %1").arg(text(said.person_name));
  }
  QString operator()(const entries::PersonLeft& said) const {
    return tr("%1 left").arg(name(said.person));
  }
  QString operator()(const entries::DeviceNamed& said) const {
    return tr("Device named %1").arg(text(said.device_name));
  }
  QString operator()(const entries::WorkTakenOver& said) const {
    const QString why = said.why == entries::TakenOverWhy::CopiedFolder
                            ? tr("its folder was copied")
                            : tr("it was revoked before");
    return tr("%n entry(s) of another device said again: %1", "",
              static_cast<int>(said.origins.size()))
        .arg(why);
  }
  QString operator()(const entries::RackPlaceAdded& said) const {
    return tr("Rack place %1 added").arg(text(said.rack_name));
  }
  QString operator()(const entries::BoothSet& said) const {
    return tr("Booth %1, %2").arg(text(said.booth_name), words_of(said.booth_kind));
  }
  QString operator()(const entries::BoothEventLogged& said) const {
    QString out = tr("%1: %2").arg(sentence(booth(said.booth)), words_of(said.what));
    if (said.old_filters_out)
      out = *said.old_filters_out ? tr("%1, old filters out of the building").arg(out)
                                  : tr("%1, old filters still in the building").arg(out);
    return said.happened_ms ? as_of(out, *said.happened_ms) : out;
  }
  QString operator()(const entries::Withdrawn& said) const {
    const auto target = telling_.history.target_of(said);
    QString out;
    if (!target.entry)
      out = tr("Taken back: an entry that is not here");
    else if (target.put_back)
      out = tr("Put back: %1").arg(words_of(*target.entry, telling_));
    else
      out = tr("Taken back: %1").arg(words_of(*target.entry, telling_));
    return said.reason.empty() ? out : tr("%1, because: %2").arg(out, text(said.reason));
  }
  QString operator()(const entries::CarOpened& said) const {
    return tr("Car opened: %1, %2").arg(words_of(said.body), words_of(said.drive));
  }
  QString operator()(const entries::PlateSet& said) const {
    return tr("Plate %1").arg(text(said.plate));
  }
  QString operator()(const entries::VinSet& said) const {
    if (said.passes) return tr("VIN %1").arg(text(said.vin));
    return tr("VIN %1, used as typed, does not check").arg(text(said.vin));
  }
  QString operator()(const entries::ColorSet& said) const {
    if (said.color.code.empty()) return tr("Color %1").arg(text(said.color.name));
    return tr("Color %1, code %2").arg(text(said.color.name), text(said.color.code));
  }
  QString operator()(const entries::PromiseSet& said) const {
    const QString day = day_words(said.promised_ms, telling_.zone);
    const QString clock = clock_words(said.promised_ms, telling_.zone);
    if (day == day_words(entry_.wall_ms, telling_.zone)) return tr("Promised %1").arg(clock);
    return tr("Promised %1 %2").arg(day, clock);
  }
  QString operator()(const entries::PanelPlanned& said) const {
    return tr("%1 planned: %2")
        .arg(panel(said.plan.panel),
             QStringList{said.plan.on_car ? tr("on the car") : tr("loose"),
                         words_of(said.plan.substrate), words_of(said.plan.finish),
                         words_of(said.plan.treatment)}
                 .join(tr(", ")));
  }
  QString operator()(const entries::SprayedIn& said) const {
    return tr("Sprayed in %1").arg(booth(said.booth));
  }
  QString operator()(const entries::OperationPlanned& said) const {
    const QString what = sentence(operation(said.stage, said.title));
    if (said.estimate_min == 0) return tr("%1 planned").arg(what);
    return tr("%1 planned, %2").arg(what, duration_words(std::int64_t{said.estimate_min} * 60'000));
  }
  QString operator()(const entries::StageDone& said) const {
    const QString stage = sentence(words_of(said.stage));
    if (said.without_shots)
      return tr("%1 done with %n picture(s) missing: %2", nullptr, said.shots_missing.value_or(0))
          .arg(stage, words_of(*said.without_shots));
    return said.done ? tr("%1 done").arg(stage) : tr("%1 opened again").arg(stage);
  }
  QString operator()(const entries::NoteWritten& said) const {
    return tr("Note: %1").arg(text(said.text));
  }
  QString operator()(const entries::CarDelivered& said) const {
    if (said.open_points == 0) return tr("Car delivered");
    return tr("Car delivered, points left open: %1").arg(said.open_points);
  }
  QString operator()(const entries::MarkPlaced& said) const {
    const QString out =
        tr("%1 placed on the %2")
            .arg(mark(said.mark, said.defect), words_of(said.panel, telling_.history.body()));
    return said.look ? tr("%1, %2").arg(out, words_of(*said.look)) : out;
  }
  QString operator()(const entries::MarkMoved& said) const {
    const auto* known = telling_.history.mark(said.mark);
    return known ? tr("%1 moved").arg(mark(said.mark, known->defect)) : tr("Mark moved");
  }
  QString operator()(const entries::MarkDescribed& said) const {
    const auto* known = telling_.history.mark(said.mark);
    const QString what = known ? tr("Mark %1").arg(known->number) : tr("Mark");
    QString out = tr("%1 is %2, size %3").arg(what, words_of(said.defect)).arg(said.size);
    if (said.layer != job::Layer::NotSaid) out = tr("%1, %2").arg(out, words_of(said.layer));
    return said.look ? tr("%1, %2").arg(out, words_of(*said.look)) : out;
  }
  QString operator()(const entries::MarkEnded& said) const {
    const auto* known = telling_.history.mark(said.mark);
    return tr("%1: %2").arg(known ? mark(said.mark, known->defect) : tr("Mark"),
                            words_of(said.end));
  }
  QString operator()(const entries::DirtAllOver& said) const {
    if (said.dirt == job::DirtClass::None) return tr("%1: no dirt all over").arg(panel(said.panel));
    return tr("%1: dirt all over, %2").arg(panel(said.panel), words_of(said.dirt));
  }
  QString operator()(const entries::VerdictGiven& said) const {
    const QString out = tr("%1: %2").arg(panel(said.panel), words_of(said.verdict));
    return said.edges_and_back ? tr("%1, edges and back looked at").arg(out) : out;
  }
  QString operator()(const entries::FilmRead& said) const {
    const QString what = said.gauge == job::FilmGauge::Clear ? tr("clear") : tr("film");
    return tr("%1, spot %2: %3 %4, %5")
        .arg(panel(said.panel))
        .arg(said.spot)
        .arg(what, words_of(said.when), readings_words(said.typed, said.unit));
  }
  QString operator()(const entries::BeforeCutAnswered& said) const {
    QStringList passed_over;
    for (const auto& check : said.checks)
      if (check.answer == job::CutAnswer::No)
        passed_over << (check.reason
                            ? tr("%1 (%2)").arg(words_of(check.item), words_of(*check.reason))
                            : words_of(check.item));
    if (passed_over.isEmpty()) return tr("Checked before cutting");
    return tr("Checked before cutting, without: %1").arg(passed_over.join(tr(", ")));
  }
  QString operator()(const entries::CauseSet& said) const {
    if (!said.cause) return tr("What threw it: left open");
    return tr("What threw it: %1").arg(words_of(*said.cause));
  }
  QString operator()(const entries::RoundFinished& said) const {
    QString out = tr("%1: %2").arg(panel(said.panel), words_of(said.round));
    out = said.how == job::RoundHow::AsPlanned ? tr("%1 done").arg(out)
                                               : tr("%1, %2").arg(out, words_of(said.how));
    if (!said.marks.empty())
      out = said.marks.size() == 1 ? tr("%1, 1 mark").arg(out)
                                   : tr("%1, %2 marks").arg(out).arg(said.marks.size());
    if (said.work_min)
      out =
          tr("%1, %2").arg(out, duration_words(static_cast<std::int64_t>(*said.work_min * 60'000)));
    return out;
  }
  QString operator()(const entries::PictureTaken& said) const {
    QString out = said.place.panel ? tr("Picture of %1").arg(panel(*said.place.panel).toLower())
                                   : tr("Picture");
    out += tr(", %1").arg(words_of(said.place.stage));
    if (said.kept_though_poor) out += tr(", kept though %1").arg(words_of(said.facts.word));
    return out;
  }
  QString operator()(const entries::PictureFiled& said) const {
    return tr("Picture moved to %1").arg(words_of(said.place.stage));
  }
  QString operator()(const entries::PictureNoted& said) const {
    if (said.drawn.shape != job::PictureNoteShape::Text)
      return tr("%1 drawn on a picture").arg(sentence(words_of(said.drawn.shape)));
    return tr("On a picture: %1").arg(text(said.drawn.text));
  }
  QString operator()(const entries::EdgesLookedAt& said) const {
    return tr("Edges on a picture: %1").arg(edges_words(said.finds));
  }
  QString operator()(const entries::ShotListSet& said) const {
    return tr("Shots of %1 set: %2").arg(words_of(said.stage)).arg(said.shots.size());
  }
  QString operator()(const entries::BoothFactsSet& said) const {
    return tr("%1: facts set").arg(booth(said.booth));
  }
  QString operator()(const entries::BoothRead& said) const {
    return tr("%1: %2 read").arg(booth(said.booth), words_of(said.what));
  }
  QString operator()(const entries::BoothSaid& said) const {
    return tr("%1: %2").arg(booth(said.booth), words_of(said.what));
  }
  QString operator()(const entries::RespiratorSet& said) const {
    return tr("Respirator %1, factor %2 (%3)")
        .arg(text(said.said.model))
        .arg(said.said.assigned_factor)
        .arg(words_of(said.said.scheme));
  }
  QString operator()(const entries::FitTestDone& said) const {
    return tr("Fit test of %1").arg(name(said.person));
  }
  QString operator()(const entries::CartridgeChanged& said) const {
    return tr("Cartridge of %1 changed").arg(name(said.person));
  }
  QString operator()(const entries::BreathingAirChecked&) const {
    return tr("Breathing air checked");
  }
  QString operator()(const entries::DoNotSpraySaid& said) const {
    return said.do_not_spray ? tr("%1: do not spray").arg(name(said.person))
                             : tr("%1 may spray again").arg(name(said.person));
  }
  QString operator()(const entries::DueSet& said) const {
    return tr("%1 of %2: due day set").arg(sentence(words_of(said.what)), name(said.person));
  }
  QString operator()(const entries::LimitSet& said) const {
    return tr("Limit of %1 set: %2 %3, %4 %5")
        .arg(text(said.said.substance))
        .arg(said.said.value)
        .arg(text(said.said.unit), text(said.said.authority))
        .arg(said.said.year);
  }
  QString operator()(const entries::ProductSet& said) const {
    return tr("Product %1").arg(text(said.said.product_name));
  }
  QString operator()(const entries::ExposureSampled& said) const {
    return tr("Sample of %1 at %2").arg(text(said.substance), name(said.person));
  }
  QString operator()(const entries::FirstAidOpened& said) const {
    return tr("First aid: %1").arg(words_of(said.what));
  }
  QString operator()(const entries::SprayStarted& said) const {
    QString out = tr("Spraying started in %1").arg(booth(said.booth));
    QStringList passed;
    for (const auto& check : said.checks)
      if (check.reason)
        passed << (check.note.empty()
                       ? tr("%1 (%2)").arg(words_of(check.item), words_of(*check.reason))
                       : tr("%1 (%2: %3)")
                             .arg(words_of(check.item), words_of(*check.reason), text(check.note)));
    if (!passed.isEmpty()) out += tr(", without: %1").arg(passed.join(QStringLiteral(", ")));
    return out;
  }
  QString operator()(const entries::SprayedWithout& said) const {
    QStringList items;
    for (const auto item : said.items) items << words_of(item);
    return tr("It was sprayed in %1 without: %2")
        .arg(booth(said.booth), items.join(QStringLiteral(", ")));
  }
  QString operator()(const entries::Mixed& said) const {
    return said.batch.empty() ? tr("Mixed") : tr("Mixed, batch %1").arg(text(said.batch));
  }
  QString operator()(const entries::Coated& said) const {
    QStringList panels;
    for (const auto one : said.panels) panels << panel(one).toLower();
    return tr("%1 coats on %2").arg(said.coats).arg(panels.join(QStringLiteral(", ")));
  }
  QString operator()(const entries::BakeLimitRead& said) const {
    return tr("Bake limit of the carmaker: %1 °C, %2 min").arg(said.most_c).arg(said.most_min);
  }
  QString operator()(const entries::BakeSaid& said) const {
    return said.on ? tr("Bake started") : tr("Bake ended");
  }
  QString operator()(const entries::PanelTemperatureRead& said) const {
    return tr("%1: %2 °C").arg(sentence(words_of(said.group))).arg(said.surface_c);
  }
  QString operator()(const entries::ThumbnailChecked& said) const {
    return said.firm ? tr("Thumbnail on %1: firm").arg(words_of(said.group))
                     : tr("Thumbnail on %1: not yet").arg(words_of(said.group));
  }
  QString operator()(const entries::Bonded& said) const {
    return tr("%1 set").arg(sentence(text(said.what)));
  }
  QString operator()(const entries::ClimateRead& said) const {
    return tr("Air %1 °C, surface %2 °C, %3 %")
        .arg(said.air_c)
        .arg(said.surface_c)
        .arg(said.humidity_percent);
  }
  QString operator()(const entries::ClockActed& said) const {
    const auto* known = telling_.history.operation(said.operation);
    const QString what = known ? operation(known->stage, known->title) : tr("operation");
    QString out;
    switch (said.act) {
      case entries::ClockActKind::Start:
        out = tr("%1 started").arg(sentence(what));
        break;
      case entries::ClockActKind::Pause:
        out = tr("%1 paused").arg(sentence(what));
        break;
      case entries::ClockActKind::Switch:
        out = tr("Switched to %1").arg(what);
        break;
      case entries::ClockActKind::Stop:
        out = tr("%1 stopped").arg(sentence(what));
        break;
    }
    if (said.happened_ms) out = as_of(out, *said.happened_ms);
    return said.worker == entry_.person ? out : tr("%1 for %2").arg(out, name(said.worker));
  }
  QString operator()(const entries::ReleaseOffered& said) const {
    const QString what = said.panel ? panel(*said.panel) : tr("Car");
    if (said.to && said.rack)
      return tr("%1 offered to %2, on %3").arg(what, words_of(*said.to), rack(*said.rack));
    if (said.to) return tr("%1 offered to %2").arg(what, words_of(*said.to));
    if (said.rack) return tr("%1 hung on %2").arg(what, rack(*said.rack));
    return tr("%1 offered").arg(what);
  }
  QString operator()(const entries::ReleaseAnswered& said) const {
    const auto* known = telling_.history.release(said.release);
    const QString what = !known ? tr("Part") : known->panel ? panel(*known->panel) : tr("Car");
    QString out = said.taken ? tr("%1 taken").arg(what) : tr("%1 returned").arg(what);
    if (said.taker) out = tr("%1: %2 has it").arg(what, name(*said.taker));
    return said.reason.empty() ? out : tr("%1: %2").arg(out, text(said.reason));
  }
  QString operator()(const entries::CalendarSet&) const { return tr("Open hours set"); }
  QString operator()(const entries::RuleSet& said) const {
    return said.said.retired ? tr("Rule retired: %1 before %2")
                                   .arg(words_of(said.said.before), words_of(said.said.after))
                             : tr("Rule: %1 before %2, %3")
                                   .arg(words_of(said.said.before), words_of(said.said.after),
                                        words_of(said.said.kind));
  }
  QString operator()(const entries::RetentionSet& said) const {
    return said.years ? tr("Kept here for %1: %2").arg(years_of(*said.years), words_of(said.record))
                      : tr("Kept as is usual: %1").arg(words_of(said.record));
  }
  QString operator()(const entries::CheckedIn& said) const {
    QString out = tr("Checked in");
    if (said.said.odometer)
      out += tr(", %1 %2")
                 .arg(*said.said.odometer)
                 .arg(said.said.unit == job::OdometerUnit::Miles ? tr("mi") : tr("km"));
    return out;
  }
  QString operator()(const entries::OperationDone& said) const {
    const auto* known = telling_.history.operation(said.operation);
    const QString what = sentence(known ? operation(known->stage, known->title) : tr("operation"));
    return said.done ? tr("%1 done").arg(what) : tr("%1 opened again").arg(what);
  }
  QString operator()(const entries::PartSaid& said) const {
    return tr("%1: %2").arg(text(said.said.part_name), words_of(said.said.state));
  }
  QString operator()(const entries::SubletSaid& said) const {
    return tr("%1, %2: %3")
        .arg(sentence(words_of(said.said.kind)), text(said.said.who), words_of(said.said.state));
  }
  QString operator()(const entries::WaitSaid& said) const {
    return said.waits ? tr("Waits for %1").arg(words_of(said.reason))
                      : tr("Goes on, waited for %1").arg(words_of(said.reason));
  }
  QString operator()(const entries::ClockAmended& said) const {
    return as_of(tr("Clock amended (%1)").arg(text(said.reason)), said.at_ms);
  }
  QString operator()(const entries::Signed& said) const {
    return tr("Signed for %1 by %2").arg(words_of(said.what), text(said.signer));
  }
  QString operator()(const entries::CameBack& said) const {
    return tr("Came back: %1").arg(text(said.complaint));
  }
  QString operator()(const entries::StepSaid& said) const {
    const QString what = sentence(words_of(said.step));
    if (!said.done) return tr("%1: open again").arg(what);
    return said.broken.empty()
               ? what
               : tr("%1, against the rules: %2").arg(what, words_of(said.broken.front().reason));
  }
  QString operator()(const entries::FitMeasured& said) const {
    return tr("%1: %n gap(s) measured, %2", nullptr, static_cast<int>(said.points.size()))
        .arg(panel(said.panel), words_of(said.round));
  }
  QString operator()(const entries::FastenersMoved& said) const {
    return tr("%1 moved at %n place(s)", nullptr, static_cast<int>(said.moves.size()))
        .arg(panel(said.panel));
  }

 private:
  static QString text(const std::string& said) { return QString::fromStdString(said).simplified(); }
  static QString operation(job::Stage stage, const std::string& title) {
    return title.empty() ? words_of(stage) : text(title);
  }
  QString panel(job::Panel panel) const {
    return sentence(words_of(panel, telling_.history.body()));
  }
  QString name(const PersonId& person) const { return name_of(person, telling_.shop); }
  QString mark(const MarkId& id, job::DefectKind defect) const {
    const QString what = sentence(words_of(defect));
    const auto* known = telling_.history.mark(id);
    return known ? tr("%1 %2").arg(what).arg(known->number) : what;
  }
  // Said afterwards: with its time, and its day when that is another one.
  QString as_of(const QString& what, std::int64_t happened_ms) const {
    const QString clock = clock_words(happened_ms, telling_.zone);
    const QString day = day_words(happened_ms, telling_.zone);
    const bool other_day = day != day_words(entry_.wall_ms, telling_.zone);
    return tr("%1, as of %2").arg(what, other_day ? tr("%1 %2").arg(day, clock) : clock);
  }
  QString booth(const BoothId& id) const {
    const auto* known = telling_.shop.find(id);
    return known ? text(known->name) : tr("a booth");
  }
  QString rack(const RackId& id) const {
    for (const auto& one : telling_.shop.racks)
      if (one.rack == id) return text(one.name);
    return tr("a rack");
  }

  const entries::Entry& entry_;
  const Telling& telling_;
};

// The group of each kind, again without "any other".
struct Group {
  using G = EntryGroup;
  G operator()(const entries::UnknownEntry&) const { return G::Other; }
  G operator()(const entries::ErasedPayload&) const { return G::Notes; }
  G operator()(const entries::MembershipAct&) const { return G::Other; }
  G operator()(const entries::ShopNamed&) const { return G::Other; }
  G operator()(const entries::PersonAdded&) const { return G::Other; }
  G operator()(const entries::PersonNamed&) const { return G::Other; }
  G operator()(const entries::PersonLeft&) const { return G::Other; }
  G operator()(const entries::DeviceNamed&) const { return G::Other; }
  G operator()(const entries::WorkTakenOver&) const { return G::Other; }
  G operator()(const entries::RackPlaceAdded&) const { return G::Other; }
  G operator()(const entries::BoothSet&) const { return G::Other; }
  G operator()(const entries::BoothEventLogged&) const { return G::Other; }
  G operator()(const entries::Withdrawn&) const { return G::Other; }
  G operator()(const entries::CarOpened&) const { return G::Other; }
  G operator()(const entries::PlateSet&) const { return G::Other; }
  G operator()(const entries::VinSet&) const { return G::Other; }
  G operator()(const entries::ColorSet&) const { return G::Other; }
  G operator()(const entries::PromiseSet&) const { return G::Other; }
  G operator()(const entries::PanelPlanned&) const { return G::Other; }
  G operator()(const entries::SprayedIn&) const { return G::Other; }
  G operator()(const entries::OperationPlanned&) const { return G::Hours; }
  G operator()(const entries::StageDone&) const { return G::Hours; }
  G operator()(const entries::NoteWritten&) const { return G::Notes; }
  G operator()(const entries::CarDelivered&) const { return G::HandOff; }
  G operator()(const entries::MarkPlaced&) const { return G::Looks; }
  G operator()(const entries::MarkMoved&) const { return G::Looks; }
  G operator()(const entries::MarkDescribed&) const { return G::Looks; }
  G operator()(const entries::DirtAllOver&) const { return G::Looks; }
  G operator()(const entries::MarkEnded&) const { return G::Looks; }
  G operator()(const entries::VerdictGiven&) const { return G::Looks; }
  G operator()(const entries::FilmRead&) const { return G::Looks; }
  G operator()(const entries::BeforeCutAnswered&) const { return G::Other; }
  G operator()(const entries::CauseSet&) const { return G::Looks; }
  G operator()(const entries::RoundFinished&) const { return G::Hours; }
  G operator()(const entries::PictureTaken&) const { return G::Looks; }
  G operator()(const entries::PictureFiled&) const { return G::Looks; }
  G operator()(const entries::PictureNoted&) const { return G::Notes; }
  G operator()(const entries::EdgesLookedAt&) const { return G::Looks; }
  G operator()(const entries::ShotListSet&) const { return G::Other; }
  G operator()(const entries::BoothFactsSet&) const { return G::Air; }
  G operator()(const entries::BoothRead&) const { return G::Air; }
  G operator()(const entries::BoothSaid&) const { return G::Air; }
  G operator()(const entries::RespiratorSet&) const { return G::Air; }
  G operator()(const entries::FitTestDone&) const { return G::Air; }
  G operator()(const entries::CartridgeChanged&) const { return G::Air; }
  G operator()(const entries::BreathingAirChecked&) const { return G::Air; }
  G operator()(const entries::DoNotSpraySaid&) const { return G::Air; }
  G operator()(const entries::DueSet&) const { return G::Air; }
  G operator()(const entries::LimitSet&) const { return G::Air; }
  G operator()(const entries::ProductSet&) const { return G::Air; }
  G operator()(const entries::ExposureSampled&) const { return G::Air; }
  G operator()(const entries::FirstAidOpened&) const { return G::Air; }
  G operator()(const entries::SprayStarted&) const { return G::Air; }
  G operator()(const entries::SprayedWithout&) const { return G::Air; }
  G operator()(const entries::Mixed&) const { return G::Air; }
  G operator()(const entries::Coated&) const { return G::Air; }
  G operator()(const entries::BakeLimitRead&) const { return G::Air; }
  G operator()(const entries::BakeSaid&) const { return G::Air; }
  G operator()(const entries::PanelTemperatureRead&) const { return G::Air; }
  G operator()(const entries::ThumbnailChecked&) const { return G::Air; }
  G operator()(const entries::Bonded&) const { return G::Air; }
  G operator()(const entries::ClimateRead&) const { return G::Air; }
  G operator()(const entries::ClockActed&) const { return G::Hours; }
  G operator()(const entries::ReleaseOffered&) const { return G::HandOff; }
  G operator()(const entries::ReleaseAnswered&) const { return G::HandOff; }
  G operator()(const entries::CalendarSet&) const { return G::Other; }
  G operator()(const entries::RuleSet&) const { return G::Other; }
  G operator()(const entries::RetentionSet&) const { return G::Other; }
  G operator()(const entries::CheckedIn&) const { return G::HandOff; }
  G operator()(const entries::OperationDone&) const { return G::Hours; }
  G operator()(const entries::PartSaid&) const { return G::HandOff; }
  G operator()(const entries::SubletSaid&) const { return G::HandOff; }
  G operator()(const entries::WaitSaid&) const { return G::Hours; }
  G operator()(const entries::ClockAmended&) const { return G::Hours; }
  G operator()(const entries::Signed&) const { return G::HandOff; }
  G operator()(const entries::CameBack&) const { return G::HandOff; }
  G operator()(const entries::StepSaid&) const { return G::HandOff; }
  G operator()(const entries::FitMeasured&) const { return G::Looks; }
  G operator()(const entries::FastenersMoved&) const { return G::Looks; }
};

template <class... T>
bool holds_any(const entries::Payload& payload) {
  return (payload.is<T>() || ...);
}

}  // namespace

QString words_of(const entries::Entry& entry, const Telling& telling) {
  return entry.payload.visit(Line(entry, telling));
}

QString name_of(const PersonId& person, const folds::ShopView& shop) {
  const auto* known = shop.find(person);
  if (!known || known->name.empty()) return QCoreApplication::translate("EntryWords", "someone");
  return QString::fromStdString(known->name);
}

EntryGroup group_of(const entries::Entry& entry) {
  return entry.payload.visit(Group{});
}

bool may_be_taken_back(const entries::Entry& entry) {
  return !holds_any<entries::UnknownEntry, entries::ErasedPayload, entries::MembershipAct,
                    entries::Withdrawn, entries::CarOpened, entries::SprayStarted,
                    entries::SprayedWithout, entries::FirstAidOpened>(entry.payload);
}

QString refused_words(const entries::Entry& entry) {
  switch (entry.refused) {
    case entries::Refused::No:
      return {};
    case entries::Refused::AfterCut:
      return QCoreApplication::translate("EntryWords", "refused: its device was ended before it");
    case entries::Refused::NoRight:
      return QCoreApplication::translate("EntryWords",
                                         "refused: who said it had no right to say it");
  }
  return {};
}

QString clock_doubt_words(std::uint8_t clock_flags) {
  QStringList out;
  const auto say = [&](std::uint8_t flag, const char* words) {
    if (clock_flags & flag) out << QCoreApplication::translate("EntryWords", words);
  };
  say(seal::clock_flag::before_2025,
      QT_TRANSLATE_NOOP("EntryWords", "the device's clock stood before 2025"));
  say(seal::clock_flag::stepped_back,
      QT_TRANSLATE_NOOP("EntryWords", "the device's clock was behind its last entry"));
  say(seal::clock_flag::jumped,
      QT_TRANSLATE_NOOP("EntryWords", "the device's clock jumped since its last entry"));
  return out.join(QStringLiteral("; "));
}

}  // namespace jambline::screens
