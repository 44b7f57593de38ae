/** The seeds to try: those of SOAK_SEEDS (`1-20` or `7`), and otherwise the usual few. */
export function soakSeeds(usual: readonly number[]): readonly number[] {
  const asked = process.env.SOAK_SEEDS;
  if (asked === undefined) return usual;
  const [first = "", last = first] = asked.split("-");
  if (!/^\d+$/.test(first) || !/^\d+$/.test(last) || Number(last) < Number(first))
    throw new RangeError(`SOAK_SEEDS: "1-20" or "7", not "${asked}".`);
  return Array.from({ length: Number(last) - Number(first) + 1 }, (_, index) => Number(first) + index);
}
