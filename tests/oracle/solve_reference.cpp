// Solves every case of a network file with the project's own solver and prints the hose flows as JSON:
//   oracle_reference FILE
// Three ways: `own` (exact constants, Colebrook-White), `library` (constants and friction formula of the library the
// file names), `library_leaking` (the same, with the conductance that library leaves in closed links).
#include <fmt/format.h>

#include <cstdio>
#include <exception>
#include <fstream>
#include <nlohmann/json.hpp>

#include "solvers/network_file.h"

namespace {

using forecourse::test::CaseFlows;
using forecourse::test::FileCase;
using forecourse::test::Method;
using forecourse::test::NetworkFile;
using Json = nlohmann::ordered_json;

Json answer(const NetworkFile& file, const FileCase& wanted, Method method) {
  const CaseFlows flows = solve_case(file, wanted, method);
  return {{"usable", flows.report.usable()},
          {"iterations", flows.report.iterations},
          {"head_residual_m", flows.worst_residual},
          {"hose_flow_m3s", flows.hose},
          {"pump_flow_m3s", flows.pump}};
}

Json answers(const NetworkFile& file) {
  Json all = Json::array();
  for (const FileCase& wanted : file.cases) {
    all.push_back({{"own", answer(file, wanted, Method::own)},
                   {"library", answer(file, wanted, Method::library)},
                   {"library_leaking", answer(file, wanted, Method::library_leaking)}});
  }
  return all;
}

}  // namespace

int main(int count, char** words) {
  if (count != 2) {
    fmt::print(stderr, "usage: oracle_reference FILE\n");
    return 2;
  }
  try {
    std::ifstream text(words[1]);
    const NetworkFile file = forecourse::test::read_network(nlohmann::json::parse(text));
    fmt::print("{}\n", answers(file).dump(1));
  } catch (const std::exception& fault) {
    fmt::print(stderr, "{}: {}\n", words[1], fault.what());
    return 2;
  }
  return 0;
}
