import Link from "next/link";
import { HowCounted } from "@/app/_ui/how-counted";
import { RangeNote } from "@/app/_ui/range-note";
import { formatCount, formatCounted } from "@/lib/format/format-count";
import { verdictBasis } from "../../comparison-words";
import { periodWords } from "../../group-words";
import type { ComparisonKind, LoadedComparison } from "../../load-comparison";
import { NotCounted } from "./not-counted";

interface Props {
  readonly view: LoadedComparison;
  readonly kind: ComparisonKind;
}

/** What the comparison rests on, and what it cannot say. */
export function ComparisonBasis({ view, kind }: Props) {
  const { outcome, name, question } = view;
  return (
    <>
      {outcome.kind === "compared" &&
        [outcome.comparison.first, outcome.comparison.second].map((side, i) => (
          <div key={side.name}>
            <p>
              {i + 1} {name === side.name ? name : `${side.name}`}, {periodWords(side.question)}:{" "}
              {formatCounted(side.life.failures, "failure")}
              {side.rate.kind === "rate" &&
                ` in ${formatCount(side.rate.estimate.n)} unit-years of ${formatCounted(side.rate.units, "unit")}`}
              .
            </p>
            <NotCounted leftOut={side.leftOut} unplaced={[]} />
          </div>
        ))}
      {outcome.kind === "compared" && <p>{verdictBasis(outcome.verdict)}</p>}
      {kind === "compare" ? <PairCautions /> : <DayCautions />}
      <RangeNote level={question.level} />
      <p>
        <HowCounted of="ratio" />, <HowCounted of="observed-expected" />, <HowCounted of="causes" />
      </p>
      <p>
        <Link href="/shop/how-we-count">How we count</Link>
      </p>
    </>
  );
}

function PairCautions() {
  return (
    <>
      <p>The second group is never part of the first, so no group is measured by itself.</p>
      <p>
        A pair that was picked because it stood out in a list will look less different later: the range does not know
        how many other pairs there were.
      </p>
      <p>“More often with” is not “because of”: the groups may differ in use, water, places and owners.</p>
    </>
  );
}

function DayCautions() {
  return (
    <>
      <p>
        Mostly the same units stand on both sides, and they are older after the day than before it; like ages are
        compared, and ages that only one side has are left out.
      </p>
      <p>
        Jobs of the last weeks may not be closed or loaded yet, which makes the time after the day look better than it
        was.
      </p>
      <p>Whatever else changed on or near that day is in the number too.</p>
    </>
  );
}
