/** An amount as a cell of a file: "65.00", with a point and without a currency, which has a column of its own. */
export function plainAmount(cents: number): string {
  const whole = Math.abs(Math.trunc(cents));
  return `${cents < 0 ? "-" : ""}${Math.floor(whole / 100)}.${String(whole % 100).padStart(2, "0")}`;
}
