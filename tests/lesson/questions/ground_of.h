#pragma once

#include <string>

#include "forecourse/lesson/ground.h"

namespace forecourse::test {

/// A station with its studies, made once and shared by all questions; without spans and ladders, which no question
/// needs.
class StudiedStation {
 public:
  explicit StudiedStation(const std::string& text);
  StudiedStation(const StudiedStation&) = delete;
  StudiedStation& operator=(const StudiedStation&) = delete;

  [[nodiscard]] const site::Site& site() const { return site_; }
  [[nodiscard]] lesson::Ground ground() const { return {site_, studied_, checks_}; }

 private:
  site::Site site_;
  checks::Studied studied_;
  checks::CheckResult checks_;
};

}  // namespace forecourse::test
