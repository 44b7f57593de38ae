import { type SeededDraws, seededDraws, streamSeed } from "@/lib/statistics/demand/seeded-draws";
import { type WeibullPosterior, weibullPosterior } from "@/lib/statistics/life/weibull-posterior";
import type { DemandPaths } from "../paths";
import { agesOf, expectedFailures, type FleetCourse, lifeByMonth } from "./fleet-course";
import type { FleetRecord, KnownFleet } from "./fleet-record";
import { lengthOfMonth } from "./length-of-month";

/**
 * What was found about some machines of a fleet: so many failures since it began, so many expected from the rest, and
 * expected in the half-year to come.
 */
export interface FleetSignal {
  readonly observed: number;
  /** Above 0. */
  readonly expected: number;
  readonly expectedAhead: number;
}

/** How many times an even day's wear a day of each month of the year brings, January first; none where no season shows. */
export type WearByMonth = readonly number[] | undefined;

export interface FleetSituation {
  readonly record: FleetRecord;
  readonly wear: { readonly now: WearByMonth; readonly beforeTest: WearByMonth };
  /** Month of the year with which the forecast begins, 0 to 11. */
  readonly firstMonth: number;
  readonly signals: readonly FleetSignal[];
  readonly horizon: number;
  readonly futures: number;
  readonly seed: number;
}

/** Lives that may be the true one: each future goes through one of them, in turn. Own choice, by `npm run bench -- forecast-lives`. */
const [livesNow, livesTested] = [48, 12];
/** For so long an open signal is taken to go on: as far ahead as its own page looks. */
const monthsOfSignal = 6;

/** A component's failures in the months to come, as they may turn out; and as they would have been expected earlier. */
export class FleetFailures {
  readonly life: WeibullPosterior;
  /** Expected in each month, for each life that may be the true one. */
  readonly expected: readonly (readonly number[])[];
  readonly #situation: FleetSituation;
  #repairs: DemandPaths | undefined;
  #tested: readonly Prospect[] | undefined;

  constructor(situation: FleetSituation) {
    this.#situation = situation;
    const { record, signals, wear, firstMonth, horizon } = situation;
    const extra = signals.reduce((sum, { observed, expected }) => sum + Math.max(0, observed - expected), 0);
    this.life = weibullPosterior(record.now.lives, extra);
    const draws = seededDraws(streamSeed(situation.seed, 1));
    const running = record.running[0] ?? new Float64Array(0);
    const season = monthsOfWear(wear.now, firstMonth, horizon);
    this.expected = prospects(record.now, this.life, { lives: livesNow, running, months: horizon, draws }).map(
      ({ life, coming, leaving }) => {
        const months = expectedFailures({ running, coming, leaving, wear: season }, life);
        const more = signals.reduce(
          (sum, signal) =>
            sum + ((draws.gamma(signal.observed + 0.5) / signal.expected - 1) * signal.expectedAhead) / monthsOfSignal,
          0,
        );
        return months.map((failures) => Math.max(0, failures + more));
      },
    );
  }

  /** One row of failures by month for each future: the parts of one component are drawn from these, so that they add up. */
  repairs(): DemandPaths {
    const draws = seededDraws(streamSeed(this.#situation.seed, 2));
    this.#repairs ??= Array.from({ length: this.#situation.futures }, (_, future) =>
      this.expectedIn(future).map((mean) => draws.poisson(mean)),
    );
    return this.#repairs;
  }

  expectedIn(future: number): readonly number[] {
    return this.expected[future % this.expected.length] ?? [];
  }

  /**
   * The same for a month that is past, from lives as they were known when the back-test begins.
   * @param monthsAgo 0 for the month of the forecast
   */
  expectedFrom(monthsAgo: number, horizon: number): readonly (readonly number[])[] {
    const { record, wear, firstMonth, seed } = this.#situation;
    const running = record.running[monthsAgo] ?? new Float64Array(0);
    this.#tested ??= prospects(record.beforeTest, weibullPosterior(record.beforeTest.lives), {
      lives: livesTested,
      running: longest(record.running),
      months: horizon,
      draws: seededDraws(streamSeed(seed, 3)),
    });
    const season = monthsOfWear(wear.beforeTest, firstMonth - monthsAgo, horizon);
    return this.#tested.map(({ life, coming, leaving }) =>
      expectedFailures({ running, coming, leaving, wear: season }, life),
    );
  }
}

interface Prospect extends Pick<FleetCourse, "coming" | "leaving"> {
  readonly life: ReturnType<typeof lifeByMonth>;
}

/** Lives with what else may be true of a fleet: how many machines come, and how many leave. */
function prospects(
  { left, came }: KnownFleet,
  posterior: WeibullPosterior,
  asked: {
    readonly lives: number;
    readonly running: Float64Array;
    readonly months: number;
    readonly draws: SeededDraws;
  },
): readonly Prospect[] {
  const { draws, running, months } = asked;
  const machines = came.reduce((sum, count) => sum + count, 0);
  const ages = agesOf({ running, coming: came, leaving: 0, wear: new Array<number>(months).fill(1) });
  return Array.from({ length: asked.lives }, () => {
    const yearly = draws.gamma(machines + 0.5);
    return {
      life: lifeByMonth(posterior.draw(draws), ages),
      leaving: left.months > 0 ? Math.min(1, draws.gamma(left.machines + 0.5) / left.months) : 0,
      coming: machines === 0 ? Float64Array.of(yearly / 12) : came.map((count) => (count * yearly) / machines / 12),
    };
  });
}

function longest(each: readonly Float64Array[]): Float64Array {
  return each.reduce((long, one) => (one.length > long.length ? one : long), new Float64Array(0));
}

/** Wear of each coming month over an even one: by the season, and by how many days the month has. */
function monthsOfWear(wear: WearByMonth, first: number, horizon: number): readonly number[] {
  return Array.from({ length: horizon }, (_, ahead) => {
    const month = (((first + ahead) % 12) + 12) % 12;
    return (wear?.[month] ?? 1) * (lengthOfMonth[month] ?? 1);
  });
}
