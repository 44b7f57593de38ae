import { useId, useRef, useState } from "react";
import { ReadingGauge } from "@/app/_charts/reading-gauge";
import type { MeterMode, ReadingOutcome } from "@/lib/domain/reading";
import type { Check } from "@/lib/evidence/check";
import type { JudgedRange } from "@/lib/evidence/expected-range";
import { inUnit } from "@/lib/evidence/units";
import { formatOutcome } from "@/lib/format/format-reading";
import { typedValue } from "@/lib/sheets/typed-value";
import { unitChoices } from "@/lib/sheets/unit-slip";
import { inOtherUnit } from "./noted-range";
import type { ReadingDraft } from "./reading-draft";
import styles from "./sheet.module.css";
import { SignKey } from "./sign-key";

interface Props {
  readonly check: Check;
  readonly draft: ReadingDraft;
  readonly range: JudgedRange | undefined;
  readonly onChange: (part: Partial<ReadingDraft>) => void;
  readonly onTake: (outcome: ReadingOutcome) => void;
}

/** A number with its unit, echoed as it was understood; states of the meter are buttons, not typed. */
export function NumberInput({ check, draft, range, onChange, onTake }: Props) {
  const id = useId();
  const field = useRef<HTMLInputElement>(null);
  const [problem, setProblem] = useState<string>();
  const typed = typedValue(draft.text);
  const outcome: ReadingOutcome | undefined =
    typed.kind === "value" ? { kind: "number", value: typed.value, unit: draft.unit } : undefined;
  const isOhms = draft.mode === "ohm" || draft.mode === "continuity";
  const modes = check.modes.filter((mode) => mode === "volt_ac" || mode === "volt_dc");

  function next() {
    if (outcome !== undefined) return onTake(outcome);
    setProblem(
      typed.kind === "unclear"
        ? typed.sentence
        : "Type what the meter shows, choose a state of the meter, or skip the step.",
    );
    field.current?.focus(); // it may be off the screen, above the bar that was touched
  }
  return (
    <form
      id="reading"
      onSubmit={(event) => {
        event.preventDefault();
        next();
      }}
    >
      <label htmlFor={id} className={styles.label}>
        Reading
      </label>
      {problem !== undefined && (
        <p role="alert" className={styles.problem}>
          {problem}
        </p>
      )}
      <div className={styles.line}>
        {draft.unit.startsWith("°") && <SignKey text={draft.text} onChange={(text) => onChange({ text })} />}
        <input
          id={id}
          ref={field}
          type="text"
          inputMode="decimal"
          autoComplete="off"
          enterKeyHint="next"
          aria-invalid={problem === undefined ? undefined : true}
          className={styles.number}
          value={draft.text}
          onChange={(event) => {
            setProblem(undefined);
            onChange({ text: event.target.value });
          }}
        />
        <Units draft={draft} choices={unitChoices(check.unit ?? draft.unit)} onChange={onChange} />
      </div>
      {modes.length > 1 && <Modes modes={modes} chosen={draft.mode} onChoose={(mode) => onChange({ mode })} />}
      {outcome !== undefined && <Echo outcome={outcome} range={range} />}
      <div className={styles.states}>
        {isOhms && (
          <>
            <State words="Open (OL)" onTake={() => onTake({ kind: "open" })} />
            <State words="Short" onTake={() => onTake({ kind: "short" })} />
          </>
        )}
        <State words="No reading" onTake={() => onTake({ kind: "no_reading" })} />
      </div>
    </form>
  );
}

function State({ words, onTake }: { readonly words: string; readonly onTake: () => void }) {
  return (
    <button type="button" className={styles.choice} onClick={onTake}>
      {words}
    </button>
  );
}

function Units({
  draft,
  choices,
  onChange,
}: Pick<Props, "draft" | "onChange"> & { readonly choices: readonly string[] }) {
  if (choices.length < 2) return <span className={styles.unit}>{draft.unit}</span>;
  return (
    <select
      aria-label="Unit"
      className={styles.unit}
      value={draft.unit}
      onChange={(event) => onChange(inOtherUnit(draft, event.target.value))}
    >
      {choices.map((unit) => (
        <option key={unit} value={unit}>
          {unitSigns[unit] ?? unit}
        </option>
      ))}
    </select>
  );
}

const unitSigns: Readonly<Record<string, string>> = { ohm: "Ω", kohm: "kΩ", mohm: "MΩ" };

interface ModesProps {
  readonly modes: readonly MeterMode[];
  readonly chosen: MeterMode;
  readonly onChoose: (mode: MeterMode) => void;
}

function Modes({ modes, chosen, onChoose }: ModesProps) {
  return (
    <fieldset className={styles.radios}>
      <legend>Meter on</legend>
      {modes.map((mode) => (
        <label key={mode}>
          <input type="radio" name="mode" checked={chosen === mode} onChange={() => onChoose(mode)} />{" "}
          {mode === "volt_ac" ? "AC" : "DC"}
        </label>
      ))}
    </fieldset>
  );
}

/** What was understood, on the scale of its range. */
function Echo({ outcome, range }: { readonly outcome: ReadingOutcome; readonly range: JudgedRange | undefined }) {
  const value =
    outcome.kind === "number" && range !== undefined ? inUnit(outcome.value, outcome.unit, range.unit) : undefined;
  return (
    <div aria-live="polite" className={styles.echo}>
      {value === undefined || range === undefined ? (
        <p className="figures">{formatOutcome(outcome)}</p>
      ) : (
        <ReadingGauge outcome={{ kind: "number", value, unit: range.unit }} expected={range} />
      )}
    </div>
  );
}
