// Times of day of what is planned, as the calendar writes them: "Tue 2027-03-16 13:00",
// or "day 17 13:00" where the piece has no date.

const DAYS = ["Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"];
const MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];
const DATED = /^\w{3} (\d{4})-(\d\d)-(\d\d) (\d\d):(\d\d)$/;
const NUMBERED = /^day (\d+) (\d\d):(\d\d)$/;
const DAY = 24 * 60;

// later writes the time some hours after a planned start: "Wed 17 Mar 18:30"; "" where
// there is no start. Wall time: a change of the clocks is not counted.
export function later(start: string, hours: number): string {
  if (!Number.isFinite(hours)) return "";
  const date = DATED.exec(start);
  if (date) {
    const [year, month, day, h, m] = date.slice(1).map(Number) as [number, number, number, number, number];
    const t = new Date(Date.UTC(year, month - 1, day, h, m) + Math.round(hours * 60) * 60_000);
    return `${DAYS[t.getUTCDay()]} ${t.getUTCDate()} ${MONTHS[t.getUTCMonth()]} ${two(t.getUTCHours())}:${two(t.getUTCMinutes())}`;
  }
  const numbered = NUMBERED.exec(start);
  if (!numbered) return "";
  const [day, h, m] = numbered.slice(1).map(Number) as [number, number, number];
  const all = (day - 1) * DAY + h * 60 + m + Math.round(hours * 60);
  return `day ${Math.floor(all / DAY) + 1} ${two(Math.floor(all / 60) % 24)}:${two(all % 60)}`;
}

function two(n: number): string {
  return String(n).padStart(2, "0");
}

// forecast rounds hours that are no finer than a forecast, so that a clock time made of
// them is none either: to ten minutes below six hours, to the half hour above.
export function forecast(hours: number): number {
  const step = Math.abs(hours) < 6 ? 1 / 6 : 0.5;
  return Math.round(hours / step) * step;
}
