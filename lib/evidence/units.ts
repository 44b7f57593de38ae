// Units as people write them beside a reading, brought to one unit for comparison.

/** The value in the other unit, or undefined where the two do not measure the same thing or one is not known. */
export function inUnit(value: number, from: string, to: string): number | undefined {
  const source = unitOf(from);
  const target = unitOf(to);
  if (source === undefined || target === undefined || source.of !== target.of) return undefined;
  return (value * source.scale + source.shift - target.shift) / target.scale;
}

interface UnitEntry {
  readonly of: string;
  /** Base value = value × scale + shift. */
  readonly scale: number;
  readonly shift: number;
}

function unitOf(text: string): UnitEntry | undefined {
  return units.get(text.trim().toLowerCase().replace(/\s+/g, " "));
}

const spellings: readonly (readonly [of: string, scale: number, shift: number, ...names: string[]])[] = [
  ["resistance", 1, 0, "ohm", "ohms", "ω"],
  ["resistance", 1e3, 0, "kohm", "kohms", "kω", "kilohm", "k"],
  // Lower-cased, a milliohm and a megohm look alike; the trade writes only the latter.
  ["resistance", 1e6, 0, "mohm", "mohms", "mω", "megohm", "meg"],
  ["voltage", 1, 0, "v", "volt", "volts", "v ac", "v dc", "vac", "vdc"],
  ["voltage", 1e-3, 0, "mv"],
  ["current", 1, 0, "a", "amp", "amps", "ampere"],
  ["current", 1e-3, 0, "ma"],
  ["capacitance", 1, 0, "µf", "μf", "uf", "mfd"],
  ["length", 1, 0, "in", "inch", "inches", '"'],
  ["length", 1 / 2.54, 0, "cm"],
  ["length", 1 / 25.4, 0, "mm"],
  ["length", 12, 0, "ft"],
  ["draught", 1, 0, "in w.c.", "in wc", "inwc", "inh2o", "in h2o"],
  ["draught", 1 / 249.08891, 0, "pa"],
  ["draught", 100 / 249.08891, 0, "mbar"],
  ["pressure", 1, 0, "psi", "psig"],
  ["pressure", 1 / 6.894757, 0, "kpa"],
  ["pressure", 100 / 6.894757, 0, "bar"],
  ["temperature", 1, 0, "°c", "c", "degc"],
  ["temperature", 5 / 9, -160 / 9, "°f", "f", "degf"],
  ["weight", 1, 0, "oz", "ounce", "ounces"],
  ["weight", 16, 0, "lb", "lbs"],
  ["weight", 1 / 28.349523, 0, "g"],
];

const units: ReadonlyMap<string, UnitEntry> = new Map(
  spellings.flatMap(([of, scale, shift, ...names]) => names.map((name) => [name, { of, scale, shift }] as const)),
);
