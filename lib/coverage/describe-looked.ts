import { dayInWords, daysInWords } from "@/lib/calendar/day-words";
import { startEvents } from "@/lib/domain/policy-start";
import type { RuleLook, RuleStep } from "./coverage-decision";
import { itemNames } from "./describe-coverage";
import { evidenceWords, notCoveredWords, problemWords } from "./reason-words";

/** The rules of one policy, or those that belong to none, in the order in which they were asked. */
export interface LookedAtPolicy {
  /** Key of the policy; undefined for what is asked of every job. */
  readonly policy: string | undefined;
  /** One sentence a rule; pay items that got the same answer share it. */
  readonly sentences: readonly string[];
}

/** Every rule that was looked at, in words: "Term, labour and trip: the term has ended, last day 14 Mar 2025." */
export function describeLooked(looked: readonly RuleLook[]): readonly LookedAtPolicy[] {
  const groups: { policy: string | undefined; looks: RuleLook[] }[] = [];
  for (const look of looked) {
    const last = groups.at(-1);
    if (last !== undefined && last.policy === look.policy) last.looks.push(look);
    else groups.push({ policy: look.policy, looks: [look] });
  }
  return groups.map(({ policy, looks }) => ({ policy, sentences: sentencesOf(looks) }));
}

function sentencesOf(looks: readonly RuleLook[]): readonly string[] {
  const items = new Map<string, { readonly step: RuleStep; readonly gave: string; readonly of: string[] }>();
  for (const look of looks) {
    const gave = gaveWords(look);
    const key = `${look.step}|${gave}`;
    const entry = items.get(key) ?? { step: look.step, gave, of: [] };
    if (look.item !== undefined) entry.of.push(itemNames[look.item].toLowerCase());
    items.set(key, entry);
  }
  return [...items.values()].map(({ step, gave, of }) => `${[stepNames[step], ...listed(of)].join(", ")}: ${gave}.`);
}

function listed(items: readonly string[]): readonly string[] {
  const last = items.at(-1);
  if (last === undefined) return [];
  return items.length === 1 ? [last] : [`${items.slice(0, -1).join(", ")} and ${last}`];
}

const stepNames: Readonly<Record<RuleStep, string>> = {
  data_sane: "Dates and serial",
  campaign: "Campaign",
  start: "Start",
  registration: "Registration",
  term: "Term",
  use: "Use",
  territory: "Where it stands",
  transfer: "Owner",
  exclusion: "Cause and component",
  payer_order: "Who pays",
  ends_agree: "Both ends of the range",
  boundary: "First or last day",
  statute: "Local law",
};

function gaveWords({ gave, step, window, deadline, outcome }: RuleLook): string {
  const until = deadline === undefined ? "" : `, by ${dayInWords(deadline)}`;
  if (step === "campaign")
    return outcome === "chosen" ? `${plain(gave)} names this unit` : `${plain(gave)} does not help here`;
  const last = step === "term" && window !== undefined ? `, last day ${daysInWords(window.last)}` : "";
  return `${wordsOf(gave)}${last}${until}`;
}

const otherWords: Readonly<Record<string, string>> = {
  passed: "nothing stands in the way",
  covered: "covered",
  full_warranty: "a full warranty, so the rule does not hold",
  registered_in_time: "registered in time",
  not_registered_in_time: "registered too late",
  no_registration_on_file: "no registration on file",
  replacement_part: "from the part’s own fitting",
  exchange: "from the exchange",
  contract_paper: "as the contract’s paper states",
  last_day: "the last covered day, where the wording decides",
  day_after: "the day after the last covered one, where the wording decides",
  maker_term_runs: "statutory rights stand beside the terms",
  maker_term_ended: "statutory rights may remain",
  maker_does_not_pay: "statutory rights may remain",
  maker_term_unknown: "statutory rights may remain in any case",
};

/** A key that has no words of its own is told as it is, so that nothing that was looked at is left out. */
function wordsOf(gave: string): string {
  const lists: readonly Readonly<Record<string, string>>[] = [notCoveredWords, evidenceWords, problemWords, otherWords];
  for (const words of lists) if (words[gave] !== undefined) return words[gave];
  const starts: Readonly<Record<string, string>> = startEvents;
  return starts[gave] === undefined ? plain(gave) : `from ${starts[gave].toLowerCase()}`;
}

/** A key as people read it. */
function plain(key: string): string {
  return key.replaceAll("_", " ");
}
