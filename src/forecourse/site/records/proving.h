#pragma once

#include "forecourse/site/records/moment.h"

namespace forecourse::site::records {

/// One draw of a proving: what a meter told against what a test measure held. Several draws of a day stand apart by
/// their time or name.
struct Proving {
  Moment at;
  Name hose;
  Name draw;                        ///< its number or name
  Name state;                       ///< "as-found" or "as-left", after a change of the meter
  std::optional<Volume> indicated;  ///< that the meter told
  std::optional<Volume> measured;   ///< as read on the measure
  std::optional<Volume> measure;    ///< nominal volume of the measure
  std::optional<Volume> scale;      ///< read on its neck above the nominal volume; negative: below
  std::optional<Temperature> measure_temperature;
  std::optional<Temperature> meter_temperature;
  std::optional<Temperature> reference_temperature;  ///< at which the measure's scale holds
  std::optional<Expansion> expansion;                ///< of the measure's volume
  std::optional<VolumeFlow> flow;                    ///< at which it was drawn
  Name by;
  Name note;
};

}  // namespace forecourse::site::records
