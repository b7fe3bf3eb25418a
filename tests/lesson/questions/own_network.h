#pragma once

#include <map>
#include <string>
#include <vector>

#include "forecourse/site/site.h"

namespace forecourse::test {

/// The piping of one product, solved by going down the tree of lines and back, over and over, until every open hose
/// draws what its pressure gives: another way than Newton's method on the network, with friction by another equation
/// (Churchill's for all regimes instead of Colebrook's), from the numbers of the site alone.
/// SOURCE: [churchill_1977, equation for all flow regimes, from memory, not verified]
class OwnNetwork {
 public:
  /// \param density [kg/m3]; \param viscosity [Pa s]: of the fuel, as the study tells them
  OwnNetwork(const site::Site& site, std::string product, double density, double viscosity);

  struct State {
    std::map<std::string, double> hose;   ///< [m3/s] by id
    std::map<std::string, double> place;  ///< [Pa] piezometric, over the datum
    std::map<std::string, double> line;   ///< [m3/s] by id
    double total = 0.0;                   ///< [m3/s]
    bool settled = false;
  };
  [[nodiscard]] State solve(const std::vector<std::string>& open) const;

  /// [m3/s] out of the riser that was cut at its groove, all hoses shut
  [[nodiscard]] double broken(const site::Dispenser& dispenser, const site::Inlet& inlet) const;

  /// [m3/s] out of a line that broke in its middle, all hoses shut; NaN: a height is not entered
  [[nodiscard]] double broken(const site::Line& line) const;

  /// [Pa] that one part takes: "filter", "curb hose" at an owner
  [[nodiscard]] double loss_of(const std::string& part, const std::string& owner, const State& state) const;
  /// [Pa] gauge in the dispenser where a hose's parts begin
  [[nodiscard]] double where_hose_begins(const std::string& hose, const State& state) const;
  [[nodiscard]] double weight() const;  ///< [Pa/m]
  [[nodiscard]] bool one_pump() const { return pumps_.size() == 1; }
  [[nodiscard]] const site::Pump& pump() const { return *pumps_.front(); }
  [[nodiscard]] double rise(double flow) const;  ///< [Pa] of the pump
  [[nodiscard]] double surface() const;          ///< [m] of the fuel over the datum

 private:
  struct HoseAt {
    const site::Dispenser* dispenser;
    const site::Inlet* inlet;
    const site::Hose* hose;
    std::string place;
  };
  [[nodiscard]] double entered(const site::EnteredLoss& loss, double bore, double flow) const;
  [[nodiscard]] double pipe(const site::Pipe& pipe, double flow) const;
  [[nodiscard]] double part(const std::optional<site::Part>& part, double flow) const;
  [[nodiscard]] double inlet_loss(const site::Inlet& inlet, double flow, bool to_groove) const;
  [[nodiscard]] double hose_loss(const site::Hose& hose, double flow) const;
  [[nodiscard]] double supply_at_root(double total) const;
  [[nodiscard]] double pump_flow(const site::Pump& pump, double root) const;
  /// The lines from the root to a place.
  [[nodiscard]] std::vector<const site::Line*> way_to(const std::string& place) const;
  [[nodiscard]] double height(const std::string& place) const;  ///< [m] of a place of the line; NaN: not entered
  [[nodiscard]] const HoseAt& find(const std::string& hose) const;
  void go_down(const std::string& from, State& state) const;
  double add_up(const std::string& place, const std::map<std::string, double>& drawn, State& state) const;

  const site::Site& site_;
  std::string product_;
  double density_;
  double viscosity_;
  std::vector<const site::Pump*> pumps_;
  std::string root_;  ///< where the lines of all pumps end
  std::vector<HoseAt> hoses_;
};

}  // namespace forecourse::test
