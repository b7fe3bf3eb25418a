#include "forecourse/base/nearest_word.h"

#include <algorithm>
#include <vector>

namespace forecourse {
namespace {

/// The word in lower case, with '-' for '_'.
std::string plain(std::string_view word) {
  std::string out(word);
  for (char& c : out) {
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    if (c == '_' || c == ' ') c = '-';
  }
  return out;
}

std::size_t cut_off(std::size_t length) { return length <= 5 ? 1 : 1 + (length - 3) / 3; }

template <class Words>
std::optional<std::string_view> nearest(std::string_view word, const Words& known) {
  const std::string asked = plain(word);
  std::optional<std::string_view> best;
  std::size_t least = cut_off(asked.size()) + 1;
  for (const std::string_view candidate : known) {
    if (candidate.size() >= asked.size() + least || asked.size() >= candidate.size() + least) continue;  // too far
    const std::size_t distance = edit_distance(asked, plain(candidate));
    if (distance >= least || (distance > 0 && distance >= asked.size())) continue;
    best = candidate;
    least = distance;
  }
  return best;
}

}  // namespace

std::size_t edit_distance(std::string_view a, std::string_view b) {
  // Three rows of the table of distances between the first i letters of a and the first j of b.
  std::vector<std::size_t> before(b.size() + 1), above(b.size() + 1), row(b.size() + 1);
  for (std::size_t j = 0; j <= b.size(); ++j) row[j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    before.swap(above);
    above.swap(row);
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t changed = above[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
      row[j] = std::min({above[j] + 1, row[j - 1] + 1, changed});
      const bool swapped = i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1];
      if (swapped) row[j] = std::min(row[j], before[j - 2] + 1);
    }
  }
  return row[b.size()];
}

std::optional<std::string_view> nearest_word(std::string_view word, std::span<const std::string_view> known) {
  return nearest(word, known);
}

std::optional<std::string_view> nearest_word(std::string_view word, std::span<const std::string> known) {
  return nearest(word, known);
}

}  // namespace forecourse
