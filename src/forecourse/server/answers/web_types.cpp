#include "forecourse/server/answers/web_types.h"

#include <algorithm>
#include <array>
#include <vector>

#include "forecourse/server/answers/wants/study_answers.h"
#include "forecourse/server/answers/wants/want_members.h"
#include "forecourse/studies/incident/options.h"
#include "forecourse/studies/incident/read_incident_options.h"

namespace forecourse::server {
namespace {

constexpr auto diagnostic = std::to_array<TypeMember>({{"severity", "\"error\" | \"warning\" | \"note\""},
                                                       {"message", "string"},
                                                       {"hint", "string"},
                                                       {"line", "number", "From 1; 0: at no place."},
                                                       {"column", "number"},
                                                       {"length", "number", "In characters."},
                                                       {"path", "string | null"}});
constexpr auto field = std::to_array<TypeMember>(
    {{"key", "string"},
     {"in", "string | null", "Name of the table that has the key; see Tables. Null: none has it."},
     {"path?", "string", "Where it is not that of the part, a dot and the key."},
     {"text?", "string", "As typed; missing: not entered."},
     {"us?", "string"},
     {"si?", "string"},
     {"line?", "number"},
     {"problem?", "string"}});
constexpr auto table_key = std::to_array<TypeMember>({{"key", "string"},
                                                      {"kind", "string"},
                                                      {"table", "string | null"},
                                                      {"required", "boolean"},
                                                      {"choices", "string[] | null"},
                                                      {"help", "string"},
                                                      {"names?", "string", "What it names; see StationTold.ids."}});
constexpr auto position = std::to_array<TypeMember>({{"x_m", "number"}, {"y_m", "number"}});
constexpr auto part = std::to_array<TypeMember>({{"path", "string"},
                                                 {"kind", "string"},
                                                 {"id", "string"},
                                                 {"stop", "number | null", "Of the eleven of the course."},
                                                 {"product", "string | null"},
                                                 {"of", "string | null", "Path of the part it belongs to."},
                                                 {"position", "Position | null"},
                                                 {"fields", "FieldTold[]"}});
constexpr auto product =
    std::to_array<TypeMember>({{"id", "string"}, {"tone", "\"regular\" | \"premium\" | \"diesel\""}});
constexpr auto station =
    std::to_array<TypeMember>({{"revision", "number"},
                               {"file", "string"},
                               {"name", "string"},
                               {"display", "Units"},
                               {"text", "string"},
                               {"editable", "boolean"},
                               {"undo", "string | null"},
                               {"redo", "string | null"},
                               {"diagnostics", "Diagnostic[]"},
                               {"products", "Product[]"},
                               {"parts", "PartTold[]"},
                               {"ids", "Record<string, string[]>", "Those that a key may name, by TableKey.names."}});
constexpr auto drawing_answer_shape = std::to_array<TypeMember>({{"svg", "string"}, {"remarks", "string[]"}});
constexpr auto error_answer_shape = std::to_array<TypeMember>({{"error", "string"}, {"hint", "string"}});

constexpr auto shapes = std::to_array<TypeShape>({{"Diagnostic", diagnostic},
                                                  {"FieldTold", field},
                                                  {"TableKey", table_key},
                                                  {"Position", position},
                                                  {"PartTold", part},
                                                  {"Product", product},
                                                  {"StationTold", station},
                                                  {"DrawingAnswer", drawing_answer_shape},
                                                  {"ErrorAnswer", error_answer_shape}});

using Words = std::vector<std::string>;

/// "export type Name = "a" | "b";", on several lines where it is long.
std::string closed_list(std::string_view name, const Words& words) {
  constexpr std::size_t longest = 120;
  std::string all;
  std::string lines;
  for (const std::string& word : words) {
    all += (all.empty() ? "\"" : " | \"") + word + "\"";
    lines += "\n  | \"" + word + "\"";
  }
  const std::string begin = "export type " + std::string(name) + " =";
  return (begin.size() + all.size() + 2 > longest ? begin + lines : begin + " " + all) + ";\n";
}

std::string interface(const TypeShape& shape) {
  std::string out = "export interface " + std::string(shape.name) + " {\n";
  for (const TypeMember& member : shape.members) {
    if (!member.help.empty()) out += "  /** " + std::string(member.help) + " */\n";
    out += "  " + std::string(member.name) + ": " + std::string(member.type) + ";\n";
  }
  return out + "}\n";
}

/// The first member says which want it is.
std::string interface(const WantShape& shape) {
  std::string out = "export interface " + std::string(shape.name) + " {\n";
  for (const WantMember& member : shape.members) {
    const bool needed = &member == shape.members.data();
    out += "  " + std::string(member.name) + (needed ? ": " : "?: ") + std::string(member.type) + ";\n";
  }
  return out + "}\n";
}

/// Drawings of a flow: all but those that have a want of their own.
Words flow_drawings() {
  Words out;
  for (const std::string& word : drawing_words()) {
    const bool of_its_own = std::any_of(want_shapes.begin(), want_shapes.end(), [&](const WantShape& shape) {
      const WantMember& first = shape.members.front();
      return first.name == "drawing" && first.type.find('"' + word + '"') != std::string_view::npos;
    });
    if (!of_its_own) out.push_back(word);
  }
  return out;
}

}  // namespace

std::span<const TypeShape> told_shapes() { return shapes; }

std::string web_types() {
  std::string out = "// Made by tools/fresh.sh from src/forecourse/server/answers/; not to be changed here.\n";
  out += "export type { Field, Part, Station } from \"./station\";\n";
  out += closed_list("Units", {"us", "si"});
  for (const TypeShape& shape : shapes) out += interface(shape);
  out += "/** The keys of every table, by its name. */\nexport type Tables = Record<string, TableKey[]>;\n";
  out += "export type Edit = { path: string; value: string } | { path: string; remove: true } | { append: string };\n";
  out += "/** \"all\", \"each\", \"none\", ids parted by commas, a list of ids, or a list of such lists. */\n";
  out += "export type OpenSets = string | string[] | string[][];\n";
  out += closed_list("FlowPart", flow_part_words()) + closed_list("FlowDrawing", flow_drawings()) +
         closed_list("IncidentKind", studies::incident_kind_words()) + closed_list("Barrier", studies::barrier_words());
  for (const WantShape& shape : want_shapes) out += interface(shape);
  out += "export type KnownWant =";
  for (const WantShape& shape : want_shapes) out += "\n  | " + std::string(shape.name);
  out +=
      ";\n/** One that is put together while the page runs may be of any; the program refuses what it does not know. "
      "*/\n";
  return out + "export type Want = { units?: Units } & Record<string, unknown>;\n";
}

}  // namespace forecourse::server
