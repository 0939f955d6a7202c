#include "folds/shop_view.h"

namespace jambline::folds {

ShopView::ShopView() = default;
ShopView::ShopView(const ShopView&) = default;
ShopView::ShopView(ShopView&&) noexcept = default;
ShopView& ShopView::operator=(const ShopView&) = default;
ShopView& ShopView::operator=(ShopView&&) noexcept = default;
ShopView::~ShopView() = default;

}  // namespace jambline::folds
