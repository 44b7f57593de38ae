import type { ReadingOutcome } from "@/lib/domain/reading";

/** A range of which either end may be open. */
export interface OpenRange {
  readonly low: number | undefined;
  readonly high: number | undefined;
  readonly unit: string;
}

const digits = new Intl.NumberFormat("en-US", { maximumSignificantDigits: 6 });

/** Unit words of the records, in lower case, to the signs on the meter; anything else is shown as it was written. */
const signs: Readonly<Record<string, string>> = {
  ohm: "Ω",
  ohms: "Ω",
  kohm: "kΩ",
  kohms: "kΩ",
  mohm: "MΩ",
  megohm: "MΩ",
  degree_c: "°C",
  degc: "°C",
  degree_f: "°F",
  degf: "°F",
  uf: "µF",
  mfd: "µF",
};

/** "12.5 Ω", "Open (OL)", or the word that was found. */
export function formatOutcome(outcome: ReadingOutcome): string {
  switch (outcome.kind) {
    case "number":
      return formatQuantity(outcome.value, outcome.unit);
    case "open":
      return "Open (OL)";
    case "short":
      return "Short";
    case "no_reading":
      return "No reading";
    case "finding":
      return outcome.word;
    case "code":
      return `Code ${outcome.code}`;
  }
}

/** "10–20 Ω", "10 Ω or more", "up to 5 Ω", "no expected range". */
export function formatRange({ low, high, unit }: OpenRange): string {
  if (low !== undefined && high !== undefined) return `${digits.format(low)}–${formatQuantity(high, unit)}`;
  if (low !== undefined) return `${formatQuantity(low, unit)} or more`;
  return high === undefined ? "no expected range" : `up to ${formatQuantity(high, unit)}`;
}

/** "Inside 10–20 Ω", "Below by 2.1 Ω". Out of range is a finding, not a mistake. Value and range must share the unit. */
export function describeAgainstRange(value: number, range: OpenRange): string {
  if (range.low === undefined && range.high === undefined) return "No expected range to compare with";
  if (range.low !== undefined && value < range.low) return `Below by ${formatQuantity(range.low - value, range.unit)}`;
  if (range.high !== undefined && value > range.high) {
    return `Above by ${formatQuantity(value - range.high, range.unit)}`;
  }
  return `Inside ${formatRange(range)}`;
}

function formatQuantity(value: number, unit: string): string {
  return `${formatReadingNumber(value)}${unit === "" ? "" : ` ${signs[unit.toLowerCase()] ?? unit}`}`;
}

export function formatReadingNumber(value: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`value must be finite; it is ${value}`);
  return digits.format(value);
}
