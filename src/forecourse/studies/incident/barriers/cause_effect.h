#pragma once

#include "forecourse/studies/incident/incident.h"

namespace forecourse::studies {

/// Which signal stops which pump or dispenser, as the site's interlocks and emergency stops say. A sensor or a leak
/// detector that no interlock knows has a row too, without an effect: what it sees stops nothing.
[[nodiscard]] CauseEffect cause_effect(const site::Site& site);

}  // namespace forecourse::studies
