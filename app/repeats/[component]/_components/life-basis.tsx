import Link from "next/link";
import { addDays } from "@/lib/calendar/day";
import { dayFromNumber } from "@/lib/calendar/day-number";
import type { ComponentLife } from "@/lib/failures/component-life";
import { formatCounted } from "@/lib/format/format-count";
import { formatPlainDay } from "@/lib/format/format-day";

export function LifeBasis({ life }: { readonly life: ComponentLife }) {
  return (
    <>
      <p>
        {formatCounted(life.spells, "life", "lives")} of this component, {formatCounted(life.failures, "failure")}, up
        to {formatPlainDay(addDays(dayFromNumber(life.question.until), -1))}. A replaced part begins a new life at age
        0.
      </p>
      <p>
        Units already in service when records began enter late: what failed before that was not seen, and is not
        guessed.
      </p>
      <p>Jobs closed with an outside cause are calls, not failures of the part.</p>
      <p>
        If we could rerun this many times, ranges built this way would hold the truth{" "}
        {Math.round(100 * life.question.level)} times in 100. <Link href="/shop/how-we-count">How we count</Link>
      </p>
    </>
  );
}
