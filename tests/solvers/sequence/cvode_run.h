#pragma once

#include <cvode/cvode.h>
#include <nvector/nvector_serial.h>
#include <sunlinsol/sunlinsol_dense.h>
#include <sunmatrix/sunmatrix_dense.h>

#include <cmath>
#include <vector>

#include "forecourse/solvers/sequence/model.h"

namespace forecourse::test {

namespace seq = solvers::sequence;

/// How the library is asked to solve. A tolerance above 1e-8 lets its noise be rectified by one-way laws; the pack is
/// held as excess, as a model does.
struct CvodeOptions {
  double relative = 1e-10;
  double absolute = 1e-13;
  double longest_step = 5.0;
};

struct CvodeResult {
  std::vector<seq::Event> events;
  std::vector<double> amounts;
  std::vector<double> auxiliaries;
};

/// Runs a model's sequence with a stiff ODE library and its own root finding. It shares the model's laws and events
/// with the stepper, and neither its steps, nor its search for moments, nor its tie order beyond what is written here.
template <class M>
class CvodeRun {
 public:
  CvodeRun(const M& model, seq::SequenceStart start, CvodeOptions options)
      : model_(model), now_(std::move(start)), options_(options) {
    SUNContext_Create(nullptr, &context_);
    for (int l = 0; l < model.links(); ++l) ends_.push_back(model.ends(l));
    for (int g = 0; g < model.guard_count(); ++g) {
      rules_.push_back(model.guard_rule(g));
      waits_.push_back(rules_.back().waits);
    }
    state_ = N_VNew_Serial(size(), context_);
    matrix_ = SUNDenseMatrix(size(), size(), context_);
    solver_ = SUNLinSol_Dense(state_, matrix_, context_);
  }
  CvodeRun(const CvodeRun&) = delete;
  CvodeRun& operator=(const CvodeRun&) = delete;
  ~CvodeRun() {
    SUNLinSolFree(solver_);
    SUNMatDestroy(matrix_);
    N_VDestroy(state_);
    SUNContext_Free(&context_);
  }

  CvodeResult run() {
    settle();
    while (now_.time < now_.end && !stopped_) {
      to_next_event();
      settle();
    }
    result_.amounts = now_.amounts;
    result_.auxiliaries = now_.auxiliaries;
    return result_;
  }

 private:
  using Values = std::vector<double>;
  static std::size_t at(int i) { return static_cast<std::size_t>(i); }
  [[nodiscard]] sunindextype size() const {
    return static_cast<sunindextype>(now_.amounts.size() + now_.auxiliaries.size());
  }

  void laws(double t, const double* y, Values& flow, Values& rate) const {
    const seq::SequenceView view{
        {y, now_.amounts.size()}, {y + now_.amounts.size(), now_.auxiliaries.size()}, now_.marks, now_.flags};
    flow.resize(ends_.size());
    rate.resize(now_.auxiliaries.size());
    model_.flows(t, view, std::span<double>(flow), std::span<double>(rate));
    for (std::size_t l = 0; l < now_.closed.size(); ++l) flow[l] = now_.closed[l] != 0 ? 0.0 : flow[l];
  }

  Values guard_values(double t, const double* y) const {
    Values flow, rate, value(rules_.size());
    laws(t, y, flow, rate);
    const seq::SequenceView view{
        {y, now_.amounts.size()}, {y + now_.amounts.size(), now_.auxiliaries.size()}, now_.marks, now_.flags};
    if (!rules_.empty()) model_.guards(t, view, std::span<const double>(flow), std::span<double>(value));
    return value;
  }

  /// Zero where a waiting guard fires, or where one that does not wait is to wait again.
  [[nodiscard]] double root(std::size_t g, double value) const {
    const double past = rules_[g].crossing == seq::Crossing::falling ? -value : value;
    if (waits_[g]) return past;
    return rules_[g].latched ? -1.0 : past + rules_[g].hysteresis;
  }

  static int right_side(realtype t, N_Vector y, N_Vector out, void* self) {
    static_cast<CvodeRun*>(self)->rates(t, NV_DATA_S(y), NV_DATA_S(out));
    return 0;
  }
  static int roots(realtype t, N_Vector y, realtype* out, void* self) {
    const CvodeRun& run = *static_cast<CvodeRun*>(self);
    const Values value = run.guard_values(t, NV_DATA_S(y));
    for (std::size_t g = 0; g < value.size(); ++g) out[g] = run.root(g, value[g]);
    return 0;
  }

  void rates(double t, const double* y, double* out) {
    laws(t, y, flow_, rate_);
    std::fill(out, out + size(), 0.0);
    for (std::size_t l = 0; l < ends_.size(); ++l) {
      out[ends_[l].from] -= flow_[l];
      out[ends_[l].to] += flow_[l];
    }
    std::copy(rate_.begin(), rate_.end(), out + now_.amounts.size());
  }

  void load() {
    double* y = NV_DATA_S(state_);
    std::copy(now_.amounts.begin(), now_.amounts.end(), y);
    std::copy(now_.auxiliaries.begin(), now_.auxiliaries.end(), y + now_.amounts.size());
  }
  void store() {
    const double* y = NV_DATA_S(state_);
    std::copy(y, y + now_.amounts.size(), now_.amounts.begin());
    std::copy(y + now_.amounts.size(), y + size(), now_.auxiliaries.begin());
  }

  void to_next_event() {
    load();
    void* memory = CVodeCreate(CV_BDF, context_);
    CVodeInit(memory, right_side, now_.time, state_);
    CVodeSStolerances(memory, options_.relative, options_.absolute);
    CVodeSetUserData(memory, this);
    CVodeSetLinearSolver(memory, solver_, matrix_);
    CVodeSetMaxNumSteps(memory, 10'000'000);
    CVodeSetMaxStep(memory, options_.longest_step);
    CVodeSetNoInactiveRootWarn(memory);
    if (!rules_.empty()) CVodeRootInit(memory, static_cast<int>(rules_.size()), roots);
    double until = now_.end;
    for (const auto& e : now_.timed) until = std::min(until, e.time);
    CVodeSetStopTime(memory, until);
    double reached = now_.time;
    const int flag = CVode(memory, until, state_, &reached, CV_NORMAL);
    if (flag < 0) stopped_ = true;
    now_.time = flag == CV_TSTOP_RETURN ? until : reached;
    hits_.assign(rules_.size(), 0);
    if (flag == CV_ROOT_RETURN) CVodeGetRootInfo(memory, hits_.data());
    store();
    CVodeFree(&memory);
  }

  /// Roots that were found, guards that hold at once after an event, and timed events that are due.
  void settle() {
    for (int rounds = 0; rounds < 100; ++rounds) {
      load();
      const Values value = guard_values(now_.time, NV_DATA_S(state_));
      std::vector<seq::Event> due;
      for (std::size_t g = 0; g < rules_.size(); ++g) look_at(g, value[g], due);
      for (const auto& e : now_.timed) {
        if (e.time <= now_.time) due.push_back({now_.time, e.kind, e.id, seq::EventSource::timed, e.value});
      }
      hits_.clear();
      if (due.empty()) return;
      carry_out(*std::min_element(due.begin(), due.end(), seq::comes_before));
    }
  }

  void look_at(std::size_t g, double value, std::vector<seq::Event>& due) {
    const bool hit = g < hits_.size() && hits_[g] != 0;
    if (!waits_[g]) {
      waits_[g] = !rules_[g].latched && (root(g, value) < 0.0 || hit);
    } else if (root(g, value) >= 0.0 || hit) {
      due.push_back({now_.time, rules_[g].kind, static_cast<int>(g), seq::EventSource::guard, value});
    }
  }

  void carry_out(const seq::Event& event) {
    if (event.source == seq::EventSource::guard) {
      waits_[at(event.id)] = false;
    } else {
      std::erase_if(now_.timed,
                    [&](const auto& e) { return e.time <= now_.time && e.kind == event.kind && e.id == event.id; });
    }
    seq::SequenceState state(now_, ends_);
    state.armed.assign(waits_.begin(), waits_.end());
    seq::Mutator mutator(state);
    model_.on_event(event, mutator);
    waits_.assign(state.armed.begin(), state.armed.end());
    now_.amounts = state.amounts;
    now_.auxiliaries = state.auxiliaries;
    now_.marks = state.marks;
    now_.flags = state.flags;
    now_.closed = state.closed;
    now_.timed = state.queue.waiting();
    stopped_ = stopped_ || state.stopped;
    result_.events.push_back(event);
  }

  const M& model_;
  seq::SequenceStart now_;
  CvodeOptions options_;
  CvodeResult result_;
  std::vector<seq::LinkEnds> ends_;
  std::vector<seq::GuardRule> rules_;
  std::vector<bool> waits_;
  std::vector<int> hits_;
  Values flow_, rate_;
  bool stopped_ = false;
  SUNContext context_ = nullptr;
  N_Vector state_ = nullptr;
  SUNMatrix matrix_ = nullptr;
  SUNLinearSolver solver_ = nullptr;
};

}  // namespace forecourse::test
