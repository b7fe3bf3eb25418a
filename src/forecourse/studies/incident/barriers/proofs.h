#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forecourse/site/site.h"
#include "forecourse/studies/incident/incident.h"

namespace forecourse::studies {

/// What keeps a proof from counting, in words; empty: it counts.
using Fault = std::string;

/// Whether a test is on record; where today is known, whether it lies ahead.
///
/// \param what  the test, in words: "trip test"
/// \param today  empty: not judged
[[nodiscard]] Fault test_on_record(const std::string& what, const std::optional<site::Date>& tested,
                                   const std::optional<site::Date>& today);

/// The same of a test that is due every year: where today is known, whether it is older than that.
///
/// \source [ifc_2018, 2305.2.4] shear valves tripped at least once a year
/// \source [ifc_2018, 2305.2.5] leak detectors tested yearly
/// \source [cfr_280, 280.40(a)(3)] leak detectors and sensors tested yearly
[[nodiscard]] Fault test_within_a_year(const std::string& what, const std::optional<site::Date>& tested,
                                       const std::optional<site::Date>& today);

/// Whether a shear groove lies in the published band about the island's top, whatever it is in its range.
[[nodiscard]] Fault groove_in_band(const site::Dispenser& dispenser, const site::ShearValve& valve);

/// Builds the state of one barrier: assured, until something is found that keeps it from that.
class StateBuilder {
 public:
  StateBuilder(Barrier barrier, std::string owner, std::string does);

  StateBuilder& at(SourceSpan where);
  StateBuilder& needs(const Fault& fault);
  StateBuilder& needs(bool proof, const char* reason);
  StateBuilder& needs(const site::Fact& fact, const char* unknown, const char* no);

  [[nodiscard]] BarrierState done() const;
  [[nodiscard]] BarrierState absent(std::string reason) const;
  [[nodiscard]] BarrierState not_asked(std::string reason) const;

 private:
  BarrierState state_;
};

}  // namespace forecourse::studies
