import type { CountedTerm, Term } from "@/lib/calendar/term";
import { notRemediedDays } from "@/lib/coverage/not-remedied";
import { normalised } from "@/lib/domain/normalised";
import type { Policy } from "@/lib/domain/policy";
import type { CoverTerm } from "@/lib/domain/policy-terms";

/** How long after the last known day of its unit a job can still be covered at all, by component. */
export interface CoverReach {
  /** Days for components that nothing names. */
  readonly otherDays: number;
  readonly days: ReadonlyMap<string, number>;
  /** Days after an earlier repair on the payer's account within which that repair itself can give cover. */
  readonly repairDays: number;
  /** Serials that a campaign names for a component, at any age. */
  readonly campaigns: readonly { readonly component: string; readonly from: string; readonly to: string }[];
}

/** More days than any unit lives. */
export const forever = 100_000;

/**
 * An upper bound that leaves out only what can never be covered: every term counted at its longest from the latest day
 * that could start it. Contracts are not in it; their papers say how far they reach.
 * Checked: tests/claims/leaks/cover-reach.test.ts and, against judging every job, tests/db/money/unclaimed-work.test.ts.
 */
export function coverReach(policies: readonly Policy[]): CoverReach {
  const bearing = policies.filter(({ payer }) => payer.kind !== "contract" && payer.kind !== "own_guarantee");
  const days = new Map<string, number>();
  const reach = (component: string, to: number) => days.set(component, Math.max(to, days.get(component) ?? 0));
  let otherDays = 0;
  for (const policy of bearing) {
    for (const line of policy.terms) {
      const to = lineDays(policy, line);
      if (line.covers.kind !== "class") otherDays = Math.max(otherDays, to);
      for (const component of membersOf(policy, line)) reach(component, to);
    }
  }
  const chained = bearing.some((policy) => startsOf(policy).includes("maker_cover_end"));
  const longest = Math.max(otherDays, ...days.values());
  const most = (to: number) => Math.min(forever, (chained ? longest : 0) + to);
  return {
    otherDays: most(otherDays),
    days: new Map([...days].map(([component, to]) => [component, most(Math.max(to, otherDays))])),
    repairDays: Math.max(...bearing.map(repairDays), notRemediedDays) + slackDays,
    campaigns: bearing.flatMap((policy) =>
      policy.campaigns.flatMap(({ component, serials }) =>
        serials.map(({ from, to }) => ({ component, from: normalised(from), to: normalised(to) })),
      ),
    ),
  };
}

function membersOf({ classes }: Policy, { covers }: CoverTerm): readonly string[] {
  return covers.kind === "class" ? (classes.find(({ key }) => key === covers.class)?.members ?? []) : [];
}

/** A day or two for the counting of the first day, and a week for whatever rolls. Own choice, no source. */
const slackDays = 9;

function lineDays(policy: Policy, line: CoverTerm): number {
  const grace = [policy.start.from, ...policy.start.fallbacks, ...(line.from === undefined ? [] : [line.from])];
  const { registration, use } = policy;
  const terms: readonly Term[] = [
    line.term,
    ...(registration === undefined ? [] : [registration.termIfRegistered, registration.termOtherwise]),
    ...(use.kind === "commercial_term" ? [use.term] : []),
  ];
  const plus = Math.max(0, ...grace.flatMap((point) => (point.plus === undefined ? [] : [mostDays(point.plus)])));
  return Math.min(forever, slackDays + plus + Math.max(...terms.map(mostDays)));
}

/** Cover of a replaced part has its own length; a term that begins with a repair has no bound worth counting. */
function repairDays(policy: Policy): number {
  if (startsOf(policy).includes("previous_repair")) return forever;
  const { replacementPart } = policy;
  return replacementPart.kind === "own_term" ? mostDays(replacementPart.term) : 0;
}

function startsOf({ start, terms }: Policy): readonly string[] {
  return [start.from, ...start.fallbacks, ...terms.flatMap(({ from }) => (from === undefined ? [] : [from]))].map(
    ({ event }) => event,
  );
}

function mostDays(term: Term | CountedTerm): number {
  if (term.unit === "lifetime") return forever;
  return term.n * { day: 1, month: 31, year: 366 }[term.unit];
}
