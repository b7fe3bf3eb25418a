// The solver in lanes, compiled with the switches of its instruction set (see CMakeLists.txt); called only where the
// machine has it.
#if defined(__x86_64__)
#include "forecourse/base/lanes/avx2.h"
#include "forecourse/network/batch/kernel_body.h"

namespace forecourse::network {

LaneKernel avx2_kernel() { return kernel<lanes::Avx2>(); }

}  // namespace forecourse::network
#endif
