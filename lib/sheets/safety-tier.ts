import type { Check } from "@/lib/evidence/check";

/**
 * The order that nothing is traded against: the code before it can be lost, then everything with the power off, then
 * powered with panels closed, then what makes live work safer, then live work. A lower number comes first.
 */
export function safetyTier({ key, energy }: Pick<Check, "key" | "energy">): number {
  if (beforeAnything.has(key)) return 0;
  if (energy === "off") return 1;
  if (energy === "powered_panels_closed") return 2;
  return makesLiveSafer.has(key) ? 3 : 4;
}

/** Checks that may not be made to wait for others: what is lost first, and what makes live work safer. */
export function makesLaterSafe(key: string): boolean {
  return beforeAnything.has(key) || makesLiveSafer.has(key);
}

/** Read on the display; a code that is cleared or overwritten is gone. */
const beforeAnything: ReadonlySet<string> = new Set(["fault_code"]);
/** A wrong supply or a missing ground is found before hands go near live parts. */
const makesLiveSafer: ReadonlySet<string> = new Set(["supply_voltage", "polarity"]);
