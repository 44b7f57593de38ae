import { z } from "zod";
import type { NewAttachment } from "@/db/writes/photos/add-attachment";
import { largestPhotoBytes, longestCaption } from "@/db/writes/photos/photo-limits";
import { pictureKind } from "@/db/writes/photos/picture-kind";
import { readPaper } from "@/db/writes/photos/read-paper";
import { reencodePhoto } from "@/db/writes/photos/reencode-photo";
import { type PhotoSubject, photoSubjectKeys } from "@/lib/domain/job";

type PhotoForm =
  | { readonly ok: true; readonly photo: Omit<NewAttachment, "jobNumber"> }
  | { readonly ok: false; readonly status: 400 | 413 | 422; readonly sentence: string };

const fields = z.object({
  subject: z.enum(photoSubjectKeys, { error: "Choose what the picture shows." }),
  caption: z
    .string()
    .trim()
    .max(longestCaption, { error: `The caption is longer than ${longestCaption} characters.` })
    .transform((text) => text.replaceAll(/\p{Cc}+/gu, " ")),
});

/** These are papers, and may come as a PDF. */
const paperSubjects: ReadonlySet<PhotoSubject> = new Set(["receipt", "part_invoice"]);
/** What a form adds around its file. */
const aroundFile = 100_000;

/** One photo or paper out of a form; or the sentence that says what is wrong with it. */
export async function readPhotoForm(request: Request): Promise<PhotoForm> {
  const tooLarge = refuse(413, `The file is larger than ${largestPhotoBytes / 1_000_000} MB. Send a smaller one.`);
  if (Number(request.headers.get("content-length") ?? 0) > largestPhotoBytes + aroundFile) return tooLarge;
  const form = await formOf(request);
  if (form === "too large") return tooLarge;
  const file = form?.get("file");
  if (form === undefined || !(file instanceof File) || file.name === "") return refuse(400, "Choose a photo first.");
  const read = fields.safeParse({ subject: form.get("subject"), caption: form.get("caption") ?? "" });
  if (!read.success) return refuse(400, read.error.issues.map((issue) => issue.message).join(" "));
  const { subject, caption } = read.data;
  const received = Buffer.from(await file.arrayBuffer());
  if (paperSubjects.has(subject) && pictureKind(received) === "pdf") {
    const paper = readPaper(received);
    return paper.ok ? { ok: true, photo: { subject, caption, file: paper.paper } } : refuseFile(file, paper);
  }
  const picture = await reencodePhoto(received);
  return picture.ok ? { ok: true, photo: { subject, caption, file: picture.photo } } : refuseFile(file, picture);
}

/** Counts while it reads: what a request says of its own length is not believed. */
async function formOf(request: Request): Promise<FormData | "too large" | undefined> {
  if (request.body === null) return undefined;
  let bytes = 0;
  let isTooLarge = false;
  const counted = request.body.pipeThrough(
    new TransformStream<Uint8Array, Uint8Array>({
      transform(chunk, controller) {
        bytes += chunk.length;
        isTooLarge = bytes > largestPhotoBytes + aroundFile;
        if (isTooLarge) controller.error(new RangeError("too large"));
        else controller.enqueue(chunk);
      },
    }),
  );
  const headers = { "Content-Type": request.headers.get("content-type") ?? "" };
  try {
    return await new Response(counted, { headers }).formData();
  } catch {
    return isTooLarge ? "too large" : undefined;
  }
}

/** The name is the sender's: shown, cut, never used for anything else. */
function refuseFile(file: File, { problem, fix }: { readonly problem: string; readonly fix: string }): PhotoForm {
  const name = file.name.replaceAll(/\p{Cc}/gu, " ").slice(-80);
  return refuse(422, `${name} ${problem}. ${fix}`);
}

function refuse(status: 400 | 413 | 422, sentence: string): PhotoForm {
  return { ok: false, status, sentence };
}
