import { largestJump } from "@/lib/figures/drawn-curve";
import { Definition, Source } from "./definition";

export function HowRatesAreMade() {
  return (
    <>
      <h2>How rates and ranges are made</h2>
      <Definition of="rate">
        <p>
          Failures divided by unit-years, said as so many in 100 a year: 15 in 100 a year means 15 failures for every
          100 units watched for one year. Where all rates of a table are below 1 in 100 it says so many in 1,000.
        </p>
      </Definition>
      <Definition of="range">
        <p>
          What the true rate could be, given how little or much was seen. If we could rerun this many times, ranges at
          95 in 100 would hold the true rate 95 times in 100. The darker middle of each mark is the same range at 50 in
          100. Statisticians call it a confidence interval. It covers chance only, not jobs coded wrongly.
        </p>
        <p>Numbers are rounded to what the range supports: whole ones unless the range is narrower than 2.</p>
      </Definition>
      <Definition of="poisson-exact">
        <p>
          Exact Poisson limits: the lowest and highest rates under which the count that was seen is not an extreme one.
          They are never too narrow, and somewhat wide at small counts.
        </p>
        <Source>Garwood (1936), Biometrika 28, 437–442.</Source>
      </Definition>
      <Definition of="poisson-robust">
        <p>
          Some machines fail again and again, and then failures bunch more than chance alone would have it. A range that
          counts by unit is made as well, and where it is the wider one it is shown instead.
        </p>
        <Source>Lawless and Nadeau (1995), Technometrics 37, 158–168.</Source>
      </Definition>
      <Definition of="wilson">
        <p>
          For so many of so many, such as how often a symptom turned out to be one component: the Wilson (score) range.
          It stays sensible at none and at all.
        </p>
        <Source>Wilson (1927), Journal of the American Statistical Association 22, 209–212.</Source>
      </Definition>
      <Definition of="goodman">
        <p>Where several shares of one whole stand side by side, their ranges are wide enough to hold all together.</p>
        <Source>Goodman (1965), Technometrics 7, 247–254.</Source>
      </Definition>
      <Definition of="ratio">
        <p>
          One rate divided by another, with a range of its own. Whether two ranges overlap is not the same question, so
          it is not used to compare.
        </p>
      </Definition>
      <Definition of="observed-expected">
        <p>
          Failures seen, divided by the failures that the rest of the fleet would have had at the same ages. A group is
          never part of what it is held against.
        </p>
      </Definition>
      <Definition of="share-failed">
        <p>
          The chance of having failed by each age, without assuming any shape; units that are still running count for as
          long as they were watched. The line ends where one more failure would move it by more than{" "}
          {Math.round(100 * largestJump)} in 100.
        </p>
        <Source>
          Kaplan and Meier (1958), Journal of the American Statistical Association 53, 457–481; Greenwood (1926) on the
          log-log scale for the range.
        </Source>
      </Definition>
      <Definition of="fitted-life">
        <p>
          A Weibull life, fitted by maximum likelihood to all lives of the component, those cut short included. It is
          refused where there are fewer than 5 failures. “Wears out” or “fails early” is said only when the whole range
          of the shape lies on one side of 1.
        </p>
      </Definition>
      <Definition of="repeat-failures">
        <p>
          How many failures a unit has had on average by each age, repeats included, with a range that counts by unit.
        </p>
        <Source>Nelson (1988), Journal of Quality Technology 20, 24–35; Lawless and Nadeau (1995).</Source>
      </Definition>
    </>
  );
}
