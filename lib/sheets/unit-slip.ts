import { inUnit } from "@/lib/evidence/units";

export interface UnitSlip {
  /** The unit in which the same digits would lie in the range. */
  readonly unit: string;
}

interface Range {
  readonly low: number | undefined;
  readonly high: number | undefined;
  readonly unit: string;
}

/** The same digits in a neighbouring unit, where a value outside its range would lie inside: 12 typed as kΩ for 12 Ω. */
export function unitSlip(
  { value, unit }: { readonly value: number; readonly unit: string },
  range: Range,
): UnitSlip | undefined {
  const here = inUnit(value, unit, range.unit);
  if (here === undefined || isInside(here, range)) return undefined;
  for (const other of neighbours[unit] ?? []) {
    const there = inUnit(value, other, range.unit);
    if (there !== undefined && isInside(there, range)) return { unit: other };
  }
  return undefined;
}

/** A decimal point in the wrong place: ten times or a tenth of it would lie inside. */
export function pointSlip(
  { value, unit }: { readonly value: number; readonly unit: string },
  range: Range,
): number | undefined {
  const here = inUnit(value, unit, range.unit);
  if (here === undefined || isInside(here, range) || range.low === undefined || range.high === undefined)
    return undefined;
  return [value / 10, value * 10].find((other) => {
    const there = inUnit(other, unit, range.unit);
    return there !== undefined && isInside(there, range);
  });
}

function isInside(value: number, { low, high }: Range): boolean {
  return (low === undefined || value >= low) && (high === undefined || value <= high);
}

const neighbours: Readonly<Record<string, readonly string[]>> = {
  ohm: ["kohm", "mohm"],
  kohm: ["ohm", "mohm"],
  mohm: ["ohm", "kohm"],
  V: ["mV"],
  mV: ["V"],
  A: ["mA"],
  mA: ["A"],
  "°F": ["°C"],
  "°C": ["°F"],
  in: ["cm", "mm", "ft"],
  cm: ["in", "mm"],
  mm: ["in", "cm"],
  ft: ["in"],
  "in w.c.": ["Pa", "mbar"],
  psi: ["bar", "kPa"],
  bar: ["psi"],
  kPa: ["psi"],
};

/** Units that a reading may be typed in, the check's own first. */
export function unitChoices(unit: string): readonly string[] {
  const choices: Readonly<Record<string, readonly string[]>> = {
    ohm: ["ohm", "kohm", "mohm"],
    V: ["V", "mV"],
    A: ["A", "mA"],
    in: ["in", "cm", "mm"],
    "°F": ["°F", "°C"],
    "°C": ["°C", "°F"],
    psi: ["psi", "bar", "kPa"],
    "in w.c.": ["in w.c.", "Pa", "mbar"],
  };
  return choices[unit] ?? [unit];
}
