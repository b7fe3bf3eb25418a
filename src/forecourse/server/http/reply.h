#pragma once

#include <string>

#include "forecourse/report/json_document.h"

namespace forecourse::server {

/// What the server answers.
struct Reply {
  int status = 200;
  std::string body;
  std::string type = "application/json";
  std::string saved_as;  ///< name under which a browser saves it; empty: it shows it
};

/// A JSON answer; bytes that are no UTF-8 as U+FFFD.
[[nodiscard]] Reply json_reply(const report::Json& json, int status = 200);

/// A refusal: what is wrong, and what to do about it.
[[nodiscard]] Reply refusal(int status, const std::string& error, const std::string& hint = {});

}  // namespace forecourse::server
