import { type MeterMode, meterModes, type PowerState, powerStates, sourceMarks } from "@/lib/domain/reading";
import { neededCautions } from "@/lib/evidence/own-check";
import type { LooseOwn } from "@/lib/sheets/loose-sheet";
import { usualUnit } from "@/lib/sheets/modes-and-units";
import { unitChoices } from "@/lib/sheets/unit-slip";
import { CautionBoxes } from "./caution-boxes";
import { OwnWords } from "./own-words";
import styles from "./sheet-form.module.css";

interface Props {
  readonly own: LooseOwn;
  readonly onSet: (own: LooseOwn) => void;
}

const powers: Readonly<Record<PowerState, string>> = {
  off: "Power off",
  powered_panels_closed: "Powered, panels closed",
  live: "Live",
};
const modes: Readonly<Record<MeterMode, string>> = {
  ohm: "Ohms (Ω)",
  continuity: "Continuity",
  volt_ac: "Volts AC",
  volt_dc: "Volts DC",
  ampere: "Amperes",
  microfarad: "Capacitance (µF)",
  inch: "Tape measure, in",
  inch_water: "Manometer, in w.c.",
  psi: "Pressure gauge, psi",
  degree_f: "Thermometer, °F",
  degree_c: "Thermometer, °C",
  observation: "Eye, ear and hand",
  fault_code: "Display",
};

/** A check that the company writes: everything that a technician must know of it before a lead touches anything. */
export function OwnCheckFields({ own, onSet }: Props) {
  const set = (part: Partial<LooseOwn>) => onSet({ ...own, ...part });
  const unit = usualUnit(own.mode);
  const text = (label: string, name: "name" | "points" | "says" | "source", most: number) => (
    <label className={styles.note}>
      {label}{" "}
      <input type="text" maxLength={most} value={own[name]} onChange={({ target }) => set({ [name]: target.value })} />
    </label>
  );
  const choose = <Key extends string>(
    label: string,
    value: Key,
    names: readonly (readonly [Key, string])[],
    onChoose: (key: Key) => void,
  ) => (
    <label>
      {label}{" "}
      <select value={value} onChange={({ target }) => onChoose(target.value as Key) /* the choices are its keys */}>
        {names.map(([key, name]) => (
          <option key={key} value={key}>
            {name}
          </option>
        ))}
      </select>
    </label>
  );
  return (
    <>
      {text("Name of the check", "name", 60)}
      {text("Where the leads go, or what is looked at", "points", 160)}
      {choose(
        "State of the machine",
        own.power,
        powerStates.map((key) => [key, powers[key]] as const),
        (power) => set({ power, cautions: [...new Set([...neededCautions(power), ...own.cautions])] }),
      )}
      {choose(
        "With",
        own.mode,
        meterModes.filter((key) => key !== "fault_code").map((key) => [key, modes[key]] as const),
        (mode) => set({ mode, unit: usualUnit(mode), words: usualUnit(mode) === undefined ? own.words : [] }),
      )}
      {unit === undefined ? (
        <OwnWords words={own.words} onSet={(words) => set({ words })} />
      ) : (
        <>
          {(["low", "high"] as const).map((end) => (
            <label key={end}>
              {end === "low" ? "Good from" : "to"}{" "}
              <input
                type="text"
                inputMode="decimal"
                className={styles.minutes}
                value={own[end]}
                onChange={({ target }) => set({ [end]: target.value })}
              />
            </label>
          ))}
          {choose(
            "Unit",
            own.unit ?? unit,
            unitChoices(unit).map((key) => [key, key] as const),
            (chosen) => set({ unit: chosen }),
          )}
          {text("Source of the range", "source", 200)}
          {choose(
            "Its mark",
            own.mark,
            sourceMarks.map((key) => [key, key] as const),
            (mark) => set({ mark }),
          )}
        </>
      )}
      {text("What a good result says", "says", 200)}
      <CautionBoxes
        title="Cautions"
        fixed={neededCautions(own.power)}
        ticked={own.cautions}
        onTick={(cautions) => set({ cautions })}
      />
    </>
  );
}
