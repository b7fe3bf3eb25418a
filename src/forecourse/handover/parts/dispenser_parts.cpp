#include <algorithm>

#include "forecourse/handover/parts/part_list.h"
#include "forecourse/site/consistency/supply.h"
#include "forecourse/site/places.h"

namespace forecourse::handover {
namespace {

void list(const site::Inlet& inlet, const Place& at, PartList& out) {
  if (inlet.connection) {
    const bool tee = inlet.connection->value == site::Connection::tee;
    out.add(Stop::sump, tee ? "tee" : "through-connection", at, "connection", inlet.connection->where, &inlet);
  }
  out.add_pipe(Stop::sump, "riser", at, "riser", inlet.riser);
  out.add_if(Stop::shear_valve, "shear-valve", at, "shear_valve", inlet.shear_valve);
  out.add_if(Stop::meter, "filter", at, "filter", inlet.filter);
  out.add_if(Stop::meter, "meter", at, "meter", inlet.meter);
}

void list(const site::Hose& hose, const Place& at, PartList& out) {
  out.add(Stop::hose, "hose-set", at, "", hose.where, &hose);
  out.add_if(Stop::meter, "filter", at, "filter", hose.filter);
  out.add_if(Stop::meter, "meter", at, "meter", hose.meter);
  out.add_if(Stop::meter, "control-valve", at, "control_valve", hose.control_valve);
  out.add_pipe(Stop::hose, "whip-hose", at, "whip", hose.whip);
  if (hose.breakaway) {
    out.add(Stop::hose, "breakaway", at, "breakaway", hose.breakaway->where, &*hose.breakaway);
  } else if (hose.parting) {
    out.add(Stop::hose, "breakaway", at, "parting", hose.parting->where, &hose);
  }
  out.add_pipe(Stop::hose, "curb-hose", at, "curb", hose.curb);
  out.add_if(Stop::hose, "swivel", at, "swivel", hose.swivel);
  if (hose.limiter) out.add(Stop::hose, "flow-limiter", at, "limiter", hose.limiter->where, &hose);
  out.add_fact(Stop::hose, "hose-rack", at, "racked", hose.racked, hose.where, &hose);
  out.add_fact(Stop::hose, "hose-retriever", at, "retriever", hose.retriever, hose.where, &hose);
  if (hose.nozzle) {
    out.add(Stop::nozzle, "nozzle", at, "nozzle", hose.nozzle->where, &*hose.nozzle);
  } else if (hose.spout) {
    out.add(Stop::nozzle, "nozzle", at, "spout", hose.spout->where, &hose);
  }
}

std::vector<std::string> products_of(const site::Dispenser& dispenser) {
  std::vector<std::string> out;
  for (const site::Inlet& inlet : dispenser.inlets) add_product(out, inlet.product.text);
  return out;
}

/// Where an inlet or a hose stands in the file, and in the piping.
Place place_of(const site::Dispenser& dispenser, const site::Inlet& inlet, const Place& at) {
  const std::string& name = inlet.id.empty() ? inlet.product.text : inlet.id.text;
  const auto index = static_cast<std::size_t>(&inlet - dispenser.inlets.data());
  Place out = within(at, item("inlet", name, index));
  out.subject = site::place_name(dispenser, inlet);
  out.products = {inlet.product.text};
  out.places = {out.subject};
  out.inlet = &inlet;
  return out;
}

Place place_of(const site::Dispenser& dispenser, const site::Hose& hose, const Place& at) {
  Place out = within(at, item("hose", dispenser.hoses, hose));
  out.subject = out.owner = hose.id.text;
  out.products = site::products_of(hose);
  out.places = {"nozzle of " + hose.id.text};
  for (const site::Inlet& inlet : dispenser.inlets) {
    const auto& of_hose = out.products;
    if (std::find(of_hose.begin(), of_hose.end(), inlet.product.text) != of_hose.end())
      out.places.push_back(site::place_name(dispenser, inlet) + " at the dispenser");
  }
  out.hose = &hose;
  return out;
}

void list(const site::Dispenser& dispenser, const Place& at, PartList& out) {
  if (dispenser.sump) out.add_sump("dispenser-sump", at, *dispenser.sump);
  for (const site::Inlet& inlet : dispenser.inlets) list(inlet, place_of(dispenser, inlet, at), out);
  out.add_fact(Stop::shear_valve, "stabilizer-bar", at, "stabilizer_bar", dispenser.stabilizer_bar, dispenser.where,
               &dispenser);
  out.add(Stop::meter, "dispenser", at, "", dispenser.where, &dispenser);
  if (dispenser.guarded.value_or(false))
    out.add(Stop::meter, "vehicle-guard", at, "guarded", dispenser.where, &dispenser).count.reset();
  for (const site::Hose& hose : dispenser.hoses) list(hose, place_of(dispenser, hose, at), out);
  out.add_if(Stop::vapor, "dispenser-vapor-line", at, "vapor_line", dispenser.vapor_line);
  out.add_if(Stop::vapor, "vapor-recovery", at, "vapor_recovery", dispenser.vapor_recovery);
}

}  // namespace

void list_dispensers(const site::Site& site, PartList& out) {
  for (const site::Dispenser& dispenser : site.dispensers) {
    Place at{item("dispenser", site.dispensers, dispenser), dispenser.id.text, dispenser.id.text,
             products_of(dispenser)};
    for (const site::Inlet& inlet : dispenser.inlets) at.places.push_back(site::place_name(dispenser, inlet));
    list(dispenser, at, out);
  }
}

void list_deliveries(const site::Site& site, PartList& out) {
  for (const site::Delivery& delivery : site.deliveries) {
    Place at{item("delivery", site.deliveries, delivery), delivery.id.text, delivery.id.text, {}, {}, true};
    for (const site::TruckCompartment& one : delivery.compartments) add_product(at.products, one.product.text);
    out.add_pipe(Stop::tanker, "tanker-pipe", at, "truck_pipe", delivery.truck_pipe);
    out.add_pipe(Stop::tanker, "delivery-hose", at, "hose", delivery.hose);
    out.add_if(Stop::tanker, "delivery-elbow", at, "elbow", delivery.elbow);
    out.add_pipe(Stop::tanker, "vapor-hose", at, "vapor_hose", delivery.vapor_hose);
  }
}

void list_safety(const site::Site& site, PartList& out) {
  for (const site::EmergencyStop& stop : site.emergency_stops) {
    const Place at{item("emergency_stop", site.emergency_stops, stop), stop.id.text, stop.id.text, {}};
    out.add(Stop::station, "emergency-stop", at, "", stop.where, &stop);
    out.add_fact(Stop::station, "emergency-stop-sign", at, "sign", stop.sign, stop.where, &stop);
  }
  for (const site::Interlock& one : site.interlocks) {
    const Place at{item("interlock", site.interlocks, one), one.id.text, one.id.text, {}};
    out.add(Stop::station, "interlock", at, "", one.where, &one);
  }
  for (const site::Extinguisher& one : site.extinguishers) {
    const Place at{item("extinguisher", site.extinguishers, one), one.id.text, one.id.text, {}};
    out.add(Stop::station, "extinguisher", at, "", one.where, &one);
  }
  if (site.operations && site.operations->warning_signs.value_or(false)) {
    const Place at{"operations", "station", "station", {}};
    out.add(Stop::station, "warning-sign", at, "warning_signs", site.operations->where, &*site.operations)
        .count.reset();
  }
  if (!site.surroundings) return;
  const std::vector<site::VaporProcessor>& processors = site.surroundings->vapor_processors;
  for (const site::VaporProcessor& one : processors) {
    const std::string number = std::to_string(&one - processors.data() + 1);
    const std::string name = one.id.empty() ? "vapor processor " + number : one.id.text;
    const Place at{"surroundings." + item("vapor_processor", processors, one), name, name, {}};
    out.add(Stop::vapor, "vapor-processor", at, "", one.where, &one);
  }
}

}  // namespace forecourse::handover
