import { type Currency, currencies } from "@/lib/domain/money";
import type { IntakeSetting } from "../intake-setting";
import { type CellProblem, shownValue } from "../parsed";
import type { OpenRow } from "./open-row";

/** Currencies that a sign beside an amount may mean. */
const meanings: ReadonlyMap<string, readonly Currency[]> = new Map<string, readonly Currency[]>([
  ["$", ["USD", "CAD", "AUD"]],
  ["US$", ["USD"]],
  ["CA$", ["CAD"]],
  ["C$", ["CAD"]],
  ["A$", ["AUD"]],
  ["AU$", ["AUD"]],
  ["€", ["EUR"]],
  ["£", ["GBP"]],
  ...currencies.map((code): [string, readonly Currency[]] => [code, [code]]),
]);

interface SignedAmount {
  readonly source: string;
  readonly raw: string;
  readonly sign: string;
  readonly column: string;
  readonly row: Record<string, string>;
  readonly open: OpenRow;
}

/** A sign that says the row's currency says nothing new; one that says another fills the blank currency, or contradicts it. */
export function currencyProblem(
  { source, raw, sign, column, row, open }: SignedAmount,
  { currency }: IntakeSetting,
): readonly CellProblem[] {
  const meant = meanings.get(sign) ?? [];
  const stated = row.currency ?? "";
  if (meant.some((each) => each === (stated === "" ? currency : stated))) return [];
  const [only] = meant;
  if (stated === "" && meant.length === 1 && only !== undefined) {
    row.currency = only;
    open.notes.push({ source, column: "currency", raw, taken: only, note: `The amount in ${column} says ${sign}.` });
    return [];
  }
  return [
    {
      column: source,
      value: shownValue(raw),
      problem: `says ${sign}, and the currency of the row is ${stated === "" ? currency : stated}`,
      fix: "Match a column to the currency, or correct the amount.",
    },
  ];
}
