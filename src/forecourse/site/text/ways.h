#pragma once

#include "forecourse/site/pump.h"
#include "forecourse/site/site.h"
#include "forecourse/site/text/read_run.h"

namespace forecourse::site {

// Checks of one table by itself, made right after it was read.

/// Most tables have nothing to check beyond their keys.
template <class T>
void check_table(const ReadRun&, const T&) {}

/// A loss is given in exactly one way, and its points rise.
void check_table(const ReadRun& run, const EnteredLoss& loss);
/// A pump curve is given in exactly one way, and it falls.
void check_table(const ReadRun& run, const PumpCurve& curve);
void check_table(const ReadRun& run, const Hose& hose);
/// A loaded filter does not lose less than a clean one.
void check_table(const ReadRun& run, const Part& part);
/// Viscosities at rising temperatures, two at least, that fall.
void check_table(const ReadRun& run, const Product& product);
/// A nominal size is on the shelf.
void check_table(const ReadRun& run, const Pipe& pipe);
void check_table(const ReadRun& run, const Line& line);
void check_table(const ReadRun& run, const VentValve& valve);
void check_table(const ReadRun& run, const Tank& tank);
void check_table(const ReadRun& run, const TankShape& shape);
void check_table(const ReadRun& run, const Displacement& displacement);
void check_table(const ReadRun& run, const Calibration& calibration);
void check_table(const ReadRun& run, const PumpControl& control);
void check_table(const ReadRun& run, const OverfillValve& valve);
/// A closing is given in exactly one way, and its points fall to shut.
void check_table(const ReadRun& run, const ValveClosing& closing);
/// A leak takes both its rate and its pressure.
void check_table(const ReadRun& run, const LeakReading& reading);
/// The groove's height is given once.
void check_table(const ReadRun& run, const ShearValve& valve);
/// Not both an acceleration and a speed.
void check_table(const ReadRun& run, const Vehicle& vehicle);
/// Two readings of a crack at most, at two pressures, that rise with it; the pump's cycle is given once and whole.
void check_table(const ReadRun& run, const IncidentRequest& request);

}  // namespace forecourse::site
