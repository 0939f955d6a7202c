#include "folds/car_view.h"

namespace jambline::folds {

CarView::CarView() = default;
CarView::CarView(const CarView&) = default;
CarView::CarView(CarView&&) noexcept = default;
CarView& CarView::operator=(const CarView&) = default;
CarView& CarView::operator=(CarView&&) noexcept = default;
CarView::~CarView() = default;

PanelView::PanelView() = default;
PanelView::PanelView(const PanelView&) = default;
PanelView::PanelView(PanelView&&) noexcept = default;
PanelView& PanelView::operator=(const PanelView&) = default;
PanelView& PanelView::operator=(PanelView&&) noexcept = default;
PanelView::~PanelView() = default;

}  // namespace jambline::folds
