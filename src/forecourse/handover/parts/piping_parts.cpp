#include "forecourse/handover/parts/part_list.h"
#include "forecourse/site/consistency/supply.h"

namespace forecourse::handover {
namespace {

/// Which products pumps bring to a place.
class ProductsAt {
 public:
  explicit ProductsAt(const site::Site& site) : graph_(site), supply_(site, graph_) {}

  [[nodiscard]] std::vector<std::string> operator()(const std::string& place) const {
    std::vector<std::string> out;
    const int at = graph_.place(place);
    for (const site::Source& source : supply_.sources()) {
      const bool reached = at >= 0 && !source.reaches.empty() && source.reaches[static_cast<std::size_t>(at)];
      if (reached || (source.pump != nullptr && source.pump->id.text == place)) add_product(out, source.product);
    }
    return out;
  }

 private:
  site::LineGraph graph_;
  site::Supply supply_;
};

void list(const site::Pump& pump, const Place& at, PartList& out) {
  out.add(Stop::pump, "pump", at, "", pump.where, &pump);
  out.add_fact(Stop::pump, "check-valve", at, "check_valve", pump.check_valve, pump.where, &pump);
  if (pump.pressure_relief)
    out.add(Stop::pump, "pressure-relief", at, "pressure_relief", pump.pressure_relief->where, &pump);
  out.add_fact(Stop::pump, "pump-bypass", at, "bypass", pump.bypass, pump.where, &pump);
  out.add_if(Stop::pump, "leak-detector", at, "leak_detector", pump.leak_detector);
  out.add_pipe(Stop::pump, "pump-leg", at, "leg", pump.leg);
}

void list(const site::Line& line, const Place& at, PartList& out) {
  out.add(Stop::line, "line", at, "", line.where, &line);
  out.add_fittings(Stop::line, at, line.pipe);
  out.add_fact(Stop::line, "check-valve", at, "check_valve", line.check_valve, line.where, &line);
  if (line.flexible_joints.value_or(false))
    out.add(Stop::line, "flexible-joint", at, "flexible_joints", line.where, &line).count.reset();
  if (line.interstice && !line.interstice->watch.empty() && line.interstice->watch.text != "none")
    out.add(Stop::line, "interstice-monitor", at, "interstice", line.interstice->where, &*line.interstice);
  out.add_seals(Stop::sump, at, line.seals);
}

}  // namespace

void list_piping(const site::Site& site, PartList& out) {
  const ProductsAt products_at(site);
  for (const site::Pump& pump : site.pumps) {
    const std::string& id = pump.id.text;
    list(pump, {item("pump", site.pumps, pump), id, id, products_at(id), {id}}, out);
  }
  for (const site::PumpControl& control : site.controls) {
    const Place at{item("control", site.controls, control), control.id.text, control.id.text, {}};
    out.add(Stop::pump, "pump-control", at, "", control.where, &control);
  }
  for (const site::Line& line : site.lines) {
    Place at{item("line", site.lines, line), line.id.text, line.id.text, products_at(line.to.text)};
    at.places = {line.from.text, line.to.text};
    list(line, at, out);
  }
  for (const site::Branch& branch : site.branches) {
    const std::string& id = branch.id.text;
    const Place at{item("branch", site.branches, branch), id, id, products_at(id), {id}};
    out.add(Stop::line, "branch", at, "", branch.where, &branch);
  }
}

}  // namespace forecourse::handover
