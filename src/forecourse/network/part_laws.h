#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forecourse/base/default_used.h"
#include "forecourse/network/element.h"
#include "forecourse/network/fluid.h"
#include "forecourse/site/site.h"

namespace forecourse::network {

/// Makes the laws of a system's parts from what was entered, with the shelf's values where a listed part
/// needs one, and notes each default. What cannot be made becomes a problem of the system.
class PartLaws {
 public:
  PartLaws(const Fluid& fluid, std::vector<DefaultUsed>& defaults, std::vector<Diagnostic>& problems)
      : fluid_(fluid), defaults_(defaults), problems_(problems) {}

  /// A run of conduit with its fittings. `what` names it in messages: "riser of D1.regular".
  void add_pipe(ElementKind kind, const std::string& owner, const std::string& what, const site::Pipe& pipe,
                std::vector<Element>& elements);

  /// A part that only loses pressure, entered or from the shelf.
  void add_part(ElementKind kind, const std::string& owner, const site::Part& part, std::vector<Element>& elements);

  /// A loss as entered; `own_bore` [m] serves a `k` without bore, 0 if there is none.
  void add_loss(ElementKind kind, const std::string& owner, const std::string& what, const site::EnteredLoss& entered,
                double own_bore, std::vector<Element>& elements);

  /// The shelf's loss of a listed part for which nothing was entered.
  void add_shelf_loss(ElementKind kind, const std::string& owner, const std::string& shelf_id, double own_bore,
                      std::vector<Element>& elements);

  void add_pump(const site::Pump& pump, std::vector<Element>& elements);

  /// The inside diameter of a pipe as entered or by its nominal size [m]; 0 if neither is known.
  [[nodiscard]] static double known_bore(const site::Pipe& pipe);

  void problem(std::string message, SourceSpan where, std::string hint);

 private:
  std::optional<parts::Law> law(const std::string& what, const site::EnteredLoss& entered, double own_bore);
  std::optional<double> bore_of(const std::string& what, const site::Pipe& pipe, ElementKind kind);
  double roughness_of(const std::string& what, const site::Pipe& pipe, ElementKind kind);
  void note(DefaultUsed used);

  const Fluid& fluid_;
  std::vector<DefaultUsed>& defaults_;
  std::vector<Diagnostic>& problems_;
};

}  // namespace forecourse::network
