#include "forecourse/site/days_to_come.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <string_view>
#include <tuple>

#include "forecourse/site/fields/fields_site.h"
#include "forecourse/site/fields/passing_visitor.h"

namespace forecourse::site {
namespace {

/// Visitor of the descriptions in fields/ that comes to every day.
class DayWalk : public PassingVisitor {
 public:
  DayWalk(const Date& today, std::vector<Diagnostic>& out) : today_(today), out_(out) {}

  [[nodiscard]] SourceSpan here() const { return {}; }

  void date(std::string_view key, std::optional<Date>& member, std::string_view) {
    constexpr std::array<std::string_view, 4> may_be_planned{"installed", "connectors_installed", "replaced",
                                                             "changed"};
    if (!member || !is_later(*member)) return;
    if (std::find(may_be_planned.begin(), may_be_planned.end(), key) != may_be_planned.end()) return;
    out_.push_back(
        {Severity::warning,
         fmt::format("{} is {:04}-{:02}-{:02}, which is yet to come", key, member->year, member->month, member->day),
         member->where,
         "correct the date: what is yet to come proves nothing",
         {}});
  }

  void part(std::string_view, std::optional<Part>& member, std::string_view) { enter_if(member); }
  void loss(std::string_view, std::optional<EnteredLoss>& member, std::string_view) { enter_if(member); }
  void pipe(std::string_view, std::optional<Pipe>& member, std::string_view) { enter_if(member); }
  template <class T>
  void table(std::string_view, std::optional<T>& member, std::string_view) {
    enter_if(member);
  }
  template <class T>
  void section(std::string_view, T& member, std::string_view) {
    fields(*this, member);
  }
  template <class T>
  void list(std::string_view, std::vector<T>& members, std::string_view) {
    for (T& member : members) fields(*this, member);
  }

 private:
  [[nodiscard]] bool is_later(const Date& day) const {
    return std::tie(day.year, day.month, day.day) > std::tie(today_.year, today_.month, today_.day);
  }

  template <class T>
  void enter_if(std::optional<T>& member) {
    if (member) fields(*this, *member);
  }

  const Date& today_;
  std::vector<Diagnostic>& out_;
};

}  // namespace

std::vector<Diagnostic> days_to_come(const Site& site, const Date& today) {
  std::vector<Diagnostic> out;
  Site copy = site;  // the descriptions are of values that can be filled in
  DayWalk walk(today, out);
  fields(walk, copy);
  return out;
}

}  // namespace forecourse::site
