#include "forecourse/server/answers/station/diagnostics_json.h"
#include "forecourse/server/desk/templates.h"
#include "forecourse/server/http/body.h"
#include "forecourse/server/http/routes.h"

namespace forecourse::server {
namespace {

using report::Json;
using Access = Route::Access;

int status_of(Refusal refusal) {
  switch (refusal) {
    case Refusal::none:
      return 200;
    case Refusal::stale:
      return 409;
    case Refusal::refused:
      return 422;
    case Refusal::there:
      return 409;
    case Refusal::not_there:
      return 404;
    case Refusal::read_only:
      return 403;
    case Refusal::failed:
      return 507;
  }
  return 500;
}

/// The station after a wish, or why it was not granted.
Reply reply_of(const Outcome& outcome) {
  Json station = station_json(outcome.facts);
  if (outcome.refusal == Refusal::none) return json_reply(station);
  Json json{{"error", outcome.error}, {"hint", outcome.hint}};
  if (outcome.refusal == Refusal::stale) json["changed"] = outcome.changed;
  if (outcome.refusal == Refusal::refused) {
    json["diagnostics"] = diagnostics_json(outcome.diagnostics, outcome.facts.text);
  }
  json["station"] = std::move(station);
  return json_reply(json, status_of(outcome.refusal));
}

Reply wrong(const BodyReader& body) { return refusal(400, body.error(), body.hint()); }

Reply edit(Desk& desk, const Call& call) {
  BodyReader body(call.body);
  const int revision = body.revision();
  const std::string label = body.label("label");
  const std::vector<Edit> edits = body.edits(false);
  return body.good() ? reply_of(desk.edit(revision, label, edits)) : wrong(body);
}

Reply replace(Desk& desk, const Call& call) {
  BodyReader body(call.body);
  const int revision = body.revision();
  const std::string label = body.label("label");
  const std::string text = body.text("text");
  return body.good() ? reply_of(desk.replace(revision, label, text)) : wrong(body);
}

/// For what takes a revision alone.
Reply at_revision(Desk& desk, const Call& call, Outcome (Desk::*wish)(int)) {
  BodyReader body(call.body);
  const int revision = body.revision();
  return body.good() ? reply_of((desk.*wish)(revision)) : wrong(body);
}

/// For what takes a name alone.
Reply by_name(Desk& desk, const Call& call, Outcome (Desk::*wish)(const std::string&)) {
  BodyReader body(call.body);
  const std::string name = body.text("name");
  return body.good() ? reply_of((desk.*wish)(name)) : wrong(body);
}

Reply create(Desk& desk, const Call& call) {
  BodyReader body(call.body);
  const std::string name = body.text("name");
  const std::string template_id = body.text("template");
  return body.good() ? reply_of(desk.create(name, template_id)) : wrong(body);
}

Reply sites(const Desk& desk) {
  const Json templates = report::array_of(site_templates(), [](const Template& each) {
    return Json{{"id", each.id}, {"text", each.text}};
  });
  return json_reply({{"names", desk.names()}, {"templates", templates}});
}

}  // namespace

std::vector<Route> site_routes(Desk& desk) {
  return {
      {"GET", "/api/station", Access::open, [&](const Call&) { return json_reply(station_json(desk.facts())); }},
      {"GET", "/api/tables", Access::open, [](const Call&) { return json_reply(tables_json()); }},
      {"GET", "/api/sites", Access::open, [&](const Call&) { return sites(desk); }},
      {"POST", "/api/edit", Access::keyed, [&](const Call& call) { return edit(desk, call); }},
      {"POST", "/api/text", Access::keyed, [&](const Call& call) { return replace(desk, call); }},
      {"POST", "/api/undo", Access::keyed, [&](const Call& call) { return at_revision(desk, call, &Desk::undo); }},
      {"POST", "/api/redo", Access::keyed, [&](const Call& call) { return at_revision(desk, call, &Desk::redo); }},
      {"POST", "/api/open", Access::keyed, [&](const Call& call) { return by_name(desk, call, &Desk::open); }},
      {"POST", "/api/save-as", Access::keyed, [&](const Call& call) { return by_name(desk, call, &Desk::save_as); }},
      {"POST", "/api/new", Access::keyed, [&](const Call& call) { return create(desk, call); }},
  };
}

}  // namespace forecourse::server
