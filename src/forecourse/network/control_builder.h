#pragma once

#include <string>
#include <vector>

#include "forecourse/network/piping_system.h"
#include "forecourse/site/site.h"

namespace forecourse::network {

/// Whether a control is about a pump of a product: it names the pump, or names none and is of the product.
[[nodiscard]] bool is_about(const site::PumpControl& control, const site::Pump& pump, const std::string& product);

/// Whether a control of kind off keeps the pump off.
[[nodiscard]] bool is_held_off(const site::Site& site, const site::Pump& pump, const std::string& product);

/// Puts the control that starts, stops or turns pumps by itself into a system that is built, and warns of one that
/// cannot do what it is for. Two such controls on one piping are a problem of the system.
void add_control(const site::Site& site, PipingSystem& system, std::vector<DefaultUsed>& defaults,
                 std::vector<Diagnostic>& warnings);

}  // namespace forecourse::network
