import { afterEach, beforeEach, expect, test, vi } from "vitest";
import type { OutboxItem } from "@/app/sheet/_device/device-store";

// The device's own store stands in memory here; the browser tests walk the real one. The server answers as may-call does.
const device = vi.hoisted(() => new Map<string, OutboxItem>());
vi.mock("@/app/sheet/_device/device-store", () => ({
  loadOutbox: async () => [...device.values()].sort((a, b) => a.order - b.order),
  keepOnDevice: async (items: readonly { value: OutboxItem }[]) => {
    for (const { value } of items) device.set(value.id, value);
  },
  removeFromDevice: async (_: string, ids: readonly string[]) => {
    for (const id of ids) device.delete(id);
  },
}));
const { sendOutbox } = await import("@/app/sheet/_device/outbox");

const maker = "person-1";
const item = (id: string, order: number, load: OutboxItem["load"]): OutboxItem => ({
  id,
  job: "J1",
  order,
  load,
  person: maker,
  refused: undefined,
});
const bytes = new Uint8Array([255, 216, 255]).buffer;
let signedIn: string | undefined;
const taken: string[] = [];

beforeEach(() => {
  device.clear();
  taken.length = 0;
  device.set("a", item("a", 1, { kind: "photo", subject: "plate", check: undefined, bytes, type: "image/jpeg" }));
  device.set("z", item("z", 2, { kind: "close", body: { component: "drain_pump" } }));
  vi.stubGlobal("fetch", async (_: string, { headers }: { headers: Record<string, string> }) => {
    const problem = (type: string) => Response.json({ type, status: 401 }, { status: 401 });
    if (signedIn === undefined) return problem("about:blank");
    if (signedIn !== headers["Ohmsworth-Person"]) return problem("/sheet#other-person");
    taken.push(headers["Idempotency-Key"] ?? "");
    return new Response("{}", { status: 201 });
  });
});
afterEach(() => vi.unstubAllGlobals());

test("a session that is over drops nothing of the device, says so, and all goes in its order after signing in", async () => {
  signedIn = undefined;
  expect(await sendOutbox(() => {})).toEqual({ kind: "waiting", items: 2, why: "signed out" });
  expect([...device.keys()]).toEqual(["a", "z"]);
  expect([...device.values()].map(({ refused }) => refused)).toEqual([undefined, undefined]);
  signedIn = maker;
  expect((await sendOutbox(() => {})).kind).toBe("all sent");
  expect(taken).toEqual(["a", "z"]);
  expect(device.size).toBe(0);
});

test("nothing goes under the name of somebody else who signs in on the same phone", async () => {
  signedIn = "person-2";
  expect(await sendOutbox(() => {})).toEqual({ kind: "waiting", items: 2, why: "somebody else" });
  expect(taken).toEqual([]);
  expect(device.size).toBe(2);
});
