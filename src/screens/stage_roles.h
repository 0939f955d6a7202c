// screens/stage_roles.h: whose work a stage usually is; decides only in which group of the floor a
// car stands, never who may do it. Source: common practice, no source.
#pragma once

#include "job/person.h"
#include "job/stage.h"

namespace jambline::screens {

bool usually_does(job::Role role, job::Stage stage);
job::Role usual_role(job::Stage stage);  // the first one to ask

}  // namespace jambline::screens
