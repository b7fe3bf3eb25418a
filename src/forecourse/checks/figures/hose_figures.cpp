#include "forecourse/checks/figures/each_part.h"

namespace forecourse::checks {
namespace {

std::vector<FigureAt> hose_length(const Facts& facts) {
  return each_hose(facts, [](const site::Dispenser&, const site::Hose& hose) {
    FigureAt out;
    out.subject = hose.id.text;
    out.where = hose.where;
    out.value = hose_reach(hose);
    if (!out.value) out.enter = "enter the length of whip and curb of the hose";
    return out;
  });
}

std::vector<FigureAt> breakaway_fitted(const Facts& facts) {
  return each_hose(facts, [](const site::Dispenser&, const site::Hose& hose) {
    FigureAt out;
    out.subject = hose.id.text;
    out.where = hose.where;
    // With a lumped loss the parts of a hose are not listed.
    if (hose.breakaway || hose.parting || !hose.loss) {
      out.fact = hose.breakaway || hose.parting;
    } else {
      out.enter = "enter breakaway of the hose; its parts are not listed one by one";
    }
    return out;
  });
}

/// Whether both ends of a parted breakaway shut.
std::vector<FigureAt> breakaway_retains(const Facts& facts) {
  return each_hose(facts, [](const site::Dispenser&, const site::Hose& hose) {
    FigureAt out;
    out.subject = hose.id.text;
    out.where = hose.parting ? hose.parting->where : hose.where;
    if (hose.parting && hose.parting->poppet) {
      out.fact = hose.parting->poppet->value == site::Poppet::double_poppet;
    } else {
      out.enter = "enter parting = { poppet = ... } of the hose";
    }
    return out;
  });
}

/// How much nearer to the nozzle the breakaway sits than where a retriever holds the hose: the breakaway sits at the
/// far end of the curb hose.
std::vector<FigureAt> retriever_beyond_breakaway(const Facts& facts) {
  return each_hose(facts, [](const site::Dispenser&, const site::Hose& hose) {
    FigureAt out = of_part(hose.id.text, hose.where);
    if (hose.retriever && !*hose.retriever) {
      out.exempt = "the hose has no retriever";
    } else if (hose.retriever_at && hose.curb && hose.curb->length) {
      out.value = hose.retriever_at->likely.si() - hose.curb->length->likely.si();
    } else {
      out.enter = "enter retriever = false, or retriever_at and the length of the curb hose";
    }
    return out;
  });
}

template <site::Fact site::Hose::*Member>
std::vector<FigureAt> of_hose(const Facts& facts) {
  return each_hose(facts, [](const site::Dispenser&, const site::Hose& hose) {
    return entered_fact(hose.id.text, hose.where, hose.*Member,
                        "enter racked, self_closing, closes_without_pressure and controlled_elsewhere of the hose");
  });
}

}  // namespace

std::vector<Figure> hose_figures() {
  return {
      amount_figure<Length>("retriever-beyond-breakaway",
                            "how far beyond the breakaway, seen from the nozzle, a retriever holds the hose", "m",
                            retriever_beyond_breakaway),
      fact_figure("hose-racked", "a hose that hangs on a reel or a rack", of_hose<&site::Hose::racked>),
      fact_figure("nozzle-self-closing", "a nozzle that shuts by itself", of_hose<&site::Hose::self_closing>),
      fact_figure("nozzle-closes-without-pressure", "a nozzle that shuts when its hose loses pressure",
                  of_hose<&site::Hose::closes_without_pressure>),
      fact_figure("flow-controlled-elsewhere", "flow that something besides the nozzle starts and stops",
                  of_hose<&site::Hose::controlled_elsewhere>),
      {"hose-length", "length of a hose, whip and curb together", FigureKind::amount, &Length::kind(), "m",
       Measured::fuel, hose_length},
      {"breakaway-fitted", "a breakaway on the hose", FigureKind::fact, nullptr, "", Measured::fuel, breakaway_fitted},
      {"breakaway-retains", "both ends of the parted breakaway shut", FigureKind::fact, nullptr, "", Measured::fuel,
       breakaway_retains},
  };
}

}  // namespace forecourse::checks
