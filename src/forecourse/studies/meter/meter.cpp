#include "forecourse/studies/meter/meter.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "forecourse/base/nearest_word.h"
#include "forecourse/studies/meter/drift.h"
#include "forecourse/studies/meter/yearly.h"

namespace forecourse::studies {
namespace {

namespace records = site::records;

constexpr double rounding = 1e-9;

MeterJudged judged(std::size_t number, const MeterLimit& limit, const network::MeterDraw& draw) {
  MeterJudged out;
  out.limit = number;
  out.draft = draw.indicated;
  out.error = *draw.error;
  out.error_volume = *draw.error_volume;
  out.allowed = allowed(limit, draw.indicated);
  if (!out.allowed) return out;
  out.allowed_share = *out.allowed / draw.indicated;
  const bool as_share = limit.share && limit.base == 0.0;
  out.within = as_share ? std::abs(out.error) <= *limit.share * (1.0 + rounding)
                        : std::abs(out.error_volume) <= *out.allowed * (1.0 + rounding);
  return out;
}

bool is_for(const MeterLimit& limit, const ProvingTold& told, bool as_left) {
  return limit.of == LimitFor::all || !told.state_told || (limit.of == LimitFor::acceptance) == as_left;
}

/// How far a draw goes of what is allowed; one that a limit is not for goes before none.
double strain(const MeterJudged& judged) {
  return judged.allowed ? std::abs(judged.error_volume) / *judged.allowed : -1.0;
}

void tell_worst(ProvingTold& out, std::size_t limits) {
  for (std::size_t n = 0; n < limits; ++n) {
    std::optional<WorstDraw> worst;
    for (std::size_t i = 0; i < out.draws.size(); ++i) {
      for (const MeterJudged& one : out.draws[i]) {
        if (one.limit == n && (!worst || strain(one) > strain(worst->judged))) worst = WorstDraw{i, one};
      }
    }
    if (worst) out.against.push_back(*worst);
  }
}

ProvingTold told(network::MeterProving proving, const std::vector<MeterLimit>& limits) {
  ProvingTold out;
  out.day = day_of(proving.day);
  out.state_told = std::none_of(proving.draws.begin(), proving.draws.end(),
                                [](const network::MeterDraw& draw) { return draw.entered.state.empty(); });
  for (std::size_t i = 0; i < proving.draws.size(); ++i) {
    const network::MeterDraw& draw = proving.draws[i];
    std::vector<MeterJudged>& all = out.draws.emplace_back();
    out.lost = out.lost || !draw.error;
    if (!draw.error) continue;
    if (!out.worst || std::abs(*draw.error) > std::abs(*proving.draws[*out.worst].error)) out.worst = i;
    for (std::size_t n = 0; n < limits.size(); ++n) {
      if (is_for(limits[n], out, proving.as_left)) all.push_back(judged(n, limits[n], draw));
    }
  }
  out.proving = std::move(proving);
  tell_worst(out, limits.size());
  return out;
}

std::string product_of(const site::Hose& hose) {
  if (hose.blend.empty()) return hose.product.text;
  std::string out;
  for (const site::BlendShare& part : hose.blend) out += (out.empty() ? "" : " and ") + part.product.text;
  return out;
}

class Study {
 public:
  Study(const site::Site& site, const records::Records& all, const MeterOptions& options,
        const std::vector<BookMeters>& books)
      : site_(site), all_(all), books_(books) {
    out_.version = FORECOURSE_VERSION;
    out_.options = options;
    out_.limits = published_limits(site);
    out_.limits.insert(out_.limits.end(), options.limits.begin(), options.limits.end());
  }

  MeterResult study() {
    const std::vector<network::MeterProving> provings =
        network::meter_provings(site_, counted(), out_.options.expansion);
    for (const site::Dispenser& dispenser : site_.dispensers) {
      for (const site::Hose& hose : dispenser.hoses) {
        if (out_.options.hose.empty() || hose.id.text == out_.options.hose) add(hose, provings);
      }
    }
    if (by_default_) {
      out_.defaults.push_back({"reference temperature of the test measures that tell none",
                               network::default_measure_reference(),
                               "K",
                               DefaultStatus::published,
                               "[nist_prover_article]",
                               {},
                               false});
    }
    for (const BookMeters& book : books_) out_.books.push_back(shares_of(book));
    return std::move(out_);
  }

 private:
  /// The draws up to the end of the period.
  std::vector<records::Proving> counted() {
    std::vector<records::Proving> out;
    std::size_t behind = 0;
    for (const records::Proving& draw : all_.provings) {
      if (out_.options.to && *out_.options.to < day_of(draw.at.day)) {
        ++behind;
      } else {
        out.push_back(draw);
      }
    }
    if (behind > 0)
      warn({}, fmt::format("{} draw{} behind the period left out", behind, behind == 1 ? " is" : "s are"), "");
    return out;
  }

  void warn(const SourceSpan& where, std::string message, std::string hint) {
    out_.warnings.push_back({Severity::warning, std::move(message), where, std::move(hint), {}});
  }

  void add(const site::Hose& hose, const std::vector<network::MeterProving>& provings) {
    MeterTold meter;
    meter.hose = hose.id.text;
    meter.product = product_of(hose);
    meter.where = hose.where;
    for (const network::MeterProving& proving : provings) {
      if (proving.hose == meter.hose) meter.provings.push_back(told(proving, out_.limits));
    }
    if (meter.provings.empty()) return out_.unproved.push_back(meter.hose);
    tell_draws(meter);
    tell_error(meter);
    meter.year = year_of(meter.hose, all_, out_.options);
    tell_cost(meter);
    tell_drift(meter);
    out_.meters.push_back(std::move(meter));
  }

  /// What was left out of a draw, and what it was left out for, is never silent.
  void tell_draws(const MeterTold& meter) {
    for (const ProvingTold& one : meter.provings) {
      for (const network::MeterDraw& draw : one.proving.draws) {
        const std::string of = "a draw of " + meter.hose + " on " + text(one.day);
        const SourceSpan& where = draw.entered.hose.where;
        if (!draw.problem.empty()) {
          warn(where, of + " is not counted: " + draw.problem, "");
          continue;
        }
        by_default_ = by_default_ || (draw.reference_by_default && draw.held != draw.read);
        if (draw.one_sided) {
          warn(where, of + " has one temperature of the two; its error is the plain one",
               "enter measure_temperature and meter_temperature");
        }
      }
    }
  }

  static void tell_error(MeterTold& meter) {
    const network::DrawSet& last = meter.provings.back().proving.counted();
    meter.error = last.mean;
    meter.standard_error = last.standard_error;
    if (!meter.error) {
      meter.who_loses = "not determined: no draw of the last proving has an error";
    } else if (meter.standard_error && std::abs(*meter.error) < 2.0 * *meter.standard_error) {
      meter.who_loses = "it is not told apart from a meter that tells what it gives";
    } else if (*meter.error > 0.0) {
      meter.who_loses = "it tells more than it gives: customers pay for fuel that they do not get";
    } else if (*meter.error < 0.0) {
      meter.who_loses = "it tells less than it gives: the owner gives fuel away";
    } else {
      meter.who_loses = "it tells what it gives";
    }
  }

  void tell_cost(MeterTold& meter) const {
    MeterYear& year = meter.year;
    if (year.volume && meter.error) year.error = *year.volume * *meter.error / (1.0 + *meter.error);
    const MeterPrice* price = nullptr;
    for (const MeterPrice& one : out_.options.prices) {
      if (one.product == meter.product || (one.product.empty() && price == nullptr)) price = &one;
    }
    if (price == nullptr) {
      const bool blended = meter.product.find(" and ") != std::string::npos;
      year.price_words = blended ? "enter a price for all products" : "enter its price";
      return;
    }
    year.currency = price->currency;
    if (year.error) year.money = *year.error * price->price;
  }

  /// The strictest limit that a meter in use is under and that decides, as a share of its last draft.
  [[nodiscard]] std::optional<double> limit_of(const MeterTold& meter) const {
    const ProvingTold& last = meter.provings.back();
    if (!last.worst) return std::nullopt;
    std::optional<double> out;
    const double draft = last.proving.draws[*last.worst].indicated;
    for (const MeterLimit& limit : out_.limits) {
      const std::optional<double> most = allowed(limit, draft);
      if (!limit.applies || limit.seen == LimitSeen::memory || limit.of == LimitFor::acceptance || !most) continue;
      if (!out || *most / draft < *out) out = *most / draft;
    }
    return out;
  }

  void tell_drift(MeterTold& meter) const {
    std::vector<double> days;
    std::vector<double> errors;
    std::vector<double> totals;
    bool every_total = true;
    for (const ProvingTold& one : meter.provings) {
      if (one.proving.as_left) {  // a change: the drift begins anew with what was left
        days.clear();
        errors.clear();
        totals.clear();
        every_total = true;
      }
      if (!one.proving.counted().mean) continue;
      days.push_back(one.day.number);
      errors.push_back(*one.proving.counted().mean);
      const std::optional<double> total = total_on(meter.hose, one.day, all_);
      every_total = every_total && total && (totals.empty() || *total > totals.back());
      totals.push_back(total.value_or(0.0));
    }
    const std::optional<double> share = limit_of(meter);
    meter.by_time = drift_of(days, errors, share);
    if (every_total) {
      meter.by_volume = drift_of(totals, errors, share);
    } else {
      meter.by_volume.problem = "its totalizer is not on record at each proving";
    }
  }

  static MetersOfBook shares_of(const BookMeters& book) {
    MetersOfBook out;
    out.book = book;
    for (const MeterSold& sold : book.meters) out.explained += sold.volume.value_or(0.0);
    out.left = book.over_short - out.explained;
    for (const MeterSold& sold : book.meters) {
      MeterShare share;
      share.sold = sold;
      if (sold.volume && sold.known - *sold.volume > 0.0) share.error = *sold.volume / (sold.known - *sold.volume);
      if (!sold.volume && sold.sold - out.left > 0.0) share.alone = out.left / (sold.sold - out.left);
      out.shares.push_back(share);
    }
    std::stable_sort(out.shares.begin(), out.shares.end(), [](const MeterShare& a, const MeterShare& b) {
      if (a.sold.volume.has_value() != b.sold.volume.has_value()) return a.sold.volume.has_value();
      if (a.sold.volume) return std::abs(*a.sold.volume) > std::abs(*b.sold.volume);
      return a.sold.sold > b.sold.sold;
    });
    return out;
  }

  const site::Site& site_;
  const records::Records& all_;
  const std::vector<BookMeters>& books_;
  MeterResult out_;
  bool by_default_ = false;
};

std::vector<std::string> hoses_of(const site::Site& site) {
  std::vector<std::string> out;
  for (const site::Dispenser& dispenser : site.dispensers) {
    for (const site::Hose& hose : dispenser.hoses) out.push_back(hose.id.text);
  }
  return out;
}

void check_name(const std::string& name, const std::vector<std::string>& known, const char* noun,
                std::vector<Diagnostic>& out) {
  if (name.empty() || std::find(known.begin(), known.end(), name) != known.end()) return;
  const auto near = nearest_word(name, std::span<const std::string>(known));
  std::string all;
  for (const std::string& one : known) all += (all.empty() ? "" : ", ") + one;
  out.push_back({Severity::error,
                 std::string("the station has no ") + noun + " '" + name + "'",
                 std::nullopt,
                 near ? "did you mean '" + std::string(*near) + "'?" : "there are: " + all,
                 {}});
}

}  // namespace

MeterResult study_meter(const site::Site& site, const records::Records& all, const MeterOptions& options,
                        const std::vector<BookMeters>& books, const Context&) {
  return Study(site, all, options, books).study();
}

std::vector<Diagnostic> check_options(const site::Site& site, const MeterOptions& options) {
  std::vector<Diagnostic> out;
  const std::vector<std::string> hoses = hoses_of(site);
  std::vector<std::string> products;
  for (const site::Product& product : site.products) products.push_back(product.id.text);
  check_name(options.hose, hoses, "hose", out);
  for (const YearlyVolume& one : options.yearly) check_name(one.hose, hoses, "hose", out);
  for (const MeterPrice& one : options.prices) check_name(one.product, products, "product", out);
  if (options.from && options.to && *options.to < *options.from) {
    out.push_back({Severity::error, "the period ends before it begins", std::nullopt, "", {}});
  }
  return out;
}

std::vector<Diagnostic> check_draws(const site::Site& site, const std::vector<records::Proving>& draws) {
  std::vector<Diagnostic> out;
  for (const records::Proving& draw : draws) {
    const network::MeterDraw judged = network::meter_draw(site, draw, std::nullopt);
    const auto wrong = [&](std::string message, std::string hint) {
      out.push_back({Severity::error, std::move(message), draw.hose.where, std::move(hint), {}});
    };
    if (!judged.problem.empty()) wrong(judged.problem, "");
    if (judged.one_sided) {
      wrong(draw.meter_temperature ? "the temperature of the meter is entered, that of the measure is not"
                                   : "the temperature of the measure is entered, that of the meter is not",
            "enter both, or neither: then the error is the plain one, and it says so");
    }
  }
  return out;
}

}  // namespace forecourse::studies
