#include "forecourse/decide/mend/try_lever.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <variant>
#include <vector>

#include "forecourse/base/unit_text.h"
#include "forecourse/site/edit.h"
#include "forecourse/site/read.h"
#include "forecourse/site/shelf.h"
#include "forecourse/site/text/document.h"

namespace forecourse::decide {
namespace {

using checks::Finding;
using checks::FindingState;

constexpr double rounding = 1e-9;  // of a step, where a value was written in other units

/// The bytes of a value; empty: there is none.
std::optional<std::string> bytes_at(std::string_view text, const std::string& path) {
  Parsed<std::string> read = site::value_at(text, path);
  return read.ok() ? std::optional(std::move(read.value)) : std::nullopt;
}

/// A value set alone, and what becomes of the finding.
struct Tried {
  std::string after;               ///< bytes as they stand in the file then
  std::optional<Finding> finding;  ///< empty: the value is refused
  bool mended = false;
};

Tried try_value(const Bench& bench, const std::string& path, const std::string& value) {
  const Parsed<std::string> changed = site::set_value(bench.text, path, value);
  Tried out{value, std::nullopt};
  if (!changed.ok()) return out;
  out.after = bytes_at(changed.value, path).value_or(value);
  out.finding = bench.judge(changed.value);
  out.mended = out.finding && out.finding->state == FindingState::meets;
  return out;
}

void tell(const Tried& tried, MendTry& out) {
  out.edit.after = tried.after;
  out.mends = tried.mended;
  if (!tried.finding) return;
  out.state = tried.finding->state;
  out.value = tried.finding->value;
}

std::string not_enough(const MendTry& tried) {
  if (tried.state == FindingState::not_determined) return "what it comes to then is not determined";
  return "it still falls short";
}

// ---- amounts and places: steps on a grid ---------------------------------------------------------------

/// What stands some steps from the value as entered.
class Steps {
 public:
  virtual ~Steps() = default;
  [[nodiscard]] virtual std::string text(int steps) const = 0;
  /// Change of the value by what it was [1].
  [[nodiscard]] virtual std::optional<double> share(int steps) const = 0;
};

class AmountSteps : public Steps {
 public:
  AmountSteps(Grid grid, Written as, double from, bool up)
      : grid_(grid), as_(std::move(as)), step_(step_of(grid, as_.display)), from_(from), up_(up) {
    begin_ = up ? std::floor(from / step_ + rounding) : std::ceil(from / step_ - rounding);
  }
  [[nodiscard]] double at(int steps) const { return (begin_ + (up_ ? steps : -steps)) * step_; }
  [[nodiscard]] std::string text(int steps) const override { return text_on(grid_, as_, at(steps)); }
  [[nodiscard]] std::optional<double> share(int steps) const override {
    if (from_ == 0.0) return std::nullopt;
    return std::abs((at(steps) - from_) / from_);
  }

 private:
  Grid grid_;
  Written as_;
  double step_;
  double from_;
  double begin_ = 0.0;
  bool up_;
};

class PlaceSteps : public Steps {
 public:
  PlaceSteps(site::Display display, double x, double y, const Lever& lever)
      : display_(display), x_(x), y_(y), lever_(lever), step_(step_of(lever.grid, display)) {}
  [[nodiscard]] std::string text(int steps) const override {
    return fmt::format("[\"{}\", \"{}\"]", one(x_, lever_.x, steps), one(y_, lever_.y, steps));
  }
  /// A place has no size of its own: by how far it is moved, in tens of meters.
  [[nodiscard]] std::optional<double> share(int steps) const override { return steps * step_ / 10.0; }

 private:
  [[nodiscard]] std::string one(double from, double direction, int steps) const {
    return show_quantity(from + direction * steps * step_, display_ == site::Display::us ? "ft" : "m");
  }
  site::Display display_;
  double x_;
  double y_;
  const Lever& lever_;
  double step_;
};

constexpr int most_steps = 1 << 14;     // of a value that its figure follows one to one
constexpr int most_by_study = 1 << 10;  // of others
constexpr double most_change = 10.0;    // of others [1]

/// The fewest steps that mend a finding: doubled until they do, then halved between.
class Search {
 public:
  Search(const Bench& bench, const Lever& lever, const Steps& steps)
      : bench_(bench), path_(lever.path), steps_(steps), one_to_one_(lever.one_to_one) {}

  /// \param surely steps that are not yet enough, or nearly so
  void run(int surely, MendTry& out) {
    int stride = 1;
    int next = std::max(1, surely);
    while (!enough_) {
      if (next >= refused_) next = not_enough_ + (refused_ - not_enough_) / 2;
      if (next <= not_enough_ || is_far(next)) break;
      look(next);
      next = not_enough_ + stride;
      stride *= 2;
    }
    while (enough_ && *enough_ - not_enough_ > 1) look(not_enough_ + (*enough_ - not_enough_) / 2);
    if (last_) tell(*last_, out);
    out.share = steps_.share(enough_ ? *enough_ : not_enough_);
    if (enough_) out.step_less = steps_.text(not_enough_);
    if (!enough_) out.reason = last_ ? not_enough(out) : "no other value can stand there";
  }

 private:
  /// Further than is sensible to try.
  [[nodiscard]] bool is_far(int steps) const {
    if (one_to_one_) return steps > most_steps;
    return steps > most_by_study || steps_.share(steps).value_or(0.0) > most_change;
  }

  void look(int steps) {
    Tried tried = try_value(bench_, path_, steps_.text(steps));
    if (!tried.finding) {
      refused_ = std::min(refused_, steps);
      if (enough_) not_enough_ = steps;
      return;
    }
    if (tried.mended) {
      enough_ = steps;
    } else {
      not_enough_ = steps;
    }
    if (tried.mended || !enough_) last_ = std::move(tried);
  }

  const Bench& bench_;
  const std::string& path_;
  const Steps& steps_;
  bool one_to_one_;
  int not_enough_ = 0;
  int refused_ = most_steps + 1;
  std::optional<int> enough_;
  std::optional<Tried> last_;  ///< that mends, else the furthest
};

/// Steps by which a value that its figure follows one to one is surely still short.
int short_of(const Finding& finding, const Lever& lever, double step) {
  if (!lever.one_to_one || !finding.value || !finding.limit) return 1;
  return static_cast<int>(std::min(std::abs(*finding.value - *finding.limit) / step, double{most_steps}));
}

bool goes_up(const Finding& finding, const Lever& lever) {
  if (lever.sense != Sense::either) return lever.sense == Sense::more;
  return finding.value && finding.limit && *finding.value < *finding.limit;
}

std::optional<MendTry> try_amount(const Bench& bench, const Lever& lever, MendTry out) {
  std::optional<double> from = lever.start;
  if (out.edit.before) from = read_value(lever.grid, *out.edit.before);
  if (!from && !out.edit.before) return std::nullopt;
  if (!from) {
    out.edit.after = *out.edit.before;
    out.reason = "it is not entered as one value";
    return out;
  }
  const Written as = written_like(out.edit.before.value_or(std::string()), bench.display);
  const AmountSteps steps(lever.grid, as, *from, goes_up(bench.finding, lever));
  Search search(bench, lever, steps);
  search.run(short_of(bench.finding, lever, step_of(lever.grid, as.display)), out);
  return out;
}

/// The two coordinates of a place.
std::optional<std::pair<double, double>> read_place(std::string_view bytes) {
  std::vector<double> out;
  for (std::size_t at = 0; (at = bytes.find('"', at)) != std::string_view::npos;) {
    const std::size_t end = bytes.find('"', at + 1);
    if (end == std::string_view::npos) break;
    const auto read = read_quantity(bytes.substr(at + 1, end - at - 1), Length::kind());
    if (const double* value = std::get_if<double>(&read)) out.push_back(*value);
    at = end + 1;
  }
  if (out.size() != 2) return std::nullopt;
  return std::pair(out[0], out[1]);
}

/// A place where something else stands mends nothing.
void refuse_taken(const Bench& bench, const Lever& lever, MendTry& out) {
  if (!out.mends || !bench.taken) return;
  const std::string by = bench.taken(site::set_value(bench.text, lever.path, out.edit.after).value);
  if (by.empty()) return;
  out.mends = false;
  out.reason = "it would stand on " + by;
}

std::optional<MendTry> try_place(const Bench& bench, const Lever& lever, MendTry out) {
  const auto from = out.edit.before ? read_place(*out.edit.before) : std::nullopt;
  if (!from) return std::nullopt;
  const std::size_t end = out.edit.before->find_last_of('"');
  const site::Display display = written_like(out.edit.before->substr(0, end), bench.display).display;
  const PlaceSteps steps(display, from->first, from->second, lever);
  Search search(bench, lever, steps);
  search.run(short_of(bench.finding, lever, step_of(lever.grid, display)), out);
  refuse_taken(bench, lever, out);
  return out;
}

// ---- sizes of pipes ------------------------------------------------------------------------------------

/// Pipes of one construction that are wider than a bore, the narrowest first.
std::vector<const site::ShelfPipe*> wider_than(double bore, const std::string& construction) {
  constexpr double a_size = 1.08;  // the next size is wider by more; a bore is no closer to its nominal size
  std::vector<const site::ShelfPipe*> out;
  for (const site::ShelfPipe& one : site::shelf().pipes) {
    if (one.construction == construction && one.bore > bore * a_size) out.push_back(&one);
  }
  std::sort(out.begin(), out.end(), [](const auto* a, const auto* b) { return a->bore < b->bore; });
  return out;
}

/// Whether a finding is on the same side of its limit as before: then narrower sizes are too.
bool stays_short(const Finding& before, const MendTry& tried) {
  if (tried.mends || !before.value || !before.limit || !tried.value) return false;
  return (*before.value < *before.limit) == (*tried.value < *before.limit);
}

std::string unquoted(const std::string& bytes) { return bytes.size() < 2 ? bytes : bytes.substr(1, bytes.size() - 2); }

/// What a pipe is made of where its bore alone is entered: that of a line's trade sizes.
constexpr const char* trade_sizes = "steel pipe, Schedule 40";

std::optional<MendTry> try_size(const Bench& bench, const Lever& lever, MendTry out) {
  const bool by_bore = bytes_at(bench.text, lever.path + ".bore").has_value();
  out.edit.path = lever.path + (by_bore ? ".bore" : ".nominal");
  out.edit.before = bytes_at(bench.text, out.edit.path);
  if (!out.edit.before) return std::nullopt;
  out.edit.after = *out.edit.before;
  const site::ShelfPipe* now = by_bore ? nullptr : site::find_pipe(unquoted(*out.edit.before));
  const std::optional<double> bore = by_bore ? read_value(Grid::eighth, *out.edit.before)
                                     : now   ? std::optional(now->bore)
                                             : std::nullopt;
  if (!bore) {
    out.reason = "it is not entered as one value";
    return out;
  }
  const auto look = [&](const site::ShelfPipe& size) {
    const std::string value =
        by_bore ? show_quantity(size.bore, bench.display == site::Display::us ? "in" : "mm") : size.id;
    tell(try_value(bench, out.edit.path, value), out);
    out.share = size.bore / *bore - 1.0;
  };
  constexpr std::size_t most = 4;  // sizes that are tried
  auto sizes = wider_than(*bore, now != nullptr ? now->construction : trade_sizes);
  sizes.resize(std::min(sizes.size(), most));
  if (!sizes.empty()) look(*sizes.back());
  if (!sizes.empty() && !stays_short(bench.finding, out)) {
    for (std::size_t i = 0; i == 0 || (i < sizes.size() && !out.mends); ++i) look(*sizes[i]);
  }
  if (sizes.empty()) out.reason = "there is no wider one on the shelf";
  if (!out.mends && out.reason.empty()) out.reason = not_enough(out);
  return out;
}

std::optional<MendTry> try_word(const Bench& bench, const Lever& lever, MendTry out) {
  if (!out.edit.before || *out.edit.before == lever.value) return std::nullopt;
  out.is_work = true;
  tell(try_value(bench, lever.path, lever.value), out);
  if (!out.mends) out.reason = not_enough(out);
  return out;
}

}  // namespace

std::optional<MendTry> try_lever(const Bench& bench, const Lever& lever) {
  MendTry out;
  out.words = lever.words;
  out.is_last = lever.last;
  out.edit.path = lever.path;
  out.edit.before = bytes_at(bench.text, lever.path);
  switch (lever.kind) {
    case LeverKind::amount:
      return try_amount(bench, lever, std::move(out));
    case LeverKind::size:
      return try_size(bench, lever, std::move(out));
    case LeverKind::place:
      return try_place(bench, lever, std::move(out));
    case LeverKind::word:
      return try_word(bench, lever, std::move(out));
  }
  return std::nullopt;
}

}  // namespace forecourse::decide
