"use client";
import { useCallback, useEffect, useRef, useState } from "react";
import type { PhotoSubject } from "@/lib/domain/job";
import type { SheetAnswer } from "@/lib/sheets/sheet-answer";
import { forgetJob, keepOnDevice, type OutboxItem, removeFromDevice } from "./device-store";
import { forgetPage, keepPage, keepShell } from "./keep-shell";
import { localTime } from "./local-time";
import { newId } from "./new-id";
import { type SentState, sendAgain, sendOutbox } from "./outbox";
import { type FromServer, readDevice } from "./read-device";
import { sendItem } from "./send-item";

export interface SheetDevice extends Omit<FromServer, "person"> {
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
  /** What was concluded before the page was left, as the device kept it. */
  readonly keptDraft: Readonly<Record<string, unknown>>;
  readonly answer: (given: Omit<SheetAnswer, "id" | "sequence" | "at">) => Promise<boolean>;
  readonly photograph: (photo: {
    readonly subject: PhotoSubject;
    readonly check: string | undefined;
    readonly file: File;
  }) => Promise<boolean>;
  readonly close: (body: Readonly<Record<string, unknown>>) => Promise<boolean>;
  /** Keeps what is concluded so far; without room it is kept on the screen only. */
  readonly keepDraft: (draft: Readonly<Record<string, unknown>>) => void;
  /** What becomes of something that the server refused. */
  readonly settle: (item: OutboxItem, how: "send again" | "leave out") => Promise<void>;
}

const noRoom =
  "This phone could not keep it, since its store is full or closed, and the server could not be reached either. Make room or find signal, stay on this step and try again. Nothing else is lost.";
const keepsNothing =
  "This browser keeps nothing on the phone: without signal, answers would be lost. They go to the server one by one.";

/** Answers and photos of one job, on the device first and then on the server. */
export function useSheetDevice(job: string, server: FromServer): SheetDevice {
  const [answers, setAnswers] = useState(server.answers);
  const [photos, setPhotos] = useState(server.photos);
  const [isReady, setReady] = useState(false);
  const [sent, setSent] = useState<SentState>({ kind: "all sent", at: undefined });
  const [problem, setProblem] = useState<string>();
  const [isClosed, setClosed] = useState(false);
  const [isClosing, setClosing] = useState(false);
  const [keptDraft, setKeptDraft] = useState<SheetDevice["keptDraft"]>({});
  const [opensAlone, setOpensAlone] = useState(false);
  const order = useRef(0);
  /** By step, ids of answers that found no room here and of which the server said nothing: it may have them. */
  const unsure = useRef(new Map<string, readonly string[]>());

  const whenClosed = useCallback(() => {
    setClosed(true);
    setClosing(false);
    void forgetJob(job)
      .catch(() => {}) // a store that cannot be opened holds nothing to forget
      .then(() => forgetPage(`/sheet/job/${encodeURIComponent(job)}`));
  }, [job]);
  const send = useCallback(async () => {
    const state = await sendOutbox((item) => {
      if (item.job === job && item.load.kind === "close") whenClosed();
    }).catch((): SentState => ({ kind: "waiting", items: 1, why: "the server did not answer" }));
    if (state.kind === "refused" && state.refused.some((item) => item.job === job && item.load.kind === "close"))
      setClosing(false);
    setSent(state.kind === "all sent" ? { kind: "all sent", at: clock(new Date()) } : state);
  }, [job, whenClosed]);

  useEffect(() => {
    const before = { answers: server.answers, photos: server.photos };
    void readDevice(job, before)
      .then(({ answers: all, photos: pictures, waiting, draft }) => {
        setAnswers(all);
        setPhotos(pictures);
        setKeptDraft(draft);
        setClosing(waiting.some(({ load, refused }) => load.kind === "close" && refused === undefined));
        order.current = Math.max(0, ...waiting.map((item) => item.order));
      })
      .catch(() => setProblem(keepsNothing))
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

  /** On the device and then sent; where the device has no room, kept only if the server takes it at once. */
  async function keep(item: OutboxItem, more: Parameters<typeof keepOnDevice>[0]): Promise<"kept" | "taken" | "lost"> {
    try {
      await keepOnDevice([...more, { store: "outbox", value: item }]);
      setProblem(undefined);
      setSent({ kind: "waiting", items: 1, why: "sending" });
      void send();
      return "kept";
    } catch {
      // Before a closing goes everything else must have gone, which a full device cannot promise.
      const outcome = item.load.kind === "close" && sent.kind !== "all sent" ? undefined : await sendItem(item);
      setProblem(outcome?.kind === "sent" ? undefined : outcome?.kind === "refused" ? outcome.sentence : noRoom);
      if (outcome?.kind !== "sent") return "lost";
      await keepPage(); // only the server has it: without signal the page must know of it when it opens again
      return "taken";
    }
  }
  const itemOf = (id: string, load: OutboxItem["load"]): OutboxItem => {
    order.current += 1;
    return { id, job, person: server.person, order: order.current, load, refused: undefined };
  };

  return {
    answers,
    photos,
    isReady,
    sent,
    opensAlone,
    problem,
    isClosed,
    isClosing,
    keptDraft,
    async answer(given) {
      const sequence = Math.max(0, ...answers.map((each) => each.sequence)) + 1;
      const step = `${given.check} ${given.time}`;
      const before = unsure.current.get(step) ?? [];
      const standsFor = before.length === 0 ? {} : { standsFor: before };
      const made: SheetAnswer = { ...given, id: newId(), sequence, at: localTime(new Date()), ...standsFor };
      const own = { store: "answers" as const, value: { id: made.id, job, answer: made } };
      const kept = await keep(itemOf(made.id, { kind: "answer", answer: made }), [own]);
      if (kept === "lost") unsure.current.set(step, [...before, made.id]);
      else setAnswers([...answers, made]);
      return kept !== "lost";
    },
    async photograph({ subject, check, file }) {
      const id = newId();
      const load = { kind: "photo" as const, subject, check, bytes: await file.arrayBuffer(), type: file.type };
      const kept = await keep(itemOf(id, load), [{ store: "photos", value: { id, job, subject, check } }]);
      if (kept !== "lost") setPhotos([...photos, { id, subject, check }]);
      return kept !== "lost";
    },
    async close(body) {
      const kept = await keep(itemOf(newId(), { kind: "close", body }), []);
      if (kept === "kept") setClosing(true);
      if (kept === "taken") whenClosed();
      return kept !== "lost";
    },
    keepDraft(draft) {
      void keepOnDevice([{ store: "drafts", value: { id: job, job, draft } }]).catch(() => {}); // it stays on the screen
    },
    async settle(item, how) {
      if (how === "send again") await sendAgain(item).catch(() => setProblem(noRoom));
      else {
        for (const store of ["outbox", "answers", "photos"] as const) await removeFromDevice(store, [item.id]);
        if (item.job === job) {
          setAnswers(answers.filter(({ id }) => id !== item.id));
          setPhotos(photos.filter(({ id }) => id !== item.id));
        }
      }
      await send();
    },
  };
}

function clock(now: Date): string {
  return `${String(now.getHours()).padStart(2, "0")}:${String(now.getMinutes()).padStart(2, "0")}`;
}
