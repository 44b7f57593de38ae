import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { Turns } from "@/app/_limits/turns";

const rules = { atOnce: 2, waiting: 3, patienceMs: 1000 };
const pending = Symbol("pending");
const now = (granted: Promise<boolean>) => Promise.race([granted, Promise.resolve(pending)]);

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

describe("of fifty that one person asks for at once", () => {
  test("as many as the rules say are served, as many wait, and the rest are turned away at once", async () => {
    const turns = new Turns(rules);
    const all = Array.from({ length: 50 }, () => turns.ask("A"));
    const answers = await Promise.all(all.map(({ granted }) => now(granted)));
    expect(answers.map((answer) => (answer === pending ? "waits" : answer))).toEqual([
      ...Array(2).fill(true),
      ...Array(3).fill("waits"),
      ...Array(45).fill(false),
    ]);
    expect(await turns.ask("B").granted).toBe(true);
  });
});

test("those who wait come in the order in which they asked, each when a turn ends, and ending it twice lets in one", async () => {
  const turns = new Turns(rules);
  const [first, , third, fourth] = Array.from({ length: 4 }, () => turns.ask("A"));
  first?.end();
  first?.end();
  expect(await third?.granted).toBe(true);
  expect(await now(fourth?.granted ?? Promise.resolve(false))).toBe(pending);
});

test("whoever waits longer than the rules say is turned away, and whoever goes away makes room for the next", async () => {
  const turns = new Turns(rules);
  const all = Array.from({ length: 5 }, () => turns.ask("A"));
  all[2]?.end();
  expect(await all[2]?.granted).toBe(false);
  const late = turns.ask("A");
  expect(await now(late.granted)).toBe(pending);
  vi.advanceTimersByTime(1001);
  expect(await Promise.all(all.slice(3).map(({ granted }) => granted))).toEqual([false, false]);
  expect(await late.granted).toBe(false);
});

test("of people who ask for nothing any more nothing is kept", async () => {
  const turns = new Turns(rules);
  const all = Array.from({ length: 200 }, (_, n) => turns.ask(`person ${n % 40}`));
  expect(turns.lines).toBe(40);
  for (const turn of all) turn.end();
  expect(turns.lines).toBe(0);
});
