#!/usr/bin/env python3
"""How long the program takes on each example station, start to finish, and how much memory at most.

Usage: program.py PROGRAM SITE...

The best of several runs counts, as other work on the machine only ever makes a run longer. Exit code 1 if a limit
is passed.
"""
import os
import subprocess
import sys
import tempfile
import time

RUNS = 7
MEMORY_LIMIT = 100e6  # bytes
TIME_LIMITS = {"flow": 0.050, "study": 1.0}  # seconds


def measure(command):
    """(seconds, bytes at the peak, exit code) of one run."""
    start = time.perf_counter()
    process = subprocess.Popen(command, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    _, status, usage = os.wait4(process.pid, 0)
    process.returncode = os.waitstatus_to_exitcode(status)
    return time.perf_counter() - start, usage.ru_maxrss * 1024, process.returncode


def report(name, arguments, limit):
    """Prints one line; true if all limits are kept. Exit code 1 of the program is an answer too."""
    runs = [measure(arguments) for _ in range(RUNS)]
    seconds, memory = min(run[0] for run in runs), max(run[1] for run in runs)
    kept = seconds < limit and memory < MEMORY_LIMIT and all(run[2] in (0, 1) for run in runs)
    print(f"{name:40} {1000 * seconds:7.1f} ms of {1000 * limit:5.0f}   {memory / 1e6:5.1f} MB of "
          f"{MEMORY_LIMIT / 1e6:.0f}   {'kept' if kept else 'PASSED OR FAILED'}")
    return kept


def main():
    program, sites = sys.argv[1], sys.argv[2:]
    kept = True
    with tempfile.TemporaryDirectory() as out:
        for site in sites:
            name = os.path.basename(site)
            kept &= report(f"flow {name}", [program, "flow", site], TIME_LIMITS["flow"])
            kept &= report(f"study {name}, with report", [program, "study", site, "--out", out], TIME_LIMITS["study"])
    return 0 if kept else 1


if __name__ == "__main__":
    sys.exit(main())
