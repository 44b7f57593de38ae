import { describe, expect, test } from "vitest";
import { kaplanMeier } from "@/lib/statistics/survival/kaplan-meier";
import type { LifeRow } from "@/lib/statistics/survival/life-rows";
import { survivalQuantile } from "@/lib/statistics/survival/survival-quantile";
import { fromR } from "../../reference/read-reference";
import { generatorFans, leukemia, macs, rossi } from "./reference-lives";

function quantile(rows: readonly LifeRow[], fraction: number) {
  const curve = kaplanMeier(rows, { confidence: 0.95, interval: "log-log" });
  if (curve.kind !== "curve") throw new Error(curve.kind);
  return survivalQuantile(curve, fraction);
}

/** R writes a limit or quantile that is not reached as NA. */
const orNot = (value: number) => (Number.isNaN(value) ? "not-reached" : value);

// R 4.2.2, survival 3.5.3, quantile.survfit on the log-log scale.
describe.each([
  ["leukemia 6-MP", () => leukemia("6-MP")],
  ["macs", macs],
  ["rossi late entry", rossi],
  ["genfan", generatorFans],
])("%s agrees with R", (caseName, rows) => {
  test.each([0, 1, 2])("10 %%, 25 %%, 50 %% failed: number %i", (place) => {
    const [age, low, high] = ["quantile", "quantile_lower", "quantile_upper"].map(
      (name) => fromR(caseName, name)[place],
    );
    if (age === undefined || low === undefined || high === undefined) throw new Error("R has no such quantile");
    const expected = Number.isNaN(age.value)
      ? { kind: "not-reached" }
      : { kind: "reached", age: age.value, low: orNot(low.value), high: orNot(high.value) };
    expect(quantile(rows(), age.age)).toEqual(expected);
  });
});

// By hand, and as R 4.2.2 does: the curve is flat at one half from 2 until watching ends at 4.
test("a flat at exactly the wanted height gives its middle", () => {
  const life = (exit: number, event: boolean): LifeRow => ({ entry: 0, exit, event, count: 1 });
  expect(quantile([life(1, true), life(2, true), life(3, false), life(4, false)], 0.5)).toMatchObject({ age: 3 });
  expect(quantile([life(1, true), life(2, true), life(3, true), life(4, false)], 0.5)).toMatchObject({ age: 2.5 });
});
