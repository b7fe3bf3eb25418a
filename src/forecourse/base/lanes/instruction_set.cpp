#include "forecourse/base/lanes/instruction_set.h"

namespace forecourse::lanes {
namespace {

#if defined(__x86_64__)
bool has_avx2() { return __builtin_cpu_supports("avx2") != 0 && __builtin_cpu_supports("fma") != 0; }

bool has_avx512() {
  return has_avx2() && __builtin_cpu_supports("avx512f") != 0 && __builtin_cpu_supports("avx512dq") != 0 &&
         __builtin_cpu_supports("avx512vl") != 0;
}
#else
bool has_avx2() { return false; }
bool has_avx512() { return false; }
#endif

}  // namespace

const char* name(InstructionSet set) {
  switch (set) {
    case InstructionSet::avx512:
      return "AVX-512";
    case InstructionSet::avx2:
      return "AVX2";
    case InstructionSet::baseline:
      break;
  }
  return "baseline";
}

std::vector<InstructionSet> supported_instruction_sets() {
  std::vector<InstructionSet> sets{InstructionSet::baseline};
  if (has_avx2()) sets.push_back(InstructionSet::avx2);
  if (has_avx512()) sets.push_back(InstructionSet::avx512);
  return sets;
}

InstructionSet widest_instruction_set() { return supported_instruction_sets().back(); }

}  // namespace forecourse::lanes
