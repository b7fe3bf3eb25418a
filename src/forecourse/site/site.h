#pragma once

#include "forecourse/site/dispenser.h"
#include "forecourse/site/equipment/pump_control.h"
#include "forecourse/site/equipment/safety.h"
#include "forecourse/site/line.h"
#include "forecourse/site/product.h"
#include "forecourse/site/pump.h"
#include "forecourse/site/running/delivery.h"
#include "forecourse/site/running/incident_request.h"
#include "forecourse/site/running/operations.h"
#include "forecourse/site/surroundings.h"
#include "forecourse/site/tank.h"

namespace forecourse::site {

/// The unit system in which results are shown.
enum class Display { us, si };

/// What the file asks of the flow study; an option of the command wins over it.
struct FlowRequest {
  SourceSpan where{};
  std::vector<std::vector<Name>> open;  ///< sets of open hoses
  std::vector<Name> order;              ///< order of opening
  Maybe<VolumeFlow> keep;               ///< a flow every open hose should keep
};

/// A whole station, as entered. Never changed after it was read: a change makes a new text and a new Site.
///
/// Where a line of the site file belongs:
///
///     [site]             name, display, rules, temperature of the ground     -> the members below
///     [[product]]        a fuel                                              -> product.h
///     [[tank]]           shell, level, fills, vents, gauge, flotation        -> tank.h, equipment/tank_equipment.h
///     [[pump]]           submersible pump, check valve, leak detector        -> pump.h
///     [[control]]        when which pump of a product runs                   -> equipment/pump_control.h
///     [[line]] [[branch]]  runs between places, and where they meet          -> line.h, pipe.h
///     [[dispenser]]      sump, inlets with shear valves, hoses               -> dispenser.h, sump.h
///     [[emergency_stop]] [[interlock]]  what stops what                      -> equipment/safety.h
///     [[extinguisher]]   fire extinguishers                                  -> equipment/safety.h
///     [surroundings]     buildings, lot lines, sources of ignition           -> surroundings.h
///     [[delivery]]       how a tanker unloads                                -> running/delivery.h
///     [operations]       hours, throughput, arrivals                         -> running/operations.h
///     [forecourt]        slope, drains                                       -> running/incident_request.h
///     [[incident]]       what an incident is asked for                       -> running/incident_request.h
///     [flow]             what the flow study is asked for                    -> FlowRequest above
///
/// Every key, with its unit and one sentence, is listed once, in fields/; reading, the JSON schema and the
/// reference page of the handbook all come from there.
struct Site {
  SourceSpan where{};
  Name name;
  Display display = Display::us;
  std::vector<Name> rules;
  Maybe<Temperature> ground_temperature;
  Maybe<AbsolutePressure> atmospheric_pressure;
  Maybe<Length> altitude;  ///< of the site datum above sea level
  Maybe<Temperature> coldest_air;
  Maybe<Temperature> hottest_air;
  Fact new_or_refurbished;  ///< under a rule on vapor recovery
  Fact lived_above;         ///< people live or work above the station
  std::vector<Product> products;
  std::vector<Tank> tanks;
  std::vector<Pump> pumps;
  std::vector<Line> lines;
  std::vector<Branch> branches;
  std::vector<Dispenser> dispensers;
  std::vector<PumpControl> controls;
  std::vector<EmergencyStop> emergency_stops;
  std::vector<Interlock> interlocks;
  std::vector<Extinguisher> extinguishers;
  std::optional<Surroundings> surroundings;
  std::vector<Delivery> deliveries;
  std::optional<Operations> operations;
  std::optional<Forecourt> forecourt;
  FlowRequest flow;
  std::vector<IncidentRequest> incidents;
  std::vector<SourceSpan> uncertain;  ///< values entered as low, likely and high
};

}  // namespace forecourse::site
