#include "forecourse/server/desk/merge.h"

#include <algorithm>

#include "forecourse/site/editing/differences.h"
#include "forecourse/site/text/document.h"

namespace forecourse::server {
namespace {

bool readable(const std::string& text) { return site::read_document(text, 0).ok(); }

bool within(const std::string& inner, const std::string& outer) {
  return inner.starts_with(outer) && (inner.size() == outer.size() || inner[outer.size()] == '.');
}

bool overlap(const std::vector<std::string>& a, const std::vector<std::string>& b) {
  return std::any_of(a.begin(), a.end(), [&](const std::string& one) {
    return std::any_of(b.begin(), b.end(),
                       [&](const std::string& other) { return within(one, other) || within(other, one); });
  });
}

}  // namespace

std::vector<std::string> changed_paths(const std::string& then, const std::string& now) {
  std::vector<std::string> paths;
  for (const site::ValueDifference& difference : site::differing_values(then, now)) paths.push_back(difference.path);
  return paths;
}

Meeting meet(const std::string& then, const std::string& now, const std::vector<Edit>& edits) {
  Meeting meeting{true, changed_paths(then, now)};
  const Parsed<std::string> meant = apply(then, edits);
  if (!readable(then) || !readable(now) || !meant.ok()) return {false, meeting.changed};
  meeting.apart = !overlap(changed_paths(then, meant.value), meeting.changed);
  return meeting;
}

}  // namespace forecourse::server
