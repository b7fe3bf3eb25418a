#include "forecourse/server/answers/wants/incident_request.h"

#include <charconv>
#include <chrono>

#include "forecourse/server/answers/wants/want_members.h"
#include "forecourse/studies/incident/read_incident_options.h"

namespace forecourse::server {
namespace {

studies::IncidentTexts read_texts(WantReader& want) {
  studies::IncidentTexts texts;
  texts.kind = want.text("kind");
  if (!want.has("kind")) want.refuse("which kind of incident is not said", "give \"kind\": \"struck\"");
  texts.id = want.text("id");
  texts.at = want.text("at");
  if (want.has("open")) texts.open = want.texts("open");
  texts.stop_at = want.text("stop_at");
  texts.counts_for = want.text("for");
  texts.open_area = want.text("open_area");
  texts.without = want.texts("without");
  texts.dead = want.texts("dead");
  texts.runs = want.count("runs").value_or(0);
  texts.seed = want.count("seed").value_or(1);
  return texts;
}

int whole(const std::string& text, std::size_t from, std::size_t size) {
  int out = -1;
  if (text.size() >= from + size) std::from_chars(text.data() + from, text.data() + from + size, out);
  return out;
}

/// Whether parts and hoses are there is told by `check_options` of the study.
Parsed<studies::IncidentOptions> read_options(WantReader& want) {
  Parsed<studies::IncidentOptions> options = studies::read_incident_options(read_texts(want), studies::Asker::page);
  options.value.today = read_day(want);
  return options;
}

/// The same for wants that ask for the same incident, drawn or told.
std::string incident_key(const report::Json& want) {
  using report::Json;
  Json key = Json::object();
  for (const WantMember& member : incident_members) {
    if (member.name != "study" && want.contains(member.name))
      key[std::string(member.name)] = want[std::string(member.name)];
  }
  return key.dump(-1, ' ', false, Json::error_handler_t::replace);
}

}  // namespace

site::Date read_day(WantReader& want) {
  using namespace std::chrono;
  const std::string text = want.text("on");
  year_month_day day{floor<days>(system_clock::now())};
  if (!text.empty()) {
    day = year_month_day{year{whole(text, 0, 4)}, month{static_cast<unsigned>(whole(text, 5, 2))},
                         std::chrono::day{static_cast<unsigned>(whole(text, 8, 2))}};
    if (!day.ok() || text.size() != 10) want.refuse("'on' is a day, but '" + text + "' is written", "write 2026-11-25");
  }
  return {static_cast<int>(day.year()),
          static_cast<int>(static_cast<unsigned>(day.month())),
          static_cast<int>(static_cast<unsigned>(day.day())),
          {}};
}

ToldIncident told_incident(const Asked& asked, WantReader& want) {
  const Parsed<studies::IncidentOptions> options = read_options(want);
  const OpenedSite& opened = asked.shared.opened(read_units(want));
  if (!want.good()) return {nullptr, nullptr, want.problem()};
  if (!options.ok()) return {nullptr, nullptr, refused(options.diagnostics)};
  if (!opened.problem.is_null()) return {nullptr, nullptr, opened.problem};
  const std::vector<Diagnostic> wrong = studies::check_options(opened.site, options.value);
  if (has_error(wrong)) return {nullptr, nullptr, refused(wrong)};
  return {&opened, &asked.shared.incident(opened, incident_key(asked.want), options.value, asked.context), {}};
}

}  // namespace forecourse::server
