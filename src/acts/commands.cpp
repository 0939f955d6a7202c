#include "acts/commands.h"

#include "base/one_of_acts.h"

namespace jambline {
template const KindActs<acts::CommandKinds> OneOf<acts::CommandKinds>::acts;
}
