#include <algorithm>
#include <cmath>

#include "forecourse/decide/compare/figures.h"
#include "forecourse/site/places.h"
#include "forecourse/site/shelf.h"

namespace forecourse::decide {
namespace {

/// [m] as entered, else of the shelf; 0: neither. Rounded to a hundredth of a millimeter, to be one figure for a bore
/// written in two units.
double bore_of(const site::Pipe& pipe) {
  const site::ShelfPipe* on_shelf = site::find_pipe(pipe.nominal.text);
  const double bore = pipe.bore ? pipe.bore->likely.si() : on_shelf != nullptr ? on_shelf->bore : 0.0;
  constexpr double steps_per_meter = 1e5;
  return std::round(bore * steps_per_meter) / steps_per_meter;
}

class PipingFigures {
 public:
  explicit PipingFigures(const site::Site& site) : site_(site) {}

  std::vector<Figure> tell() {
    for (const site::Pump& pump : site_.pumps) tell_pump(pump);
    for (const site::Line& line : site_.lines) tell_line(line);
    for (const site::Branch& branch : site_.branches) joints(branch.id.text, 0);
    for (const site::Dispenser& dispenser : site_.dispensers) {
      for (const site::Inlet& inlet : dispenser.inlets) tell_inlet(dispenser, inlet);
    }
    double total = 0.0;
    for (const Figure& figure : lengths_) total += figure.value;
    double joints_in_all = 0.0;
    for (const Figure& figure : joints_) joints_in_all += figure.value;
    std::sort(bores_.begin(), bores_.end(), [](const Figure& x, const Figure& y) { return x.bore < y.bore; });
    std::vector<Figure> out = std::move(lengths_);
    out.insert(out.end(), bores_.begin(), bores_.end());
    out.push_back({Topic::pipe_total, "", "", "", "", {}, total});
    out.insert(out.end(), joints_.begin(), joints_.end());
    out.push_back({Topic::joints_total, "", "", "", "", {}, joints_in_all});
    return out;
  }

 private:
  /// Length of a pipe, of a bore as well.
  void pipe(const std::string& id, const site::Pipe& pipe) {
    if (!pipe.length) return;
    const double length = pipe.length->likely.si();
    lengths_.push_back({Topic::line_length, "", "", id, "", {}, length});
    const double bore = bore_of(pipe);
    const auto found = std::find_if(bores_.begin(), bores_.end(), [&](const Figure& f) { return f.bore == bore; });
    if (found == bores_.end()) {
      bores_.push_back({Topic::pipe_of_bore, "", "", "", "", bore, length});
    } else {
      found->value += length;
    }
  }

  void joints(const std::string& place, int count) {
    const auto found =
        std::find_if(joints_.begin(), joints_.end(), [&](const Figure& f) { return f.subject == place; });
    if (found == joints_.end()) {
      joints_.push_back({Topic::joints_at, "", "", place, "", {}, static_cast<double>(count)});
    } else {
      found->value += count;
    }
  }

  void tell_pump(const site::Pump& pump) {
    joints(pump.id.text, pump.leg ? 2 : 0);
    if (pump.leg) pipe("leg of " + pump.id.text, *pump.leg);
  }

  void tell_line(const site::Line& line) {
    joints(holder(line.from.text), 1);
    joints(holder(line.to.text), 1);
    pipe(line.id.text, line.pipe);
  }

  void tell_inlet(const site::Dispenser& dispenser, const site::Inlet& inlet) {
    const bool on_tee = inlet.connection && inlet.connection->value == site::Connection::tee;
    int count = inlet.riser ? 2 : 0;
    if (inlet.shear_valve) count += !inlet.riser && on_tee ? 2 : 1;
    joints(dispenser.id.text, count);
    if (inlet.riser) pipe("riser of " + site::place_name(dispenser, inlet), *inlet.riser);
  }

  /// The pump, branch or dispenser in whose sump a place is.
  [[nodiscard]] std::string holder(const std::string& place) const {
    for (const site::Dispenser& dispenser : site_.dispensers) {
      for (const site::Inlet& inlet : dispenser.inlets) {
        if (site::place_name(dispenser, inlet) == place) return dispenser.id.text;
      }
    }
    return place;
  }

  const site::Site& site_;
  std::vector<Figure> lengths_;
  std::vector<Figure> bores_;
  std::vector<Figure> joints_;
};

}  // namespace

std::vector<Figure> piping_figures(const site::Site& site) { return PipingFigures(site).tell(); }

}  // namespace forecourse::decide
