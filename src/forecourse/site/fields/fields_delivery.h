#pragma once

#include "forecourse/site/fields/fields_pipe.h"

namespace forecourse::site {

template <class Visitor>
void fields(Visitor& v, TruckCompartment& compartment) {
  v.about("truck_compartment", "A compartment of the tanker.");
  v.optional_id("id", compartment.id, IdRule::dotted, "Name of the compartment.");
  v.reference("product", compartment.product, PartKind::product, "What is in it.");
  v.reference("tank", compartment.tank, PartKind::tank, "Where it is dropped.");
  v.quantity("volume", compartment.volume, "What is loaded.", positive);
  v.quantity("capacity", compartment.capacity, "What the compartment holds, with its vapor space.", positive);
  v.quantity("elevation", compartment.elevation, "Elevation of the liquid at the start.");
  v.quantity("height", compartment.height, "Height of the liquid at the start.", positive);
  v.quantity("temperature", compartment.temperature, "Temperature of the fuel.", fuel_temperature);
}

template <class Visitor>
void fields(Visitor& v, Delivery& delivery) {
  v.about("delivery", "How a tanker unloads here.");
  v.id("id", delivery.id, IdRule::plain, "Name of the delivery.");
  v.list("compartment", delivery.compartments, "Compartments of the tanker.");
  v.number("at_once", delivery.at_once, "Drops that run at the same time.", at_least_one);
  v.quantity("rate", delivery.rate, "Rate of a drop; without it the study computes it.", positive);
  v.quantity("surface_difference", delivery.surface_difference, "Liquid in the truck above liquid in the tank.",
             positive);
  v.choice("surfaces", delivery.surfaces, surfaces_words, "What the surfaces do while a drop runs.");
  v.choice("truck_open_to", delivery.truck_open_to, truck_vent_words, "To what the truck's compartment breathes.");
  v.pipe("truck_pipe", delivery.truck_pipe, "The pipe of the truck.");
  v.pipe("hose", delivery.hose, "The delivery hose.");
  v.loss("elbow", delivery.elbow, "Loss of the elbow and adaptor at the fill.");
  v.pipe("vapor_hose", delivery.vapor_hose, "The vapor hose; not listed: none.");
  v.quantity("vapor_density", delivery.vapor_density, "Density of the vapor.", positive);
  v.quantity("vapor_viscosity", delivery.vapor_viscosity, "Viscosity of the vapor.", positive);
  v.quantity("vapor_growth", delivery.vapor_growth, "Volumes of vapor per volume of liquid dropped.", positive);
  v.fact("tightness_proof", delivery.tightness_proof,
         "Whether the driver carries proof of the tanker's last vapor tightness test.");
  v.fact("tight_hoses", delivery.tight_hoses,
         "Whether its vapor hoses are tight and its couplers shut when they are taken off.");
  v.quantity("change_over", delivery.change_over, "From the end of a drop to the start of the next.", not_negative);
  v.quantity("driver_acts_in", delivery.driver_acts_in,
             "From what tells the driver to stop until the truck's valve is shut.", not_negative);
  v.fact("gauged", delivery.gauged, "Whether the room in the tank is measured before each drop.");
}

}  // namespace forecourse::site
