#include "forecourse/lesson/failures/published_hole.h"

#include <numbers>

#include "forecourse/lesson/failures/scene.h"
#include "forecourse/studies/line_test/line_test.h"

namespace forecourse::lesson {

PublishedHole published_hole(const site::Site& site, const std::string& product) {
  studies::LineTestOptions options;
  options.product = product;
  site::Site with_detectors = site;  // the study tells the hole with a leak detector alone
  for (site::Pump& pump : with_detectors.pumps) {
    if (!pump.leak_detector) pump.leak_detector.emplace();
  }
  const studies::LineTestResult result = studies::study_line_test(with_detectors, options);
  PublishedHole out;
  for (const studies::LineTest& line : result.lines) {
    for (const studies::DetectorTold& detector : line.detectors) {
      if (!(detector.orifice > 0.0)) continue;
      out.diameter = detector.orifice;
      out.area = exact(0.25 * std::numbers::pi * out.diameter * out.diameter, "m2");
      return out;
    }
  }
  out.problem =
      "how much it leaks is not said: add an [[incident]] with a reading { rate = \"3 gph\", at = \"10 psi\" }";
  return out;
}

}  // namespace forecourse::lesson
