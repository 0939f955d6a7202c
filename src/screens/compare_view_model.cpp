#include "screens/compare_view_model.h"

#include <algorithm>

#include "folds/shots_of_car.h"
#include "screens/text.h"
#include "screens/words.h"

namespace jambline::screens {

namespace {
std::optional<job::ShotView> view_of(const folds::ShopView& shop,
                                     const entries::PicturePlace& place) {
  if (!place.shot) return std::nullopt;
  for (const auto& shot : folds::shots_of(shop, place.stage))
    if (shot.shot == *place.shot) return shot.view;
  return std::nullopt;
}

bool earlier(const folds::PictureView* a, const folds::PictureView* b) {
  return a->wall_ms < b->wall_ms;
}
}  // namespace

std::vector<const folds::PictureView*> same_view(const folds::CarView& car,
                                                 const folds::ShopView& shop,
                                                 const folds::PictureView& picture) {
  const auto view = view_of(shop, picture.place);
  std::vector<const folds::PictureView*> out;
  for (const auto& one : car.pictures) {
    if (one.picture == picture.picture) continue;
    const bool mark = picture.place.mark && one.place.mark == picture.place.mark;
    const bool panel = one.place.panel == picture.place.panel;
    const bool shot = picture.place.shot && one.place.shot == picture.place.shot;
    const bool seen = view && view_of(shop, one.place) == view;
    if (mark || (panel && (shot || seen))) out.push_back(&one);
  }
  return out;
}

CompareViewModel::CompareViewModel(Session& session, PictureStore& store, QObject* parent)
    : QObject(parent),
      session_(session),
      store_(store),
      others_({"picture", "file", "spoken", "chosen"}, this) {
  connect(&session, &Session::carOrShopChanged, this, &CompareViewModel::refresh);
}

const folds::PictureView* CompareViewModel::find(const std::optional<PictureId>& picture) const {
  const auto* car = session_.car();
  return car && picture ? car->find(*picture) : nullptr;
}

const folds::PictureView* CompareViewModel::before() const {
  const auto* one = find(one_);
  const auto* other = find(other_);
  return one && other ? (earlier(other, one) ? other : one) : nullptr;
}

const folds::PictureView* CompareViewModel::after() const {
  const auto* one = find(one_);
  const auto* other = find(other_);
  return one && other ? (earlier(other, one) ? one : other) : nullptr;
}

void CompareViewModel::open(const QString& picture) {
  const auto parsed = PictureId::parse(picture.toStdString());
  one_ = parsed ? std::optional(PictureId{*parsed}) : std::nullopt;
  other_.reset();
  const auto* one = find(one_);
  if (one) {
    auto same = same_view(*session_.car(), session_.shop(), *one);
    std::stable_sort(same.begin(), same.end(), earlier);
    for (const auto* other : same)
      if (!other_ || earlier(other, one)) other_ = other->picture;
  }
  refresh();
}

void CompareViewModel::against(const QString& picture) {
  const auto parsed = PictureId::parse(picture.toStdString());
  if (!parsed || one_ == PictureId{*parsed}) return;
  other_ = PictureId{*parsed};
  refresh();
}

void CompareViewModel::refresh() {
  std::vector<QVariantList> rows;
  if (const auto* one = find(one_)) {
    auto same = same_view(*session_.car(), session_.shop(), *one);
    std::stable_sort(same.begin(), same.end(), earlier);
    for (const auto* other : same)
      rows.push_back({hex(other->picture), QString::fromStdString(other->facts.file.hex()),
                      words(other), other_ == other->picture});
  }
  others_.set(std::move(rows));
  emit changed();
}

QString CompareViewModel::words(const folds::PictureView* picture) const {
  if (!picture) return {};
  const PictureTelling telling{*session_.car(), session_.shop(), session_.zone(),
                               session_.now().wall_ms};
  return tr("%1, %2").arg(sentence(words_of(picture->place.stage)), line_of(*picture, telling));
}

QString CompareViewModel::title() const {
  const auto* one = find(one_);
  if (!one) return {};
  return title_of(*one,
                  {*session_.car(), session_.shop(), session_.zone(), session_.now().wall_ms});
}

QString CompareViewModel::beforeFile() const {
  return before() ? QString::fromStdString(before()->facts.file.hex()) : QString();
}

QString CompareViewModel::afterFile() const {
  return after() ? QString::fromStdString(after()->facts.file.hex()) : QString();
}

QString CompareViewModel::beforeWords() const {
  return words(before());
}

QString CompareViewModel::afterWords() const {
  return words(after());
}

}  // namespace jambline::screens
