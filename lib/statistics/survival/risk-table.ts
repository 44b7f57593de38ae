import { ageFlows, atRiskByAge, type LifeSource } from "./age-flows";

/**
 * The ages at which failures happened, with how many lives were at risk and how many failed: all that a survival
 * curve needs. Arrays have one length; ages ascend without ties; events[i] is 1 or more and at most atRisk[i].
 */
export interface RiskTable {
  readonly ages: Float64Array;
  readonly atRisk: Float64Array;
  readonly events: Float64Array;
  /** The largest age at which anybody was still watched: the curve says nothing beyond it. */
  readonly lastAge: number;
}

export type CurveSource = LifeSource | RiskTable;

/**
 * Risk table of rows, columns or flows; a table counted elsewhere passes through after a check.
 * @throws RangeError for a table that cannot be
 */
export function riskTable(source: CurveSource): RiskTable {
  if ("atRisk" in source) return checkedTable(source);
  const flows = ageFlows(source);
  const atRisk = atRiskByAge(flows);
  const withEvents = [...flows.ages.keys()].filter((i) => (flows.events[i] ?? 0) > 0);
  const pick = (column: Float64Array) => Float64Array.from(withEvents, (i) => column[i] ?? 0);
  return {
    ages: pick(flows.ages),
    atRisk: pick(atRisk),
    events: pick(flows.events),
    lastAge: flows.ages.at(-1) ?? 0,
  };
}

function checkedTable(table: RiskTable): RiskTable {
  const { ages, atRisk, events, lastAge } = table;
  if (atRisk.length !== ages.length || events.length !== ages.length) {
    throw new RangeError(
      `ages, atRisk and events must have one length; they have ${ages.length}, ${atRisk.length} and ${events.length}`,
    );
  }
  ages.forEach((age, i) => {
    if (!(age >= 0 && age > (ages[i - 1] ?? -1) && age < Number.POSITIVE_INFINITY)) {
      throw new RangeError(`ages must be finite, 0 or more and ascending without ties; ages[${i}] is ${age}`);
    }
    const failed = events[i] ?? 0;
    const watched = atRisk[i] ?? 0;
    if (!(Number.isSafeInteger(failed) && Number.isSafeInteger(watched) && failed >= 1 && failed <= watched)) {
      throw new RangeError(
        `events[${i}] must be a whole number between 1 and atRisk[${i}]; they are ${failed} and ${watched}`,
      );
    }
  });
  if (!(lastAge >= (ages.at(-1) ?? 0) && lastAge < Number.POSITIVE_INFINITY)) {
    throw new RangeError(`lastAge must be finite and not below the last failure; it is ${lastAge}`);
  }
  return table;
}
