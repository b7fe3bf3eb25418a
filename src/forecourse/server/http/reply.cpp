#include "forecourse/server/http/reply.h"

namespace forecourse::server {

using report::Json;

Reply json_reply(const Json& json, int status) {
  return {status, json.dump(-1, ' ', false, Json::error_handler_t::replace), "application/json", {}};
}

Reply refusal(int status, const std::string& error, const std::string& hint) {
  return json_reply({{"error", error}, {"hint", hint}}, status);
}

}  // namespace forecourse::server
