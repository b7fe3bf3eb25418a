#include "forecourse/report/html/style.h"

#include <string>

#include "forecourse/report/html/chart_style.h"

namespace forecourse::report::html {
namespace {

/// Tokens, page and tables.
constexpr std::string_view base = R"css(
:root{color-scheme:light dark;
--sheet:#FBFCFC;--raised:#FFFFFF;--sunk:#E4EAE8;--ink:#14201E;--ink2:#43524F;--ink3:#5C6B68;
--rule:#D3DCD9;--rule2:#7A8985;--mark:#8A2466;--warn:#7A5000;--warn-wash:#FCF1DA;--warn-edge:#B27800;
--gap-edge:#7A8985;--pipe:#F6F8F7;--adds:#14201E;--takes:#8B9894;--a:#0072B2;--b:#C45500;
--regular:#D8B44A;--premium:#2F8588;--diesel:#4A4A86;--vapor:#6F4A94;--soil:#E9E3D8;--soil-mark:#8C7F68;--slab:#C3C9C6;
--wash-regular:#F3E9CC;--wash-premium:#D2E6E7;--wash-diesel:#DCDCEC;--on-liquid:#14201E;--on-diesel:#FFFFFF;
--s1:4px;--s2:8px;--s3:12px;--s4:16px;--s5:24px;--s6:32px;--s7:48px}
@media (prefers-color-scheme:dark){:root{
--sheet:#131C1B;--raised:#1A2524;--sunk:#0F1817;--ink:#EAF0EE;--ink2:#B3C1BD;--ink3:#92A19D;
--rule:#2A3836;--rule2:#5E6E6A;--mark:#F39BCF;--warn:#F2BE4F;--warn-wash:#30240B;--warn-edge:#E69F00;
--gap-edge:#7A8985;--pipe:#32423F;--adds:#EAF0EE;--takes:#7A8985;--a:#56B4E9;--b:#F0803A;
--regular:#C9A63E;--premium:#3C9C9F;--diesel:#7877C4;--vapor:#C39BEA;--soil:#2A231A;--soil-mark:#8A7A60;--slab:#46504D;
--wash-regular:#37301A;--wash-premium:#173538;--wash-diesel:#26264A;--on-liquid:#0C1312;--on-diesel:#0C1312}}
*{box-sizing:border-box}
html{-webkit-text-size-adjust:100%}
body{margin:0;background:var(--sheet);color:var(--ink);
font:15px/1.5 "B612","Segoe UI",-apple-system,"Helvetica Neue","Liberation Sans",Arial,"DejaVu Sans",sans-serif;
font-variant-numeric:tabular-nums lining-nums}
main,header{max-width:1008px;margin:0 auto;padding:0 var(--s5)}
main{padding-bottom:var(--s7)}
h1,h2,h3,p,ul,dl,dd,figure{margin:0}
h1{font-size:38px;line-height:1.15;letter-spacing:-.015em;padding-top:var(--s6);overflow-wrap:anywhere}
header>p{font-size:19px;color:var(--ink2);margin:var(--s1) 0 var(--s4)}
h2{font-size:26px;line-height:1.2;letter-spacing:-.01em;margin:var(--s7) 0 var(--s3);overflow-wrap:anywhere}
h3{font-size:19px;line-height:1.3;margin:var(--s6) 0 var(--s2);overflow-wrap:anywhere}
p,li{max-width:70ch;overflow-wrap:anywhere}
p+p,p+ul,ul+p{margin-top:var(--s2)}
ul{padding-left:1.2em} li+li{margin-top:var(--s1)} li::marker{color:var(--ink3)}
.quiet{color:var(--ink2)}
.ground{display:block;width:100%;height:10px}
.ground path{stroke:var(--ink);stroke-width:1;fill:none}
.ground .top{fill:var(--ink)}
.cells{display:grid;grid-template-columns:repeat(auto-fit,minmax(118px,1fr));border:1px solid var(--rule2);
border-width:1px 0 0 1px;margin:var(--s4) 0}
.cells div{padding:var(--s2) var(--s3);border:1px solid var(--rule2);border-width:0 1px 1px 0;min-width:0}
.cells dt{font-size:12px;color:var(--ink3)} .cells dd{overflow-wrap:anywhere}
.caution{max-width:none;border-left:4px solid var(--warn-edge);background:var(--warn-wash);
padding:var(--s3) var(--s4)}
.readings{display:flex;flex-wrap:wrap;gap:var(--s4) var(--s6);margin:var(--s3) 0 var(--s2)}
.readings dt{font-size:13px;color:var(--ink2)} .readings dd{color:var(--ink2)}
.readings b{font-size:26px;font-weight:400;line-height:1.2;color:var(--ink);letter-spacing:-.01em}
.readings div:first-child b{font-size:38px}
.readings div{display:flex;flex-direction:column;justify-content:flex-end}
.readings span{display:block;font-size:12px;color:var(--ink3)}
.scroll{overflow-x:auto;margin:var(--s4) 0} .scroll:focus-visible{outline:2px solid var(--mark);outline-offset:2px}
table{border-collapse:collapse;min-width:min(100%,440px);font-size:14px;line-height:1.4} .wide{width:100%}
caption,figcaption{text-align:left;padding-bottom:var(--s2);color:var(--ink2);font-size:14px}
caption b,figcaption b{color:var(--ink);font-size:15px;margin-right:var(--s2)}
th,td{text-align:left;vertical-align:top;padding:6px var(--s4) 6px 0;border-bottom:1px solid var(--rule)}
th:last-child,td:last-child{padding-right:0}
thead th{font-weight:400;color:var(--ink2);font-size:13px;vertical-align:bottom;border-bottom:1.5px solid var(--ink);
line-height:1.25}
thead .n{white-space:normal;min-width:84px} thead span{display:block;white-space:nowrap;color:var(--ink3);font-size:12px}
tbody th{font-weight:700} .wide tbody th{min-width:8.5em}
tfoot th,tfoot td{border-top:1.5px solid var(--ink);border-bottom:0;font-weight:700}
.n{text-align:right;white-space:nowrap;padding-left:var(--s3)} .w{min-width:15em} .wide .w{width:40%}
.wide .n{width:1%} .pair{display:grid;grid-template-columns:repeat(auto-fit,minmax(min(100%,440px),1fr));gap:0 var(--s6);align-items:start}
.marked>th:first-child{box-shadow:inset 4px 0 var(--warn-edge);padding-left:var(--s3)}
figure{margin:var(--s5) 0} figure .scroll{margin:0}
)css";

/// What holds for narrow pages and, up to the tokens, for paper.
constexpr std::string_view narrow =
    R"css(pre{font:13px/1.45 ui-monospace,"DejaVu Sans Mono",monospace;white-space:pre-wrap;overflow-wrap:anywhere;
background:var(--sunk);padding:var(--s3) var(--s4);margin:var(--s2) 0}
summary{cursor:pointer;min-height:32px;padding:6px 0} summary:focus-visible{outline:2px solid var(--mark);outline-offset:2px}
.on-narrow{display:none}
@media screen and (max-width:640px){
.on-wide{display:none} .on-narrow{display:block}
main,header{padding-left:var(--s4);padding-right:var(--s4)} h1{font-size:26px;padding-top:var(--s5)} h2{font-size:22px}
header>p{font-size:15px} .cells{grid-template-columns:1fr 1fr} .readings{gap:var(--s3) var(--s5)}
.readings div:first-child{flex-basis:100%}
caption b,caption span,figcaption b,figcaption span{display:block;max-width:calc(100vw - 32px)} th,td{padding-right:var(--s3)} .n{padding-left:0} thead .n{min-width:0}}
)css";

constexpr std::string_view paper =
    R"css(@page{margin:15mm 12mm 17mm;@bottom-right{content:"Page " counter(page) " of " counter(pages);font:8pt "B612","Liberation Sans",Arial,sans-serif;color:#222}}
*{print-color-adjust:exact;-webkit-print-color-adjust:exact}
body{font-size:10.5pt} main,header{max-width:none;padding:0} h1{font-size:26pt;padding-top:0} header>p{font-size:13pt}
h2{font-size:16pt;margin-top:22pt} h3{font-size:12.5pt;margin-top:14pt}
table{font-size:9.5pt;min-width:0} table{line-height:1.3} th,td{padding-top:2px;padding-bottom:2px} .cells{display:table;width:100%;table-layout:fixed;border-width:1px}.cells div{display:table-cell;border-width:0 1px 0 0;padding:4px 6px}.cells div:last-child{border-right:0}.cells dt{font-size:8pt}.cells dd{font-size:9.5pt}
.pair{display:block} .readings{display:table}.readings div{display:table-cell;padding-right:22pt;vertical-align:top} .readings dt{font-size:9pt}.readings span{font-size:8.5pt}
 .w{min-width:9em} thead th,caption,figcaption{font-size:9pt} caption b,figcaption b{font-size:10pt}
.readings div:first-child b,.readings b{font-size:17pt}
h1,h2,h3,h2+p,.readings,caption,figcaption{break-after:avoid} .keep,tr,figure,.caution,.cells,.readings{break-inside:avoid}
tbody tr:first-child{break-after:avoid} tbody tr:last-child,tfoot,tfoot tr{break-before:avoid}
thead{display:table-header-group} tfoot{display:table-row-group} .scroll{overflow:visible;margin:8pt 0} .chart{width:100%;height:auto}
.screen,.on-narrow{display:none} .on-wide{display:block}
figure .scroll{margin:4pt 0} figcaption{padding-bottom:4pt}
p,li{orphans:3;widows:3}}
)css";

}  // namespace

std::string_view style_sheet() {
  static const std::string sheet = std::string(base) + std::string(chart_rules()) + std::string(narrow) +
                                   "@media print{\n:root{color-scheme:light;" + std::string(paper_tokens()) + "}\n" +
                                   std::string(paper);
  return sheet;
}

}  // namespace forecourse::report::html
