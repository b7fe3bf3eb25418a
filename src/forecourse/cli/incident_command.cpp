#include <atomic>
#include <cstdio>
#include <filesystem>
#include <functional>
#include <optional>
#include <span>
#include <thread>
#include <variant>

#include "forecourse/base/nearest_word.h"
#include "forecourse/base/unit_text.h"
#include "forecourse/cli/commands.h"
#include "forecourse/cli/console.h"
#include "forecourse/cli/incident/incident_trace.h"
#include "forecourse/cli/output.h"
#include "forecourse/cli/pdf.h"
#include "forecourse/report/incident/incident_report.h"

namespace forecourse::cli {
namespace {

/// A word that is none of a list, told with the nearest of it.
void tell_unknown(const std::string& what, const std::string& word, const std::vector<std::string>& known) {
  const auto near = nearest_word(word, std::span<const std::string>(known));
  std::string all;
  for (const std::string& one : known) all += (all.empty() ? "" : ", ") + one;
  print_error("error: there is no " + what + " '" + word +
              "'\n  hint: " + (near ? "did you mean '" + std::string(*near) + "'? " : "") + "there are: " + all + "\n");
}

/// A quantity of an option; false, with the reason on standard error, if it is none.
template <class Q>
bool read_option(const char* option, const std::string& text, site::Maybe<Q>& member) {
  if (text.empty()) return true;
  const auto read = read_quantity(text, Q::kind());
  if (const auto* wrong = std::get_if<UnitTextError>(&read)) {
    print_error(std::string("error: ") + option + " " + wrong->message + "\n" +
                (wrong->hint.empty() ? "" : "  hint: " + wrong->hint + "\n"));
    return false;
  }
  const Q value = Q::from_si(std::get<double>(read));
  member = site::Entered<Q>{value, value, value, {}};
  return true;
}

std::vector<std::string> split_commas(const std::string& text) {
  std::vector<std::string> out;
  std::string one;
  for (const char c : text + ",") {
    if (c != ',') {
      one += c;
    } else if (!one.empty()) {
      out.push_back(std::move(one));
      one.clear();
    }
  }
  return out;
}

bool read_barrier(const std::string& text, studies::Barrier& barrier) {
  if (const auto found = studies::barrier(text)) {
    barrier = *found;
    return true;
  }
  tell_unknown("barrier", text, studies::barrier_words());
  return false;
}

bool read_dead(const std::string& text, studies::DeadBarrier& dead) {
  const std::size_t equals = text.find('=');
  if (!read_barrier(text.substr(0, equals), dead.barrier)) return false;
  if (equals == std::string::npos) return true;
  site::Maybe<Duration> time;
  if (!read_option("--dead", text.substr(equals + 1), time)) return false;
  dead.dead_for = time->likely.si();
  return true;
}

bool read_kind(const std::string& text, studies::IncidentKind& kind) {
  if (const auto found = studies::incident_kind(text)) {
    kind = *found;
    return true;
  }
  tell_unknown("kind of incident", text,
               {"struck", "drive-off", "sump-fire", "crack", "line-break", "overfill", "nozzle-left-open"});
  return false;
}

bool read_options(const IncidentArguments& a, studies::IncidentOptions& o) {
  bool good = read_kind(a.kind, o.kind);
  o.request.at.text = a.at;
  o.request.id.text = a.id;
  for (const std::string& hose : split_commas(a.open)) o.request.open.push_back({hose, {}});
  good = read_option("--stop-at", a.stop_at, o.request.stop_at) && good;
  good = read_option("--for", a.count_for, o.request.counts_until) && good;
  good = read_option("--open-area", a.open_area, o.request.open_area) && good;
  for (const std::string& text : a.without) good = read_barrier(text, o.without.emplace_back()) && good;
  for (const std::string& text : a.dead) good = read_dead(text, o.dead.emplace_back()) && good;
  o.today = day_of(a.on);
  good = o.today.has_value() && good;
  o.runs = a.runs;
  o.seed = a.seed;
  return good;
}

/// Independent pieces on two threads, and a bar on standard error where that is a terminal.
Context context_of(const Console& console) {
  Context context;
  context.parallel_for = [](std::size_t count, const std::function<void(std::size_t)>& piece) {
    std::atomic<std::size_t> next{0};
    const auto work = [&] {
      for (std::size_t i = next++; i < count; i = next++) piece(i);
    };
    std::vector<std::jthread> others;
    for (unsigned t = 1; t < std::max(1U, std::thread::hardware_concurrency()); ++t) others.emplace_back(work);
    work();
  };
  if (!console.is_terminal) return context;
  context.progress = [](double share) {
    constexpr int width = 40;
    const int full = static_cast<int>(share * width);
    std::string bar(static_cast<std::size_t>(width), '.');
    for (int i = 0; i < full; ++i) bar[static_cast<std::size_t>(i)] = '#';
    print_error("\r[" + bar + "] " + std::to_string(static_cast<int>(100.0 * share)) + " %" +
                (share >= 1.0 ? "\n" : ""));
  };
  return context;
}

bool write_report(const IncidentArguments& arguments, const SiteSource& source, const studies::IncidentResult& result,
                  report::IncidentFacts& facts) {
  if (!make_folder(arguments.site.out)) return false;
  const std::filesystem::path folder(arguments.site.out);
  const std::string name = "incident-" + arguments.kind;
  const std::string page = (folder / (name + ".html")).string();
  const std::string data = (folder / (name + ".json")).string();
  const std::string pages = (folder / (name + ".pdf")).string();
  const std::string html = report::incident_report(result, source.site, facts);
  facts.written = {page, data};
  if (!write_file(page, html) || !write_file(data, report::to_text(report::incident_document(result, facts)))) {
    return false;
  }
  if (!arguments.pdf) return true;
  facts.written.push_back(pages);
  return write_pdf(pages, html, paper_of(arguments.paper, source.site.display));
}

}  // namespace

Exit incident_command(const IncidentArguments& arguments) {
  studies::IncidentOptions options;
  if (!read_options(arguments, options)) return Exit::bad_input;
  if (arguments.pdf && arguments.site.out.empty()) {
    print_error("error: --pdf needs --out, the folder to write into\n");
    return Exit::bad_input;
  }
  SiteArguments asked = arguments.site;
  std::optional<IncidentTrace> trace;
  if (!arguments.replay.empty()) {
    trace = read_trace(arguments.replay, options.kind);
    if (!trace) return Exit::bad_input;
    fill(options, *trace);
    if (asked.sets.empty()) asked.sets = trace->sets;
  }
  SiteSource source;
  if (!load_site(asked, source)) return Exit::bad_input;
  const std::vector<Diagnostic> wrong = studies::check_options(source.site, options);
  if (!wrong.empty()) {
    print_error(report::to_text(wrong, source.texts));
    return Exit::bad_input;
  }
  const Console console = this_console();
  studies::IncidentResult result = studies::study_incident(source.site, options, context_of(console));
  if (trace) return compare_with(*trace, result);
  result.warnings.insert(result.warnings.begin(), source.warnings.begin(), source.warnings.end());
  report::IncidentFacts facts{today(), arguments.command, source.texts, {}, arguments.site.sets};
  if (!arguments.site.out.empty() && !write_report(arguments, source, result, facts)) return Exit::bad_input;
  if (arguments.site.json) {
    print(report::to_text(report::incident_document(result, facts)));
  } else {
    print(report::incident_summary(
        result, source.site,
        {static_cast<std::size_t>(console.width), console.color, console.utf8, arguments.site.verbose}, facts));
  }
  return result.problem.empty() ? Exit::fine : Exit::bad_input;
}

}  // namespace forecourse::cli
