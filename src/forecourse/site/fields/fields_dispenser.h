#pragma once

#include "forecourse/site/fields/fields_pipe.h"
#include "forecourse/site/fields/fields_sump.h"

namespace forecourse::site {

template <class Visitor>
void fields(Visitor& v, ValveClosing& closing) {
  v.about(
      "closing",
      "How a valve shuts once it is tripped: equivalent_time alone, or delay with stroke_time, or delay with points.");
  v.quantity("equivalent_time", closing.equivalent_time, "Full flow passes for this long, then none.", not_negative);
  v.quantity("delay", closing.delay, "From the trip until the valve begins to move.", not_negative);
  v.quantity("stroke_time", closing.stroke_time, "From full open to shut, at a steady stroke.", positive);
  v.points("points", closing.points, &ClosingPoint::time, &ClosingPoint::open,
           "Pairs of time after the delay and share of the full opening, falling to 0.");
}

template <class Visitor>
void fields(Visitor& v, LeakReading& reading) {
  v.about("leak_reading", "A leak as it was measured.");
  v.quantity("rate", reading.rate, "How much leaks.", not_negative);
  v.quantity("at", reading.at, "Pressure at which it was measured.", positive);
}

template <class Visitor>
void fields(Visitor& v, Rejoining& rejoining) {
  v.about("rejoining", "What was done when a breakaway that had parted was joined again.");
  v.quantity("purged", rejoining.purged, "Volume drawn through the hose.", not_negative);
  v.quantity("watched", rejoining.watched,
             "Time for which the display did not move, while the hose was pulled and twisted.", not_negative);
  v.date("on", rejoining.on, "Day of it.");
}

template <class Visitor>
void fields(Visitor& v, VaporRecovery& recovery) {
  v.about("vapor_recovery", "What draws the vapor of the vehicle's tank back while it is filled (stage II).");
  v.quantity("capture", recovery.capture, "Share of the vapor that it takes, as certified.", share_of_one);
  v.quantity("per_fuel", recovery.per_fuel, "Volume of vapor for a volume of fuel, as measured.", not_negative);
  v.fact("monitored", recovery.monitored, "Whether it is watched by itself while it works.");
  v.date("tested", recovery.tested, "Last test.");
  v.names("listed_to", recovery.listed_to, "Standards that it was tested to.");
}

template <class Visitor>
void fields(Visitor& v, Parting& parting) {
  v.about("parting", "How a breakaway parts. What is not stated about it stays unknown.");
  v.quantity("pull", parting.pull, "Pull along its axis at which it parts.", positive);
  v.choice("poppet", parting.poppet, poppet_words, "Whether one end shuts or both.");
  v.fact("reconnectable", parting.reconnectable, "Whether it can be joined again.");
  v.number("friction", parting.friction, "Friction of its sliding parts under a side pull.", not_negative);
  v.date("tested", parting.tested, "Last inspection.");
  v.date("installed", parting.installed, "When it was installed.");
  v.table("rejoined", parting.rejoined, "What was done when it was last joined again.");
}

template <class Visitor>
void fields(Visitor& v, ShearValve& valve) {
  v.about("shear_valve", "The shear valve under a dispenser. What is not stated about it stays unknown.");
  v.choice("poppet", valve.poppet, poppet_words, "One poppet or two.");
  v.fact("anchored", valve.anchored, "Whether it is anchored to the island.");
  v.fact("crack_trip", valve.crack_trip, "Whether a crack at the groove trips it.");
  v.quantity("groove_elevation", valve.groove_elevation, "Elevation of the shear groove.");
  v.quantity("fusible_link", valve.fusible_link, "Temperature at which the link lets go.", positive);
  v.date("tested", valve.tested, "Last trip test.");
  v.date("installed", valve.installed, "When it was installed.");
  v.fact("listed", valve.listed, "Whether it is listed for this fuel.");
  v.fact("clear", valve.clear, "Whether its body and its moving parts have room around them.");
  v.loss("loss", valve.loss, "Its loss when open.");
  v.quantity("groove_lift", valve.groove_lift, "Shear groove above the liquid in the tank, instead of its elevation.");
  v.table("closing", valve.closing, "How it shuts once it is tripped.");
  v.table("seat_leak", valve.seat_leak, "What leaks past it when shut.");
  v.quantity("trip_volume", valve.trip_volume, "What must leak from the groove until a crack trip acts.", not_negative);
  v.quantity("trip_pressure", valve.trip_pressure, "Line pressure that a crack trip needs.", not_negative);
  v.number("response_index", valve.response_index, "Response time index of the fusible link, in (m s)^0.5.", positive);
  v.number("conduction", valve.conduction, "Conduction factor of the fusible link, in (m/s)^0.5.", not_negative);
  v.quantity("link_height", valve.link_height, "Fusible link above the sump's floor.", not_negative);
  v.quantity("rating", valve.rating, "Rated working pressure.", positive);
  v.names("listed_to", valve.listed_to, "Standards that it is listed to: [\"UL 842\"].");
}

template <class Visitor>
void fields(Visitor& v, Inlet& inlet) {
  v.about("inlet", "Where a product enters a dispenser. As a place it is called \"<dispenser>.<product>\".");
  v.optional_id("id", inlet.id, IdRule::dotted, "Name of the place, when it is not \"<dispenser>.<product>\".");
  v.reference("product", inlet.product, PartKind::product, "Product that enters.", Need::required);
  v.choice("connection", inlet.connection, connection_words, "How it is joined to the line in the sump.");
  v.loss("connection_loss", inlet.connection_loss, "Loss from the line into the riser.");
  v.pipe("riser", inlet.riser, "From the line to the dispenser; not listed: none.");
  v.table("shear_valve", inlet.shear_valve, "The shear valve.");
  v.part("filter", inlet.filter, "A filter shared by the hoses of this inlet.");
  v.part("meter", inlet.meter, "A meter shared by the hoses of this inlet.");
  v.quantity("elevation", inlet.elevation, "Elevation of the dispenser's inlet, above the riser.");
  v.quantity("line_elevation", inlet.line_elevation, "Elevation of the line in the sump.");
  v.loss("loss_to_groove", inlet.loss_to_groove,
         "Loss of the fittings from the line to the shear groove, when the dispenser is broken off; the wall of the "
         "riser counts beside it.");
  v.loss("discharge_loss", inlet.discharge_loss, "Loss of the broken end into the open air.");
  v.quantity("liquid_above", inlet.liquid_above, "Liquid in the dispenser above the shear groove.", not_negative);
  v.quantity("drains", inlet.drains, "Share of it that runs out when the dispenser is down.", share_of_one);
}

template <class Visitor>
void fields(Visitor& v, BlendShare& share) {
  v.about("blend_share", "One product of a blended hose and its share.");
  v.reference("product", share.product, PartKind::product, "The product.", Need::required);
  v.required_quantity("share", share.share, "Its share by volume; all shares add up to 1.", share_of_one);
}

template <class Visitor>
void fields(Visitor& v, Spout& spout) {
  v.about("spout", "The spout of a nozzle, measured from its tip.");
  v.quantity("diameter", spout.diameter, "Outside diameter at the tip.", positive);
  v.quantity("straight", spout.straight, "Length of the straight part.", positive);
  v.quantity("spring", spout.spring, "From the tip to where the retaining spring ends.", positive);
}

template <class Visitor>
void fields(Visitor& v, Hose& hose) {
  v.about("hose", "A hose point: what hangs between the dispenser's inlet and the vehicle.");
  v.id("id", hose.id, IdRule::dotted, "Name of the hose.");
  v.reference("product", hose.product, PartKind::product, "What it delivers; a blended hose has `blend` instead.");
  v.list("blend", hose.blend, "Products of a blended hose and their shares.");
  v.quantity("lift", hose.lift, "Nozzle outlet above the liquid in the tank.");
  v.quantity("outlet_elevation", hose.outlet_elevation, "Elevation of the nozzle outlet.");
  v.loss("loss", hose.loss, "All loss from the dispenser's inlet to the nozzle outlet; replaces the parts below.");
  v.part("filter", hose.filter, "Its own filter.");
  v.part("meter", hose.meter, "Its own meter.");
  v.part("control_valve", hose.control_valve, "The valve that opens and shuts the flow.");
  v.pipe("whip", hose.whip, "The whip hose.");
  v.part("breakaway", hose.breakaway, "The breakaway.");
  v.table("parting", hose.parting, "How the breakaway parts.");
  v.pipe("curb", hose.curb, "The curb hose.");
  v.part("swivel", hose.swivel, "The swivel.");
  v.part("nozzle", hose.nozzle, "The nozzle.");
  v.table("spout", hose.spout, "The spout of the nozzle.");
  v.quantity("limiter", hose.limiter, "No more than this flows.", positive);
  v.fact("high_flow", hose.high_flow, "Whether it serves trucks with a high flow.");
  v.quantity("nozzle_pull_out", hose.nozzle_pull_out, "Pull at which the nozzle comes out of the vehicle.", positive);
  v.fact("racked", hose.racked, "Whether it hangs on a reel or a rack.");
  v.fact("retriever", hose.retriever, "Whether a cord draws it back.");
  v.quantity("retriever_at", hose.retriever_at, "Where that cord holds it, from the nozzle.", positive);
  v.fact("self_closing", hose.self_closing, "Whether the nozzle shuts by itself when the tank is full.");
  v.fact("closes_without_pressure", hose.closes_without_pressure,
         "Whether the nozzle shuts when the pressure in the hose is gone, and opens only under pressure.");
  v.fact("controlled_elsewhere", hose.controlled_elsewhere,
         "Whether something besides the nozzle starts and stops the flow, such as a sale paid before.");
}

template <class Visitor>
void fields(Visitor& v, VaporLine& line) {
  v.about("vapor_line", "The vapor line inside a dispenser, where vapor is recovered at the vehicle.");
  v.fact("breaks", line.breaks, "Whether a shear section or a flexible connector lets the liquid's valve act.");
  v.fact("shear_mounted", line.shear_mounted,
         "Whether its shear joint is rigidly mounted, and flush with the surface the dispenser stands on.");
  v.fact("drains", line.drains, "Whether it drains to the tank without a trap.");
  v.fact("closes", line.closes, "Whether it is shut while nothing is dispensed.");
}

template <class Visitor>
void fields(Visitor& v, AccessPlace& place) {
  v.about("access", "Where somebody in a wheelchair fuels.");
  v.quantity("highest", place.highest, "Highest part to operate, above the way of the vehicles.", positive);
  v.quantity("lowest", place.lowest, "Lowest part to operate, above the way of the vehicles.", positive);
  v.quantity("reach_over", place.reach_over, "Depth of the curb or other obstruction that is reached over.",
             not_negative);
  v.fact("existing_curb", place.existing_curb, "Whether the dispenser stands on a curb that was there before.");
  v.quantity("floor_length", place.floor_length, "Length of the clear floor beside it.", positive);
  v.quantity("floor_width", place.floor_width, "Width of the clear floor beside it.", positive);
  v.quantity("slope", place.slope, "Steepest slope of that floor.", gradient);
}

template <class Visitor>
void fields(Visitor& v, Dispenser& dispenser) {
  v.about("dispenser", "A dispenser with its sump, inlets and hoses.");
  v.id("id", dispenser.id, IdRule::plain, "Name of the dispenser.");
  v.position("position", dispenser.position, "Position on plan.");
  v.quantity("elevation", dispenser.elevation, "Elevation of the island's top.");
  v.table("sump", dispenser.sump, "The dispenser sump.");
  v.fact("stabilizer_bar", dispenser.stabilizer_bar, "Whether a bar anchored to the island holds the shear valves.");
  v.fact("satellite", dispenser.satellite, "Whether it follows another dispenser.");
  v.quantity("mass", dispenser.mass, "Its mass.", positive);
  v.quantity("base_width", dispenser.base_width, "Width of its foot along the pull.", positive);
  v.quantity("anchorage", dispenser.anchorage, "Moment that its anchorage bears.", positive);
  v.quantity("outlet_height", dispenser.outlet_height, "Where the hose leaves it, above the island.", positive);
  v.date("installed", dispenser.installed, "When it was installed.");
  v.date("connectors_installed", dispenser.connectors_installed,
         "When the risers, connectors and valves beneath it were installed.");
  v.quantity("island_height", dispenser.island_height, "Height of its island above the drive.", not_negative);
  v.fact("guarded", dispenser.guarded, "Whether something else than its island guards it against vehicles.");
  v.fact("fastened", dispenser.fastened, "Whether it is bolted to its mounting.");
  v.fact("vehicle_inside", dispenser.vehicle_inside, "Whether a vehicle that fuels stands wholly on the premises.");
  v.fact("nozzle_switch", dispenser.nozzle_switch,
         "Whether a pump runs only with a nozzle off its bracket and the switch there on.");
  v.table("vapor_line", dispenser.vapor_line, "The vapor line inside it.");
  v.table("access", dispenser.access, "Where somebody in a wheelchair fuels.");
  v.date("last_hit", dispenser.last_hit, "The last day on which a vehicle struck it or drove off with a hose.");
  v.table("vapor_recovery", dispenser.vapor_recovery, "What draws the vehicle's vapor back.");
  v.names("listed_to", dispenser.listed_to, "Standards that it is listed to: [\"UL 87\"].");
  v.list("inlet", dispenser.inlets, "Where products enter.");
  v.list("hose", dispenser.hoses, "The hoses.");
}

}  // namespace forecourse::site
