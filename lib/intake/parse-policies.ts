import { z } from "zod";
import type { Policy } from "@/lib/domain/policy";
import { type PolicyProblem, parsePolicy, pointerTo } from "./parse-policy";

export const policiesSchemaName = "ohmsworth/policies/1";

export type ParsedPolicies =
  | { readonly ok: true; readonly policies: readonly Policy[] }
  | { readonly ok: false; readonly problems: readonly PolicyProblem[] };

const policiesDocument = z.strictObject({
  schema: z.literal(policiesSchemaName, `is not ${policiesSchemaName}`),
  policies: z.array(z.unknown(), "is not a list of policies").min(1, "holds no policy"),
});

/** A file of policies in; all of them, or everything that is wrong in any of them, out. */
export function parsePolicies(document: unknown): ParsedPolicies {
  const read = policiesDocument.safeParse(document);
  if (!read.success) {
    return {
      ok: false,
      problems: read.error.issues.map((issue) => ({ pointer: pointerTo(issue.path), problem: issue.message })),
    };
  }
  const parsed = read.data.policies.map(parsePolicy);
  const problems = parsed.flatMap((one, index) =>
    one.ok ? [] : one.problems.map(({ pointer, problem }) => ({ pointer: `/policies/${index}${pointer}`, problem })),
  );
  if (problems.length > 0) return { ok: false, problems };
  const policies = parsed.flatMap((one) => (one.ok ? [one.policy] : []));
  const overlaps = overlappingVersions(policies);
  return overlaps.length > 0 ? { ok: false, problems: overlaps } : { ok: true, policies };
}

/** Two versions of one policy may not govern the same sale date, or nobody could say which decides. */
function overlappingVersions(policies: readonly Policy[]): readonly PolicyProblem[] {
  return policies.flatMap((policy, index) =>
    policies.slice(0, index).flatMap((before) => {
      if (before.key !== policy.key) return [];
      if (before.version === policy.version) {
        return [
          {
            pointer: `/policies/${index}/version`,
            problem: `is version ${policy.version} of ${policy.key} a second time`,
          },
        ];
      }
      if (!overlap(before, policy)) return [];
      const problem = `overlaps the sale dates of version ${before.version} of ${policy.key}, from ${before.effectiveFrom} to ${before.effectiveTo ?? "no end"}`;
      return [{ pointer: `/policies/${index}/effectiveFrom`, problem }];
    }),
  );
}

function overlap(one: Policy, other: Policy): boolean {
  const oneEnds = one.effectiveTo ?? "9999-12-31";
  const otherEnds = other.effectiveTo ?? "9999-12-31";
  return one.effectiveFrom <= otherEnds && other.effectiveFrom <= oneEnds;
}
