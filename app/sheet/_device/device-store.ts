// What the device holds until the server has answered: readings and photos under ids made here. No name, address or
// telephone number is ever given to it. IndexedDB as every browser has it.
import type { SheetAnswer } from "@/lib/sheets/sheet-answer";

export interface OutboxItem {
  readonly id: string;
  readonly job: string;
  /** Counted per device: things are sent in the order in which they were made. */
  readonly order: number;
  readonly load: OutboxLoad;
  /** Who made it, by their number here: it is sent under nobody else's name. Items of before people signed in have none. */
  readonly person?: string;
  /** What the server said where it will not take the item; it stays, so that somebody can see it. */
  readonly refused: string | undefined;
}

export type OutboxLoad =
  | { readonly kind: "answer"; readonly answer: SheetAnswer }
  | {
      readonly kind: "photo";
      readonly subject: string;
      readonly check: string | undefined;
      readonly bytes: ArrayBuffer;
      readonly type: string;
    }
  | { readonly kind: "close"; readonly body: Readonly<Record<string, unknown>> };

/** An answer that stays on the device until its job is closed, so that the sheet can be gone on with without signal. */
export interface KeptAnswer {
  readonly id: string;
  readonly job: string;
  readonly answer: SheetAnswer;
}

export interface KeptPhoto {
  readonly id: string;
  readonly job: string;
  readonly subject: string;
  readonly check: string | undefined;
}

/** What the technician concluded and has not closed with yet. The complaint is never in it: it may name the customer. */
export interface KeptDraft {
  /** The job's number. */
  readonly id: string;
  readonly job: string;
  readonly draft: Readonly<Record<string, unknown>>;
}

const stores = ["outbox", "answers", "photos", "drafts"] as const;
type Store = (typeof stores)[number];

let opened: Promise<IDBDatabase> | undefined;

function openStore(): Promise<IDBDatabase> {
  opened ??= new Promise((resolve, reject) => {
    const request = indexedDB.open("ohmsworth-sheet", 2);
    request.onupgradeneeded = () => {
      const known = request.result.objectStoreNames;
      for (const name of stores) if (!known.contains(name)) request.result.createObjectStore(name, { keyPath: "id" });
    };
    request.onsuccess = () => {
      const database = request.result;
      // Another tab may bring a newer store, and a browser may close it by itself: it is opened anew at the next use.
      database.onversionchange = () => forgetOpened(database);
      database.onclose = () => forgetOpened(database);
      resolve(database);
    };
    request.onblocked = () => reject(new Error("Another tab holds an older store open. Close the other tabs."));
    request.onerror = () => reject(request.error ?? new Error("The store of this browser cannot be opened."));
  });
  opened.catch(() => {
    opened = undefined;
  });
  return opened;
}

function forgetOpened(database: IDBDatabase): void {
  database.close();
  opened = undefined;
}

/** Puts several things in at once: all are on the device when it resolves, or none. */
export async function keepOnDevice(items: readonly { readonly store: Store; readonly value: object }[]): Promise<void> {
  const database = await openStore();
  await new Promise<void>((resolve, reject) => {
    const work = database.transaction([...new Set(items.map(({ store }) => store))], "readwrite");
    try {
      for (const { store, value } of items) work.objectStore(store).put(value);
    } catch (error) {
      work.abort(); // what was put before it must not stay alone
      return reject(error instanceof Error ? error : new Error("This device did not keep it."));
    }
    work.oncomplete = () => resolve();
    work.onabort = () => reject(work.error ?? new Error("This device did not keep it."));
  });
}

export async function removeFromDevice(store: Store, ids: readonly string[]): Promise<void> {
  const database = await openStore();
  await new Promise<void>((resolve, reject) => {
    const work = database.transaction(store, "readwrite");
    for (const id of ids) work.objectStore(store).delete(id);
    work.oncomplete = () => resolve();
    work.onabort = () => reject(work.error ?? new Error("This device did not let go of it."));
  });
}

export async function loadOutbox(): Promise<readonly OutboxItem[]> {
  const items = await all<OutboxItem>("outbox");
  return items.sort((a, b) => a.order - b.order);
}

export async function loadKeptAnswers(job: string): Promise<readonly KeptAnswer[]> {
  return (await all<KeptAnswer>("answers")).filter((each) => each.job === job);
}

export async function loadKeptPhotos(job: string): Promise<readonly KeptPhoto[]> {
  return (await all<KeptPhoto>("photos")).filter((each) => each.job === job);
}

export async function loadKeptDraft(job: string): Promise<KeptDraft["draft"] | undefined> {
  return (await all<KeptDraft>("drafts")).find((each) => each.job === job)?.draft;
}

/** Forgets everything of a job but what still waits to be sent. */
export async function forgetJob(job: string): Promise<void> {
  for (const store of ["answers", "photos", "drafts"] as const) {
    const own = (await all<{ id: string; job: string }>(store)).filter((each) => each.job === job);
    await removeFromDevice(
      store,
      own.map(({ id }) => id),
    );
  }
}

async function all<Row>(store: Store): Promise<Row[]> {
  const database = await openStore();
  return await new Promise<Row[]>((resolve, reject) => {
    const request = database.transaction(store).objectStore(store).getAll();
    request.onsuccess = () => resolve(request.result as Row[]); // the store holds what was put in above
    request.onerror = () => reject(request.error ?? new Error("The store of this browser cannot be read."));
  });
}
