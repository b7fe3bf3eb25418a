#include "forecourse/studies/incident/release/state_told.h"

#include <algorithm>

namespace forecourse::studies::release {

Holder holder_of(const Layout& layout, int compartment) {
  if (compartment < 3 * layout.ends) {
    constexpr std::array<Holder, 3> of_end{Holder::tank, Holder::line, Holder::dispenser};
    return of_end[at(compartment % 3)];
  }
  constexpr std::array<Holder, 6> shared{Holder::sump, Holder::slab,        Holder::ground,
                                         Holder::air,  Holder::interceptor, Holder::vehicle};
  return shared[at(compartment - 3 * layout.ends)];
}

std::vector<double> held(const Layout& layout, std::span<const double> amounts) {
  std::vector<double> out(all_holders.size(), 0.0);
  for (int c = 0; c < layout.compartments(); ++c) {
    const auto place = std::find(all_holders.begin(), all_holders.end(), holder_of(layout, c)) - all_holders.begin();
    out[static_cast<std::size_t>(place)] += amounts[at(c)];
  }
  return out;
}

double escaped_of(const Layout& layout, std::span<const double> amounts) {
  double sum = 0.0;
  for (int c = layout.sump(); c < layout.vehicle(); ++c) sum += amounts[at(c)];
  return sum;
}

double escaping(const Layout& layout, std::span<const double> flows) {
  double sum = 0.0;
  for (int f = 0; f < layout.ends; ++f) {
    for (const auto which : {Layout::escape_sump, Layout::escape_slab, Layout::drain_sump, Layout::drain_slab}) {
      sum += flows[at(Layout::link(f, which))];
    }
  }
  return sum;
}

double out_of_line(const Layout& layout, std::span<const double> flows) {
  double sum = 0.0;
  for (int f = 0; f < layout.ends; ++f) {
    sum += flows[at(Layout::link(f, Layout::escape_sump))] + flows[at(Layout::link(f, Layout::escape_slab))];
  }
  return sum;
}

double total(const Layout& layout, std::span<const double> flows, Layout::OfEnd which) {
  double sum = 0.0;
  for (int f = 0; f < layout.ends; ++f) sum += flows[at(Layout::link(f, which))];
  return sum;
}

}  // namespace forecourse::studies::release
