import { causes } from "@/lib/domain/cause";
import { componentOf } from "@/lib/domain/components";
import type { Verdict } from "@/lib/sheets/verdict";

/** What the readings show, as the heading of the finding. */
export function verdictTitle(verdict: Verdict): string {
  switch (verdict.kind) {
    case "part": {
      const names = [...new Set(verdict.entries.map(({ component }) => componentOf(component)?.name ?? component))];
      return `The readings show: ${names.join(" and ").toLowerCase()} failed`;
    }
    case "part first":
      return `Replace the ${(componentOf(verdict.component)?.name ?? verdict.component).toLowerCase()} first`;
    case "reseated":
      return "The fault went when the connectors were reseated";
    case "outside":
      return `The cause lies outside the part: ${causes[verdict.cause].name.toLowerCase()}`;
    case "no fault":
      return "No fault found";
    case "put right first":
      return "Something must be put right first";
    case "open":
      return "The readings do not decide it yet";
  }
}

export function verdictWhy(verdict: Verdict): string | undefined {
  return verdict.kind === "open" ? undefined : verdict.why;
}
