#include "forecourse/report/flow/ladder/ladder_json.h"

namespace forecourse::report {
namespace {

const char* key(studies::LadderOrder order) {
  switch (order) {
    case studies::LadderOrder::worst:
      return "worst";
    case studies::LadderOrder::spread:
      return "spread";
    case studies::LadderOrder::given:
      return "given";
  }
  return "worst";
}

Json step(const studies::LadderStep& s, bool is_worst) {
  Json hoses = Json::array();
  for (std::size_t i = 0; i < s.hoses.size(); ++i) {
    hoses.push_back({{"id", s.hoses[i]}, {"flow_m3_per_s", number_or_null(s.flow[i])}});
  }
  return {{"open", s.hoses.size()},
          {"slowest_m3_per_s", number_or_null(s.slowest)},
          {"slowest_hose", s.slowest_hose},
          {"tied", s.tied},
          {"total_flow_m3_per_s", number_or_null(s.total)},
          {"mean_slowest_m3_per_s", number_or_null(s.mean_slowest)},
          {"proof", is_worst ? Json(proof_key(s.proof)) : Json(nullptr)},
          {"hoses", hoses}};
}

Json ladder(const studies::Ladder& l) {
  Json steps = Json::array();
  for (const studies::LadderStep& s : l.steps) steps.push_back(step(s, l.order == studies::LadderOrder::worst));
  return {{"system", l.system},
          {"order", key(l.order)},
          {"keeps", count_or_null(l.keeps)},
          {"rule_cap_m3_per_s", number_or_null(l.rule_cap)},
          {"rule_clause", text_or_null(l.rule_clause)},
          {"steps", steps}};
}

/// A quantity with the open hoses at which it is worst.
Json extreme(const char* unit_key, const studies::Extreme& e) {
  return {{unit_key, number_or_null(e.value)}, {"open", e.open}, {"proof", proof_key(e.proof)}};
}

Json pressure(const studies::PressureExtreme& p) {
  Json out = extreme("pressure_gauge_pa", p.gauge);
  out["place"] = text_or_null(p.place);
  return out;
}

Json run(const studies::RunExtreme& r) {
  Json out = extreme("flow_m3_per_s", r.flow);
  out["id"] = r.id;
  out["kind"] = r.is_pump ? "pump" : "line";
  out["velocity_m_per_s"] = r.velocity > 0.0 ? number_or_null(r.velocity) : Json(nullptr);
  return out;
}

Json states(const studies::WorstStates& w) {
  Json hoses = Json::array();
  for (const studies::HoseExtremes& h : w.hoses) {
    hoses.push_back({{"id", h.hose},
                     {"least", extreme("flow_m3_per_s", h.least)},
                     {"greatest", extreme("flow_m3_per_s", h.greatest)}});
  }
  Json runs = Json::array();
  for (const studies::RunExtreme& r : w.runs) runs.push_back(run(r));
  Json slowest = extreme("flow_m3_per_s", w.slowest);
  slowest["id"] = w.slowest_hose;
  return {{"system", w.system},
          {"hose_count", w.hose_count},
          {"opening_never_raises", w.opening_never_raises},
          {"sets_solved", w.sets_solved},
          {"sets_failed", w.sets_failed},
          {"slowest", slowest},
          {"highest_at_inlet", pressure(w.inlet)},
          {"highest_at_pump", pressure(w.pump)},
          {"runs", runs},
          {"hoses", hoses}};
}

}  // namespace

const char* proof_key(studies::Proof proof) {
  switch (proof) {
    case studies::Proof::argument:
      return "argument";
    case studies::Proof::enumeration:
      return "enumeration";
    case studies::Proof::best_found:
      return "best found";
  }
  return "best found";
}

Json ladders_json(const std::vector<studies::Ladder>& ladders) { return array_of(ladders, ladder); }

Json worst_states_json(const std::vector<studies::WorstStates>& all) { return array_of(all, states); }

}  // namespace forecourse::report
