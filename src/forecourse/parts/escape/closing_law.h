#pragma once

#include <optional>
#include <span>
#include <variant>
#include <vector>

namespace forecourse::parts {

/// A point of a closing curve.
struct ClosingPoint {
  double time = 0.0;  ///< [s] after the delay
  double open = 0.0;  ///< share of the full opening [1]

  friend bool operator==(const ClosingPoint&, const ClosingPoint&) = default;
};

/// How a device shuts once something has triggered it. The figures are the user's: the project holds none.
///
/// Full open for the delay; then along the points, straight between them, from full open to shut. Without points it
/// shuts at the end of the delay: the law "full flow for an equivalent time". See docs/theory/closing-law.md.
struct ClosingLaw {
  double delay = 0.0;                ///< [s], >= 0
  std::vector<ClosingPoint> points;  ///< rising in time from 0, falling in opening to 0

  friend bool operator==(const ClosingLaw&, const ClosingLaw&) = default;
};

/// A point of a valve's curve over its stroke.
struct StrokePoint {
  double stroke = 0.0;            ///< share of the way from open (0) to shut (1) [1]
  double flow_coefficient = 0.0;  ///< Cv, Kv or flow area, any one unit, >= 0
};

/// Why figures make no closing law.
enum class ClosingFault {
  not_finite,      ///< a figure is missing or no number
  negative_time,   ///< a delay, stroke time or point lies before its start
  time_falls,      ///< a point comes before the one ahead of it
  opens_again,     ///< the opening rises, or is above 1 or below 0
  stays_open,      ///< the last point is not shut
  too_few_points,  ///< a curve over the stroke needs its open end and one more point
  beyond_stroke,   ///< a point of the curve lies past the end of the stroke
  not_from_open,   ///< the curve over the stroke does not begin at stroke 0 with a flow coefficient above 0
};

/// Full flow for an equivalent time, then nothing.
/// \param time [s], >= 0
[[nodiscard]] ClosingLaw full_flow_for(double time);

/// Opening that falls evenly over a stroke after a delay.
/// \param delay, stroke [s], >= 0
[[nodiscard]] ClosingLaw steady_stroke(double delay, double stroke);

/// A stroke at an even speed whose flow coefficient is known against the way: the opening is its share of that at
/// full open.
///
/// \param delay  [s], >= 0
/// \param stroke time for the whole way [s], >= 0
/// \param curve  rising in stroke [1] from 0, falling in flow coefficient [any unit]
/// \return law with times [s], or what is wrong with the figures; the last point must be shut.
/// \error straight between points: give more where the curve bends.
/// \source common practice, no source
[[nodiscard]] std::variant<ClosingLaw, ClosingFault> stroke_with_curve(double delay, double stroke,
                                                                       std::span<const StrokePoint> curve);

/// What is wrong with a law; nothing where it may be used.
[[nodiscard]] std::optional<ClosingFault> fault_of(const ClosingLaw& law);

/// Share of the full opening at a time after the trigger.
/// \param since [s]
/// \return [1], 1 before the delay is over, 0 once shut
/// \pre `fault_of` finds none.
/// \error none against the points.
/// \source common practice, no source
[[nodiscard]] double opening(const ClosingLaw& law, double since);

/// Time from the trigger until it is shut.
/// \return [s]
/// \error none against the points.
/// \source common practice, no source
[[nodiscard]] double shut_time(const ClosingLaw& law);

/// Time for which the full steady flow gives the same volume, between constant pressures and without inertia.
///
/// Where the device alone loses the pressure (share 1) it is the integral of the opening. The more the rest of the way
/// loses, the longer the flow holds while the opening falls: the rest decides until little is left open.
/// \param share_of_loss the device's part in the pressure lost at full flow [1], 0 to 1
/// \return [s], between delay and `shut_time`, greater for a smaller share.
/// \pre `fault_of` finds none; losses go with flow squared.
/// \error exact for the law; line pack and the moving column change it, see docs/theory/closing-law.md.
/// \source closed form
[[nodiscard]] double equivalent_time(const ClosingLaw& law, double share_of_loss = 1.0);

/// Loss of a device that is partly shut: the open one's over the opening squared, as if it stood still.
///
/// \param open_loss loss coefficient K [1], or any measure of loss at one flow (then the unit is that one)
/// \param open      share of the open flow coefficient [1], 0 to 1
/// \return the same measure [1], infinite at 0.
/// \pre quasi-steady; an area stands for the flow coefficient only where the seat loses all the pressure.
/// \error exact by the definition of the flow coefficient; not known where only an area is given.
/// \source common practice, no source
[[nodiscard]] double throttled_loss(double open_loss, double open);

}  // namespace forecourse::parts
