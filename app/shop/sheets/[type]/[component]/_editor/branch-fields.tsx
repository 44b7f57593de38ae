import { capitalised } from "@/lib/format/capitalised";
import type { LooseStep } from "@/lib/sheets/loose-sheet";
import { nameOfStep, wordsOfStep } from "./loose-names";

interface Props {
  readonly step: LooseStep;
  readonly steps: readonly LooseStep[];
  readonly onSet: (after: LooseStep["after"]) => void;
}

/** What the step waits for: another check of the sheet and how it came out. */
export function BranchFields({ step, steps, onSet }: Props) {
  const { after } = step;
  const waited = steps.find(({ check }) => check === after?.check);
  const came = after === undefined ? "" : typeof after.came === "string" ? after.came : `word:${after.came.word}`;
  const words = waited === undefined ? [] : wordsOfStep(waited);
  const unknown = came.startsWith("word:") && !words.includes(came.slice("word:".length));
  return (
    <>
      <label>
        Asked{" "}
        <select
          value={after?.check ?? ""}
          onChange={({ target }) => onSet(target.value === "" ? undefined : { check: target.value, came: "bad" })}
        >
          <option value="">always</option>
          {steps
            .filter((other) => other !== step)
            .map((other) => (
              <option key={other.check} value={other.check}>
                only after: {nameOfStep(other)}
              </option>
            ))}
          {after !== undefined && waited === undefined && (
            <option value={after.check}>only after: {after.check}</option>
          )}
        </select>
      </label>
      {after !== undefined && (
        <label>
          came out{" "}
          <select
            value={came}
            onChange={({ target: { value } }) =>
              onSet({
                check: after.check,
                came: value === "good" || value === "bad" ? value : { word: value.slice("word:".length) },
              })
            }
          >
            <option value="bad">not as it should be</option>
            <option value="good">as it should be</option>
            {[...words, ...(unknown ? [came.slice("word:".length)] : [])].map((word) => (
              <option key={word} value={`word:${word}`}>
                {capitalised(word.replaceAll("_", " "))}
              </option>
            ))}
          </select>
        </label>
      )}
    </>
  );
}
