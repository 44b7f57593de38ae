// Whether the cause that a job was closed with agrees with what its own no-drain readings say.
import { type Cause, causes } from "@/lib/domain/cause";
import { componentPath } from "@/lib/domain/components";
import type { ClosedJob } from "@/lib/domain/job";
import type { NoDrainVerdict } from "./no-drain-verdict";

export type NoDrainAgreement =
  | { readonly kind: "agrees" }
  | { readonly kind: "disagrees"; readonly why: string }
  | { readonly kind: "undecided"; readonly why: string };

/** Warned, never rewritten: the job keeps the cause it was closed with. */
export function noDrainAgreement(
  job: Pick<ClosedJob, "cause" | "component">,
  verdict: NoDrainVerdict,
): NoDrainAgreement {
  if (verdict.cause === undefined) return { kind: "undecided", why: verdict.why };
  if (!sameCause(job.cause, verdict.cause)) {
    return {
      kind: "disagrees",
      why: `closed as "${causes[job.cause].name}", the readings say "${causes[verdict.cause].name}": ${verdict.why}`,
    };
  }
  if (verdict.cause === "component" && verdict.component !== undefined && !names(job.component, verdict.component)) {
    return {
      kind: "disagrees",
      why: `closed on ${job.component ?? "no component"}, the readings condemn ${verdict.component}: ${verdict.why}`,
    };
  }
  return { kind: "agrees" };
}

/** Outside causes are told apart; "no fault found" and "not determined" say the same about a part. */
function sameCause(closed: Cause, read: Cause): boolean {
  return closed === read || (causes[closed].kind === "none" && causes[read].kind === "none");
}

function names(closed: string | undefined, condemned: string): boolean {
  return closed !== undefined && (closed === condemned || componentPath(condemned).includes(closed));
}
