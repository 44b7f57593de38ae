import type { Policy } from "@/lib/domain/policy";
import { policyContradictions } from "./policy-contradictions";
import { policyDocument } from "./policy-schema";

export interface PolicyProblem {
  /** Where in the document, as a JSON pointer (RFC 6901): /terms/0/term/n. Empty for the whole. */
  readonly pointer: string;
  readonly problem: string;
}

export type ParsedPolicy =
  | { readonly ok: true; readonly policy: Policy }
  | { readonly ok: false; readonly problems: readonly PolicyProblem[] };

/** A JSON document in; the policy, or everything that is wrong with it, out. */
export function parsePolicy(document: unknown): ParsedPolicy {
  const read = policyDocument.safeParse(document);
  if (!read.success) {
    const problems = read.error.issues.flatMap((issue) => {
      const places = issue.code === "unrecognized_keys" ? issue.keys.map((key) => [...issue.path, key]) : [issue.path];
      const problem = issue.code === "unrecognized_keys" ? "is not part of a policy" : issue.message;
      return places.map((path) => ({ pointer: pointerTo(path), problem }));
    });
    return { ok: false, problems };
  }
  const policy: Policy = read.data;
  const problems = policyContradictions(policy);
  return problems.length === 0 ? { ok: true, policy } : { ok: false, problems };
}

/** RFC 6901: ~ and / inside a name are written ~0 and ~1. */
export function pointerTo(path: readonly PropertyKey[]): string {
  return path.map((part) => `/${String(part).replaceAll("~", "~0").replaceAll("/", "~1")}`).join("");
}
