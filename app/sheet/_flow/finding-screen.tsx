import { type Cause, causeKeys, causes } from "@/lib/domain/cause";
import { components } from "@/lib/domain/components";
import { failureModes } from "@/lib/domain/failure-modes";
import { type PhotoSubject, photoSubjects } from "@/lib/domain/job";
import { entriesFor } from "@/lib/evidence/entries";
import type { EvidenceCheck } from "@/lib/evidence/evidence-check";
import { capitalised } from "@/lib/format/capitalised";
import type { Walk } from "@/lib/sheets/walk";
import type { SheetDevice } from "../_device/use-sheet-device";
import type { ClosingDraft } from "./closing-draft";
import { PartFields } from "./part-fields";
import { PathTaken } from "./path-taken";
import { PhotoInput } from "./photo-input";
import { ReturnQuestion } from "./return-question";
import styles from "./sheet.module.css";
import type { SheetView } from "./sheet-view";
import { Choose, Type } from "./small-fields";
import { StepBar } from "./step-bar";
import { verdictTitle, verdictWhy } from "./verdict-words";

interface Props {
  readonly view: SheetView;
  readonly walked: Walk;
  readonly device: SheetDevice;
  readonly draft: ClosingDraft;
  readonly evidence: EvidenceCheck;
  readonly onChange: (part: Partial<ClosingDraft>) => void;
  readonly onReview: () => void;
  readonly onBack: () => void;
}

/** What the readings show, for the technician to agree with or to say otherwise, and what went into the machine. */
export function FindingScreen({ view, walked, device, draft, evidence, onChange, onReview, onBack }: Props) {
  const why = verdictWhy(walked.verdict);
  const isPart = causes[draft.cause].kind === "component";
  return (
    <>
      <h2 className={styles.title} tabIndex={-1}>
        {verdictTitle(walked.verdict)}
      </h2>
      {why !== undefined && <p>{capitalised(why)}.</p>}
      <Choose
        label="Cause"
        value={draft.cause}
        choices={causeKeys.map((key) => [key, causes[key].name])}
        onChoose={(cause) => onChange({ cause: cause as Cause })}
      />
      {isPart && (
        <>
          <Choose
            label="Component that failed"
            value={draft.component}
            none="Choose"
            choices={components
              .filter(
                ({ productTypes, partOf }) => partOf !== undefined && productTypes.includes(view.unit.productType),
              )
              .map(({ key, name }) => [key, name])}
            onChoose={(component) => onChange({ component, failureMode: "" })}
          />
          <Choose
            label="How it failed"
            value={draft.failureMode}
            none="Not said"
            choices={modesFor(view, draft.component)}
            onChoose={(failureMode) => onChange({ failureMode })}
          />
          <PartFields parts={draft.parts} onChange={(parts) => onChange({ parts })} />
        </>
      )}
      {wantedPhotos(evidence).map((subject) => (
        <PhotoInput key={subject} subject={subject} check={undefined} device={device} />
      ))}
      <div className={styles.fields}>
        <Type label="Minutes worked" value={draft.minutes} onType={(minutes) => onChange({ minutes })} short />
        <Type label="Visits" value={draft.visits} onType={(visits) => onChange({ visits })} short />
      </div>
      <ReturnQuestion view={view} draft={draft} onChange={onChange} />
      <PathTaken walked={walked} />
      <StepBar onBack={onBack} main={{ words: "Review", onClick: onReview }} />
    </>
  );
}

/** Modes that the rules of the component know, else all. */
function modesFor({ unit }: SheetView, component: string): readonly (readonly [string, string])[] {
  const known = new Set(entriesFor(unit.productType, component).flatMap((entry) => entry.failureModes));
  return failureModes.filter(({ key }) => known.size === 0 || known.has(key)).map(({ key, name }) => [key, name]);
}

/** Pictures that the evidence still lacks, the first of each choice. */
function wantedPhotos({ items }: EvidenceCheck): readonly PhotoSubject[] {
  const wanted = items
    .filter(({ key, state }) => state === "missing" && (key.startsWith("photo:") || key === "part_labels"))
    .flatMap(({ key }) => (key === "part_labels" ? ["part_labels"] : key.slice("photo:".length).split("+").slice(0, 1)))
    .filter((subject): subject is PhotoSubject => Object.hasOwn(photoSubjects, subject));
  return [...new Set<PhotoSubject>(["plate", ...wanted])];
}
