#include "forecourse/server/desk/change.h"

#include <algorithm>

namespace forecourse::server {
namespace {

std::optional<std::string> replaced(const std::string& text, std::size_t at, const std::string& out,
                                    const std::string& in) {
  if (at > text.size() || text.compare(at, out.size(), out) != 0) return std::nullopt;
  std::string changed = text;
  return changed.replace(at, out.size(), in);
}

}  // namespace

Change change_between(std::string_view a, std::string_view b) {
  const std::size_t shorter = std::min(a.size(), b.size());
  std::size_t front = 0;
  while (front < shorter && a[front] == b[front]) ++front;
  std::size_t back = 0;
  while (back < shorter - front && a[a.size() - 1 - back] == b[b.size() - 1 - back]) ++back;
  return {front, std::string(a.substr(front, a.size() - front - back)),
          std::string(b.substr(front, b.size() - front - back))};
}

std::optional<std::string> forward(const Change& change, const std::string& text) {
  return replaced(text, change.at, change.out, change.in);
}

std::optional<std::string> backward(const Change& change, const std::string& text) {
  return replaced(text, change.at, change.in, change.out);
}

}  // namespace forecourse::server
