#include "forecourse/handover/drawings/drawings.h"

#include <span>
#include <utility>

#include "forecourse/base/nearest_word.h"
#include "forecourse/handover/drawings/course.h"
#include "forecourse/handover/drawings/plan.h"
#include "forecourse/handover/drawings/section.h"
#include "forecourse/handover/drawings/sheet.h"

namespace forecourse::handover {
namespace {

Diagnostic error(const std::string& message, const std::string& hint) {
  return {Severity::error, message, std::nullopt, hint, {}};
}

std::string nearest_hose(const site::Site& site, const std::string& word) {
  std::vector<std::string> names;
  for (const site::Dispenser& dispenser : site.dispensers) {
    for (const site::Hose& hose : dispenser.hoses) names.push_back(hose.id.text);
  }
  const auto near = nearest_word(word, std::span<const std::string>(names));
  return near ? "did you mean '" + std::string(*near) + "'?" : "name one of the station's hoses";
}

bool wanted(const DrawingOptions& options, const char* id) { return options.which.empty() || options.which == id; }

class Maker {
 public:
  Maker(const site::Site& site, const DrawingOptions& options)
      : site_(site),
        options_(options),
        parts_(parts_of_station(site)),
        paper_(paper_called(options.paper, site.display)),
        scale_(read_scale(options.scale)) {}

  /// Empty: it fits no sheet.
  [[nodiscard]] std::optional<Drawing> plan() const {
    Drawing out;
    out.id = "plan";
    out.title = "Plan";
    draw_plan(site_, parts_, out);
    if (!lay_on_sheet(out, extent(out), *paper_, scale_, site_.display)) return std::nullopt;
    letter_plan(site_, parts_, out);
    finish_sheet(out, site_, options_);
    return out;
  }

  [[nodiscard]] std::optional<Drawing> section(const Course& course, Reach reach) const {
    Drawing out;
    switch (reach) {
      case Reach::whole:
        out.id = "section";
        out.title = "Developed section of the course to " + course.hose->id.text;
        break;
      case Reach::tank:
        out.id = "tank";
        out.title = "Section along tank " + course.tank->id.text;
        break;
      case Reach::dispenser:
        out.id = "dispenser";
        out.title = "Section at dispenser " + course.dispenser->id.text + ", " + course.hose->id.text;
        break;
    }
    SectionDrawing drawing(site_, course, reach, out);
    drawing.draw(parts_);
    Box box = extent(out);
    box.take({0.5 * (box.low.x + box.high.x), 0.0});  // the ground
    if (!lay_on_sheet(out, box, *paper_, scale_, site_.display)) return std::nullopt;
    drawing.letter();
    finish_sheet(out, site_, options_);
    return out;
  }

  [[nodiscard]] std::optional<Course> course() const {
    return options_.hose.empty() ? longest_course(site_) : course_to(site_, options_.hose);
  }

  /// Each drawing that is asked for, with its name.
  [[nodiscard]] std::vector<std::pair<std::string, std::optional<Drawing>>> all() const {
    std::vector<std::pair<std::string, std::optional<Drawing>>> out;
    out.reserve(4);
    if (wanted(options_, "plan")) out.emplace_back("plan", plan());
    const std::optional<Course> way = course();
    if (!way) return out;
    if (wanted(options_, "section")) out.emplace_back("section", section(*way, Reach::whole));
    const bool details = wanted(options_, "section");
    if ((details || wanted(options_, "tank")) && way->tank != nullptr)
      out.emplace_back("tank", section(*way, Reach::tank));
    if (details || wanted(options_, "dispenser")) out.emplace_back("dispenser", section(*way, Reach::dispenser));
    return out;
  }

 private:
  const site::Site& site_;
  const DrawingOptions& options_;
  std::vector<StationPart> parts_;
  const Paper* paper_;
  std::optional<Scale> scale_;
};

}  // namespace

std::vector<Diagnostic> check_drawing_options(const site::Site& site, const DrawingOptions& options) {
  std::vector<Diagnostic> out;
  if (!options.which.empty() && options.which != "plan" && options.which != "section" && options.which != "tank" &&
      options.which != "dispenser")
    out.push_back(error("there is no drawing '" + options.which + "'", "write plan, section, tank or dispenser"));
  if (paper_called(options.paper, site.display) == nullptr)
    out.push_back(error("there is no paper '" + options.paper + "'", "write a4, a3, letter or tabloid"));
  if (!options.scale.empty() && !read_scale(options.scale))
    out.push_back(error("'" + options.scale + "' is no scale", "write \"1:100\" or \"1 in = 10 ft\""));
  if (!options.hose.empty() && !course_to(site, options.hose))
    out.push_back(error("there is no hose '" + options.hose + "'", nearest_hose(site, options.hose)));
  if (!out.empty()) return out;
  const Maker maker(site, options);
  const auto all = maker.all();
  if (all.empty()) {
    const std::optional<Course> way = maker.course();
    out.push_back(error("no " + options.which + " is drawn: " +
                            (way ? "the course to " + way->hose->id.text + " leads to no tank" : "there is no hose"),
                        way ? "enter the tank of its pump, and the lines from it, or name another hose with --hose"
                            : "enter the hoses of the dispensers"));
  }
  for (const auto& [name, drawing] : all) {
    if (!drawing)
      out.push_back(error("the " + name + " does not fit on the paper" +
                              (options.scale.empty() ? " at any standard scale" : " at " + options.scale),
                          options.scale.empty() ? "look for a position that is far off"
                                                : "leave the scale out, or take a larger paper"));
  }
  return out;
}

DrawingSet draw_station(const site::Site& site, const DrawingOptions& options) {
  DrawingSet out;
  out.options = options;
  out.cautions = {
      "Drawings advise: the edition of a code that the local authority adopted rules, and certified testers "
      "and licensed trades do the tests and the work.",
      "Not for construction until checked and signed. What is under the ground is located before digging.",
      "Classified areas are drawn only where the clause was seen; where none is drawn there may be one."};
  const Maker maker(site, options);
  for (auto& [name, drawing] : maker.all()) {
    if (drawing) out.drawings.push_back(std::move(*drawing));
  }
  const std::optional<Course> way = maker.course();
  if (way && way->tank == nullptr && options.which != "plan" && options.which != "dispenser")
    out.warnings.push_back({Severity::warning,
                            "no tank is drawn: the course to " + way->hose->id.text + " leads to none",
                            std::nullopt,
                            "enter the tank of its pump, and the lines from it",
                            {}});
  if (!way && options.which != "plan")
    out.warnings.push_back({Severity::warning, "no section is drawn: the station has no hose", std::nullopt, "", {}});
  return out;
}

}  // namespace forecourse::handover
