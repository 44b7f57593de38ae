import { useState } from "react";
import { Button } from "@/app/_ui/button";
import { checkOf, checks } from "@/lib/evidence/checks";
import { checkMinutes } from "@/lib/sheets/check-minutes";
import type { LooseStep } from "@/lib/sheets/loose-sheet";
import { blankOwn } from "./blank-own";
import styles from "./sheet-form.module.css";

interface Props {
  readonly steps: readonly LooseStep[];
  readonly onAdd: (step: LooseStep) => void;
}

const offered = [...checks].sort((a, b) => a.name.localeCompare(b.name, "en-US"));

/** A check of the catalogue that this sheet does not have, or one that the company writes. */
export function AddCheck({ steps, onAdd }: Props) {
  const [chosen, setChosen] = useState("");
  const listed = new Set(steps.map(({ check }) => check));
  function add() {
    const check = checkOf(chosen);
    if (check === undefined) return;
    setChosen("");
    onAdd({ check: check.key, minutes: String(checkMinutes(check)), times: "1", note: "", cautions: [] });
  }
  return (
    <fieldset className={styles.add}>
      <legend>Add a check</legend>
      <label>
        From the catalogue{" "}
        <select value={chosen} onChange={({ target }) => setChosen(target.value)}>
          <option value="">Choose</option>
          {offered
            .filter(({ key }) => !listed.has(key))
            .map(({ key, name, points }) => (
              <option key={key} value={key}>
                {name} ({points})
              </option>
            ))}
        </select>
      </label>
      <Button type="button" weight="plain" disabled={chosen === ""} onClick={add}>
        Add it
      </Button>
      <Button type="button" weight="plain" onClick={() => onAdd(blankOwn(listed))}>
        Write one of your own
      </Button>
    </fieldset>
  );
}
