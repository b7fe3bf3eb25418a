#include <algorithm>

#include "forecourse/base/nearest_word.h"
#include "forecourse/site/places.h"
#include "forecourse/studies/incident/setup/groundwork.h"

namespace forecourse::studies {
namespace {

struct Known {
  std::vector<std::string> ids;
  std::string noun;
};

/// Where an incident of a kind can happen.
Known places_for(const site::Site& site, IncidentKind kind) {
  Known known;
  const auto add = [&](const std::string& id) {
    if (!id.empty()) known.ids.push_back(id);
  };
  if (kind == IncidentKind::overfill) {
    for (const site::Tank& tank : site.tanks) add(tank.id.text);
    known.noun = "tank";
    return known;
  }
  if (kind == IncidentKind::line_break) {
    for (const site::Line& line : site.lines) add(line.id.text);
    known.noun = "line";
    return known;
  }
  const bool of_hose = kind == IncidentKind::drive_off || kind == IncidentKind::nozzle_left_open;
  for (const site::Dispenser& dispenser : site.dispensers) {
    add(dispenser.id.text);
    if (of_hose) {
      for (const site::Hose& hose : dispenser.hoses) add(hose.id.text);
    } else {
      for (const site::Inlet& inlet : dispenser.inlets) add(site::place_name(dispenser, inlet));
    }
  }
  if (kind == IncidentKind::crack) {
    for (const site::Line& line : site.lines) add(line.id.text);
  }
  known.noun = of_hose                       ? "dispenser or hose"
               : kind == IncidentKind::crack ? "dispenser, inlet or line"
                                             : "dispenser or inlet";
  return known;
}

std::string offered(const std::string& word, const std::vector<std::string>& ids) {
  constexpr std::size_t listed = 12;
  if (ids.empty()) return "none is described in the site file";
  const auto near = nearest_word(word, std::span<const std::string>(ids));
  if (near) return "did you mean '" + std::string(*near) + "'?";
  std::string all;
  for (std::size_t i = 0; i < std::min(listed, ids.size()); ++i) all += (i == 0 ? "" : ", ") + ids[i];
  return "there are: " + all + (ids.size() > listed ? ", ..." : "");
}

class Check {
 public:
  Check(const site::Site& site, const IncidentOptions& options)
      : site_(site), options_(options), request_(merged_request(site, options)) {}

  std::vector<Diagnostic> all() {
    place();
    hoses();
    times();
    link();
    leak();
    opening();
    barriers();
    return std::move(found_);
  }

 private:
  /// A value of the command line has no place in the file.
  void error(std::string message, SourceSpan where, std::string hint) {
    std::optional<SourceSpan> place;
    if (where != SourceSpan{}) place = where;
    found_.push_back({Severity::error, std::move(message), place, std::move(hint), {}});
  }

  void place() {
    const Known known = places_for(site_, options_.kind);
    const std::string& at = request_.at.text;
    const std::string kind = word(options_.kind);
    if (at.empty() && options_.kind != IncidentKind::overfill) {
      return error("where it happens is not said", {}, "add --at with a " + known.noun + ": " + offered("", known.ids));
    }
    if (at.empty() || std::find(known.ids.begin(), known.ids.end(), at) != known.ids.end()) return;
    error("'" + at + "' is no " + known.noun + ", where the incident '" + kind + "' happens", request_.at.where,
          offered(at, known.ids));
  }

  void hoses() {
    std::vector<std::string> ids;
    for (const site::Dispenser& dispenser : site_.dispensers) {
      for (const site::Hose& hose : dispenser.hoses) ids.push_back(hose.id.text);
    }
    for (const site::Name& open : request_.open) {
      if (std::find(ids.begin(), ids.end(), open.text) == ids.end()) {
        error("there is no hose '" + open.text + "'", open.where, offered(open.text, ids));
      } else if (options_.kind == IncidentKind::struck && is_at_place(open.text)) {
        error("hose '" + open.text + "' is at the struck dispenser and cannot be open elsewhere", open.where,
              "name hoses of other dispensers");
      }
    }
  }

  /// Whether a hose hangs at the dispenser where it happens.
  [[nodiscard]] bool is_at_place(const std::string& hose) const {
    const std::string& at = request_.at.text;
    return std::any_of(site_.dispensers.begin(), site_.dispensers.end(), [&](const site::Dispenser& d) {
      const bool here = d.id.text == at || std::any_of(d.inlets.begin(), d.inlets.end(), [&](const site::Inlet& inlet) {
                          return site::place_name(d, inlet) == at;
                        });
      return here &&
             std::any_of(d.hoses.begin(), d.hoses.end(), [&](const site::Hose& h) { return h.id.text == hose; });
    });
  }

  void times() {
    if (request_.stop_at && request_.stop_at->low.si() < 0.0) {
      error("the pumps are stopped before the incident", request_.stop_at->where,
            "count --stop-at from the incident on");
    }
    if (request_.counts_until && !(request_.counts_until->low.si() > 0.0)) {
      error("counting ends before it begins", request_.counts_until->where, "give --for a time above zero");
    }
  }

  void link() {
    if (options_.kind != IncidentKind::sump_fire || !request_.fire || !request_.fire->start_temperature) return;
    const double start = request_.fire->start_temperature->likely.si();
    for (const site::Dispenser& dispenser : site_.dispensers) {
      for (const site::Inlet& inlet : dispenser.inlets) {
        if (!inlet.shear_valve || !inlet.shear_valve->fusible_link) continue;
        if (inlet.shear_valve->fusible_link->likely.si() > start) continue;
        error("the fusible link of '" + site::place_name(dispenser, inlet) +
                  "' is rated below its temperature before the fire",
              inlet.shear_valve->fusible_link->where, "check the rating, or start_temperature");
      }
    }
  }

  void leak() {
    const bool asks = options_.kind == IncidentKind::crack || options_.kind == IncidentKind::sump_fire;
    if (!asks || !request_.readings.empty() || request_.open_area) return;
    error(options_.kind == IncidentKind::crack ? "how much the crack leaks is not said"
                                               : "what feeds the fire is not said",
          {}, "add a reading to [[incident]]: [[incident.reading]] rate = \"3 gph\", at = \"10 psi\"; or --open-area");
  }

  void opening() {
    if (!request_.open_area || request_.open_area->low.si() > 0.0) return;
    error("an open area of nothing or less lets nothing out", request_.open_area->where,
          "give --open-area an area above zero");
  }

  /// A barrier that this kind of incident never meets would be left out without a trace.
  void barriers() {
    const auto check = [&](Barrier barrier) {
      const std::vector<Barrier> met = barriers_of(options_.kind);
      if (std::find(met.begin(), met.end(), barrier) != met.end()) return;
      std::string all;
      for (const Barrier one : met) all += (all.empty() ? "" : ", ") + std::string(word(one));
      error("the incident '" + std::string(word(options_.kind)) + "' does not meet a " + word(barrier), {},
            "those that it meets: " + all);
    };
    for (const Barrier barrier : options_.without) check(barrier);
    for (const DeadBarrier& dead : options_.dead) check(dead.barrier);
  }

  const site::Site& site_;
  const IncidentOptions& options_;
  site::IncidentRequest request_;
  std::vector<Diagnostic> found_;
};

}  // namespace

std::vector<Diagnostic> check_options(const site::Site& site, const IncidentOptions& options) {
  return Check(site, options).all();
}

}  // namespace forecourse::studies
