// The command `incident`: what it refuses and how, what it writes, and that a trace is run again bit for bit.
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "cli/program.h"

namespace forecourse::cli {
namespace {

using nlohmann::ordered_json;

Outcome run_in_sites(const std::string& arguments) {
  return run_program(SITES_DIR, arguments, "COLUMNS=100 LC_ALL=C.UTF-8");
}

/// A wrong call: nothing on standard output, this on standard error.
struct WrongIncident {
  const char* name;
  const char* arguments;
  const char* told;
};

class Incident : public testing::TestWithParam<WrongIncident> {};

TEST_P(Incident, TellsAWrongCallAndEndsWithTwo) {
  const Outcome outcome = run_in_sites(GetParam().arguments);
  EXPECT_EQ(outcome.exit, 2);
  EXPECT_EQ(outcome.out, "");
  EXPECT_EQ(outcome.err, GetParam().told);
}

constexpr const char* barriers =
    "there are: shear-valve, upper-poppet, crack-trip, fusible-link, breakaway, sump-sensor, leak-detector, "
    "emergency-stop, check-valve, sump, overfill-valve, overfill-alarm, driver\n";

const std::string unknown_barrier =
    std::string("error: there is no barrier 'shear-vlave'\n  hint: did you mean 'shear-valve'? ") + barriers;

INSTANTIATE_TEST_SUITE_P(
    WrongCalls, Incident,
    testing::Values(
        WrongIncident{"kind", "incident site-s.toml sruck",
                      "error: there is no kind of incident 'sruck'\n  hint: did you mean 'struck'? there are: struck, "
                      "drive-off, sump-fire, crack, line-break, overfill, nozzle-left-open\n"},
        WrongIncident{"barrier", "incident site-s.toml struck --without shear-vlave", unknown_barrier.c_str()},
        WrongIncident{"barrier_that_it_does_not_meet",
                      "incident site-s.toml line-break --at trunk --without fusible-link",
                      "error: the incident 'line-break' does not meet a fusible-link\n"
                      "  hint: those that it meets: leak-detector, emergency-stop, check-valve\n1 error\n"},
        WrongIncident{"opening_below_nothing", "incident site-s.toml line-break --at trunk --open-area '-3 mm2'",
                      "error: an open area of nothing or less lets nothing out\n"
                      "  hint: give --open-area an area above zero\n1 error\n"},
        WrongIncident{"place", "incident site-s.toml struck --at D4",
                      "error: 'D4' is no dispenser or inlet, where the incident 'struck' happens\n"
                      "  hint: did you mean 'D1'?\n1 error\n"},
        WrongIncident{"line_for_a_strike", "incident site-s.toml struck --at trunk",
                      "error: 'trunk' is no dispenser or inlet, where the incident 'struck' happens\n"
                      "  hint: there are: D1, D1.regular, D2, D2.regular, D3, D3.regular\n1 error\n"},
        WrongIncident{"no_place", "incident site-s.toml line-break",
                      "error: where it happens is not said\n"
                      "  hint: add --at with a line: there are: trunk, gap-1, gap-2\n1 error\n"},
        WrongIncident{"hose", "incident site-s.toml struck --open D1.a,D1b",
                      "error: there is no hose 'D1b'\n  hint: did you mean 'D1.b'?\n1 error\n"},
        WrongIncident{"hose_at_the_struck_dispenser", "incident site-s.toml struck --open D3.a",
                      "error: hose 'D3.a' is at the struck dispenser and cannot be open elsewhere\n"
                      "  hint: name hoses of other dispensers\n1 error\n"},
        WrongIncident{"stop_before_zero", "incident site-s.toml struck --stop-at '-5 s'",
                      "error: the pumps are stopped before the incident\n"
                      "  hint: count --stop-at from the incident on\n1 error\n"},
        WrongIncident{"counting_for_no_time", "incident site-s.toml struck --for '0 s'",
                      "error: counting ends before it begins\n  hint: give --for a time above zero\n1 error\n"},
        WrongIncident{"time_of_wrong_unit", "incident site-s.toml struck --stop-at '5 psi'",
                      "error: --stop-at is a time, but 'psi' is a pressure\n  hint: write \"45 s\" or \"2 h\"\n"},
        WrongIncident{"crack_without_a_reading", "incident site-s.toml crack --at D3",
                      "error: how much the crack leaks is not said\n"
                      "  hint: add a reading to [[incident]]: [[incident.reading]] rate = \"3 gph\", at = \"10 psi\"; "
                      "or --open-area\n1 error\n"},
        WrongIncident{"day_that_is_none", "incident site-s.toml struck --on 2026-02-30",
                      "error: --on is a day, but '2026-02-30' is written\n  hint: write 2026-11-25\n"},
        WrongIncident{"pdf_without_folder", "incident site-s.toml struck --pdf",
                      "error: --pdf needs --out, the folder to write into\n"},
        WrongIncident{"trace_that_is_none", "incident site-s.toml struck --replay site-s.toml",
                      "error: 'site-s.toml' holds no runs of an incident\n"
                      "  hint: give the .json that --out has written\n"},
        WrongIncident{"trace_that_is_not_there", "incident site-s.toml struck --replay nowhere.json",
                      "nowhere.json: error: cannot be read (not there, or no permission)\n"}),
    [](const auto& tested) { return std::string(tested.param.name); });

TEST(IncidentCommand, HelpShowsTheWholeCallAndEveryBarrier) {
  const std::string help = run_in_sites("incident --help").out;
  EXPECT_NE(help.find("Usage: forecourse incident [OPTIONS] SITE KIND"), std::string::npos);
  for (const char* barrier : {"shear-valve", "sump-sensor", "overfill-alarm"})
    EXPECT_NE(help.find(barrier), std::string::npos) << barrier;
}

TEST(IncidentCommand, APartOfABarriersNameIsOfferedTheWhole) {
  EXPECT_NE(run_in_sites("incident site-s.toml struck --without link").err.find("did you mean 'fusible-link'?"),
            std::string::npos);
}

TEST(IncidentCommand, AnIncidentWithoutAnIdCannotBeNamed) {
  EXPECT_NE(
      run_in_sites("incident site-s.toml struck --set incident.struck.along='20 %'").err.find("has an id: give it one"),
      std::string::npos);
}

TEST(IncidentCommand, BeginsWithWhatToDo) {
  const Outcome outcome = run_in_sites("incident site-s.toml struck");
  EXPECT_EQ(outcome.exit, 0);
  EXPECT_EQ(outcome.err, "");
  EXPECT_EQ(outcome.out.find("  If it has happened: Stop the pump. Clear people away. Call the fire service.\n"), 0U);
}

TEST(IncidentCommand, TwoRunsWithOneSeedPrintTheSame) {
  const std::string call = "incident site-s.toml struck --runs 300 --seed 5 --json";
  const std::string first = run_in_sites(call).out;
  EXPECT_EQ(first, run_in_sites(call).out);
  const ordered_json json = ordered_json::parse(first);
  EXPECT_EQ(json["study"], "incident");
  EXPECT_EQ(json["options"]["seed"], 5);
  EXPECT_EQ(json["result"]["spread"]["runs"], 300);
}

TEST(IncidentCommand, OpenNoneIsNoHoseWhateverTheFileSays) {
  const auto open = [](const std::string& options) {
    const Outcome outcome = run_in_sites("incident hollin-gap.toml struck --json" + options);
    return ordered_json::parse(outcome.out)["options"]["open"];
  };
  EXPECT_EQ(open(""), ordered_json({"D1.regular-a", "D2.regular-a"}));
  EXPECT_EQ(open(" --open none"), ordered_json::array());
}

/// A folder with the trace of a strike with its own options.
std::string traced() {
  const std::string folder = scratch_folder("incident_trace");
  const Outcome outcome = run_in_sites(
      "incident site-s.toml struck --on 2026-11-25 --set pump.P1.check_valve=true --stop-at '20 s' --for '2 min' "
      "--without sump-sensor --dead 'shear-valve=1 s' --open D1.a --runs 200 --seed 7 --out " +
      quoted(folder));
  EXPECT_EQ(outcome.exit, 0) << outcome.err;
  return folder + "/incident-struck.json";
}

TEST(IncidentCommand, ATraceIsRunAgainWithItsOwnOptionsBitForBit) {
  const Outcome again = run_in_sites("incident site-s.toml struck --replay " + quoted(traced()));
  EXPECT_EQ(again.exit, 0);
  EXPECT_EQ(again.err, "");
  EXPECT_EQ(again.out.find("differs"), std::string::npos) << again.out;
  EXPECT_NE(again.out.find("the same: without sump sensor; shear valve dead at first\n"), std::string::npos);
  EXPECT_NE(again.out.find("the same: 200 runs with drawn inputs\n"), std::string::npos);
  EXPECT_NE(again.out.find("Every run is the same, event by event.\n"), std::string::npos);
}

TEST(IncidentCommand, ATraceThatDiffersIsToldWhereAndEndsWithOne) {
  const std::string trace = quoted(traced());
  const Outcome later = run_in_sites("incident site-s.toml struck --stop-at '12 s' --replay " + trace);
  EXPECT_EQ(later.exit, 1);
  EXPECT_NE(later.out.find("differs:  without sump sensor; shear valve dead at first\n          from line "),
            std::string::npos)
      << later.out;
  const Outcome other = run_in_sites("incident site-s.toml crack --replay " + trace);
  EXPECT_EQ(other.exit, 2);
  EXPECT_NE(other.err.find("is of the kind 'struck', not 'crack'"), std::string::npos);
}

TEST(IncidentCommand, ATestOfMoreThanAYearAgoDoesNotAssure) {
  // The valve of site S was tested on 2026-03-12, and so was the sensor.
  const auto sensor_on = [](const std::string& day) {
    const Outcome outcome = run_in_sites("incident site-s.toml struck --json --on " + day);
    const ordered_json json = ordered_json::parse(outcome.out);
    for (const auto& barrier : json["result"]["barriers"]) {
      if (barrier["barrier"] == "sump-sensor") return barrier["state"].get<std::string>();
    }
    return std::string("none");
  };
  EXPECT_EQ(sensor_on("2026-11-25"), "assured");
  EXPECT_EQ(sensor_on("2027-11-25"), "not assured");
}

TEST(IncidentCommand, WritesAPageAndItsData) {
  const std::string folder = scratch_folder("incident_out");
  EXPECT_EQ(run_in_sites("incident hollin-gap.toml sump-fire --out " + quoted(folder)).exit, 0);
  EXPECT_NE(file_text(folder + "/incident-sump-fire.html").find("Stop the pump."), std::string::npos);
  const ordered_json json = ordered_json::parse(file_text(folder + "/incident-sump-fire.json"));
  EXPECT_EQ(json["cautions"][0], "Stop the pump. Clear people away. Call the fire service.");
}

TEST(IncidentCommand, TheStudyOfAStationTellsItsIncidents) {
  const std::string folder = scratch_folder("incident_study");
  (void)run_in_sites("study site-s.toml --out " + quoted(folder));
  EXPECT_NE(file_text(folder + "/report.html").find("Struck at D3"), std::string::npos);
  EXPECT_NE(file_text(folder + "/incident-1-struck.json"), "");
}

}  // namespace
}  // namespace forecourse::cli
