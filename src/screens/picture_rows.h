// screens/picture_rows.h: one picture of a car in words: what it shows, who took it and when, how
// good it is, and what its camera's clock says.
#pragma once

#include <QString>
#include <vector>

#include "folds/car_view.h"
#include "folds/shop_view.h"

namespace jambline::screens {

struct PictureTelling {
  const folds::CarView& car;
  const folds::ShopView& shop;
  QString zone;
  std::int64_t now_ms{};
};

// "Left door, jamb"; "Hood, nib"; a stage where nothing else is known.
QString title_of(const folds::PictureView& picture, const PictureTelling& telling);
QString title_of(const entries::PicturePlace& place, job::BodyShape body,
                 const folds::ShopView& shop);
// "Mara, 15:40"
QString line_of(const folds::PictureView& picture, const PictureTelling& telling);
// "" for a good one, else "blurred, kept anyway".
QString poor_words(const folds::PictureView& picture);
// "2025-11-24 15:40, a year earlier"; "" where the file says nothing. A clock that names no offset
// is read in the shop's zone; apart by less than 2 minutes is not said.
QString camera_clock_words(const folds::PictureView& picture, const QString& zone);
QString bytes_words(std::int64_t bytes);  // "4.1 MB", "830 kB"

// By stage, and in each in the order in which they were kept.
std::vector<const folds::PictureView*> pictures_by_stage(const folds::CarView& car);

}  // namespace jambline::screens
