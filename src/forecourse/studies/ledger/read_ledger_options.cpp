#include "forecourse/studies/ledger/read_ledger_options.h"

#include <charconv>

namespace forecourse::studies {
namespace {

class Reading {
 public:
  explicit Reading(Asker asker) : asker_(asker) {}

  template <class Q>
  std::optional<double> value(const char* word, const std::string& text) {
    auto read = read_option<Q>(word, text, asker_);
    wrong.insert(wrong.end(), read.diagnostics.begin(), read.diagnostics.end());
    return read.value ? std::optional(read.value->likely.si()) : std::nullopt;
  }

  template <class Q>
  std::optional<double> positive(const char* word, const std::string& text) {
    const std::optional<double> read = value<Q>(word, text);
    if (!read || *read > 0.0) return read;
    refuse(option_name(word, asker_) + " is above zero, but '" + text + "' is written", "");
    return std::nullopt;
  }

  /// "2026-11-05", or with `day` false "2026-11".
  std::optional<Day> date(const char* word, const std::string& text, bool day) {
    if (text.empty()) return std::nullopt;
    const auto part = [&](std::size_t at, std::size_t length) {
      int out = 0;
      const char* begin = text.data() + at;
      const auto [end, failed] = std::from_chars(begin, begin + length, out);
      return failed == std::errc() && end == begin + length ? out : -1;
    };
    const std::size_t length = day ? 10 : 7;
    const bool shaped = text.size() == length && text[4] == '-' && (!day || text[7] == '-');
    if (shaped) {
      const site::Date date{part(0, 4), part(5, 2), day ? part(8, 2) : 1, {}};
      const bool known = date.year > 0 && date.month >= 1 && date.month <= 12 && date.day >= 1;
      if (known && studies::text(day_of(date)).substr(0, length) == text) return day_of(date);
    }
    refuse(option_name(word, asker_) + " is a " + (day ? "day" : "month") + ", but '" + text + "' is written",
           day ? "write 2026-11-05" : "write 2026-11");
    return std::nullopt;
  }

  std::optional<MeterError> meter(const std::string& text) {
    MeterError out;
    std::string rest = text;
    if (const std::size_t at = rest.find('='); at != std::string::npos) {
      out.hose = rest.substr(0, at);
      rest.erase(0, at + 1);
    }
    std::string error;
    if (const std::size_t at = rest.find("+-"); at != std::string::npos) {
      error = rest.substr(at + 2);
      rest.erase(at);
    }
    const std::optional<double> value_read = value<Ratio>("meter_error", rest);
    if (!value_read) {
      if (rest.empty()) refuse("'" + text + "' tells no error", "write \"D1.a=0.3 % +- 0.1 %\"");
      return std::nullopt;
    }
    out.error = *value_read;
    if (!error.empty()) out.standard_error = value<Ratio>("meter_error", error);
    return out;
  }

  void refuse(std::string message, std::string hint) {
    wrong.push_back({Severity::error, std::move(message), std::nullopt, std::move(hint), {}});
  }

  std::vector<Diagnostic> wrong;

 private:
  Asker asker_;
};

}  // namespace

Parsed<LedgerOptions> read_ledger_options(const LedgerAsked& asked, Asker asker) {
  Reading reading(asker);
  LedgerOptions out;
  out.tank = asked.tank;
  out.month = reading.date("month", asked.month, false);
  out.from = reading.date("from", asked.from, true);
  out.to = reading.date("to", asked.to, true);
  if (asked.delivered_as == "net") {
    out.delivered_as = DeliveredAs::net;
  } else if (!asked.delivered_as.empty() && asked.delivered_as != "gross") {
    reading.refuse(option_name("delivered_as", asker) + " is gross or net, but '" + asked.delivered_as + "' is written",
                   "write net");
  }
  for (const std::string& text : asked.meter_errors) {
    if (auto meter = reading.meter(text)) out.meters.push_back(std::move(*meter));
  }
  out.evaporation = reading.value<Ratio>("evaporation", asked.evaporation);
  out.reading_deviation = reading.positive<Length>("reading_deviation", asked.reading_deviation);
  out.delivery_deviation = reading.positive<Ratio>("delivery_deviation", asked.delivery_deviation);
  out.sales_deviation = reading.positive<Ratio>("sales_deviation", asked.sales_deviation);
  out.smallest_leak = reading.positive<VolumeFlow>("smallest_leak", asked.smallest_leak).value_or(0.0);
  out.own_volume = reading.positive<Volume>("own_volume", asked.own_volume);
  constexpr double hour = 3600.0;
  if (const auto drift = reading.value<TemperatureDifference>("own_drift", asked.own_drift)) {
    out.own_drift = *drift / hour;
  }
  out.own_expansion = reading.value<Expansion>("own_expansion", asked.own_expansion);
  return {std::move(out), std::move(reading.wrong)};
}

}  // namespace forecourse::studies
