import { HandoverFiles } from "../parts/HandoverFiles";

const files = [
  { name: "kit.xlsx", text: "Kit as XLSX", title: "Schedule, order, pipe and spares, with an empty column for your part numbers" },
  { name: "kit.csv", text: "CSV", title: "The schedule as comma-separated values" },
  { name: "calendar.ics", text: "Calendar for a phone", title: "What falls due, as a calendar file (iCalendar); taken in again, it updates" },
] as const;

/** Saves the schedule as a table and the calendar as a file. */
export const Downloads = () => <HandoverFiles files={files} />;
