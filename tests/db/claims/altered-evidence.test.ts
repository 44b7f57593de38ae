// P3 of what the program promises: one flipped byte in a photo, in what was sent, or a reading that is not as it was sent,
// and the check names the item.
import { sql } from "drizzle-orm";
import sharp from "sharp";
import { afterAll, beforeEach, expect, test } from "vitest";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { inTransaction } from "@/db/in-transaction";
import { findAlteredEvidence } from "@/db/queries/altered-evidence";
import { addAttachment } from "@/db/writes/photos/add-attachment";
import { reencodePhoto } from "@/db/writes/photos/reencode-photo";
import { day } from "@/lib/calendar/day";
import { csv, fileFolder } from "../intake-files";
import { draftOf, send, startWithJobs } from "./claim-files";

const files = fileFolder();
const found = () => readOnly((db) => findAlteredEvidence(db));
const change = (statement: ReturnType<typeof sql>) => inTransaction(async (tx) => void (await tx.execute(statement)));
let claim = "";

beforeEach(async () => {
  await startWithJobs(files);
  const reading = { job_number: "J1", number: 1, check: "pump_winding", mode: "ohm", power: "off", outcome: "open" };
  await files.load(csv([reading]));
  const picture = sharp({ create: { width: 320, height: 240, channels: 3, background: "#345" } });
  const photo = await reencodePhoto(await picture.jpeg().toBuffer());
  if (!photo.ok) throw new Error(photo.problem);
  await addAttachment({ jobNumber: "J1", subject: "plate", caption: "", file: photo.photo });
  claim = await draftOf("J1");
  await send(claim, day("2023-05-12"));
});
afterAll(async () => {
  files.remove();
  await closeDatabase();
});

test("nothing altered, nothing named", async () => {
  expect(await found()).toEqual([]);
});

const oneByte = (column: string) => sql.raw(`${column} = set_byte(${column}, 50, get_byte(${column}, 50) # 1)`);

test("one byte of a photo", async () => {
  await change(sql`update attachments set ${oneByte("content")}`);
  expect(await found()).toEqual([
    expect.stringMatching(/^Photo or paper \d+ of job J1: its bytes have not the hash [0-9a-f]{64} that was kept\.$/),
  ]);
});

test("one byte of what was sent is refused by the database itself, which holds the bytes to their hash", async () => {
  const changed = change(sql`update claim_submissions set ${oneByte("content")}`);
  await expect(changed).rejects.toMatchObject({ cause: { constraint: "claim_submissions_hashed" } });
  expect(await found()).toEqual([]);
});

test("a reading that is not as it was sent, and one that is gone", async () => {
  await change(sql`update readings set outcome = 'short'`);
  expect(await found()).toEqual([`Reading 1 of job J1 is not as it was sent: claim ${claim}, filing 1.`]);
  await change(sql`delete from readings`);
  expect(await found()).toEqual([`Reading 1 of job J1 is no longer on file: claim ${claim}, filing 1.`]);
});
