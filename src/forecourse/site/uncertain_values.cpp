#include "forecourse/site/uncertain_values.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>
#include <utility>

#include "forecourse/site/fields/fields_site.h"
#include "forecourse/site/fields/passing_visitor.h"

namespace forecourse::site {
namespace {

/// Visitor of the descriptions in fields/ that comes to every value that may be uncertain.
/// `Meet` is called with the path, the kind of quantity (null for a number) and the entered value.
template <class Meet>
class ValueWalk : public PassingVisitor {
 public:
  explicit ValueWalk(Meet meet) : meet_(std::move(meet)) {}

  [[nodiscard]] SourceSpan here() const { return here_; }

  void number(std::string_view key, Maybe<double>& member, std::string_view, const Range& = any_value) {
    if (member) meet_(joined(key), nullptr, *member);
  }
  void numbers(std::string_view key, std::vector<Entered<double>>& members, std::size_t, std::string_view) {
    for (std::size_t i = 0; i < members.size(); ++i) meet_(joined(key, std::to_string(i + 1)), nullptr, members[i]);
  }
  template <class K>
  void quantity(std::string_view key, Maybe<Quantity<K>>& member, std::string_view, const Range& = any_value) {
    if (member) meet_(joined(key), &K::kind, *member);
  }
  template <class K>
  void required_quantity(std::string_view key, Entered<Quantity<K>>& member, std::string_view, const Range&) {
    meet_(joined(key), &K::kind, member);
  }
  void loss(std::string_view key, std::optional<EnteredLoss>& member, std::string_view) { short_form(key, member); }
  void pipe(std::string_view key, std::optional<Pipe>& member, std::string_view) { short_form(key, member); }
  void part(std::string_view key, std::optional<Part>& member, std::string_view) {
    if (member) enter(key, {}, *member);
  }
  template <class T>
  void table(std::string_view key, std::optional<T>& member, std::string_view) {
    if (member) enter(key, {}, *member);
  }
  template <class T>
  void section(std::string_view key, T& member, std::string_view) {
    enter(key, {}, member);
  }
  template <class T>
  void list(std::string_view key, std::vector<T>& members, std::string_view) {
    for (std::size_t i = 0; i < members.size(); ++i) enter(key, name_of(members[i], i + 1), members[i]);
  }

 private:
  [[nodiscard]] std::string joined(std::string_view key, const std::string& item = {}) const {
    if (is_short_) return prefix_;
    return prefix_ + (prefix_.empty() ? "" : ".") + std::string(key) + (item.empty() ? "" : "." + item);
  }

  /// As a path names it: by its id, its product, or its number from 1.
  template <class T>
  static std::string name_of(const T& item, std::size_t number) {
    if constexpr (requires { item.id.text; }) {
      if (!item.id.empty()) return item.id.text;
    }
    if constexpr (requires { item.product.text; }) {
      if (!item.product.empty()) return item.product.text;
    }
    return std::to_string(number);
  }

  template <class T>
  void enter(std::string_view key, const std::string& item, T& value, bool is_short = false) {
    const std::string prefix = std::exchange(prefix_, joined(key, item));
    const SourceSpan outer = here_;
    const bool was_short = std::exchange(is_short_, is_short);
    if constexpr (requires { value.where; }) here_ = value.where;
    fields(*this, value);
    here_ = outer;
    is_short_ = was_short;
    prefix_ = prefix;
  }

  /// A loss or pipe that was written as its one figure, without a table, is named without the key of that figure.
  template <class T>
  void short_form(std::string_view key, std::optional<T>& member) {
    if (member) enter(key, {}, *member, is_one_value(*member));
  }
  static bool is_one_value(const EnteredLoss& loss) {
    const auto is_all = [&](const auto& value) { return value && same_start(value->where, loss.where); };
    return is_all(loss.k) || is_all(loss.per_flow) || is_all(loss.per_flow_squared);
  }
  static bool is_one_value(const Pipe& pipe) { return pipe.length && same_start(pipe.length->where, pipe.where); }
  static bool same_start(const SourceSpan& a, const SourceSpan& b) {
    return a.text == b.text && a.begin == b.begin && a.end == b.end && a.end > 0;
  }

  Meet meet_;
  std::string prefix_;
  SourceSpan here_{};
  bool is_short_ = false;
};

double si_of(double value) { return value; }
template <class K>
double si_of(const Quantity<K>& value) {
  return value.si();
}

void set_si(double& value, double si) { value = si; }
template <class K>
void set_si(Quantity<K>& value, double si) {
  value = Quantity<K>::from_si(si);
}

/// Calls `meet` with every value of a station that has a spread.
template <class Meet>
void for_each_uncertain(Site& site, Meet meet) {
  ValueWalk walk([&](const std::string& path, const QuantityKind* quantity, auto& value) {
    if (value.is_uncertain()) meet(path, quantity, value);
  });
  fields(walk, site);
}

void scale_shares(Hose& hose) {
  double sum = 0.0;
  for (const BlendShare& share : hose.blend) sum += share.share.likely.si();
  constexpr double rounding = 1e-3;  // shares written as thirds of a percent
  if (hose.blend.empty() || !(sum > 0.0) || std::abs(sum - 1.0) <= rounding) return;
  for (BlendShare& share : hose.blend) share.share.likely = Ratio::from_si(share.share.likely.si() / sum);
}

}  // namespace

std::vector<UncertainValue> uncertain_values(const Site& site) {
  std::vector<UncertainValue> values;
  if (site.uncertain.empty()) return values;
  Site copy = site;
  for_each_uncertain(copy, [&](const std::string& path, const QuantityKind* quantity, const auto& value) {
    values.push_back({path, path.substr(0, path.find('.')), quantity, si_of(value.low), si_of(value.likely),
                      si_of(value.high), value.where});
  });
  return values;
}

bool can_move_flow(const UncertainValue& value) {
  constexpr std::array<std::string_view, 7> apart{"emergency_stop", "interlock", "delivery", "operations",
                                                  "flow",           "incident",  "forecourt"};
  constexpr std::array<std::string_view, 17> of_incidents{
      ".closing.",     ".seat_leak.",  ".trip_volume", ".trip_pressure",  ".response_index", ".conduction",
      ".fusible_link", ".link_height", ".groove_",     ".loss_to_groove", ".discharge_loss", ".liquid_above",
      ".drains",       ".parting.",    ".sump.",       ".stiffness",      ".strength"};
  if (std::find(apart.begin(), apart.end(), value.table) != apart.end()) return false;
  return std::none_of(of_incidents.begin(), of_incidents.end(),
                      [&](std::string_view key) { return value.path.find(key) != std::string::npos; });
}

Site at_values(Site site, const std::vector<double>& likely) {
  std::size_t next = 0;
  for_each_uncertain(site, [&](const std::string&, const QuantityKind*, auto& value) {
    if (next < likely.size()) set_si(value.likely, likely[next]);
    ++next;
  });
  for (Dispenser& dispenser : site.dispensers) {
    for (Hose& hose : dispenser.hoses) scale_shares(hose);
  }
  return site;
}

Site at_ends(Site site, const std::vector<End>& ends) {
  std::size_t next = 0;
  for_each_uncertain(site, [&](const std::string&, const QuantityKind*, auto& value) {
    const End end = next < ends.size() ? ends[next] : End::likely;
    ++next;
    if (end == End::low) value.likely = value.low;
    if (end == End::high) value.likely = value.high;
  });
  for (Dispenser& dispenser : site.dispensers) {
    for (Hose& hose : dispenser.hoses) scale_shares(hose);
  }
  return site;
}

}  // namespace forecourse::site
