// What the writers say of pumps under control. SOURCE: common practice, no source
#include "forecourse/report/flow/pump_words.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "forecourse/report/flow/pump_html.h"
#include "forecourse/report/flow/pump_json.h"

namespace forecourse::report {
namespace {

using network::PressureHeld;
using testing::Contains;
using testing::HasSubstr;

constexpr double kilopascal = 1000.0;

studies::SystemFlow two_steps(site::ControlKind kind) {
  studies::ControlTold told;
  told.id = "C1";
  told.kind = kind;
  told.order = {"P1", "P2"};
  told.hoses_open = 2;
  told.starts_below = 150 * kilopascal;
  told.stops_above = 190 * kilopascal;
  told.steps = {{{"P1"}, true, 140 * kilopascal, 0.003, false}, {{"P1", "P2"}, true, 195 * kilopascal, 0.004, false}};
  studies::SystemFlow system;
  system.control = told;
  return system;
}

std::vector<std::string> words(const studies::SystemFlow& system) {
  return control_in_words(system, site::Display::si, Glyphs::ascii);
}

TEST(PumpWords, AreNoneWithoutAControl) {
  EXPECT_TRUE(words({}).empty());
  EXPECT_TRUE(pump_details({}, site::Display::si).empty());
  EXPECT_TRUE(control_json(std::nullopt).is_null());
}

TEST(PumpWords, SayThatALagPumpShortCycles) {
  studies::SystemFlow system = two_steps(site::ControlKind::lead_lag);
  system.control->hunts_with = 1;
  EXPECT_THAT(words(system), Contains(HasSubstr("Pump P2 short-cycles: it starts and stops in turn. Without it 180.0 "
                                                "L/min in total at 140 kPa gauge, which starts it")));
  EXPECT_EQ(control_json(system.control)["short_cycles_with_state"], 1);
  EXPECT_EQ(step_note(*system.control, 0), "told here; starts the next");
  EXPECT_EQ(step_note(*system.control, 1), "stops the last");
  EXPECT_THAT(pump_details(system, site::Display::si), HasSubstr("P1 + P2"));
}

TEST(PumpWords, NameEveryStateOfRest) {
  studies::SystemFlow system = two_steps(site::ControlKind::lead_lag);
  system.control->steps[0].rests = system.control->steps[1].rests = true;
  EXPECT_THAT(words(system), Contains(HasSubstr("If P1 and P2 run from what went before, that rests too")));
}

TEST(PumpWords, CountTheHosesCalling) {
  studies::SystemFlow system = two_steps(site::ControlKind::lead_lag);
  system.control->hoses_calling = 4.0;
  system.control->hoses_open = 3;
  EXPECT_THAT(words(system), Contains(HasSubstr("3 call: P1 runs.")));
}

// The station is solved with the pumps on, so the figures hold only until they are switched off.
TEST(PumpWords, SayThatWithNoneCallingThePumpsAreOff) {
  studies::SystemFlow system = two_steps(site::ControlKind::lead_lag);
  system.control->hoses_calling = 4.0;
  system.control->hoses_open = 0;
  const auto told = words(system);
  EXPECT_THAT(told, Contains("No hose calls, so the pump is switched off: what is told here is the moment before, with "
                             "P1 against shut hoses."));
  EXPECT_THAT(told, testing::Not(Contains(HasSubstr("P1 runs"))));
}

TEST(PumpWords, GiveAShortTurnInMinutes) {
  studies::SystemFlow system = two_steps(site::ControlKind::alternating);
  for (const auto& [seconds, text] : {std::pair{90.0, "after 1.5 min of"}, std::pair{600.0, "after 10 min of"},
                                      std::pair{7140.0, "after 119 min of"}, std::pair{7200.0, "after 2.0 h of"}}) {
    system.control->alternates_after = seconds;
    EXPECT_THAT(words(system), Contains(HasSubstr(text)));
  }
}

TEST(PumpWords, TellEachTurn) {
  studies::SystemFlow system = two_steps(site::ControlKind::alternating);
  system.control->steps[1].pumps = {"P2"};
  system.control->hoses = {{"D1.a", 0.0005, 0.0006}};
  EXPECT_THAT(words(system), Contains("In its turn P2: 240.0 L/min in total at 195 kPa gauge."));
  EXPECT_THAT(words(system), Contains(HasSubstr("the flow of hose D1.a moves most: 30.0 to 36.0 L/min")));
}

TEST(PumpWords, SayWhetherASpeedHoldsItsPressure) {
  studies::SystemFlow system = two_steps(site::ControlKind::variable_speed);
  system.control->holds = 180 * kilopascal;
  system.control->speed = 0.8;
  system.control->steps.resize(1);
  for (const auto& [held, text] :
       {std::pair{PressureHeld::held, "hold 180 kPa gauge"}, std::pair{PressureHeld::not_reached, "the most it may"},
        std::pair{PressureHeld::passed, "the least it may"},
        std::pair{PressureHeld::not_determined, "is not determined"}}) {
    system.control->held = held;
    EXPECT_THAT(words(system), Contains(HasSubstr(text)));
  }
}

studies::SystemFlow warming_pump() {
  studies::SystemFlow system;
  studies::PumpDuty pump;
  pump.id = "P2";
  pump.running = true;
  pump.opening = studies::PumpOpening{0.002, "D1.regular"};
  pump.heat = studies::PumpHeat{};
  pump.heat->rate = pump.heat->rate_low = pump.heat->rate_high = 10.0 / 60.0;
  pump.heat->time_to_rise = 60.0;
  system.pumps = {pump};
  return system;
}

TEST(PumpWords, SayThatAPumpThatIsOffWouldWarm) {
  studies::SystemFlow system = warming_pump();
  const auto told = [&] { return pumps_in_words(system, site::Display::si, Glyphs::ascii); };
  EXPECT_THAT(told(), Contains(HasSubstr("While pump P2 delivers nothing, its liquid warms by at most 10.0 degC")));
  system.pumps[0].running = false;
  EXPECT_THAT(told(), Contains(HasSubstr("Run while held shut, pump P2 would warm its liquid by at most 10.0 degC")));
  system.pumps[0].heat->rate.reset();
  system.pumps[0].heat->missing = "motor_power";
  EXPECT_THAT(told(), Contains("How fast the liquid in pump P2 would warm, run while held shut, is not determined: "
                               "enter motor_power."));
}

TEST(PumpWords, GiveTemperatureRisesWithoutAZero) {
  const studies::SystemFlow system = warming_pump();
  const auto si = pumps_in_words(system, site::Display::si, Glyphs::ascii);
  EXPECT_THAT(si, Contains(HasSubstr("held shut by its check valve until 120.0 L/min flow in total")));
  EXPECT_THAT(si, Contains(HasSubstr("10.0 degC a minute")));
  EXPECT_THAT(pumps_in_words(system, site::Display::us, Glyphs::ascii), Contains(HasSubstr("18.0 degF a minute")));
}

}  // namespace
}  // namespace forecourse::report
