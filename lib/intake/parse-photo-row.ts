// Photos of a job, one a row; the pictures lie beside the file.
import { z } from "zod";
import { type PhotoSubject, photoSubjectKeys } from "@/lib/domain/job";
import { type CellType, optional, required } from "./cell";
import { instantCell } from "./cell-days";
import { identifier, note, oneOf } from "./cell-texts";
import type { IntakeSetting } from "./intake-setting";
import type { Parsed } from "./parsed";
import { type Cells, readRow } from "./row-problems";

/** A path below the folder of the file: no way up, no root, no drive. */
const pictureFile: CellType<string> = {
  json: { maxLength: 300 },
  example: "photos/1042-plate.jpg",
  read(text) {
    const path = text.trim().replaceAll("\\", "/");
    const steps = path.split("/");
    if (path.length > 300) return { problem: "is longer than 300 characters", fix: "Use shorter names." };
    if (
      path.startsWith("/") ||
      path.includes(":") ||
      steps.some((step) => step === "" || step === "." || step === "..")
    )
      return {
        problem: "does not name a file below the folder of this CSV",
        fix: "Put the picture beside the CSV and write its name, such as photos/1042-plate.jpg.",
      };
    return { value: path };
  },
};

export const photoRow = z.object({
  job_number: required(identifier, "Number of a job that is on file."),
  subject: required(oneOf(photoSubjectKeys), "What the picture shows."),
  file: required(pictureFile, "The picture, relative to the folder of this file; JPEG, PNG or WebP, at most 15 MB."),
  caption: optional(note, "What to say under it."),
  taken_at: optional(instantCell, "When it was taken, with the offset from UTC."),
});

export interface PhotoRow {
  readonly jobNumber: string;
  readonly subject: PhotoSubject;
  readonly file: string;
  readonly caption: string;
  readonly takenAt: string | undefined;
}

/** One row of photos.csv in; where the picture is and what it shows, or every problem of the row, out. */
export function parsePhotoRow(cells: Cells, setting: IntakeSetting): Parsed<PhotoRow> {
  return readRow(photoRow, cells, setting, {
    words: [],
    contradictions: () => [],
    value: (row) => ({
      jobNumber: row.job_number,
      subject: row.subject,
      file: row.file,
      caption: row.caption ?? "",
      takenAt: row.taken_at,
    }),
  });
}
