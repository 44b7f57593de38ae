import { type Column, Table } from "@/app/_ui/table";
import type { PayFacts } from "@/db/queries/money-pay";
import { type PayAgainstRetail, payAgainstRetail } from "@/lib/claims/recovery/pay-against-retail";
import { componentOf } from "@/lib/domain/components";
import type { Currency } from "@/lib/domain/money";
import { productTypes } from "@/lib/domain/product-type";
import { formatCount, formatCounted } from "@/lib/format/format-count";
import { formatDecimal } from "@/lib/format/format-decimal";
import { formatMoney } from "@/lib/format/format-money";
import { type OrderedMedian, orderedMedian } from "@/lib/statistics/intervals/ordered-median";

type Comparison = PayAgainstRetail<OrderedMedian>;
type Found = Extract<OrderedMedian, { kind: "median" }>;
interface PayRow extends Omit<Comparison, "pays" | "retail"> {
  readonly pays: Found;
  readonly retail: Found;
}

/** Both medians must hold at once for their ratio to hold at 0.95. */
const eachLevel = 0.975;
/** So many kinds of work stand open; the others are behind a line that says how many they are. */
const open = 20;

/** What payers pay for the work of a repair, beside what customers paid for the same work. */
export function PayTable({ facts, years }: { readonly facts: PayFacts; readonly years: number }) {
  const compared = payAgainstRetail(facts, (amounts) => orderedMedian(amounts, eachLevel));
  const rows = compared.flatMap(comparable);
  const thin = compared.length - rows.length;
  if (compared.length === 0) return null;
  return (
    <section className="stack">
      <h2>Pay against retail</h2>
      <p>{findingOf(rows)}</p>
      {rows.length > 0 && (
        <Table
          caption={`Labour and trip of repairs of the last ${formatCounted(years, "year")}, by payer and kind of work`}
          columns={columns}
          rows={rows.slice(0, open)}
          rowKey={rowKey}
        />
      )}
      {rows.length > open && (
        <details>
          <summary>{formatCounted(rows.length - open, "kind")} of work more</summary>
          <Table caption="The rest" captionHidden columns={columns} rows={rows.slice(open)} rowKey={rowKey} />
        </details>
      )}
      {thin > 0 && (
        <p className="small">
          {formatCounted(thin, "kind")} of work {thin === 1 ? "has" : "have"} too few jobs on one side to compare.
        </p>
      )}
    </section>
  );
}

function comparable(row: Comparison): readonly PayRow[] {
  const { pays, retail } = row;
  return pays.kind === "median" && retail.kind === "median" ? [{ ...row, pays, retail }] : [];
}

function findingOf(rows: readonly PayRow[]): string {
  if (rows.length === 0) return "No kind of work has enough jobs of a payer and of customers to be compared.";
  const below = rows.filter((row) => shareOf(row).high < 1).length;
  return `In ${formatCount(below)} of ${formatCounted(rows.length, "kind")} of work that can be compared, a payer pays less for the work than customers do, beyond both ranges.`;
}

/** The ratio of the medians, and between which it lies when both lie within their limits. */
function shareOf({ pays, retail }: PayRow) {
  return { ratio: pays.median / retail.median, low: pays.low / retail.high, high: pays.high / retail.low };
}

function rowKey({ payer, productType, component, currency }: PayRow): string {
  return `${payer} ${productType} ${component} ${currency}`;
}

const columns: readonly Column<PayRow>[] = [
  { key: "payer", head: "Payer", cell: ({ payer }) => payer },
  {
    key: "work",
    head: "Work",
    cell: ({ component, productType }) =>
      `${componentOf(component)?.name ?? component}, ${productTypes[productType].toLowerCase()}`,
  },
  { key: "pays", head: "Payer pays", wideOnly: true, cell: ({ pays, currency }) => medianInWords(pays, currency) },
  {
    key: "retail",
    head: "Customers pay",
    wideOnly: true,
    cell: ({ retail, currency }) => medianInWords(retail, currency),
  },
  {
    key: "share",
    head: "Payer to customer",
    cell: (row) => {
      const { ratio, low, high } = shareOf(row);
      return `${formatDecimal(ratio, 2)} (${formatDecimal(low, 2)} to ${formatDecimal(high, 2)})`;
    },
  },
];

function medianInWords({ median, low, high, n }: Found, currency: Currency): string {
  const money = (cents: number) => formatMoney({ cents: Math.round(cents), currency });
  const range = low === high ? "" : ` (${money(low)} to ${money(high)})`;
  return `${money(median)}${range}, ${formatCounted(n, "job")}`;
}
