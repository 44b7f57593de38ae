import type { UnitHistory } from "@/lib/statistics/recurrence/unit-history";
import { referenceRows } from "../../reference/read-reference";

type Row = Readonly<Record<string, string>>;

/** One history per unit of a file that lists events and, for each unit, a last row that ends its watching. */
function histories(
  rows: readonly Row[],
  read: (row: Row) => { unit: string; age: number; size: number | "end" },
): UnitHistory[] {
  const byUnit = new Map<string, { exit: number; events: { age: number; size: number }[] }>();
  for (const row of rows) {
    const { unit, age, size } = read(row);
    const history = byUnit.get(unit) ?? { exit: 0, events: [] };
    history.exit = Math.max(history.exit, age);
    if (size !== "end") history.events.push({ age, size });
    byUnit.set(unit, history);
  }
  return [...byUnit.values()].map(({ exit, events }) => ({ entry: 0, exit, count: 1, events }));
}

export const valveSeats = (): UnitHistory[] =>
  histories(referenceRows("valve_seat"), (row) => ({
    unit: row.id ?? "",
    age: Number(row.time),
    size: row.status === "1" ? 1 : "end",
  }));

export const brakingGrids = (batch: 1 | 2): UnitHistory[] =>
  histories(
    referenceRows("braking_grids").filter((row) => row.batch === String(batch)),
    (row) => ({ unit: row.unit ?? "", age: Number(row.days), size: row.event === "Replacement" ? 1 : "end" }),
  );

/** Thirteen vehicles with a repair each, and groups of vehicles with none that share an end age. */
export function doorLocks(by: "number" | "cost"): UnitHistory[] {
  const rows = referenceRows("door_lock_transmitter_field");
  const grouped = rows
    .filter((row) => row.code === "MEnd")
    .map((row) => ({ entry: 0, exit: Number(row.days), count: Number(row.costcount), events: [] }));
  const single = histories(
    rows.filter((row) => row.code !== "MEnd"),
    (row) => ({
      unit: row.vin ?? "",
      age: Number(row.days),
      size: row.code === "End" ? "end" : by === "cost" ? Number(row.costcount) : 1,
    }),
  );
  return [...grouped, ...single];
}
