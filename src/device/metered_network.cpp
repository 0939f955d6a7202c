#include "device/metered_network.h"

#include <QNetworkInformation>

namespace jambline::device {

void watch_metered_network(QObject* owner, std::function<void(bool metered)> changed) {
  using Feature = QNetworkInformation::Feature;
  const bool known = QNetworkInformation::loadBackendByFeatures(Feature::Metered);
  QNetworkInformation* network = QNetworkInformation::instance();
  if (!known || !network || !network->supports(Feature::Metered)) return changed(false);
  QObject::connect(network, &QNetworkInformation::isMeteredChanged, owner, changed);
  changed(network->isMetered());
}

}  // namespace jambline::device
