"use client";
import { useEffect, useMemo, useRef, useState } from "react";
import { symptomOf } from "@/lib/domain/symptoms";
import { checkEvidence } from "@/lib/evidence/check-evidence";
import { composedStory } from "@/lib/sheets/composed-story";
import { nextCheck } from "@/lib/sheets/next-check";
import { ownChecksOf } from "@/lib/sheets/sheet";
import { visitPlan } from "@/lib/sheets/visit-plan";
import { walk } from "@/lib/sheets/walk";
import { whatItSettles } from "@/lib/sheets/what-it-settles";
import { type SheetDevice, useSheetDevice } from "../_device/use-sheet-device";
import { type ClosingDraft, centsOf, closingFrom, closingProblems, recordOf } from "./closing-draft";
import { FindingScreen } from "./finding-screen";
import { draftFromDevice, draftToKeep } from "./kept-draft";
import { PathTaken } from "./path-taken";
import { RefusedItems } from "./refused-items";
import { ReviewScreen } from "./review-screen";
import { SentLine } from "./sent-line";
import styles from "./sheet.module.css";
import type { SheetView } from "./sheet-view";
import { StepScreen } from "./step-screen";
import { complaintWaits, sendComplaint, useComplaint } from "./use-complaint";

type Screen =
  /** The proposed check, or the one that was chosen instead. */
  | { readonly kind: "step"; readonly check: string | undefined; readonly time?: number }
  | { readonly kind: "finding" }
  | { readonly kind: "review" };

/** The sheet of one job on a phone: one step a screen, then the finding, then everything once more before it is closed. */
export function SheetFlow({ view }: { readonly view: SheetView }) {
  const device = useSheetDevice(view.jobNumber, view);
  const [screen, setScreen] = useState<Screen>({ kind: "step", check: undefined });
  const [edited, setEdited] = useState<Partial<ClosingDraft>>({});
  const [problems, setProblems] = useState<readonly string[]>([]);
  const plan = useMemo(
    () => visitPlan({ productType: view.unit.productType, symptom: view.symptom, sheets: view.sheets }),
    [view],
  );
  const walked = useMemo(() => walk(plan, device.answers, view.ranges), [plan, device.answers, view.ranges]);
  const proposal = useMemo(() => nextCheck(plan, walked, view.basis), [plan, walked, view.basis]);
  const complaint = useComplaint(view.jobNumber);
  const draft: ClosingDraft = { ...closingFrom(walked, view), ...draftFromDevice(device.keptDraft), ...edited };
  const composed = composedStory({
    complaint: complaint ?? "",
    symptom: view.symptom,
    verdict: walked.verdict,
    current: walked.current,
    partLines: recordOf(view, device, draft).partLines,
  });
  const story = {
    complaint: draft.complaint ?? composed.complaint,
    causeNote: draft.causeNote ?? composed.causeNote,
    correction: draft.correction ?? composed.correction,
  };
  const evidence = checkEvidence(recordOf(view, device, { ...draft, ...story }), view.ranges);
  const change = (part: Partial<ClosingDraft>) => {
    const next = { ...edited, ...part };
    setEdited(next);
    device.keepDraft(draftToKeep({ ...draftFromDevice(device.keptDraft), ...next }));
  };
  const chosen = screen.kind === "step" ? screen.check : undefined;
  const step =
    chosen === undefined
      ? proposal.kind === "next"
        ? proposal.step
        : undefined
      : plan.steps.find(({ check }) => check.key === chosen);
  const isFinding = screen.kind === "finding" || (screen.kind === "step" && step === undefined);
  const place = `${screen.kind} ${step?.check.key ?? ""} ${isFinding}`;
  useReadFromHeading(device.isReady ? `${place} ${device.answers.length}` : undefined);

  async function close() {
    const found = closingProblems(draft);
    setProblems(found);
    if (found.length > 0) return window.scrollTo(0, 0);
    if (draft.complaint !== undefined && !(await sendComplaint(view.jobNumber, draft.complaint))) {
      setProblems([complaintWaits]);
      return window.scrollTo(0, 0);
    }
    await device.close(closingBody(draft, story));
  }
  if (!device.isReady) return <p>Reading what this phone holds …</p>;
  if (device.isClosed || device.isClosing)
    return <Closed jobNumber={view.jobNumber} isSent={device.isClosed} device={device} />;
  const answered = new Set(walked.path.map(({ answer }) => answer.check)).size;
  const again = screen.kind === "step" ? screen.time : undefined;
  const time =
    step === undefined
      ? 1
      : (again ?? Math.min(step.times, 1 + takenOf(step.check.key, device.answers, chosen !== undefined)));
  const last = walked.path.at(-1)?.answer.check;
  return (
    <div className={styles.flow} id="sheet-flow">
      <p className={styles.progress}>
        {screen.kind === "step" && step !== undefined
          ? `${Math.min(answered + 1, answered + walked.open.length)} of about ${answered + walked.open.length}`
          : screen.kind === "review"
            ? "Last look"
            : "Finding"}{" "}
        · {symptomOf(view.symptom)?.name ?? view.symptom}
      </p>
      <SentLine sent={device.sent} opensAlone={device.opensAlone} />
      <RefusedItems device={device} jobNumber={view.jobNumber} />
      {screen.kind === "review" ? (
        <ReviewScreen
          walked={walked}
          device={device}
          story={story}
          hasComplaint={complaint !== undefined}
          evidence={evidence}
          problems={problems}
          onWrite={change}
          onChangeAnswer={(check) => setScreen({ kind: "step", check })}
          onBack={() => setScreen({ kind: "finding" })}
          onClose={() => void close()}
        />
      ) : isFinding || step === undefined ? (
        <FindingScreen
          view={view}
          walked={walked}
          device={device}
          draft={draft}
          evidence={evidence}
          onChange={change}
          onReview={() => setScreen({ kind: "review" })}
          onBack={() => setScreen({ kind: "step", check: last })}
        />
      ) : (
        <>
          <StepScreen
            key={`${step.check.key} ${time}`}
            view={{ ...view, productType: view.unit.productType, own: ownChecksOf(view.sheets) }}
            walked={walked}
            device={device}
            step={step}
            time={time}
            proposal={proposal}
            settles={whatItSettles(step, plan, walked.current)}
            onDone={() => setScreen({ kind: "step", check: undefined })}
            onAgain={() => setScreen({ kind: "step", check: step.check.key, time })}
            onBack={
              last === undefined || last === step.check.key ? undefined : () => setScreen({ kind: "step", check: last })
            }
            onOther={(check) => setScreen({ kind: "step", check })}
          />
          <PathTaken walked={walked} />
          <button type="button" className={styles.finish} onClick={() => setScreen({ kind: "finding" })}>
            Go to the finding with what there is
          </button>
        </>
      )}
    </div>
  );
}

/** A new screen is read from its heading, with how far it is just above; the first one with the job's number and serial. */
function useReadFromHeading(place: string | undefined) {
  const shown = useRef<string>(undefined);
  useEffect(() => {
    if (place === undefined || place === shown.current) return;
    const isFirst = shown.current === undefined;
    shown.current = place;
    if (isFirst) return;
    document.getElementById("sheet-flow")?.scrollIntoView();
    document.querySelector<HTMLElement>("#sheet-flow h2")?.focus({ preventScroll: true });
  }, [place]);
}

/** Readings already taken of a step; one that is looked at again begins with its first. */
function takenOf(check: string, answers: SheetViewAnswers, again: boolean): number {
  const taken = new Set(answers.filter((answer) => answer.check === check).map(({ time }) => time)).size;
  return again && taken > 0 ? 0 : taken;
}
type SheetViewAnswers = SheetView["answers"];

/** Without the complaint: it may name the customer, and a closing may have to wait on the phone. */
function closingBody(draft: ClosingDraft, story: ReturnType<typeof composedStory>) {
  return {
    causeNote: story.causeNote,
    correction: story.correction,
    cause: draft.cause,
    ...(draft.component === "" ? {} : { component: draft.component }),
    ...(draft.failureMode === "" ? {} : { failureMode: draft.failureMode }),
    ...(draft.callbackOf === "" ? {} : { callbackOf: draft.callbackOf }),
    visits: Number(draft.visits),
    ...(draft.minutes.trim() === "" ? {} : { labourMinutes: Number(draft.minutes) }),
    parts: draft.parts
      .filter(({ partNumber }) => partNumber.trim() !== "")
      .map(({ partNumber, quantity, cost, invoice }) => ({
        partNumber: partNumber.trim(),
        quantity: Number(quantity),
        ...(centsOf(cost) === undefined ? {} : { unitCostCents: centsOf(cost) }),
        ...(invoice.trim() === "" ? {} : { invoiceNumber: invoice.trim() }),
      })),
  };
}

interface ClosedProps {
  readonly jobNumber: string;
  readonly isSent: boolean;
  readonly device: SheetDevice;
}

function Closed({ jobNumber, isSent, device }: ClosedProps) {
  return (
    <div className={styles.flow}>
      <h2 className={styles.title} tabIndex={-1}>
        {isSent ? `Job ${jobNumber} is closed` : `Job ${jobNumber} is closed on this phone`}
      </h2>
      <SentLine sent={device.sent} />
      <RefusedItems device={device} jobNumber={jobNumber} />
      {isSent ? (
        <p>
          It counts from now on. <a href={`/jobs/${encodeURIComponent(jobNumber)}`}>See the job</a>
        </p>
      ) : (
        <p>It is sent as soon as there is signal; keep this page, or open it again then.</p>
      )}
      <p>
        <a href="/sheet">Your other jobs</a>
      </p>
    </div>
  );
}
