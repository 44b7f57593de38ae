import { describe, expect, test } from "vitest";
import { FourSignals } from "@/app/_health/four-signals";
import { placeOfRequest } from "@/app/_health/place-of-request";

describe("the four signals", () => {
  test("half and 95 in 100 answers by the upper end of their class, failures apart", () => {
    const signals = new FourSignals();
    for (let n = 0; n < 100; n++) signals.note({ at: n * 1000, ms: n < 90 ? 40 : 700, status: n < 3 ? 503 : 200 });
    expect(signals.view(100_000)).toEqual({ requests: 100, errors: 3, medianMs: 50, slowMs: 800 });
  });

  test("an answer beyond the last class is not given an end", () => {
    const signals = new FourSignals();
    signals.note({ at: 0, ms: 60_000, status: 200 });
    expect(signals.view(1)?.slowMs).toBe(Number.POSITIVE_INFINITY);
  });

  test("what is older than an hour no longer counts, and at most 61 minutes are kept", () => {
    const signals = new FourSignals();
    for (let minute = 0; minute < 500; minute++) signals.note({ at: minute * 60_000, ms: 5, status: 200 });
    expect(signals.view(499 * 60_000)?.requests).toBe(60);
    expect(signals.view(559 * 60_000)).toBeUndefined();
  });
});

describe("the place of a request in the log", () => {
  test.each([
    ["/jobs/J-10004?words=Miller", "/jobs/*"],
    ["/jobs/J-10004/photos/8812", "/jobs/*/photos/*"],
    ["/repeats/rates.csv?by=model", "/repeats/rates.csv"],
    ["/claims/for/Anna%20Miller", "/claims/for/*"],
    ["/units/a%40b.c", "/units/*"],
    ["/", "/"],
    ["", ""],
  ])("%s is logged as %s", (url, place) => expect(placeOfRequest(url)).toBe(place));
});
