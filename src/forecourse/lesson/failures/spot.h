#pragma once

#include <string>
#include <vector>

#include "forecourse/site/site.h"

namespace forecourse::lesson {

/// A hose or an inlet with the dispenser that bears it.
struct Spot {
  std::string id;
  const site::Dispenser* dispenser = nullptr;
  const site::Inlet* inlet = nullptr;  ///< of a hose: through which it is fed; null: not listed, or blended
  const site::Hose* hose = nullptr;    ///< null: it is an inlet
};

using Fits = bool (*)(const Spot& spot);

/// Inlets that something can happen to. Where `at` names an inlet, a hose or a dispenser, only those there; where the
/// file describes an incident of the kind, or another one, at one of them, that one is first.
[[nodiscard]] std::vector<Spot> inlets(const site::Site& site, const std::string& at, const char* kind, Fits fits);
/// The same of hoses.
[[nodiscard]] std::vector<Spot> hoses(const site::Site& site, const std::string& at, const char* kind, Fits fits);

[[nodiscard]] bool has_shear_valve(const Spot& spot);
[[nodiscard]] bool is_any(const Spot& spot);

/// The tank of an id, or of the compartment, pump or delivery of that id; null: there is none.
[[nodiscard]] const site::Tank* tank_at(const site::Site& site, const std::string& at);

/// The product that flows through a line, a pump or an inlet of an id; empty: it is none of them.
[[nodiscard]] std::string product_at(const site::Site& site, const std::string& at);

}  // namespace forecourse::lesson
