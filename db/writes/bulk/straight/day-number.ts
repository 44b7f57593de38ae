const dayMs = 86_400_000;
const firstYear = 1900;
const years = 400;

/** Days from 2000-01-01 to the first of each month, which is how the database counts them. */
const months = Int32Array.from({ length: 12 * years }, (_, month) => daysTo(firstYear, month));

/** The number of the day that is written YYYY-MM-DD from `at` on. */
export function dayNumber(bytes: Uint8Array, at: number): number {
  const year = 1000 * digit(bytes, at) + 100 * digit(bytes, at + 1) + 10 * digit(bytes, at + 2) + digit(bytes, at + 3);
  const month = 10 * digit(bytes, at + 5) + digit(bytes, at + 6) - 1;
  const day = 10 * digit(bytes, at + 8) + digit(bytes, at + 9) - 1;
  return (months[12 * (year - firstYear) + month] ?? daysTo(year, month)) + day;
}

function daysTo(year: number, month: number): number {
  return (Date.UTC(year, month, 1) - Date.UTC(2000, 0, 1)) / dayMs;
}

function digit(bytes: Uint8Array, at: number): number {
  return (bytes[at] ?? 0) - 0x30;
}
