#include "forecourse/site/editing/differences.h"

#include <algorithm>
#include <cmath>
#include <variant>

#include "forecourse/base/number_text.h"
#include "forecourse/base/quantity.h"
#include "forecourse/base/unit_text.h"
#include "forecourse/site/editing/path.h"
#include "forecourse/site/text/document.h"

namespace forecourse::site {

namespace {

bool same_number(double a, double b) { return std::abs(a - b) <= 1e-12 * std::max(std::abs(a), std::abs(b)); }

/// True for two texts of one quantity: "2.00 in" and "2 in".
bool same_quantity(const std::string& a, const std::string& b) {
  const QuantityKind* kinds[] = {&Length::kind(),
                                 &Area::kind(),
                                 &Volume::kind(),
                                 &Duration::kind(),
                                 &Velocity::kind(),
                                 &VolumeFlow::kind(),
                                 &GaugePressure::kind(),
                                 &AbsolutePressure::kind(),
                                 &Temperature::kind(),
                                 &Density::kind(),
                                 &DynamicViscosity::kind(),
                                 &KinematicViscosity::kind(),
                                 &LinearLoss::kind(),
                                 &SquareLoss::kind(),
                                 &Force::kind(),
                                 &Ratio::kind()};
  return std::any_of(std::begin(kinds), std::end(kinds), [&](const QuantityKind* kind) {
    const auto of_a = read_quantity(a, *kind);
    const auto of_b = read_quantity(b, *kind);
    const double* x = std::get_if<double>(&of_a);
    const double* y = std::get_if<double>(&of_b);
    return x != nullptr && y != nullptr && same_number(*x, *y);
  });
}

/// True for two bare numbers of one value: 3.6 and 3.60.
bool same_bare_number(std::string_view a, std::string_view b) {
  const bool minus = a.starts_with('-');
  if (minus != b.starts_with('-')) return false;
  const auto of_a = read_number(a, minus ? 1 : 0);
  const auto of_b = read_number(b, minus ? 1 : 0);
  const auto* x = std::get_if<NumberText>(&of_a);
  const auto* y = std::get_if<NumberText>(&of_b);
  return x != nullptr && y != nullptr && x->end == a.size() && y->end == b.size() && same_number(x->value, y->value);
}

/// Walks two tables side by side.
class Differences {
 public:
  Differences(std::string_view a, std::string_view b) : a_(a), b_(b) {}

  void tables(const Node& a, const Node& b, const std::string& before) {
    for (const Entry& entry : a.entries) {
      const Entry* other = find_entry(b, entry.key);
      pair(&entry.node, other == nullptr ? nullptr : &other->node, before + entry.key);
    }
    for (const Entry& entry : b.entries) {
      if (find_entry(a, entry.key) == nullptr) pair(nullptr, &entry.node, before + entry.key);
    }
  }

  std::vector<ValueDifference> found;

 private:
  void pair(const Node* a, const Node* b, const std::string& path) {
    const Node& one = a != nullptr ? *a : *b;
    if (is_table_list(one) && (a == nullptr || b == nullptr || is_table_list(*b))) return lists(a, b, path);
    const bool both = a != nullptr && b != nullptr;
    if (both && a->kind == NodeKind::table && b->kind == NodeKind::table) return tables(*a, *b, path + ".");
    if (both && same(*a, *b)) return;
    found.push_back({path, written(a, a_), written(b, b_)});
  }

  void lists(const Node* a, const Node* b, const std::string& path) {
    const Node none;
    const Node& left = a != nullptr ? *a : none;
    const Node& right = b != nullptr ? *b : none;
    for (std::size_t i = 0; i < left.items.size(); ++i) {
      pair(&left.items[i], item(right, left.items[i], i), path + "." + name(left.items[i], i));
    }
    for (std::size_t i = 0; i < right.items.size(); ++i) {
      if (item(left, right.items[i], i) == nullptr) {
        pair(nullptr, &right.items[i], path + "." + name(right.items[i], i));
      }
    }
  }

  static std::string name(const Node& item, std::size_t i) {
    const std::string_view name = item_name(item);
    return name.empty() ? std::to_string(i + 1) : std::string(name);
  }

  /// The item of a list that stands for one of the other list: that of its name, or the one in its place.
  static const Node* item(const Node& list, const Node& like, std::size_t i) {
    const std::string_view name = item_name(like);
    if (name.empty()) return i < list.items.size() && item_name(list.items[i]).empty() ? &list.items[i] : nullptr;
    for (const Node& one : list.items) {
      if (item_name(one) == name) return &one;
    }
    return nullptr;
  }

  [[nodiscard]] bool same(const Node& a, const Node& b) const {
    if (a.kind == NodeKind::text && b.kind == NodeKind::text) return a.text == b.text || same_quantity(a.text, b.text);
    const std::string_view left = text_of(a_, a.where);
    const std::string_view right = text_of(b_, b.where);
    return left == right || same_bare_number(left, right);
  }

  static std::string written(const Node* node, std::string_view text) {
    if (node == nullptr) return {};
    return node->kind == NodeKind::table ? "listed" : std::string(text_of(text, node->where));
  }

  std::string_view a_;
  std::string_view b_;
};

}  // namespace

std::vector<ValueDifference> differing_values(std::string_view a, std::string_view b) {
  Differences differences(a, b);
  differences.tables(read_document(a, 0).value.root, read_document(b, 0).value.root, "");
  return differences.found;
}

}  // namespace forecourse::site
