import { describe, expect, test } from "vitest";
import { lifeQuery, readLifeAddress } from "@/app/repeats/life-address";
import { readAgainst, secondQuestion } from "@/app/repeats/read-comparison";
import { sidesOfDay } from "@/app/repeats/sides-of-day";
import { twoGroups } from "@/app/repeats/two-groups";
import type { CatalogueWords } from "@/db/queries/known-words";
import type { Day } from "@/lib/calendar/day";
import { dayNumber } from "@/lib/calendar/day-number";
import type { LifeQuestion } from "@/lib/failures/visit-spells";
import { cellsOf, makeUnits } from "../failures/made-units";

const cutOff = "2026-11-01" as Day; // a real day
const words: CatalogueWords = {
  makers: ["One", "Two"],
  models: [
    { number: "A", maker: "One", productType: "dishwasher" },
    { number: "B", maker: "Two", productType: "refrigerator" },
  ],
  components: [
    { key: "pump", name: "Pump" },
    { key: "board", name: "Board" },
  ],
  symptoms: [{ key: "leaks", name: "Leaks" }],
  cutOff,
};
const read = (values: Record<string, string>) =>
  readLifeAddress("board", values, { words, cutOff, own: ["with", "on", "rows"] });
const question = read({}).question;

describe("the address of a life", () => {
  test("comes back as it was read", () => {
    const values = { make: "One", model: "A", symptom: "leaks", from: "2024-01-01", to: "2025-12-31", level: "90" };
    const { question: asked, notices } = read(values);
    expect(notices).toEqual([]);
    expect(Object.fromEntries(new URLSearchParams(lifeQuery(asked, cutOff)))).toEqual(values);
    expect(lifeQuery(question, cutOff)).toBe("");
    expect(lifeQuery(question, cutOff, { with: "rest", on: undefined })).toBe("?with=rest");
  });

  test("says what does not belong to it, and what it cannot read", () => {
    expect(read({ age: "0-12", colour: "red" }).notices).toEqual([
      "“age” is not one of our filters; it was left out.",
      "“colour” is not one of our filters; it was left out.",
    ]);
    expect(read({ model: "Z", with: "moon" }).notices).toEqual([
      "“Z” is not a model that we know; it was left out. Choose one from the list.",
    ]);
  });
});

describe("what a group is set against", () => {
  test.each([
    [undefined, { kind: "rest" }],
    ["rest", { kind: "rest" }],
    ["make:Two", { kind: "make", value: "Two" }],
    ["model:B", { kind: "model", value: "B" }],
    ["component:pump", { kind: "component", value: "pump" }],
  ])("with=%s", (text, against) => {
    const found = readAgainst({ with: text }, words);
    expect(found.against).toEqual(against);
    expect(found.notices).toEqual([]);
  });

  test.each(["moon", "model:", "make:Three", "component:flux", "rest:of"])("with=%s is said to be unknown", (text) => {
    const found = readAgainst({ with: text }, words);
    expect(found.against).toEqual({ kind: "rest" });
    expect(found.notices[0]).toContain(`“${text}” is nothing to compare with; the rest was taken.`);
  });

  test("takes the place of the first group's own maker and model, and keeps the rest", () => {
    const first: LifeQuestion = { ...question, where: { maker: "One", model: "A", symptom: "leaks" } };
    const second = (text: string) => secondQuestion(first, readAgainst({ with: text }, words).against, words);
    expect(second("make:Two").where).toEqual({ maker: "Two", productType: undefined, symptom: "leaks" });
    expect(second("model:B").where).toEqual({ model: "B", symptom: "leaks" });
    expect(second("component:pump")).toEqual({ ...first, component: "pump" });
    // The rest of a model is of its own kind of appliance.
    expect(second("rest").where).toEqual({ productType: "dishwasher", symptom: "leaks" });
  });
});

describe("two groups", () => {
  const cells = cellsOf(makeUnits(30));
  const asked = (where: LifeQuestion["where"]) => ({ name: "Board", question: { ...question, where }, words, cells });

  test("a group that is part of the other is none", () => {
    expect(twoGroups({ with: "model:A" }, asked({ maker: "One" }))).toHaveProperty("notTwo");
    expect(twoGroups({ with: "component:board" }, asked({ model: "A" }))).toHaveProperty("notTwo");
    expect(twoGroups({ with: "rest" }, asked({}))).toHaveProperty("notTwo");
    expect(twoGroups({ with: "model:B" }, asked({ model: "A" }))).toHaveProperty("groups");
  });

  test("a day parts the days before it from itself and those after it", () => {
    const found = sidesOfDay({ on: "2025-03-01" }, asked({}));
    if (!("groups" in found)) throw new Error("the day lies inside the view");
    const [after, before] = found.groups;
    expect(after.question.from).toBe(dayNumber("2025-03-01" as Day)); // a real day
    expect(before.question.until).toBe(after.question.from);
    expect(sidesOfDay({ on: "2026-10-31" }, asked({}))).toHaveProperty("groups");
    expect(sidesOfDay({ on: "2026-11-01" }, asked({}))).toHaveProperty("notTwo");
    expect(sidesOfDay({}, asked({}))).toHaveProperty("notTwo");
  });
});
