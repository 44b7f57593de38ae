/** A fact of its unit that a job's row may state: the column of the file, those of staging and units, and what it says. */
export interface UnitFact {
  readonly from: "made" | "sold_on" | "delivered_on" | "installed_on";
  /** The first is null where nothing is said. */
  readonly columns: readonly [string, ...string[]];
  /** SQL for the text of it in a row of this name. */
  readonly said: (alias: string) => string;
}

const day = (column: "sold_on" | "delivered_on" | "installed_on"): UnitFact => ({
  from: column,
  columns: [column],
  said: (alias) => `${alias}.${column}::text`,
});

export const unitFacts: readonly UnitFact[] = [
  {
    from: "made",
    columns: ["made_from", "made_until"],
    said: (of) =>
      `case when ${of}.made_from = ${of}.made_until then ${of}.made_from::text else ${of}.made_from || ' to ' || ${of}.made_until end`,
  },
  day("sold_on"),
  day("delivered_on"),
  day("installed_on"),
];

/** Notes of the cells of one row count from 1; those of its unit's facts stand behind them. */
export const factPlaces: Readonly<Record<UnitFact["from"], number>> = {
  made: 1000,
  sold_on: 1001,
  delivered_on: 1002,
  installed_on: 1003,
};
