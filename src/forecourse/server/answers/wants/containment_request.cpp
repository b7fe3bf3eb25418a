#include "forecourse/server/answers/wants/containment_request.h"

#include "forecourse/studies/read_options.h"

namespace forecourse::server {
namespace {

/// A quantity above zero; what it is in SI.
template <class Q>
double positive(WantReader& want, const char* word, const std::string& text) {
  const Parsed<site::Maybe<Q>> read = studies::read_option<Q>(word, text, studies::Asker::page);
  const double value = read.value ? read.value->likely.si() : 0.0;
  if (!read.ok()) {
    want.refuse(read.diagnostics.front().message, read.diagnostics.front().hint);
  } else if (!(value > 0.0)) {
    want.refuse(std::string(word) + " is above zero, but '" + text + "' is written", "");
  }
  return value;
}

}  // namespace

studies::ContainmentOptions read_containment_want(WantReader& want) {
  studies::ContainmentOptions options;
  for (const std::string& text : want.texts("inflows")) {
    options.inflows.push_back(positive<VolumeFlow>(want, "inflows", text));
  }
  if (const std::string text = want.text("sensor_dead_for"); !text.empty()) {
    options.sensor_dead_for = positive<Duration>(want, "sensor_dead_for", text);
  }
  return options;
}

}  // namespace forecourse::server
