#include "forecourse/studies/incident/after/return_to_service.h"

#include <algorithm>
#include <utility>

namespace forecourse::studies {
namespace {

constexpr const char* licensed = "licensed contractor";
constexpr const char* tester = "certified tester";
constexpr const char* electrician = "licensed electrician";
constexpr const char* operated = "operator";
constexpr const char* weights = "weights-and-measures officer";
constexpr const char* practice = "common practice, no source";
/// \source [rp1200_17, section 10]
constexpr const char* shear_valves = "RP1200-17, section 10 (read in scans of the text)";
constexpr const char* line_test = "40 CFR 280.44(b): 0.1 gal/h at 1.5 times operating pressure";
constexpr const char* detector_test = "40 CFR 280.44(a), 280.40(a)(3): 3 gal/h at 10 psi within an hour";
constexpr const char* repairs = "40 CFR 280.33(d): within 30 days of a repair";
constexpr const char* reporting =
    "40 CFR 280.53: more than 25 gal, or a sheen: report within 24 hours (read by way of a state's text)";
constexpr const char* sumps = "RP1200-17, section 6 (read in scans of the text)";
constexpr const char* drive_off_steps =
    "an order on vapor recovery, procedure after a drive-off (read in a stored copy)";

class Steps {
 public:
  explicit Steps(const Scene& scene) : s_(scene) {}

  std::vector<ReturnStep> all() {
    switch (s_.options.kind) {
      case IncidentKind::struck:
        struck();
        break;
      case IncidentKind::drive_off:
        drive_off();
        break;
      case IncidentKind::sump_fire:
        fire();
        break;
      case IncidentKind::crack:
        crack();
        break;
      case IncidentKind::line_break:
        line_break();
        break;
      case IncidentKind::overfill:
        overfill();
        break;
      case IncidentKind::nozzle_left_open:
        nozzle();
        break;
    }
    spill();
    return std::move(steps_);
  }

 private:
  void replace(const char* what, const char* by, const char* source) {
    steps_.push_back({what, "replace", by, source});
  }
  void inspect(const char* what, const char* by, const char* source) {
    steps_.push_back({what, "inspect", by, source});
  }
  void test(const char* what, const char* by, const char* source) { steps_.push_back({what, "test", by, source}); }

  [[nodiscard]] bool has_valve() const {
    return std::any_of(s_.ground.ends.begin(), s_.ground.ends.end(),
                       [](const EndGround& end) { return end.inlet != nullptr && end.inlet->shear_valve; });
  }
  [[nodiscard]] bool has_detector() const {
    return std::any_of(s_.ground.ends.begin(), s_.ground.ends.end(),
                       [&](const EndGround& end) { return detector_of(s_, end) != nullptr; });
  }

  void before_fuel_flows() {
    test("the line is tested for tightness before fuel flows", tester, line_test);
    if (has_detector()) test("the leak detector is tested with a simulated leak", tester, detector_test);
    if (s_.ground.sump != nullptr) {
      inspect("the sump is emptied, cleaned and looked at for damage; entry needs its own permit", licensed, sumps);
      test("the sump is tested for tightness", tester, repairs);
    }
  }

  void after_the_blow() {
    if (has_valve()) {
      replace("the two-piece top of the shear valve; not its body, unless that fails inspection", licensed, practice);
      inspect("the body of the shear valve, its anchorage and the stabilizer bar", licensed, shear_valves);
      test("the shear valve is tripped, and nothing may flow then", tester, shear_valves);
    }
    inspect("risers and flexible connectors, from the island down to the line", licensed, practice);
    inspect("the dispenser's wiring and its bonding, before power returns", electrician, practice);
    test("the meters are checked, and sealed again where a seal was broken", weights, practice);
  }

  void struck() {
    after_the_blow();
    before_fuel_flows();
  }

  void drive_off() {
    const site::Hose* hose = s_.ground.ends.empty() ? nullptr : s_.ground.ends.front().hose;
    const bool again = hose != nullptr && hose->parting && hose->parting->reconnectable.value_or(false);
    if (again) {
      inspect("the breakaway, and join it again as its listing says", licensed, drive_off_steps);
    } else {
      replace("the breakaway", licensed, practice);
    }
    inspect("whip hose, curb hose, swivel and nozzle, for damage by the pull", licensed, practice);
    test(
        "the hose is purged of at least 2 gal, and its display must not creep for 2 min while it is pulled and twisted",
        licensed, drive_off_steps);
    if (has_valve()) {
      inspect("the shear valve and its anchorage, after a drive-off too", licensed, shear_valves);
      test("the shear valve is tripped, and nothing may flow then", tester, shear_valves);
    }
    inspect("the dispenser's foot and anchorage; if it moved, the steps after a strike apply too", licensed, practice);
  }

  void fire() {
    after_the_blow();
    replace("the fusible link", licensed, practice);
    replace("seals, hoses and plastic parts that the heat has reached", licensed, practice);
    before_fuel_flows();
  }

  void crack() {
    if (has_valve()) {
      replace("the part that is cracked: the two-piece top of the shear valve, or the whole valve", licensed, practice);
      inspect("the anchorage and what loaded the groove: a riser under tension, a settled island", licensed, practice);
      test("the shear valve is tripped, and nothing may flow then", tester, shear_valves);
    }
    before_fuel_flows();
    inspect("the sump's sensor and its interlock: did it tell?", licensed, practice);
  }

  void line_break() {
    replace("the length of line that is cut, with joints that its listing allows", licensed, practice);
    before_fuel_flows();
    test("the space between two walls, where there is one", tester, repairs);
  }

  void overfill() {
    inspect("the overfill valve and the alarm: why did they not stop it in time?", licensed, practice);
    test("the overfill valve and the alarm", tester, "40 CFR 280.35: every three years, and after a repair (280.33)");
    inspect("the spill container is emptied and looked at for damage", operated, practice);
    test("the spill container for tightness", tester, repairs);
  }

  void nozzle() {
    inspect("the nozzle and its automatic shutoff; replace it if it does not stop", licensed, practice);
    test("the nozzle stops by itself in a test can", licensed, practice);
  }

  void spill() {
    const char* what =
        "fuel outside the containment is contained and cleaned up, and the authority told where the quantity asks it";
    steps_.push_back({what, "report", operated, reporting});
  }

  const Scene& s_;
  std::vector<ReturnStep> steps_;
};

}  // namespace

std::vector<ReturnStep> return_to_service(const Scene& scene) { return Steps(scene).all(); }

}  // namespace forecourse::studies
