#include "forecourse/handover/kit/part_words.h"

#include <algorithm>

#include "forecourse/site/shelf.h"

namespace forecourse::handover {
namespace {

/// Adds to a list of words parted by commas.
void add_word(std::string& words, std::string_view more) {
  if (more.empty()) return;
  if (!words.empty()) words += ", ";
  words += more;
}

template <class Q>
void add_size(std::vector<KitSize>& sizes, const char* name, const site::Maybe<Q>& value, const char* unit) {
  if (value) sizes.push_back({name, value->likely.si(), unit});
}

void add_text(std::vector<KitSize>& sizes, const char* name, const std::string& text) {
  if (!text.empty()) sizes.push_back({name, std::nullopt, "", text});
}

template <class Q>
std::optional<double> si(const site::Maybe<Q>& value) {
  return value ? std::optional(value->likely.si()) : std::nullopt;
}

/// A word of a list without its hyphens: "horizontal cylinder".
std::string in_words(const site::Name& word) {
  std::string out = word.text;
  std::replace(out.begin(), out.end(), '-', ' ');
  return out;
}

std::vector<std::string> texts(const std::vector<site::Name>& names) {
  std::vector<std::string> out;
  out.reserve(names.size());
  for (const site::Name& one : names) out.push_back(one.text);
  return out;
}

void add_walls(std::string& words, const site::Fact& double_wall) {
  if (double_wall) add_word(words, *double_wall ? "double wall" : "single wall");
}

/// Adds the words, sizes, rating and listing of a part to those of its kind.
class Tell {
 public:
  Tell(const StationPart& part, PartWords& out) : part_(part), out_(out) {}

  void operator()(const site::Tank* tank) {
    if (tank->shape) {
      add_word(out_.what, in_words(tank->shape->kind));
      if (!tank->shape->heads.empty()) add_word(out_.what, tank->shape->heads.text + " heads");
      size("inside diameter", tank->shape->inside_diameter);
      size("outside diameter", tank->shape->outside_diameter);
      size("length", tank->shape->length);
      size("width", tank->shape->width);
      size("height", tank->shape->height);
    }
    if (!tank->compartments.empty()) add_word(out_.what, std::to_string(tank->compartments.size()) + " compartments");
    add_walls(out_.what, tank->double_wall);
    add_word(out_.what, tank->material.text);
    if (tank->above_ground.value_or(false)) add_word(out_.what, "above ground");
    add_size(out_.sizes, "capacity", tank->capacity, "m3");
    out_.listed_to = texts(tank->listed_to);
  }
  void operator()(const site::Fill* fill) {
    size("bore", fill->bore);
    add_size(out_.sizes, "turns at", fill->turns_at, "N m");
  }
  void operator()(const site::DropTube* tube) {
    size("bore", tube->bore);
    size("length", tube->length);
  }
  void operator()(const site::SpillContainer* container) {
    add_walls(out_.what, container->double_wall);
    if (container->drain.value_or(false)) add_word(out_.what, "with drain");
    add_size(out_.sizes, "volume", container->volume, "m3");
  }
  void operator()(const site::OverfillValve* valve) {
    size("restricts at depth", valve->restricts_at);
    size("closes at depth", valve->closes_at);
    out_.listed_to = texts(valve->listed_to);
  }
  void operator()(const site::OverfillAlarm* alarm) {
    size("at depth", alarm->at_depth);
    add_size(out_.sizes, "at share", alarm->at_share, "share");
  }
  void operator()(const site::TankGauge* gauge) {
    add_word(out_.what, gauge->kind.text);
    out_.listed_to = texts(gauge->listed_to);
  }
  void operator()(const site::Interstice* interstice) { add_word(out_.what, interstice->watch.text); }
  void operator()(const site::SiphonBar* bar) {
    add_word(out_.what, bar->kind.text);
    if (bar->pipe) tell_pipe(*bar->pipe, true);
  }
  void operator()(const site::Slab* slab) {
    size("thickness", slab->thickness);
    size("overhang", slab->overhang);
    size("length", slab->length);
    size("width", slab->width);
  }
  void operator()(const site::Deadman* one) {
    size("length", one->length);
    size("width", one->width);
    size("height", one->height);
  }
  void operator()(const site::Strap* strap) { add_size(out_.sizes, "working load", strap->working_load, "N"); }
  void operator()(const site::BuriedSump* sump) {
    size("outside diameter", sump->diameter);
    size("depth", sump->depth);
  }
  void operator()(const site::Well* /*well*/) {}
  void operator()(const site::Barrier* /*barrier*/) {}
  void operator()(const site::Protection* /*protection*/) {}
  void operator()(const site::Vent* vent) { size("outlet elevation", vent->outlet_elevation); }
  void operator()(const site::VentValve* valve) {
    add_size(out_.sizes, "opens at", valve->opens_at, "Pa");
    add_size(out_.sizes, "opens at vacuum", valve->vacuum_opens_at, "Pa");
    for (KitSize& one : out_.sizes) one.of_vapor = true;
    out_.listed_to = texts(valve->listed_to);
  }
  void operator()(const site::VaporReturn* vapor) { add_word(out_.what, vapor->kind.text); }
  void operator()(const site::Pump* pump) {
    if (part_.kind == "pressure-relief") {
      add_size(out_.sizes, "opens at", pump->pressure_relief, "Pa");
    } else if (part_.kind == "pump") {
      if (pump->curve) add_size(out_.sizes, "shutoff", pump->curve->shutoff, "Pa");
      add_size(out_.sizes, "motor", pump->motor_power, "W");
      out_.rating = si(pump->rating);
      out_.listed_to = texts(pump->listed_to);
    }
  }
  void operator()(const site::LeakDetector* detector) {
    if (detector->kind)
      add_word(out_.what, detector->kind->value == site::LeakDetectorKind::mechanical ? "mechanical" : "electronic");
    add_size(out_.sizes, "detects", detector->detects, "m3/s");
    add_size(out_.sizes, "at pressure", detector->at, "Pa");
  }
  void operator()(const site::PumpControl* control) {
    if (!control->kind) return;
    constexpr const char* words[] = {"off", "all", "lead-lag", "alternating", "variable speed"};
    add_word(out_.what, words[static_cast<std::size_t>(control->kind->value)]);
  }
  void operator()(const site::Pipe* pipe) {
    if (part_.kind == "fittings") {
      out_.sizes = sizes_of(*pipe);
    } else {
      tell_pipe(*pipe, part_.hose == nullptr && !part_.of_tanker);
    }
  }
  void operator()(const site::EnteredLoss* /*loss*/) {}
  void operator()(const site::Line* line) {
    if (part_.kind == "line") {
      tell_pipe(line->pipe, true);
    } else {
      out_.sizes = sizes_of(line->pipe);
    }
  }
  void operator()(const site::Branch* /*branch*/) {}
  void operator()(const site::Sump* sump) {
    if (part_.kind == "sump-sensor") return size("height", sump->sensor_height);
    if (part_.kind == "entry-seal") return;
    add_word(out_.what, sump->kind.text);
    add_walls(out_.what, sump->double_wall);
    add_two("floor", sump->floor);
    add_two("top", sump->top);
    size("diameter", sump->diameter);
    size("depth", sump->depth);
    add_size(out_.sizes, "volume", sump->volume, "m3");
    out_.listed_to = texts(sump->listed_to);
  }
  void operator()(const site::SumpSensor* sensor) {
    add_word(out_.what, sensor->kind.text);
    if (sensor->tells_fuel_from_water.value_or(false)) add_word(out_.what, "tells fuel from water");
    size("height", sensor->height);
  }
  void operator()(const site::EntrySeal* /*seal*/) {}
  void operator()(const site::Dispenser* dispenser) {
    if (part_.kind != "dispenser") return;
    add_word(out_.what, count("inlet", dispenser->inlets.size()));
    add_word(out_.what, count("hose", dispenser->hoses.size()));
    if (dispenser->satellite.value_or(false)) add_word(out_.what, "satellite");
    out_.listed_to = texts(dispenser->listed_to);
  }
  void operator()(const site::Inlet* inlet) { on_riser(*inlet); }
  void operator()(const site::ShearValve* valve) {
    if (valve->poppet)
      add_word(out_.what, valve->poppet->value == site::Poppet::double_poppet ? "double poppet" : "single poppet");
    if (valve->crack_trip.value_or(false)) add_word(out_.what, "crack trip");
    if (part_.inlet != nullptr) on_riser(*part_.inlet);
    add_size(out_.sizes, "fusible link", valve->fusible_link, "K");
    out_.rating = si(valve->rating);
    out_.listed_to = texts(valve->listed_to);
  }
  void operator()(const site::Part* one) {
    if (const site::ShelfPart* shelf = site::find_part(one->shelf.text)) {
      add_word(out_.what, "generic part " + shelf->id + ", " + site::word(shelf->status));
    }
    if (part_.stop == Stop::hose || part_.stop == Stop::nozzle) on_hose(*part_.hose);
    if (one->accuracy_class) out_.sizes.push_back({"accuracy class", one->accuracy_class->likely, "1"});
    if (part_.kind == "breakaway" && part_.hose->parting) tell_parting(*part_.hose->parting);
    if (part_.kind == "nozzle" && part_.hose->spout) tell_spout(*part_.hose->spout);
    out_.rating = si(one->rating);
    out_.listed_to = texts(one->listed_to);
  }
  void operator()(const site::Hose* hose) {
    if (part_.kind == "flow-limiter") {
      add_size(out_.sizes, "limit", hose->limiter, "m3/s");
    } else if (part_.kind == "hose-set") {
      if (hose->high_flow.value_or(false)) add_word(out_.what, "high flow");
      if (!hose->blend.empty()) add_word(out_.what, "blended");
      if (hose->loss) add_word(out_.what, "its parts entered as one loss");
      on_hose(*hose);
    } else if (part_.kind == "breakaway" && hose->parting) {
      on_hose(*hose);
      tell_parting(*hose->parting);
    } else if (part_.kind == "nozzle" && hose->spout) {
      on_hose(*hose);
      tell_spout(*hose->spout);
    }
  }
  void operator()(const site::VaporLine* /*line*/) {}
  void operator()(const site::VaporRecovery* recovery) { out_.listed_to = texts(recovery->listed_to); }
  void operator()(const site::VaporProcessor* /*processor*/) {}
  void operator()(const site::EmergencyStop* /*stop*/) {}
  void operator()(const site::Interlock* interlock) {
    if (!interlock->then) return;
    constexpr const char* words[] = {"stops", "alarms", "restricts"};
    add_word(out_.what, words[static_cast<std::size_t>(interlock->then->value)]);
  }
  void operator()(const site::Extinguisher* extinguisher) {
    add_text(out_.sizes, "rating on its label", extinguisher->rating.text);
  }
  void operator()(const site::Operations* /*operations*/) {}
  void operator()(std::monostate /*none*/) {}

 private:
  void size(const char* name, const site::Maybe<Length>& value) { add_size(out_.sizes, name, value, "m"); }

  static std::string count(const char* noun, std::size_t number) {
    return std::to_string(number) + " " + noun + (number == 1 ? "" : "s");
  }

  void add_two(const std::string& name, const std::optional<site::Position>& sizes) {
    if (!sizes) return;
    out_.sizes.push_back({name + " length", sizes->x.si(), "m"});
    out_.sizes.push_back({name + " width", sizes->y.si(), "m"});
  }

  void tell_pipe(const site::Pipe& pipe, bool by_length) {
    add_word(out_.what, construction_of(part_));
    for (KitSize& one : sizes_of(pipe)) out_.sizes.push_back(std::move(one));
    out_.length = si(pipe.length);
    if (!by_length) size("length", pipe.length);
    out_.rating = si(pipe.rating);
    out_.listed_to = texts(pipe.listed_to);
  }

  /// The size of a part that is screwed to a riser or a hose is theirs.
  void on_riser(const site::Inlet& inlet) { on("riser", inlet.riser); }
  void on_hose(const site::Hose& hose) { on("hose", hose.curb ? hose.curb : hose.whip); }
  void on(const std::string& name, const std::optional<site::Pipe>& pipe) {
    if (!pipe) return;
    for (KitSize& one : sizes_of(*pipe)) {
      one.name = name + " " + one.name;
      out_.sizes.push_back(std::move(one));
    }
  }

  void tell_parting(const site::Parting& parting) {
    if (parting.poppet)
      add_word(out_.what, parting.poppet->value == site::Poppet::double_poppet ? "both ends shut" : "one end shuts");
    if (parting.reconnectable) add_word(out_.what, *parting.reconnectable ? "reconnectable" : "used once");
    add_size(out_.sizes, "parts at", parting.pull, "N");
  }

  void tell_spout(const site::Spout& spout) {
    size("spout diameter", spout.diameter);
    size("spout straight part", spout.straight);
  }

  const StationPart& part_;
  PartWords& out_;
};

}  // namespace

bool is_set_in_parts(const StationPart& part) {
  return part.kind == "hose-set" && (part.hose->curb || part.hose->whip || part.hose->nozzle);
}

const site::Pipe* pipe_of(const StationPart& part) {
  if (const auto* pipe = std::get_if<const site::Pipe*>(&part.data)) return *pipe;
  if (const auto* line = std::get_if<const site::Line*>(&part.data)) return &(*line)->pipe;
  if (const auto* bar = std::get_if<const site::SiphonBar*>(&part.data)) return (*bar)->pipe ? &*(*bar)->pipe : nullptr;
  return nullptr;
}

std::string pipe_to_order(const StationPart& part) {
  const site::Pipe* pipe = pipe_of(part);
  const bool known = pipe != nullptr && (!pipe->material.empty() || site::find_pipe(pipe->nominal.text) != nullptr);
  std::string out = known ? "" : "pipe, construction not entered";
  add_word(out, construction_of(part));
  return out;
}

std::string construction_of(const StationPart& part) {
  const site::Pipe* pipe = pipe_of(part);
  if (pipe == nullptr) return {};
  std::string out;
  if (const site::ShelfPipe* shelf = site::find_pipe(pipe->nominal.text)) {
    out = shelf->construction;
    if (shelf->status == site::ShelfStatus::illustrative) out += " (illustrative)";
  }
  if (!pipe->material.empty()) add_word(out, pipe->material.text + " pipe");
  if (const auto* line = std::get_if<const site::Line*>(&part.data)) add_walls(out, (*line)->double_wall);
  return out;
}

std::vector<KitSize> sizes_of(const site::Pipe& pipe) {
  std::vector<KitSize> out;
  if (const site::ShelfPipe* shelf = site::find_pipe(pipe.nominal.text)) add_text(out, "nominal", shelf->nominal);
  add_size(out, "bore", pipe.bore, "m");
  add_size(out, "wall", pipe.wall, "m");
  return out;
}

std::optional<bool> is_metal(const site::Pipe& pipe) {
  const std::string& material = pipe.material.text;
  if (!material.empty()) return material == "steel" || material == "flexible-metal";
  const site::ShelfPipe* shelf = site::find_pipe(pipe.nominal.text);
  if (shelf == nullptr) return std::nullopt;
  if (shelf->construction.find("steel") != std::string::npos) return true;
  return shelf->construction.find("polymer") != std::string::npos ? std::optional(false) : std::nullopt;
}

PartWords words_of(const StationPart& part, const PartKind& kind) {
  PartWords out;
  out.what = kind.noun;
  std::visit(Tell(part, out), part.data);
  return out;
}

}  // namespace forecourse::handover
