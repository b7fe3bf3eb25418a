#pragma once

#include <map>
#include <string>

#include "forecourse/network/part_laws.h"
#include "forecourse/network/piping_system.h"
#include "forecourse/network/place_groups.h"

namespace forecourse::network {

/// Builds the piping system of one group of places.
class SystemBuilder {
 public:
  SystemBuilder(const site::Site& site, const PlaceGroup& group, std::vector<DefaultUsed>& defaults,
                std::vector<Diagnostic>& warnings);

  [[nodiscard]] PipingSystem build(std::string id);

 private:
  void add_places();
  void add_pump(const site::Pump& pump);
  void add_line(const site::Line& line);
  void add_inlet(const InletAt& at);
  void add_hose(const InletAt& at, const site::Hose& hose, int from, double share);

  void add_connection(const std::string& owner, const site::Inlet& inlet, std::vector<Element>& elements);
  void add_shear_valve(const std::string& owner, const site::Inlet& inlet, std::vector<Element>& elements);
  void add_hose_parts(const site::Hose& hose, std::vector<Element>& elements);
  void add_tee_run(const site::Line& line, std::vector<Element>& elements);

  int add_place(const std::string& id, const site::Maybe<Length>& elevation);
  int add_opening(const std::string& id, double elevation);
  void add_run(RunKind kind, const std::string& id, int from, int to, std::vector<Element> elements,
               parts::FlowBounds bounds);

  void find_datum();
  [[nodiscard]] std::optional<double> outlet_elevation(const site::Hose& hose);
  [[nodiscard]] std::vector<const site::Hose*> all_hoses() const;
  void make_graph();

  const site::Site& site_;
  const PlaceGroup& group_;
  std::vector<DefaultUsed>& defaults_;
  std::vector<Diagnostic>& warnings_;
  PipingSystem system_;
  std::map<std::string, int> node_of_place_;
  std::map<std::string, int> opening_of_tank_;  ///< index in `openings`
  double lowest_surface_ = 0.0;
  bool lifts_only_ = false;
};

}  // namespace forecourse::network
