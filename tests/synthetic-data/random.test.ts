import { expect, test } from "vitest";
import { randomFromState, randomOf } from "@/synthetic-data/random";

// Printed by the authors' C program xoshiro128starstar.c, version 1.1, from the state 1, 2, 3, 4; the same ten numbers
// stand in the test of the rand_xoshiro crate. The first is also by hand: 2 × 5 = 10, turned left by 7 is 1280, × 9 is 11520.
test("the first ten numbers from the state 1, 2, 3, 4 are those of the reference program", () => {
  const random = randomFromState([1, 2, 3, 4]);
  expect(Array.from({ length: 10 }, random.bits)).toEqual([
    11520, 0, 5927040, 70819200, 2031721883, 1637235492, 1287239034, 3734860849, 3729100597, 4258142804,
  ]);
});

test("the same names give the same stream, other names another", () => {
  expect(randomOf(1, 2, 3).bits()).toBe(randomOf(1, 2, 3).bits());
  const firsts = new Set<number>();
  for (let unit = 0; unit < 10_000; unit++) firsts.add(randomOf(7, unit, 1).share());
  expect(firsts.size).toBe(10_000);
});

// By definition of the uniform law: mean 1/2, variance 1/12; limits are 5 standard errors. First draws of neighbouring
// streams are what the generator leans on, so they are tested and not one long stream.
test("first draws of neighbouring streams are even over 0..1 and unrelated", () => {
  const draws = Array.from({ length: 40_000 }, (_, unit) => randomOf(1, unit, 2).share());
  const mean = draws.reduce((sum, draw) => sum + draw, 0) / draws.length;
  expect(Math.abs(mean - 0.5)).toBeLessThan(5 * Math.sqrt(1 / 12 / draws.length));
  let product = 0;
  for (let i = 1; i < draws.length; i++) product += ((draws[i] ?? 0) - 0.5) * ((draws[i - 1] ?? 0) - 0.5);
  expect(Math.abs(product / draws.length)).toBeLessThan((5 * (1 / 12)) / Math.sqrt(draws.length));
});

test("a state of zeros is refused, since it would never leave zero", () => {
  expect(() => randomFromState([0, 0, 0, 0])).toThrow(RangeError);
});
