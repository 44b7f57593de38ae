"use client";
import { useState } from "react";
import type { OwnCheck } from "@/lib/domain/own-check";
import type { ProductType } from "@/lib/domain/product-type";
import type { ReadingOutcome } from "@/lib/domain/reading";
import { holds } from "@/lib/evidence/condition";
import { judgeReadings } from "@/lib/evidence/current-readings";
import { possibleRanges } from "@/lib/evidence/expected-range";
import { answeredReadings } from "@/lib/sheets/answered-readings";
import type { Proposal } from "@/lib/sheets/next-check";
import type { SheetAnswer, SkipReason } from "@/lib/sheets/sheet-answer";
import type { PlanStep } from "@/lib/sheets/visit-plan";
import type { Walk } from "@/lib/sheets/walk";
import type { Settles } from "@/lib/sheets/what-it-settles";
import type { SheetDevice } from "../_device/use-sheet-device";
import { askAbout, type Question } from "./ask-about";
import { AskBack } from "./ask-back";
import { CautionsRead } from "./cautions-read";
import { CodeInput } from "./code-input";
import { Expected } from "./expected";
import { FindingInput } from "./finding-input";
import { HowTaken } from "./how-taken";
import { inOtherUnit, notedBefore } from "./noted-range";
import { NumberInput } from "./number-input";
import { OtherChecks } from "./other-checks";
import { PartChoice } from "./part-choice";
import { PhotoInput } from "./photo-input";
import { emptyDraft, judgedAs, readingOf } from "./reading-draft";
import styles from "./sheet.module.css";
import type { SheetView } from "./sheet-view";
import { SkipPanel } from "./skip-panel";
import { StepBar } from "./step-bar";
import { StepBefore } from "./step-before";
import { StepHead } from "./step-head";

/** What a single step needs of its job. */
export interface StepContext extends Pick<SheetView, "ranges" | "codes" | "notes"> {
  readonly productType: ProductType;
  /** The company's own checks that the sheets of the job have. */
  readonly own: ReadonlyMap<string, OwnCheck>;
}

interface Props {
  readonly view: StepContext;
  readonly walked: Walk;
  readonly device: SheetDevice;
  readonly step: PlanStep;
  /** Which reading of the step, from 1. */
  readonly time: number;
  readonly proposal: Proposal;
  readonly settles?: Settles;
  readonly onDone: () => void;
  /** The take is kept and the step is read again: it must stay, though it has been answered. */
  readonly onAgain: () => void;
  readonly onBack: (() => void) | undefined;
  readonly onOther: (check: string) => void;
}

/** One measuring step. Keyed by its step, so that each begins empty. */
export function StepScreen({
  view,
  walked,
  device,
  step,
  time,
  proposal,
  settles,
  onDone,
  onAgain,
  onBack,
  onOther,
}: Props) {
  const { check } = step;
  const own = view.own.get(check.key);
  const [draft, setDraft] = useState(() => ({
    ...emptyDraft(check, commandedSoFar(walked)),
    ...notedBefore(check, device.answers),
  }));
  const [question, setQuestion] = useState<Question>();
  const [skipping, setSkipping] = useState(false);
  const change = (part: Partial<typeof draft>) => setDraft({ ...draft, ...part });
  const reading = readingOf(draft, { kind: "no_reading" }, check, time);
  const context = { ranges: view.ranges, productType: view.productType };
  const [onlyRange, ...ofOtherParts] = possibleRanges(
    judgedAs({ ...reading, outcome: { kind: "number", value: 0, unit: draft.unit } }, check, own),
    check,
    context,
  );
  const range = ofOtherParts.length > 0 ? undefined : onlyRange;
  const asksWords = Object.keys(check.findings).length > 0;
  const isCode = check.modes[0] === "fault_code";
  const isMeasured =
    check.modes.some((mode) => mode !== "observation" && mode !== "fault_code") || check.unit !== undefined;

  async function keep(given: SheetAnswer["given"], stay = false) {
    if (stay) onAgain();
    const kept = await device.answer({ check: check.key, time, given, note: "" });
    setQuestion(undefined);
    if (!kept) return;
    if (stay) change({ text: "" });
    else onDone();
  }
  function take(outcome: ReadingOutcome, over = draft) {
    const taken = readingOf(over, outcome, check, time);
    const before = answeredReadings(device.answers, { technician: undefined, own: view.own });
    const judgement = judgeReadings([...before, judgedAs(taken, check, own)], view.ranges, view.productType).at(
      -1,
    )?.judgement;
    const asked = askAbout({ taken, judgement, range, isSure: over !== draft });
    if (asked === undefined) void keep(taken);
    else setQuestion({ ...asked, taken });
  }

  return (
    <>
      <StepHead step={step} time={time} />
      <div className={styles.step}>
        <StepBefore step={step} time={time} notes={view.notes} settles={settles} />
        <div className={styles.answer}>
          {check.energy === "live" && (
            <CautionsRead isRead={draft.cautionsRead} onRead={() => change({ cautionsRead: true })} />
          )}
          {step.photo !== undefined && (
            <PhotoInput subject={step.photo} check={check.key} device={device} before={isCode} />
          )}
          {isMeasured && <Expected expect={check.expect} range={range} isOfParts={ofOtherParts.length > 0} />}
          {isMeasured && <PartChoice check={check} ranges={view.ranges} draft={draft} onChange={change} />}
          {question === undefined ? (
            <fieldset disabled={!draft.cautionsRead} className="bare">
              <legend className="only-heard">{check.name}</legend>
              {isCode && <CodeInput codes={view.codes} onTake={take} />}
              {isMeasured && <NumberInput check={check} draft={draft} range={range} onChange={change} onTake={take} />}
              {asksWords && !isCode && <FindingInput check={check} onTake={take} />}
              {isMeasured && <HowTaken check={check} draft={draft} onChange={change} />}
            </fieldset>
          ) : (
            <AskBack
              question={question}
              onKeep={() => void keep(question.taken)}
              onAgain={() => void keep(question.taken, true)}
              onInstead={({ unit, text }) => {
                setQuestion(undefined);
                const over = { ...draft, ...(unit === undefined ? {} : inOtherUnit(draft, unit)), text };
                setDraft(over);
                take({ kind: "number", value: Number(over.text), unit: over.unit }, over);
              }}
            />
          )}
          <OtherChecks proposal={proposal} step={step} onChoose={onOther} />
        </div>
      </div>
      <StepBar
        onBack={onBack}
        onSkip={() => setSkipping(!skipping)}
        isSkipping={skipping}
        next={
          (isMeasured || isCode) && question === undefined
            ? { form: "reading", disabled: !draft.cautionsRead }
            : undefined
        }
      >
        {device.problem !== undefined && (
          <p role="alert" className={styles.problem}>
            {device.problem}
          </p>
        )}
        {skipping && <SkipPanel onSkip={(why: SkipReason) => void keep({ kind: "skip", reason: why })} />}
      </StepBar>
    </>
  );
}

/** The drain step that was called for in the diagnostic cycle holds for the voltages after it, until somebody says otherwise. */
function commandedSoFar({ current }: Walk): boolean | undefined {
  if (holds({ is: "word", check: "drain_command", words: ["commanded"] }, current) !== undefined) return true;
  return undefined;
}
