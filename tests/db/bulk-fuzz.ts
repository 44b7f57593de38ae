// Dirty files of invented rows: most cells as they should be, some with every kind of damage that a reader of bytes could take for good.
import type { Row } from "./intake-files";

const damage = [
  "",
  " ",
  " x ",
  "\u00a0",
  "2023-02-30",
  "2023-2-3",
  "2199-01-01",
  "1899-12-31",
  "03/04/2023",
  "1E5",
  "8.12E+11",
  "1-MAR",
  "12,5",
  "-3",
  "+4",
  "007",
  "1.234",
  ".5",
  "5.",
  "0",
  "1000000",
  "1000001",
  "99999999999",
  "\\N",
  "\\.",
  "a\\tb",
  'a "quoted" word',
  "two\nlines",
  "tab\there",
  "Ångström",
  "ﬁne ½ Ω",
  "\u200fRTL",
  "\ufeffmark",
  "\u0000",
  "\u007f",
  "---",
  "drain_pumpp",
  "DRAIN_PUMP",
  "x".repeat(201),
  "y".repeat(20_001),
];

/** A number from 0 to 1, the same for the same seed. */
export function drawer(seed: number): () => number {
  let state = seed * 7919 + 1;
  return () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}

export interface DirtyFile {
  readonly columns: readonly string[];
  readonly rows: readonly Row[];
  /** How many rows have a cell that was damaged. */
  readonly damaged: number;
}

/** Rows by `row`, of which one in ten is damaged in one cell, and some are repeated, word for word or with another cell. */
export function dirtyFile(seed: number, rows: number, row: (draw: () => number, index: number) => Row): DirtyFile {
  const draw = drawer(seed);
  const made: Row[] = [];
  let damaged = 0;
  for (let index = 0; index < rows; index++) {
    const clean = row(draw, index);
    const columns = Object.keys(clean);
    const fate = draw();
    if (fate < 0.1) {
      damaged++;
      made.push({ ...clean, [columns[Math.floor(draw() * columns.length)] ?? ""]: pick(draw, damage) });
    } else made.push(clean);
    if (fate > 0.97) made.push(clean);
    else if (fate > 0.95) made.push({ ...clean, [columns.at(-1) ?? ""]: pick(draw, ["1", "2", "other"]) });
    if (fate > 0.94 && fate < 0.95) made.push({});
  }
  return { columns: Object.keys(row(draw, 0)), rows: made, damaged };
}

export function pick<T>(draw: () => number, from: readonly T[]): T {
  const found = from[Math.floor(draw() * from.length)];
  if (found === undefined) throw new RangeError("from: is empty");
  return found;
}

const dayOf = (draw: () => number, year: number) =>
  `${year}-${String(1 + Math.floor(draw() * 12)).padStart(2, "0")}-${String(1 + Math.floor(draw() * 28)).padStart(2, "0")}`;

export function dirtyJob(draw: () => number, index: number): Row {
  const requested = dayOf(draw, 2023);
  return {
    job_number: `J-${index}`,
    maker: pick(draw, ["Hearth-Wick", "HEARTH WICK", "Brightwell"]),
    model: pick(draw, ["FW5500", "fw-5500", "FW5500-A2"]),
    product_type: pick(draw, ["front_load_washer", "front_load_washer", ""]),
    serial: pick(draw, [`S${index % 90}`, `s ${index % 90}`, ""]),
    requested_on: requested,
    first_visit_on: pick(draw, ["", requested, dayOf(draw, 2023)]),
    completed_on: dayOf(draw, 2024),
    status: pick(draw, ["", "closed", "void"]),
    complaint: pick(draw, ["Water stays in", 'Says "bang", then nothing', "Zwei\nZeilen", "Ωhm ½"]),
    symptom: pick(draw, ["will_not_drain", ""]),
    component: pick(draw, ["drain_pump", "", "door_lock", "compressor"]),
    cause: pick(draw, ["component", "foreign_object"]),
    labour: pick(draw, ["129.5", "0", "0.05", "12.00", ""]),
    trip: pick(draw, ["35", ""]),
    callback_of: pick(draw, ["", "", "", `J-${index}`, "J-1"]),
    visits: pick(draw, ["1", "2", ""]),
  };
}

export function dirtyPartLine(draw: () => number, index: number): Row {
  return {
    job_number: `J-${index % 300}`,
    line: String(1 + Math.floor(index / 300)),
    part_number: pick(draw, ["P-100", "p 100/2", "123E"]),
    description: pick(draw, ["Pump", "Pump, complete", ""]),
    component: pick(draw, ["drain_pump", ""]),
    unit_cost: pick(draw, ["41.50", "3", "0.5"]),
    invoiced_on: dayOf(draw, 2024),
    quantity: pick(draw, ["1", "2"]),
  };
}

export function dirtyUnit(draw: () => number, index: number): Row {
  return {
    maker: pick(draw, ["Hearth-Wick", "HEARTH WICK"]),
    model: pick(draw, ["FW5500", "fw-5500"]),
    product_type: "front_load_washer",
    serial: pick(draw, [`S${index}`, `s-${index}`]),
    sold_on: pick(draw, ["", dayOf(draw, 2021)]),
    installed_on: dayOf(draw, 2022),
    retired_on: pick(draw, ["", "", "", dayOf(draw, 2024)]),
    owner_number: pick(draw, ["1", "2", ""]),
    use: pick(draw, ["", "household", "commercial"]),
  };
}
