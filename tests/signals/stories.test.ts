import { describe, expect, test } from "vitest";
import type { CellWeeks } from "@/lib/signals/cell-weeks";
import { type JudgedCell, storiesOf } from "@/lib/signals/evidence-of-luck";
import type { CellKey } from "@/lib/signals/signal-record";
import { leadOf, worthALook } from "@/lib/signals/worth-a-look";

function judged(key: Partial<CellKey>, chance: number, observed = 10, expected = 5, carrying = 0): JudgedCell {
  const cell: CellWeeks = {
    key: {
      kind: "component",
      word: "pump",
      productType: "dishwasher",
      maker: "A",
      model: "A1",
      madeHalf: undefined,
      ...key,
    },
    firstWeek: 0,
    expected: new Float64Array(10),
    expectedAhead: 0,
    observed: new Float64Array(10),
    tolerated: new Float64Array(1).fill(1),
    clumped: Array(1).fill(1),
    ages: () => [],
    unknownAt: () => 0,
    carrying: () => new Map([["pump", carrying]]),
  };
  return {
    key: cell.key,
    weeks: () => cell,
    chance,
    standing: { score: 5, onsetWeek: 2, observed, expected, weeklyMean: 1 },
  };
}

describe("chance of a story", () => {
  // By hand: broad cells 0.01 and 0.5 give min(2 × 0.01, 2/2 × 0.5) = 0.02 by Simes; halves 0.003, 0.9, 0.8 give 0.009.
  // Half of the chance goes to each family, so the story has 2 × 0.009 = 0.018.
  test("is Simes' within each family and twice the smaller", () => {
    const cells = [
      judged({}, 0.01),
      judged({ model: "A2" }, 0.5),
      judged({ madeHalf: 80 }, 0.003),
      judged({ madeHalf: 81 }, 0.9),
      judged({ madeHalf: 82 }, 0.8),
    ];
    const [story] = storiesOf(cells);
    expect(story?.chance).toBeCloseTo(0.018, 12);
    expect(story?.cells).toHaveLength(5);
  });

  test("other makers, words and kinds of machine are other stories, adjusted together", () => {
    const stories = storiesOf([judged({}, 0.01), judged({ maker: "B" }, 0.02), judged({ word: "heater" }, 0.9)]);
    expect(stories.map(({ adjusted }) => adjusted)).toEqual([0.03, 0.03, 0.9]);
  });
});

describe("who leads", () => {
  test("the narrowest cell that holds most of the excess", () => {
    const maker = judged({ model: undefined }, 1e-6, 40, 20);
    const model = judged({}, 1e-8, 36, 18);
    const half = judged({ madeHalf: 90 }, 1e-9, 20, 2);
    expect(leadOf({ cells: [maker, model, half], chance: 0, adjusted: 0 })).toBe(half);
    const smaller = judged({ madeHalf: 90 }, 1e-9, 9, 2);
    expect(leadOf({ cells: [maker, model, smaller], chance: 0, adjusted: 0 })).toBe(model);
  });
});

describe("the list", () => {
  test("holds what is at or below the level, the least luck first", () => {
    const found = worthALook(
      storiesOf([judged({}, 0.001), judged({ maker: "B" }, 1e-6), judged({ maker: "C" }, 0.5)]),
      0.1,
    );
    expect(found.map(({ lead }) => lead.key.maker)).toEqual(["B", "A"]);
  });

  test("a symptom that is mostly the failures of a listed component stands in its line; another does not", () => {
    const pump = judged({}, 1e-6, 30, 10);
    const same = judged({ kind: "symptom", word: "will_not_drain" }, 1e-5, 30, 10, 15);
    const other = judged({ kind: "symptom", word: "noisy" }, 1e-5, 30, 10, 9);
    const found = worthALook(storiesOf([pump, same, other]), 0.1);
    expect(found.map(({ lead }) => lead.key.word)).toEqual(["pump", "noisy"]);
    expect(found[0]?.symptoms.map(({ cells }) => cells[0]?.key.word)).toEqual(["will_not_drain"]);
  });
});
