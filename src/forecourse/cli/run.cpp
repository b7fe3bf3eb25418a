#include "forecourse/cli/run.h"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <memory>
#include <span>
#include <utility>

#include "forecourse/base/nearest_word.h"
#include "forecourse/cli/commands.h"
#include "forecourse/cli/console.h"
#include "forecourse/cli/options/handover_options.h"
#include "forecourse/cli/options/site_options.h"
#include "forecourse/server/pages/shell_word.h"

namespace forecourse::cli {
namespace {

void add_flow_options(CLI::App& command, FlowArguments& flow) {
  add_site_options(command, flow.site);
  command.add_option("--open", flow.open, "open hoses: D1.a,D2.a; or all; or each (one at each dispenser); or none")
      ->take_all();
  command.add_option("--keep", flow.keep, "a flow that every open hose should keep: \"10 gpm\"");
  command.add_option("--order", flow.order, "order in which hoses open, for the ladder: D1.a,D3.a,D2.a");
  command.add_flag("--pdf", flow.pdf, "also write report.pdf (with weasyprint)");
  command.add_option("--paper", flow.paper, "of the PDF: a4 or letter (default: letter with US units, else a4)")
      ->check(CLI::IsMember({"a4", "letter"}));
}

/// What an incident is asked, but for its kind and the hoses open elsewhere.
void add_case_options(CLI::App& command, IncidentArguments& incident) {
  command.add_option("--id", incident.id,
                     "which [[incident]] of the site file, where one kind is there more than once");
  command.add_option("--at", incident.at, "where: a dispenser, an inlet, a hose, a line or a tank");
  command.add_option("--stop-at", incident.stop_at, "when the pumps are stopped, from the incident on: \"90 s\"");
  command.add_option("--for", incident.count_for, "how long is counted: \"30 d\" (default: 10 min; a crack 30 d)");
  command.add_option("--open-area", incident.open_area, "opening through which fuel escapes: \"0.3 in^2\"");
  command.add_option("--without", incident.without, "a barrier that is not there: shear-valve")
      ->allow_extra_args(false);
  command
      .add_option("--dead", incident.dead, "a barrier that does not act, to the end or for a time: sump-sensor=\"2 h\"")
      ->allow_extra_args(false);
  command.add_option(
      "--runs", incident.runs,
      "runs with drawn inputs, told in full (default: none told; the range takes in 256, of a crack 32)");
  command.add_option("--seed", incident.seed, "of the draws (default: 1)");
  command.add_option("--on", incident.on, on_words);
}

void add_compare_options(CLI::App& command, CompareArguments& compare) {
  add_site_options(command, compare.site);
  command.add_option("OTHER", compare.other, "site file of B (default: SITE)");
  command.add_option("--open", compare.open,
                     "a set of open hoses besides all, one each and alone: D1.a,D2.a; of an incident "
                     "those open elsewhere");
  command.add_option("--keep", compare.keep, "a flow that every open hose should keep: \"10 gpm\"");
  command.add_option("--gain", compare.gain, "share of A's flow that is worth having more of (default: \"1 %\")");
  command.get_option("--set")->description("change a value of B: line.trunk.bore=\"3 in\", hose.*.limiter=\"10 gpm\"");
  command.add_option("--set-both", compare.both, "change a value of A and of B, before the --set of B");
  for (const char* each : {"--set", "--set-both", "--open"}) command.get_option(each)->allow_extra_args(false);
  CLI::Option* incident = command.add_option("--incident", compare.incident.kind,
                                             "compare one incident at both instead of flows: struck, crack, ...");
  for (const char* of_flow : {"--keep", "--gain"}) incident->excludes(command.get_option(of_flow));
  add_case_options(command, compare.incident);
  for (const char* of_incident :
       {"--id", "--at", "--stop-at", "--for", "--open-area", "--without", "--dead", "--runs", "--seed", "--on"}) {
    command.get_option(of_incident)->needs(incident);
  }
}

/// Help that shows the call with the program's name before that of the command.
class WholeCall : public CLI::Formatter {
 public:
  explicit WholeCall(std::string group) : group_(std::move(group)) {}
  [[nodiscard]] std::string make_usage(const CLI::App* app, std::string name) const override {
    return Formatter::make_usage(app, "forecourse " + group_ + std::move(name));
  }

 private:
  std::string group_;  ///< "records " for a command of that group
};

void add_incident_options(CLI::App& command, IncidentArguments& incident) {
  add_site_options(command, incident.site);
  command.add_option("KIND", incident.kind, "what goes wrong")->required();
  command.add_option("--open", incident.open, "hoses open elsewhere: D2.a,D2.b; or none (default: the site file's)");
  add_case_options(command, incident);
  command.add_option("--replay", incident.replay, "a .json of before: are the runs still the same?");
  command.add_flag("--pdf", incident.pdf, "also write the report as a PDF (with weasyprint)");
  command.add_option("--paper", incident.paper, "of the PDF: a4 or letter (default: letter with US units, else a4)")
      ->check(CLI::IsMember({"a4", "letter"}));
}

void add_tank_options(CLI::App& command, TankArguments& tank) {
  add_site_options(command, tank.site);
  command.add_option("--tank", tank.asked.tank, "a tank or compartment (default: all)");
  command.add_option("--depth", tank.asked.depth, "depth of the liquid in place of the reading: \"50 in\"");
  command.add_option("--at", tank.asked.at,
                     "where the depth and the chart are: fill, gauge, pump, or \"8 ft\" from the low end");
  command.add_option("--step", tank.asked.step, "of the volume chart: \"1/8 in\" (default: 1 in or 2 cm)");
  command.add_option("--rate", tank.asked.rate, "of the delivery: \"380 gpm\" (default: the site's)");
  command.add_option("--room", tank.asked.room, "a share told besides 90 % and 95 %: 85%");
  command
      .add_option("--draw", tank.asked.draws,
                  "what a pump draws from siphoned tanks: \"20 gpm\" (default: three of them)")
      ->allow_extra_args(false);
  add_pdf_options(command, tank, "tank");
}

void add_flotation_options(CLI::App& command, FlotationArguments& flotation) {
  add_site_options(command, flotation.site);
  command.add_option("--tank", flotation.tank, "one tank: T1 (default: every tank with a flotation table)");
  command.add_option("--water-level", flotation.water_level,
                     "ground water below grade: \"2 ft\" (default: the site file's)");
  command.add_option("--filled", flotation.filled, "also with this in the tank: \"1200 gal\"");
  command.add_option("--factor", flotation.factor, "factor wanted: 1.2 (default: the site file's)");
  add_pdf_options(command, flotation, "flotation");
}

void add_delivery_options(CLI::App& command, DeliveryArguments& delivery) {
  add_site_options(command, delivery.site);
  studies::DeliveryTexts& texts = delivery.texts;
  command.add_option("DELIVERY", texts.delivery, "which [[delivery]] of the site file (default: the first)");
  command.add_option("--tank", texts.tank, "only what is dropped into this tank");
  command.add_option("--volume", texts.volume, "what the first compartment brings: \"3000 gal\"");
  command.add_option("--rate", texts.rate, "a given rate in place of a computed one: \"380 gpm\"");
  command.add_option("--without", texts.without, "what is left out: vapor-return")->allow_extra_args(false);
  command
      .add_option("--blocked", texts.blocked,
                  "a vent, a shared vent, or a tank with all its vents, that lets nothing pass")
      ->allow_extra_args(false);
  command.add_option("--stop-at", texts.stop_at, "when the truck is shut: \"5 min\"");
  add_pdf_options(command, delivery, "delivery");
}

void add_ledger_options(CLI::App& command, LedgerArguments& ledger) {
  add_site_options(command, ledger.site);
  studies::LedgerAsked& asked = ledger.asked;
  command.add_option("--records", ledger.records, "folder with dips.csv, deliveries.csv, sales.csv, or a store")
      ->required();
  command.add_option("--tank", asked.tank, "a tank or a product (default: every book)");
  command.add_option("--month", asked.month, "that is explained: 2026-11 (default: the last)");
  command.add_option("--from", asked.from, "first day of another period that is explained: 2026-09-01");
  command.add_option("--to", asked.to, "its last day");
  command.add_option("--delivered-as", asked.delivered_as,
                     "how deliveries stand in the book: gross or net (default: gross)");
  command
      .add_option("--meter-error", asked.meter_errors,
                  "what proving told, indicated less true: \"0.3 %\", or of one hose \"D1.a=0.3 % +- 0.1 %\"")
      ->allow_extra_args(false);
  command.add_option("--evaporation", asked.evaporation, "share of what is sold that is lost as vapor: \"0.1 %\"");
  command.add_option("--reading-deviation", asked.reading_deviation, "standard deviation of a depth: \"1/8 in\"");
  command.add_option("--delivery-deviation", asked.delivery_deviation, "of a delivery: \"0.2 %\"");
  command.add_option("--sales-deviation", asked.sales_deviation, "of what is sold between two readings: \"0.1 %\"");
  command.add_option("--smallest-leak", asked.smallest_leak, "that must be found: \"0.1 gph\" (default: 0.2 gph)");
  command.add_option("--own-volume", asked.own_volume, "in a tank under its own test: \"8000 gal\"");
  command.add_option("--own-drift", asked.own_drift, "of its temperature in an hour: \"-0.02 degF\"");
  command.add_option("--own-expansion", asked.own_expansion,
                     "of its fuel: \"0.00067 1/degF\" (default: the product's)");
  add_pdf_options(command, ledger, "ledger");
}

void add_serve_options(CLI::App& command, ServeArguments& serve) {
  command.add_option("SITE", serve.site, "site file (TOML)")->required();
  command.add_option("--port", serve.port, "port of 127.0.0.1; 0: any that is free (default: the first from 8377)")
      ->check(CLI::Range(0, 65535));
  command.add_option("--records", serve.records,
                     "folder with dips.csv, deliveries.csv, sales.csv, or a store (default: SITE.db, records/SITE or "
                     "records beside the site file, if there is one)");
  command.add_option("--web", serve.web, "folder of the built page (default: web beside the program)");
}

std::string typed(const std::vector<std::string>& arguments) {
  std::string out = "forecourse";
  for (const std::string& a : arguments) out += " " + server::shell_word(a);
  return out;
}

/// A first word that is no command is told with the nearest one.
bool is_command(const CLI::App& app, const std::string& word) {
  std::vector<std::string> known;
  for (const CLI::App* command : app.get_subcommands([](const CLI::App*) { return true; })) {
    known.push_back(command->get_name());
  }
  if (std::find(known.begin(), known.end(), word) != known.end()) return true;
  const auto near = nearest_word(word, std::span<const std::string>(known));
  print_error("error: there is no command '" + word + "'\n  hint: " +
              (near ? "did you mean '" + std::string(*near) + "'?" : "forecourse --help lists them") + "\n");
  return false;
}

void add_study_options(CLI::App& command, FlowArguments& study) {
  add_flow_options(command, study);
  command.add_option("--on", study.on, on_words);
  command.add_option("--records", study.records,
                     "folder with dips.csv, deliveries.csv, sales.csv, or a store: for the ledger");
  command.add_option("--sections", study.sections, "sections of the report: findings,flow,containment (default: all)")
      ->allow_extra_args(false);
  command.add_option("--cell", study.cells, "a cell of the report's title block: \"prepared by=R. Tay\"")
      ->allow_extra_args(false);
}

void add_containment_options(CLI::App& command, ContainmentArguments& containment) {
  add_site_options(command, containment.site);
  command.add_option("--inflow", containment.inflows, "a steady inflow: \"3 gph\" (default: five of them)")
      ->allow_extra_args(false);
  command.add_option("--sensor-dead-for", containment.dead_for, "time for which the sensors see nothing: \"2 h\"");
}

void add_vapor_options(CLI::App& command, VaporArguments& vapor) {
  add_site_options(command, vapor.site);
  command.add_option("--temperature", vapor.temperature, "of the fuels: \"70 degF\" (default: the site file's)");
  command.add_option("--on", vapor.on, on_words);
  add_pdf_options(command, vapor, "vapor");
}

void add_store_option(CLI::App& command, RecordsArguments& records) {
  command.add_option("STORE", records.store, "the file that holds the records: station.db")->required();
  command.add_flag("--json", records.json, "print one JSON document");
}

void add_entry_options(CLI::App& command, RecordsArguments& records) {
  command.add_option("--site", records.site, "site file whose tanks, hoses and products the records must name");
  command.add_flag("--dry-run", records.dry_run, "try everything, store nothing");
}

void add_import_options(CLI::App& command, RecordsArguments& records) {
  add_store_option(command, records);
  command.add_option("FILE", records.files, "CSV files, or folders of them")->required();
  command.add_option("--mapping", records.mapping, "how files of somebody else's making are read (TOML)");
  add_entry_options(command, records);
  command.add_flag("--without-rejects", records.without_rejects, "store the good rows though others are rejected");
}

void add_row_options(CLI::App& command, RecordsArguments& records) {
  add_store_option(command, records);
  command.add_option("RECORDS", records.kind, "which: dips, deliveries, sales, ...")->required();
  command.add_option("VALUE", records.values, "values of the row: depth=\"71 1/4 in\"")->required();
  add_entry_options(command, records);
}

void add_export_options(CLI::App& command, RecordsArguments& records) {
  add_store_option(command, records);
  command.add_option("--out", records.out, "folder for the files")->required();
}

void add_backup_options(CLI::App& command, RecordsArguments& records) {
  add_store_option(command, records);
  command.add_option("--to", records.out, "the copy: a new file")->required();
}

/// What the thermal part of a line test is told.
void add_cooling_options(CLI::App& command, studies::LineTestTexts& texts) {
  command
      .add_option("--warmer", texts.warmer,
                  "fuel above the ground: \"18 degF\"; negative: colder; twice: it lies between")
      ->allow_extra_args(false);
  command.add_option("--fuel-temperature", texts.fuel_temperature, "of the fuel (default: the product's)");
  command.add_option("--ground-temperature", texts.ground_temperature, "of the ground (default: the site's)");
  command.add_option("--time-constant", texts.time_constant,
                     "in which the difference falls to 1/e: \"1.5 h\" (default: from bore and ground)");
  command.add_option("--ground", texts.ground, "about the line: damp-sand or dry-sand, both illustrative");
  command.add_option("--ground-conductivity", texts.ground_conductivity, "\"1.5 W/m.K\"");
  command.add_option("--ground-heat", texts.ground_heat, "that it takes up: \"2000 kJ/m3.K\"");
  command.add_option("--expansion", texts.expansion, "of the fuel: \"0.00067 1/degF\" (default: the product's)");
  command.add_option("--line-expansion", texts.line_expansion, "of the line's volume (default: 0)");
}

void add_line_test_options(CLI::App& command, LineTestArguments& test) {
  add_site_options(command, test.site);
  studies::LineTestTexts& texts = test.texts;
  command.add_option("--product", texts.product, "only the line of this product");
  add_cooling_options(command, texts);
  command.add_option("--volume", texts.volume, "of the line (default: of its pipes)");
  command.add_option("--compliance", texts.compliance, "of the line (default: of its pipes): \"20 mL/psi\"");
  command.add_option("--per-degree", texts.per_degree, "pressure of the shut line per degree: \"80 psi/degF\"");
  command.add_option("--vapor", texts.vapor, "the most vapor that may be trapped, at the test pressure: \"0.1 gal\"");
  command.add_option("--leak", texts.leak, "a real leak: \"0.1 gph\"");
  command.add_option("--leak-pressure", texts.leak_pressure, "at which it has that rate (default: of the test)");
  command.add_option("--exponent", texts.exponent, "of the leak with pressure (default: between 0.5 and 1)");
  command.add_option("--pressure", texts.pressure, "of the test (default: 1.5 times the pressure held)");
  command.add_option("--wait", texts.wait, "from when the fuel came to the test (default: 0)");
  command.add_option("--duration", texts.duration, "of the test (default: 1 h)");
  command.add_option("--drop", texts.drop, "of pressure up to which the test passes: \"2 psi\"");
  command.add_option("--measured", texts.measured, "drop of pressure that was read; negative: it rose");
  command.add_option("--find", texts.find, "leak that the test is to find (default: 0.1 gph)");
  command.add_option("--limit", texts.limit, "seeming leak that does not matter (default: half of that)");
  command.add_option("--quiet", texts.quiet, "for how long the line stands still in a day: \"5 h\"")
      ->allow_extra_args(false);
  command.add_option("--stopped", texts.stopped, "for how long the pump stood before it starts: \"8 h\"");
  command.add_option("--on", test.on, on_words);
}

void add_meter_options(CLI::App& command, MeterArguments& meter) {
  add_site_options(command, meter.site);
  studies::MeterTexts& texts = meter.texts;
  command.add_option("--records", meter.records, "folder with provings.csv and sales.csv, or a store");
  command.add_option("--hose", texts.hose, "only this meter; of the draws that name none");
  command
      .add_option("--draw", meter.draws,
                  "a draw, by the columns of provings.csv: \"indicated=5 gal, measure=5 gal, scale=-7 in3\"")
      ->allow_extra_args(false);
  command.add_option("--from", texts.from, "first day of the ledger that is explained: 2026-10-01");
  command.add_option("--to", texts.to, "its last; provings behind it are left out");
  command.add_option("--expansion", texts.expansion,
                     "of measures that tell none: \"0.0000265 1/degF\" (stainless), \"0.0000186 1/degF\" (mild steel)");
  command.add_option("--price", texts.prices, "\"3.20 per gal\", or of a product \"regular=3.20 EUR per gal\"")
      ->allow_extra_args(false);
  command
      .add_option("--limit", texts.limits,
                  "of your own: \"county=7 in3 per 5 gal\", \"county=0.6 %\", \"acceptance: county=0.3 %\"")
      ->allow_extra_args(false);
  command.add_option("--yearly", texts.yearly, "what a meter sells in a year: \"60000 gal\" or \"D1.a=60000 gal\"")
      ->allow_extra_args(false);
  add_pdf_options(command, meter, "meter");
}

struct ShelfArguments {
  std::string kind;
  bool json = false;
};

void add_shelf_options(CLI::App& command, ShelfArguments& shelf) {
  command.add_option("--kind", shelf.kind, "only parts of this kind");
  command.add_flag("--json", shelf.json, "print one JSON document");
}

Exit show_shelf(const ShelfArguments& shelf) { return shelf_command(shelf.kind, shelf.json); }

/// The words that were typed, and how what they call ended.
struct Call {
  const std::vector<std::string>& arguments;
  Exit exit = Exit::fine;
};

/// How a command is told in the list of commands, and below its own help.
struct CommandWords {
  const char* name;
  const char* about;
  const char* footer;
};

/// A command of its own, or of a group of commands.
CLI::App* add_words(CLI::App& app, const CommandWords& words) {
  CLI::App* own = app.add_subcommand(words.name, words.about);
  own->footer(words.footer);
  const std::string group = app.get_parent() == nullptr ? "" : app.get_name() + " ";
  own->formatter(std::make_shared<WholeCall>(group));
  return own;
}

template <class Arguments>
void add(CLI::App& app, Call& call, const CommandWords& words, void (*add_options)(CLI::App&, Arguments&),
         Exit (*command)(const Arguments&)) {
  auto given = std::make_shared<Arguments>();
  CLI::App* own = add_words(app, words);
  add_options(*own, *given);
  own->callback([&call, given, command] {
    if constexpr (requires { given->command; }) given->command = typed(call.arguments);
    call.exit = command(*given);
  });
}

void add_flow_commands(CLI::App& app, Call& call) {
  add(app, call,
      {"study", "all studies of a station, summary and report",
       "Example: forecourse study sites/hollin-gap.toml --out out/hollin-gap"},
      add_study_options, study_command);
  add(app, call,
      {"flow", "flow and pressure at every hose for any set of hoses open",
       "Example: forecourse flow sites/site-s.toml --open D1.a,D3.a --set line.trunk.bore=\"3 in\""},
      add_flow_options, flow_command);
  add(app, call,
      {"compare", "two stations, or one with changed values, side by side",
       "A is SITE. B is OTHER, or SITE where no OTHER is given; --set changes values of B alone,\n"
       "--set-both those of both. A star is every item: hose.*.limiter, line.*.bore.\n"
       "Example: forecourse compare sites/site-s.toml --set line.trunk.bore=\"3 in\"\n"
       "         forecourse compare a.toml b.toml --set-both hose.*.limiter=\"10 gpm\"\n"
       "         forecourse compare a.toml b.toml --incident struck --at D3 --stop-at \"45 s\" --runs 1000"},
      add_compare_options, compare_command);
}

void add_escape_commands(CLI::App& app, Call& call) {
  add(app, call,
      {"incident", "what escapes when something goes wrong, event by event",
       "KIND: struck, drive-off, sump-fire, crack, line-break, overfill, nozzle-left-open.\n"
       "Barriers, for --without and --dead: shear-valve, upper-poppet, crack-trip, fusible-link, breakaway,\n"
       "sump-sensor, leak-detector, emergency-stop, check-valve, sump, overfill-valve, overfill-alarm, driver.\n"
       "Example: forecourse incident sites/site-s.toml struck --at D3 --stop-at \"45 s\" --without shear-valve"},
      add_incident_options, incident_command);
  add(app, call,
      {"containment", "what each sump holds, how soon it fills, where fuel goes",
       "Example: forecourse containment sites/hollin-gap.toml --inflow \"3 gph\" --sensor-dead-for \"2 h\""},
      add_containment_options, containment_command);
}

void add_tank_commands(CLI::App& app, Call& call) {
  add(app, call,
      {"tank", "what each tank holds, the room in it, where overfill devices belong",
       "Example: forecourse tank sites/hollin-gap.toml --tank T1 --depth \"50 in\" --at \"8 ft\" --rate \"380 gpm\""},
      add_tank_options, tank_command);
  add(app, call,
      {"flotation", "what holds buried tanks down against the ground water",
       "Example: forecourse flotation sites/hollin-gap.toml --tank T1 --water-level \"2 ft\" --filled \"1200 gal\""},
      add_flotation_options, flotation_command);
  add(app, call,
      {"vapor", "vapor: pressure, losses, rules and tests; product care",
       "Example: forecourse vapor sites/hollin-gap.toml --temperature \"70 degF\""},
      add_vapor_options, vapor_command);
  add(app, call,
      {"delivery", "rate, time and vapor pressure while a tanker unloads by gravity",
       "Can be left out: vapor-return, vent, vent-valve, overfill-valve, overfill-alarm, driver.\n"
       "Example: forecourse delivery sites/marle-cross.toml --tank T1 --without vapor-return\n"
       "         forecourse delivery sites/marle-cross.toml --blocked stack"},
      add_delivery_options, delivery_command);
}

void add_records_group(CLI::App& app, Call& call) {
  CLI::App* group = add_words(
      app, {"records", "dips, deliveries, sales, tests of a station: into a store, out of it, copied",
            "Example: forecourse records import hollin-gap.db sites/records/hollin-gap --site sites/hollin-gap.toml"});
  group->require_subcommand(1);
  add(*group, call,
      {"import", "CSV files into the store; the same rows again add nothing",
       "With a reject nothing is stored, unless --without-rejects.\n"
       "Example: forecourse records import hollin-gap.db sites/records/hollin-gap --dry-run"},
      add_import_options, records_import_command);
  add(*group, call,
      {"add", "one row into the store",
       "Example: forecourse records add hollin-gap.db dips day=2026-11-02 time=06:30 tank=T1 depth=\"71 1/4 in\""},
      add_row_options, records_add_command);
  add(*group, call,
      {"export", "everything as CSV files", "Example: forecourse records export hollin-gap.db --out out/hollin-gap"},
      add_export_options, records_export_command);
  add(*group, call,
      {"backup", "a whole and checked copy of the store",
       "Example: forecourse records backup hollin-gap.db --to hollin-gap-2026-11-25.db"},
      add_backup_options, records_backup_command);
  add(*group, call,
      {"list", "what is in the store, and whether it is sound", "Example: forecourse records list hollin-gap.db"},
      add_store_option, records_list_command);
}

void add_record_commands(CLI::App& app, Call& call) {
  add(app, call,
      {"ledger", "daily stock against the monthly rule, what explains a difference, how sure that is",
       "Example: forecourse ledger sites/hollin-gap.toml --records sites/records/hollin-gap --meter-error \"0.1 %\""},
      add_ledger_options, ledger_command);
  add_records_group(app, call);
}

void add_leak_commands(CLI::App& app, Call& call) {
  add(app, call,
      {"line-test", "line tests and leak detectors: what temperature does, what a result proves",
       "Example: forecourse line-test sites/site-s.toml --warmer \"18 degF\" --time-constant \"1.5 h\"\n"
       "         forecourse line-test sites/hollin-gap.toml --product regular --warmer \"-9 degF\" --leak \"0.1 gph\""},
      add_line_test_options, line_test_command);
}

void add_meter_command(CLI::App& app, Call& call) {
  add(app, call,
      {"meter", "meters by their provings: errors against limits, cost, drift, what they explain of a ledger",
       "Example: forecourse meter sites/hollin-gap.toml --records sites/records/hollin-gap --price \"3.20 per gal\"\n"
       "         forecourse meter sites/site-s.toml --hose D1.a --draw \"indicated=5 gal, measure=5 gal, scale=-7 "
       "in3\""},
      add_meter_options, meter_command);
}

void add_handover_commands(CLI::App& app, Call& call) {
  add(app, call,
      {"calendar", "every test, inspection and reading that comes back: last done, due, by whom; a file for a phone",
       "Example: forecourse calendar sites/hollin-gap.toml --records sites/records/hollin-gap --out out/calendar"},
      add_calendar_options, calendar_command);
  add(app, call,
      {"kit", "every part along the course: size, rating needed, standard, count; what to order, spares",
       "Example: forecourse kit sites/hollin-gap.toml --waste \"5 %\" --stick \"20 ft\" --out out/kit"},
      add_kit_options, kit_command);
  add(app, call,
      {"draw", "plan and sections to scale: SVG, DXF and PDF; what has no place is listed",
       "Example: forecourse draw sites/marle-cross.toml --out out/drawings --pdf\n"
       "         forecourse draw sites/hollin-gap.toml plan --paper a3 --scale 1:500"},
      add_draw_options, draw_command);
  add(app, call,
      {"sheets", "sheets to fill in: commissioning, walk-throughs, return to service, cards; readings typed back",
       "SHEET: commissioning, thirty-day, annual, return-to-service, delivery-card, emergency-card.\n"
       "Example: forecourse sheets sites/hollin-gap.toml --out out/sheets --pdf --tolerance flow=\"5 %\"\n"
       "         forecourse sheets sites/hollin-gap.toml --readings out/sheets/readings.csv --store hollin-gap.db"},
      add_sheets_options, sheets_command);
  add(app, call,
      {"lesson", "teach with the station's own numbers: pages along the course, what each part prevents, a handout",
       "Example: forecourse lesson sites/hollin-gap.toml --out out/lesson --pdf\n"
       "         forecourse lesson sites/hollin-gap.toml --lesson sites/lessons/shear-valve.toml\n"
       "         forecourse lesson sites/hollin-gap.toml --questions 10 --level 1 --out out/questions --pdf\n"
       "         forecourse lesson sites/hollin-gap.toml --failure struck --at D1"},
      add_lesson_options, lesson_command);
}

void add_other_commands(CLI::App& app, Call& call) {
  add(app, call,
      {"checks", "every requirement that the station lives under: value, limit, margin, clause, what to change",
       "Example: forecourse checks sites/hollin-gap.toml --records sites/records/hollin-gap"},
      add_checks_options, checks_command);
  add(app, call,
      {"serve", "the workbench: look at a station and change it in the browser",
       "Example: forecourse serve sites/site-s.toml"},
      add_serve_options, serve_command);
  add(app, call,
      {"shelf", "generic parts that a site file can name, with their sources",
       "Example: forecourse shelf --kind breakaway"},
      add_shelf_options, show_shelf);
}

}  // namespace

Exit run(const std::vector<std::string>& arguments) {
  CLI::App app("forecourse computes the course of the fuel at a filling station, from one site file.", "forecourse");
  app.set_version_flag("--version", std::string("forecourse ") + FORECOURSE_VERSION);
  app.require_subcommand(1);
  Call call{arguments};
  add_flow_commands(app, call);
  add_escape_commands(app, call);
  add_tank_commands(app, call);
  add_record_commands(app, call);
  add_leak_commands(app, call);
  add_meter_command(app, call);
  add_handover_commands(app, call);
  add_other_commands(app, call);
  const bool word_first = !arguments.empty() && !arguments.front().starts_with('-');
  if (word_first && !is_command(app, arguments.front())) return Exit::bad_input;
  std::vector<std::string> reversed(arguments.rbegin(), arguments.rend());  // as CLI11 wants them
  try {
    app.parse(reversed);
  } catch (const CLI::CallForHelp&) {
    const CLI::App* asked = &app;
    while (!asked->get_subcommands().empty()) asked = asked->get_subcommands().front();
    print(asked->help());
  } catch (const CLI::CallForVersion&) {
    print(app.version() + "\n");
  } catch (const CLI::ParseError& wrong) {
    print_error(std::string("error: ") + wrong.what() + "\n  hint: forecourse --help, or forecourse COMMAND --help\n");
    return Exit::bad_input;
  }
  return call.exit;
}

}  // namespace forecourse::cli
