#include "screens/inspect_view_model.h"

#include <algorithm>

#include "folds/planned_car.h"
#include "screens/correct_words.h"
#include "screens/map_geometry.h"
#include "screens/place_words.h"
#include "screens/words.h"

namespace jambline::screens {

using job::Verdict;

namespace {

constexpr int refusal_ms = 6000;

PanelLook::Value look_of(const folds::PanelView& panel) {
  if (panel.disputed) return PanelLook::Value::Disputed;
  switch (panel.verdict) {
    case Verdict::NotLookedAt:
      return PanelLook::Value::NotYet;
    case Verdict::Clean:
      return PanelLook::Value::Clean;
    case Verdict::ToCorrect:
      return PanelLook::Value::ToCorrect;
    case Verdict::Redo:
      return PanelLook::Value::Redo;
    case Verdict::BackToBody:
      return PanelLook::Value::BackToBody;
    case Verdict::Ask:
      return PanelLook::Value::Ask;
  }
  return PanelLook::Value::NotYet;
}

QString look_words(const folds::PanelView& panel) {
  return panel.disputed ? InspectViewModel::tr("disputed") : words_of(panel.verdict);
}

QString count_words(int count) {
  return count == 1 ? InspectViewModel::tr("1 mark") : InspectViewModel::tr("%1 marks").arg(count);
}

// Where a panel lies: on the car's pattern, and drawn alone.
struct PanelPlace {
  LabelSpot spot;
  trade::Box_mm box;
  trade::Placement alone;
  trade::Box_mm alone_box;
};

PanelPlace place_of(const job::PatternPanel& panel) {
  std::vector<trade::Polygon> glass;
  for (const auto& pane : panel.shape.glass) glass.push_back(panel.place.apply(pane));
  const auto on_car = panel.place.apply(panel.shape.outline);
  const trade::Placement alone = upright(panel);
  return {label_spot(on_car, glass), trade::bounds(on_car.corners), alone,
          trade::bounds(alone.apply(panel.shape.outline).corners)};
}

using PanelPlaces = std::map<job::Panel, PanelPlace>;

const PanelPlaces& places(job::BodyShape body) {
  static std::map<job::BodyShape, PanelPlaces> kept;
  const auto [at, is_new] = kept.try_emplace(body);
  if (is_new)
    for (const auto& one : job::pattern(body).panels) at->second.emplace(one.panel, place_of(one));
  return at->second;
}

}  // namespace

InspectViewModel::InspectViewModel(Session& session, QObject* parent)
    : QObject(parent),
      session_(session),
      panels_(panel_columns(), this),
      marks_(mark_columns(), this),
      car_marks_({"mark", "panel", "title", "note", "place", "spoken"}, this) {
  refusal_over_.setSingleShot(true);
  refusal_over_.setInterval(refusal_ms);
  connect(&refusal_over_, &QTimer::timeout, this, [this] {
    refusal_.clear();
    emit refusalChanged();
  });
  connect(&session_, &Session::carOrShopChanged, this, &InspectViewModel::refresh);
  connect(&session_, &Session::unitsChanged, this, &InspectViewModel::scaleChanged);
  refresh();
}

const job::CarPattern* InspectViewModel::pattern() const {
  return car() ? &job::pattern(car()->body) : nullptr;
}

const job::PatternPanel* InspectViewModel::drawing() const {
  return pattern() && panel_ ? pattern()->find(*panel_) : nullptr;
}

const folds::PanelView* InspectViewModel::view() const {
  return car() && panel_ ? car()->find(*panel_) : nullptr;
}

trade::Placement InspectViewModel::upright_place() const {
  return drawing() ? upright(*drawing()) : trade::Placement{};
}

void InspectViewModel::refresh() {
  const std::optional<JobId> now = car() ? std::optional(car()->job) : std::nullopt;
  if (now != job_) {
    job_ = now;
    chosen_.reset();
    placing_ = 0;
    known_.clear();
    if (panel_) {
      panel_.reset();
      emit panelChanged();
    }
  }
  take_lessons();
  const bool marks_are_others = take_car();
  show_panels();
  show_marks();
  if (marks_are_others) show_car_marks();
  emit changed();
  emit chosenChanged();
}

void InspectViewModel::take_lessons() {
  const auto& lessons = session_.snapshot().lessons;
  if (!lessons || lessons.get() == lessons_seen_) return;
  lessons_seen_ = lessons.get();
  films_.learn(folds::shop_lessons(*lessons).sequences);
}

bool InspectViewModel::take_car() {
  const std::size_t before = car_mark_rows_.size();
  const auto same = films_.follow(car() ? session_.snapshot().car : nullptr);
  std::erase_if(car_mark_rows_, [&](const auto& one) {
    return std::find(same.begin(), same.end(), one.first) == same.end();
  });
  return car_mark_rows_.size() != before || before != (car() ? car()->panels.size() : 0);
}

FilmSaid InspectViewModel::film_of(const folds::PanelView& panel) const {
  const JudgedFilm& judged = films_.of(panel);
  return say_film(judged.film, judged.budget, session_.units());
}

// By its finish always; by its film where there is something to work on.
bool InspectViewModel::no_cut(const folds::PanelView& panel) const {
  if (!job::may_be_cut(panel.plan.finish)) return true;
  if (panel.open_marks() == 0 && panel.dirt == job::DirtClass::None) return false;
  const auto& result = films_.of(panel).budget;
  return result && result->word == trade::FilmWord::DoNotCut;
}

void InspectViewModel::show_panels() {
  std::vector<PanelRow> rows;
  if (const folds::CarView* here = car()) {
    const std::optional<job::Panel> next = next_after(std::nullopt);
    const PanelPlaces& drawn_places = places(here->body);
    int number = 0;
    for (const folds::PanelView& one : here->panels) {
      ++number;
      PanelRow row;
      row.panel = one.plan.panel;
      row.key = word_of_panel(row.panel);
      row.title = sentence(words_of(row.panel, here->body));
      row.short_title = short_words(row.panel);
      row.look = look_of(one);
      row.marks = one.open_marks();
      row.on_car = one.plan.on_car;
      row.next = next == row.panel;
      row.here = panel_ == row.panel;
      row.aside = row.look == PanelLook::Value::ToCorrect && row.marks > 0 ? count_words(row.marks)
                                                                           : look_words(one);
      if (!row.on_car) row.aside = tr("%1, loose").arg(row.aside);
      if (one.release.rack)
        for (const auto& place : session_.shop().racks)
          if (place.rack == *one.release.rack) row.aside = QString::fromStdString(place.name);
      row.no_cut = no_cut(one);
      const QString said = row.no_cut ? tr("%1, do not cut").arg(row.aside) : row.aside;
      row.spoken = tr("%1, %2, %3 of %4. Opens the panel.")
                       .arg(row.title, said)
                       .arg(number)
                       .arg(here->panels.size());
      if (const auto drawn = drawn_places.find(row.panel); drawn != drawn_places.end()) {
        row.spot = drawn->second.spot.middle;
        row.room_mm = drawn->second.spot.width_mm;
        row.box = drawn->second.box;
      }
      rows.push_back(std::move(row));
    }
  }
  panels_.set_rows(std::move(rows));
}

void InspectViewModel::show_marks() {
  std::vector<MarkRow> rows;
  std::optional<MarkId> fresh;
  if (const folds::PanelView* panel = view(); panel && drawing()) {
    for (const folds::MarkView& mark : panel->marks) {
      rows.push_back(mark_row(mark, *drawing()));
      if (known_.insert(mark.mark).second) fresh = mark.mark;
    }
  }
  merge_rings(rows, px_per_mm_);
  marks_.set_rows(std::move(rows));
  if (fresh && placing_ > 0) {
    --placing_;
    chosen_ = fresh;
    emit marked(chosenTitle());
  }
  if (chosen_ && !chosen_row()) chosen_.reset();
}

MarkRow InspectViewModel::mark_row(const folds::MarkView& mark,
                                   const job::PatternPanel& drawn) const {
  const PanelPlace& place = places(car()->body).at(drawn.panel);
  MarkRow row;
  row.key = QString::fromStdString(mark.mark.hex());
  row.mark = mark.mark;
  row.number = mark.number;
  row.defect = mark.defect;
  row.size = mark.size;
  row.layer = mark.layer;
  row.look = mark.look;
  row.ended = !mark.open();
  row.at = place.alone.apply({mark.x_mm, mark.y_mm});
  row.title = tr("%1 %2").arg(sentence(words_of(mark.defect))).arg(mark.number);
  row.note = tr("size %1").arg(mark.size);
  if (mark.layer != job::Layer::NotSaid)
    row.note = tr("%1 · %2").arg(row.note, words_of(mark.layer));
  if (mark.look) row.note = tr("%1 · %2").arg(row.note, words_of(*mark.look));
  if (mark.end) row.note = tr("%1 · %2").arg(row.note, words_of(*mark.end));
  row.place = place_words(drawn.panel, ninth(place.alone_box, row.at));
  row.spoken = (row.ended ? tr("%1, ended, %2, %3 of %4") : tr("%1, open, %2, %3 of %4"))
                   .arg(row.title, row.note, row.place, words_of(drawn.panel, car()->body));
  return row;
}

void InspectViewModel::show_car_marks() {
  std::vector<QVariantList> rows;
  if (const folds::CarView* here = car())
    for (const folds::PanelView& panel : here->panels) {
      const job::PatternPanel* drawn = pattern()->find(panel.plan.panel);
      if (!drawn) continue;
      const auto [kept, is_new] = car_mark_rows_.try_emplace(drawn->panel);
      if (is_new)
        for (const folds::MarkView& mark : panel.marks) {
          const MarkRow row = mark_row(mark, *drawn);
          kept->second.push_back(
              {row.key, word_of_panel(drawn->panel), row.title, row.note,
               tr("%1, %2").arg(sentence(words_of(drawn->panel, here->body)), row.place),
               row.spoken});
        }
      rows.insert(rows.end(), kept->second.begin(), kept->second.end());
    }
  car_marks_.set(std::move(rows));
}

void InspectViewModel::openPanel(const QString& panel) {
  const std::optional<job::Panel> wanted = panel_of_word(panel);
  const std::optional<job::Panel> now =
      wanted && car() && car()->find(*wanted) ? wanted : std::nullopt;
  if (now == panel_) return;
  panel_ = now;
  chosen_.reset();
  placing_ = 0;
  known_.clear();
  if (!refusal_.isEmpty()) {
    refusal_.clear();
    emit refusalChanged();
  }
  emit panelChanged();
  refresh();
}

bool InspectViewModel::readOnly() const {
  return session_.readOnly() || (car() && car()->unknown_entries > 0);
}

QString InspectViewModel::carColor() const {
  return car() ? QString::fromStdString(car()->color.hex) : QString();
}

int InspectViewModel::cleanCount() const {
  return static_cast<int>(
      std::count_if(panels_.rows().begin(), panels_.rows().end(),
                    [](auto& row) { return row.look == PanelLook::Value::Clean; }));
}

int InspectViewModel::markCount() const {
  int sum = 0;
  for (const PanelRow& row : panels_.rows()) sum += row.marks;
  return sum;
}

int InspectViewModel::notYetCount() const {
  return static_cast<int>(
      std::count_if(panels_.rows().begin(), panels_.rows().end(),
                    [](auto& row) { return row.look == PanelLook::Value::NotYet; }));
}

int InspectViewModel::otherCount() const {
  return static_cast<int>(
      std::count_if(panels_.rows().begin(), panels_.rows().end(), [](auto& row) {
        return row.look != PanelLook::Value::NotYet && row.look != PanelLook::Value::Clean &&
               row.look != PanelLook::Value::ToCorrect;
      }));
}

int InspectViewModel::noCutCount() const {
  return static_cast<int>(std::count_if(panels_.rows().begin(), panels_.rows().end(),
                                        [](const PanelRow& row) { return row.no_cut; }));
}

QString InspectViewModel::cleanWords() const {
  int hung = 0;
  if (car())
    for (const auto& one : car()->panels)
      if (one.release.rack && one.release.state != folds::ReleaseState::None) ++hung;
  return hung > 0 ? tr("%1 clean, %2 on rack").arg(cleanCount()).arg(hung)
                  : tr("%1 clean").arg(cleanCount());
}

QString InspectViewModel::markWords() const {
  return count_words(markCount());
}

QString InspectViewModel::lookedAtWords() const {
  return tr("%1 of %2 looked at").arg(panelCount() - notYetCount()).arg(panelCount());
}

std::optional<job::Panel> InspectViewModel::next_after(std::optional<job::Panel> panel) const {
  if (!car() || car()->panels.empty()) return std::nullopt;
  const auto& all = car()->panels;
  std::size_t start = 0;
  if (panel)
    for (std::size_t i = 0; i < all.size(); ++i)
      if (all[i].plan.panel == *panel) start = i + 1;
  for (std::size_t i = 0; i < all.size(); ++i) {
    const folds::PanelView& one = all[(start + i) % all.size()];
    if (one.plan.panel != panel && one.verdict == Verdict::NotLookedAt && !one.disputed)
      return one.plan.panel;
  }
  return std::nullopt;
}

QString InspectViewModel::nextPanel() const {
  const auto next = next_after(std::nullopt);
  return next ? word_of_panel(*next) : QString();
}

QString InspectViewModel::nextWords() const {
  const auto next = next_after(std::nullopt);
  return next ? words_of(*next, car()->body) : QString();
}

QString InspectViewModel::panel() const {
  return panel_ ? word_of_panel(*panel_) : QString();
}

QString InspectViewModel::panelTitle() const {
  return view() ? sentence(words_of(*panel_, car()->body)) : QString();
}

QString InspectViewModel::panelFacts() const {
  const folds::PanelView* panel = view();
  if (!panel || !drawing()) return {};
  QStringList words{area_words(trade::area_mm2(drawing()->shape.outline), session_.units()),
                    panel->plan.on_car ? tr("on the car") : tr("loose")};
  if (panel->plan.finish != job::Finish::GlossBaseClear) words << words_of(panel->plan.finish);
  if (panel->plan.treatment != job::Treatment::Full) words << words_of(panel->plan.treatment);
  if (!drawing()->shape.masked_edges.empty()) words << tr("buff edge = was masked");
  return words.join(QStringLiteral(" · "));
}

QString InspectViewModel::panelMarkWords() const {
  const folds::PanelView* panel = view();
  if (!panel) return {};
  const int count = panel->open_marks();
  if (count == 0) {
    if (panel->dirt != job::DirtClass::None) return dirtWords();
    return panel->verdict == Verdict::NotLookedAt ? QString() : look_words(*panel);
  }
  const bool nibs = std::all_of(panel->marks.begin(), panel->marks.end(), [](const auto& mark) {
    return mark.defect == job::DefectKind::Nib || !mark.open();
  });
  if (!nibs) return count_words(count);
  return count == 1 ? tr("1 nib") : tr("%1 nibs").arg(count);
}

int InspectViewModel::look() const {
  return static_cast<int>(view() ? look_of(*view()) : PanelLook::Value::NotYet);
}

int InspectViewModel::dirt() const {
  return view() ? static_cast<int>(view()->dirt) : 0;
}

QString InspectViewModel::dirtWords() const {
  return dirt() == 0 ? QString() : tr("dirt all over, %1").arg(words_of(view()->dirt));
}

QString InspectViewModel::doNotCutWords() const {
  if (!view() || !no_cut(*view())) return {};
  if (job::may_be_cut(view()->plan.finish))
    return tr("Do not cut: the clear is %1.").arg(film_of(*view()).range);
  return tr("Do not cut: %1. No sanding, no polishing.").arg(words_of(view()->plan.finish));
}

int InspectViewModel::filmShape() const {
  return view() ? shape_of(film_of(*view()).state) : 0;
}

QString InspectViewModel::filmWords() const {
  return view() ? film_of(*view()).word : QString();
}

bool InspectViewModel::disputed() const {
  return view() && view()->disputed;
}
bool InspectViewModel::loose() const {
  return view() && !view()->plan.on_car;
}

std::optional<RackId> InspectViewModel::rack() const {
  const auto& racks = session_.shop().racks;
  for (const auto& one : racks)
    if (rack_ && one.rack == *rack_) return one.rack;
  return racks.empty() ? std::nullopt : std::optional(racks.front().rack);
}

QString InspectViewModel::rackWords() const {
  for (const auto& one : session_.shop().racks)
    if (one.rack == rack()) return QString::fromStdString(one.name);
  return {};
}

int InspectViewModel::rackCount() const {
  return static_cast<int>(session_.shop().racks.size());
}

QString InspectViewModel::mainText() const {
  const folds::PanelView* panel = view();
  if (!panel) return {};
  const auto next = next_after(panel_);
  const QString where = next ? words_of(*next, car()->body) : tr("the map");
  if (readOnly()) return tr("Next: %1").arg(where);
  if (panel->disputed) return tr("Settle the verdict first");
  if (panel->open_marks() > 0 || panel->dirt != job::DirtClass::None) {
    if (panel->verdict == Verdict::ToCorrect || panel->verdict == Verdict::NotLookedAt ||
        panel->verdict == Verdict::Clean)
      return tr("To correct, next: %1").arg(where);
    return tr("%1, next: %2").arg(sentence(words_of(panel->verdict)), where);
  }
  switch (panel->verdict) {
    case Verdict::Redo:
    case Verdict::BackToBody:
    case Verdict::Ask:
      return tr("%1, next: %2").arg(sentence(words_of(panel->verdict)), where);
    default:
      break;
  }
  if (panel->plan.on_car) return tr("Clean, next: %1").arg(where);
  return rack() ? tr("Clean, edges and back, to %1").arg(rackWords()) : tr("Clean, edges and back");
}

QString InspectViewModel::mainSecond() const {
  const folds::PanelView* panel = view();
  if (!panel || panel->disputed || panel->verdicts.empty()) return {};
  const folds::VerdictView& last = panel->verdicts.front();
  if (panel->verdict == Verdict::NotLookedAt || panel->verdict == Verdict::ToCorrect) {
    if (panel->plan.on_car || panel->open_marks() > 0) return {};
    const auto next = next_after(panel_);
    return next ? tr("then %1").arg(words_of(*next, car()->body)) : QString();
  }
  return tr("%1 said %2, %3")
      .arg(session_.name_of(last.by), words_of(last.verdict),
           time_words(last.wall_ms, session_.now().wall_ms, session_.zone()));
}

void InspectViewModel::setPxPerMm(double px_per_mm) {
  if (px_per_mm == px_per_mm_) return;
  px_per_mm_ = px_per_mm;
  std::vector<MarkRow> rows = marks_.rows();
  merge_rings(rows, px_per_mm);
  marks_.set_rows(std::move(rows));
  emit scaleChanged();
}

double InspectViewModel::barMm() const {
  return px_per_mm_ > 0 ? scale_bar_mm(px_per_mm_, 110, session_.units() == Units::Metric) : 0;
}

QString InspectViewModel::barWords() const {
  return length_words(barMm(), session_.units());
}

QString InspectViewModel::placeWords(double x_mm, double y_mm) const {
  if (!drawing()) return {};
  const trade::Box_mm box = trade::bounds(upright_place().apply(drawing()->shape.outline).corners);
  return place_words(*panel_, ninth(box, {x_mm, y_mm}));
}

QStringList InspectViewModel::disputeWords() const {
  QStringList words;
  if (const folds::PanelView* panel = view())
    for (const folds::VerdictView& one : panel->verdicts)
      words << tr("%1 · %2, %3")
                   .arg(sentence(words_of(one.verdict)), session_.name_of(one.by),
                        time_words(one.wall_ms, session_.now().wall_ms, session_.zone()));
  return words;
}

QStringList InspectViewModel::rackNames() const {
  QStringList names;
  for (const auto& one : session_.shop().racks) names << QString::fromStdString(one.name);
  return names;
}

}  // namespace jambline::screens
