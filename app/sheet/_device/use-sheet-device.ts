"use client";
import { useCallback, useEffect, useRef, useState } from "react";
import type { PhotoSubject } from "@/lib/domain/job";
import type { SheetAnswer } from "@/lib/sheets/sheet-answer";
import { forgetJob, keepOnDevice, loadKeptAnswers, loadKeptPhotos, loadOutbox, type OutboxItem } from "./device-store";
import { forgetPage, keepShell } from "./keep-shell";
import { localTime } from "./local-time";
import { newId } from "./new-id";
import { type SentState, sendOutbox } from "./outbox";

export interface PhotoOnSheet {
  readonly id: string;
  readonly check: string | undefined;
  readonly subject: PhotoSubject;
}

interface FromServer {
  readonly answers: readonly SheetAnswer[];
  readonly photos: readonly PhotoOnSheet[];
}

export interface SheetDevice extends FromServer {
  /** False until the device's own store has been read: nothing is asked before. */
  readonly isReady: boolean;
  readonly sent: SentState;
  /** The page and its program are on the device: it opens again without signal. */
  readonly opensAlone: boolean;
  /** What went wrong with keeping on this device; then nothing was kept. */
  readonly problem: string | undefined;
  readonly isClosed: boolean;
  /** Whether closing waits to be sent. */
  readonly isClosing: boolean;
  readonly answer: (given: Omit<SheetAnswer, "id" | "sequence" | "at">) => Promise<boolean>;
  readonly photograph: (photo: {
    readonly subject: PhotoSubject;
    readonly check: string | undefined;
    readonly file: File;
  }) => Promise<boolean>;
  readonly close: (body: Readonly<Record<string, unknown>>) => Promise<boolean>;
}

const noRoom =
  "This device could not keep it: its store is full or closed. Make room, stay on this step and try again. Nothing else is lost.";

/** Answers and photos of one job, on the device first and then on the server. */
export function useSheetDevice(job: string, server: FromServer): SheetDevice {
  const [answers, setAnswers] = useState(server.answers);
  const [photos, setPhotos] = useState(server.photos);
  const [isReady, setReady] = useState(false);
  const [sent, setSent] = useState<SentState>({ kind: "all sent", at: undefined });
  const [problem, setProblem] = useState<string>();
  const [isClosed, setClosed] = useState(false);
  const [isClosing, setClosing] = useState(false);
  const [opensAlone, setOpensAlone] = useState(false);
  const order = useRef(0);

  const send = useCallback(async () => {
    const state = await sendOutbox((item) => {
      if (item.job !== job || item.load.kind !== "close") return;
      setClosed(true);
      setClosing(false);
      void forgetJob(job).then(() => forgetPage(`/sheet/job/${encodeURIComponent(job)}`));
    }).catch((): SentState => ({ kind: "waiting", items: 1, why: "the server did not answer" }));
    setSent(state.kind === "all sent" ? { kind: "all sent", at: clock(new Date()) } : state);
  }, [job]);

  useEffect(() => {
    const before = { answers: server.answers, photos: server.photos };
    void readDevice(job, before)
      .then(({ answers: all, photos: pictures, waiting }) => {
        setAnswers(all);
        setPhotos(pictures);
        setClosing(waiting.some(({ load, refused }) => load.kind === "close" && refused === undefined));
        order.current = Math.max(0, ...waiting.map((item) => item.order));
      })
      .catch(() => setProblem("This browser keeps nothing on the device: without signal, answers would be lost."))
      .finally(() => setReady(true));
    void keepShell(() => setOpensAlone(true));
    void send();
    const again = () => void send();
    const seen = () => document.visibilityState === "visible" && again();
    const timer = setInterval(again, 20_000);
    window.addEventListener("online", again);
    document.addEventListener("visibilitychange", seen);
    return () => {
      clearInterval(timer);
      window.removeEventListener("online", again);
      document.removeEventListener("visibilitychange", seen);
    };
  }, [job, send, server.answers, server.photos]);

  useEffect(() => {
    if (sent.kind === "all sent") return;
    const warn = (event: BeforeUnloadEvent) => event.preventDefault();
    window.addEventListener("beforeunload", warn);
    return () => window.removeEventListener("beforeunload", warn);
  }, [sent.kind]);

  async function keep(items: Parameters<typeof keepOnDevice>[0]): Promise<boolean> {
    try {
      await keepOnDevice(items);
      setProblem(undefined);
      setSent({ kind: "waiting", items: 1, why: "sending" });
      void send();
      return true;
    } catch {
      setProblem(noRoom);
      return false;
    }
  }
  const queued = (id: string, load: OutboxItem["load"]) => ({
    store: "outbox" as const,
    value: { id, job, order: ++order.current, load, refused: undefined } satisfies OutboxItem,
  });

  return {
    answers,
    photos,
    isReady,
    sent,
    opensAlone,
    problem,
    isClosed,
    isClosing,
    async answer(given) {
      const sequence = Math.max(0, ...answers.map((each) => each.sequence)) + 1;
      const made: SheetAnswer = { ...given, id: newId(), sequence, at: localTime(new Date()) };
      const kept = await keep([
        { store: "answers", value: { id: made.id, job, answer: made } },
        queued(made.id, { kind: "answer", answer: made }),
      ]);
      if (kept) setAnswers([...answers, made]);
      return kept;
    },
    async photograph({ subject, check, file }) {
      const id = newId();
      const load = { kind: "photo" as const, subject, check, bytes: await file.arrayBuffer(), type: file.type };
      const kept = await keep([{ store: "photos", value: { id, job, subject, check } }, queued(id, load)]);
      if (kept) setPhotos([...photos, { id, subject, check }]);
      return kept;
    },
    async close(body) {
      const kept = await keep([queued(newId(), { kind: "close", body })]);
      if (kept) setClosing(true);
      return kept;
    },
  };
}

/** What the server had and what the device has, each once. */
async function readDevice(job: string, server: FromServer) {
  const [kept, pictures, waiting] = await Promise.all([loadKeptAnswers(job), loadKeptPhotos(job), loadOutbox()]);
  const answers = new Map([...server.answers, ...kept.map(({ answer }) => answer)].map((each) => [each.id, each]));
  const photos = new Map<string, PhotoOnSheet>();
  for (const { id, subject, check } of [...server.photos, ...pictures])
    photos.set(id, { id, subject: subject as PhotoSubject, check }); // the device stores what this page put there
  return {
    answers: [...answers.values()].sort((a, b) => a.sequence - b.sequence || (a.id < b.id ? -1 : 1)),
    photos: [...photos.values()],
    waiting: waiting.filter((item) => item.job === job),
  };
}

function clock(now: Date): string {
  return `${String(now.getHours()).padStart(2, "0")}:${String(now.getMinutes()).padStart(2, "0")}`;
}
