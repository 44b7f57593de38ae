import { type Column, Table } from "@/app/_ui/table";
import type { AgeStratum } from "@/lib/failures/age-strata";
import type { GroupComparison } from "@/lib/failures/compare-groups";
import { formatCount } from "@/lib/format/format-count";
import { formatDecimal } from "@/lib/format/format-decimal";

/** What each age brings to the comparison: counts and unit-years of both, and what the second foretells for the first. */
export function ComparisonAges({ comparison }: { readonly comparison: GroupComparison }) {
  return (
    <Table
      caption="Age by age of the unit"
      columns={columns}
      rows={comparison.ages}
      rowKey={({ band }) => band.key}
      narrow="scroll"
    />
  );
}

const columns: readonly Column<AgeStratum>[] = [
  { key: "age", head: "Age", cell: ({ band }) => band.name },
  { key: "events1", head: "1 failures", kind: "number", cell: ({ first }) => formatCount(first.events) },
  { key: "years1", head: "1 unit-years", kind: "number", cell: ({ first }) => formatDecimal(first.exposure, 1) },
  { key: "events2", head: "2 failures", kind: "number", cell: ({ second }) => formatCount(second.events) },
  { key: "years2", head: "2 unit-years", kind: "number", cell: ({ second }) => formatDecimal(second.exposure, 1) },
  {
    key: "expected",
    head: "1 expected",
    kind: "number",
    cell: ({ expected }) => (expected === undefined ? "never watched" : formatDecimal(expected, 1)),
  },
];
