#include <array>
#include <span>
#include <string>
#include <utility>
#include <vector>

#include "forecourse/base/nearest_word.h"
#include "forecourse/server/answers/answers.h"
#include "forecourse/server/answers/wants/study_answers.h"
#include "forecourse/server/answers/wants/want_reader.h"

namespace forecourse::server {
namespace {

using report::Json;
using Answerer = Json (*)(const Asked&);

constexpr std::array<std::pair<const char*, Answerer>, 16> studies_known{{{"flow", flow_answer},
                                                                          {"containment", containment_answer},
                                                                          {"tank", tank_answer},
                                                                          {"flotation", flotation_answer},
                                                                          {"vapor", vapor_answer},
                                                                          {"delivery", delivery_answer},
                                                                          {"incident", incident_answer},
                                                                          {"line-test", line_test_answer},
                                                                          {"ledger", ledger_answer},
                                                                          {"meter", meter_answer},
                                                                          {"findings", findings_answer},
                                                                          {"mends", mends_answer},
                                                                          {"calendar", calendar_answer},
                                                                          {"kit", kit_answer},
                                                                          {"lesson", lesson_answer},
                                                                          {"compare", compare_answer}}};

Json unknown_study(const std::string& study) {
  const std::vector<std::string> known = study_words();
  std::string all;
  for (const std::string& name : known) all.append(all.empty() ? "" : ", ").append(name);
  const auto near = nearest_word(study, std::span<const std::string>(known));
  return refused("there is no study '" + study + "'",
                 (near ? "did you mean '" + std::string(*near) + "'? " : "") + "there are: " + all);
}

Json answer_to(const Asked& asked) {
  const Json& want = asked.want;
  if (!want.is_object() || want.contains("study") == want.contains("drawing")) {
    return refused("a want has either a study or a drawing", "write {\"study\": \"flow\"} or {\"drawing\": \"plan\"}");
  }
  if (want.contains("drawing")) return drawing_answer(asked);
  if (!want["study"].is_string()) return refused("'study' is a text", "write it in quotes");
  const auto study = want["study"].get<std::string>();
  for (const auto& [name, answerer] : studies_known) {
    if (study == name) return answerer(asked);
  }
  return unknown_study(study);
}

}  // namespace

std::vector<std::string> study_words() {
  std::vector<std::string> out;
  out.reserve(studies_known.size());
  for (const auto& [name, answerer] : studies_known) out.emplace_back(name);
  return out;
}

Answers::Answers(std::string text, std::string file, RecordsOf records)
    : text_(std::move(text)),
      file_(std::move(file)),
      records_(std::move(records)),
      shared_(std::make_unique<SharedStudies>(text_, file_)) {}

Answers::~Answers() = default;

Json Answers::answer(const Json& want, const Context& context) {
  return answer_to(Asked{text_, file_, want, context, *shared_, records_});
}

Json answer(const std::string& text, const std::string& file, const Json& want, const Context& context,
            const RecordsOf& records) {
  return Answers(text, file, records).answer(want, context);
}

}  // namespace forecourse::server
