#include "screens/look_view_model.h"

#include <QPointer>
#include <algorithm>

#include "picture/photo_limits.h"
#include "screens/compare_view_model.h"
#include "screens/picture_words.h"
#include "screens/text.h"
#include "screens/units.h"
#include "screens/words.h"

namespace jambline::screens {

LookViewModel::LookViewModel(Session& session, PictureStore& store, QObject* parent)
    : QObject(parent),
      session_(session),
      store_(store),
      notes_({"key", "words", "line"}, this),
      of_mark_({"picture", "file", "spoken"}, this) {
  connect(&session, &Session::carOrShopChanged, this, &LookViewModel::refresh);
  refresh();
}

const folds::PictureView* LookViewModel::shown() const {
  const auto* car = session_.car();
  return car && picture_ ? car->find(*picture_) : nullptr;
}

PictureTelling LookViewModel::telling() const {
  return {*session_.car(), session_.shop(), session_.zone(), session_.now().wall_ms};
}

bool LookViewModel::writable() const {
  const auto* car = session_.car();
  return car && shown() && !session_.readOnly() && car->unknown_entries == 0 && !car->delivered_ms;
}

void LookViewModel::refresh() {
  show_facts();
  std::vector<QVariantList> rows;
  if (const auto* picture = shown())
    for (const auto& note : picture->notes)
      rows.push_back(
          {hex(note.note),
           note.drawn.shape == job::PictureNoteShape::Text ? text(note.drawn.text)
                                                           : sentence(words_of(note.drawn.shape)),
           tr("%1, %2").arg(session_.name_of(note.by),
                            time_words(note.wall_ms, session_.now().wall_ms, session_.zone()))});
  notes_.set(std::move(rows));
  show_mark();
  emit changed();
}

void LookViewModel::follow(SyncViewModel& sync) {
  sync_ = &sync;
  connect(&sync, &SyncViewModel::changed, this, [this] {
    if (sent_words() != sent_) show_facts();
  });
  show_facts();
}

// Where the file is: of another device's, whose it is.
QString LookViewModel::sent_words() const {
  const auto* picture = shown();
  if (!picture || !sync_) return {};
  const QString device = store_.device_of(picture->facts.file);
  return device.isEmpty() ? sync_->place_of(picture->facts.file) : tr("came from %1").arg(device);
}

void LookViewModel::show_facts() {
  const auto* picture = shown();
  sent_ = sent_words();
  if (!picture) return facts_.set({});
  const auto& facts = picture->facts;
  const QString zone = session_.zone();
  std::vector<DetailRows::Row> rows{
      {tr("Kept here"),
       tr("%1 %2, by %3")
           .arg(day_words(picture->wall_ms, zone), clock_words(picture->wall_ms, zone),
                session_.name_of(picture->by))},
      {tr("By the camera's clock"),
       facts.camera_time ? camera_clock_words(*picture, zone) : tr("the file does not say")},
      {tr("Came from"), words_of(picture->from)},
      {tr("Size"), tr("%1 x %2 px, %3")
                       .arg(facts.width_px)
                       .arg(facts.height_px)
                       .arg(bytes_words(facts.size_bytes))},
      {tr("Good enough to prove something"),
       facts.word == trade::PhotoWord::Good ? words_of(facts.word) : poor_words(*picture)},
      {tr("Sharpness"),
       tr("%1 of at least %2").arg(facts.sharpness, 0, 'f', 0).arg(picture::least_sharpness)},
      {tr("Light, 0 black to 255 white"), tr("%1, wanted %2 to %3")
                                              .arg(facts.mean, 0, 'f', 0)
                                              .arg(picture::least_mean)
                                              .arg(picture::most_mean)},
      {tr("Black or white in parts"), tr("%1 %, at most %2 %")
                                          .arg(facts.clipped_percent, 0, 'f', 1)
                                          .arg(picture::most_clipped_percent)},
      {tr("Longest side"), tr("%1 px of at least %2 px")
                               .arg(std::max(facts.width_px, facts.height_px))
                               .arg(picture::least_long_side_px)},
      {tr("Where it was taken"), facts.has_location
                                     ? tr("stands in the file; left out of export copies")
                                     : tr("does not stand in the file")},
      {tr("Hash of the file"), hex(facts.file)}};
  if (!sent_.isEmpty()) rows.insert(rows.begin() + 1, {tr("The file is"), sent_});
  facts_.set(std::move(rows));
}

void LookViewModel::show_mark() {
  std::vector<QVariantList> rows;
  const auto mark = MarkId::parse(mark_.toStdString());
  if (const auto* car = session_.car(); car && mark)
    for (const auto& picture : car->pictures)
      if (picture.place.mark == MarkId{*mark})
        rows.push_back(
            {hex(picture.picture), hex(picture.facts.file),
             tr("%1, %2").arg(title_of(picture, telling()), line_of(picture, telling()))});
  of_mark_.set(std::move(rows));
  emit markChanged();
}

void LookViewModel::set_mark(const QString& mark) {
  if (mark == mark_) return;
  mark_ = mark;
  show_mark();
}

QStringList LookViewModel::ofMarkKeys() const {
  QStringList out;
  for (const auto& row : of_mark_.rows()) out << row.key;
  return out;
}

void LookViewModel::open(const QString& picture, const QStringList& among) {
  const auto parsed = PictureId::parse(picture.toStdString());
  if (!parsed) return;
  picture_ = PictureId{*parsed};
  list_ = among.contains(picture) ? among : QStringList{picture};
  refresh();
}

qsizetype LookViewModel::at() const {
  return list_.indexOf(picture());
}

void LookViewModel::previous() {
  if (hasPrevious()) open(list_[at() - 1], list_);
}

void LookViewModel::next() {
  if (hasNext()) open(list_[at() + 1], list_);
}

QString LookViewModel::picture() const {
  return picture_ ? hex(*picture_) : QString();
}

QString LookViewModel::file() const {
  return shown() ? hex(shown()->facts.file) : QString();
}

int LookViewModel::widthPx() const {
  return shown() ? shown()->facts.width_px : 0;
}

int LookViewModel::heightPx() const {
  return shown() ? shown()->facts.height_px : 0;
}

QString LookViewModel::title() const {
  return shown() ? title_of(*shown(), telling()) : QString();
}

QString LookViewModel::line() const {
  return shown() ? line_of(*shown(), telling()) : QString();
}

QString LookViewModel::poor() const {
  return shown() ? poor_words(*shown()) : QString();
}

QString LookViewModel::clockWords() const {
  if (!shown()) return {};
  const QString said = camera_clock_words(*shown(), session_.zone());
  const auto comma = said.indexOf(QChar(','));
  return comma < 0 ? QString() : tr("The camera's clock says%1").arg(said.mid(comma + 1));
}

QString LookViewModel::placeInList() const {
  return list_.size() < 2 ? QString() : tr("%1 of %2").arg(at() + 1).arg(list_.size());
}

bool LookViewModel::comparable() const {
  return shown() && !same_view(*session_.car(), session_.shop(), *shown()).empty();
}

const folds::PanelView* LookViewModel::panel_of_mark(const folds::MarkView*& mark) const {
  const auto* picture = shown();
  if (!picture || !picture->place.mark) return nullptr;
  for (const auto& panel : session_.car()->panels)
    for (const auto& one : panel.marks)
      if (one.mark == *picture->place.mark) {
        mark = &one;
        return &panel;
      }
  return nullptr;
}

QString LookViewModel::markKey() const {
  const folds::MarkView* mark = nullptr;
  return panel_of_mark(mark) ? hex(mark->mark) : QString();
}

QString LookViewModel::markPanel() const {
  const folds::MarkView* mark = nullptr;
  const auto* panel = panel_of_mark(mark);
  return panel ? text(word_of(panel->plan.panel)) : QString();
}

QString LookViewModel::markWords() const {
  const folds::MarkView* mark = nullptr;
  return panel_of_mark(mark) ? words_of(mark->defect) : QString();
}

void LookViewModel::post_note(job::PictureNote drawn) {
  if (!writable()) return;
  session_.post(acts::NotePicture{session_.car()->job, *picture_, std::move(drawn), {}},
                [self = QPointer(this)](const Result<engine::Wrote>&) {
                  if (self) emit self->noteEnded();
                });
}

void LookViewModel::draw(int shape, double x, double y, double toX, double toY) {
  if (shape < 0 || shape >= static_cast<int>(job::PictureNoteShape::Text)) return;
  post_note({static_cast<job::PictureNoteShape>(shape), x, y, toX, toY, {}});
}

void LookViewModel::write(double x, double y, const QString& words) {
  if (!words.trimmed().isEmpty())
    post_note({job::PictureNoteShape::Text, x, y, x, y, words.trimmed().toStdString()});
}

void LookViewModel::takeNoteBack(const QString& note) {
  const auto* picture = shown();
  if (!picture || !writable()) return;
  for (const auto& one : picture->notes)
    if (hex(one.note) == note)
      for (const Hash& head : one.heads)
        session_.post(acts::Withdraw{session_.car()->job, head, "looked again"});
}

}  // namespace jambline::screens
