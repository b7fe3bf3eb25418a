// SOURCE: [cvode, CVODE with backward differences, relative tolerance 1e-9]
// Ten deliveries against a stiff ODE library. The library integrates every amount of liquid and vapor by equations
// that are written here anew, with the laws of the parts themselves in place of their tables, and levels by the tank's
// own inverse. Goals: rate within 0.1 %, pressure within 1 %.
#include <cvode/cvode.h>
#include <gtest/gtest.h>
#include <nvector/nvector_serial.h>
#include <sunlinsol/sunlinsol_dense.h>
#include <sunmatrix/sunmatrix_dense.h>

#include <cmath>
#include <functional>
#include <optional>

#include "forecourse/base/api_units.h"
#include "forecourse/parts/inverse.h"
#include "forecourse/parts/pipe_friction.h"
#include "forecourse/solvers/sequence/stepper.h"
#include "forecourse/studies/delivery/model/model.h"

namespace forecourse::studies::delivering {
namespace {

constexpr double atmosphere = standard_atmosphere;

/// A drop and its ways for vapor, as laws.
struct Given {
  int drops = 1;
  bool fixed = false;
  double growth = 1.0;
  double tube_end = 0.0;
  std::optional<parts::PipeLaw> vent;
  double opens_at = 0.0, vacuum_opens_at = 0.0;
  double valve_slope = 0.0;  ///< [Pa s/m3] of its curve
  std::optional<parts::PipeLaw> to_truck;
  std::vector<double> times{2.0, 15.0, 60.0, 150.0};
};

constexpr double density = 740.0, truck_volume = 9.0, truck_height = 1.4, tank_volume = 12.0, truck_room = 0.3;
constexpr double truck_surface = 6.0;  ///< [m] above the tank's bottom, at the start

parts::TankVolume tank() {
  return parts::TankVolume(parts::RoundTank{.diameter = 2.44, .length = 8.0, .incline = 0.005});
}
parts::PipeLaw fuel_way() {
  const double bore = meters_from_inches(4.0);
  return parts::pipe_law({11.0, bore, 1.5e-6, density, 5e-4}, parts::from_loss_coefficient(7.0, bore, density));
}
parts::PipeLaw vapor_pipe(double inches, double length, double k) {
  const double bore = meters_from_inches(inches);
  return parts::pipe_law({length, bore, 4.6e-5, 2.0, 1.8e-5}, parts::from_loss_coefficient(k, bore, 2.0));
}

/// What a vent takes at a flow, its valve before its pipe.
parts::Loss vent_loss(const Given& g, double opens_at, double flow) {
  parts::Loss out = loss(*g.vent, flow);
  out.pressure_loss += opens_at + g.valve_slope * flow;
  out.slope += g.valve_slope;
  return out;
}

Case case_of(const Given& g) {
  Case c;
  c.growth = g.growth;
  c.at_once = g.drops;
  c.truck_closed = g.to_truck.has_value();
  c.truck_room = truck_room;
  SpaceCase space;
  if (g.to_truck) space.to_truck = parts::PathFlow([&](double q) { return loss(*g.to_truck, q); }, 0.1);
  c.spaces.push_back(space);
  if (g.vent) {
    VentCase vent;
    vent.out = parts::PathFlow([&](double q) { return vent_loss(g, g.opens_at, q); }, 0.1);
    vent.in = parts::PathFlow([&](double q) { return vent_loss(g, g.vacuum_opens_at, q); }, 0.1);
    c.vents.push_back(vent);
  }
  const parts::PipeLaw way = fuel_way();
  for (int d = 0; d < g.drops; ++d) {
    TankCase t;
    t.body = TankBody({tank(), 0.0, 0.0, false, {}});
    t.level = parts::LevelCurve(t.body.inside().volume);
    t.capacity = t.body.capacity();
    t.volume = tank_volume;
    t.space = 0;
    t.tube_end = g.tube_end;
    c.tanks.push_back(t);
    DropCase drop;
    drop.tank = d;
    drop.volume = truck_volume;
    drop.density = density;
    drop.truck_area = truck_volume / truck_height;
    drop.truck_bottom = truck_surface - truck_height;
    if (g.fixed) drop.fixed_head = 3.5;
    drop.way = parts::PathFlow([&](double q) { return loss(way, q); }, 0.1);
    c.drops.push_back(drop);
  }
  return c;
}

/// The same, written anew. State: truck and tank of each drop, vapor of ullage and truck.
class Reference {
 public:
  explicit Reference(const Given& given) : g_(given), tank_(tank()), way_(fuel_way()) {}

  struct Answer {
    double rate = 0.0, ullage = 0.0, truck = 0.0;
  };

  std::vector<Answer> run() {
    SUNContext context = nullptr;
    SUNContext_Create(nullptr, &context);
    const auto size = static_cast<sunindextype>(2 * g_.drops + 2);
    N_Vector y = N_VNew_Serial(size, context);
    double* at = NV_DATA_S(y);
    for (int d = 0; d < g_.drops; ++d) {
      at[2 * d] = truck_volume;
      at[2 * d + 1] = tank_volume;
    }
    at[size - 2] = g_.drops * (tank_.capacity() - tank_volume);
    at[size - 1] = truck_room;
    SUNMatrix matrix = SUNDenseMatrix(size, size, context);
    SUNLinearSolver solver = SUNLinSol_Dense(y, matrix, context);
    void* memory = CVodeCreate(CV_BDF, context);
    CVodeInit(memory, right_side, 0.0, y);
    CVodeSStolerances(memory, 1e-9, 1e-11);
    CVodeSetUserData(memory, this);
    CVodeSetLinearSolver(memory, solver, matrix);
    CVodeSetMaxNumSteps(memory, 1'000'000);
    std::vector<Answer> answers;
    for (const double until : g_.times) {
      double reached = 0.0;
      CVodeSetStopTime(memory, until);
      EXPECT_GE(CVode(memory, until, y, &reached, CV_NORMAL), 0);
      answers.push_back({rate(at, 0), ullage(at), truck(at)});
    }
    CVodeFree(&memory);
    SUNLinSolFree(solver);
    SUNMatDestroy(matrix);
    N_VDestroy(y);
    SUNContext_Free(&context);
    return answers;
  }

 private:
  [[nodiscard]] double ullage(const double* y) const {
    double room = 0.0;
    for (int d = 0; d < g_.drops; ++d) room += tank_.capacity() - y[2 * d + 1];
    return atmosphere * y[2 * g_.drops] / room - atmosphere;
  }
  [[nodiscard]] double truck(const double* y) const {
    if (!g_.to_truck) return 0.0;
    double room = truck_room;
    for (int d = 0; d < g_.drops; ++d) room += truck_volume - y[2 * d];
    return atmosphere * y[2 * g_.drops + 1] / room - atmosphere;
  }
  [[nodiscard]] double rate(const double* y, int d) const {
    const double level = std::max(tank_.level(y[2 * d + 1]), g_.tube_end);
    const double above = truck_surface - truck_height * (1.0 - y[2 * d] / truck_volume);
    const double head = g_.fixed ? 3.5 : above - level;
    return parts::flow_at(way_, density * standard_gravity * head + truck(y) - ullage(y));
  }
  /// Flow of a gas at one temperature, told at the atmosphere: p1^2 - p2^2 = 2 p_atm loss(q).
  [[nodiscard]] static double gas(double p1, double p2) {
    const double a = atmosphere + p1, b = atmosphere + p2;
    return (a * a - b * b) / (2.0 * atmosphere);
  }
  [[nodiscard]] double vented(const double* y) const {
    const double p = ullage(y);
    const double opens_at = p > 0.0 ? g_.opens_at : g_.vacuum_opens_at;
    if (!g_.vent || std::abs(p) <= opens_at) return 0.0;
    const auto at = [&](double q) { return vent_loss(g_, 0.0, q); };
    // The valve takes its setting first; the rest drives the flow at the mean density.
    const double rest = (std::abs(p) - opens_at) * (1.0 + 0.5 * p / atmosphere);
    return (p > 0.0 ? 1.0 : -1.0) * parts::flow_anywhere(at, rest);
  }

  static int right_side(realtype /*t*/, N_Vector state, N_Vector out, void* self) {
    const Reference& r = *static_cast<Reference*>(self);
    const double* y = NV_DATA_S(state);
    double* f = NV_DATA_S(out);
    const int n = 2 * r.g_.drops;
    double liquid = 0.0;
    for (int d = 0; d < r.g_.drops; ++d) {
      const double q = r.rate(y, d);
      f[2 * d] = -q;
      f[2 * d + 1] = q;
      liquid += q;
    }
    const double back = r.g_.to_truck ? parts::flow_at(*r.g_.to_truck, gas(r.ullage(y), r.truck(y))) : 0.0;
    f[n] = (r.g_.growth - 1.0) * liquid - r.vented(y) - back;
    f[n + 1] = back;
    return 0;
  }

  const Given& g_;
  parts::TankVolume tank_;
  parts::PipeLaw way_;
};

void expect_same(const Given& given) {
  const Case c = case_of(given);
  const Model model(c);
  const std::vector<Reference::Answer> theirs = Reference(given).run();
  for (std::size_t i = 0; i < given.times.size(); ++i) {
    seq::SequenceStart start = model.start();
    start.end = given.times[i];
    const auto ours = seq::run_sequence(model, start, told_options());
    ASSERT_EQ(ours.status, seq::SequenceStatus::finished);
    EXPECT_TRUE(ours.balance.holds);
    const seq::SequenceView view{ours.amounts, {}, ours.marks, ours.flags};
    std::vector<double> flows(static_cast<std::size_t>(model.links()));
    model.flows(0.0, view, flows, {});
    const Reference::Answer& t = theirs[i];
    EXPECT_NEAR(flows[0], t.rate, 1e-3 * t.rate) << given.times[i] << " s";
    constexpr double floor = 0.1;  // [Pa], a two-thousandth of an inch of water
    EXPECT_NEAR(model.ullage_pressure(view, 0), t.ullage, 1e-2 * std::abs(t.ullage) + floor) << given.times[i] << " s";
    EXPECT_NEAR(model.truck_pressure(view), t.truck, 1e-2 * std::abs(t.truck) + floor) << given.times[i] << " s";
  }
}

Given vented() {
  Given g;
  g.vent = vapor_pipe(2.0, 25.0, 5.5);
  return g;
}
Given returned() {
  Given g;
  g.to_truck = vapor_pipe(3.0, 9.0, 6.0);
  return g;
}

TEST(DeliveryOracle, AnOpenVent) { expect_same(vented()); }

TEST(DeliveryOracle, AVentValveWithItsCurve) {
  Given g = vented();
  g.opens_at = pascal_from_inches_of_water(3.0);
  g.vacuum_opens_at = pascal_from_inches_of_water(8.0);
  g.valve_slope = 1.5e4;
  expect_same(g);
}

TEST(DeliveryOracle, AVentValveWithItsSettingAlone) {
  Given g = vented();
  g.opens_at = pascal_from_inches_of_water(3.0);
  expect_same(g);
}

TEST(DeliveryOracle, VaporReturnAlone) { expect_same(returned()); }

TEST(DeliveryOracle, VaporReturnAndAVentValve) {
  Given g = returned();
  g.vent = vapor_pipe(2.0, 25.0, 5.5);
  g.opens_at = pascal_from_inches_of_water(3.0);
  g.vacuum_opens_at = pascal_from_inches_of_water(8.0);
  expect_same(g);
}

TEST(DeliveryOracle, VaporThatGrowsOpensTheValve) {
  Given g = returned();
  g.vent = vapor_pipe(2.0, 25.0, 5.5);
  g.opens_at = pascal_from_inches_of_water(3.0);
  g.vacuum_opens_at = pascal_from_inches_of_water(8.0);
  g.growth = 1.3;
  expect_same(g);
}

TEST(DeliveryOracle, VaporThatShrinksDrawsAirIn) {
  Given g = returned();
  g.vent = vapor_pipe(2.0, 25.0, 5.5);
  g.opens_at = pascal_from_inches_of_water(3.0);
  g.vacuum_opens_at = pascal_from_inches_of_water(8.0);
  g.growth = 0.8;
  expect_same(g);
}

TEST(DeliveryOracle, NoWayForVaporAtAll) {
  Given g;
  g.times = {2.0, 15.0, 60.0, 90.0};
  expect_same(g);
}

TEST(DeliveryOracle, TwoDropsOnOneNarrowVent) {
  Given g;
  g.drops = 2;
  g.vent = vapor_pipe(1.38, 60.0, 5.5);
  expect_same(g);
}

TEST(DeliveryOracle, FixedSurfacesAndATubeThatEndsHigh) {
  Given g = vented();
  g.fixed = true;
  expect_same(g);
  g.fixed = false;
  g.tube_end = 1.6;
  expect_same(g);
}

}  // namespace
}  // namespace forecourse::studies::delivering
