// What a finger or a key does on the screens of looking over.
#include <algorithm>

#include "screens/correct_words.h"
#include "screens/inspect_view_model.h"
#include "screens/map_geometry.h"
#include "screens/words.h"

namespace jambline::screens {

using job::DefectKind;
using job::Verdict;

namespace {
constexpr int looks_asked_a_car = 3;

bool is_dirt(DefectKind kind) {
  return kind == DefectKind::Nib || kind == DefectKind::Crater ||
         kind == DefectKind::OversprayOnFinish;
}
}  // namespace

void InspectViewModel::refuse(const QString& words) {
  refusal_ = words;
  refusal_over_.start();
  emit refusalChanged();
  emit refused();
}

bool InspectViewModel::may_write() {
  if (!view()) return false;
  if (readOnly()) {
    refuse(tr("This car can only be read here."));
    return false;
  }
  if (!session_.hasPerson()) {
    refuse(tr("Say who you are first."));
    return false;
  }
  return true;
}

bool InspectViewModel::on_panel(trade::Point_mm shown) {
  if (!drawing()) return false;
  if (trade::contains(upright_place().apply(drawing()->shape.outline), shown)) return true;
  refuse(tr("Off the panel. Nothing was written."));
  return false;
}

std::optional<MarkId> InspectViewModel::mark_id(const QString& hex) const {
  const auto id = MarkId::parse(hex.toStdString());
  return id && marks_.row(hex) ? id : std::nullopt;
}

const MarkRow* InspectViewModel::chosen_row() const {
  return chosen_ ? marks_.row(chosenMark()) : nullptr;
}

void InspectViewModel::setKind(int kind) {
  if (kind < 0 || kind >= allKinds().size() || kind == this->kind()) return;
  kind_ = static_cast<DefectKind>(kind);
  emit kindChanged();
}

QList<int> InspectViewModel::kinds() const {
  QList<int> out;
  for (const DefectKind one :
       {DefectKind::Nib, DefectKind::RunOrSag, DefectKind::Fisheye, DefectKind::Crater,
        DefectKind::SolventPop, DefectKind::OrangePeel, DefectKind::DrySpray, DefectKind::TapeLine,
        DefectKind::PrimerShowing, DefectKind::SandingScratch, DefectKind::Haze})
    out << static_cast<int>(one);
  return out;
}

QList<int> InspectViewModel::allKinds() const {
  QList<int> out;
  for (std::size_t i = 0; i < enum_words<DefectKind>.size(); ++i) out << static_cast<int>(i);
  return out;
}

QString InspectViewModel::kindWords(int kind) const {
  return kind >= 0 && kind < allKinds().size() ? sentence(words_of(static_cast<DefectKind>(kind)))
                                               : QString();
}

QString InspectViewModel::layerWords(int layer) const {
  return sentence(words_of(static_cast<job::Layer>(std::clamp(layer, 0, 3))));
}

QString InspectViewModel::dirtClassWords(int dirt) const {
  return words_of(static_cast<job::DirtClass>(std::clamp(dirt, 0, 3)));
}

QString InspectViewModel::besidePanel(int steps) const {
  const int count = panels_.count();
  if (count == 0) return {};
  const int row = panel_ ? rowOf(word_of_panel(*panel_)) : 0;
  return panelAt(((row + steps) % count + count) % count);
}

QString InspectViewModel::panelAt(int row) const {
  return row >= 0 && row < panels_.count() ? panels_.rows()[static_cast<std::size_t>(row)].key
                                           : QString();
}

int InspectViewModel::rowOf(const QString& panel) const {
  return panels_.row_of(panel);
}

QString InspectViewModel::chosenMark() const {
  return chosen_ ? QString::fromStdString(chosen_->hex()) : QString();
}

QString InspectViewModel::chosenTitle() const {
  const MarkRow* row = chosen_row();
  return row ? row->title : QString();
}

QString InspectViewModel::chosenNote() const {
  const MarkRow* row = chosen_row();
  return row ? row->note : QString();
}

int InspectViewModel::chosenKind() const {
  const MarkRow* row = chosen_row();
  return row ? static_cast<int>(row->defect) : kind();
}

int InspectViewModel::chosenSize() const {
  const MarkRow* row = chosen_row();
  return row ? row->size : job::smallest_size;
}

int InspectViewModel::chosenLayer() const {
  const MarkRow* row = chosen_row();
  return row ? static_cast<int>(row->layer) : 0;
}

int InspectViewModel::chosenLook() const {
  const MarkRow* row = chosen_row();
  return row && row->look ? static_cast<int>(*row->look) : -1;
}

QString InspectViewModel::lookWords(int look) const {
  constexpr int count = static_cast<int>(enum_words<job::ParticleLook>.size());
  return look >= 0 && look < count ? sentence(words_of(static_cast<job::ParticleLook>(look)))
                                   : QString();
}

bool InspectViewModel::lookAsked() const {
  const MarkRow* row = chosen_row();
  if (!row || row->look || row->ended || readOnly() || !is_dirt(row->defect)) return false;
  int said = 0;
  for (const folds::PanelView& panel : car()->panels)
    said += static_cast<int>(std::count_if(panel.marks.begin(), panel.marks.end(),
                                           [](const auto& mark) { return mark.look.has_value(); }));
  return said < looks_asked_a_car;
}

QString InspectViewModel::lookAgain() const {
  return last_look_ ? lookWords(static_cast<int>(*last_look_)) : QString();
}

void InspectViewModel::sayLook(int look) {
  const MarkRow* row = chosen_row();
  if (!row || lookWords(look).isEmpty() || look == chosenLook() || !may_write()) return;
  last_look_ = static_cast<job::ParticleLook>(look);
  session_.post(
      acts::DescribeMark{car()->job, *chosen_, row->defect, row->size, row->layer, last_look_});
}

void InspectViewModel::sayLookAgain() {
  if (last_look_) sayLook(static_cast<int>(*last_look_));
}

QString InspectViewModel::markNear(double x_mm, double y_mm) const {
  std::vector<Point_px> places;
  for (const MarkRow& row : marks_.rows())
    places.push_back({row.at.x_mm * px_per_mm_, row.at.y_mm * px_per_mm_});
  const auto found = nearest(places, {x_mm * px_per_mm_, y_mm * px_per_mm_});
  return found ? marks_.rows()[*found].key : QString();
}

bool InspectViewModel::ringHoldsMany(const QString& mark) const {
  const MarkRow* row = marks_.row(mark);
  return row && row->together > 1;
}

QRectF InspectViewModel::ringBox(const QString& mark) const {
  const MarkRow* row = marks_.row(mark);
  if (!row) return {};
  std::vector<trade::Point_mm> held;
  for (const MarkRow& one : marks_.rows())
    if (one.ring == row->ring) held.push_back(one.at);
  const trade::Box_mm box = trade::bounds(held);
  return {box.low.x_mm, box.low.y_mm, box.width_mm(), box.height_mm()};
}

void InspectViewModel::choose(const QString& mark) {
  const auto id = mark_id(mark);
  if (id == chosen_) return;
  chosen_ = id;
  emit chosenChanged();
}

void InspectViewModel::placeMark(double x_mm, double y_mm) {
  if (!may_write() || !on_panel({x_mm, y_mm})) return;
  const trade::Point_mm at = upright_place().back({x_mm, y_mm});
  ++placing_;
  session_.post(acts::PlaceMark{.job = car()->job,
                                .panel = *panel_,
                                .x_mm = at.x_mm,
                                .y_mm = at.y_mm,
                                .defect = kind_,
                                .size = job::smallest_size,
                                .layer = job::Layer::NotSaid},
                [this](const Result<engine::Wrote>& wrote) {
                  if (!wrote && placing_ > 0) --placing_;
                });
}

void InspectViewModel::moveMark(const QString& mark, double x_mm, double y_mm) {
  const auto id = mark_id(mark);
  if (!id || !may_write() || !on_panel({x_mm, y_mm})) return;
  const trade::Point_mm at = upright_place().back({x_mm, y_mm});
  session_.post(acts::MoveMark{car()->job, *id, at.x_mm, at.y_mm});
}

void InspectViewModel::describeMark(int kind, int size, int layer) {
  const MarkRow* row = chosen_row();
  if (!row || !may_write() || kind < 0 || kind >= allKinds().size()) return;
  const acts::DescribeMark wanted{car()->job, *chosen_, static_cast<DefectKind>(kind),
                                  std::clamp(size, job::smallest_size, job::largest_size),
                                  static_cast<job::Layer>(std::clamp(layer, 0, 3))};
  if (wanted.defect == row->defect && wanted.size == row->size && wanted.layer == row->layer)
    return;
  if (wanted.defect != row->defect) setKind(kind);
  session_.post(wanted);
}

void InspectViewModel::withdrawMark() {
  if (!chosen_ || !may_write()) return;
  session_.post(acts::WithdrawMark{car()->job, *chosen_});
}

void InspectViewModel::sayDirt(int dirt) {
  if (dirt < 0 || dirt > 3 || !may_write() || dirt == this->dirt()) return;
  session_.post(acts::SayDirtAllOver{car()->job, *panel_, static_cast<job::DirtClass>(dirt)});
}

void InspectViewModel::give(Verdict verdict, bool go_on) {
  if (!may_write()) return;
  const bool hangs = verdict == Verdict::Clean && loose();
  const auto next = next_after(panel_);
  const QString where = next ? word_of_panel(*next) : QString();
  const folds::PanelView& now = *view();
  const bool stands = !now.disputed && now.verdict == verdict && !(hangs && !now.release.rack);
  if (stands) {
    if (go_on) emit wentOn(where);
    return;
  }
  const job::Panel panel = *panel_;
  session_.post(acts::GiveVerdict{.job = car()->job,
                                  .panel = panel,
                                  .verdict = verdict,
                                  .edges_and_back = hangs,
                                  .rack = hangs ? rack() : std::nullopt},
                [this, go_on, where, panel](const Result<engine::Wrote>& wrote) {
                  if (wrote && go_on && panel_ == panel) emit wentOn(where);
                });
}

void InspectViewModel::mainAct() {
  const folds::PanelView* panel = view();
  if (!panel) return;
  if (readOnly()) {
    const auto next = next_after(panel_);
    emit wentOn(next ? word_of_panel(*next) : QString());
    return;
  }
  if (panel->disputed) {
    refuse(tr("Two verdicts stand. Take one of them first."));
    return;
  }
  const bool found = panel->open_marks() > 0 || panel->dirt != job::DirtClass::None;
  const bool decided = panel->verdict == Verdict::Redo || panel->verdict == Verdict::BackToBody ||
                       panel->verdict == Verdict::Ask;
  give(decided ? panel->verdict : found ? Verdict::ToCorrect : Verdict::Clean, true);
}

void InspectViewModel::sayClean() {
  if (!view()) return;
  if (view()->open_marks() > 0) {
    refuse(tr("Marks stand here. Withdraw them before you say clean."));
    return;
  }
  give(Verdict::Clean, true);
}

void InspectViewModel::sayToCorrect() {
  give(Verdict::ToCorrect, true);
}
void InspectViewModel::sayRedo() {
  give(Verdict::Redo, false);
}
void InspectViewModel::sayBackToBody() {
  give(Verdict::BackToBody, false);
}
void InspectViewModel::sayAsk() {
  give(Verdict::Ask, false);
}

void InspectViewModel::settle(int which) {
  if (!disputed() || which < 0 || which >= static_cast<int>(view()->verdicts.size())) return;
  give(view()->verdicts[static_cast<std::size_t>(which)].verdict, false);
}

void InspectViewModel::chooseRack(int which) {
  if (which < 0 || which >= rackCount()) return;
  rack_ = session_.shop().racks[static_cast<std::size_t>(which)].rack;
  emit changed();
}

}  // namespace jambline::screens
