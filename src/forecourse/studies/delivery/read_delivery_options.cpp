#include "forecourse/studies/delivery/read_delivery_options.h"

#include <array>
#include <span>

#include "forecourse/base/nearest_word.h"

namespace forecourse::studies {
namespace {

constexpr std::array<DeliveryPart, 6> parts{DeliveryPart::vapor_return,   DeliveryPart::vent,
                                            DeliveryPart::vent_valve,     DeliveryPart::overfill_valve,
                                            DeliveryPart::overfill_alarm, DeliveryPart::driver};

class Reader {
 public:
  Reader(Asker asker, std::vector<Diagnostic>& problems) : asker_(asker), problems_(problems) {}

  /// A quantity above zero.
  template <class Q>
  std::optional<double> positive(const char* option, const std::string& text) {
    const Parsed<site::Maybe<Q>> read = read_option<Q>(option, text, asker_);
    problems_.insert(problems_.end(), read.diagnostics.begin(), read.diagnostics.end());
    if (!read.value) return std::nullopt;
    if (read.value->likely.si() > 0.0) return read.value->likely.si();
    problems_.push_back({Severity::error,
                         option_name(option, asker_) + " is above zero, but '" + text + "' is written",
                         std::nullopt,
                         {},
                         {}});
    return std::nullopt;
  }

  std::optional<DeliveryPart> part(const std::string& text) {
    for (const DeliveryPart one : parts) {
      if (text == word(one)) return one;
    }
    const std::vector<std::string> known = delivery_part_words();
    std::string all;
    for (const std::string& one : known) all += (all.empty() ? "" : ", ") + one;
    const auto near = nearest_word(text, std::span<const std::string>(known));
    problems_.push_back({Severity::error,
                         "there is nothing called '" + text + "' to leave out of a delivery",
                         std::nullopt,
                         (near ? "did you mean '" + std::string(*near) + "'? " : "") + "there are: " + all,
                         {}});
    return std::nullopt;
  }

 private:
  Asker asker_;
  std::vector<Diagnostic>& problems_;
};

}  // namespace

std::vector<std::string> delivery_part_words() {
  std::vector<std::string> out;
  out.reserve(std::size(parts));
  for (const DeliveryPart part : parts) out.emplace_back(word(part));
  return out;
}

Parsed<DeliveryOptions> read_delivery_options(const DeliveryTexts& texts, Asker asker) {
  Parsed<DeliveryOptions> out;
  Reader read(asker, out.diagnostics);
  DeliveryOptions& o = out.value;
  o.delivery = texts.delivery;
  o.tank = texts.tank;
  o.volume = read.positive<Volume>("volume", texts.volume);
  o.rate = read.positive<VolumeFlow>("rate", texts.rate);
  o.stop_at = read.positive<Duration>("stop_at", texts.stop_at);
  for (const std::string& text : texts.without) {
    if (const auto part = read.part(text)) o.without.push_back(*part);
  }
  o.blocked = texts.blocked;
  return out;
}

}  // namespace forecourse::studies
