#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forecourse/base/context.h"
#include "forecourse/base/default_used.h"
#include "forecourse/base/diagnostic.h"
#include "forecourse/parts/vapor/stage_one.h"
#include "forecourse/site/site.h"
#include "forecourse/studies/vapor/product_care.h"

namespace forecourse::studies {

struct VaporOptions {
  std::optional<double> temperature;  ///< of the fuels [K]; wins over the site file
};

/// True vapor pressure at one temperature.
struct VaporPoint {
  double temperature = 0.0;  ///< [K]
  double pressure = 0.0;     ///< absolute [Pa]
};

/// How well a figure of a loss is known, as printed: "read in its source", "from memory, not verified".
enum class LossStatus { computed, read, unverified };
[[nodiscard]] const char* word(LossStatus status);

/// Vapor lost in one way.
struct LossTold {
  std::string what;                       ///< "filling the tank, submerged"
  std::string by;                         ///< "published factor", "loading equation, S 0.60"
  std::optional<double> mass_per_volume;  ///< [kg/m3]; empty: not determined
  std::optional<double> mass_per_month;   ///< [kg]; empty: that, or the throughput is not entered
  LossStatus status = LossStatus::computed;
  std::optional<bool> here;  ///< this is how it is done here; empty: not known
  std::string missing;       ///< why it is not determined
};

/// A product and its vapor.
struct ProductVapor {
  std::string product;
  SourceSpan where{};
  bool gasoline = false;                      ///< by its kind
  std::optional<double> temperature;          ///< [K]
  std::optional<double> reid_vapor_pressure;  ///< entered, absolute [Pa]
  std::optional<double> true_vapor_pressure;  ///< absolute [Pa]
  std::string pressure_source;                ///< how it was come by, or what to enter
  std::vector<VaporPoint> curve;
  std::optional<double> molar_mass;  ///< of the vapor [kg/mol]
  std::string molar_mass_source;     ///< or what to enter
  std::optional<double> throughput;  ///< [m3] a month
  std::vector<LossTold> losses;      ///< of gasoline
  std::optional<double> lost;  ///< [kg] a month, all that is done here by published factors; empty: not determined
  std::optional<double> with_stage_one;     ///< the same with balanced filling [kg]
  std::optional<double> without_stage_one;  ///< and without [kg]
};

/// Least pressure at the end of a static pressure test.
struct StaticTarget {
  double ullage = 0.0;    ///< [m3]
  double pressure = 0.0;  ///< above the atmosphere [Pa]
};

/// The targets of one band of nozzle counts.
struct StaticTargets {
  int nozzles_from = 1;
  int nozzles_to = 6;         ///< 0: any more
  bool constant_read = true;  ///< its constant was read without doubt
  bool here = false;          ///< the station's count lies in it
  std::vector<StaticTarget> targets;
};

/// Tests of a tank's vapor return.
struct VaporTests {
  std::string tank;
  SourceSpan where{};
  std::optional<double> target;          ///< [Pa] of the last pressure test, by its nozzles
  std::optional<double> federal_target;  ///< [Pa] of it by the federal rule, which has one constant for all nozzles
  std::optional<double> end;             ///< [Pa] that it had
  std::optional<double> efficiency;      ///< [1] of the last test of it
};

struct VaporResult {
  VaporOptions options;  ///< as used
  std::string version;
  std::vector<ProductVapor> products;
  std::optional<double> gasoline_throughput;  ///< [m3] a month; empty: not known
  std::optional<parts::ThroughputTier> tier;
  int gasoline_nozzles = 0;
  std::vector<StaticTargets> static_targets;
  std::vector<VaporTests> tests;
  ProductCare care;
  std::vector<DefaultUsed> defaults;
  std::vector<Diagnostic> warnings;
};

/// Vapor of the fuels: its pressure, what is lost of it, and what the published rules and tests say to it. Product
/// care stands with it.
///
/// Values entered as a spread are taken at their likely value.
/// \error that of each factor and equation, told beside it; a factor is a mean over many stations.
/// \fails what is not entered is not determined, with what to enter
[[nodiscard]] VaporResult study_vapor(const site::Site& site, const VaporOptions& options, const Context& context = {});

}  // namespace forecourse::studies
