#!/usr/bin/env python3
"""clang-tidy over src/: all files, or only those that changed.

  tools/tidy.py BUILD_DIR all|changed

Changed is: against the commit in FORECOURSE_TIDY_BASE, else against the last commit before this one. A changed header
is checked through the source file of the same name, if there is one.

With all, the files are those that the build joins (FORECOURSE_JOINED): the headers, where most of the time goes, are
then read once and not once for each source.
"""
import json
import os
import shlex
import subprocess
import sys
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent


def git(*arguments):
    return subprocess.run(["git", "-C", str(ROOT), *arguments], capture_output=True, text=True)


def all_sources():
    return sorted((ROOT / "src").rglob("*.cpp"))


def changed_sources():
    base = os.environ.get("FORECOURSE_TIDY_BASE", "HEAD~1")
    if git("rev-parse", "--verify", "--quiet", base + "^{commit}").returncode:
        return all_sources()
    changed = git("diff", "--name-only", "--diff-filter=d", base, "--", "src").stdout.split()
    changed += git("ls-files", "--others", "--exclude-standard", "--", "src").stdout.split()
    sources = {(ROOT / name).with_suffix(".cpp") for name in changed if name.endswith((".cpp", ".h"))}
    return sorted(source for source in sources if source.exists())


def commands_of(build):
    """How the build compiles src/, by file: each source of ours, or what several are joined in."""
    commands = json.loads((build / "compile_commands.json").read_text())
    places = (ROOT / "src", build / "joined")
    return {file: command for command in commands
            if (file := Path(command["file"])).is_relative_to(places[0]) or file.is_relative_to(places[1])}


def apart(sources, commands, place):
    """Writes how each source would be compiled by itself."""
    switches = ("-I", "-D", "-isystem", "-std=")
    words = {word for command in commands.values() for word in shlex.split(command["command"])}
    flags = sorted(word for word in words if word.startswith(switches))
    place.mkdir(exist_ok=True)
    told = [{"directory": str(place), "file": str(file), "arguments": ["c++", *flags, "-c", str(file)]} for file in sources]
    (place / "compile_commands.json").write_text(json.dumps(told))


def tidy(file, commands):
    # Warning switches of g++ that clang does not know are no fault of the code.
    run = subprocess.run(
        ["clang-tidy", "--quiet", "--extra-arg=-Wno-unknown-warning-option", f"--config-file={ROOT / '.clang-tidy'}",
         "-p", str(commands), str(file)], capture_output=True, text=True)
    noise = (" warning generated", " warnings generated", " warnings treated", " warning treated")
    told = [line for line in run.stderr.splitlines() if not any(word in line for word in noise)]
    print(run.stdout + "".join(line + "\n" for line in told), end="", flush=True)
    return run.returncode


def main():
    build, which = Path(sys.argv[1]).resolve(), sys.argv[2]
    commands = commands_of(build)
    if which == "all":
        place, files = build, sorted(commands)
    else:
        place, files = build / "tidy", changed_sources()
        apart(files, commands, place)
    print(f"clang-tidy: {len(files)} files", flush=True)
    with ThreadPoolExecutor(os.cpu_count()) as pool:
        codes = list(pool.map(lambda file: tidy(file, place), files))
    return 1 if any(codes) else 0


if __name__ == "__main__":
    sys.exit(main())
