import { formatCounted } from "@/lib/format/format-count";
import { fewestJobs, type ProposalReason } from "@/lib/sheets/next-check";

/** Why this check is proposed now, with the numbers that it rests on. */
export function describeReason(reason: ProposalReason): string {
  if (reason.kind === "most per minute") {
    const inHundred = (share: number) => `${Math.max(1, Math.round(share * 100))} in 100`;
    const leading = reason.leading.map(({ name, chance }) => `${name.toLowerCase()} ${inHundred(chance)}`).join(", ");
    return `Proposed because it is expected to settle most per minute: ${inHundred(reason.settles)} of what is open, in ${reason.minutes} min. From ${formatCounted(reason.jobs, "closed job")} and what was found so far: ${leading}.`;
  }
  switch (reason.because) {
    case "first":
      return "Read first: a code that is cleared or overwritten is gone.";
    case "shown":
      return "In the sheet’s order: what was found is shown already, this is what a claim still needs of it.";
    case "few jobs":
      return `In the sheet’s order: ${reason.jobs === 0 ? "no closed job" : formatCounted(reason.jobs, "closed job")} of this symptom on this kind of machine, fewer than the ${fewestJobs} that would say more.`;
    case "nothing to weigh":
      return "In the sheet’s order: the closed jobs do not tell the open checks apart.";
  }
}
