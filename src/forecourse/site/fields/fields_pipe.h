#pragma once

#include "forecourse/site/fields/rules.h"

namespace forecourse::site {

template <class Visitor>
void fields(Visitor& v, EnteredLoss& loss) {
  v.about("loss",
          "A pressure loss, given in exactly one way: k (with bore), cv, kv, points, or per_flow and "
          "per_flow_squared. A bare number is k on the own bore; \"0.17 psi/gpm^2\" is per_flow_squared.");
  v.number("k", loss.k, "Loss coefficient on the velocity in `bore`.", not_negative);
  v.quantity("bore", loss.bore, "Inside diameter that k refers to; without it the pipe's own.", positive);
  v.number("cv", loss.cv, "Flow coefficient: US gpm of water at a loss of 1 psi.", positive);
  v.number("kv", loss.kv, "Flow coefficient: m3/h of water at a loss of 1 bar.", positive);
  v.quantity("per_flow", loss.per_flow, "a in a q + b q^2.", not_negative);
  v.quantity("per_flow_squared", loss.per_flow_squared, "b in a q + b q^2.", not_negative);
  v.points("points", loss.points, &LossPoint::flow, &LossPoint::loss, "Measured pairs of flow and loss, rising.");
}

/// The keys of a pipe, in its own table or in a line's.
template <class Visitor>
void pipe_fields(Visitor& v, Pipe& pipe) {
  v.quantity("length", pipe.length, "Length along the run.", not_negative);
  v.quantity("bore", pipe.bore, "Inside diameter.", positive);
  v.name("nominal", pipe.nominal, "Nominal size and construction: an id on the shelf of pipes.");
  v.quantity("wall", pipe.wall, "Thickness of the wall.", positive);
  v.quantity("modulus", pipe.modulus, "Modulus of elasticity of the wall.", positive);
  v.quantity("roughness", pipe.roughness, "Roughness of the inside; without it from the shelf.", not_negative);
  v.quantity("wave_speed", pipe.wave_speed, "Speed of a pressure wave, entered instead of wall and modulus.", positive);
  v.quantity("rating", pipe.rating, "Rated working pressure.", positive);
  v.quantity("stiffness", pipe.stiffness, "Of a hose: pull per stretch.", positive);
  v.quantity("strength", pipe.strength, "Of a hose: pull at which it fails.", positive);
  v.loss("loss", pipe.loss, "Loss of all fittings along it.");
  v.word("material", pipe.material, pipe_material_words, "What it is made of.");
  v.names("listed_to", pipe.listed_to, "Standards that it is listed to: [\"UL 971\"].");
}

template <class Visitor>
void fields(Visitor& v, Pipe& pipe) {
  v.about("pipe", "A run of round conduit. A text is its length: `whip = \"30 in\"`.");
  pipe_fields(v, pipe);
}

template <class Visitor>
void fields(Visitor& v, Part& part) {
  v.about("part", "A part that only loses pressure. A text is the id of a generic part on the shelf.");
  v.name("shelf", part.shelf, "Id of a generic part on the shelf.");
  v.loss("loss", part.loss, "Its loss; replaces the shelf's. Of a filter, when it is clean.");
  v.loss("loaded", part.loaded, "Of a filter: its loss when it is due for a change.");
  v.quantity("rating", part.rating, "Rated working pressure.", positive);
  v.quantity("burst", part.burst, "Pressure at which it bursts, as tested.", positive);
  v.number("accuracy_class", part.accuracy_class, "Of a meter: the accuracy class that it is marked with.", positive);
  v.date("tested", part.tested, "Last test; of a meter its last proving.");
  v.names("listed_to", part.listed_to, "Standards that it is listed to: [\"UL 567\"].");
}

}  // namespace forecourse::site
