"use client";
import { useState } from "react";
import type { AskLine } from "@/db/queries/sheet-lists";
import type { ProductType } from "@/lib/domain/product-type";
import type { ExpectedRange } from "@/lib/domain/reading";
import { checkOf } from "@/lib/evidence/checks";
import type { SheetAnswer } from "@/lib/sheets/sheet-answer";
import { planStepOf } from "@/lib/sheets/visit-plan";
import { walk } from "@/lib/sheets/walk";
import { useSheetDevice } from "../../_device/use-sheet-device";
import { PhotoInput } from "../../_flow/photo-input";
import { RefusedItems } from "../../_flow/refused-items";
import { SentLine } from "../../_flow/sent-line";
import styles from "../../_flow/sheet.module.css";
import { type StepContext, StepScreen } from "../../_flow/step-screen";
import { answerAsked } from "./actions";

interface Props {
  readonly jobNumber: string;
  /** Who opened the page, by their number here. */
  readonly person: string;
  readonly productType: ProductType;
  readonly asks: readonly AskLine[];
  readonly answers: readonly SheetAnswer[];
  readonly ranges: readonly ExpectedRange[];
  readonly notes: readonly string[];
}

/** Each thing that is asked: its picture or its check, then whether it is given or cannot be had. */
export function AskedFlow({ jobNumber, person, productType, asks, answers, ranges, notes }: Props) {
  const device = useSheetDevice(jobNumber, { person, answers, photos: noPhotos });
  const [doing, setDoing] = useState<string>();
  const step = doing === undefined ? undefined : planStepOf(doing);
  if (!device.isReady) return <p>Reading what this phone holds …</p>;
  if (step !== undefined) {
    const plan = { productType, symptom: undefined, sheets: [], steps: [step], entries: [] };
    return (
      <div className={styles.flow}>
        <SentLine sent={device.sent} />
        <StepScreen
          view={{ ranges, productType, codes: [], notes, own: noOwn }}
          walked={walk(plan, device.answers, ranges)}
          device={device}
          step={step}
          time={1}
          proposal={{ kind: "done" }}
          onDone={() => setDoing(undefined)}
          onAgain={() => {}}
          onBack={() => setDoing(undefined)}
          onOther={() => {}}
        />
      </div>
    );
  }
  return (
    <div className={styles.flow}>
      <SentLine sent={device.sent} />
      <RefusedItems device={device} jobNumber={jobNumber} />
      {asks.map((ask) => (
        <section key={ask.item} id={ask.item} className={styles.path}>
          <h2>{ask.label}</h2>
          {ask.subject !== undefined && <PhotoInput subject={ask.subject} check={undefined} device={device} />}
          {ask.check !== undefined && (
            <button type="button" className={styles.choice} onClick={() => setDoing(ask.check)}>
              Do it: {checkOf(ask.check)?.name ?? ask.check}
            </button>
          )}
          <Answer jobNumber={jobNumber} item={ask.item} />
        </section>
      ))}
    </div>
  );
}

const noPhotos = [] as const;
const noOwn: StepContext["own"] = new Map();

function Answer({ jobNumber, item }: { readonly jobNumber: string; readonly item: string }) {
  return (
    <form action={answerAsked} className={styles.choices}>
      <input type="hidden" name="job" value={jobNumber} />
      <input type="hidden" name="item" value={item} />
      <label>
        Note for the desk <input type="text" name="note" maxLength={500} className={styles.wide} autoComplete="off" />
      </label>
      <button type="submit" name="answer" value="given" className={styles.choice}>
        It is given
      </button>
      <button type="submit" name="answer" value="cannot be had" className={styles.choice}>
        It cannot be had
      </button>
    </form>
  );
}
