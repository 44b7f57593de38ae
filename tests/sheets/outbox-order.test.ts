import { describe, expect, test } from "vitest";
import type { OutboxItem } from "@/app/sheet/_device/device-store";
import { nextToSend } from "@/app/sheet/_device/outbox";

const item = (id: string, kind: "answer" | "close", part: Partial<OutboxItem> = {}): OutboxItem => ({
  id,
  job: "J1",
  order: 1,
  refused: undefined,
  // Only what the order looks at.
  load:
    kind === "close"
      ? { kind, body: {} }
      : { kind: "photo", subject: "plate", check: undefined, bytes: new ArrayBuffer(0), type: "" },
  ...part,
});
const next = (waiting: readonly OutboxItem[], ...tried: string[]) => nextToSend(waiting, new Set(tried))?.id;

describe("what the device sends next", () => {
  test("the oldest first, and what was tried in this run not again", () => {
    expect(next([item("a", "answer"), item("b", "answer")])).toBe("a");
    expect(next([item("a", "answer"), item("b", "answer")], "a")).toBe("b");
  });
  test("a closing waits behind an answer that was refused, and behind one that the server failed to take", () => {
    expect(next([item("a", "answer", { refused: "no" }), item("z", "close")])).toBeUndefined();
    expect(next([item("a", "answer"), item("z", "close")], "a")).toBeUndefined();
    expect(next([item("z", "close"), item("a", "answer")])).toBe("a");
    expect(next([item("z", "close")])).toBe("z");
  });
  test("nothing of one job holds up another", () => {
    const other = item("y", "close", { job: "J2" });
    expect(next([item("a", "answer", { refused: "no" }), item("z", "close"), other])).toBe("y");
  });
});
