import { FilingChecks } from "@/app/_claims/filing-checks";
import { Field } from "@/app/_ui/field";
import { type FilingCheck, filingCheckTitles } from "@/lib/claims/checks/filing-case";

interface Props {
  readonly checks: readonly FilingCheck[];
  readonly jobNumber: string;
  readonly unitId: string;
}

/** The checks, and for each that failed a reason without which nothing is sent. */
export function ChecksToSend({ checks, jobNumber, unitId }: Props) {
  const failed = checks.filter(({ verdict }) => verdict === "failed");
  return (
    <>
      <FilingChecks checks={checks} jobNumber={jobNumber} unitId={unitId} />
      {failed.map(({ key }) => (
        <Field
          key={key}
          label={`${filingCheckTitles[key]}: why it is sent all the same`}
          name={`reason-${key}`}
          hint="Mend it above instead, where that can be done. The reason is kept with what was sent."
        />
      ))}
    </>
  );
}
