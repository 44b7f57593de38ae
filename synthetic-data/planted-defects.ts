import { modelNumber, modelOf } from "./models";
import { weekNumber, weekStart } from "./production-week";

/** A fault built into one component of one model in some production weeks. */
export interface PlantedDefect {
  readonly key: string;
  /** The demo's own key of the model, and its number as on the plate. */
  readonly model: string;
  readonly modelNumber: string;
  readonly component: string;
  /** First and last production week, as text and as running numbers. */
  readonly from: string;
  readonly to: string;
  readonly fromWeek: number;
  readonly toWeek: number;
  /** Multiplies the hazard of the component in every spell, replacements included. */
  readonly multiplier: number;
  readonly story: string;
}

export const plantedDefects: readonly PlantedDefect[] = [
  planted(
    "pump_revision",
    "BHF27",
    "drain_pump",
    [2023, 40],
    [2024, 39],
    7,
    "pump revision C: the winding lead breaks at its crimp",
  ),
  planted(
    "board_lot",
    "VTD5",
    "control_board",
    [2024, 20],
    [2025, 30],
    5,
    "board lot with a cold solder joint at the heater relay",
  ),
  planted(
    "fan_motor_grease",
    "VTK25",
    "evaporator_fan_motor",
    [2022, 36],
    [2023, 26],
    4,
    "fan motor greased for a warmer climate",
  ),
];

type Week = readonly [year: number, week: number];

function planted(
  key: string,
  model: string,
  component: string,
  from: Week,
  to: Week,
  multiplier: number,
  story: string,
): PlantedDefect {
  return {
    key,
    model,
    modelNumber: modelNumber(modelOf(model)),
    component,
    from: weekText(from),
    to: weekText(to),
    fromWeek: running(from),
    toWeek: running(to),
    multiplier,
    story,
  };
}

function running([year, week]: Week): number {
  return weekNumber(weekStart({ year, week }));
}

function weekText([year, week]: Week): string {
  return `${year}-W${String(week).padStart(2, "0")}`;
}
