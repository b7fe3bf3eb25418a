#include "forecourse/studies/read_options.h"

#include <algorithm>

namespace forecourse::studies {

std::string option_name(std::string_view word, Asker asker) {
  std::string name(word);
  if (asker == Asker::page) return name;
  std::replace(name.begin(), name.end(), '_', '-');
  return "--" + name;
}

Diagnostic wrong_option(const std::string& option, const UnitTextError& wrong) {
  return {Severity::error, option + " " + wrong.message, std::nullopt, wrong.hint, {}};
}

}  // namespace forecourse::studies
