#pragma once

#include <vector>

#include "forecourse/site/entered.h"

namespace forecourse::site {

/// How far the text of a clause was seen. Only `text` counts as verified.
enum class ClauseSeen {
  text,        ///< its own text, in the edition named
  older_text,  ///< the text of an older edition; later text not seen
  told,        ///< in another text that tells of it: a state's copy, an agency's guide
  memory,      ///< not seen
};

/// That a requirement applies only to some parts: another figure of the same part, or of the station.
struct Condition {
  SourceSpan where{};
  Name figure;
  Fact is;                    ///< of a fact
  Name above;                 ///< of an amount, with its unit: larger than this
  Name up_to;                 ///< of an amount: no larger than this
  std::optional<Date> after;  ///< of a day: later than this
  std::optional<Date> by;     ///< of a day: on this or before
};

/// One requirement of a rule set: a figure of the station and what it must be. Which of the limits fits is told by the
/// figure: an amount has `at_least` or `above`, `at_most` or `below`, one of each kind or both, or takes its limit from
/// the part; a fact has `is`; a day has `every`.
struct Requirement {
  SourceSpan where{};
  Name id;
  Name words;
  Name clause;
  Name edition;  ///< empty: that of the set
  std::optional<Chosen<ClauseSeen>> seen;
  Name figure;
  Name at_least;  ///< with its unit
  Name at_most;
  Name above;  ///< as `at_least`, but the limit itself does not meet
  Name below;  ///< as `at_most`, but the limit itself does not meet
  Fact is;
  Name every;  ///< "3 years", "30 days": the day lies no further back
  std::vector<Condition> when;
  Name change;  ///< what to change where it falls short
  Name route;   ///< requirements of one route name are alternatives: the best of them counts
  Name who;     ///< of a recurring duty: who does it
  Name sheet;   ///< of a recurring duty: the procedure sheet that leads through it
};

/// Requirements that a station can live under.
struct RuleSet {
  SourceSpan where{};
  Name id;
  Name title;
  Name edition;
  std::vector<Requirement> requirements;
};

}  // namespace forecourse::site
