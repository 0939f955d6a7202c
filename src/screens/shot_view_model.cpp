#include "screens/shot_view_model.h"

#include <algorithm>

#include "picture/photo_limits.h"
#include "screens/picture_error_words.h"
#include "screens/picture_words.h"
#include "screens/shot_rows.h"
#include "screens/words.h"

namespace jambline::screens {

using device::Camera;
using folds::ShotState;
using folds::WantedShot;

namespace {
struct Found {
  const folds::PanelView* panel = nullptr;
  const folds::MarkView* mark = nullptr;
};

// The largest open mark of a kind, else the largest one.
Found mark_of(const folds::CarView& car, job::DefectKind kind) {
  Found best;
  for (const auto& panel : car.panels)
    for (const auto& mark : panel.marks) {
      if (mark.defect != kind) continue;
      const bool better = !best.mark || (mark.open() && !best.mark->open()) ||
                          (mark.open() == best.mark->open() && mark.size > best.mark->size);
      if (better) best = {&panel, &mark};
    }
  return best;
}
}  // namespace

ShotViewModel::ShotViewModel(Session& session, PictureIntake& intake, Camera& camera,
                             QObject* parent)
    : QObject(parent),
      session_(session),
      intake_(intake),
      camera_(camera),
      measures_({"key", "title", "value", "limit", "out", "spoken"}, this),
      edge_kinds_({"key", "title", "picked"}, this) {
  show_edge_kinds();
  connect(&session, &Session::carOrShopChanged, this, &ShotViewModel::refresh);
  connect(&camera, &Camera::stateChanged, this, &ShotViewModel::changed);
  connect(&folder_, &device::PictureFolder::found, this, [this](const QString& file) {
    offers_.push_back({file, job::PictureFrom::WatchedFolder});
    next_offer();
    emit changed();
  });
  connect(&folder_, &device::PictureFolder::gone, this, [this] {
    folder_gone_ = true;
    emit changed();
  });
  connect(&folder_, &device::PictureFolder::back, this, [this] {
    folder_gone_ = false;
    emit changed();
  });
  refresh();
}

ShotViewModel::~ShotViewModel() {
  setFront(false);
}

void ShotViewModel::setFront(bool front) {
  if (front == front_) return;
  front_ = front;
  const auto* car = session_.car();
  if (front && car && target_.job != car->job && !waiting_) open({}, {});
  if (front)
    camera_.start();
  else
    camera_.stop();
  emit changed();
}

bool ShotViewModel::writable() const {
  const auto* car = session_.car();
  return car && car->unknown_entries == 0 && !session_.readOnly();
}

void ShotViewModel::aim_at(const WantedShot& wanted) {
  const auto* car = session_.car();
  if (!car) return;
  Target next;
  next.job = car->job;
  next.place.stage = target_.place.stage;
  next.place.shot = wanted.shot.shot;
  next.place.panel = wanted.panel;
  next.key = key_of(wanted);
  next.title = title_of(wanted, car->body);
  next.stand = words_of(wanted.shot.view);
  next.view = static_cast<int>(wanted.shot.view);
  next.asks_edges = asks_edges(wanted, next.place.stage);
  if (wanted.mark)
    if (const Found found = mark_of(*car, *wanted.mark); found.mark) {
      next.place.mark = found.mark->mark;
      next.place.panel = found.panel->plan.panel;
      next.stand = tr("%1, %2").arg(words_of(found.panel->plan.panel, car->body), next.stand);
    }
  target_ = next;
  show_ghost();
}

void ShotViewModel::aim_free(entries::PicturePlace place, const QString& title) {
  const auto* car = session_.car();
  if (!car) return;
  target_ = {car->job, std::move(place), {}, title, {}, -1, false};
  show_ghost();
}

void ShotViewModel::open(const QString& stage, const QString& key) {
  const auto* car = session_.car();
  if (!car) return;
  const auto said = from_word<job::Stage>(stage.toStdString());
  const auto at = said.value_or(stage_of_free_picture(*car, session_.shop()));
  notice_.reset();
  target_.place.stage = at;
  list_ = folds::shots_of_car(*car, session_.shop(), at);
  const auto* missing = said ? nullptr : next_missing(list_);
  target_.key = missing ? key_of(*missing) : key;
  const auto wanted = std::find_if(list_.begin(), list_.end(), [&](const WantedShot& one) {
    return key_of(one) == target_.key;
  });
  if (wanted == list_.end()) {
    entries::PicturePlace place;
    place.stage = at;
    aim_free(place, tr("Another picture, %1").arg(words_of(at)));
  } else {
    aim_at(*wanted);
    if (step_ == Step::Aim || step_ == Step::Edges) {
      let_go();
      if (const auto* picture = not_looked_at(*wanted, *car, at)) {
        waiting_ = target_;
        begin_edges(picture->picture);
        intake_.small_of(picture->facts.file, [this, asked = picture->picture](QImage small) {
          if (looked_at_ != asked) return;
          preview_ = std::move(small);
          emit changed();
        });
      }
    }
  }
  emit changed();
}

void ShotViewModel::openForMark(const QString& mark) {
  const auto* car = session_.car();
  if (!car) return;
  for (const auto& panel : car->panels)
    for (const auto& one : panel.marks) {
      if (QString::fromStdString(one.mark.hex()) != mark) continue;
      const auto stage = one.stage;
      open(QString::fromStdString(std::string(word_of(stage))), {});
      const auto wanted = std::find_if(list_.begin(), list_.end(), [&](const WantedShot& shot) {
        return shot.mark == one.defect;
      });
      const bool fills = wanted != list_.end() && wanted->state == ShotState::Missing;
      if (fills) {
        aim_at(*wanted);
      } else {
        entries::PicturePlace place;
        place.stage = stage;
        aim_free(place, sentence(words_of(one.defect)));
      }
      target_.place.panel = panel.plan.panel;
      target_.place.mark = one.mark;
      target_.stand = words_of(panel.plan.panel, car->body);
      emit changed();
      return;
    }
}

void ShotViewModel::refresh() {
  const auto* car = session_.car();
  list_.clear();
  if (car && car->job == target_.job)
    list_ = folds::shots_of_car(*car, session_.shop(), target_.place.stage);
  else if (!waiting_)
    target_ = {};
  emit changed();
}

void ShotViewModel::show_ghost() {
  const auto* car = session_.car();
  const folds::PictureView* before = nullptr;
  for (const auto& wanted : list_)
    if (car && key_of(wanted) == target_.key)
      before = folds::picture_before(*car, session_.shop(), target_.place.stage, wanted.shot,
                                     target_.place.panel);
  ghost_ = {};
  ghost_file_ = before ? before->facts.file : Hash{};
  ghost_words_ = before ? tr("dashes: %1").arg(words_of(before->place.stage)) : QString();
  emit ghostChanged();
  if (!before) return;
  intake_.small_of(ghost_file_, [this, asked = ghost_file_](QImage small) {
    if (asked != ghost_file_) return;
    ghost_ = std::move(small);
    emit ghostChanged();
  });
}

void ShotViewModel::act() {
  switch (mainAct()) {
    case Main::Shutter:
    case Main::Again:
      return take();
    case Main::Files:
      emit filesAsked();
      return;
    case Main::Save:
    case Main::Keep:
      return keep_judged();
    case Main::Leave:
      return drop();
    case Main::Clean:
      return check_edges({});
    case Main::KeepFinds:
      return check_edges({finds_.begin(), finds_.end()});
    case Main::Wait:
      return;
  }
}

void ShotViewModel::take() {
  let_go();
  notice_.reset();
  if (camera_.state() != Camera::State::Ready) {
    emit changed();
    return;
  }
  waiting_ = target_;
  step_ = Step::Busy;
  emit changed();
  camera_.take([this](Result<QByteArray> bytes) {
    if (!bytes) {
      let_go();
      tell(bytes.error());
      return;
    }
    intake_.look_at(*bytes, [this](Result<Judged> answer) { judged(std::move(answer)); });
  });
}

void ShotViewModel::judged(Result<Judged> answer) {
  if (!answer) {
    let_go();
    tell(answer.error());
    return;
  }
  judged_ = std::move(*answer);
  preview_ = judged_->preview;
  show_measures();
  if (judged_->from != job::PictureFrom::Camera) {
    step_ = Step::Offered;
  } else if (judged_->good()) {
    return keep_judged();
  } else {
    step_ = Step::Poor;
  }
  emit changed();
}

void ShotViewModel::keepAnyway() {
  if (step_ == Step::Poor || step_ == Step::Offered) keep_judged();
}

void ShotViewModel::keep_judged() {
  if (!judged_ || !waiting_) return;
  if (step_ == Step::Offered) waiting_ = target_;
  step_ = Step::Busy;
  emit changed();
  intake_.keep(*judged_, waiting_->job, waiting_->place,
               [this](const Result<engine::Wrote>& wrote) {
                 if (wrote) return kept(*wrote);
                 if (judged_ && judged_->from != job::PictureFrom::Camera &&
                     wrote.error().code == Code::AlreadyDone) {
                   tell(wrote.error());
                   return drop();
                 }
                 step_ = Step::Unsaved;
                 emit changed();
               });
}

void ShotViewModel::kept(const engine::Wrote& wrote) {
  judged_.reset();
  for (const auto& entry : wrote.entries)
    if (const auto* taken = entry.payload.get_if<entries::PictureTaken>())
      if (waiting_ && waiting_->asks_edges) return begin_edges(taken->picture);
  advance();
}

void ShotViewModel::drop() {
  if (step_ != Step::Poor && step_ != Step::Offered && step_ != Step::Unsaved &&
      step_ != Step::Busy)
    return;
  let_go();
  next_offer();
  emit changed();
}

void ShotViewModel::let_go() {
  step_ = Step::Aim;
  waiting_.reset();
  judged_.reset();
  looked_at_.reset();
  finds_.clear();
  several_ = false;
  preview_ = {};
  show_edge_kinds();
}

void ShotViewModel::tell(const Error& error) {
  notice_ = words_of(error);
  next_offer();
  emit changed();
}

// On to the next missing shot after the one that was taken; around to the first.
void ShotViewModel::advance() {
  const bool of_this = waiting_ && waiting_->key == target_.key && waiting_->job == target_.job;
  const bool of_a_list = !target_.key.isEmpty();
  let_go();
  const bool on = !of_this || (of_a_list && aim_next());
  next_offer();
  emit changed();
  if (!on && step_ == Step::Aim) emit finished();
}

bool ShotViewModel::aim_next() {
  const auto at = std::find_if(list_.begin(), list_.end(),
                               [&](const WantedShot& one) { return key_of(one) == target_.key; });
  const std::size_t start =
      at == list_.end() ? 0 : static_cast<std::size_t>(at - list_.begin()) + 1;
  for (std::size_t i = 0; i < list_.size(); ++i) {
    const WantedShot& next = list_[(start + i) % list_.size()];
    if (next.state != ShotState::Missing || key_of(next) == target_.key) continue;
    aim_at(next);
    return true;
  }
  return false;
}

void ShotViewModel::skip() {
  const bool on = aim_next();
  emit changed();
  if (!on) emit finished();
}

void ShotViewModel::restart() {
  notice_.reset();
  camera_.restart();
  emit changed();
}

// Edges and jambs.
void ShotViewModel::begin_edges(const PictureId& picture) {
  looked_at_ = picture;
  step_ = Step::Edges;
  emit changed();
}

void ShotViewModel::show_edge_kinds() {
  std::vector<QVariantList> rows;
  for (const auto kind : {job::DefectKind::TapeLine, job::DefectKind::TapeBleed,
                          job::DefectKind::PrimerShowing, job::DefectKind::OversprayPastMasking})
    rows.push_back({static_cast<int>(kind), sentence(words_of(kind)), finds_.count(kind) > 0});
  edge_kinds_.set(std::move(rows));
}

void ShotViewModel::setSeveral(bool several) {
  several_ = several;
  finds_.clear();
  show_edge_kinds();
  emit changed();
}

void ShotViewModel::find(int kind) {
  const auto found = static_cast<job::DefectKind>(kind);
  if (step_ != Step::Edges || !job::is_edge_find(found)) return;
  if (!several_) return check_edges({found});
  if (finds_.erase(found) == 0) finds_.insert(found);
  show_edge_kinds();
  emit changed();
}

void ShotViewModel::check_edges(const std::vector<job::DefectKind>& finds) {
  if (!looked_at_ || !waiting_) return;
  step_ = Step::Busy;
  emit changed();
  session_.post(acts::CheckEdges{waiting_->job, *looked_at_, finds},
                [this](const Result<engine::Wrote>& wrote) {
                  if (wrote) return advance();
                  step_ = Step::Edges;
                  emit changed();
                });
}

}  // namespace jambline::screens
