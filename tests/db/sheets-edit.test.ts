import { randomUUID } from "node:crypto";
import { sql } from "drizzle-orm";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { POST as sendAnswer } from "@/app/sheet/job/[number]/answers/route";
import { loadSheetView } from "@/app/sheet/job/[number]/load-sheet-view";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { loadExpectedRanges } from "@/db/queries/expected-ranges";
import { loadJobRecord } from "@/db/queries/job-record";
import { loadSheetDraft } from "@/db/queries/sheet-draft";
import { loadSheetRanges } from "@/db/queries/sheet-ranges";
import { loadSheetVersions } from "@/db/queries/sheet-versions";
import { closeJob } from "@/db/writes/sheets/close-job";
import { openJob } from "@/db/writes/sheets/open-job";
import { liftOwnRange, setOwnRange } from "@/db/writes/sheets/own-range";
import { publishSheet } from "@/db/writes/sheets/publish-sheet";
import { dropSheetDraft, saveSheetDraft } from "@/db/writes/sheets/save-sheet-draft";
import { day } from "@/lib/calendar/day";
import { packetReadings } from "@/lib/claims/packet-readings";
import { checkEvidence } from "@/lib/evidence/check-evidence";
import type { LooseStep } from "@/lib/sheets/loose-sheet";
import { loosened } from "@/lib/sheets/loose-sheet";
import type { Sheet } from "@/lib/sheets/sheet";
import { parseSheetDocument } from "@/lib/sheets/sheet-document";
import { shippedSheet } from "@/lib/sheets/shipped-sheets";
import { ownMeasure, ownStep } from "../sheets/own-check";
import { csv, fileFolder, job, shopDocument, startAfresh, unit } from "./intake-files";
import { headersAs } from "./people/signed-in";

process.env.OHMSWORTH_TODAY = "2025-06-30";
const files = fileFolder();
const pump: Sheet = shippedSheet("front_load_washer", "drain_pump") ?? noSheet();
function noSheet(): never {
  throw new Error("the drain pump has no sheet");
}

beforeAll(async () => {
  await startAfresh();
  await files.load(JSON.stringify(shopDocument));
  await files.load(csv([unit("A1")]));
  await files.load(csv([job("J1", "A1")]));
});
afterAll(async () => {
  files.remove();
  await closeDatabase();
});

const edited = (...more: readonly LooseStep[]): Sheet => {
  const read = parseSheetDocument(JSON.parse(JSON.stringify({ steps: [...pump.steps.map(loosened), ...more] })));
  if (!read.ok) throw new Error(read.problems.map(({ sentence }) => sentence).join(" "));
  return { ...pump, steps: read.steps };
};
const version = async () => (await readOnly((db) => loadSheetVersions(db, pump)))[0]?.version ?? 1;
const publish = async (sheet: Sheet, revision = 0) =>
  await publishSheet({ sheet, editedFrom: await version(), revision, by: "Robin", reason: "Two leaks last week." });

describe("a draft", () => {
  const save = (revision: number, by = "Robin") =>
    saveSheetDraft({ sheet: pump, editedFrom: 1, revision, document: { steps: [{ minutes: "not yet" }] }, by });

  test("keeps what could not be published, and tells whoever saves or publishes over somebody else's", async () => {
    expect(await save(0)).toEqual({ kind: "saved", revision: 1 });
    expect(await save(0, "Kit")).toEqual({ kind: "moved on", by: "Robin" });
    expect(await save(1, "Kit")).toEqual({ kind: "saved", revision: 2 });
    expect(await readOnly((db) => loadSheetDraft(db, pump))).toMatchObject({
      document: { steps: [{ minutes: "not yet" }] },
      revision: 2,
      savedBy: "Kit",
    });
    expect(await publish(edited(), 1)).toEqual({ kind: "draft moved on", by: "Kit" });
    expect(await dropSheetDraft(pump, 1)).toBe(false);
    expect(await dropSheetDraft(pump, 2)).toBe(true);
    expect(await version()).toBe(1);
  });
  test("is done when it is published, which names who, when and why; an older version is not published over a newer", async () => {
    await save(0);
    expect(await publish(edited(), 1)).toEqual({ kind: "published", version: 2 });
    expect(await readOnly((db) => loadSheetDraft(db, pump))).toBeUndefined();
    const [last] = await readOnly((db) => loadSheetVersions(db, pump));
    expect(last).toMatchObject({ version: 2, by: "Robin", reason: "Two leaks last week." });
    expect(Date.parse(last?.publishedAt ?? "")).toBeGreaterThan(0);
    const late = publishSheet({ sheet: pump, editedFrom: 1, revision: 0, by: "Kit", reason: "Late." });
    expect(await late).toEqual({ kind: "moved on", version: 2 });
  });
});

describe("a job and the version that it was begun by", () => {
  const opened = {
    jobNumber: "S1",
    serial: "a-1",
    symptom: "will_not_drain",
    complaint: "Stops with water in it.",
    requestedOn: day("2025-06-28"),
    technician: "Kit",
    payer: "maker",
    callbackOf: undefined,
  } as const;
  let signed: Record<string, string> | undefined;
  const answer = async (check: string, sequence: number, given: object) => {
    const body = { id: randomUUID(), sequence, check, time: 1, note: "", at: "2025-06-30T09:00:00-05:00", given };
    signed ??= await headersAs("technician", "Kit");
    const request = new Request("http://localhost/", { method: "POST", headers: signed, body: JSON.stringify(body) });
    const response = await sendAnswer(request, { params: Promise.resolve({ number: "S1" }) });
    return { status: response.status, detail: ((await response.json()) as { detail?: string }).detail };
  };
  const reading = { kind: "reading", power: "off", isolated: true, cautionsRead: true };

  test("keeps it whole, its own checks too; their readings carry what they were held against ever after", async () => {
    await publish(edited(ownStep(), ownMeasure({})));
    expect(await openJob(opened)).toEqual({ kind: "opened" });
    const first = await loadSheetView("S1");
    const begun = await version();
    await publish(edited(ownMeasure({ low: "1", high: "2" })));
    const again = await loadSheetView("S1");
    expect(again).toEqual(first);
    const sheet =
      again.kind === "open" ? again.view.sheets.find(({ component }) => component === "drain_pump") : undefined;
    expect(sheet).toMatchObject({ version: begun });
    expect(sheet?.steps.find(({ check }) => check === "own:tray_heater")?.own).toMatchObject({ low: 40, high: 60 });

    const word = { ...reading, mode: "observation", outcome: { kind: "finding", word: "dry" } };
    expect(await answer("own:drip_tray", 1, word)).toMatchObject({ status: 200 });
    const ohms = { ...reading, mode: "ohm", outcome: { kind: "number", value: 75, unit: "ohm" } };
    expect(await answer("own:tray_heater", 2, ohms)).toMatchObject({ status: 200 });
    const none = await answer("own:of_nobody", 3, word);
    expect(none).toMatchObject({ status: 422, detail: expect.stringContaining("own:of_nobody") });

    const closing = {
      jobNumber: "S1",
      complaint: undefined,
      causeNote: "Tray heater out of range.",
      correction: "None.",
      cause: "component",
      component: "drain_pump",
      failureMode: undefined,
      parts: [],
      callbackOf: undefined,
      visits: 1,
      labourMinutes: undefined,
      today: day("2025-06-30"),
      by: "Kit",
    } as const;
    expect(await closeJob(closing, async () => {}, { status: 200, body: {} })).toEqual({ kind: "closed" });
    const record = (await readOnly((db) => loadJobRecord(db, "S1")))?.record;
    expect(record && packetReadings(record, [])).toMatchObject([
      { check: "Drip tray", verdict: "finding", verdictWords: "dry" },
      { check: "Tray heater", verdict: "above", range: { low: 40, high: 60, source: "tray sheet, page 2" } },
    ]);
    // A check that the rules of evidence do not know proves nothing of the part.
    expect(record && checkEvidence(record, []).kind).toBe("missing");
  });
});

describe("ranges set here", () => {
  const range = {
    check: "pump_winding",
    low: 12,
    high: 18,
    unit: "ohm",
    condition: undefined,
    source: "sheet B, page 3",
    mark: "published",
  } as const;
  const modelId = async () =>
    (await readOnly((db) => db.rows<{ id: number }>(sql`select model_id as id from models limit 1`)))[0]?.id ?? 0;
  const expected = async () => {
    const id = await modelId();
    return (await readOnly((db) => loadExpectedRanges(db, id))).map(({ low, source }) => [low, source]);
  };

  test("go before those of files, later ones before earlier ones, and lifted they give way again", async () => {
    await files.load(
      csv([
        {
          maker: "Hearth-Wick",
          model: "FW5500",
          check: "pump_winding",
          low: 10,
          high: 20,
          unit: "ohm",
          source: "file",
          mark: "published",
        },
      ]),
    );
    expect(await expected()).toEqual([[10, "file"]]);
    const set = { modelId: await modelId(), by: "Robin", reason: "Revision B came in." };
    expect(await setOwnRange({ ...set, range: { ...range, low: 11 } })).toBe("set");
    expect(await setOwnRange({ ...set, range })).toBe("set");
    expect(await expected()).toEqual([[12, "sheet B, page 3"]]);
    const listed = await readOnly((db) =>
      loadSheetRanges(db, { productType: "front_load_washer", checks: ["pump_winding"] }),
    );
    expect(listed).toMatchObject([
      { low: 12, isReplaced: false, set: { by: "Robin", reason: "Revision B came in." } },
      { low: 10, isReplaced: true, set: undefined },
    ]);
    const id = listed[0]?.rangeId ?? 0;
    expect(await liftOwnRange(id, "Robin")).toBe(true);
    expect(await liftOwnRange(id, "Robin")).toBe(false);
    expect(await expected()).toEqual([[10, "file"]]);
  });
  test("of a part stand beside those of the model, and no range is set for a model that is not there", async () => {
    const set = { by: "Robin", reason: "Both pumps are fitted." };
    await setOwnRange({
      ...set,
      modelId: await modelId(),
      range: { ...range, low: 5, high: 8, condition: "pump P-100" },
    });
    expect(await expected()).toEqual([
      [5, "sheet B, page 3"],
      [10, "file"],
    ]);
    expect(await setOwnRange({ ...set, modelId: 999_999, range })).toBe("no such model");
  });
});
