#include <algorithm>
#include <charconv>
#include <limits>

#include "forecourse/checks/figures/each_part.h"
#include "forecourse/checks/figures/plan.h"

namespace forecourse::checks {
namespace {

/// What an extinguisher is rated for: numerals of classes A and B, and class C.
struct Rating {
  int a = 0;
  int b = 0;
  bool c = false;
};

/// Reads "2-A:20-B:C"; empty where it is not written like that.
std::optional<Rating> read_rating(std::string_view text) {
  Rating out;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find(':'), text.size());
    const std::string_view part = text.substr(0, end);
    text.remove_prefix(std::min(end + 1, text.size()));
    if (part == "C") {
      out.c = true;
      continue;
    }
    int number = 0;
    const auto [rest, fault] = std::from_chars(part.data(), part.data() + part.size(), number);
    const std::string_view letter(rest, static_cast<std::size_t>(part.data() + part.size() - rest));
    if (fault != std::errc() || (letter != "-A" && letter != "-B")) return std::nullopt;
    (letter == "-A" ? out.a : out.b) = number;
  }
  return out;
}

bool covers(const Rating& rating, const Rating& wanted) {
  return rating.a >= wanted.a && rating.b >= wanted.b && (rating.c || !wanted.c);
}

/// From a part to the nearest extinguisher that is good for it.
FigureAt to_nearest(const Facts& facts, FigureAt out, const std::optional<Outline>& from, const Rating& wanted) {
  double least = std::numeric_limits<double>::infinity();
  bool known = from.has_value();
  for (const site::Extinguisher& one : facts.site.extinguishers) {
    const std::optional<Rating> rating = one.rating.empty() ? std::nullopt : read_rating(one.rating.text);
    known = known && one.position && rating;
    if (known && covers(*rating, wanted)) least = std::min(least, distance(*from, *outline(one.position)));
  }
  if (!known) {
    out.enter = "enter position of the part, and position and rating of each extinguisher, as in \"2-A:20-B:C\"";
  } else if (least == std::numeric_limits<double>::infinity()) {
    out.enter = "enter [[extinguisher]]; else one of that rating is to be hung";
  } else {
    out.value = least;
  }
  return out;
}

/// From each dispenser, pump and fill.
std::vector<FigureAt> reach(const Facts& facts, const Rating& wanted) {
  std::vector<FigureAt> out = each_dispenser(facts, [&](const site::Dispenser& one) {
    return to_nearest(facts, of_part(one.id.text, one.where), outline(one.position), wanted);
  });
  for (const site::Pump& pump : facts.site.pumps) {
    out.push_back(to_nearest(facts, of_part(pump.id.text, pump.where), outline(pump.position), wanted));
  }
  const std::vector<FigureAt> fills =
      each_fill(facts, [&](const site::Tank&, const site::Fill& fill, std::string name) {
        return to_nearest(facts, of_part(std::move(name), fill.where), outline(fill.position), wanted);
      });
  out.insert(out.end(), fills.begin(), fills.end());
  return out;
}

/// \source [ifc_2018, 2305.5]
std::vector<FigureAt> reach_2a_20bc(const Facts& facts) { return reach(facts, {2, 20, true}); }
/// \source [osha_1910_106, (g)(9)]
std::vector<FigureAt> reach_6bc(const Facts& facts) { return reach(facts, {0, 6, true}); }

}  // namespace

std::vector<Figure> extinguisher_figures() {
  return {
      amount_figure<Length>("extinguisher-2a-20bc-reach",
                            "distance from a dispenser, pump or fill to the nearest extinguisher of 2-A:20-B:C", "m",
                            reach_2a_20bc),
      amount_figure<Length>("extinguisher-6bc-reach",
                            "distance from a dispenser, pump or fill to the nearest extinguisher of 6-B:C", "m",
                            reach_6bc),
  };
}

}  // namespace forecourse::checks
