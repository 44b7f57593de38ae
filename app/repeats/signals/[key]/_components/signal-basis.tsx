import Link from "next/link";
import { formatCounted } from "@/lib/format/format-count";
import { formatDay } from "@/lib/format/format-day";
import { formatDecimal } from "@/lib/format/format-decimal";
import { formatProbability } from "@/lib/format/format-probability";
import { Bias } from "../../bias";
import type { SignalView } from "../load-signal";

/** What the judgement rests on, and what it cannot show. */
export function SignalBasis({ view: { signal, run } }: { readonly view: SignalView }) {
  return (
    <>
      <p>Jobs closed by {formatDay(run.asOf)}. Weeks run from Monday to Sunday.</p>
      <p>
        Expected: rates by age of all other units of the kind over three years that ended a quarter before each quarter
        began, times the units' own weeks at each age. A job counts if it was closed by the end of the quarter after its
        call; the newest weeks count with the share of jobs that can be closed by now.
      </p>
      <p>
        Chance that luck alone brings this about within a year: {formatProbability(signal.chance)}; after allowing for{" "}
        {formatCounted(run.stories, "group")}: {formatProbability(signal.adjusted)}. Of the whole list about{" "}
        {formatDecimal(run.byLuck, 1)} lines may be luck.
      </p>
      <p>
        Ranges are exact and hold 95 times in 100. What fails more often with something is not thereby caused by it.
      </p>
      <Bias />
      <p>
        <Link href="/repeats">All signals</Link>
      </p>
    </>
  );
}
