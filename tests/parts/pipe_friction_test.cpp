// SOURCE: [tp410, examples 7.9, 7.13 and 7.17] [hydr_watres, examples 4.3 to 4.6]
#include "forecourse/parts/pipe_friction.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "parts/sweep.h"
#include "support/check_values.h"

namespace forecourse::parts {
namespace {

using test::agrees;
using test::row;

constexpr double gravity = 9.80665;

double meters_from_feet(double feet) { return feet * 0.3048; }
double meters_from_inches(double inches) { return inches * 0.0254; }
double flow_from_gpm(double gpm) { return gpm * 231.0 * std::pow(0.0254, 3) / 60.0; }
double flow_from_barrels_per_hour(double barrels) { return flow_from_gpm(barrels * 42.0 / 60.0); }
double pascal_from_psi(double psi) { return psi * 6894.757293168361; }

// A pipe of each roughness and size met at a station, with gasoline or diesel.
const Pipe pipes[] = {{30.0, 0.0525, 4.5e-5, 740.0, 5.0e-4},
                      {3.0, 0.019, 0.0, 745.0, 4.5e-4},
                      {100.0, 0.0779, 1.5e-4, 840.0, 4.0e-3},
                      {1.0, 0.010, 5e-4, 720.0, 4.0e-4}};
const QuadraticLaw fittings[] = {{}, {.linear = 2e5, .quadratic = 3e9}};

template <class Check>
void for_all_laws(Check check) {
  for (const Pipe& pipe : pipes) {
    for (const QuadraticLaw& fitting : fittings) check(pipe_law(pipe, fitting));
  }
}

double flow_at_reynolds(const PipeLaw& law, double reynolds) { return reynolds / law.reynolds_per_flow; }

TEST(PipeFriction, AgreesWithTextbookExample4_3) {
  const Pipe pipe{100.0, 0.5, 4.6e-5, 1000.0, 1000.0 * 1.023053e-6};
  EXPECT_TRUE(agrees(row("DW-ex4.3-Re"), pipe_law(pipe).reynolds_per_flow * 0.416));
  EXPECT_TRUE(agrees(row("DW-ex4.3-hf"), pipe_loss(pipe, 0.416).pressure_loss / (1000.0 * gravity)));
}

TEST(PipeFriction, FlowAgreesWithTextbookExample4_4) {
  const Pipe pipe{100.0, 0.5, 4.6e-5, 1000.0, 1000.0 * 1.023e-6};
  EXPECT_TRUE(agrees(row("DW-ex4.4-Q"), pipe_flow(pipe, 0.6 * 1000.0 * gravity)));
}

TEST(PipeFriction, DiameterOfTextbookExample4_5LosesTheHeadAsked) {
  const auto loss_of = [](double bore) {
    return pipe_loss({100.0, bore, 4.6e-5, 1000.0, 1000.0 * 1.023053e-6}, 0.416).pressure_loss;
  };
  double narrow = 0.4, wide = 0.6;
  while (wide - narrow > 1e-9) {
    const double bore = 0.5 * (narrow + wide);
    (loss_of(bore) > 0.6 * 1000.0 * gravity ? narrow : wide) = bore;
  }
  EXPECT_TRUE(agrees(row("DW-ex4.5-D"), wide));
}

TEST(PipeFriction, ParallelPipesShareAsInTextbookExample4_6) {
  const double density = 958.4, viscosity = density * 2.94e-7;  // water at 100 degC
  const Pipe first{400.0, 0.2, 2.5e-5, density, viscosity}, second{600.0, 0.3, 2.5e-5, density, viscosity};
  double low = 0.0, high = 0.5;
  while (high - low > 1e-9) {
    const double flow = 0.5 * (low + high);
    (pipe_loss(first, flow).pressure_loss < pipe_loss(second, 0.5 - flow).pressure_loss ? low : high) = flow;
  }
  EXPECT_TRUE(agrees(row("DW-ex4.6-Q1"), low));
}

TEST(PipeFriction, AgreesWithHandbookExample7_9) {
  // Laminar oil with a gate valve, an angle valve and an elbow of 8, 150 and 20 turbulent friction factors.
  const double density = 0.87 * 998.98, bore = meters_from_inches(5.047), flow = flow_from_gpm(400.0);
  const QuadraticLaw valves = from_loss_coefficient((8.0 + 150.0 + 20.0) * 0.015439, bore, density);
  const PipeLaw law = pipe_law({meters_from_feet(300.0), bore, 4.5e-5, density, 0.130}, valves);
  EXPECT_NEAR(law.reynolds_per_flow * flow, 1675.6, 5.0);  // the handbook's density of water is not known to us
  const double lift = density * gravity * meters_from_feet(50.0);
  EXPECT_TRUE(agrees(row("TP-7.9-dP"), (loss(law, flow).pressure_loss + lift) / pascal_from_psi(1.0)));
}

TEST(PipeFriction, AgreesWithHandbookExample7_13) {
  const Pipe pipe{meters_from_feet(100.0), 0.0525, 4.5e-5, 815.0, 815.0 * 2.7e-6};
  const double loss = pipe_loss(pipe, flow_from_gpm(120.0)).pressure_loss;
  // The print reads f = 0.0230 off a chart where the law gives 0.0227: 1.3 %, and the row's own 0.5 %.
  EXPECT_TRUE(agrees(row("TP-7.13-dP"), loss, {.relative = 0.018}));
}

TEST(PipeFriction, AgreesWithHandbookExample7_17) {
  const double density = 141.5 / (30.0 + 131.5) * 999.016;
  const Pipe pipe{50.0 * 1609.344, meters_from_inches(12.09), 4.57e-5, density, 0.0125};
  const double head = pipe_loss(pipe, flow_from_barrels_per_hour(1900.0)).pressure_loss / (density * gravity);
  EXPECT_TRUE(agrees(row("TP-7.17-head"), head / meters_from_feet(1.0) + 2000.0));  // 2000 ft are lift
}

TEST(PipeFriction, IsHagenPoiseuilleWhenLaminar) {
  const Pipe pipe = pipes[2];
  const double flow = flow_at_reynolds(pipe_law(pipe), 1000.0);
  const double exact =
      128.0 * pipe.dynamic_viscosity * pipe.length * flow / (std::numbers::pi * std::pow(pipe.inside_diameter, 4));
  EXPECT_NEAR(pipe_loss(pipe, flow).pressure_loss / exact, 1.0, 1e-14);  // rounding
}

TEST(PipeFriction, IsOdd) {
  for_all_laws([](const PipeLaw& law) {
    for (const double flow : test::spread(1e-9, 1e-1, 200)) {
      EXPECT_EQ(loss(law, flow).pressure_loss, -loss(law, -flow).pressure_loss);
      EXPECT_EQ(loss(law, flow).slope, loss(law, -flow).slope);
    }
  });
}

TEST(PipeFriction, IsLinearThroughZero) {
  for_all_laws([](const PipeLaw& law) {
    EXPECT_EQ(loss(law, 0.0).pressure_loss, 0.0);
    EXPECT_GT(loss(law, 0.0).slope, 0.0);
    EXPECT_NEAR(loss(law, 1e-12).slope / loss(law, -1e-12).slope, 1.0, 1e-14);
  });
}

TEST(PipeFriction, SlopeIsTheDerivative) {
  for_all_laws([](const PipeLaw& law) {
    const auto loss_at = [&law](double flow) { return loss(law, flow); };
    for (const double flow : test::spread(flow_at_reynolds(law, 10.0), flow_at_reynolds(law, 1e7), 2000)) {
      // Rounding 1e-15/1e-5 of the loss, and the second derivative jumping at Re 2000 and 4000.
      EXPECT_NEAR(test::central_slope(loss_at, flow) / loss(law, flow).slope, 1.0, 1e-5);
    }
    for (const double reynolds : {1000.0, 2500.0, 3000.0, 3500.0, 4500.0, 1e5, 1e6}) {
      const double flow = flow_at_reynolds(law, reynolds);
      EXPECT_NEAR(test::central_slope(loss_at, flow) / loss(law, flow).slope, 1.0, 1e-8) << reynolds;
    }
  });
}

TEST(PipeFriction, SlopeIsContinuousWhereRegimesMeet) {
  for_all_laws([](const PipeLaw& law) {
    for (const double reynolds : {laminar_limit, turbulent_limit}) {
      const Loss below = loss(law, flow_at_reynolds(law, reynolds * (1.0 - 1e-12)));
      const Loss above = loss(law, flow_at_reynolds(law, reynolds * (1.0 + 1e-12)));
      EXPECT_NEAR(below.pressure_loss / above.pressure_loss, 1.0, 1e-11);  // the step itself
      EXPECT_NEAR(below.slope / above.slope, 1.0, 5e-11);
    }
  });
}

TEST(PipeFriction, LossRisesWithFlow) {
  for (const double roughness : {0.0, 1e-4, 1e-3, 1e-2, 5e-2}) {
    const PipeLaw law = pipe_law({10.0, 0.05, 0.05 * roughness, 740.0, 5e-4});
    for (double reynolds = 100.0; reynolds < 1e5; reynolds *= 1.002) {
      EXPECT_GT(loss(law, flow_at_reynolds(law, reynolds)).slope, 0.0) << reynolds << " " << roughness;
    }
  }
}

TEST(PipeFriction, FlowComesBackFromItsLoss) {
  for_all_laws([](const PipeLaw& law) {
    for (const double flow : test::spread(1e-9, 1e-1, 1000)) {
      // Rounding of the loss, times how much faster the flow moves than the loss (never above 1).
      EXPECT_NEAR(flow_at(law, loss(law, flow).pressure_loss) / flow, 1.0, 1e-13) << flow;
    }
    for (const double reynolds : {laminar_limit, 3000.0, turbulent_limit}) {
      const double flow = flow_at_reynolds(law, reynolds);
      EXPECT_NEAR(flow_at(law, loss(law, flow).pressure_loss) / flow, 1.0, 1e-13) << reynolds;
    }
    EXPECT_EQ(flow_at(law, 0.0), 0.0);
  });
}

TEST(PipeFriction, LossGrowsInProportionToLength) {
  Pipe pipe = pipes[0];
  const double once = pipe_loss(pipe, 1e-3).pressure_loss;
  pipe.length *= 3.0;
  EXPECT_NEAR(pipe_loss(pipe, 1e-3).pressure_loss / once, 3.0, 1e-14);
}

TEST(PipeFriction, WithoutLengthItIsItsFittings) {
  const PipeLaw law = pipe_law({0.0, 0.05, 4.5e-5, 740.0, 5e-4}, fittings[1]);
  EXPECT_EQ(loss(law, 1e-3).pressure_loss, loss(fittings[1], 1e-3).pressure_loss);
  EXPECT_NEAR(flow_at(law, loss(law, 1e-3).pressure_loss) / 1e-3, 1.0, 1e-14);
}

TEST(PipeFriction, PassesNanThrough) { EXPECT_TRUE(std::isnan(pipe_loss(pipes[0], std::nan("")).pressure_loss)); }

}  // namespace
}  // namespace forecourse::parts
