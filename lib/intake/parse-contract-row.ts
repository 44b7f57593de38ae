// Service contracts, one contract on one unit a row.
import { z } from "zod";
import type { Day } from "@/lib/calendar/day";
import { type Currency, currencies, type Money } from "@/lib/domain/money";
import { optional, required, withDefault } from "./cell";
import { dayCell } from "./cell-days";
import { amount, wholeNumber } from "./cell-numbers";
import { identifier, oneOf, shortText } from "./cell-texts";
import type { IntakeSetting } from "./intake-setting";
import type { Parsed } from "./parsed";
import { type Cells, futureDays, outOfOrder, readRow } from "./row-problems";

export const contractRow = z.object({
  contract_number: required(identifier, "Number of the contract, as on its paper."),
  maker: required(shortText, "Maker of the unit, as on the rating plate."),
  serial: required(identifier, "Serial number of the unit, as on the rating plate."),
  plan: optional(shortText, "Which plan: the key of the policy with its terms, or the name on the paper."),
  sold_on: optional(dayCell, "Day the contract was sold."),
  starts_on: required(dayCell, "First day of the contract."),
  ends_on: required(dayCell, "Last day of the contract."),
  cancelled_on: optional(dayCell, "Day it was cancelled."),
  wait_days: withDefault(wholeNumber({ least: 0 }), 0, "Days after the first one before it pays."),
  deductible: optional(amount, "What the holder pays of each job."),
  limit: optional(amount, "The most that it pays over its whole term."),
  currency: optional(oneOf(currencies), "Currency of the amounts; the company's own where blank."),
  holder: optional(shortText, "Own reference of the holder; a customer number, not a name."),
});

export interface ContractRow {
  readonly contractNumber: string;
  readonly maker: string;
  readonly serial: string;
  readonly plan: string | undefined;
  readonly soldOn: Day | undefined;
  readonly startsOn: Day;
  readonly endsOn: Day;
  readonly cancelledOn: Day | undefined;
  readonly waitDays: number;
  readonly deductible: Money | undefined;
  readonly limit: Money | undefined;
  /** The row's, or else the company's. */
  readonly currency: Currency;
  readonly holder: string | undefined;
}

/** One row of contracts.csv in; one contract, or every problem of the row, out. */
export function parseContractRow(cells: Cells, setting: IntakeSetting): Parsed<ContractRow> {
  return readRow(contractRow, cells, setting, {
    words: futureDays(cells, ["sold_on"], setting),
    contradictions: () =>
      outOfOrder(cells, [
        ["starts_on", "ends_on"],
        ["sold_on", "ends_on"],
      ]),
    value: (row) => {
      const currency = row.currency ?? setting.currency;
      const money = (cents: number | undefined) => (cents === undefined ? undefined : { cents, currency });
      return {
        contractNumber: row.contract_number,
        maker: row.maker,
        serial: row.serial,
        plan: row.plan,
        soldOn: row.sold_on,
        startsOn: row.starts_on,
        endsOn: row.ends_on,
        cancelledOn: row.cancelled_on,
        waitDays: row.wait_days,
        deductible: money(row.deductible),
        limit: money(row.limit),
        currency,
        holder: row.holder,
      };
    },
  });
}
