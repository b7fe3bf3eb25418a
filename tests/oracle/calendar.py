#!/usr/bin/python3
"""Reads calendar files with an independent parser and holds them against the JSON of the same calendar.

    calendar.py FOLDER             FOLDER/calendar.ics against FOLDER/calendar.json
    calendar.py BEFORE AFTER       also: what has both keeps its id, and what was done since has another day and a
                                   higher sequence

It runs under the system's Python, for which Debian packages the parser.
"""

import datetime
import json
import pathlib
import sys

import icalendar

LONGEST_LINE = 75  # octets; RFC 5545, 3.1


def fail(message):
    sys.exit(f"calendar: {message}")


def check_lines(raw):
    """Line ends, lengths, and folding between characters; RFC 5545, 3.1."""
    if raw.replace(b"\r\n", b"").count(b"\n") or raw.replace(b"\r\n", b"").count(b"\r"):
        fail("a line does not end with CRLF")
    if not raw.endswith(b"END:VCALENDAR\r\n"):
        fail("the end is missing")
    for line in raw.split(b"\r\n"):
        if len(line) > LONGEST_LINE:
            fail(f"a line has {len(line)} octets")
        line.decode("utf-8")


def events_of(folder):
    raw = (folder / "calendar.ics").read_bytes()
    check_lines(raw)
    calendar = icalendar.Calendar.from_ical(raw)
    for key in ("VERSION", "PRODID"):
        if key not in calendar:
            fail(f"{key} is missing")
    events = calendar.walk("VEVENT")
    for event in events:
        if event.errors:
            fail(f"{event['UID']}: {event.errors}")
        for key in ("UID", "DTSTAMP", "DTSTART", "SUMMARY", "DESCRIPTION", "SEQUENCE", "LAST-MODIFIED"):
            if key not in event:
                fail(f"{event['UID']}: {key} is missing")
    out = {str(event["UID"]): event for event in events}
    if len(out) != len(events):
        fail("an id stands twice")
    return out


def check_against_json(events, folder):
    document = json.loads((folder / "calendar.json").read_text("utf-8"))
    dated = {duty["id"]: duty for duty in document["result"]["duties"] if duty["due"] or duty["failed"]}
    by_id = {uid.rsplit(".", 1)[0]: event for uid, event in events.items()}
    if by_id.keys() != dated.keys():
        fail(f"events and duties differ: {sorted(by_id.keys() ^ dated.keys())}")
    for name, duty in dated.items():
        event = by_id[name]
        start = event["DTSTART"].dt
        late = duty["failed"] or duty["days_left"] < 0
        day = document["options"]["on"] if late else duty["due"]
        if isinstance(start, datetime.datetime) or start.isoformat() != day:
            fail(f"{name}: {start} in the calendar, {day} in the JSON")
        words = f"{duty['subject']}: {duty['what']}"
        if duty["failed"]:
            words += f", failed on {duty['failed']}: mend it and test again"
        elif late:
            words += f", overdue since {duty['due']}"
        if str(event["SUMMARY"]) != words:
            fail(f"{name}: summary {event['SUMMARY']}")
        if duty["clause"] and duty["clause"] not in str(event["DESCRIPTION"]):
            fail(f"{name}: the description lacks its clause")
    return len(dated)


def check_change(before, after):
    moved = 0
    for uid, old in before.items():
        new = after.get(uid)
        if new is None:
            fail(f"{uid} is gone")
        if new["DTSTART"].dt == old["DTSTART"].dt:
            if int(new["SEQUENCE"]) < int(old["SEQUENCE"]):
                fail(f"{uid}: its sequence fell")
            continue
        moved += 1
        if int(new["SEQUENCE"]) <= int(old["SEQUENCE"]):
            fail(f"{uid}: moved, but its sequence did not rise")
    if moved == 0:
        fail("nothing moved, though something was done")
    return moved


def main(folders):
    read = []
    for folder in map(pathlib.Path, folders):
        events = events_of(folder)
        count = check_against_json(events, folder)
        read.append(events)
        print(f"{folder}: {count} events, each on the day of the JSON")
    if len(read) == 2:
        print(f"{check_change(*read)} moved with their ids kept, sequences risen")


if __name__ == "__main__":
    main(sys.argv[1:])
