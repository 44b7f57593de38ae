import { type Definition, DefinitionList } from "@/app/_ui/definition-list";
import { Plate } from "@/app/_ui/plate";
import { causes } from "@/lib/domain/cause";
import { componentOf } from "@/lib/domain/components";
import { failureModeOf } from "@/lib/domain/failure-modes";
import type { JobRecord } from "@/lib/domain/job";
import { symptomOf } from "@/lib/domain/symptoms";

/** Complaint, cause and correction as they were written, with the words that they are counted under. */
export function JobStory({ record: { job } }: { readonly record: JobRecord }) {
  const items: Definition[] = [
    {
      term: "Complaint",
      detail: job.complaint || "not written down",
      source: job.symptom && (symptomOf(job.symptom)?.name ?? job.symptom),
    },
    { term: "Cause", detail: job.causeNote || "not written down", source: causes[job.cause].name },
    { term: "Correction", detail: job.correction || "not written down" },
    {
      term: "Component",
      detail: job.component === undefined ? "none named" : (componentOf(job.component)?.name ?? job.component),
      source: job.failureMode && (failureModeOf(job.failureMode)?.name ?? job.failureMode),
    },
  ];
  return (
    <Plate title="Complaint, cause, correction">
      <DefinitionList items={items} />
    </Plate>
  );
}
