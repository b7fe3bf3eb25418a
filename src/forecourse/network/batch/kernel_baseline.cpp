// The solver in lanes for any machine.
#include "forecourse/base/lanes/baseline.h"
#include "forecourse/network/batch/kernel_body.h"

namespace forecourse::network {

LaneKernel baseline_kernel() { return kernel<lanes::Baseline>(); }

}  // namespace forecourse::network
