#include "forecourse/report/findings.h"
#include "forecourse/report/vapor/vapor_report.h"

namespace forecourse::report {
namespace {

Json fact(const std::optional<bool>& known) { return known ? Json(*known) : Json(); }

Json loss_json(const studies::LossTold& loss) {
  return {{"where", loss.what},
          {"by", loss.by},
          {"mass_per_volume_kg_per_m3", number_or_null(loss.mass_per_volume)},
          {"mass_per_month_kg", number_or_null(loss.mass_per_month)},
          {"status", studies::word(loss.status)},
          {"here", fact(loss.here)},
          {"missing", text_or_null(loss.missing)}};
}

Json product_json(const studies::ProductVapor& product) {
  return {{"product", product.product},
          {"gasoline", product.gasoline},
          {"temperature_k", number_or_null(product.temperature)},
          {"reid_vapor_pressure_pa", number_or_null(product.reid_vapor_pressure)},
          {"true_vapor_pressure_absolute_pa", number_or_null(product.true_vapor_pressure)},
          {"pressure_source", product.pressure_source},
          {"molar_mass_kg_per_mol", number_or_null(product.molar_mass)},
          {"molar_mass_source", product.molar_mass_source},
          {"throughput_m3_per_month", number_or_null(product.throughput)},
          {"lost_kg_per_month", number_or_null(product.lost)},
          {"with_stage_one_kg_per_month", number_or_null(product.with_stage_one)},
          {"without_stage_one_kg_per_month", number_or_null(product.without_stage_one)},
          {"losses", array_of(product.losses, loss_json)},
          {"curve", array_of(product.curve, [](const studies::VaporPoint& point) {
             return Json{{"temperature_k", point.temperature}, {"pressure_absolute_pa", point.pressure}};
           })}};
}

Json targets_json(const studies::StaticTargets& band) {
  return {{"nozzles_from", band.nozzles_from},
          {"nozzles_to", band.nozzles_to == 0 ? Json() : Json(band.nozzles_to)},
          {"constant_read", band.constant_read},
          {"here", band.here},
          {"targets", array_of(band.targets, [](const studies::StaticTarget& target) {
             return Json{{"ullage_m3", target.ullage}, {"pressure_gauge_pa", target.pressure}};
           })}};
}

Json care_json(const studies::ProductCare& care) {
  Json out;
  out["water_uptake_e10"] = array_of(care.uptake_e10, [](const studies::WaterUptake& point) {
    return Json{{"temperature_k", point.temperature}, {"share", point.share}};
  });
  out["water"] = array_of(care.water, [](const studies::TankWater& tank) {
    return Json{{"tank", tank.tank},
                {"product", tank.product},
                {"temperature_k", number_or_null(tank.temperature)},
                {"share", number_or_null(tank.share)},
                {"water_bottom_m", number_or_null(tank.water_bottom)},
                {"words", tank.words}};
  });
  out["stock"] = array_of(care.stock, [](const studies::StockChange& stock) {
    return Json{{"delivery", text_or_null(stock.delivery)},
                {"compartment", text_or_null(stock.compartment)},
                {"tank", stock.tank},
                {"delivered_m3", number_or_null(stock.delivered)},
                {"delivered_at_k", number_or_null(stock.delivered_at)},
                {"stored_at_k", number_or_null(stock.stored_at)},
                {"factor", number_or_null(stock.factor)},
                {"change_m3", number_or_null(stock.change)},
                {"words", stock.words}};
  });
  out["materials"] = array_of(care.materials, [](const studies::MaterialTold& material) {
    return Json{
        {"material", material.material}, {"with_e85", studies::word(material.with_e85)}, {"source", material.source}};
  });
  out["tanks"] = array_of(care.tanks, [](const studies::TankMaterial& tank) {
    return Json{{"tank", tank.tank},
                {"product", tank.product},
                {"material", text_or_null(tank.material)},
                {"must_be_shown", tank.must_be_shown},
                {"words", tank.words}};
  });
  return out;
}

Json tier_json(const std::optional<parts::ThroughputTier>& tier) {
  if (!tier) return {};
  switch (*tier) {
    case parts::ThroughputTier::below_10000:
      return "below 10000 gal";
    case parts::ThroughputTier::from_10000:
      return "from 10000 gal";
    case parts::ThroughputTier::from_100000:
      return "from 100000 gal";
  }
  return {};
}

}  // namespace

Json vapor_document(const studies::VaporResult& result, const VaporFacts& facts) {
  JsonDocument out;
  out.study = "vapor";
  out.version = result.version;
  out.cautions = vapor_cautions();
  out.options = {{"temperature_k", number_or_null(result.options.temperature)}};
  out.defaults = result.defaults;
  out.findings = findings_json(facts.findings, facts.texts);
  out.warnings = result.warnings;
  out.result = {{"gasoline_throughput_m3_per_month", number_or_null(result.gasoline_throughput)},
                {"tier", tier_json(result.tier)},
                {"gasoline_nozzles", result.gasoline_nozzles},
                {"products", array_of(result.products, product_json)},
                {"static_targets", array_of(result.static_targets, targets_json)},
                {"leak_limits",
                 {{"site_pressure_m3_per_s", parts::site_pressure_leak},
                  {"site_vacuum_m3_per_s", parts::site_vacuum_leak},
                  {"valve_pressure_m3_per_s", parts::valve_pressure_leak},
                  {"valve_vacuum_m3_per_s", parts::valve_vacuum_leak}}},
                {"tests", array_of(result.tests,
                                   [&](const studies::VaporTests& test) {
                                     return Json{{"tank", test.tank},
                                                 {"target_gauge_pa", number_or_null(test.target)},
                                                 {"federal_target_gauge_pa", number_or_null(test.federal_target)},
                                                 {"end_gauge_pa", number_or_null(test.end)},
                                                 {"efficiency", number_or_null(test.efficiency)},
                                                 {"place", place_json(test.where, facts.texts)}};
                                   })},
                {"product_care", care_json(result.care)}};
  return document(out, facts.texts);
}

}  // namespace forecourse::report
