#pragma once

#include <vector>

namespace forecourse::lanes {

/// What a processor can do to several doubles at once. Programs carry code for all of them and choose at run time.
enum class InstructionSet {
  baseline,  ///< two doubles, on every machine
  avx2,      ///< four doubles, with fused multiply-add
  avx512,    ///< eight doubles
};

/// "baseline", "AVX2", "AVX-512".
[[nodiscard]] const char* name(InstructionSet set);

/// Those that this machine and its operating system can run, narrowest first; never empty.
[[nodiscard]] std::vector<InstructionSet> supported_instruction_sets();

[[nodiscard]] InstructionSet widest_instruction_set();

}  // namespace forecourse::lanes
