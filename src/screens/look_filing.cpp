// Filing a picture elsewhere, in LookViewModel.
#include <algorithm>

#include "folds/shots_of_car.h"
#include "screens/look_view_model.h"
#include "screens/picture_words.h"
#include "screens/words.h"

namespace jambline::screens {

namespace {
// Row 0 is "none".
template <class List, class Same>
int row_of(const List& list, Same same) {
  const auto found = std::find_if(list.begin(), list.end(), same);
  return found == list.end() ? 0 : static_cast<int>(found - list.begin()) + 1;
}
}  // namespace

void LookViewModel::startFiling() {
  if (const auto* picture = shown()) filed_ = picture->place;
  emit filingChanged();
}

const folds::PanelView* LookViewModel::filed_panel() const {
  const auto* car = session_.car();
  return car && filed_.panel ? car->find(*filed_.panel) : nullptr;
}

QStringList LookViewModel::stageChoices() const {
  QStringList out;
  for (std::size_t i = 0; i < enum_words<job::Stage>.size(); ++i)
    out << sentence(words_of(static_cast<job::Stage>(i)));
  return out;
}

QStringList LookViewModel::panelChoices() const {
  QStringList out{tr("No panel, the whole car")};
  if (const auto* car = session_.car())
    for (const auto& panel : car->panels) out << sentence(words_of(panel.plan.panel, car->body));
  return out;
}

QStringList LookViewModel::shotChoices() const {
  QStringList out{tr("None of those on the list")};
  for (const auto& shot : folds::shots_of(session_.shop(), filed_.stage))
    out << sentence(name_of(shot));
  return out;
}

QStringList LookViewModel::markChoices() const {
  QStringList out{tr("No mark")};
  const auto* panel = filed_panel();
  for (std::size_t i = 0; panel && i < panel->marks.size(); ++i)
    out << tr("%1, mark %2").arg(sentence(words_of(panel->marks[i].defect))).arg(i + 1);
  return out;
}

int LookViewModel::filedPanel() const {
  const auto* car = session_.car();
  if (!car || !filed_.panel) return 0;
  return row_of(car->panels, [&](const auto& panel) { return panel.plan.panel == *filed_.panel; });
}

int LookViewModel::filedShot() const {
  if (!filed_.shot) return 0;
  return row_of(folds::shots_of(session_.shop(), filed_.stage),
                [&](const auto& shot) { return shot.shot == *filed_.shot; });
}

int LookViewModel::filedMark() const {
  const auto* panel = filed_panel();
  if (!panel || !filed_.mark) return 0;
  return row_of(panel->marks, [&](const auto& mark) { return mark.mark == *filed_.mark; });
}

bool LookViewModel::filedElsewhere() const {
  return shown() && !(shown()->place == filed_);
}

void LookViewModel::chooseStage(int row) {
  if (row < 0 || row >= static_cast<int>(enum_words<job::Stage>.size())) return;
  filed_.stage = static_cast<job::Stage>(row);
  if (filedShot() == 0) filed_.shot.reset();
  emit filingChanged();
}

void LookViewModel::choosePanel(int row) {
  const auto* car = session_.car();
  if (!car || row < 0 || row > static_cast<int>(car->panels.size())) return;
  filed_.panel = row == 0
                     ? std::nullopt
                     : std::optional(car->panels[static_cast<std::size_t>(row) - 1].plan.panel);
  if (filedMark() == 0) filed_.mark.reset();
  emit filingChanged();
}

void LookViewModel::chooseShot(int row) {
  const auto& shots = folds::shots_of(session_.shop(), filed_.stage);
  if (row < 0 || row > static_cast<int>(shots.size())) return;
  filed_.shot =
      row == 0 ? std::nullopt : std::optional(shots[static_cast<std::size_t>(row) - 1].shot);
  emit filingChanged();
}

void LookViewModel::chooseMark(int row) {
  const auto* panel = filed_panel();
  if (row != 0 && (!panel || row < 0 || row > static_cast<int>(panel->marks.size()))) return;
  filed_.mark =
      row == 0 ? std::nullopt : std::optional(panel->marks[static_cast<std::size_t>(row) - 1].mark);
  emit filingChanged();
}

void LookViewModel::fileHere() {
  if (!writable() || !filedElsewhere()) return;
  session_.post(acts::FilePicture{session_.car()->job, *picture_, filed_},
                [this](const Result<engine::Wrote>& wrote) {
                  if (wrote) emit filed();
                });
}

}  // namespace jambline::screens
