// Every requirement that a study judges, just inside its limit, on it, just outside, and with its input missing.
// Limits are those of the clause that the requirement names. What is entered is changed in the text of a station; what
// is computed is put into the result of the study, where it can lie on the limit itself.
// SOURCE: [cfr_280, 280.20(c), 280.30(a), 280.40(a)(3), 280.41(b), 280.43(a) and (b)(4), 280.44, 280.50(c)(2)]
// SOURCE: [cfr_63_cccccc, 63.11117(b), table 1 (1)(c), (g), (h) and (2)] [cfr_1090_1550, paragraph (b)]
// SOURCE: [osha_1910_106, (b)(3)(iv)] [ifc_2018, 5704.2.7.3.5.3] [nfpa_77_2000, table 7.6] [nist_handbook_44, 3.30]
#include <gtest/gtest.h>

#include <algorithm>
#include <functional>
#include <set>

#include "checks/shop.h"
#include "forecourse/base/api_units.h"
#include "forecourse/checks/flotation_checks.h"
#include "forecourse/checks/flow_checks.h"
#include "forecourse/checks/ledger_checks.h"
#include "forecourse/checks/meter_checks.h"
#include "forecourse/checks/station/check_station.h"
#include "forecourse/checks/tank_checks.h"
#include "forecourse/site/edit.h"
#include "forecourse/site/read.h"
#include "forecourse/studies/flow/flow_cap.h"

namespace forecourse::checks {
namespace {

/// A requirement held against a value; an empty value: it is missing.
struct StudyCase {
  std::string rule;
  std::string what;  ///< that is varied
  std::function<std::vector<Finding>(const std::string& value)> findings;
  std::string inside;
  std::string on;              ///< empty: it is no amount
  std::string outside;         ///< empty: nothing that can be entered falls short
  bool can_be_missing = true;  ///< false: without it there is nothing to judge
};

void PrintTo(const StudyCase& one, std::ostream* out) { *out << one.rule << ", " << one.what; }

double si(const std::string& value) {
  const std::size_t blank = value.find(' ');
  return to_si(std::stod(value.substr(0, blank)), value.substr(blank + 1));
}

std::optional<double> maybe_si(const std::string& value) {
  return value.empty() ? std::nullopt : std::optional(si(value));
}

// ---- what is entered -----------------------------------------------------------------------------------

/// The shop with `old` replaced by `made`, in which '@' is the value; a value that is missing leaves `missing`.
struct Entry {
  std::string old;
  std::string made;
  std::string missing;
  std::vector<Change> first;  ///< changes of the shop before

  [[nodiscard]] site::Site site(const std::string& value) const {
    std::string text = shop;
    for (const Change& change : first) text = changed(text, change);
    std::string with = value.empty() ? missing : made;
    if (const std::size_t at = with.find('@'); at != std::string::npos) with.replace(at, 1, value);
    return test::station(changed(text, {old, with}));
  }
};

/// A value of an inline table, left out with its comma where it is missing.
Entry one_of_several(const std::string& key, const std::string& now, const std::string& quote = "\"",
                     std::vector<Change> first = {}) {
  const std::string old = std::string(", ").append(key).append(" = ").append(now);
  return {old, std::string(", ").append(key).append(" = ").append(quote).append("@").append(quote), "",
          std::move(first)};
}

template <class Check>
StudyCase entered(const char* rule, const char* what, const Entry& entry, Check check, const char* inside,
                  const char* on, const char* outside) {
  const auto findings = [entry, check](const std::string& value) { return check(entry.site(value)); };
  return {rule, what, findings, inside, on, outside, true};
}

std::vector<StudyCase> entered_cases() {
  const Change old_tank{"installed = 2010-01-01", "installed = 2006-11-09"};
  const Entry opens{"opens_at = \"3 inH2O\", ", "opens_at = \"@\", ", "", {}};
  const Entry draws = one_of_several("vacuum_opens_at", "\"8 inH2O\"");
  const Entry valve_day{"vacuum_leak = \"0.21 ft3/h\", tested = 2025-01-01",
                        "vacuum_leak = \"0.21 ft3/h\", tested = @",
                        "vacuum_leak = \"0.21 ft3/h\"",
                        {}};
  const Entry room_day{
      "end = \"1.85 inH2O\", tested = 2025-01-01", "end = \"1.85 inH2O\", tested = @", "end = \"1.85 inH2O\"", {}};
  const Entry back{"{ kind = \"two-point\", ", "{ kind = \"@\", ", "{ ", {}};
  const Entry vent_day{"installed = 2010-01-01\n  outlet",
                       "installed = @\n  outlet",
                       "outlet",
                       {{"restrictor = false", "restrictor = true"},
                        {"capacity = \"10000 gal\"\ninstalled = 2010-01-01", "capacity = \"10000 gal\""}}};
  const Entry restrictor{"restrictor = false",
                         "restrictor = @",
                         "",
                         {{"installed = 2010-01-01\n  outlet", "installed = 2020-01-01\n  outlet"}}};
  const Entry balance{shop.substr(shop.find("vapor_return"), shop.find("  [[tank.fill]]") - shop.find("vapor_return")),
                      "vapor_return = { kind = \"@\" }\n",
                      "",
                      {}};
  const Entry line_day{"tested = 2026-05-02\n[[dispenser]]", "tested = @\n[[dispenser]]", "[[dispenser]]", {}};
  return {
      entered("submerged-fill", "since 10 November 2006", one_of_several("end_above_bottom", "\"5 in\""), vapor_of,
              "5.9 in", "6 in", "6.1 in"),
      entered("submerged-fill", "until 9 November 2006",
              one_of_several("end_above_bottom", "\"5 in\"", "\"", {old_tank}), vapor_of, "11.9 in", "12 in",
              "12.1 in"),
      entered("two-point", "kind", back, vapor_of, "two-point", "", "coaxial"),
      entered("static-pressure-test", "age", room_day, vapor_of, "2023-12-01", "2023-11-30", "2023-11-29"),
      entered("vent-pressure-setting", "least", opens, vapor_of, "2.6 inH2O", "2.5 inH2O", "2.4 inH2O"),
      entered("vent-pressure-setting", "most", opens, vapor_of, "5.9 inH2O", "6 inH2O", "6.1 inH2O"),
      entered("vent-pressure-setting", "age", valve_day, vapor_of, "2023-12-01", "2023-11-30", "2023-11-29"),
      entered("vent-vacuum-setting", "least", draws, vapor_of, "6.1 inH2O", "6 inH2O", "5.9 inH2O"),
      entered("vent-vacuum-setting", "most", draws, vapor_of, "9.9 inH2O", "10 inH2O", "10.1 inH2O"),
      entered("vent-pressure-leak", "leak", one_of_several("pressure_leak", "\"0.05 ft3/h\""), vapor_of, "0.16 ft3/h",
              "0.17 ft3/h", "0.18 ft3/h"),
      entered("vent-vacuum-leak", "leak", one_of_several("vacuum_leak", "\"0.21 ft3/h\""), vapor_of, "0.62 ft3/h",
              "0.63 ft3/h", "0.64 ft3/h"),
      entered("vapor-balance", "whether there is one", balance, vapor_of, "coaxial", "", ""),
      entered("vent-height", "height", {"outlet_elevation = \"13 ft\"", "outlet_elevation = \"@\"", "", {}},
              delivery_of, "12.1 ft", "12 ft", "11.9 ft"),
      entered("vent-size", "bore at 400 gpm over 100 ft", one_of_several("bore", "\"2.067 in\""), delivery_of,
              "1.61 in", "1.5 in", "1.38 in"),
      entered("vent-restrictor", "day", vent_day, delivery_of, "2015-10-12", "2015-10-13", "2015-10-14"),
      entered("vent-restrictor", "whether there is one", restrictor, delivery_of, "false", "", "true"),
      entered("leak-detector-rate", "at 10 psi", {"detects = \"3 gph\", at", "detects = \"@\", at", "at", {}}, lines_of,
              "2.9 gph", "3 gph", "3.1 gph"),
      entered("leak-detector-time", "time", one_of_several("acts_within", "\"1 h\""), lines_of, "59 min", "60 min",
              "61 min"),
      entered("leak-detector-yearly", "day", one_of_several("tested", "2026-05-02", ""), lines_of, "2025-12-01",
              "2025-11-30", "2025-11-29"),
      entered("line-yearly", "day", line_day, lines_of, "2025-12-01", "2025-11-30", "2025-11-29"),
  };
}

// ---- what is computed ----------------------------------------------------------------------------------

std::vector<Finding> drop(const std::function<void(studies::DeliveryResult&)>& put) {
  static const site::Site marle = test::station(
      test::site_text("marle-cross") +
      "\n[operations]\nthroughput = [{ product = \"regular\", per_month = \"100000 gal\" }, { product = \"premium\", "
      "per_month = \"0 gal\" }]\n");
  static const studies::DeliveryResult whole = studies::study_delivery(marle, {});
  studies::DeliveryResult result = whole;
  result.runs.front().tanks.resize(1);
  result.runs.front().drops.resize(1);
  put(result);
  return check_delivery(marle, result);
}

/// A pressure in the truck; where it is missing, one that rests on what is not firm.
void put_pressure(const std::string& value, double sign, double& pressure, studies::DeliveryResult& result) {
  DefaultUsed used;
  used.what = "a curve of the vent valve";
  used.status = DefaultStatus::illustrative;
  if (value.empty()) result.defaults.push_back(used);
  pressure = sign * maybe_si(value).value_or(1000.0);
}

std::vector<Finding> floating(const std::string& value, bool filled) {
  studies::FlotationResult result;
  result.options.filled = filled;
  studies::TankFlotation& tank = result.tanks.emplace_back();
  tank.water_level = 1.0;
  tank.factor_wanted = 1.2;
  auto& state = filled ? tank.filled.emplace() : tank.empty.emplace();
  if (value.empty()) tank.water_level.reset();
  state.factors.hold_down = value.empty() ? 0.0 : std::stod(value);
  return check_flotation(result);
}

std::vector<Finding> strapped(const std::string& value) {
  studies::FlotationResult result;
  studies::TankFlotation& tank = result.tanks.emplace_back();
  tank.has_deadmen = tank.has_strap = true;
  tank.empty.emplace().strap_pull = 5000.0;
  tank.strap_load = maybe_si(value);
  return check_flotation(result);
}

/// A tank with one device.
std::vector<Finding> overfill(const studies::DeviceSet& set) {
  static const site::Site site = test::station(shop);
  studies::TankResult result;
  studies::TankTold& tank = result.tanks.emplace_back();
  tank.id = tank.tank = "T1";
  tank.overfill.has_fill = true;
  tank.overfill.set.push_back(set);
  return check_tanks(site, result);
}

std::vector<Finding> by_share(studies::OverfillDevice device, const std::string& value) {
  studies::DeviceSet set;
  set.device = device;
  set.share = value.empty() ? 0.5 : std::stod(value);
  if (!value.empty()) set.heard = true;
  set.before_full = 30.0;
  set.wets_fitting = true;
  return overfill(set);
}

std::vector<Finding> by_time(studies::OverfillDevice device, const std::string& value) {
  studies::DeviceSet set;
  set.device = device;
  set.share = 0.97;
  set.heard = true;
  set.before_full = maybe_si(value);
  return overfill(set);
}

std::vector<Finding> above_fittings(const std::string& value) {
  studies::DeviceSet set;
  set.device = studies::OverfillDevice::shutoff;
  set.share = 0.97;
  if (!value.empty()) set.wets_fitting = value == "wet";
  return overfill(set);
}

std::vector<Finding> volume_test(const std::string& value) {
  static const site::Site site = test::station(shop);
  studies::LineTestResult result = studies::study_line_test(site, {});
  result.options.drop = 1000.0;
  studies::LineTest& line = result.lines.front();
  line.held = to_si(20.0, "psi");
  line.thermal.firm = true;
  line.pressure_test.pressure = to_si(30.0, "psi");
  if (value.empty()) {
    line.pressure_test.passed.reset();
    return check_line_test(site, result, today);
  }
  line.pressure_test.passed.emplace();
  line.pressure_test.passed->leak.high = si(value);
  return check_line_test(site, result, today);
}

/// A month of 10,000 gal through a tank: its limit is 230 gal.
std::vector<Finding> month(const std::function<void(studies::LedgerMonth&)>& put, bool has_problem = false) {
  studies::LedgerResult result;
  studies::LedgerBook& book = result.books.emplace_back();
  book.name = "T1";
  book.buried = true;
  if (has_problem) book.problem = "no readings of T1";
  studies::LedgerMonth& one = book.months.emplace_back();
  one.limit = to_si(230.0, "gal");
  one.whole = true;
  put(one);
  std::vector<Finding> out = check_ledger(result);
  if (has_problem) out.resize(1);
  return out;
}

std::vector<Finding> gauged(const std::string& week, const std::string& mean) {
  static const studies::LedgerResult of_small = [] {
    const auto read = site::read_site(
        "format = 1\n[[product]]\nid = \"regular\"\nkind = \"gasoline-e0\"\n[[tank]]\nid = \"T1\"\nproduct = "
        "\"regular\"\ncapacity = \"1000 gal\"\nmonitored_by = \"manual-gauging\"\nshape = { kind = "
        "\"horizontal-cylinder\", inside_diameter = \"48 in\", length = \"128 in\", heads = \"flat\" }\n");
    return studies::study_ledger(read.value, {}, {});
  }();
  studies::LedgerResult result = of_small;
  studies::ManualGauging& told = result.gauging.at(0);
  if (!week.empty()) told.tests.emplace_back().change = -si(week);
  if (!mean.empty()) {
    told.tests.emplace_back().change = -si("1 gal");
    told.mean = -si(mean);
  }
  if (told.tests.empty() && !told.rule->alone) told.tests.emplace_back().change = -si("1 gal");
  return check_ledger(result);
}

/// A draw into a 5 gal measure that lies so far below the nominal volume; missing: its temperatures.
std::vector<Finding> proved(const std::string& value, const char* state) {
  static const site::Site site = test::station(shop);
  site::records::Records records;
  site::records::Proving draw;
  draw.at.day = {2026, 10, 14, {}};
  draw.hose.text = "D1.a";
  draw.state.text = state;
  draw.indicated = draw.measure = Volume::from_si(to_si(5.0, "gal"));
  draw.scale = Volume::from_si(-maybe_si(value).value_or(to_si(1.0, "in3")));
  if (!value.empty()) {
    draw.measure_temperature = draw.meter_temperature = draw.reference_temperature =
        Temperature::from_si(kelvin_from_fahrenheit(60.0));
  }
  records.provings.push_back(draw);
  return check_meter(studies::study_meter(site, records, {}, {}));
}

std::vector<Finding> limited(const std::string& value) {
  std::string text = test::with(test::site_text("site-s"), "site.rules", "[\"us-federal\"]");
  if (value.empty()) {
    text = site::remove_value(text, "dispenser.D1.hose.D1.a.lift").value;
  } else {
    text = test::with(text, "dispenser.D1.hose.D1.a.limiter", value);
  }
  const site::Site site = test::station(text);
  std::vector<Finding> out = check_flow(site, studies::study_flow(site, {}));
  std::erase_if(out, [](const Finding& one) { return one.subject != "D1.a"; });
  return out;
}

/// A flow to keep, as a multiple of what the hose gives.
std::vector<Finding> kept(const std::string& value) {
  static const site::Site site = test::station(test::site_text("site-s"));
  static const double gives = [] {
    studies::FlowOptions options;
    options.keep_flow = 1e-6;
    return *check_flow(site, studies::study_flow(site, options)).front().value;
  }();
  studies::FlowOptions options;
  options.keep_flow = gives * (value.empty() ? 1.0 : std::stod(value));
  if (!value.empty()) return check_flow(site, studies::study_flow(site, options));
  const site::Site unknown =
      test::station(site::remove_value(test::site_text("site-s"), "dispenser.D1.hose.D1.a.lift").value);
  return check_flow(unknown, studies::study_flow(unknown, options));
}

std::vector<StudyCase> computed_cases() {
  using studies::OverfillDevice;
  const auto shut = [](const std::string& v) { return by_share(OverfillDevice::shutoff, v); };
  const auto alarm = [](const std::string& v) { return by_share(OverfillDevice::alarm, v); };
  const auto slow = [](const std::string& v) { return by_share(OverfillDevice::restriction, v); };
  const auto alarm_time = [](const std::string& v) { return by_time(OverfillDevice::alarm, v); };
  const auto slow_time = [](const std::string& v) { return by_time(OverfillDevice::restriction, v); };
  const auto room = [](const std::string& v) {
    return drop([&](studies::DeliveryResult& r) {
      studies::DeliveryTank& tank = r.runs.front().tanks.front();
      tank.for_it = std::stod(v) * tank.room_to_95;
    });
  };
  const auto pressure = [](const std::string& v) {
    return drop([&](auto& r) { put_pressure(v, 1.0, r.runs.front().truck.highest_pressure, r); });
  };
  const auto vacuum = [](const std::string& v) {
    return drop([&](auto& r) { put_pressure(v, -1.0, r.runs.front().truck.lowest_pressure, r); });
  };
  const auto start = [](const std::string& v) {
    return drop([&](auto& r) { r.runs.front().drops.front().start_velocity = maybe_si(v); });
  };
  const auto velocity = [](const std::string& v) {
    return drop([&](auto& r) {
      r.runs.front().drops.front().tube_limit = 5.0;
      r.runs.front().drops.front().tube_velocity = maybe_si(v);
    });
  };
  const auto inventory = [](const std::string& v) {
    return month([&](studies::LedgerMonth& one) { one.over_short = -maybe_si(v).value_or(0.0); }, v.empty());
  };
  const auto days = [](const std::string& v) {
    return month([&](studies::LedgerMonth& one) { one.missing_days = v.empty() ? 1 : 0; });
  };
  const auto confirmed = [](const std::string& v) {
    return month([&](studies::LedgerMonth& one) {
      one.follows_whole = !v.empty();
      one.exceeds = v != "within";
      one.confirmed = v == "beyond";
    });
  };
  const auto static_test = [](const std::string& v) {
    const site::Site site = test::station(shop);
    studies::VaporResult result = studies::study_vapor(site, {});
    studies::VaporTests& told = result.tests.at(0);
    if (v.empty()) {
      told.end.reset();
    } else {
      told.end = std::stod(v) * *told.federal_target;
    }
    return check_vapor(site, result, today);
  };
  const auto plain = [](const std::string& v) { return proved(v, "as-found"); };
  const auto adjusted = [](const std::string& v) { return proved(v, "as-left"); };
  return {
      {"overfill-prevention", "shutoff, share", shut, "0.94", "0.95", "0.96", false},
      {"overfill-prevention", "alarm, share; not heard of", alarm, "0.89", "0.90", "0.91"},
      {"overfill-prevention", "restriction, share", slow, "0.89", "0.90", "0.91", false},
      {"overfill-prevention", "alarm, time", alarm_time, "61 s", "60 s", "59 s"},
      {"overfill-prevention", "restriction, time", slow_time, "1801 s", "1800 s", "1799 s"},
      {"overfill-prevention", "shutoff, fittings", above_fittings, "dry", "", "wet"},
      {"delivery-room", "share of the room", room, "0.99", "1", "1.01", false},
      {"truck-pressure", "pressure", pressure, "17.9 inH2O", "18 inH2O", "18.1 inH2O"},
      {"truck-vacuum", "vacuum", vacuum, "5.8 inH2O", "5.9 inH2O", "6 inH2O"},
      {"fill-velocity-start", "velocity", start, "0.99 m/s", "1 m/s", "1.01 m/s"},
      {"fill-velocity", "velocity", velocity, "4.9 m/s", "5 m/s", "5.1 m/s"},
      {"flotation-factor-empty", "factor", [](const auto& v) { return floating(v, false); }, "1.3", "1.2", "1.19"},
      {"flotation-factor-filled", "factor", [](const auto& v) { return floating(v, true); }, "1.3", "1.2", "1.19"},
      {"flotation-strap", "working load", strapped, "5100 N", "5000 N", "4990 N"},
      {"static-pressure-test", "share of the target", static_test, "1.01", "1", "0.99"},
      {"line-tightness-test", "leak that passes", volume_test, "0.09 gph", "0.1 gph", "0.11 gph"},
      {"inventory-month", "over and short", inventory, "229 gal", "230 gal", "231 gal"},
      {"inventory-days", "days with a reading", days, "all", "", ""},
      {"inventory-confirmed", "second month", confirmed, "within", "", "beyond"},
      {"gauging-week", "change", [](const auto& v) { return gauged(v, ""); }, "11.9 gal", "12 gal", "12.1 gal"},
      {"gauging-month", "mean", [](const auto& v) { return gauged("", v); }, "5.9 gal", "6 gal", "6.1 gal"},
      {"meter-error, federal inventory control", "5 gal", plain, "5.9 in3", "6 in3", "6.1 in3"},
      {"meter-error, Handbook 44, 5 gal, maintenance", "5 gal", plain, "5.9 in3", "6 in3", "6.1 in3"},
      {"meter-error, Handbook 44, 5 gal, acceptance", "5 gal", adjusted, "2.9 in3", "3 in3", "3.1 in3"},
      {"nozzle-flow-cap", "limiter", limited, "9.99 gpm", "10 gpm", "10.01 gpm"},
      {"flow-to-keep", "share of the flow", kept, "0.97", "1", "1.01"},
  };
}

std::vector<StudyCase> all_cases() {
  std::vector<StudyCase> out = entered_cases();
  for (StudyCase& one : computed_cases()) out.push_back(std::move(one));
  return out;
}

/// No study judges a requirement of an example station that is tried neither here nor in a test of its own.
TEST(StudyRules, EachHasACase) {
  std::set<std::string> tried{"vent-mixed", "leak-detector", "pump-bypass"};
  for (const StudyCase& one : all_cases()) tried.insert(one.rule);
  for (const char* name : {"hollin-gap", "ludd-bank", "marle-cross", "pell-ridge", "site-s", "thornby", "truck-lane"}) {
    const site::Site site = test::station(test::site_text(name));
    const Studied studied = study_for_checks(site, nullptr, {});
    for (const FindingSet& set : check_station(facts_of(site, studied, today, nullptr), studied, {}).sets) {
      for (const Finding& found : set.findings) {
        const bool is_tried = tried.count(found.rule) + tried.count(found.rule.substr(0, found.rule.rfind('-'))) != 0;
        EXPECT_TRUE(!set.of_study || is_tried) << name << ": " << found.rule;
      }
    }
  }
}

class StudyRule : public testing::TestWithParam<StudyCase> {};

FindingState state(const StudyCase& one, const std::string& value) {
  for (const Finding& finding : one.findings(value)) {
    if (finding.rule == one.rule) return finding.state;
  }
  ADD_FAILURE() << "no finding " << one.rule << " at '" << value << "'";
  return FindingState::does_not_apply;
}

bool met(FindingState state) { return state == FindingState::meets || state == FindingState::close; }

TEST_P(StudyRule, InsideOnOutsideAndMissing) {
  const StudyCase& one = GetParam();
  EXPECT_TRUE(met(state(one, one.inside))) << "inside " << one.inside;
  if (!one.on.empty()) {
    EXPECT_TRUE(met(state(one, one.on))) << "on " << one.on;
  }
  if (!one.outside.empty()) {
    EXPECT_EQ(state(one, one.outside), FindingState::falls_short) << "outside " << one.outside;
  }
  if (one.can_be_missing) {
    EXPECT_EQ(state(one, ""), FindingState::not_determined) << "missing";
  }
}

INSTANTIATE_TEST_SUITE_P(Checks, StudyRule, testing::ValuesIn(all_cases()), [](const auto& one) {
  std::string name = one.param.rule + "_" + std::to_string(one.index);
  std::replace_if(
      name.begin(), name.end(), [](char c) { return std::isalnum(static_cast<unsigned char>(c)) == 0; }, '_');
  return name;
});

}  // namespace
}  // namespace forecourse::checks
