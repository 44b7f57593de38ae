// Units in service, one a row.
import { z } from "zod";
import { productTypeKeys } from "@/lib/domain/product-type";
import { type Unit, unitUses } from "@/lib/domain/unit";
import { optional, required, withDefault } from "./cell";
import { dayCell, dayMonthOrYearCell } from "./cell-days";
import { wholeNumber } from "./cell-numbers";
import { identifier, oneOf, shortText, territory } from "./cell-texts";
import type { IntakeSetting } from "./intake-setting";
import type { Parsed } from "./parsed";
import { type Cells, futureDays, outOfOrder, readRow } from "./row-problems";

export const unitRow = z.object({
  maker: required(shortText, "Maker, as on the rating plate."),
  model: required(identifier, "Model number, as on the rating plate, with its suffix."),
  product_type: required(oneOf(productTypeKeys), "Kind of appliance."),
  serial: required(identifier, "Serial number, as on the rating plate."),
  made: optional(dayMonthOrYearCell, "Day of manufacture, or its month or year where only that is known."),
  shipped_on: optional(dayCell, "Day it left the maker for the distributor."),
  sold_on: optional(dayCell, "Day it was sold to its first user."),
  delivered_on: optional(dayCell, "Day it was delivered to the service address."),
  installed_on: optional(dayCell, "Day it was installed."),
  occupied_on: optional(dayCell, "Day of closing or first occupancy, where it came with a new home."),
  registered_on: optional(dayCell, "Day it was registered with the maker."),
  retired_on: optional(dayCell, "Day it left service; it is watched no longer from here."),
  recorded_from: optional(
    dayCell,
    "Day from which this unit's failures are on record, where later than the company's own records.",
  ),
  use: withDefault(oneOf(unitUses), "household", "Household or commercial use."),
  territory: optional(territory, "Where it stands: country, or country and state, by ISO 3166."),
  owner_number: withDefault(wholeNumber({ least: 1 }), 1, "1 for the first owner, 2 after one transfer, and so on."),
});

const pastDays = [
  "shipped_on",
  "sold_on",
  "delivered_on",
  "installed_on",
  "occupied_on",
  "registered_on",
  "retired_on",
  "recorded_from",
];

/** One row of units.csv in; one unit, or every problem of the row, out. */
export function parseUnitRow(cells: Cells, setting: IntakeSetting): Parsed<Unit> {
  return readRow(unitRow, cells, setting, {
    words: futureDays(cells, pastDays, setting),
    contradictions: () =>
      outOfOrder(cells, [
        ["made", "shipped_on"],
        ["made", "sold_on"],
        ["made", "delivered_on"],
        ["made", "installed_on"],
        ["made", "retired_on"],
        ["sold_on", "retired_on"],
        ["delivered_on", "retired_on"],
        ["installed_on", "retired_on"],
      ]),
    value: unitOf,
  });
}

function unitOf(row: z.output<typeof unitRow>): Unit {
  return {
    maker: row.maker,
    model: row.model,
    productType: row.product_type,
    serial: row.serial,
    madeFrom: row.made?.earliest,
    madeUntil: row.made?.latest,
    shippedOn: row.shipped_on,
    soldOn: row.sold_on,
    deliveredOn: row.delivered_on,
    installedOn: row.installed_on,
    occupiedOn: row.occupied_on,
    registeredOn: row.registered_on,
    retiredOn: row.retired_on,
    recordedFrom: row.recorded_from,
    use: row.use,
    territory: row.territory,
    ownerNumber: row.owner_number,
  };
}
