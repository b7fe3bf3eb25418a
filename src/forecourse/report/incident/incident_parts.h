#pragma once

#include "forecourse/report/incident/incident_view.h"

namespace forecourse::report {

/// Writes the parts of an incident's telling, one a function. A part with nothing to tell is empty.
class PartWriter {
 public:
  PartWriter(const studies::IncidentResult& result, site::Display display, Glyphs glyphs)
      : r_(result), display_(display), glyphs_(glyphs) {}

  [[nodiscard]] IncidentPart barriers() const;
  [[nodiscard]] IncidentPart barrier_table() const;
  [[nodiscard]] IncidentPart events() const;
  [[nodiscard]] IncidentPart ledger() const;
  [[nodiscard]] IncidentPart open_ends() const;
  [[nodiscard]] IncidentPart crack() const;
  [[nodiscard]] IncidentPart drive_off() const;
  [[nodiscard]] IncidentPart fire() const;
  [[nodiscard]] IncidentPart overfill() const;
  [[nodiscard]] IncidentPart jets() const;
  [[nodiscard]] IncidentPart pool() const;
  [[nodiscard]] IncidentPart spread() const;
  [[nodiscard]] IncidentPart cause_effect() const;
  [[nodiscard]] IncidentPart return_to_service() const;
  [[nodiscard]] IncidentPart inputs() const;
  [[nodiscard]] IncidentPart warnings() const;

 private:
  [[nodiscard]] std::string head(const char* words, Measure measure) const {
    return std::string(words) + ", " + unit_label(measure, display_, glyphs_);
  }
  [[nodiscard]] std::string num(Measure measure, double si) const { return number(measure, display_, si, glyphs_); }
  [[nodiscard]] std::string num(Measure measure, const std::optional<double>& si) const {
    return si ? num(measure, *si) : none();
  }
  [[nodiscard]] std::string full(Measure measure, double si) const { return with_unit(measure, display_, si, glyphs_); }
  [[nodiscard]] std::string full(Measure measure, const studies::Spread& s) const {
    return shown(s, measure, display_, glyphs_);
  }
  [[nodiscard]] std::string time(double seconds) const { return time_span(seconds, glyphs_); }
  [[nodiscard]] std::string time(const std::optional<double>& seconds) const {
    return seconds ? time(*seconds) : none();
  }
  /// The likely value, with its range in brackets.
  [[nodiscard]] std::string value_of(const studies::InputUsed& input) const;
  [[nodiscard]] std::string times(const std::optional<studies::Spread>& s) const;
  [[nodiscard]] std::string none() const { return glyphs_ == Glyphs::unicode ? "\u2013" : "-"; }

  const studies::IncidentResult& r_;
  site::Display display_;
  Glyphs glyphs_;
};

}  // namespace forecourse::report
