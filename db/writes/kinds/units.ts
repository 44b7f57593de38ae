import type { Day } from "@/lib/calendar/day";
import { normalised } from "@/lib/domain/normalised";
import type { Unit } from "@/lib/domain/unit";
import { parseUnitRow } from "@/lib/intake/parse-unit-row";
import { flagRows } from "../staging/flag-rows";
import { run } from "../staging/run";
import { type ReadColumn, stagedKind } from "../staging/staged-kind";
import { inServiceBasis, inServiceOn } from "./in-service";
import { contradictingTypes, serialsOfOtherModels, storeMakers, storeModels } from "./models-of-rows";

const dated = (name: string, value: (unit: Unit) => Day | undefined): ReadColumn<Unit> => ({
  name,
  type: "date",
  from: name,
  use: "value",
  value,
});

/** A unit's column once the row is merged: from the file where it has the column, else as stored. */
const merged = (present: ReadonlySet<string>) => (column: string) =>
  `${present.has(column.startsWith("made_") ? "made" : column) ? "s" : "t"}.${column}`;

/** The register of units. Whoever is named here counts as exposure from its in-service day on. */
export const unitsKind = stagedKind<Unit>({
  kind: "units",
  parse: parseUnitRow,
  columns: [
    { name: "maker", type: "text", from: "maker", use: "help", value: (unit) => unit.maker },
    { name: "maker_n", type: "text", from: "maker", use: "help", value: (unit) => normalised(unit.maker) },
    { name: "model", type: "text", from: "model", use: "help", value: (unit) => unit.model },
    { name: "model_n", type: "text", from: "model", use: "help", value: (unit) => normalised(unit.model) },
    { name: "product_type", type: "text", from: "product_type", use: "help", value: (unit) => unit.productType },
    { name: "serial", type: "text", from: "serial", use: "once", value: (unit) => unit.serial },
    {
      name: "serial_normalised",
      type: "text",
      from: "serial",
      use: "once",
      value: (unit) => normalised(unit.serial ?? ""),
    },
    { name: "made_from", type: "date", from: "made", use: "value", value: (unit) => unit.madeFrom },
    { name: "made_until", type: "date", from: "made", use: "value", value: (unit) => unit.madeUntil },
    dated("shipped_on", (unit) => unit.shippedOn),
    dated("sold_on", (unit) => unit.soldOn),
    dated("delivered_on", (unit) => unit.deliveredOn),
    dated("installed_on", (unit) => unit.installedOn),
    dated("occupied_on", (unit) => unit.occupiedOn),
    dated("registered_on", (unit) => unit.registeredOn),
    dated("retired_on", (unit) => unit.retiredOn),
    dated("recorded_from", (unit) => unit.recordedFrom),
    { name: "use", type: "text", from: "use", use: "value", value: (unit) => unit.use },
    { name: "territory", type: "text", from: "territory", use: "value", value: (unit) => unit.territory },
    { name: "owner_number", type: "integer", from: "owner_number", use: "value", value: (unit) => unit.ownerNumber },
  ],
  derived: [
    "unit_id bigint generated always as (hashtextextended(maker_n || '|' || serial_normalised, 0) & 9223372036854775807) stored",
    "maker_id integer",
    "model_id integer",
  ],
  target: {
    table: "units",
    key: ["unit_id"],
    onInsert: {
      maker_id: "s.maker_id",
      model_id: "s.model_id",
      identified: "true",
      in_register: "true",
      in_service_on: inServiceOn((column) => `s.${column}`),
      in_service_basis: inServiceBasis((column) => `s.${column}`),
    },
    onUpdate: (present) => ({
      in_register: "true",
      model_id: "case when t.in_register then t.model_id else s.model_id end",
      in_service_on: inServiceOn(merged(present)),
      in_service_basis: inServiceBasis(merged(present)),
    }),
    alsoDiffers: "not t.in_register",
  },
  named: { column: "serial", noun: "unit" },
  async resolve() {},
  async check(tx, staged) {
    const { table } = staged;
    await flagRows(tx, staged, contradictingTypes(table));
    await flagRows(tx, staged, serialsOfOtherModels(table));
    await flagRows(
      tx,
      staged,
      `select s.row, 'serial', s.serial, 'cannot be told apart from serial ' || u.serial || ' of another maker', 'Report it: the two make the same key.'
       from ${table} s join units u using (unit_id) where s.readable and u.serial_normalised <> s.serial_normalised`,
    );
    await flagRows(tx, staged, againstStoredDays(staged.present, table));
  },
  async prepare(tx, staged) {
    const rows = "s.fate in ('new', 'changed')";
    await storeMakers(tx, staged, rows);
    await storeModels(tx, staged, {
      rows: `${rows} and not exists (select from units u where u.unit_id = s.unit_id and u.in_register)`,
      type: "product_type",
    });
    await run(
      tx,
      `update ${staged.table} s set maker_id = k.maker_id, model_id = m.model_id
       from makers k join models m using (maker_id)
       where k.normalised = s.maker_n and m.normalised = s.model_n and ${rows}`,
    );
  },
  recounts: "staged units",
});

/** A file without some of the columns must not contradict the days that are stored. */
function againstStoredDays(present: ReadonlySet<string>, table: string): string {
  const of = merged(present);
  const started = `coalesce(${of("installed_on")}, ${of("delivered_on")}, ${of("sold_on")})`;
  return `select s.row, 'serial', s.serial, 'would be retired on ' || ${of("retired_on")} || ', before it was in service on ' || ${started}, 'Give both days in this file.'
     from ${table} s join units t using (unit_id) where s.readable and ${of("retired_on")} < ${started}
     union all
     select s.row, 'serial', s.serial, 'would be sold on ' || ${of("sold_on")} || ', before it was made on ' || ${of("made_from")}, 'Give both days in this file.'
     from ${table} s join units t using (unit_id) where s.readable and ${of("sold_on")} < ${of("made_from")}`;
}
