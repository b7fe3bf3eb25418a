#pragma once

namespace forecourse::parts {

// What a pull on the hose does to the dispenser's base: docs/theory/drive-off.md.

/// What stands against being pulled over.
struct DispenserBase {
  double outlet_height = 0.0;  ///< [m] above the mounting surface, > 0
  double weight = 0.0;         ///< [N] of the dispenser
  double half_width = 0.0;     ///< [m] from its middle to the edge it would tip about
};

/// Load at the base of a pulled dispenser.
struct BaseLoad {
  double horizontal = 0.0;  ///< [N] along the pull in plan
  double vertical = 0.0;    ///< [N], upward above zero
  double moment = 0.0;      ///< [N m] left for anchors about the tipping edge; 0 or less: its weight alone holds it
};

/// Load at the base under a pull.
///
/// \param pull      along the hose [N]
/// \param elevation of the pull at the outlet [rad], below zero where it pulls down
/// \param base      outlet height [m], weight [N], half width [m]
/// \return forces [N] and moment [N m].
/// \pre steady pull; the piping below holds nothing.
/// \error the vertical part of the pull is left out of the moment: pulling down outside the edge adds to it, inside it
/// takes from it. Wind and cabinet bending are left out.
/// \source closed form of statics, law of nature
BaseLoad base_load(double pull, double elevation, const DispenserBase& base);

/// Tension in the anchors on the far side.
///
/// \param moment left for the anchors [N m]
/// \param lever  from the tipping edge to those anchors [m], > 0
/// \return tension of all of them together [N], 0 when the weight alone holds it.
/// \error none of the statics; prying and uneven sharing are not in it.
/// \source closed form of statics, law of nature
double anchor_tension(double moment, double lever);

/// Pull at which the moment left for the anchors reaches what they hold.
///
/// \param moment    the anchors hold [N m], >= 0; the user's figure
/// \param elevation of the pull at the outlet [rad]
/// \param base      outlet height [m], weight [N], half width [m]
/// \return pull [N]; infinite for a pull straight up or down.
/// \error as `base_load`.
/// \source closed form of statics, law of nature
double pull_for_moment(double moment, double elevation, const DispenserBase& base);

}  // namespace forecourse::parts
