#include "screens/leftovers_view_model.h"

#include <QCoreApplication>
#include <QPointer>
#include <algorithm>

#include "engine/pictures.h"
#include "picture/read.h"
#include "screens/picture_rows.h"
#include "screens/text.h"
#include "screens/words.h"

namespace jambline::screens {

namespace {
const folds::FloorRow* car_of(const engine::Snapshot& snapshot, const JobId& job) {
  for (const auto& row : *snapshot.floor)
    if (row.job == job) return &row;
  return nullptr;
}

job::Stage stage_now(const folds::CarView& car) {
  for (const auto& stage : car.stages)
    if (!stage.done) return stage.stage;
  return car.stages.empty() ? job::Stage{} : car.stages.back().stage;
}
}  // namespace

LeftoversViewModel::LeftoversViewModel(Session& session, PictureStore& store, QObject* parent)
    : QObject(parent),
      session_(session),
      store_(store),
      rows_({"file", "title", "line", "canKeep", "asked"}, this) {
  connect(&session, &Session::snapshotChanged, this, &LeftoversViewModel::show);
}

void LeftoversViewModel::look() {
  session_.engine().leftovers(
      [self = QPointer(this)](Result<std::vector<engine::LeftoverPicture>> found) {
        QMetaObject::invokeMethod(
            QCoreApplication::instance(),
            [self, found = std::move(found)] {
              if (!self) return;
              if (!found) return emit self->session_.failed(found.error());
              self->left_ = *found;
              self->show();
            },
            Qt::QueuedConnection);
      });
}

void LeftoversViewModel::show() {
  if (left_.empty() && rows_.rowCount() == 0) return;
  std::vector<QVariantList> rows;
  const auto& snapshot = session_.snapshot();
  for (const auto& left : left_) {
    QString title = tr("Where it belongs is not known");
    QStringList line;
    if (left.meant) {
      const auto* car = car_of(snapshot, left.meant->job);
      title = title_of(left.meant->place, car ? car->body : job::BodyShape{}, session_.shop());
      line << (car ? QString::fromStdString(car->plate) : tr("a car that is no longer here"));
      line << session_.name_of(left.person);
    } else if (session_.hasCar()) {
      line << tr("goes to %1").arg(session_.carTitle());
    } else {
      line << tr("open its car first");
    }
    line << bytes_words(static_cast<std::int64_t>(left.size_bytes));
    rows.push_back({hex(left.file), title, line.join(QStringLiteral(", ")),
                    !session_.readOnly() && (left.meant || session_.hasCar()),
                    asked_.count(left.file) != 0});
  }
  rows_.set(std::move(rows));
  emit changed();
}

QString LeftoversViewModel::words() const {
  return count() == 1 ? tr("1 picture was taken but not kept")
                      : tr("%1 pictures were taken but not kept").arg(count());
}

const engine::LeftoverPicture* LeftoversViewModel::find(const QString& file) const {
  const auto found = std::find_if(left_.begin(), left_.end(),
                                  [&](const auto& left) { return hex(left.file) == file; });
  return found == left_.end() || asked_.count(found->file) != 0 ? nullptr : &*found;
}

void LeftoversViewModel::post(const acts::TakePicture& command, const PersonId& person) {
  session_.post_as(
      person, command,
      [self = QPointer(this), file = command.facts.file](const Result<engine::Wrote>& wrote) {
        if (!self) return;
        self->asked_.erase(file);
        if (wrote) return self->gone(file);
        self->show();
      });
}

void LeftoversViewModel::keep(const QString& file) {
  const auto* left = find(file);
  if (!left) return;
  asked_.insert(left->file);
  if (left->meant)
    post(*left->meant, left->person ? left->person : session_.person());
  else
    keep_with_car(*left);
  show();
}

// What nobody knows any more of it is read from the file.
void LeftoversViewModel::keep_with_car(const engine::LeftoverPicture& left) {
  const auto* blobs = session_.engine().blobs();
  const auto* car = session_.car();
  if (!blobs || !car) return;
  acts::TakePicture command{
      car->job, {}, job::PictureFrom::File, {stage_now(*car), {}, {}, {}}, true};
  session_.calculate(this,
                     [this, blobs, command, file = left.file,
                      person = session_.person()]() -> std::function<void()> {
                       const auto seen = [&]() -> Result<picture::Seen> {
                         JAMBLINE_ASSIGN(const auto bytes, blobs->get(file));
                         return picture::look_at(bytes);
                       }();
                       return [this, command, file, person, seen]() mutable {
                         if (seen) {
                           command.facts = picture::facts_for_record(*seen);
                           return post(command, person);
                         }
                         asked_.erase(file);
                         emit session_.failed(seen.error());
                         show();
                       };
                     });
}

void LeftoversViewModel::letGo(const QString& file) {
  const auto* left = find(file);
  if (!left) return;
  asked_.insert(left->file);
  session_.engine().drop_leftover(left->file,
                                  [self = QPointer(this), hash = left->file](Status dropped) {
                                    QMetaObject::invokeMethod(
                                        QCoreApplication::instance(),
                                        [self, hash, dropped = std::move(dropped)] {
                                          if (!self) return;
                                          self->asked_.erase(hash);
                                          if (dropped) return self->gone(hash);
                                          emit self->session_.failed(dropped.error());
                                          self->show();
                                        },
                                        Qt::QueuedConnection);
                                  });
  show();
}

void LeftoversViewModel::gone(const Hash& file) {
  session_.engine().keep_draft(engine::meant_form(file), {});
  left_.erase(std::remove_if(left_.begin(), left_.end(),
                             [&](const auto& left) { return left.file == file; }),
              left_.end());
  show();
}

}  // namespace jambline::screens
