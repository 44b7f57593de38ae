import { largestPhotoBytes, mostAttachments, mostPixels } from "@/db/writes/photos/photo-limits";
import { instantOnClock } from "@/lib/calendar/instant";
import { type Attachment, type JobRecord, photoSubjects } from "@/lib/domain/job";
import { AddPhoto } from "./add-photo";
import styles from "./job-photos.module.css";
import { PhotoActs, TakeOff } from "./photo-acts";

const choices = Object.entries(photoSubjects).map(([value, name]) => ({ value, name }));
const limits = `JPEG, PNG, WebP or HEIC, up to ${largestPhotoBytes / 1_000_000} MB and ${mostPixels / 1_000_000} million pixels; proof of purchase and part invoice also as PDF. Up to ${mostAttachments} on a job. A photo is kept smaller and without its place; the time it was taken stays.`;

interface Props {
  readonly record: JobRecord;
  /** IANA name; times are told on its clocks. */
  readonly timeZone: string;
}

/** Pictures two a row, each with what it shows, when it was taken and the start of its fingerprint; and room for more. */
export function JobPhotos({ record: { job, attachments }, timeZone }: Props) {
  return (
    <section className="stack" id="photos">
      <h2>Photos and papers</h2>
      <PhotoActs jobNumber={job.jobNumber}>
        {attachments.length === 0 && <p>No photos are on file for this job.</p>}
        <ul className={styles.photos}>
          {attachments.map((attachment) => (
            <li key={attachment.id}>
              <OnePhoto attachment={attachment} jobNumber={job.jobNumber} timeZone={timeZone} />
            </li>
          ))}
        </ul>
      </PhotoActs>
      <AddPhoto jobNumber={job.jobNumber} subjects={choices} mostBytes={largestPhotoBytes} limits={limits} />
    </section>
  );
}

interface PhotoProps {
  readonly attachment: Attachment;
  readonly jobNumber: string;
  readonly timeZone: string;
}

function OnePhoto({ attachment, jobNumber, timeZone }: PhotoProps) {
  const { id, subject, caption, takenAt, sha256, mediaType } = attachment;
  const href = `/jobs/${encodeURIComponent(jobNumber)}/photos/${id}`;
  const words = `${photoSubjects[subject]}${caption === "" ? "" : `: ${caption}`}`;
  return (
    <>
      <a href={href}>
        {mediaType === "image/jpeg" ? (
          // biome-ignore lint/performance/noImgElement: evidence is shown as stored, not resized by a cache
          <img src={href} alt={words} loading="lazy" className={styles.photo} />
        ) : (
          "Download the paper (PDF)"
        )}
      </a>
      <p className={styles.caption}>{words}</p>
      <p className="small soft figures">
        {takenAt === undefined ? "time not stated" : `taken ${instantOnClock(takenAt, timeZone)}, as the device said`} ·{" "}
        {sha256.slice(0, 12)}
      </p>
      <TakeOff id={id} what={words} />
    </>
  );
}
