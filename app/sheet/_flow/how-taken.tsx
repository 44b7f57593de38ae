import type { Check } from "@/lib/evidence/check";
import type { ReadingDraft } from "./reading-draft";
import styles from "./sheet.module.css";
import { SignKey } from "./sign-key";
import { powerWords } from "./step-head";

interface Props {
  readonly check: Check;
  readonly draft: ReadingDraft;
  readonly onChange: (part: Partial<ReadingDraft>) => void;
}

/** What decides whether the reading proves anything: command, load, temperature; and how it was taken, where otherwise than asked. */
export function HowTaken({ check, draft, onChange }: Props) {
  const needs = new Set(check.needs);
  return (
    <>
      {needs.has("command") && (
        <YesNo
          legend="Was the step commanded in the diagnostic cycle?"
          name="commanded"
          value={draft.commanded}
          onChoose={(commanded) => onChange({ commanded })}
        />
      )}
      {needs.has("load") && (
        <YesNo
          legend="Was the load connected while you read?"
          name="load"
          value={draft.loadConnected}
          onChoose={(loadConnected) => onChange({ loadConnected })}
        />
      )}
      {needs.has("temperature") && <Temperature draft={draft} onChange={onChange} />}
      <details className={styles.more}>
        <summary>
          Recorded as: {powerWords[draft.power].toLowerCase()}
          {needs.has("isolated") && (draft.isolated ? ", part disconnected" : ", part still connected")}. Taken
          otherwise, or another range on the sheet?
        </summary>
        <Power draft={draft} onChange={onChange} />
        {needs.has("isolated") && (
          <YesNo
            legend="Was the part disconnected?"
            name="isolated"
            value={draft.isolated}
            onChoose={(isolated) => onChange({ isolated })}
          />
        )}
        <SheetRange draft={draft} onChange={onChange} />
      </details>
    </>
  );
}

interface YesNoProps {
  readonly legend: string;
  readonly name: string;
  readonly value: boolean | undefined;
  readonly onChoose: (value: boolean) => void;
}

function YesNo({ legend, name, value, onChoose }: YesNoProps) {
  return (
    <fieldset className={styles.radios}>
      <legend>{legend}</legend>
      {[true, false].map((choice) => (
        <label key={String(choice)}>
          <input type="radio" name={name} checked={value === choice} onChange={() => onChoose(choice)} />{" "}
          {choice ? "Yes" : "No"}
        </label>
      ))}
    </fieldset>
  );
}

function Power({ draft, onChange }: Omit<Props, "check">) {
  return (
    <fieldset className={styles.radios}>
      <legend>State of the machine while you read</legend>
      {(["off", "powered_panels_closed", "live"] as const).map((power) => (
        <label key={power}>
          <input type="radio" name="power" checked={draft.power === power} onChange={() => onChange({ power })} />{" "}
          {powerWords[power]}
        </label>
      ))}
    </fieldset>
  );
}

function Temperature({ draft, onChange }: Omit<Props, "check">) {
  return (
    <div>
      <label htmlFor="temperature" className={styles.label}>
        Temperature at the sensor
      </label>
      <p className="small soft">Without it the resistance of a sensor proves nothing.</p>
      <div className={styles.line}>
        <SignKey text={draft.temperature} onChange={(temperature) => onChange({ temperature })} />
        <input
          id="temperature"
          type="text"
          inputMode="decimal"
          autoComplete="off"
          className={styles.number}
          value={draft.temperature}
          onChange={(event) => onChange({ temperature: event.target.value })}
        />
        <select
          aria-label="Unit of the temperature"
          className={styles.unit}
          value={draft.temperatureUnit}
          onChange={(event) => onChange({ temperatureUnit: event.target.value === "°C" ? "°C" : "°F" })}
        >
          <option>°F</option>
          <option>°C</option>
        </select>
      </div>
    </div>
  );
}

function SheetRange({ draft, onChange }: Omit<Props, "check">) {
  const ends = [
    { name: "sheetLow", label: "Sheet, from", value: draft.sheetLow },
    { name: "sheetHigh", label: "Sheet, to", value: draft.sheetHigh },
  ] as const;
  return (
    <fieldset className={styles.radios}>
      <legend>Range on the sheet in the machine, in the unit above</legend>
      {ends.map(({ name, label, value }) => (
        <label key={name}>
          {label}{" "}
          <input
            type="text"
            inputMode="decimal"
            autoComplete="off"
            className={styles.short}
            value={value}
            onChange={(event) => onChange({ [name]: event.target.value })}
          />
        </label>
      ))}
      <label>
        Which sheet{" "}
        <input
          type="text"
          autoComplete="off"
          className={styles.short}
          value={draft.sheetReference}
          onChange={(event) => onChange({ sheetReference: event.target.value })}
        />
      </label>
    </fieldset>
  );
}
