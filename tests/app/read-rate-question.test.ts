import { describe, expect, test } from "vitest";
import { rateAddress } from "@/app/repeats/rate-address";
import { type KnownWords, readRateQuestion } from "@/app/repeats/read-rate-question";
import { day } from "@/lib/calendar/day";
import { dayNumber } from "@/lib/calendar/day-number";

const known: KnownWords = {
  makers: ["Brackenhall"],
  models: ["BHF27-W3"],
  components: ["drain_pump"],
  symptoms: ["will_not_drain"],
  cutOff: day("2026-11-01"),
};

describe("an address of the Repeats page", () => {
  test("nothing said: failures by component, all days, 95 in 100", () => {
    const { question, notices } = readRateQuestion({}, known);
    expect(question).toMatchObject({ by: ["component"], counting: "failures", from: undefined, level: 0.95 });
    expect(question.until).toBe(dayNumber(day("2026-11-01")));
    expect(notices).toEqual([]);
  });

  test("what the filter form sends, blank fields and all, is read without a word of complaint", () => {
    const blank = {
      count: "failures",
      make: "",
      model: "",
      type: "",
      component: "",
      symptom: "",
      age: "",
      from: "",
      to: "",
    };
    const { question, notices } = readRateQuestion(
      { by: "model", and: "age", ...blank, level: "90", order: "name" },
      known,
    );
    expect(question).toMatchObject({ by: ["model", "age"], level: 0.9 });
    expect(notices).toEqual([]);
  });

  test("a question goes into its address and comes back the same", () => {
    const asked = readRateQuestion(
      {
        by: "component,age",
        count: "calls",
        make: "Brackenhall",
        type: "dishwasher",
        age: "0-12",
        from: "2024-01-01",
        to: "2025-12-31",
        level: "99",
        order: "name",
      },
      known,
    );
    const address = rateAddress(asked.question, asked.order, dayNumber(known.cutOff));
    expect(readRateQuestion(Object.fromEntries(new URLSearchParams(address)), known)).toEqual(asked);
  });

  test.each([
    [{ by: "component,moon" }, "“moon” is not something to group by"],
    [{ by: "component,age,model" }, "two things at most"],
    [{ make: "Nobody" }, "“Nobody” is not a make that we know"],
    [{ from: "2025-02-30" }, "“2025-02-30” is not a day"],
    [{ to: "2030-01-01" }, "The data end on 2026-10-31"],
    [{ from: "2026-12-01" }, "is not before the end of the period"],
    [{ colour: "red" }, "“colour” is not one of our filters"],
  ])("%j is left out with a sentence", (values, sentence) => {
    const { notices } = readRateQuestion(values, known);
    expect(notices).toHaveLength(1);
    expect(notices[0]).toContain(sentence);
  });
});
