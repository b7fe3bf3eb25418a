#include "forecourse/studies/meter/read_meter_options.h"

#include <charconv>
#include <cmath>
#include <tuple>

#include "forecourse/base/decimal.h"

namespace forecourse::studies {
namespace {

std::string trimmed(std::string_view text) {
  const std::size_t begin = text.find_first_not_of(' ');
  if (begin == std::string_view::npos) return {};
  return std::string(text.substr(begin, text.find_last_not_of(' ') - begin + 1));
}

/// What stands before and behind a mark; without it all stands behind.
std::pair<std::string, std::string> split(const std::string& text, std::string_view mark) {
  const std::size_t at = text.find(mark);
  if (at == std::string::npos) return {{}, trimmed(text)};
  return {trimmed(text.substr(0, at)), trimmed(text.substr(at + mark.size()))};
}

class Reading {
 public:
  explicit Reading(Asker asker) : asker_(asker) {}

  template <class Q>
  std::optional<double> positive(const char* word, const std::string& text) {
    const auto read = read_option<Q>(word, text, asker_);
    wrong.insert(wrong.end(), read.diagnostics.begin(), read.diagnostics.end());
    if (!read.value) return std::nullopt;
    if (read.value->likely.si() > 0.0) return read.value->likely.si();
    refuse(option_name(word, asker_) + " is above zero, but '" + text + "' is written", "");
    return std::nullopt;
  }

  std::optional<double> expansion(const std::string& text) {
    const auto read = read_option<Expansion>("expansion", text, asker_);
    wrong.insert(wrong.end(), read.diagnostics.begin(), read.diagnostics.end());
    if (!read.value) return std::nullopt;
    if (read.value->likely.si() >= 0.0) return read.value->likely.si();
    refuse(option_name("expansion", asker_) + " is zero or more, but '" + text + "' is written", "0 leaves it out");
    return std::nullopt;
  }

  std::optional<Day> day(const char* word, const std::string& text) {
    if (text.empty()) return std::nullopt;
    const auto part = [&](std::size_t at, std::size_t length) {
      int out = -1;
      const auto [end, failed] = std::from_chars(text.data() + at, text.data() + at + length, out);
      return failed == std::errc() && end == text.data() + at + length ? out : -1;
    };
    if (text.size() == 10 && text[4] == '-' && text[7] == '-') {
      const site::Date date{part(0, 4), part(5, 2), part(8, 2), {}};
      const bool known = date.year > 0 && date.month >= 1 && date.month <= 12 && date.day >= 1;
      if (known && studies::text(day_of(date)) == text) return day_of(date);
    }
    refuse(option_name(word, asker_) + " is a day, but '" + text + "' is written", "write 2026-10-31");
    return std::nullopt;
  }

  void price(const std::string& text, std::vector<MeterPrice>& out) {
    const char* form = "write \"3.20 per gal\", or of one product \"regular=3.20 EUR per gal\"";
    const auto [product, rest] = split(text, "=");
    auto [amount, unit] = split(rest, " per ");
    if (amount.empty()) std::tie(amount, unit) = split(rest, "/");
    MeterPrice price{product, 0.0, {}};
    const LeadingDecimal read = leading_decimal(amount).value_or(LeadingDecimal{});
    const auto volume = read_quantity("1 " + unit, Volume::kind());
    const bool priced = read.in_range && read.value > 0.0 && std::isfinite(read.value);
    if (!priced || !std::holds_alternative<double>(volume)) {
      return refuse(
          option_name("price", asker_) + " is a number above zero for a volume, but '" + text + "' is written", form);
    }
    price.currency = trimmed(amount.substr(read.end));
    price.price = read.value / std::get<double>(volume);
    out.push_back(std::move(price));
  }

  void yearly(const std::string& text, std::vector<YearlyVolume>& out) {
    const auto [hose, volume] = split(text, "=");
    if (const auto read = positive<Volume>("yearly", volume)) out.push_back({hose, *read});
  }

  void limit(const std::string& text, std::vector<MeterLimit>& out) {
    const auto [of, named] = split(text, ":");
    const auto [name, value] = split(named, "=");
    MeterLimit limit;
    limit.name = name.empty() ? "limit entered" : name;
    limit.of = of == "acceptance" ? LimitFor::acceptance : of == "maintenance" ? LimitFor::maintenance : LimitFor::all;
    if (!of.empty() && limit.of == LimitFor::all) {
      refuse(option_name("limit", asker_) + " is for acceptance or maintenance, but '" + of + "' is written", "");
    }
    const auto [volume, draft] = split(value, " per ");
    if (volume.empty()) {
      limit.share = positive<Ratio>("limit", value);
      if (value.empty())
        refuse("'" + text + "' tells no limit", "write \"county=7 in3 per 5 gal\" or \"county=0.6 %\"");
    } else {
      limit.volume = positive<Volume>("limit", volume);
      limit.draft = positive<Volume>("limit", draft).value_or(0.0);
      limit.in_proportion = true;
    }
    if (limit.share || (limit.volume && limit.draft > 0.0)) out.push_back(std::move(limit));
  }

  void refuse(std::string message, std::string hint) {
    wrong.push_back({Severity::error, std::move(message), std::nullopt, std::move(hint), {}});
  }

  std::vector<Diagnostic> wrong;

 private:
  Asker asker_;
};

}  // namespace

Parsed<MeterOptions> read_meter_options(const MeterTexts& texts, Asker asker) {
  Reading reading(asker);
  MeterOptions out;
  out.hose = texts.hose;
  out.from = reading.day("from", texts.from);
  out.to = reading.day("to", texts.to);
  out.expansion = reading.expansion(texts.expansion);
  for (const std::string& text : texts.prices) reading.price(text, out.prices);
  for (const std::string& text : texts.yearly) reading.yearly(text, out.yearly);
  for (const std::string& text : texts.limits) reading.limit(text, out.limits);
  return {std::move(out), std::move(reading.wrong)};
}

}  // namespace forecourse::studies
