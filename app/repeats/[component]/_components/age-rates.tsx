import { DotIntervalRows } from "@/app/_charts/dot-interval-rows";
import { Figure } from "@/app/_ui/figure";
import { type Column, Table } from "@/app/_ui/table";
import type { AgeHazard } from "@/lib/failures/age-hazards";
import type { LifeDetail } from "@/lib/failures/life-detail";
import { rateRows } from "@/lib/figures/rate-rows";
import { formatCount } from "@/lib/format/format-count";
import { formatDecimal } from "@/lib/format/format-decimal";

interface Props {
  readonly life: LifeDetail;
  readonly csvHref: string;
}

/** How often the part fails in each band of its age: the hazard without any assumed shape. */
export function AgeRates({ life, csvHref }: Props) {
  const bands = life.hazards.filter(({ estimate }) => estimate !== undefined);
  const figure = rateRows(
    bands.flatMap(({ band, estimate }) =>
      estimate === undefined ? [] : [{ key: band.key, label: band.name, estimate }],
    ),
    { order: "given", counted: "failures" },
  );
  if (figure.kind === "no-groups") return null;
  return (
    <Figure
      takeaway="Failures a year by age of the part, from young to old"
      csvHref={csvHref}
      note={
        <p>
          Actuarial life table with the exact Poisson range within each band: in 100 parts of that age, so many fail in
          a year. A part that is replaced begins again in its first year.
        </p>
      }
      table={
        <Table
          caption="Life table by age of the part"
          columns={columns}
          rows={life.hazards}
          rowKey={({ band }) => band.key}
          narrow="scroll"
        />
      }
    >
      <DotIntervalRows label="Failures a year by age of the part" figure={figure} />
    </Figure>
  );
}

const per100 = (value: number | undefined) => (value === undefined ? "–" : formatDecimal(100 * value, 2));
const count = (value: number | undefined) => (value === undefined ? "–" : formatCount(value));

const columns: readonly Column<AgeHazard>[] = [
  { key: "age", head: "Age of the part", cell: ({ band }) => band.name },
  { key: "start", head: "Watched at its start", kind: "number", cell: ({ lives }) => count(lives?.atStart) },
  { key: "entered", head: "Came in later", kind: "number", cell: ({ lives }) => count(lives?.entered) },
  { key: "failed", head: "Failed", kind: "number", cell: ({ failed }) => formatCount(failed) },
  { key: "lost", head: "Lost sight of", kind: "number", cell: ({ lives }) => count(lives?.lost) },
  { key: "years", head: "Years lived", kind: "number", cell: ({ years }) => formatDecimal(years, 1) },
  { key: "rate", head: "Per 100 a year", kind: "number", cell: ({ estimate }) => per100(estimate?.point) },
  { key: "low", head: "From", kind: "number", cell: ({ estimate }) => per100(estimate?.lo) },
  { key: "high", head: "To", kind: "number", cell: ({ estimate }) => per100(estimate?.hi) },
];
