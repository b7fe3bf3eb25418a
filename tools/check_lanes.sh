#!/usr/bin/env bash
# Code compiled for one instruction set must stay apart from all other code: a function with a weak symbol in its object
# file could be taken by the linker for the whole program, and end it on a machine without that instruction set.
#
#   tools/check_lanes.sh FOLDER         that holds the object files kernel_*.o
#
# Fails if an object defines a weak or unique symbol, any other than the one function that hands out its kernel, or asks
# for a function elsewhere.
set -euo pipefail
shopt -s nullglob
objects=("$1"/kernel_*.o)
((${#objects[@]})) || { echo "no kernel_*.o in $1"; exit 1; }
faults=0
for object in "${objects[@]}"; do
  kernel=$(basename "$object" | sed -E 's/^(kernel_[a-z0-9]+)\.cpp.*/\1/')
  while read -r kind name; do
    case $kind in
      [a-tx-z]) ;;            # local
      T) [[ $name == forecourse::network::"${kernel#kernel_}"_kernel* ]] || { echo "$object hands out $name"; faults=1; } ;;
      U) [[ $name =~ ^(memset|memcpy|memmove|__stack_chk_fail|_GLOBAL_OFFSET_TABLE_)$ ]] || { echo "$object calls $name"; faults=1; } ;;
      *) echo "$object defines $name ($kind)"; faults=1 ;;
    esac
  done < <(nm --demangle "$object" | sed -E 's/^[0-9a-f ]{17}//')
done
echo "${#objects[@]} kernels looked at"
exit "$faults"
