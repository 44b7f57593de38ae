import { expect, test } from "vitest";
import { sessionHolds } from "@/lib/people/session-rules";

const minute = 60_000;
const hour = 60 * minute;
const startedAt = Date.UTC(2026, 9, 31, 8);
const holds = (role: "owner" | "technician", sinceStart: number, idle: number) =>
  sessionHolds({ role, startedAt, seenAt: startedAt + sinceStart - idle, now: startedAt + sinceStart });

test("at the desk half an hour without a request ends it, and a second less does not", () => {
  expect(holds("owner", 2 * hour, 30 * minute)).toBe(true);
  expect(holds("owner", 2 * hour, 30 * minute + 1)).toBe(false);
});

test("a technician's phone may lie for hours, and the working day ends it", () => {
  expect(holds("technician", 12 * hour, 11 * hour)).toBe(true);
  expect(holds("technician", 12 * hour + 1, 0)).toBe(false);
  expect(holds("owner", 12 * hour + 1, 0)).toBe(false);
});

test("a session that begins more than a day from now was begun by a wrong clock and does not last until then", () => {
  expect(holds("owner", -24 * hour - 1, 0)).toBe(false);
  expect(holds("technician", -365 * 24 * hour, 0)).toBe(false);
});

test("a clock that was put back a day ends nothing", () => {
  expect(holds("owner", -24 * hour, 0)).toBe(true);
  expect(sessionHolds({ role: "owner", startedAt, seenAt: startedAt + hour, now: startedAt - 24 * hour })).toBe(true);
});
