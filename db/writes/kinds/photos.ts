import { type PhotoRow, parsePhotoRow } from "@/lib/intake/parse-photo-row";
import { attachmentId } from "../photos/attachment-id";
import type { KeptPhoto } from "../photos/photo-reading";
import { readPhotoFile } from "../photos/read-photo-file";
import { type ReadColumn, type StagedValue, stagedKind } from "../staging/staged-kind";
import { checkJobOfRows, jobDerived, keepJobs, resolveJobOfRows, storedUnderJob } from "./rows-of-jobs";

interface PhotoWithPicture extends PhotoRow {
  readonly photo: KeptPhoto;
}

const once = (
  name: string,
  type: string,
  value: (row: PhotoWithPicture) => StagedValue,
): ReadColumn<PhotoWithPicture> => ({ name, type, from: "file", use: "once", value });

/** Photos of jobs; each picture is read, and written anew, with its row. */
export const photosKind = stagedKind<PhotoWithPicture>({
  kind: "photos",
  async parse(cells, setting, folder) {
    const read = parsePhotoRow(cells, setting);
    if (!read.ok) return read;
    const picture = await readPhotoFile(folder, read.value.file);
    if (picture.ok) return { ok: true, value: { ...read.value, photo: picture.photo } };
    return {
      ok: false,
      problems: [{ column: "file", value: read.value.file, problem: picture.problem, fix: picture.fix }],
    };
  },
  columns: [
    { name: "job_number", type: "text", from: "job_number", use: "help", value: (row) => row.jobNumber },
    { name: "subject", type: "text", from: "subject", use: "value", value: (row) => row.subject },
    { name: "caption", type: "text", from: "caption", use: "value", value: (row) => row.caption },
    { name: "taken_at", type: "timestamptz", from: "taken_at", use: "value", value: (row) => row.takenAt },
    once("attachment_id", "bigint", ({ photo, jobNumber }) =>
      attachmentId({ receivedSha256: photo.receivedSha256, jobNumber }),
    ),
    once("media_type", "text", () => "image/jpeg"),
    once("width", "integer", ({ photo }) => photo.width),
    once("height", "integer", ({ photo }) => photo.height),
    once("received_sha256", "text", ({ photo }) => photo.receivedSha256),
    once("stored_sha256", "text", ({ photo }) => photo.storedSha256),
    once("stored_bytes", "integer", ({ photo }) => photo.content.length),
    once("content", "bytea", ({ photo }) => `\\x${photo.content.toString("hex")}`),
  ],
  derived: jobDerived,
  target: {
    table: "attachments",
    key: ["unit_id", "job_id", "attachment_id"],
    storedKey: storedUnderJob,
    onInsert: {},
    notRestored: ["content"],
  },
  named: { column: "file", noun: "photo" },
  resolve: resolveJobOfRows,
  check: checkJobOfRows,
  finish: keepJobs,
  recounts: "nothing",
});
