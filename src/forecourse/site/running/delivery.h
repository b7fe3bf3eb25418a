#pragma once

#include "forecourse/site/pipe.h"

namespace forecourse::site {

/// A compartment of the tanker.
struct TruckCompartment {
  Name id;
  SourceSpan where{};
  Name product;
  Name tank;                ///< where it is dropped
  Maybe<Volume> volume;     ///< loaded
  Maybe<Volume> capacity;   ///< with its vapor space
  Maybe<Length> elevation;  ///< of the liquid surface at the start
  Maybe<Length> height;     ///< of the liquid at the start
  Maybe<Temperature> temperature;
};

/// What the surfaces do while a drop runs.
enum class Surfaces { fixed, moving };
/// To what the truck's compartment breathes.
enum class TruckVent { ullage, air };

/// How a tanker unloads here.
struct Delivery {
  Name id;
  SourceSpan where{};
  std::vector<TruckCompartment> compartments;
  Maybe<double> at_once;   ///< drops running at the same time
  Maybe<VolumeFlow> rate;  ///< given; without it the study computes it
  Maybe<Length> surface_difference;
  std::optional<Chosen<Surfaces>> surfaces;
  std::optional<Chosen<TruckVent>> truck_open_to;
  std::optional<Pipe> truck_pipe;
  std::optional<Pipe> hose;
  std::optional<EnteredLoss> elbow;  ///< of elbow and adaptor at the fill
  std::optional<Pipe> vapor_hose;
  Maybe<Density> vapor_density;
  Maybe<DynamicViscosity> vapor_viscosity;
  Maybe<Ratio> vapor_growth;       ///< volumes of vapor per volume of liquid dropped
  Fact tightness_proof;            ///< the driver carries proof of the tanker's last vapor tightness test
  Fact tight_hoses;                ///< its hoses and couplers are vapor tight and shut themselves
  Maybe<Duration> change_over;     ///< between the end of a drop and the start of the next
  Maybe<Duration> driver_acts_in;  ///< from what tells the driver to stop until the truck is shut
  Fact gauged;                     ///< the room in the tank is measured before each drop
};

}  // namespace forecourse::site
