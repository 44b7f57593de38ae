import Link from "next/link";
import { HowCounted } from "@/app/_ui/how-counted";
import { RangeNote } from "@/app/_ui/range-note";
import { formatCount, formatCounted } from "@/lib/format/format-count";
import { groupWords, periodWords } from "../../group-words";
import type { DrawnLife } from "../../load-component-life";
import { NotCounted } from "./not-counted";

/** What the page rests on, what was chosen, and what is left out. */
export function LifeBasis({ view }: { readonly view: DrawnLife }) {
  const { life, name, question, words } = view;
  return (
    <>
      <p>
        {name}, {groupWords(question.where, words)}, {periodWords(question)}.
      </p>
      <p>
        <HowCounted of="spell">{formatCounted(life.spells, "life", "lives")}</HowCounted> of this component,{" "}
        {formatCount(life.years)} years lived,{" "}
        <HowCounted of="failure">{formatCounted(life.failures, "failure")}</HowCounted>. A replaced part begins a new
        life at age 0.
      </p>
      <p>
        Units already in service when records began enter late: what failed before that was not seen, and is not
        guessed.
      </p>
      <p>Jobs closed with an outside cause are calls, not failures of the part.</p>
      <RangeNote level={question.level} />
      <p>
        <HowCounted of="share-failed" />, <HowCounted of="fitted-life" />, <HowCounted of="repeat-failures" />
      </p>
      <NotCounted leftOut={view.rates.leftOut} unplaced={view.unplaced} />
      <p>
        <Link href="/shop/how-we-count">How we count</Link>
      </p>
    </>
  );
}
