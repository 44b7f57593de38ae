/** The device's clock with its offset, such as 2026-10-31T09:00:00.000-05:00: kept as the phone said it, never used for an order. */
export function localTime(now: Date): string {
  const away = -now.getTimezoneOffset();
  const shifted = new Date(now.getTime() + away * 60_000);
  const two = (value: number) => String(value).padStart(2, "0");
  const size = Math.abs(away);
  return `${shifted.toISOString().slice(0, -1)}${away < 0 ? "-" : "+"}${two(Math.floor(size / 60))}:${two(size % 60)}`;
}
