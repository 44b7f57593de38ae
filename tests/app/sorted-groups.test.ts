import { expect, test } from "vitest";
import { sortedGroups } from "@/app/repeats/sorted-groups";
import type { GroupRate } from "@/lib/failures/failure-rates";
import { ageBands, type Dimension } from "@/lib/failures/rate-question";
import { rateEstimate } from "@/lib/statistics/rate-estimate";

const group = (dimension: Dimension, value: string, events: number, unitYears: number): GroupRate => ({
  kind: "rate",
  key: [{ dimension, value, name: ageBands.find((band) => band.key === value)?.name ?? value }],
  estimate: rateEstimate({ events, unitYears, level: 0.95, method: "poisson-exact" }),
  units: 10,
  dispersion: 1,
  likeAges: { kind: "nothing-beside-it" },
});
const order = (groups: readonly GroupRate[], by: "lowest" | "name") =>
  sortedGroups(groups, by).map(({ key }) => key[0]?.value);

test("by lowest believable rate three failures in ten years do not pass ninety in four hundred; too few to judge comes last", () => {
  const groups = [group("model", "lucky", 3, 10.5), group("model", "tiny", 9, 9), group("model", "known", 90, 400)];
  expect(order(groups, "lowest")).toEqual(["known", "lucky", "tiny"]);
});

test("ages go from young to old, which their names would not do", () => {
  const bands = ["96-", "0-12", "36-60", "12-24"].map((band) => group("age", band, 20, 100));
  expect(order(bands, "name")).toEqual(["0-12", "12-24", "36-60", "96-"]);
});
