#pragma once

#include <array>

#include "forecourse/site/records/records.h"
#include "forecourse/site/records/test_words.h"
#include "forecourse/store/records/column.h"

namespace forecourse::store {

// Every column of every kind of records, once. A description is a function
//
//     template <class Visitor> void columns(Visitor& v, site::records::Dip& dip)
//
// that names each column with its member and its sentence. The list of kinds, and what makes a record of a row, are
// visitors of it. A new kind is a description here, a line in `each_kind`, and a table in
// sqlite/migrations.cpp.

namespace records = site::records;

/// What a description says of a column beside its name, member and sentence.
struct About {
  Need need = Need::optional;
  bool key = false;
  NameOf name_of = NameOf::anything;
};

inline constexpr About plain{};
inline constexpr About needed{Need::required, false, NameOf::anything};
inline constexpr About key{Need::optional, true, NameOf::anything};
inline constexpr About needed_key{Need::required, true, NameOf::anything};
inline constexpr About tank_key{Need::required, true, NameOf::tank};
inline constexpr About product{Need::optional, false, NameOf::product};

inline constexpr std::array<std::string_view, 2> read_by_words{"stick", "gauge"};
inline constexpr std::array<std::string_view, 2> state_words{"as-found", "as-left"};

/// A walk-through with one of the things looked at: a row of its file.
struct InspectionRow {
  records::Moment at;
  site::Name kind;
  site::Name by;
  records::Inspected item;
};

/// An incident with one of its steps: a row of its file.
struct IncidentRow {
  records::Incident incident;
  records::IncidentStep step;
};

template <class V>
void columns(V& v, records::Dip& dip) {
  v.kind("dips", "dip", "levels read in a tank, by stick or by gauge");
  v.moment("", dip.at, Need::required);
  v.name("tank", dip.tank, "tank or compartment", tank_key);
  v.quantity("depth", dip.depth, "of the liquid, water included", site::not_negative, "");
  v.quantity("water", dip.water, "depth of the water at the bottom", site::not_negative, "");
  v.quantity("volume", dip.volume, "as a gauge states it, observed", site::not_negative, "");
  v.quantity("temperature", dip.temperature, "of the fuel", site::fuel_temperature, "");
  v.word("by", dip.by, read_by_words, "what it was read with", key);
  v.one_of({"depth", "volume"});
}

template <class V>
void columns(V& v, records::Delivered& delivery) {
  v.kind("deliveries", "delivery", "fuel that was delivered into a tank");
  v.moment("", delivery.at, Need::required);
  v.name("tank", delivery.tank, "tank or compartment", tank_key);
  v.name("product", delivery.product, "what the ticket says was delivered", product);
  v.quantity("gross", delivery.gross, "observed volume", site::positive, "leave out deliveries of nothing");
  v.quantity("net", delivery.net, "volume at the reference temperature", site::positive, "");
  v.quantity("temperature", delivery.temperature, "of the fuel as loaded", site::fuel_temperature, "");
  v.quantity("density", delivery.density, "as the ticket states it", site::fuel_density, "");
  v.quantity("duration", delivery.duration, "of the drop", site::positive, "");
  v.name("ticket", delivery.ticket, "number of the ticket", key);
  v.one_of({"gross", "net"});
}

template <class V>
void columns(V& v, records::Sale& sale) {
  v.kind("sales", "sale", "fuel sold: single sales, or totals since the one before");
  v.moment("", sale.at, Need::required);
  v.name("hose", sale.hose, "whose meter told it", About{Need::optional, true, NameOf::hose});
  v.name("product", sale.product, "of a total by product", About{Need::optional, true, NameOf::product});
  v.name("tank", sale.tank, "of a total by tank", About{Need::optional, true, NameOf::tank});
  v.quantity("volume", sale.volume, "as metered, observed", site::not_negative,
             "fuel that was metered and went back into a tank is a row of returns.csv");
  v.quantity("totalizer", sale.totalizer, "reading of the meter after it", site::not_negative, "");
  v.quantity("fueling_time", sale.fueling_time, "time for which fuel flowed", site::positive, "");
  v.one_of({"hose", "product", "tank"});
  v.one_of({"volume", "totalizer"});
}

template <class V>
void columns(V& v, records::Returned& returned) {
  v.kind("returns", "return", "fuel that was metered and went back into a tank");
  v.moment("", returned.at, Need::required);
  v.name("tank", returned.tank, "tank or compartment", tank_key);
  v.quantity("volume", returned.volume, "as metered, observed", site::positive, "");
  v.name("note", returned.note, "why, in words", key);
  v.one_of({"volume"});
}

template <class V>
void columns(V& v, records::Proving& proving) {
  v.kind("provings", "draw", "draws of meters against a test measure");
  v.moment("", proving.at, Need::required);
  v.name("hose", proving.hose, "whose meter was proved", About{Need::required, true, NameOf::hose});
  v.name("draw", proving.draw, "its number or name, where several have one time", key);
  v.word("state", proving.state, state_words, "of the meter: as found, or as left after a change", key);
  v.quantity("indicated", proving.indicated, "that the meter told", site::positive, "");
  v.quantity("measured", proving.measured, "as read on the measure", site::positive, "");
  v.quantity("measure", proving.measure, "nominal volume of the measure; goes with scale", site::positive, "");
  v.quantity("scale", proving.scale, "read on its neck above the nominal volume; negative: below", site::any_value, "");
  v.quantity("measure_temperature", proving.measure_temperature, "of the fuel in the measure", site::fuel_temperature,
             "");
  v.quantity("meter_temperature", proving.meter_temperature, "of the fuel in the meter", site::fuel_temperature, "");
  v.quantity("reference_temperature", proving.reference_temperature, "at which the scale of the measure holds",
             site::fuel_temperature, "");
  v.quantity("expansion", proving.expansion, "of the volume of the measure; 0 leaves it out", site::not_negative, "");
  v.quantity("flow", proving.flow, "at which it was drawn", site::positive, "");
  v.name("by", proving.by, "who proved", plain);
  v.name("note", proving.note, "in words", plain);
  v.one_of({"indicated"});
  v.one_of({"measured", "measure"});
}

template <class V>
void columns(V& v, records::Test& test) {
  v.kind("tests", "test", "tests of a part, with what was read");
  v.moment("", test.at, Need::required);
  v.choice("kind", test.kind, records::test_words, "what was tested", needed_key);
  v.name("part", test.part, "id of the line, tank, pump, inlet, hose ...", needed_key);
  v.fact("passed", test.passed, "as the tester stated it");
  v.quantity("pressure", test.pressure, "at which it was tested", site::any_value, "");
  v.quantity("flow", test.flow, "leak rate or delivered flow", site::any_value, "");
  v.quantity("volume", test.volume, "read", site::any_value, "");
  v.quantity("expected", test.expected, "volume that should have been read", site::any_value, "");
  v.quantity("duration", test.duration, "of the test", site::positive, "");
  v.quantity("temperature", test.temperature, "of the fuel", site::fuel_temperature, "");
  v.name("by", test.by, "who tested", plain);
  v.name("note", test.note, "in words", plain);
}

template <class V>
void columns(V& v, InspectionRow& row) {
  v.kind("inspections", "inspection", "walk-throughs, a row for each thing looked at");
  v.moment("", row.at, Need::required);
  v.name("kind", row.kind, "30-day, annual, interstice, walls, wells, inside or other words", needed_key);
  v.name("by", row.by, "who walked", key);
  v.name("part", row.item.part, "what was looked at", key);
  v.name("what", row.item.what, "what was looked for, in words", key);
  v.fact("in_order", row.item.in_order, "whether it was found in order");
  v.name("note", row.item.note, "in words", plain);
}

template <class V>
void columns(V& v, IncidentRow& row) {
  v.kind("incidents", "incident", "what happened, a row for each step of it");
  v.moment("", row.incident.at, Need::required);
  v.name("kind", row.incident.kind, "struck, release, drive-off, alarm or other words", needed_key);
  v.name("part", row.incident.part, "where", key);
  v.quantity("released", row.incident.released, "as estimated on the spot", site::not_negative, "");
  v.fact("reported", row.incident.reported, "to the authority");
  v.name("note", row.incident.note, "in words", plain);
  v.moment("step_", row.step.at, Need::optional);
  v.name("step_part", row.step.part, "what the step was about", key);
  v.name("step_what", row.step.what, "what happened in it, in words", key);
}

/// Calls `visit(list)` with the list of each kind, in the order in which kinds are listed; `visit.template
/// operator()<Row>(list)` learns in `Row` what one row of its file is.
template <class Visit>
void each_kind(records::Records& all, Visit&& visit) {
  visit.template operator()<records::Dip>(all.dips);
  visit.template operator()<records::Delivered>(all.deliveries);
  visit.template operator()<records::Sale>(all.sales);
  visit.template operator()<records::Returned>(all.returns);
  visit.template operator()<records::Proving>(all.provings);
  visit.template operator()<records::Test>(all.tests);
  visit.template operator()<InspectionRow>(all.inspections);
  visit.template operator()<IncidentRow>(all.incidents);
}

}  // namespace forecourse::store
