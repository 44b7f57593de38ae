import type { EvidenceCheck } from "@/lib/evidence/evidence-check";
import type { Story } from "@/lib/sheets/composed-story";
import type { Walk } from "@/lib/sheets/walk";
import type { SheetDevice } from "../_device/use-sheet-device";
import type { ClosingDraft } from "./closing-draft";
import { EvidenceState } from "./evidence-state";
import { PathTaken } from "./path-taken";
import styles from "./sheet.module.css";
import { Write } from "./small-fields";
import { StepBar } from "./step-bar";
import { verdictTitle } from "./verdict-words";

interface Props {
  readonly walked: Walk;
  readonly device: SheetDevice;
  readonly story: Story;
  /** False without signal: then the complaint stays as the desk took it. */
  readonly hasComplaint: boolean;
  readonly evidence: EvidenceCheck;
  readonly problems: readonly string[];
  readonly onWrite: (part: Partial<ClosingDraft>) => void;
  readonly onChangeAnswer: (check: string) => void;
  readonly onBack: () => void;
  readonly onClose: () => void;
}

/** One page before the job is closed: the story, what a claim still lacks, and every answer with a way back to it. */
export function ReviewScreen(props: Props) {
  const { walked, device, story, hasComplaint, evidence, problems, onWrite, onChangeAnswer, onBack, onClose } = props;
  return (
    <>
      <h2 className={styles.title} tabIndex={-1}>
        Review
      </h2>
      <p>{verdictTitle(walked.verdict)}.</p>
      {problems.length > 0 && (
        <div role="alert" className={styles.problem}>
          {problems.map((problem) => (
            <p key={problem}>{problem}</p>
          ))}
        </div>
      )}
      <EvidenceState evidence={evidence} />
      {hasComplaint ? (
        <Write label="Complaint" value={story.complaint} onWrite={(complaint) => onWrite({ complaint })} />
      ) : (
        <p>The complaint stays as the desk took it; it is not kept on this device.</p>
      )}
      <Write label="Cause" value={story.causeNote} onWrite={(causeNote) => onWrite({ causeNote })} />
      <Write label="Correction" value={story.correction} onWrite={(correction) => onWrite({ correction })} />
      <PathTaken walked={walked} onChange={onChangeAnswer} />
      <p>{keptPhotos(device.photos.length)}</p>
      <StepBar onBack={onBack} main={{ words: "Close job", onClick: onClose }}>
        {device.problem !== undefined && (
          <p role="alert" className={styles.problem}>
            {device.problem}
          </p>
        )}
      </StepBar>
    </>
  );
}

function keptPhotos(count: number): string {
  if (count === 0) return "No photo is kept.";
  return count === 1 ? "One photo is kept." : `${count} photos are kept.`;
}
