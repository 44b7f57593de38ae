import { addedTroubles, decoy } from "./added-troubles";
import { callRates } from "./call-rates";
import { closedWithin } from "./delays";
import { livesOf } from "./hazards";
import { observableShare } from "./job-dirt";
import { type Model, modelNumber, models } from "./models";
import { plantedDefects } from "./planted-defects";
import type { Scenario } from "./scenario";
import { peakDayOfYear, summerSwing } from "./season";
import type { TrueCall, TrueLife, Truth } from "./truth";
import { leavingPerYear } from "./unit-life";

/** The part of the truth that is settled before anything is drawn. */
export function trueSettings(
  scenario: Scenario,
): Omit<Truth, "chanceOnly" | "fixedJobs" | "counts" | "heldRows" | "acceptedDirt" | "leaks"> {
  return {
    schema: "ohmsworth/demo-truth/1",
    seed: scenario.seed,
    size: scenario.size,
    until: scenario.until,
    recordsFrom: scenario.recordsFrom,
    lives: models.flatMap(trueLives),
    plantedDefects,
    addedTroubles,
    decoy,
    calls: trueCalls(),
    season: { productType: "refrigerator", swing: summerSwing, peakDayOfYear },
    observableShare,
    closedWithin: closedWithin(),
    ourShareOfRepairs: { whileInRegister: 1, leavingPerYear },
  };
}

function trueLives(model: Model): readonly TrueLife[] {
  return livesOf(model).map(({ component, shape, scale }) => ({
    model: modelNumber(model),
    productType: model.productType,
    component,
    shape,
    scaleDays: scale,
  }));
}

function trueCalls(): readonly TrueCall[] {
  return (Object.keys(callRates) as Model["productType"][]).flatMap(
    (
      productType, // Object.keys loses the key type
    ) =>
      callRates[productType].map(({ cause, component, symptom, per100UnitYears, early }) => ({
        productType,
        cause,
        component,
        symptom,
        per100UnitYears,
        timesInFirst90Days: early,
      })),
  );
}
