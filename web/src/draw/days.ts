/** Days and months as they are shown; they come as "2026-11-05" and "2026-11". Nothing here knows of the page. */
const months = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];
const longMonths = [
  "January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November", "December",
];

const partsOf = (day: string) => day.split("-").map(Number);

/** "2026-11-05" as "5 Nov 2026" */
export function dayWords(day: string): string {
  const [year, month = 1, date] = partsOf(day);
  return `${date} ${months[month - 1]} ${year}`;
}
/** "2026-11" as "November 2026" */
export function monthWords(month: string): string {
  const [year, number = 1] = partsOf(month);
  return `${longMonths[number - 1]} ${year}`;
}
/** The date alone below a day of the same month, else with its month: "1 Nov". */
export const shortDay = (day: string, above: string | undefined) =>
  above?.slice(0, 7) === day.slice(0, 7) ? `${dateOf(day)}` : dayWords(day).slice(0, -5);
/** Day of its month. */
export const dateOf = (day: string) => partsOf(day)[2] ?? 1;
export function daysIn(month: string): number {
  const [year = 1970, number = 1] = partsOf(month);
  return new Date(Date.UTC(year, number, 0)).getUTCDate();
}
/** Days from one day to another; negative where that lies before. */
export function daysBetween(from: string, to: string): number {
  const dayNumber = (day: string) => {
    const [year = 1970, month = 1, date = 1] = partsOf(day);
    return Date.UTC(year, month - 1, date) / 86_400_000;
  };
  return dayNumber(to) - dayNumber(from);
}
/** "2026-11" as "N" */
export const monthLetter = (month: string) => monthWords(month).charAt(0);
