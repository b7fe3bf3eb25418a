#pragma once

// The description of a site file: every table and key once, with its member, its range and one sentence. Reading
// (read.h), the JSON schema and the reference page (schema.h) are visitors of it.
// To add a key: add the member to the struct, and one line to its `fields` function in this folder.

#include "forecourse/site/fields/fields_delivery.h"
#include "forecourse/site/fields/fields_dispenser.h"
#include "forecourse/site/fields/fields_incident.h"
#include "forecourse/site/fields/fields_line.h"
#include "forecourse/site/fields/fields_operations.h"
#include "forecourse/site/fields/fields_product.h"
#include "forecourse/site/fields/fields_pump.h"
#include "forecourse/site/fields/fields_safety.h"
#include "forecourse/site/fields/fields_surroundings.h"
#include "forecourse/site/fields/fields_tank.h"

namespace forecourse::site {

/// The keys under `[site]`, which are members of `Site` itself.
struct SiteTable {
  Site& site;
};

template <class Visitor>
void fields(Visitor& v, SiteTable& table) {
  v.about("site", "The station as a whole.");
  v.name("name", table.site.name, "Name of the station.");
  v.choice("display", table.site.display, display_words, "Units in which results are shown.");
  v.names("rules", table.site.rules, "Rule sets that it is checked against.");
  v.quantity("ground_temperature", table.site.ground_temperature, "Temperature of the ground at the lines.",
             fuel_temperature);
  v.quantity("atmospheric_pressure", table.site.atmospheric_pressure, "Pressure of the air.", positive);
  v.quantity("altitude", table.site.altitude,
             "Height of the site datum above sea level; gives the pressure of the air where that is not entered.",
             site_altitude);
  v.quantity("coldest_air", table.site.coldest_air, "Coldest air at the dispensers.", fuel_temperature);
  v.quantity("hottest_air", table.site.hottest_air, "Hottest air at the dispensers.", fuel_temperature);
  v.fact("new_or_refurbished", table.site.new_or_refurbished,
         "Whether it counts as new or refurbished under a rule on vapor recovery.");
  v.fact("lived_above", table.site.lived_above, "Whether people live or work above the station.");
}

template <class Visitor>
void fields(Visitor& v, FlowRequest& request) {
  v.about("flow", "What the flow study is asked for.");
  v.name_sets("open", request.open, PartKind::hose, "Sets of open hoses: [[\"D1.a\"], [\"D1.a\", \"D2.a\"]].");
  v.references("order", request.order, PartKind::hose, "Hoses in the order they are opened.");
  v.quantity("keep", request.keep, "A flow that every open hose should keep.", positive);
}

template <class Visitor>
void fields(Visitor& v, Site& site) {
  v.about("site_file", "A station, as a site file describes it.");
  v.format("format", "Version of the site file; 1.");
  SiteTable table{site};
  v.section("site", table, "The station as a whole.");
  v.list("product", site.products, "The fuels.");
  v.list("tank", site.tanks, "The tanks.");
  v.list("pump", site.pumps, "The pumps.");
  v.list("control", site.controls, "How the pumps of a product are run.");
  v.list("line", site.lines, "The product lines.");
  v.list("branch", site.branches, "Places where lines meet without a dispenser.");
  v.list("dispenser", site.dispensers, "The dispensers.");
  v.list("emergency_stop", site.emergency_stops, "The emergency stops.");
  v.list("interlock", site.interlocks, "What stops what.");
  v.list("extinguisher", site.extinguishers, "The fire extinguishers.");
  v.table("surroundings", site.surroundings, "What stands around the equipment.");
  v.list("delivery", site.deliveries, "How a tanker unloads.");
  v.table("operations", site.operations, "How the station is run.");
  v.table("forecourt", site.forecourt, "The forecourt around the dispensers.");
  v.section("flow", site.flow, "What the flow study is asked for.");
  v.list("incident", site.incidents, "What incidents are asked for.");
}

}  // namespace forecourse::site
