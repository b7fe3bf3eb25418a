#pragma once

#include <string>
#include <vector>

#include "forecourse/base/default_used.h"
#include "forecourse/network/fluid.h"
#include "forecourse/network/part_laws.h"
#include "forecourse/site/site.h"
#include "forecourse/studies/delivery/model/case.h"
#include "forecourse/studies/delivery/options.h"

namespace forecourse::studies::delivering {

/// What a drop is called, and what of it is told beside the numbers of its case.
struct DropSetup {
  std::string compartment;
  std::string product;
  double hose_bore = 0.0;  ///< [m]; 0: not known
  double tube_bore = 0.0;  ///< [m]; 0: not known
  double tank_bore = 0.0;  ///< [m] of the drop tube's end, for what covers it; 0: not known
};

struct TankSetup {
  const site::Tank* tank = nullptr;
  const site::Fill* fill = nullptr;
  std::optional<double> place;      ///< [m] of the fill along the tank
  std::optional<double> container;  ///< [m3]
};

/// The way of vapor from a space to the truck, part by part.
struct ReturnWay {
  std::vector<network::Element> riser;  ///< from the tank to its connection at grade
  std::vector<network::Element> dry_break;
  std::vector<network::Element> hose;
};

struct SpaceSetup {
  std::vector<std::string> tanks;  ///< none: where branches join
  std::string joint;               ///< the shared vent then
  bool at_least = false;           ///< a vent valve without a curve
  bool has_return = false;         ///< a vapor return is listed for one of its tanks
  ReturnWay to_truck;              ///< nothing in it where no vapor hose is on
};

/// A delivery made ready: its numbers, and the names behind them.
struct Setup {
  std::string problem;  ///< what is missing
  const site::Delivery* delivery = nullptr;
  Case everything;
  std::vector<DropSetup> drops;
  std::vector<TankSetup> tanks;
  std::vector<SpaceSetup> spaces;
  std::vector<std::string> vents;         ///< names
  std::vector<std::string> branches;      ///< names
  std::vector<std::string> open_because;  ///< per tank without a space: why its pressure is not determined
  network::Fluid vapor;                   ///< density and viscosity
  std::vector<DefaultUsed> defaults;
  std::vector<std::string> warnings;
  std::vector<std::string> notes;
};

/// What changes from case to case.
struct Variation {
  std::vector<DeliveryPart> without;
  std::vector<std::string> blocked;  ///< vents, shared vents or tanks
  bool all_blocked = false;          ///< every outlet; branches stay open
  int at_once = 0;                   ///< 0: as entered
};

[[nodiscard]] Setup set_up(const site::Site& site, const DeliveryOptions& options, const Variation& variation);

/// The ways of vapor: spaces, vents and vapor hose; the last part of a setup.
void set_vapor(const site::Site& site, const Variation& variation, Setup& setup);

/// From the truck to the end of the drop tube; a problem of the setup where something is missing.
void set_way(const network::Fluid& liquid, std::size_t drop, Setup& setup);

/// What a pipe holds [m3]; 0 where its length is not entered.
[[nodiscard]] double volume_in(const std::optional<site::Pipe>& pipe);

[[nodiscard]] bool is_without(const Variation& variation, DeliveryPart part);

/// Parts passed one after the other as a path, behind what opens it.
/// \param bore of the end, for the last velocity head [m]; 0: none is lost there
[[nodiscard]] parts::PathFlow path_of(const std::vector<network::Element>& elements, double density, double bore);

}  // namespace forecourse::studies::delivering
