#pragma once

namespace forecourse::parts {

/// A force along the hose as far as it is known [N]; infinite where it is never reached.
struct PullRange {
  double low = 0.0;
  double likely = 0.0;
  double high = 0.0;

  friend bool operator==(const PullRange&, const PullRange&) = default;
};

}  // namespace forecourse::parts
