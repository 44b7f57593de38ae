import { Notice } from "@/app/_ui/notice";
import type { EvidenceCheck } from "@/lib/evidence/evidence-check";

/** What a claim would still lack, said while it can still be had. */
export function EvidenceState({ evidence }: { readonly evidence: EvidenceCheck }) {
  const missing = evidence.items.filter(({ state }) => state === "missing");
  const isProven = evidence.kind === "proven";
  return (
    <Notice status={isProven ? "fine" : "watch"} title={titleOf(evidence, missing.length)}>
      {evidence.kind !== "missing" && <p>{evidence.verdict}</p>}
      {missing.length > 0 && evidence.kind !== "outside_cause" && (
        <ul>
          {missing.map(({ key, label, whatWouldFixIt, canStillBeHad }) => (
            <li key={key}>
              <strong>{label}</strong>: {whatWouldFixIt} {canStillBeHad ? "" : "Only now, at the machine."}
            </li>
          ))}
        </ul>
      )}
      {evidence.warnings.map(({ word, field }) => (
        <p key={`${field} ${word}`} className="small">
          The word “{word}” may be read as an exclusion. It stays as you write it.
        </p>
      ))}
    </Notice>
  );
}

function titleOf({ kind }: EvidenceCheck, missing: number): string {
  switch (kind) {
    case "proven":
      return "A claim has everything it needs";
    case "missing":
      return `A claim still lacks ${missing === 1 ? "one thing" : `${missing} things`}`;
    case "contradicted":
      return "Something speaks against this finding";
    case "outside_cause":
      return "No claim on a part: the cause lies outside it";
    case "no_entry":
      return "There are no rules of evidence for this finding";
  }
}
