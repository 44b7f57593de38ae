import type { PhotoSubject } from "@/lib/domain/job";
import type { SheetAnswer } from "@/lib/sheets/sheet-answer";
import { loadKeptAnswers, loadKeptDraft, loadKeptPhotos, loadOutbox } from "./device-store";

export interface PhotoOnSheet {
  readonly id: string;
  readonly check: string | undefined;
  readonly subject: PhotoSubject;
}

export interface FromServer {
  /** Who opened the page, by their number here; what is made on it is sent under that name only. */
  readonly person: string;
  readonly answers: readonly SheetAnswer[];
  readonly photos: readonly PhotoOnSheet[];
}

/** What the server had and what the device has of a job, each once. */
export async function readDevice(job: string, server: Omit<FromServer, "person">) {
  const [kept, pictures, waiting, draft] = await Promise.all([
    loadKeptAnswers(job),
    loadKeptPhotos(job),
    loadOutbox(),
    loadKeptDraft(job),
  ]);
  const all = [...server.answers, ...kept.map(({ answer }) => answer)];
  const stoodFor = new Set(all.flatMap(({ standsFor = [] }) => standsFor)); // the server may not have heard of that yet
  const answers = new Map(all.filter(({ id }) => !stoodFor.has(id)).map((each) => [each.id, each]));
  const photos = new Map<string, PhotoOnSheet>();
  for (const { id, subject, check } of [...server.photos, ...pictures])
    photos.set(id, { id, subject: subject as PhotoSubject, check }); // the device stores what this page put there
  return {
    answers: [...answers.values()].sort((a, b) => a.sequence - b.sequence || (a.id < b.id ? -1 : 1)),
    photos: [...photos.values()],
    waiting: waiting.filter((item) => item.job === job),
    draft: draft ?? {},
  };
}
