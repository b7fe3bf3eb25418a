#include <array>
#include <exception>
#include <string>
#include <utility>

#include "forecourse/server/answers/wants/study_answers.h"

// The engine for a page that has no program to ask: compiled to WebAssembly, asked in JSON.

namespace {

using forecourse::report::Json;
using forecourse::server::Asked;

/// What can be asked for. Each answers as the command of its name does with --json, and takes the options that the
/// workbench's page gives it (server/answers/wants/want_members.h).
constexpr std::array<std::pair<const char*, Json (*)(const Asked&)>, 3> studies{
    {{"flow", forecourse::server::flow_answer},
     {"incident", forecourse::server::incident_answer},
     {"lesson", forecourse::server::lesson_answer}}};

std::string taken(Json& request, const char* key, const char* otherwise) {
  const auto found = request.find(key);
  if (found == request.end()) return otherwise;
  std::string out = found->is_string() ? found->get<std::string>() : otherwise;
  request.erase(found);
  return out;
}

Json answer(Json request) {
  if (!request.is_object()) {
    return forecourse::server::refused("a request is an object",
                                       R"(write {"site": "...", "study": "flow"}, the site as the text of its file)");
  }
  const std::string text = taken(request, "site", "");
  const std::string file = taken(request, "file", "station.toml");
  std::string known;
  for (const auto& [name, answerer] : studies) {
    if (request.value("study", Json()) == name) {
      forecourse::server::SharedStudies shared(text, file);
      const forecourse::Context alone;  // one thread, and nobody waits for how far it is
      const forecourse::server::RecordsOf none;
      return answerer({text, file, request, alone, shared, none});
    }
    known.append(known.empty() ? "" : ", ").append(name);
  }
  return forecourse::server::refused("there is no such study here", "there are: " + known);
}

}  // namespace

/// Answers {"site": text, "file": its name, "study": name, options...} as `forecourse::server::answer` does.
///
/// \return {"document": ...} or {"error": ..., "hint": ...}; it stays until the next request
extern "C" const char* forecourse_ask(const char* request) {
  static std::string out;
  Json told;
  try {
    told = answer(Json::parse(request, nullptr, false));
  } catch (const std::exception& fault) {
    told = forecourse::server::refused(std::string("our fault: ") + fault.what(), "keep the request, and report it");
  }
  out = told.dump(-1, ' ', false, Json::error_handler_t::replace);
  return out.c_str();
}
