#pragma once

#include <nlohmann/json_fwd.hpp>
#include <optional>
#include <string>
#include <vector>

#include "forecourse/solvers/steady.h"
#include "solvers/library_laws.h"

namespace forecourse::test {

/// One link of a network file, as written.
struct FileElement {
  enum class Kind { pump, pipe, component, nozzle };
  std::string id;
  Kind kind = Kind::pipe;
  int from = 0, to = 0;
  PipeData pipe;                         ///< of a pipe
  double linear = 0.0, quadratic = 0.0;  ///< of a component or nozzle: head = c1 q + c2 q|q|
  std::vector<parts::CurvePoint> pump;   ///< flow [m3/s], head [m]
  std::optional<double> limit;           ///< [m3/s] of a nozzle's limiter
  int hose = -1;
};

struct FileCase {
  bool limiter = false;
  std::vector<int> open_hoses;
};

/// A network of tests/data/reference_station.json and of files like it.
struct NetworkFile {
  std::vector<std::optional<double>> fixed_head;  ///< [m] per node
  std::vector<FileElement> elements;
  std::vector<FileCase> cases;
  int hoses = 0;
  double kinematic_viscosity = 0.0;  ///< [m2/s]
  LibraryConstants library;
};

[[nodiscard]] NetworkFile read_network(const nlohmann::json& file);

/// How a network file is computed.
enum class Method {
  own,             ///< exact constants, Colebrook-White, a closed hose out of the network
  library,         ///< constants and friction formula of the library, a closed hose out of the network
  library_leaking  ///< the same, with the conductance the library leaves in closed links
};

struct CaseFlows {
  solvers::SteadyReport report;
  std::vector<double> hose;     ///< [m3/s] per hose; a closed hose's leak where it is computed
  std::vector<double> pump;     ///< [m3/s] per pump element, in file order
  double worst_residual = 0.0;  ///< [m] measured
};

[[nodiscard]] CaseFlows solve_case(const NetworkFile& file, const FileCase& wanted, Method method);

}  // namespace forecourse::test
