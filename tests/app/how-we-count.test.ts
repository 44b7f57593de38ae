import { renderToStaticMarkup } from "react-dom/server";
import { describe, expect, test } from "vitest";
import { definitions } from "@/app/_ui/definitions";
import { methodName } from "@/app/repeats/method-name";
import { fraction, maths, raised } from "@/app/shop/how-we-count/_maths/maths";
import { definitionGroups } from "@/app/shop/how-we-count/definition-groups";
import { groupSections } from "@/app/shop/how-we-count/group-sections";
import type { CountedView } from "@/app/shop/how-we-count/load-counted-view";
import { methodDefinitions } from "@/app/shop/how-we-count/method-definitions";
import { fewestFailuresForFit } from "@/lib/failures/component-life";
import { daysPerMonth, daysPerYear } from "@/lib/failures/rate-question";

/** A company before anything was loaded: the definitions must stand without a single live figure. */
const empty: CountedView = {
  shop: {
    only: true,
    name: "",
    currency: "USD",
    timeZone: "UTC",
    territory: "US",
    recordsFrom: null,
    madeGraceMonths: 3,
    repeatDays: 30,
    demo: false,
  },
  counted: {
    registered: [],
    knownFromJobsOnly: 0,
    neverWatched: 0,
    jobs: {
      onRecord: 0,
      countedAsNothing: 0,
      closed: 0,
      failures: 0,
      withoutSerial: 0,
      withoutExposure: 0,
      beforeRecords: 0,
      afterRetirement: 0,
      withoutComponent: 0,
      causeNotDetermined: 0,
      rowsSetAside: 0,
    },
  },
  example: undefined,
  delays: undefined,
};

const sections = groupSections(empty);
const page = definitionGroups.map(({ id }) => renderToStaticMarkup(sections[id])).join("\n");

/** Text of one definition, from its anchor to the next. */
function entry(key: string): string {
  const from = page.indexOf(`<section id="${key}"`);
  if (from < 0) throw new Error(`no definition ${key}`);
  const next = page.indexOf("<section id=", from + 1);
  return page.slice(from, next < 0 ? undefined : next).replaceAll(/<[^>]+>/g, " ");
}

describe("every definition", () => {
  test("is on the page once and in the contents once", () => {
    const listed = definitionGroups.flatMap(({ keys }) => [...keys]);
    expect([...listed].sort()).toEqual(Object.keys(definitions).sort());
    for (const key of listed) expect(page.split(`id="${key}"`)).toHaveLength(2);
  });

  test("stands in the order of the contents", () => {
    const places = definitionGroups.flatMap(({ keys }) => keys.map((key) => page.indexOf(`id="${key}"`)));
    expect(places).toEqual([...places].sort((a, b) => a - b));
  });

  test("has words of its own before anything else", () => {
    for (const key of Object.keys(definitions)) expect(entry(key).length, key).toBeGreaterThan(120);
    expect(page).not.toMatch(/undefined|NaN|Infinity/);
  });
});

test.each(Object.keys(methodDefinitions) as (keyof typeof methodDefinitions)[])(
  "the range named %s on pages and in files is explained under that name",
  (method) => {
    const { of, name } = methodDefinitions[method];
    expect(name).toBe(methodName(method));
    expect(entry(of)).toContain(`“${name}”`);
  },
);

// The numbers of the sentences are those of the code: each is looked for where it decides something.
test.each([
  ["age", String(daysPerMonth)],
  ["exposure", String(daysPerYear)],
  ["fitted-life", `under ${fewestFailuresForFit} failures`],
] as const)("the definition of %s says %s", (key, words) => {
  expect(entry(key).replaceAll(/\s+/g, " ")).toContain(words);
});

// Printed or computed elsewhere: Garwood limits of 31 events are 21.06 and 44.00 (R 4.2.2, qgamma), over 412 unit-years.
test("the worked range of a rate is the exact one", () => {
  expect(entry("poisson-exact")).toContain("7.52 in 100 a year (5.11 to 10.68)");
});

test("a formula is MathML whose brackets hold what they hold", () => {
  const markup = renderToStaticMarkup(maths`F ( ${fraction("t", "2 n")} ) = ${raised("x", "2")}`);
  expect(markup).toBe(
    "<mrow><mi>F</mi><mrow><mo>(</mo><mfrac><mi>t</mi><mrow><mn>2</mn><mi>n</mi></mrow></mfrac><mo>)</mo></mrow><mo>=</mo><msup><mi>x</mi><mn>2</mn></msup></mrow>",
  );
});
