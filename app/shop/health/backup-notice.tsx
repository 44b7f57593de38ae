import { Notice } from "@/app/_ui/notice";
import type { RestoreDrill, RestoreDrills } from "@/db/queries/restore-drills";
import { instantOnClock } from "@/lib/calendar/instant";
import { formatCounted } from "@/lib/format/format-count";

/** From this many days on a backup that was not tried again is called late. Our own choice. */
const lateAfterDays = 8;

interface Props {
  readonly drills: RestoreDrills;
  readonly now: Date;
  readonly timeZone: string;
}

/** Only a backup that has been restored is known to be one: that date is what is shown, not when the last was made. */
export function BackupNotice({ drills: { last, lastGood }, now, timeZone }: Props) {
  if (last !== undefined && last.problem !== null) {
    return (
      <Notice
        status="act-now"
        title={`The backup tried on ${instantOnClock(last.finishedAt, timeZone)} did not come back`}
      >
        <p>{last.problem}</p>
        <HowTo />
      </Notice>
    );
  }
  if (lastGood === undefined) {
    return (
      <Notice status="act-now" title="No backup has been restored yet">
        <HowTo />
      </Notice>
    );
  }
  const days = Math.floor((now.getTime() - Date.parse(lastGood.finishedAt)) / 86_400_000);
  return (
    <Notice
      status={days >= lateAfterDays ? "watch" : "fine"}
      title={`A backup was last restored on trial on ${instantOnClock(lastGood.finishedAt, timeZone)}`}
    >
      <p>{triedText(lastGood, timeZone)}</p>
      {days >= lateAfterDays && <p>That is {formatCounted(days, "day")} ago. Try a new one.</p>}
      {days >= lateAfterDays && <HowTo />}
    </Notice>
  );
}

function triedText({ backupAt, rows }: RestoreDrill, timeZone: string): string {
  return `It had been made on ${instantOnClock(backupAt, timeZone)}; all ${formatCounted(rows, "row")} came back, photos and papers among them, and every check held.`;
}

function HowTo() {
  return (
    <p>
      On the computer that runs the site: <code>npm run backup -- --to FOLDER --try</code>. Keep the folder on another
      disk, or better in another building.
    </p>
  );
}
