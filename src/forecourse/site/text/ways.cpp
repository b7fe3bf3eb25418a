#include "forecourse/site/text/ways.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "forecourse/site/fields/rules.h"
#include "forecourse/site/shelf.h"

namespace forecourse::site {

namespace {

constexpr int curve_samples = 200;

/// Exactly one of the ways must be there.
void check_one_way(const ReadRun& run, SourceSpan where, std::string_view noun,
                   const std::vector<std::string_view>& given, std::string_view choices) {
  if (given.empty()) {
    if (!run.complete) return;  // one of the ways was given, but could not be read
    run.error(where, fmt::format("{} is given in no complete way", noun), fmt::format("give {}", choices));
  } else if (given.size() > 1) {
    run.error(where, fmt::format("{} is given in {} ways: {}", noun, given.size(), fmt::join(given, ", ")),
              fmt::format("keep one of {}", choices));
  }
}

/// Whether neighbors in a list keep an order.
template <class Points, class Order>
bool keeps(const Points& points, Order in_order) {
  return std::adjacent_find(points.begin(), points.end(),
                            [&](const auto& a, const auto& b) { return !in_order(a, b); }) == points.end();
}

double polynomial(const std::vector<Entered<double>>& c, double q) {
  double sum = 0.0;
  for (std::size_t i = c.size(); i-- > 0;) sum = sum * q + c[i].likely;
  return sum;
}

/// Flow at which a polynomial first falls to zero, by doubling; infinity when it never does.
double zero_of(const std::vector<Entered<double>>& c) {
  constexpr double smallest_flow = 1e-6;  // far below any pump's
  constexpr double largest_flow = 10.0;   // far above
  double q = smallest_flow;
  while (q < largest_flow && polynomial(c, q) > 0.0) q *= 2.0;
  if (q < largest_flow) return q;
  return no_limit;
}

void check_coefficients(const ReadRun& run, const PumpCurve& curve) {
  const auto& c = curve.coefficients;
  if (c.empty()) return;
  if (c.front().likely <= 0.0) return run.error(c.front().where, "the rise at zero flow must be above zero");
  const double zero = zero_of(c);
  if (!std::isfinite(zero)) {
    return run.error(curve.where, "the pump curve never falls to zero", "check the signs of the coefficients");
  }
  double last = c.front().likely;
  for (int i = 1; i <= curve_samples && last > 0.0; ++i) {
    const double rise = polynomial(c, zero * i / curve_samples);
    if (rise > last) {
      return run.error(curve.where, "the pump curve rises with flow; it must fall all the way",
                       "check the signs of the coefficients, or give points");
    }
    last = rise;
  }
}

/// Two keys of which only one may be given; told at the one that was written last.
void tell_both(const ReadRun& run, std::string_view owner, std::string_view a, SourceSpan where_a, std::string_view b,
               SourceSpan where_b) {
  const bool a_first = where_a.begin < where_b.begin;
  run.error(a_first ? where_b : where_a, fmt::format("{} has both '{}' and '{}'", owner, a, b), "keep one of them");
  run.diagnostics.back().related.push_back(
      {Severity::note, fmt::format("'{}'", a_first ? a : b), a_first ? where_a : where_b, "", {}});
}

/// A blend is of two products or more, each named once, and its shares add up to one.
void check_blend(const ReadRun& run, const Hose& hose) {
  const auto& blend = hose.blend;
  if (blend.size() == 1) {
    return run.error(blend.front().where, fmt::format("the blend of hose '{}' is of one product", hose.id.text),
                     fmt::format("write product = \"{}\", or add what it is blended with", blend[0].product.text));
  }
  for (auto share = blend.begin(); share != blend.end(); ++share) {
    const auto same = [&](const BlendShare& other) { return other.product == share->product; };
    const auto first = std::find_if(blend.begin(), share, same);
    if (first == share) continue;
    run.error(share->product.where,
              fmt::format("the blend of hose '{}' names '{}' twice", hose.id.text, share->product.text),
              "write it once, with its whole share");
    run.diagnostics.back().related.push_back({Severity::note, "first named here", first->product.where, "", {}});
    return;
  }
  double sum = 0.0;
  for (const BlendShare& share : blend) sum += share.share.likely.si();
  constexpr double rounding = 1e-3;  // shares written as thirds of a percent
  if (std::abs(sum - 1.0) <= rounding) return;
  const SourceSpan all{blend.front().where.text, blend.front().where.begin, blend.back().where.end};
  run.error(all, fmt::format("the shares of the blend of hose '{}' add up to {:.4g}, not to 1", hose.id.text, sum),
            "write shares that add up to 1, or to 100 %");
}

void check_curve_points(const ReadRun& run, const PumpCurve& curve) {
  const auto& points = curve.points;
  if (points.empty()) return;
  if (points.size() < 2) return run.error(curve.where, "a pump curve takes two points at least, but one is written");
  if (!keeps(points, [](const RisePoint& a, const RisePoint& b) { return a.flow < b.flow; })) {
    return run.error(curve.where, "the flows of the pump curve's points must rise from point to point",
                     "write each flow once, the smallest first");
  }
  if (!keeps(points, [](const RisePoint& a, const RisePoint& b) { return a.rise > b.rise; })) {
    return run.error(curve.where, "the pump curve rises with flow; it must fall from point to point",
                     "check the points; leave out a hump near zero flow");
  }
  if (curve.fit == CurveFit::power && (points.size() != 3 || points.front().flow.si() != 0.0)) {
    run.error(
        curve.where,
        fmt::format("fit = \"power\" takes three points, the first at zero flow, but {} are written", points.size()),
        "add or leave out points, or write fit = \"monotone\"");
  }
}

template <class T>
bool is_less(const Maybe<T>& a, const Maybe<T>& b) {
  return a && b && a->likely < b->likely;
}

template <class Q>
double likely_or_zero(const Maybe<Q>& entered) {
  return entered ? entered->likely.si() : 0.0;
}

/// Whether a loss lies below another wherever the two can be told apart without knowing the liquid: both are given
/// in the same way.
bool is_below(const EnteredLoss& a, const EnteredLoss& b) {
  const bool same_bore = !a.bore == !b.bore && (!a.bore || a.bore->likely == b.bore->likely);
  if (a.k && b.k) return same_bore && is_less(a.k, b.k);
  if (a.cv && b.cv) return is_less(b.cv, a.cv);
  if (a.kv && b.kv) return is_less(b.kv, a.kv);
  if ((a.per_flow || a.per_flow_squared) && (b.per_flow || b.per_flow_squared)) {
    const double linear = likely_or_zero(a.per_flow) - likely_or_zero(b.per_flow);
    const double squared = likely_or_zero(a.per_flow_squared) - likely_or_zero(b.per_flow_squared);
    return linear <= 0.0 && squared <= 0.0 && linear + squared < 0.0;
  }
  const auto same_flow = [](const LossPoint& x, const LossPoint& y) { return x.flow == y.flow && x.loss < y.loss; };
  return std::any_of(a.points.begin(), a.points.end(), [&](const LossPoint& x) {
    return std::any_of(b.points.begin(), b.points.end(), [&](const LossPoint& y) { return same_flow(x, y); });
  });
}

/// Two readings of a crack at most, that rise with pressure; two give the exponent.
void check_crack_readings(const ReadRun& run, const IncidentRequest& request) {
  const auto& readings = request.readings;
  if (readings.size() > 2) {
    run.error(readings[2].where, fmt::format("a crack takes two readings at most, but {} are written", readings.size()),
              "keep the two whose pressures lie farthest apart");
  }
  if (readings.size() < 2) return;
  if (readings[0].at && readings[1].at && readings[0].rate && readings[1].rate) {
    const double pressure = readings[1].at->likely.si() - readings[0].at->likely.si();
    const double rate = readings[1].rate->likely.si() - readings[0].rate->likely.si();
    if (pressure == 0.0) {
      run.error(readings[1].where, "both readings of the crack were taken at one pressure",
                "take the second at another pressure, or keep one and give exponent");
    } else if (pressure * rate <= 0.0) {
      run.error(readings[1].where, "the crack does not leak more at the higher pressure", "check the readings");
    }
  }
  if (request.exponent) {
    run.error(request.exponent->where, "two readings give the exponent already", "leave out exponent, or one reading");
  }
}

/// A pump's cycle is its share of the time, or how long it runs and rests.
void check_pump_cycle(const ReadRun& run, const IncidentRequest& request) {
  if (request.running_share && (request.runs_for || request.rests_for)) {
    const bool runs = request.runs_for.has_value();
    tell_both(run, "the incident", "running_share", request.running_share->where, runs ? "runs_for" : "rests_for",
              runs ? request.runs_for->where : request.rests_for->where);
    return;
  }
  if (!run.complete || request.runs_for.has_value() == request.rests_for.has_value()) return;
  const auto& given = request.runs_for ? request.runs_for : request.rests_for;
  run.error(given->where, fmt::format("the cycle of the pump has no '{}'", request.runs_for ? "rests_for" : "runs_for"),
            "give runs_for with rests_for, or running_share");
}

}  // namespace

void check_table(const ReadRun& run, const EnteredLoss& loss) {
  std::vector<std::string_view> given;
  if (loss.k) given.emplace_back("k");
  if (loss.cv) given.emplace_back("cv");
  if (loss.kv) given.emplace_back("kv");
  if (loss.per_flow || loss.per_flow_squared) {
    given.emplace_back(loss.per_flow_squared ? "per_flow_squared" : "per_flow");
  }
  if (!loss.points.empty()) given.emplace_back("points");
  check_one_way(run, loss.where, "the loss", given, "k, cv, kv, points, or per_flow with per_flow_squared");
  if (loss.bore && !loss.k && !given.empty())
    run.error(loss.bore->where, "the bore of a loss belongs to k, which is not given");
  const auto rising = [](const LossPoint& a, const LossPoint& b) { return a.flow < b.flow && a.loss < b.loss; };
  if (!keeps(loss.points, rising)) {
    run.error(loss.where, "the points of the loss must rise in flow and in loss from point to point",
              "write the smallest flow first, and check a reading that falls");
  }
  const auto below_zero = [](const LossPoint& p) { return p.flow.si() < 0.0 || p.loss.si() < 0.0; };
  if (std::any_of(loss.points.begin(), loss.points.end(), below_zero)) {
    run.error(loss.where, "a point of the loss is below zero");
  }
}

void check_table(const ReadRun& run, const PumpCurve& curve) {
  std::vector<std::string_view> given;
  if (!curve.points.empty()) given.emplace_back("points");
  if (!curve.coefficients.empty()) given.emplace_back("coefficients");
  if (curve.shutoff && curve.per_flow_squared) given.emplace_back("shutoff with per_flow_squared");
  if (curve.shutoff && curve.run_out) given.emplace_back("shutoff with run_out");
  check_one_way(run, curve.where, "the pump curve", given,
                "points, coefficients, shutoff with per_flow_squared, or shutoff with run_out");
  check_coefficients(run, curve);
  check_curve_points(run, curve);
}

void check_table(const ReadRun& run, const Hose& hose) {
  const std::string owner = fmt::format("hose '{}'", hose.id.text);
  if (hose.lift && hose.outlet_elevation) {
    tell_both(run, owner, "lift", hose.lift->where, "outlet_elevation", hose.outlet_elevation->where);
  }
  if (!hose.product.empty() && !hose.blend.empty()) {
    tell_both(run, owner, "product", hose.product.where, "blend", hose.blend.front().where);
  }
  if (hose.product.empty() && hose.blend.empty() && run.complete) {
    run.error(hose.where, fmt::format("hose '{}' has no 'product'", hose.id.text),
              "add product = ..., or blend = [...]");
  }
  if (!hose.blend.empty() && hose.product.empty() && run.complete) check_blend(run, hose);
}

void check_table(const ReadRun& run, const Part& part) {
  if (!part.loaded) return;
  const ShelfPart* shelf = part.loss ? nullptr : find_part(part.shelf.text);
  const EnteredLoss* clean = part.loss ? &*part.loss : shelf != nullptr ? &shelf->loss : nullptr;
  if (clean == nullptr || !is_below(*part.loaded, *clean)) return;
  run.error(part.loaded->where, "the filter loses less when loaded than when clean",
            "check which is which: loss is that of the clean filter, loaded that of one due for a change");
}

void check_table(const ReadRun& run, const Product& product) {
  const auto& points = product.viscosity_points;
  if (points.empty()) return;
  if (points.size() < 2) {
    return run.error(product.where, "viscosity_points takes two points at least, but one is written",
                     "add one at another temperature, or write kinematic_viscosity");
  }
  const auto falling = [](const ViscosityPoint& a, const ViscosityPoint& b) {
    return a.temperature < b.temperature && a.viscosity > b.viscosity;
  };
  if (!keeps(points, falling)) {
    run.error(product.where, "viscosity_points must rise in temperature and fall in viscosity from point to point",
              "write the coldest first, and check a reading that rises");
  }
}

void check_table(const ReadRun& run, const Pipe& pipe) {
  if (pipe.nominal.empty() || find_pipe(pipe.nominal.text) != nullptr) return;
  run.error(pipe.nominal.where, fmt::format("there is no pipe '{}' on the shelf", pipe.nominal.text),
            offer(pipe.nominal.text, pipe_ids(), "the shelf has"));
}

void check_table(const ReadRun& run, const Line& line) { check_table(run, line.pipe); }

void check_table(const ReadRun& run, const VentValve& valve) {
  const auto rising = [](const VentPoint& a, const VentPoint& b) { return a.flow < b.flow && a.pressure < b.pressure; };
  if (!keeps(valve.points, rising) || !keeps(valve.vacuum_points, rising)) {
    run.error(valve.where, "the points of the vent valve must rise in flow and in pressure from point to point");
  }
}

void check_table(const ReadRun& run, const Tank& tank) {
  const auto rising = [](const ChartPoint& a, const ChartPoint& b) { return a.depth < b.depth && a.volume < b.volume; };
  if (!keeps(tank.chart, rising)) {
    run.error(tank.where, fmt::format("the dip chart of tank '{}' must rise in depth and in volume", tank.id.text));
  }
  if (tank.product.empty() && tank.compartments.empty() && run.complete) {
    run.error(tank.where, fmt::format("tank '{}' has no 'product'", tank.id.text),
              "add product = ..., or compartments");
  }
  if (tank.surface_elevation && tank.reading && tank.reading->depth) {
    run.error(tank.surface_elevation->where,
              fmt::format("tank '{}' has both 'surface_elevation' and 'reading'", tank.id.text), "keep one of them");
  }
}

void check_table(const ReadRun& run, const Displacement& displacement) {
  if (displacement.from && displacement.to && !(displacement.from->likely < displacement.to->likely)) {
    run.error(displacement.to->where, "what stands inside the tank ends no higher than it begins");
  }
}

void check_table(const ReadRun& run, const Calibration& calibration) {
  const auto rising = [](const CalibrationPoint& a, const CalibrationPoint& b) {
    return a.added < b.added && a.depth < b.depth;
  };
  if (!keeps(calibration.points, rising)) {
    run.error(calibration.where, "the calibration readings must rise in volume added and in depth");
  }
}

void check_table(const ReadRun& run, const TankShape& shape) {
  if (shape.inside_diameter && shape.outside_diameter &&
      shape.outside_diameter->likely < shape.inside_diameter->likely) {
    run.error(shape.outside_diameter->where, "the outside diameter is smaller than the inside diameter");
  }
}

void check_table(const ReadRun& run, const PumpControl& control) {
  if (control.least_speed && control.most_speed && control.least_speed->likely > control.most_speed->likely) {
    run.error(control.least_speed->where, "least_speed is above most_speed");
  }
  if (control.kind && control.kind->value == ControlKind::variable_speed && !control.holds) {
    run.error(control.kind->where, "a variable speed holds a pressure, which is not given", "add holds = \"25 psi\"");
  }
}

void check_table(const ReadRun& run, const OverfillValve& valve) {
  if (valve.restricts_at && valve.closes_at && valve.closes_at->likely < valve.restricts_at->likely) {
    run.error(valve.closes_at->where, "the overfill valve closes below the depth at which it begins to restrict");
  }
}

void check_table(const ReadRun& run, const ValveClosing& closing) {
  std::vector<std::string_view> given;
  if (closing.equivalent_time) given.push_back("equivalent_time");
  if (closing.stroke_time) given.push_back("stroke_time");
  if (!closing.points.empty()) given.push_back("points");
  check_one_way(run, closing.where, "the closing of a valve", given,
                "equivalent_time, or delay with stroke_time, or delay with points");
  if (closing.equivalent_time && closing.delay) {
    run.error(closing.delay->where, "an equivalent time holds the delay already", "leave out delay");
  }
  if (closing.points.empty()) return;
  const auto falling = [](const ClosingPoint& a, const ClosingPoint& b) { return a.time < b.time && a.open >= b.open; };
  const bool starts_open = closing.points.front().time.si() == 0.0 && closing.points.front().open.si() == 1.0;
  if (!keeps(closing.points, falling) || !starts_open || closing.points.back().open.si() != 0.0) {
    run.error(closing.where, "the points of the closing must fall from full open at once to shut",
              "begin with [\"0 s\", \"100 %\"] and end with 0 %");
  }
}

void check_table(const ReadRun& run, const LeakReading& reading) {
  if (!run.complete || (reading.rate && reading.at)) return;
  run.error(reading.where, fmt::format("a leak has no '{}'", reading.rate ? "at" : "rate"),
            "write { rate = \"3 gph\", at = \"10 psi\" }");
}

void check_table(const ReadRun& run, const ShearValve& valve) {
  if (!valve.groove_elevation || !valve.groove_lift) return;
  tell_both(run, "the shear valve", "groove_elevation", valve.groove_elevation->where, "groove_lift",
            valve.groove_lift->where);
}

void check_table(const ReadRun& run, const Vehicle& vehicle) {
  if (!vehicle.speed || !vehicle.acceleration) return;
  tell_both(run, "the vehicle", "acceleration", vehicle.acceleration->where, "speed", vehicle.speed->where);
}

void check_table(const ReadRun& run, const IncidentRequest& request) {
  check_crack_readings(run, request);
  check_pump_cycle(run, request);
}

}  // namespace forecourse::site
