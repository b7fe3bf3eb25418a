#include "forecourse/checks/figures/each_part.h"
#include "forecourse/handover/sheets/source.h"
#include "forecourse/studies/meter/limits.h"

// Meter proving; bonding and continuity.

namespace forecourse::handover {
namespace {

/// The limit that a meter is put to use under: of those that count here and are not for maintenance the one that allows
/// least, for its own draw. Their texts were seen, or others that print them; what is from memory does not count.
std::optional<studies::MeterLimit> limit_here(const site::Site& site) {
  std::optional<studies::MeterLimit> out;
  for (studies::MeterLimit& limit : studies::published_limits(site)) {
    const bool known = limit.seen == studies::LimitSeen::verified || limit.seen == studies::LimitSeen::derived;
    if (!limit.applies || !known || limit.of == studies::LimitFor::maintenance || limit.draft <= 0.0) continue;
    const auto of_draw = studies::allowed(limit, limit.draft);
    const auto least = out ? studies::allowed(*out, limit.draft) : std::nullopt;
    if (of_draw && (!least || *of_draw < *least)) out = std::move(limit);
  }
  return out;
}

RowLimit row_limit(const studies::MeterLimit& limit, double allowed) {
  RowLimit out;
  out.words = limit.name;
  out.at_least = -allowed;
  out.at_most = allowed;
  out.clause = limit.clause;
  out.edition = limit.edition;
  out.verified = limit.seen == studies::LimitSeen::verified;
  out.binds = limit.applies;
  return out;
}

}  // namespace

SheetSection meter_section(const SheetSource& source) {
  SheetSection out =
      section("meter", "Meter proving",
              "Wet the measure first. The error is what the meter told less what the measure holds; above: plus.");
  const std::optional<studies::MeterLimit> limit = limit_here(source.site);
  if (!limit) {
    out.notes.emplace_back(
        "No limit whose text was seen applies here: agree on the draw and on the limit with the officer of weights and "
        "measures.");
  }
  checks::each_hose_of(source.site, [&](const site::Hose& hose, const site::Dispenser&) {
    const std::string path = "hose." + hose.id.text + ".meter";
    SheetRow draw = amount_row("meter-draw", "volume of the draw", hose.id.text, path, Amount::volume);
    SheetRow error = amount_row("meter-error", "error of the draw", hose.id.text, path, Amount::draw);
    if (!limit) {
      draw.missing = to_be_agreed;
    } else {
      set_value(draw, limit->draft, "of the limit", {});
      if (const auto allowed = studies::allowed(*limit, limit->draft)) error.limit = row_limit(*limit, *allowed);
      error.words = "of a draw of that volume; " + limit->name + ": " + studies::word(limit->seen);
    }
    error.tolerance.source = the_limit_alone;
    error.who = "a licensed service person, or the officer of weights and measures";
    out.rows.push_back(std::move(draw));
    out.rows.push_back(std::move(error));
  });
  if (out.rows.empty()) {
    out.notes = {"No hose is entered."};
    return out;
  }
  out.rows.push_back(signature_row("meters proved by"));
  return out;
}

SheetSection bonding_section(const SheetSource& source) {
  SheetSection out = section(
      "bonding", "Grounding and continuity of hoses",
      "The resistance is measured and written down. No limit whose text was seen stands here: the listing of the hose, "
      "the local code and the electrician tell it.");
  for (const site::Dispenser& dispenser : source.site.dispensers) {
    SheetRow row = amount_row("bond-dispenser", "resistance from the dispenser's frame to ground", dispenser.id.text,
                              "dispenser." + dispenser.id.text, Amount::resistance);
    row.tolerance.source = to_be_agreed;
    row.who = "a licensed electrician";
    out.rows.push_back(std::move(row));
  }
  checks::each_hose_of(source.site, [&](const site::Hose& hose, const site::Dispenser&) {
    SheetRow row = amount_row("bond-hose", "resistance from the nozzle's spout to the dispenser's frame", hose.id.text,
                              "hose." + hose.id.text, Amount::resistance);
    row.tolerance.source = to_be_agreed;
    out.rows.push_back(std::move(row));
  });
  for (const site::Tank& tank : source.site.tanks) {
    for (const site::Fill& fill : tank.fills) {
      SheetRow row = amount_row("bond-fill", "resistance from the fill's adaptor to ground",
                                checks::name_of(tank, fill), "tank." + tank.id.text + ".fill", Amount::resistance);
      row.tolerance.source = to_be_agreed;
      out.rows.push_back(std::move(row));
    }
  }
  if (!out.rows.empty()) out.rows.push_back(signature_row("resistances measured by"));
  return out;
}

}  // namespace forecourse::handover
