// device/metered_network.h: whether the network that is used now costs by the amount, as far as the
// system says.
//
// Shape:   `changed` is called at once with what is known, and again when it is otherwise. Where
//          nobody says, a network is taken as free.
// Threads: GUI.
#pragma once

#include <QObject>
#include <functional>

namespace jambline::device {

void watch_metered_network(QObject* owner, std::function<void(bool metered)> changed);

}  // namespace jambline::device
