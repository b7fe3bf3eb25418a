#include "forecourse/report/incident/incident_json.h"

namespace forecourse::report {
namespace {

Json spread_or_null(const std::optional<studies::Spread>& spread) { return spread ? spread_json(*spread) : Json(); }

}  // namespace

Json jet_json(const studies::JetRow& jet) {
  return {{"area_share", jet.area_share},   {"flow_m3_per_s", jet.flow},        {"velocity_m_per_s", jet.velocity},
          {"height_low_m", jet.height_low}, {"height_high_m", jet.height_high}, {"in_60_s_m3", jet.in_60_seconds}};
}

Json pack_json(const studies::PackAndColumn& p) {
  return {{"neither_m3", p.steady},
          {"with_spring_m3", p.with_pack},
          {"with_columns_m3", p.with_column},
          {"with_both_m3", p.with_both}};
}

Json pool_json(const studies::PoolTold& p) {
  return {{"volume_m3", p.volume},
          {"film_m", spread_json(p.film)},
          {"area_m2", spread_json(p.area)},
          {"radius_m", spread_json(p.radius)},
          {"slope", number_or_null(p.slope)}};
}

Json crack_json(const studies::CrackTold& c) {
  return {{"exponent", spread_json(c.exponent)},
          {"exponent_known", c.exponent_known},
          {"running_pressure_gauge_pa", c.running_pressure},
          {"holding_pressure_gauge_pa", c.holding_pressure},
          {"running_share", c.running_share},
          {"at_running_m3_per_s", spread_json(c.at_running)},
          {"at_holding_m3_per_s", spread_json(c.at_holding)},
          {"mean_m3_per_s", spread_json(c.mean)},
          {"at_10_psi_m3_per_s", spread_json(c.at_10_psi)},
          {"at_detector_m3_per_s", spread_json(c.at_detector)},
          {"at_test_m3_per_s", spread_json(c.at_test)},
          {"hole_diameter_m", c.hole_diameter},
          {"detects_m3_per_s", number_or_null(c.detects)},
          {"detects_at_gauge_pa", number_or_null(c.detects_at)},
          {"bound_to_be_seen", c.bound_to_be_seen ? Json(*c.bound_to_be_seen) : Json()},
          {"seen_reason", c.seen_reason},
          {"to_sensor_s", spread_or_null(c.to_sensor)},
          {"to_lowest_seal_s", spread_or_null(c.to_seal)},
          {"to_brim_s", spread_or_null(c.to_brim)}};
}

Json drive_off_json(const studies::DriveOffTold& d) {
  Json limits = Json::array();
  for (const studies::PullLimit& limit : d.limits)
    limits.push_back({{"limit", limit.what}, {"pull_n", spread_or_null(limit.pull)}});
  return {{"slack_m", d.slack},
          {"tight_at_s", d.tight_at},
          {"speed_then_m_per_s", d.speed_then},
          {"angle_rad", d.angle},
          {"has_whip", d.has_whip},
          {"separation_force_n", spread_or_null(d.separation_force)},
          {"may_never_release", d.may_never_release},
          {"limits", limits},
          {"outcome", d.outcome},
          {"outcome_known", d.outcome_known},
          {"parts_at_s", number_or_null(d.parts_at)},
          {"base_force_n", number_or_null(d.base_force)},
          {"base_moment_n_m", number_or_null(d.base_moment)}};
}

Json fire_json(const studies::FireTold& f) {
  Json radiation = Json::array();
  for (std::size_t i = 0; i < f.distances.size(); ++i) {
    radiation.push_back({{"from_edge_m", f.distances[i]}, {"flux_w_per_m2", spread_json(f.radiation[i])}});
  }
  return {{"fuel", f.fuel.empty() ? Json() : Json(f.fuel)},
          {"pool_diameter_m", f.pool_diameter},
          {"burning_rate_kg_per_m2_s", spread_json(f.burning_rate)},
          {"heat_release_w", spread_json(f.heat_release)},
          {"flame_height_m", spread_json(f.flame_height)},
          {"radiation", radiation},
          {"gas_temperature_k", number_or_null(f.gas_temperature)},
          {"gas_speed_m_per_s", number_or_null(f.gas_speed)},
          {"response_index_m05_s05", number_or_null(f.response_index)},
          {"rated_k", number_or_null(f.rated)},
          {"start_temperature_k", f.start_temperature},
          {"link_parts_at_s", number_or_null(f.link_parts_at)},
          {"link_reason", f.link_reason},
          {"isolated_at_s", number_or_null(f.isolated_at)},
          {"fed_with_link_m3", number_or_null(f.fed_with_link)},
          {"fed_without_link_m3", number_or_null(f.fed_without_link)}};
}

Json overfill_json(const studies::OverfillTold& o) {
  return {{"tank", o.tank},
          {"delivery", o.delivery},
          {"truck_flow_m3_per_s", o.truck_flow},
          {"alarm_at_s", number_or_null(o.alarm_at)},
          {"restricts_at_s", number_or_null(o.restricts_at)},
          {"closes_at_s", number_or_null(o.closes_at)},
          {"full_at_s", number_or_null(o.full_at)},
          {"spilled_m3", o.spilled},
          {"in_container_m3", o.in_container},
          {"notes", o.notes}};
}

Json monte_carlo_json(const studies::IncidentSpread& s) {
  Json quantiles = Json::array();
  for (std::size_t i = 0; i < s.shares.size(); ++i) {
    quantiles.push_back({{"share_below", s.shares[i]},
                         {"escaped_m3", s.quantiles[i]},
                         {"to_environment_m3", s.environment_quantiles[i]}});
  }
  Json weights = Json::array();
  for (const studies::InputWeight& w : s.weights) {
    weights.push_back({{"input", w.what}, {"rank_correlation", w.rank_correlation}, {"illustrative", w.illustrative}});
  }
  return {{"runs", s.runs},
          {"failed", s.failed},
          {"seed", s.seed},
          {"mean_escaped_m3", s.mean},
          {"quantiles", quantiles},
          {"exceeded_m3", s.exceeded},
          {"exceedance", s.exceedance},
          {"weights", weights},
          {"mainly_illustrative", s.mainly_illustrative},
          {"drawn", s.drawn}};
}

}  // namespace forecourse::report
