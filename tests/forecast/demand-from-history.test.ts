import { describe, expect, test } from "vitest";
import { demandFromHistory } from "@/lib/forecast/demand-from-history";
import { minimalStandard } from "../minimal-standard";

/** A Poisson count by multiplying uniforms (Knuth): shares no code with the room under test. */
function poisson(mean: number, next: () => number): number {
  const limit = Math.exp(-mean);
  let count = 0;
  for (let product = next(); product > limit; product *= next()) count++;
  return count;
}

describe("demand from history", () => {
  // Recovery of a known truth: months drawn with mean 3; ranges may not be tighter than they claim, whole parts make them wider.
  test("a 90 % range over the next 3 months holds the truth at least 9 times in 10", () => {
    const next = minimalStandard(77);
    let held = 0;
    const rounds = 2000;
    for (let round = 0; round < rounds; round++) {
      const forecast = demandFromHistory(
        Array.from({ length: 24 }, () => poisson(3, next)),
        3,
      );
      const truth = poisson(9, next);
      const wide = forecast.kind === "forecast" ? forecast.bands.find(({ level }) => level === 0.9) : undefined;
      if (wide !== undefined && truth >= wide.low && truth <= wide.high) held++;
    }
    expect(held / rounds).toBeGreaterThan(0.9);
    expect(held / rounds).toBeLessThan(0.97);
  });

  test("bunched months give wider ranges than even ones of the same mean", () => {
    const width = (monthly: readonly number[]) => {
      const forecast = demandFromHistory(monthly, 1);
      const wide = forecast.kind === "forecast" ? forecast.bands.at(-1) : undefined;
      return (wide?.high ?? 0) - (wide?.low ?? 0);
    };
    const even = Array.from({ length: 24 }, () => 2);
    const bunched = Array.from({ length: 24 }, (_, month) => (month % 6 === 0 ? 12 : 0));
    expect(width(bunched)).toBeGreaterThan(width(even));
  });

  test("a part that was never needed may still be needed: the range begins at 0 and does not end there", () => {
    const forecast = demandFromHistory(
      Array.from({ length: 24 }, () => 0),
      24,
    );
    expect(forecast).toMatchObject({ kind: "forecast" });
    const wide = forecast.kind === "forecast" ? forecast.bands.at(-1) : undefined;
    expect(wide?.low).toBe(0);
    expect(wide?.high).toBeGreaterThan(0);
  });

  test("under a year of use there is no range, and one month more there is", () => {
    expect(
      demandFromHistory(
        Array.from({ length: 11 }, () => 1),
        1,
      ),
    ).toEqual({ kind: "too-short", months: 11 });
    expect(
      demandFromHistory(
        Array.from({ length: 12 }, () => 1),
        1,
      ).kind,
    ).toBe("forecast");
  });

  test("half a part is a mistake of the caller", () => {
    expect(() => demandFromHistory([0.5], 1)).toThrow(/monthly\[0\]/);
    expect(() => demandFromHistory([1], 0)).toThrow(/ahead/);
  });
});
