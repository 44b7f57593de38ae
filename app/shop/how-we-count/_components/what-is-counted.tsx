import { HowCounted } from "@/app/_ui/how-counted";
import { daysPerMonth, daysPerYear } from "@/lib/failures/rate-question";
import { Definition } from "./definition";

export function WhatIsCounted() {
  return (
    <>
      <h2>What is counted</h2>
      <Definition of="unit">
        <p>
          One appliance with a serial number. A job without a serial hangs on a placeholder of its own until the serial
          is known; a placeholder adds no unit-years.
        </p>
      </Definition>
      <Definition of="in-service-day">
        <p>
          The day a unit was installed; where that is not known the day it was delivered, else sold, else made plus the
          months of grace that the shop has set. A unit with none of these days adds no unit-years, and each page says
          how many such units there are.
        </p>
      </Definition>
      <Definition of="window">
        <p>
          A unit is watched from its in-service day, or from the day on which the shop’s records became complete if that
          is later, until it was retired or until the data end, whichever comes first. Failures before that time were
          not seen, so the time is not counted either: leaving this out would make young machines look better than they
          are.
        </p>
      </Definition>
      <Definition of="failure">
        <p>
          A closed job whose confirmed cause lies in the component itself. It counts on the day it was reported; where
          that is not known, on the day of the first visit, else on the day of completion.
        </p>
      </Definition>
      <Definition of="call">
        <p>
          Any closed job. A job with an outside cause, such as a foreign object, the wrong detergent, the installation,
          the supply or misuse, or with no fault found, is a call and never a failure. Pages can show failures, all
          calls, or one cause; which of them is in the address and on the printed page.
        </p>
      </Definition>
      <Definition of="not-counted">
        <p>
          Void, cancelled and duplicate jobs and estimates count as nothing. Jobs outside the time watched are left out
          of rates and stay in lists. Rows that wait to be corrected are not in any number. Units that were never
          recorded, and repairs done by others, are not counted because nobody here has seen them.
        </p>
      </Definition>
      <Definition of="spell">
        <p>
          A component’s life starts with its unit. It ends when the component fails, and the new one starts a life at
          age 0; or it is cut short when the unit is retired or the data end. Curves by component age use these lives;
          rates by age band use the unit’s age.
        </p>
      </Definition>
      <Definition of="age">
        <p>
          Whole days between two calendar days. Months of {daysPerMonth} days are used to name bands and axes only;
          cover is always reckoned in calendar months.
        </p>
      </Definition>
      <Definition of="exposure">
        <p>
          The days that all units were watched, added up and divided by {daysPerYear}. Four units watched for three
          months each make one unit-year. It is the denominator of every <HowCounted of="rate">rate</HowCounted>.
        </p>
      </Definition>
    </>
  );
}
