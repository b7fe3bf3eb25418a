#pragma once

#include "forecourse/base/lanes/logarithm.h"
#include "forecourse/parts/lanes/lane_pipe.h"

namespace forecourse::parts {
namespace {

/// Wall friction of a pipe in lanes, Colebrook-White as in friction_factor.cpp.
///
/// x = 1/sqrt(f) is kept from flow to flow: one step of Halley's method from the last x is exact to rounding once the
/// flow hardly moves, and takes one logarithm and no power. How far the step went is handed back, so that the caller
/// knows when x can be trusted: an error e of x leaves less than 2e-3 e3.
template <class I>
struct PipeLanes {
  using Real = typename I::Real;
  using Mask = typename I::Mask;

  struct Answer {
    Real per_flow;  ///< loss / flow [Pa s/m3]
    Real slope;     ///< [Pa s/m3]
    Real step;      ///< size of the last step of x [1]
  };

  /// \param size |flow| [m3/s]
  /// \param x    1/sqrt(f) of the last flow, in and out; finite and > 0 [1]
  [[gnu::always_inline]] static inline Answer loss(const LanePipe& pipe, Real size, Real& x) {
    const Real reynolds = pipe.reynolds_per_flow * size;
    const Turbulent wall = turbulent(pipe, I::max(reynolds, I::all(LanePipe::turbulent_limit)), x);
    const Real per_flow = pipe.quadratic * size;
    Answer answer{per_flow * wall.factor, (per_flow + per_flow) * (wall.factor - wall.factor * wall.share), wall.step};
    const Mask slow = I::at_most(reynolds, I::all(LanePipe::turbulent_limit));
    if (I::bits(slow) != 0) slower(pipe, size, reynolds, slow, answer);
    return answer;
  }

 private:
  struct Turbulent {
    Real factor, share, step;
  };

  /// With n = Re (a + b x) = a Re + 2.51 x and d = 2.51 c, Newton's step of x + c ln(a + b x) = 0 is
  /// (x + c ln(n / Re)) n / (n + d). One division serves it and the logarithm.
  [[gnu::always_inline]] static inline Turbulent turbulent(const LanePipe& pipe, Real reynolds, Real& x) {
    constexpr double c = LanePipe::per_logarithm, d = LanePipe::smooth_wall * c;
    const Real n = pipe.roughness_term * reynolds + LanePipe::smooth_wall * x;
    const Real product = n * (n + d);
    const Real top = I::mantissa(n), low = I::mantissa(reynolds);
    const Real sum = top + low;
    const Real inverse = I::inverse(sum * product);
    const Real per_product = inverse * sum;
    const Real logarithm =
        lanes::logarithm_of_parts<I>(I::exponent(n) - I::exponent(reynolds), (top - low) * (inverse * product));
    const Real newton = (x + c * logarithm) * (n * n * per_product);
    constexpr double halley = 0.5 * c * LanePipe::smooth_wall * LanePipe::smooth_wall;
    const Real step = newton - newton * (newton * (halley * per_product));
    x = x - step;
    return {I::inverse(x * x), d * (n * per_product), I::abs(step)};
  }

  /// The laminar law and the cubic between, in the lanes `slow`.
  static void slower(const LanePipe& pipe, Real size, Real reynolds, Mask slow, Answer& answer) {
    constexpr double width = LanePipe::turbulent_limit - LanePipe::laminar_limit;
    const double* k = pipe.transition;
    const Real t = (reynolds - LanePipe::laminar_limit) * (1.0 / width);
    const Real factor = k[0] + t * (k[1] + t * (k[2] + t * k[3]));
    const Real slope = (k[1] + t * (2.0 * k[2] + t * (3.0 * k[3]))) * (1.0 / width);
    const Real per_flow = pipe.quadratic * size;
    const Mask laminar = I::at_most(reynolds, I::all(LanePipe::laminar_limit));
    const Real ratio = I::select(laminar, I::all(pipe.laminar), per_flow * factor);
    const Real loss_slope = I::select(laminar, I::all(pipe.laminar), per_flow * (2.0 * factor + reynolds * slope));
    answer.per_flow = I::select(slow, ratio, answer.per_flow);
    answer.slope = I::select(slow, loss_slope, answer.slope);
  }
};

}  // namespace
}  // namespace forecourse::parts
