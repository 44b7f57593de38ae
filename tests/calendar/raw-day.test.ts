import { expect, test } from "vitest";
import { rollToBusinessDay } from "@/lib/calendar/business-day";
import { civilDay } from "@/lib/calendar/civil-day";
import { day } from "@/lib/calendar/day";
import { readRawDay } from "@/lib/calendar/raw-day";

test.each([
  ["2025-03-04", { kind: "day", on: "2025-03-04" }],
  ["3/25/2025", { kind: "day", on: "2025-03-25" }],
  ["25.03.2025", { kind: "day", on: "2025-03-25" }],
  ["03/04/2025", { kind: "two_readings", monthFirst: "2025-03-04", dayFirst: "2025-04-03" }],
  ["05/05/25", { kind: "day", on: "2025-05-05" }],
  ["14 Mar 2024", { kind: "day", on: "2024-03-14" }],
  ["March 14, 2024", { kind: "day", on: "2024-03-14" }],
  ["2024-06", { kind: "month", on: { earliest: "2024-06-01", latest: "2024-06-30" } }],
  ["06/2024", { kind: "month", on: { earliest: "2024-06-01", latest: "2024-06-30" } }],
  ["02/29/2023", { kind: "no_such_day" }],
  ["13/13/2025", { kind: "no_such_day" }],
  ["2024-13", { kind: "no_such_day" }],
  ["01/01/1900", { kind: "placeholder" }],
  ["1970-01-01", { kind: "placeholder" }],
  ["9999-12-31", { kind: "placeholder" }],
  ["0000-00-00", { kind: "placeholder" }],
  ["soon", { kind: "unreadable" }],
  ["", { kind: "unreadable" }],
])("%s reads as %j", (text, expected) => expect(readRawDay(text)).toEqual(expected));

// By hand: 70 years of 365 days, 17 leap days since 1900, one day that never was, and counting begins at 1: 25,569.
test("a spreadsheet's day number is read in the 1900 system, with the other one beside it", () => {
  expect(readRawDay("25569")).toMatchObject({ kind: "day_number", on: "1970-01-01" });
  expect(readRawDay("45717")).toEqual({ kind: "day_number", on: "2025-03-01", ifFrom1904: "2029-03-02" });
});

// New York General Construction Law 19: a calendar day runs from midnight to midnight, at the place.
test("an instant falls on the day at the service address, also across the change of clocks", () => {
  const inLosAngeles = (at: string) => civilDay(at, "America/Los_Angeles");
  expect(inLosAngeles("2026-03-16T03:30:00Z")).toEqual({ kind: "day", on: "2026-03-15" });
  expect(inLosAngeles("2026-03-16T06:59:59Z")).toEqual({ kind: "day", on: "2026-03-15" });
  expect(inLosAngeles("2026-03-16T07:00:00Z")).toEqual({ kind: "day", on: "2026-03-16" });
  expect(inLosAngeles("2026-01-16T07:59:59Z")).toEqual({ kind: "day", on: "2026-01-15" });
  expect(civilDay("2026-03-16T03:30:00", "America/Los_Angeles").kind).toBe("no_such_instant");
  expect(civilDay("2026-03-16T03:30:00Z", "Nowhere/Land").kind).toBe("no_such_zone");
});

test("a Saturday rolls to Monday, and past a holiday where one is given", () => {
  expect(rollToBusinessDay(day("2025-11-15"), new Set())).toBe("2025-11-17");
  expect(rollToBusinessDay(day("2025-11-15"), new Set([day("2025-11-17")]))).toBe("2025-11-18");
  expect(rollToBusinessDay(day("2025-11-14"), new Set())).toBe("2025-11-14");
});
