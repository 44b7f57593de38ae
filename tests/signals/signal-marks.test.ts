import { expect, test } from "vitest";
import { type SignalMark, signalState } from "@/lib/signals/signal-marks";

const mark = (markId: number, kind: SignalMark["kind"], undoes?: number): SignalMark => ({
  markId,
  kind,
  undoes,
  asOfWeek: 100,
  observed: 20,
  expected: 10,
});
const quiet = { week: 110, since: () => ({ observed: 0, expected: 1 }) };

test("without a mark, or with its only mark taken back, a signal is new", () => {
  expect(signalState([], quiet)).toEqual({ kind: "new" });
  expect(signalState([mark(1, "watch"), mark(2, "undo", 1)], quiet)).toEqual({ kind: "new" });
});

test("the last mark that stands decides; taking it back brings the one before", () => {
  const marks = [mark(1, "watch"), mark(2, "dismiss")];
  expect(signalState(marks, quiet)).toEqual({ kind: "dismissed", mark: 2 });
  expect(signalState([...marks, mark(3, "undo", 2)], quiet)).toEqual({ kind: "watched", mark: 1 });
});

test("not now lasts four weeks, and not a week longer", () => {
  expect(signalState([mark(1, "not_now")], { ...quiet, week: 103 })).toMatchObject({ kind: "put-off", untilWeek: 104 });
  expect(signalState([mark(1, "not_now")], { ...quiet, week: 104 })).toEqual({ kind: "new" });
});

// By hand: twice the expected was accepted, so 3 expected since then make a mean of 6. P(X >= 13) for that mean is 0.0088,
// P(X >= 12) is 0.0201 (R 4.2.2: 1 - ppois(12 - 1:0, 6)), and 0.01 is the limit.
test.each([
  [12, "dismissed"],
  [13, "returned"],
] as const)("%i failures since then: %s", (observed, kind) => {
  const state = signalState([mark(1, "dismiss")], { week: 120, since: () => ({ observed, expected: 3 }) });
  expect(state.kind).toBe(kind);
});

test("what goes on as it was when it was dismissed does not come back", () => {
  const state = signalState([mark(1, "explain")], { week: 150, since: () => ({ observed: 20, expected: 10 }) });
  expect(state).toEqual({ kind: "explained", mark: 1 });
});

test("since is asked for the weeks after the mark", () => {
  const asked: number[] = [];
  const since = (week: number) => {
    asked.push(week);
    return { observed: 1, expected: 1e9 };
  };
  signalState([mark(1, "dismiss")], { week: 120, since });
  expect(asked).toEqual([100]);
});
