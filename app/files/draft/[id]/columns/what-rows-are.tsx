import { SelectField } from "@/app/_ui/select-field";
import { fileKindNames, tableKinds } from "@/lib/intake/file-kinds";
import type { MatchingGuess } from "@/lib/intake/matching/guess-matching";
import type { Matching } from "@/lib/intake/matching/matching";
import styles from "./match.module.css";

interface Props {
  readonly matching: Matching;
  readonly guess: MatchingGuess;
}

/** What one row of the file is. */
export function WhatRowsAre({ matching, guess }: Props) {
  return (
    <div className={styles.pair}>
      <SelectField
        label="The file holds"
        name="kind"
        hint={guess.kind.reason}
        value={matching.kind}
        choices={tableKinds.map((kind) => ({ value: kind, name: fileKindNames[kind] }))}
      />
      {matching.kind === "jobs" && (
        <SelectField
          label="One row is"
          name="rowIs"
          hint={guess.rowIs.reason}
          value={matching.rowIs}
          choices={[
            { value: "one record", name: "one job" },
            { value: "one part line", name: "one part line of a job" },
          ]}
        />
      )}
    </div>
  );
}
