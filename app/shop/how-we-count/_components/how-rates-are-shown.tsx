import { Definition, Source } from "./definition";
import { GradeKey } from "./grade-key";

export function HowRatesAreShown() {
  return (
    <>
      <h2>How rates are shown</h2>
      <Definition of="grades">
        <p>
          <strong>Firm</strong>: at least 10 failures, a denominator of at least 30, and a range no wider than 1.6 times
          the rate. Filled dot, solid band. <strong>Loose</strong>: anything between. Ring, dashed band.{" "}
          <strong>Thin</strong>: a denominator below 10. Hatched band without a dot, and no rate in words.
        </p>
        <GradeKey />
        <Source>
          After the presentation standards of the US National Center for Health Statistics (Parker and others 2017,
          Vital and Health Statistics 2-175), merged into one table for this program.
        </Source>
      </Definition>
      <Definition of="zero-events">
        <p>
          No failure yet is not a rate of nothing. What has been learnt is how high the rate could still be, so that is
          what is said: “0 of 24 — anything up to 14 in 100 would still fit”.
        </p>
      </Definition>
      <Definition of="order">
        <p>
          Rows stand by name or by their lowest believable rate, the lower end of the range, and not by the rate itself:
          the smallest groups would lead by luck. Thin groups are never ranked; they wait in a closed list.
        </p>
      </Definition>
      <Definition of="causes">
        <p>
          That something fails more often with a model, a symptom or a technician does not say that it fails because of
          it. The jobs behind each number are one step away.
        </p>
      </Definition>
    </>
  );
}
