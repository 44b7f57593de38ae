import { HowCounted } from "@/app/_ui/how-counted";
import { type CauseEntry, causes } from "@/lib/domain/cause";
import { type InServiceBasis, inServiceBases } from "@/lib/domain/unit";
import { ageBands, daysPerMonth, daysPerYear } from "@/lib/failures/rate-question";
import { formatCounted } from "@/lib/format/format-count";
import { formatDay } from "@/lib/format/format-day";
import { fraction, indexed, maths, over } from "../_maths/maths";
import type { CountedView } from "../load-counted-view";
import { Definition } from "./definition";

export function WhatIsCounted({ view }: { readonly view: CountedView }) {
  return (
    <>
      <Units view={view} />
      <Jobs />
      <Time />
    </>
  );
}

function Units({ view: { shop } }: { readonly view: CountedView }) {
  return (
    <>
      <Definition of="unit">
        <p>
          One appliance with a serial number. A job without a serial hangs on a placeholder of its own until the serial
          is known; a placeholder adds no unit-years. A unit that no register names adds none either: it is known only
          because it failed, and counting it would raise every rate.
        </p>
      </Definition>
      <Definition
        of="in-service-day"
        example={`Grace after manufacture in this shop: ${formatCounted(shop.madeGraceMonths, "month")}.`}
      >
        <p>
          The day a unit was {inServiceWords}. A unit with none of these days adds no unit-years, and each page says how
          many such units there are.
        </p>
      </Definition>
      <Definition
        of="window"
        example={
          shop.recordsFrom === null
            ? "This shop’s records are taken as complete from the beginning."
            : `This shop’s records are complete from ${formatDay(shop.recordsFrom)}.`
        }
        source="Left truncation and right censoring; Klein and Moeschberger (2003), Survival Analysis, chapter 3 (from memory)."
      >
        <p>
          A unit is watched from its in-service day, or from the day on which the shop’s records became complete if that
          is later, until it was retired or until the data end, whichever comes first. Failures before that time were
          not seen, so the time is not counted either: leaving this out would make young machines look better than they
          are. The day of retirement counts for failures; the day after the last day of the data does not.
        </p>
      </Definition>
    </>
  );
}

function Jobs() {
  return (
    <>
      <Definition of="failure">
        <p>
          A closed job whose confirmed cause lies in the component itself, and that names the component. It counts on
          the day it was reported; where that is not known, on the day of the first visit, else on the day of
          completion. A failure of a component that the catalogue does not give to the appliance is left out, with that
          reason, because it has no unit-years of its own.
        </p>
      </Definition>
      <Definition of="call">
        <p>
          Any closed job. A job with an outside cause is a call and never a failure: {outsideCauses}. So is one with “
          {causes.no_fault_found.name}” or “{causes.not_determined.name}”. Pages can show failures, all calls, or one
          cause; which of them is in the address and on the printed page.
        </p>
      </Definition>
      <Definition of="not-counted">
        <p>
          Void, cancelled and duplicate jobs and estimates count as nothing. Jobs outside the time watched are left out
          of rates and stay in lists. Rows that wait to be corrected are in no number. Units that were never recorded,
          and repairs done by others, are not counted because nobody here has seen them.{" "}
          <HowCounted of="left-out">How many that is here</HowCounted>.
        </p>
      </Definition>
    </>
  );
}

function Time() {
  return (
    <>
      <Definition of="spell">
        <p>
          A component’s life starts with its unit. It ends when the component fails, and the new one starts a life at
          age 0; or it is cut short when the unit is retired or the data end. Curves by component age use these lives;
          rates by age use the unit’s age. A life that was already going on when watching began enters half a day before
          the first watched day, so that a failure on that day is seen.
        </p>
      </Definition>
      <Definition of="age" example={`Bands: ${ageBands.map(({ name }) => name.toLowerCase()).join(", ")}.`}>
        <p>
          Whole days between two calendar days. Months of {daysPerMonth} days are used to name bands and axes only;
          cover is always reckoned in calendar months.
        </p>
      </Definition>
      <Definition
        of="exposure"
        formula={maths`T = ${fraction(maths`1`, maths`${String(daysPerYear)}`)} ${over("∑", maths`i`)} ( ${indexed("b", "i")} − ${indexed("a", "i")} )`}
        letters="a, b: first and last watched day of unit i"
      >
        <p>
          The days that all units were watched, added up and divided by {daysPerYear}. Four units watched for three
          months each make one unit-year. It is the denominator of every <HowCounted of="rate">rate</HowCounted>.
        </p>
      </Definition>
      <Definition
        of="from-counts"
        formula={maths`n ( t ) = ${over("∑", maths`g`)} ${indexed("u", "g")} [ ${indexed("a", "g")} ≤ t < ${indexed("b", "g")} ]`}
        letters="n: units at risk at age t; u: units of group g, which share model, in-service day and both ends of their watched time"
      >
        <p>
          Units that share their model and the days that bound their watched time are counted as one group, and failures
          by model, component, symptom, cause and day. Rates, curves and fits made from these counts are exactly those
          that unit after unit would give; the counts are made anew, within the same step, by every load and every load
          taken back.
        </p>
      </Definition>
    </>
  );
}

const basisWords: Readonly<Record<InServiceBasis, string>> = {
  installed: "installed",
  delivered: "where that is not known the day it was delivered",
  sold: "else sold",
  made: "else made, plus the months of grace that the shop has set",
};
/** In the order in which the dates are looked for. */
const inServiceWords = inServiceBases.map((basis) => basisWords[basis]).join(", ");

const outsideCauses = Object.values<CauseEntry>(causes)
  .filter(({ kind }) => kind === "outside")
  .map(({ name }) => (name.startsWith("Act ") ? name : name.toLowerCase()))
  .join(", ");
