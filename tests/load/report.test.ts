// The run of twenty people under load (`npm run soak -- load`) needs a quiet machine; that it can fail is seen here.
import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { report } from "./report";
import type { Asked } from "./users";

let said: string[];
beforeEach(() => {
  said = [];
  vi.spyOn(console, "log").mockImplementation((line: string) => void said.push(line));
});
afterEach(() => {
  vi.restoreAllMocks();
});

/** A hundred answers: all but `slow` of them within 100 ms. */
const answers = (place: string, slow: number, slowMs: number): readonly Asked[] =>
  Array.from({ length: 100 }, (_, n) => ({ place, ms: n < slow ? slowMs : 100, status: 200 }));
const flat = Array.from({ length: 40 }, () => 500);
const run = (lists: readonly Asked[], repeats: readonly Asked[] = answers("/repeats", 0, 0), memory = flat) =>
  report([...lists, ...repeats], memory);

test("five in a hundred answers may be slow, six may not: lists within 300 ms, Repeats within 800", () => {
  expect(run(answers("/jobs", 5, 9000))).toBe(true);
  expect(said).toContain("lists: 95 in 100 within 100 ms; promised 300 ms: kept");
  expect(run(answers("/jobs", 6, 301))).toBe(false);
  expect(said).toContain("lists: 95 in 100 within 301 ms; promised 300 ms: NOT kept");
  expect(run(answers("/claims", 0, 0), answers("/repeats/drain_pump", 6, 800))).toBe(true);
  expect(run(answers("/claims", 0, 0), answers("/repeats/drain_pump", 6, 801))).toBe(false);
});

test("one answer that failed, or none that came, is too many; and so is a kind of page that nobody asked for", () => {
  const [first = { place: "/jobs", ms: 1, status: 200 }, ...others] = answers("/jobs", 0, 0);
  for (const status of [0, 303, 429, 500]) expect(run([{ ...first, status }, ...others])).toBe(false);
  expect(said).toContain("200 answers, 1 failed: 429");
  expect(run(answers("/shop", 0, 0))).toBe(false);
});

test("memory may fill up at first and grow by a tenth from then on", () => {
  const grown = (by: number) => [
    ...Array.from({ length: 10 }, () => 200),
    ...Array.from({ length: 20 }, () => 500),
    ...Array.from({ length: 10 }, () => 500 * (1 + by)),
  ];
  expect(run(answers("/jobs", 0, 0), undefined, grown(0.09))).toBe(true);
  expect(run(answers("/jobs", 0, 0), undefined, grown(0.11))).toBe(false);
});
