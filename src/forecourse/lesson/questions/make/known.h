#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forecourse/lesson/ground.h"
#include "forecourse/lesson/questions/chance.h"
#include "forecourse/lesson/questions/question.h"
#include "forecourse/studies/flow/flow.h"
#include "forecourse/studies/incident/incident.h"

namespace forecourse::lesson {

/// What questions look for in a station and its studies.

/// One of some, each as likely; null of none.
template <class T>
[[nodiscard]] const T* pick(const std::vector<const T*>& some, Chance& chance) {
  return some.empty() ? nullptr : some[chance.index(some.size())];
}

/// Those for which a condition holds.
template <class T, class Holds>
[[nodiscard]] std::vector<const T*> those(const std::vector<T>& all, Holds holds) {
  std::vector<const T*> out;
  for (const T& one : all) {
    if (holds(one)) out.push_back(&one);
  }
  return out;
}

/// Tanks whose volume and contents are known and which lie round; null: no such tank.
[[nodiscard]] const studies::TankTold* read_tank(const Ground& ground, Chance& chance);
[[nodiscard]] const site::Tank* tank_of(const site::Site& site, const std::string& id);
/// One tank at a depth, at the place of a reading or a fill.
[[nodiscard]] std::optional<studies::TankNow> tank_at(const site::Site& site, const std::string& tank, double depth,
                                                      const std::optional<double>& along);
[[nodiscard]] const studies::TankRoom* room_at(const studies::TankTold& tank, double share);

/// The sentence that describes a tank: "T1 (lying cylinder, ...)"; its values are diameter and length.
[[nodiscard]] Phrase described(const Ground& ground, const studies::TankTold& tank);

/// A hose with what it needs to be asked about.
struct KnownHose {
  const site::Dispenser* dispenser = nullptr;
  const site::Hose* hose = nullptr;
  std::string product;  ///< id; blended hoses are not among them
};
[[nodiscard]] std::vector<KnownHose> plain_hoses(const site::Site& site);
[[nodiscard]] std::vector<KnownHose> hoses_of(const site::Site& site, const std::string& product);

/// True of the place where a product enters a dispenser.
[[nodiscard]] bool is_inlet(const site::Site& site, const std::string& place);

/// Flows with only what is asked, for some sets of open hoses.
[[nodiscard]] studies::FlowResult flows(const site::Site& site, const std::vector<std::vector<std::string>>& sets);
/// The system of a state in which a hose draws; null: not determined.
[[nodiscard]] const studies::SystemFlow* system_of(const studies::FlowState& state, const std::string& hose);
[[nodiscard]] const studies::HoseFlow* hose_in(const studies::FlowState& state, const std::string& hose);
/// [m3/s]; empty: not determined, or nothing.
[[nodiscard]] std::optional<double> flow_at(const studies::FlowState& state, const std::string& hose);

/// The flow of a hose alone and with all of its product open.
struct HoseFlows {
  KnownHose known;
  double alone = 0.0;  ///< [m3/s]
  double all = 0.0;    ///< [m3/s]
  std::size_t hoses = 0;
  studies::FlowResult result;  ///< first state alone, second all open
};
/// Of a hose taken by chance that flows in both; empty: none does.
[[nodiscard]] std::optional<HoseFlows> some_hose(const Ground& ground, Chance& chance, std::size_t least_hoses = 1);

/// The pumps of a product that run and have a curve.
[[nodiscard]] std::vector<const site::Pump*> pumps_of(const site::Site& site, const std::string& product);
/// Rise at no flow [Pa]; empty: not entered in one figure.
[[nodiscard]] std::optional<double> shutoff_rise(const site::Pump& pump);
/// Flow at which the rise is nothing [m3/s]; empty: not known in closed form.
[[nodiscard]] std::optional<double> run_out(const site::Pump& pump);
/// Density as the flow study uses it [kg/m3].
[[nodiscard]] std::optional<double> density_of(const Ground& ground, const std::string& product);

/// A dispenser that was struck; nothing stops the pumps before the time given.
[[nodiscard]] studies::IncidentResult struck(const site::Site& site, const std::string& dispenser, double stop_at,
                                             const std::vector<studies::Barrier>& without);
[[nodiscard]] studies::IncidentOptions brief(studies::IncidentKind kind, const std::string& at);

/// Whether the federal rules are its own: it names them, or no rules at all.
[[nodiscard]] bool is_federal(const site::Site& site);
inline constexpr const char* not_federal = "the station names other rules than us-federal, which ask this";

/// Shown before what escapes.
inline constexpr const char* escape_caution =
    "In an emergency stop the pump, clear people away and call the fire service before anything else.";

/// The first default that is illustrative, in words; empty: none.
[[nodiscard]] std::string illustrative_of(const std::vector<DefaultUsed>& defaults);
[[nodiscard]] std::string illustrative_of(const std::vector<studies::InputUsed>& inputs);

}  // namespace forecourse::lesson
