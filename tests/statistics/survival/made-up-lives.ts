import type { LifeRow } from "@/lib/statistics/survival/life-rows";

/** Repeatable numbers in [0, 1): a small generator (Park and Miller 1988), so that tests need no chance. */
export function seededUniforms(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 16807) % 2147483647;
    return (state - 1) / 2147483646;
  };
}

/** Grouped lives with late entry, ties, losses at entry and failures at age 0, on whole days. */
export function madeUpLives(rows: number, seed = 20240229): LifeRow[] {
  const next = seededUniforms(seed);
  return Array.from({ length: rows }, (_, i) => {
    const late = next() < 0.4;
    const entry = late ? Math.floor(next() * 12) : 0;
    const exit = entry + Math.floor(next() * 30);
    const event = next() < 0.3 && (exit > entry || entry === 0);
    return { entry, exit, event, count: (i % 5) + Math.floor(next() * 3) };
  });
}
