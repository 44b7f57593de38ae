import type { Cause } from "@/lib/domain/cause";
import type { Check } from "@/lib/evidence/check";
import { checkOf } from "@/lib/evidence/checks";
import type { Condition } from "@/lib/evidence/condition";
import { judgeReadings } from "@/lib/evidence/current-readings";
import { isBad, isDecided } from "@/lib/evidence/decided";
import type { EvidenceEntry } from "@/lib/evidence/entry";
import { provingReadings } from "@/lib/evidence/proving-readings";
import { checksOf } from "./branches";

/** Of several ways to show one thing the first is the usual one: this share of the time, own choice. */
const usual = 0.8;

/** How likely each check comes out bad where this entry holds; a check that is not named is expected to be good. */
export function badWhere(entry: EvidenceEntry): ReadonlyMap<string, number> {
  const chances = new Map<string, number>();
  for (const { reading, judgement } of judgeReadings(provingReadings(entry), [], entry.productType))
    if (isDecided(judgement)) chances.set(reading.check, isBad(judgement) ? 1 : 0);
  for (const { when } of entry.contradictedBy) for (const one of alternatives(when)) contradict(one, chances);
  const ways = alternatives(entry.proof).map(checksOf);
  if (ways.length > 1)
    for (const [place, checks] of ways.entries())
      for (const check of checks) chances.set(check, chanceOfWay(place, ways.length));
  return chances;
}

/** What a check may show besides good and bad: the causes outside the part that it can name. */
export function causesShownBy({ findings, outsideWhenBad }: Check): readonly Cause[] {
  const named = Object.values(findings).flatMap(({ cause }) => cause ?? []);
  return [...new Set([...named, ...(outsideWhenBad === undefined ? [] : [outsideWhenBad])])];
}

/** How likely each of these checks shows the cause where it holds. */
export function causeShownWhere(cause: Cause, checks: readonly Check[]): ReadonlyMap<string, number> {
  const ways = checks.filter((check) => causesShownBy(check).includes(cause));
  return new Map(ways.map(({ key }, place) => [key, chanceOfWay(place, ways.length)]));
}

function chanceOfWay(place: number, ways: number): number {
  if (ways === 1) return 1;
  return place === 0 ? usual : (1 - usual) / (ways - 1);
}

/** What speaks against the entry is not found where the entry holds. */
function contradict(condition: Condition, chances: Map<string, number>): void {
  if (condition.is === "good") chances.set(condition.check, 1);
  if ((condition.is === "bad" || condition.is === "absent") && !chances.has(condition.check))
    chances.set(condition.check, 0);
  if (condition.is !== "word") return;
  const findings = checkOf(condition.check)?.findings ?? {};
  const isGood = condition.words.every((word) => findings[word]?.state === "good");
  if (isGood) chances.set(condition.check, 1);
}

function alternatives(condition: Condition): readonly Condition[] {
  return condition.is === "any" ? condition.of.flatMap(alternatives) : [condition];
}
