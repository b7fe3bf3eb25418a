#pragma once

#include "forecourse/base/context.h"
#include "forecourse/site/uncertain_values.h"
#include "forecourse/studies/flow/spans/set_flows.h"

namespace forecourse::studies {

/// Least and most that a hose gives with all uncertain values anywhere in their spreads.
struct FlowRange {
  double low = 0.0;   ///< [m3/s]
  double high = 0.0;  ///< [m3/s]
};

/// A station with each of its uncertain values alone at its low and at its high.
struct OneAtATime {
  std::vector<SetFlows> likely;             ///< per set
  std::vector<std::vector<SetFlows>> low;   ///< per value and set
  std::vector<std::vector<SetFlows>> high;  ///< per value and set
};

/// \param values the number of uncertain values, in the order of `site::uncertain_values`
/// \param used   per value, whether it is moved; the others give what is likely
[[nodiscard]] OneAtATime one_at_a_time(const site::Site& site, const std::vector<bool>& used, const HoseSets& sets,
                                       const Context& context);

/// Ranges of the open hoses of several sets.
struct Ranges {
  std::vector<std::map<std::string, FlowRange>> sets;  ///< a hose that is absent is not determined
  int corners = 0;                                     ///< stations solved for it
  bool monotone = true;
};

/// Range of each hose's flow: every value is set to the end that lowers (raises) that hose, judged one at a time, and
/// that corner is solved; corners that do not contradict each other are solved once.
///
/// Exact where the flow goes one way with every value, whatever the others are. Where a value is seen to move a flow
/// the same way at both ends, the range is the widest of what was solved and `monotone` is false.
/// \source common practice, no source
[[nodiscard]] Ranges hose_ranges(const site::Site& site, const OneAtATime& singles, const HoseSets& sets,
                                 const Context& context);

}  // namespace forecourse::studies
