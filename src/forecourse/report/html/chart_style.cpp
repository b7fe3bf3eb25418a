#include "forecourse/report/html/chart_style.h"

namespace forecourse::report::html {
namespace {

/// Value of "--name" in a list of tokens; where it is not in it, the call for it.
std::string token(std::string_view tokens, const std::string& name) {
  const std::size_t at = tokens.find(name + ":");
  if (at == std::string_view::npos) return "var(" + name + ")";
  const std::size_t begin = at + name.size() + 1;
  return std::string(tokens.substr(begin, tokens.find(';', begin) - begin));
}

}  // namespace

std::string_view paper_tokens() {
  return "--sheet:#FFF;--raised:#FFF;--sunk:#F2F2F2;--ink:#000;--ink2:#222;--ink3:#444;--rule:#BBB;"
         "--rule2:#555;--mark:#000;--warn:#000;--warn-wash:#FFF;--warn-edge:#000;--gap-edge:#555;--pipe:#FFF;"
         "--adds:#000;--takes:#9AA5A2;--regular:#E3C877;--premium:#7FB8BA;--diesel:#8F8FBE;--vapor:#333;"
         "--soil:#F3F0EA;--soil-mark:#555;--slab:#CCC;--wash-regular:#F4EEDD;--wash-premium:#DFECEC;"
         "--wash-diesel:#E4E4EF;--on-liquid:#000;--on-diesel:#000;--a:#000;--b:#555;";
}

std::string_view chart_rules() {
  return R"css(.chart{display:block;max-width:none;font-size:12.5px}
.chart text{fill:var(--ink2);font-size:12.5px} .chart .axis-title{fill:var(--ink2)}
.chart .tick{text-anchor:end;fill:var(--ink3)} .chart .tick-top{text-anchor:middle;fill:var(--ink3)}
.chart .reading{text-anchor:middle;fill:var(--ink);font-weight:700;paint-order:stroke;stroke:var(--sheet);
stroke-width:4px;stroke-linejoin:round}
.chart .before{text-anchor:end} .chart .behind{text-anchor:start}
.chart .stop-name{text-anchor:middle;fill:var(--ink)} .chart .stop-place{text-anchor:middle;fill:var(--ink3);font-size:12px}
.chart .bar-name{fill:var(--ink)} .chart .bar-owner{fill:var(--ink3)} .chart .bar-value{fill:var(--ink)}
.chart .grid{stroke:var(--rule);stroke-width:1} .chart .zero{stroke:var(--rule2);stroke-width:1.5}
.chart .gap{fill:var(--wash-regular)} .chart .gap.premium{fill:var(--wash-premium)} .chart .gap.diesel{fill:var(--wash-diesel)}
.chart .drop{stroke:var(--gap-edge);stroke-dasharray:1.5 3;fill:none}
.chart .pipe-edge{fill:none;stroke:var(--ink);stroke-width:6;stroke-linejoin:round}
.chart .pipe{fill:none;stroke:var(--pipe);stroke-width:3;stroke-linejoin:round}
.chart .grade{fill:none;stroke:var(--ink);stroke-width:2.25;stroke-linejoin:round}
.chart .stop{fill:var(--sheet);stroke:var(--ink);stroke-width:1.75}
.chart .spread{fill:var(--rule);opacity:.7} .chart .range{stroke:var(--rule2);stroke-width:1.5} .chart .limit{stroke:var(--warn-edge);stroke-width:1.5;stroke-dasharray:5 3}
.chart .limit-left,.chart .limit-right{fill:var(--warn);font-weight:700} .chart .limit-left{text-anchor:end}
.chart .alone,.chart .one-each{fill:var(--sheet);stroke:var(--ink);stroke-width:1.75} .chart .all-open{fill:var(--ink);stroke:var(--ink);stroke-width:1.75}
.chart .value-left,.chart .value-right{fill:var(--ink);paint-order:stroke;stroke:var(--sheet);stroke-width:4px;stroke-linejoin:round}
.chart .value-left,.chart .name-left{text-anchor:end} .chart .name-left,.chart .name-right{fill:var(--ink)}
.chart .adds{fill:var(--adds)} .chart .takes{fill:var(--takes);stroke:var(--ink);stroke-width:1} .chart .step{stroke:var(--rule2)}
.chart .soil{fill:var(--soil)} .chart .earth{stroke:var(--ink);stroke-width:1;fill:none} .chart .ground-line{stroke:var(--ink);stroke-width:2.5}
.chart .liquid,.chart .flow-regular{fill:var(--regular)} .chart .premium{fill:var(--premium)} .chart .diesel{fill:var(--diesel)}
.chart .pipe.regular{stroke:var(--regular);fill:none} .chart .pipe.premium{stroke:var(--premium);fill:none} .chart .pipe.diesel{stroke:var(--diesel);fill:none}
.chart .taken{stroke-dasharray:5 4}
.chart .hatch{stroke:var(--on-liquid);stroke-opacity:.45;stroke-width:1;fill:none}
.chart .hatch.on-diesel{stroke:var(--on-diesel)} .chart .column{fill:var(--sheet);stroke:none} .chart .motor-edge{fill:var(--sheet);stroke:none}
.chart .vessel{fill:var(--sheet)} .chart .shell{fill:none;stroke:var(--ink);stroke-width:2;stroke-linejoin:round}
.chart .surface{fill:none;stroke:var(--on-liquid);stroke-width:1} .chart .surface.on-diesel{stroke:var(--on-diesel)}
.chart .tube{fill:none;stroke:var(--ink);stroke-width:1.25} .chart .open-end{stroke-dasharray:7 3} .chart .edge{fill:none;stroke:var(--ink);stroke-width:1.25}
.chart .motor{fill:var(--ink);stroke:none} .chart .symbol{fill:var(--sheet);stroke:var(--ink);stroke-width:1.5;stroke-linejoin:round}
.chart .symbol-text{font-size:11px;text-anchor:middle;fill:var(--ink)}
.chart .sump{fill:var(--sheet);stroke:var(--ink);stroke-width:1.5} .chart .slab{fill:var(--slab);stroke:var(--ink);stroke-width:1}
.chart .housing{fill:var(--sheet);stroke:var(--ink3);stroke-width:1.25} .chart .inner{fill:none;stroke:var(--ink3);stroke-width:1.5}
.chart .outline{fill:none;stroke:var(--ink3);stroke-width:1.25;stroke-linejoin:round} .chart .wheel{fill:var(--sheet)}
.chart .hose{fill:none;stroke:var(--ink);stroke-width:3} .chart .nozzle{fill:none;stroke:var(--ink);stroke-width:4.5;stroke-linejoin:round}
.chart .vapor{fill:none;stroke:var(--vapor);stroke-width:1.75;stroke-dasharray:6 4}
.chart .break-line{stroke:var(--ink);stroke-width:1;stroke-dasharray:4 3;fill:none} .chart .branch{stroke:var(--ink3);stroke-width:1.25}
.chart .absent{stroke-dasharray:3 3;stroke:var(--ink3)} .chart .liquid-level{fill:none;stroke:var(--ink3);stroke-dasharray:8 4}
.chart .name{fill:var(--ink);font-weight:700} .chart .place{fill:var(--ink2)} .chart .middle{text-anchor:middle} .chart .end{text-anchor:end}
.chart .on-soil{paint-order:stroke;stroke:var(--soil);stroke-width:4px;stroke-linejoin:round}
.chart .on-sheet{paint-order:stroke;stroke:var(--sheet);stroke-width:4px;stroke-linejoin:round}
.chart .dimension{fill:none;stroke:var(--ink3);stroke-width:1} .chart .dimension-text{text-anchor:middle;fill:var(--ink3)}
.chart .leader{fill:none;stroke:var(--ink3);stroke-width:1} .chart .tag{fill:var(--sheet);stroke:var(--ink);stroke-width:1.25}
.chart .tag-text{text-anchor:middle;fill:var(--ink);font-size:12px;font-weight:700} .chart .band{fill:none;stroke:var(--rule2);stroke-width:1}
.chart .band-rule{stroke:var(--rule);stroke-width:1} .chart .cell-name{fill:var(--ink);font-weight:700;font-size:12.5px}
.chart .cell-value{fill:var(--ink);font-size:15px} .chart .cell-unit{fill:var(--ink2);font-size:12px} .chart .cell-note{fill:var(--ink2);font-size:12px}
.chart .run-edge{fill:none;stroke:var(--ink);stroke-linecap:butt} .chart .run{fill:none;stroke:var(--regular)}
.chart .run.premium{stroke:var(--premium);fill:none} .chart .run.diesel{stroke:var(--diesel);fill:none}
.chart .run-mark{fill:none;stroke:var(--ink);stroke-width:1} .chart .run-mark.on-diesel{stroke:var(--on-diesel)} .chart .dashes{stroke-dasharray:2 5}
.chart .plan-frame{fill:none;stroke:var(--rule2)} .chart .tank-mark{fill:var(--sheet);stroke:var(--ink);stroke-width:2} .chart .cross{fill:none;stroke:var(--ink);stroke-width:1}
.chart .island{fill:var(--slab);stroke:var(--ink);stroke-width:1.25} .chart .node{fill:var(--ink)}
.chart .hose-open{fill:var(--ink);stroke:var(--ink);stroke-width:1.25} .chart .hose-shut{fill:var(--sheet);stroke:var(--ink);stroke-width:1.25}
.chart .scale-bar{fill:none;stroke:var(--ink);stroke-width:1.5}
.chart .line-a,.chart .line-b{fill:none;stroke:var(--a);stroke-width:2.25;stroke-linejoin:round}
.chart .area-a{fill:var(--a);opacity:.18} .chart .area-b{fill:var(--b);opacity:.18}
.chart .line-b{stroke:var(--b);stroke-dasharray:7 4} .chart .mark-a{fill:var(--a);stroke:none} .chart .mark-b{fill:var(--b);stroke:none}
.chart .line-c{fill:none;stroke:var(--ink);stroke-width:1.75;stroke-dasharray:1 4;stroke-linecap:round}
.chart .mark-c{fill:var(--sheet);stroke:var(--ink);stroke-width:1.75} .chart .name-c{fill:var(--ink);font-weight:700}
.chart .touch{fill:none;stroke:none;pointer-events:all} .chart .collected{fill:var(--warn-edge);fill-opacity:.3} .chart .collected-edge{stroke:var(--ink);stroke-width:1}
.chart .forbidden{fill:var(--warn-wash)} .chart .forbidden-hatch{stroke:var(--warn-edge);stroke-opacity:.3;stroke-width:1;fill:none}
.chart .name-a,.chart .name-b{fill:var(--a);font-weight:700} .chart .name-b{fill:var(--b)}
)css";
}

std::string with_paper_tokens(std::string_view rules) {
  std::string out;
  std::size_t done = 0;
  for (std::size_t at = rules.find("var("); at != std::string_view::npos; at = rules.find("var(", done)) {
    const std::size_t end = rules.find(')', at);
    if (end == std::string_view::npos) break;
    out += rules.substr(done, at - done);
    out += token(paper_tokens(), std::string(rules.substr(at + 4, end - at - 4)));
    done = end + 1;
  }
  return out + std::string(rules.substr(done));
}

std::string chart_rules_on_paper() {
  std::string out =
      ".chart text,.chart tspan{font-family:B612,\"Segoe UI\",\"Liberation Sans\",Arial,\"DejaVu Sans\",sans-serif}"
      ".ground .top{fill:#000} .ground path{stroke:#000;stroke-width:1;fill:none}";
  out += with_paper_tokens(chart_rules());
  return out +
         ".chart text,.chart .on-sheet,.chart .on-soil,.chart .reading,.chart .value-left,.chart .value-right"
         "{stroke:none}";
}

}  // namespace forecourse::report::html
