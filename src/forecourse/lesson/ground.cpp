#include "forecourse/lesson/ground.h"

namespace forecourse::lesson {

Studies make_studies(const site::Site& site, const site::Date& today, const Context& context) {
  Studies out;
  out.studied = checks::study_for_checks(site, nullptr, context);
  out.checks = checks::check_station(checks::facts_of(site, out.studied, today, nullptr), out.studied);
  return out;
}

}  // namespace forecourse::lesson
