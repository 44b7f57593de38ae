// Numbers, days, money and estimates to the text that people read. One voice for every page, print and file name.

const whole = new Intl.NumberFormat("en-US", { maximumFractionDigits: 0 });

/** A count with thousands marked: 12,000. @throws RangeError for anything but a finite number */
export function formatCount(count: number): string {
  if (!Number.isFinite(count)) throw new RangeError(`count must be finite; it is ${count}`);
  return whole.format(count);
}

/** "1 job", "12,000 jobs". */
export function formatCounted(count: number, one: string, many: string = `${one}s`): string {
  return `${formatCount(count)} ${count === 1 ? one : many}`;
}
