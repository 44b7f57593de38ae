const units = ["bytes", "kB", "MB", "GB"] as const;
const figures = new Intl.NumberFormat("en-US", { maximumSignificantDigits: 3 });

/** "812 bytes", "1.44 MB": thousands of thousands, as files are listed on most systems. @throws RangeError below 0 */
export function formatBytes(bytes: number): string {
  if (!(bytes >= 0) || !Number.isFinite(bytes)) throw new RangeError(`bytes must be 0 or more; it is ${bytes}`);
  let rest = bytes;
  let unit = 0;
  while (rest >= 999.5 && unit < units.length - 1) {
    rest /= 1000;
    unit++;
  }
  return `${figures.format(rest)} ${units[unit]}`;
}
