#include <algorithm>
#include <atomic>
#include <chrono>
#include <cstdint>
#include <memory>
#include <optional>
#include <semaphore>
#include <thread>

#include "forecourse/server/answers/station/diagnostics_json.h"
#include "forecourse/server/answers/wants/want_reader.h"
#include "forecourse/server/http/body.h"
#include "forecourse/server/http/routes.h"
#include "forecourse/site/read.h"

namespace forecourse::server {
namespace {

using namespace std::chrono_literals;
using report::Json;
using Access = Route::Access;

constexpr std::size_t most_wants = 64;

/// As many studies at once as there are processors, and two at least: the rest waits, so that other requests get their
/// turn.
using Turns = std::counting_semaphore<>;

std::shared_ptr<Turns> new_turns() {
  return std::make_shared<Turns>(std::max(2U, std::thread::hardware_concurrency()));
}

/// A turn that is taken, and given back with its owner.
class Turn {
 public:
  Turn(Turns& turns, const std::function<bool()>& given_up) : turns_(turns) {
    do {
      taken_ = turns_.try_acquire_for(20ms);
    } while (!taken_ && !given_up());
  }
  Turn(const Turn&) = delete;
  Turn& operator=(const Turn&) = delete;
  ~Turn() {
    if (taken_) turns_.release();
  }

  /// False: nobody waits for the answer any more.
  [[nodiscard]] bool taken() const { return taken_; }

 private:
  Turns& turns_;
  bool taken_ = false;
};

/// Asks whether somebody still waits, but not for each step of a study.
std::function<bool()> now_and_then(const std::function<bool()>& given_up) {
  struct Last {
    std::atomic<std::int64_t> asked{0};
    std::atomic<bool> answer{false};
  };
  return [given_up, last = std::make_shared<Last>()] {
    const std::int64_t now = std::chrono::steady_clock::now().time_since_epoch() / 10ms;
    if (last->asked.exchange(now) != now && given_up()) last->answer = true;
    return last->answer.load();
  };
}

/// The text with the edits that come with a want.
struct Tried {
  std::string text;
  std::optional<Reply> no;
};

Tried try_edits(const StationFacts& facts, const std::vector<Edit>& edits) {
  Parsed<std::string> applied = apply(facts.text, edits);
  if (applied.ok()) return {std::move(applied.value), std::nullopt};
  Json no = refused(applied.diagnostics);
  no["diagnostics"] = diagnostics_json(applied.diagnostics, facts.text);
  return {{}, json_reply(no, 422)};
}

Reply ask(const Desk& desk, StationRecords& records, Turns& turns, const Call& call) {
  BodyReader body(call.body);
  const std::vector<Json> wants = body.list("wants", false);
  const std::vector<Edit> edits = body.edits(true);
  if (wants.size() > most_wants) body.refuse("there are more than 64 wants", "ask for fewer at a time");
  if (!body.good()) return refusal(400, body.error(), body.hint());
  const StationFacts facts = desk.facts();
  const Tried tried = try_edits(facts, edits);
  if (tried.no) return *tried.no;
  Context context;
  context.cancelled = now_and_then(call.given_up);
  Answers asked(tried.text, facts.file, records.of(facts.path));
  Json answers = Json::array();
  for (const Json& want : wants) {
    const Turn turn(turns, call.given_up);
    if (!turn.taken()) return refusal(503, "nobody waited for the answer");
    answers.push_back(asked.answer(want, context));
  }
  return json_reply({{"revision", facts.revision},
                     {"answers", std::move(answers)},
                     {"diagnostics", diagnostics_json(site::read_site(tried.text).diagnostics, tried.text)}});
}

Reply start_run(const Desk& desk, Runs& runs, StationRecords& records, const Call& call) {
  BodyReader body(call.body);
  const int revision = body.revision();
  const std::vector<Edit> edits = body.edits(true);
  if (!call.body.is_object() || !call.body.contains("want")) body.refuse("'want' is missing", "say what to compute");
  if (!body.good()) return refusal(400, body.error(), body.hint());
  const StationFacts facts = desk.facts();
  if (revision != facts.revision) {
    return json_reply({{"error", "the site file has changed since"},
                       {"hint", "look at it and do it again"},
                       {"changed", Json::array()},
                       {"station", station_json(facts)}},
                      409);
  }
  const Tried tried = try_edits(facts, edits);
  if (tried.no) return *tried.no;
  const std::optional<int> run =
      runs.start([text = tried.text, file = facts.file, want = call.body["want"], of = records.of(facts.path)](
                     const Context& context) { return answer(text, file, want, context, of); });
  if (!run) return refusal(429, "four runs are going already", "wait for one of them, or stop it");
  return json_reply({{"run", *run}});
}

/// The number of a run; 0, which is none, where it is no number.
int run_of(const std::string& tail) {
  constexpr std::size_t most_digits = 9;
  const bool digits = tail.size() <= most_digits && tail.find_first_not_of("0123456789") == std::string::npos;
  return digits ? std::stoi(tail) : 0;
}

Reply no_run() { return refusal(404, "there is no such run", "the oldest are forgotten"); }

}  // namespace

std::vector<Route> ask_routes(const Desk& desk, StationRecords& records) {
  return {{"POST", "/api/ask", Access::open,
           [&desk, &records, turns = new_turns()](const Call& call) { return ask(desk, records, *turns, call); }}};
}

std::vector<Route> run_routes(const Desk& desk, Runs& runs, StationRecords& records) {
  return {{"POST", "/api/runs", Access::keyed, [&](const Call& call) { return start_run(desk, runs, records, call); }},
          {"GET", "/api/runs/", Access::open,
           [&](const Call& call) {
             const Json state = runs.state(run_of(call.tail));
             return state.is_null() ? no_run() : json_reply(state);
           }},
          {"DELETE", "/api/runs/", Access::keyed,
           [&](const Call& call) { return runs.cancel(run_of(call.tail)) ? json_reply(Json::object()) : no_run(); }}};
}

}  // namespace forecourse::server
