#!/usr/bin/env python3
"""How long the program takes on each example station, start to finish, and how much memory at most.

Usage: program.py PROGRAM SITE...

The best of several runs counts, as other work on the machine only ever makes a run longer. Exit code 1 if a run
fails; a goal that is missed is said, not judged, since the machine may be busy.
"""
import os
import subprocess
import sys
import tempfile
import time

RUNS = 7
MEMORY_GOAL = 100e6  # bytes
TIME_GOALS = {"flow": 0.050, "study": 1.0}  # seconds


def measure(command):
    """(seconds, bytes at the peak, exit code) of one run."""
    start = time.perf_counter()
    process = subprocess.Popen(command, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    _, status, usage = os.wait4(process.pid, 0)
    process.returncode = os.waitstatus_to_exitcode(status)
    return time.perf_counter() - start, usage.ru_maxrss * 1024, process.returncode


def report(name, arguments, goal):
    """Prints one line; true if every run ended well. Exit code 1 of the program is an answer too."""
    runs = [measure(arguments) for _ in range(RUNS)]
    seconds, memory = min(run[0] for run in runs), max(run[1] for run in runs)
    kept = seconds < goal and memory < MEMORY_GOAL
    ran = all(run[2] in (0, 1) for run in runs)
    print(f"{name:40} {1000 * seconds:7.1f} ms of {1000 * goal:5.0f}   {memory / 1e6:5.1f} MB of "
          f"{MEMORY_GOAL / 1e6:.0f}   {'goal met' if kept else 'goal missed' if ran else 'FAILED'}")
    return ran


def main():
    program, sites = sys.argv[1], sys.argv[2:]
    ran = True
    with tempfile.TemporaryDirectory() as out:
        for site in sites:
            name = os.path.basename(site)
            ran &= report(f"flow {name}", [program, "flow", site], TIME_GOALS["flow"])
            ran &= report(f"study {name}, with report", [program, "study", site, "--out", out], TIME_GOALS["study"])
    return 0 if ran else 1


if __name__ == "__main__":
    sys.exit(main())
