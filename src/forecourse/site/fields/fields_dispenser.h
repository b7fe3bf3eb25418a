#pragma once

#include "forecourse/site/fields/fields_pipe.h"
#include "forecourse/site/fields/fields_sump.h"

namespace forecourse::site {

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
  v.loss("loss", valve.loss, "Its loss when open.");
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
}

template <class Visitor>
void fields(Visitor& v, BlendShare& share) {
  v.about("blend_share", "One product of a blended hose and its share.");
  v.reference("product", share.product, PartKind::product, "The product.", Need::required);
  v.required_quantity("share", share.share, "Its share by volume; all shares add up to 1.", share_of_one);
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
  v.pipe("curb", hose.curb, "The curb hose.");
  v.part("swivel", hose.swivel, "The swivel.");
  v.part("nozzle", hose.nozzle, "The nozzle.");
  v.quantity("limiter", hose.limiter, "No more than this flows.", positive);
  v.fact("high_flow", hose.high_flow, "Whether it serves trucks with a high flow.");
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
  v.list("inlet", dispenser.inlets, "Where products enter.");
  v.list("hose", dispenser.hoses, "The hoses.");
}

}  // namespace forecourse::site
