// What can be known at all: a rate that grows, among as many groups as the invented company has, with the budget of false
// signals that the list has. The best possible rule for one fixed stretch of weeks is set beside the sums.
import { logRatio } from "@/lib/signals/follow-cell";
import { luckInAYear } from "@/lib/signals/luck";
import { listLevel } from "@/lib/signals/settings";
import { seededDraws } from "@/lib/statistics/demand/seeded-draws";
import { poissonAtLeast } from "@/lib/statistics/discrete/poisson";

/** Groups of the invented company, and how many of them usually stand on its list. */
const groups = 415;
const listed = 8;
const runs = 1000;

export interface Power {
  readonly within13: number;
  readonly within26: number;
  readonly best13: number;
  readonly best26: number;
}

/** Share found of a rate that grows `ratio` times where `expected` failures a half-year were usual. */
export function power(expected: number, ratio: number): Power {
  const limit = (listLevel * listed) / groups;
  const draws = seededDraws(1);
  const mean = expected / 26;
  let [within13, within26] = [0, 0];
  for (let run = 0; run < runs; run++) {
    let sum = 0;
    for (let quiet = 0; quiet < 104; quiet++) sum = Math.max(0, sum + logRatio(draws.poisson(mean), mean, 2, 1));
    for (let week = 1; week <= 26; week++) {
      sum = Math.max(0, sum + logRatio(draws.poisson(ratio * mean), mean, 2, 1));
      if (luckInAYear({ score: sum, mean, ratio: 2 }) > limit) continue;
      within26 += 1;
      if (week <= 13) within13 += 1;
      break;
    }
  }
  // One look a quarter, so a quarter of the year's chance: more than any rule that looks every week has.
  return {
    within13: within13 / runs,
    within26: within26 / runs,
    best13: bestShare(mean * 13, ratio, limit / 4),
    best26: bestShare(mean * 26, ratio, limit / 2),
  };
}

/** Neyman & Pearson (1933): the count that luck reaches with that chance at most is the best limit for one fixed stretch. */
function bestShare(mean: number, ratio: number, chance: number): number {
  let limit = 0;
  while (poissonAtLeast(limit, mean) > chance) limit += 1;
  return poissonAtLeast(limit, mean * ratio);
}

export function powerTable(): string {
  const percent = (share: number) => `${Math.round(100 * share)} %`;
  const rows = [2, 3, 5].flatMap((ratio) =>
    [4, 8, 16, 32, 64].map((expected) => {
      const { within13, within26, best13, best26 } = power(expected, ratio);
      return `| ${ratio} | ${expected} | ${percent(within13)} | ${percent(best13)} | ${percent(within26)} | ${percent(best26)} |`;
    }),
  );
  return [
    "| times the rate | expected a half-year | found in 13 weeks | best possible | in 26 weeks | best possible |",
    "|---|---|---|---|---|---|",
    ...rows,
  ].join("\n");
}
