// Facts of a unit that bear on its cover and that no register holds, one unit a row.
import { z } from "zod";
import type { Day } from "@/lib/calendar/day";
import { optional, required, withDefault } from "./cell";
import { dayCell } from "./cell-days";
import { yesNo } from "./cell-numbers";
import { identifier, shortText } from "./cell-texts";
import type { IntakeSetting } from "./intake-setting";
import type { Parsed } from "./parsed";
import { type Cells, futureDays, outOfOrder, readRow } from "./row-problems";

export const unitFactsRow = z.object({
  maker: required(shortText, "Maker of the unit, as on the rating plate."),
  serial: required(identifier, "Serial number of the unit, as on the rating plate."),
  first_used_on: optional(dayCell, "Day of its first use, where terms run from there."),
  acquired_on: optional(dayCell, "Day on which its present owner took it over from another."),
  transfer_registered_on: optional(dayCell, "Day on which that change of owner was registered with the payer."),
  exchanged_on: optional(dayCell, "Day on which it was handed over in exchange for another unit."),
  exchanged_serial: optional(identifier, "Serial number of the unit that was handed back for it."),
  serial_removed: withDefault(yesNo, false, "Whether its serial plate was taken off or altered."),
});

export interface UnitFactsRow {
  readonly maker: string;
  readonly serial: string;
  readonly firstUsedOn: Day | undefined;
  readonly acquiredOn: Day | undefined;
  readonly transferRegisteredOn: Day | undefined;
  readonly exchangedOn: Day | undefined;
  readonly exchangedSerial: string | undefined;
  readonly serialRemoved: boolean;
}

const days = ["first_used_on", "acquired_on", "transfer_registered_on", "exchanged_on"];

/** One row of unit-facts.csv in; what it says of one unit, or every problem of the row, out. */
export function parseUnitFactsRow(cells: Cells, setting: IntakeSetting): Parsed<UnitFactsRow> {
  return readRow(unitFactsRow, cells, setting, {
    words: futureDays(cells, days, setting),
    contradictions: (row) => [
      ...outOfOrder(cells, [["acquired_on", "transfer_registered_on"]]),
      ...(row.exchanged_serial !== undefined && row.exchanged_on === undefined
        ? [
            {
              column: "exchanged_on",
              value: "",
              problem: `is blank, though exchanged_serial says ${row.exchanged_serial}`,
              fix: "Write the day of the exchange too.",
            },
          ]
        : []),
    ],
    value: (row) => ({
      maker: row.maker,
      serial: row.serial,
      firstUsedOn: row.first_used_on,
      acquiredOn: row.acquired_on,
      transferRegisteredOn: row.transfer_registered_on,
      exchangedOn: row.exchanged_on,
      exchangedSerial: row.exchanged_serial,
      serialRemoved: row.serial_removed,
    }),
  });
}
