#pragma once

#include "forecourse/site/fields/fields_pipe.h"
#include "forecourse/site/fields/fields_sump.h"

namespace forecourse::site {

template <class Visitor>
void fields(Visitor& v, Interstice& interstice) {
  v.about("interstice", "The room between the two walls of a tank or a line.");
  v.word("watch", interstice.watch, interstice_words, "How it is watched.");
  v.quantity("volume", interstice.volume, "Its volume.", positive);
  v.name("drains_to", interstice.drains_to, "The pump or dispenser in whose sump it opens.");
  v.fact("alarm", interstice.alarm, "Whether somebody is told.");
  v.date("monitored", interstice.monitored, "When it was last looked at or read.");
  v.date("tested", interstice.tested, "Last test.");
}

template <class Visitor>
void fields(Visitor& v, AcceptanceTest& test) {
  v.about("acceptance", "The test of a new line before it is covered or used.");
  v.word("kind", test.kind, acceptance_words, "With liquid or with gas.");
  v.quantity("pressure", test.pressure, "Pressure of the test, at its highest point.", positive);
  v.quantity("greatest", test.greatest, "Greatest pressure to be expected in use.", positive);
  v.quantity("held", test.held, "How long it was held.", positive);
  v.date("tested", test.tested, "Day of the test.");
}

template <class Visitor>
void fields(Visitor& v, Line& line) {
  v.about("line", "A run of product line between two places: a pump, a branch, or a dispenser's inlet.");
  v.id("id", line.id, IdRule::plain, "Name of the line.");
  v.reference("from", line.from, PartKind::place, "Place it comes from: \"P1\", \"B2\" or \"D1.regular\".",
              Need::required);
  v.reference("to", line.to, PartKind::place, "Place it goes to.", Need::required);
  pipe_fields(v, line.pipe);
  v.fact("check_valve", line.check_valve, "A valve that lets flow only from `from` to `to`.");
  v.fact("double_wall", line.double_wall, "Whether it has two walls.");
  v.table("interstice", line.interstice, "The room between the two walls.");
  v.list("seal", line.seals, "Where it enters the sumps at its ends.");
  v.quantity("fall", line.fall, "Slope toward the tank sump.", gradient);
  v.quantity("burial", line.burial, "Cover above it.", not_negative);
  v.quantity("in_sump", line.in_sump, "Longest stretch of it inside a sump, from the wall.", not_negative);
  v.date("tested", line.tested, "Last tightness test.");
  v.table("acceptance", line.acceptance, "The test when it was new, or the last like it.");
  v.fact("flexible_joints", line.flexible_joints, "Whether there are some at tank, islands and where it can move.");
  v.quantity("straight_run", line.straight_run, "Least straight run at a change of direction.", positive);
  v.date("installed", line.installed, "When it was laid.");
  v.date("replaced", line.replaced, "When a part of the run was last replaced.");
  v.quantity("replaced_share", line.replaced_share, "Share of the run that was replaced then.", share_of_one);
  v.date("repaired", line.repaired, "Last repair.");
  line.pipe.where = v.here();
}

template <class Visitor>
void fields(Visitor& v, Branch& branch) {
  v.about("branch", "A place where lines meet without a dispenser.");
  v.id("id", branch.id, IdRule::plain, "Name of the place.");
  v.position("position", branch.position, "Position on plan.");
  v.quantity("elevation", branch.elevation, "Elevation of the line there.");
}

}  // namespace forecourse::site
