import { type JobRecord, photoSubjects } from "@/lib/domain/job";
import styles from "./job-photos.module.css";

/** Pictures two a row, each with what it shows, when it was taken and the start of its fingerprint. */
export function JobPhotos({ record: { job, attachments } }: { readonly record: JobRecord }) {
  if (attachments.length === 0) return <p>No photos are on file for this job.</p>;
  return (
    <section className="stack" id="photos">
      <h2>Photos and papers</h2>
      <ul className={styles.photos}>
        {attachments.map(({ id, subject, caption, takenAt, sha256, mediaType }) => {
          const href = `/jobs/${encodeURIComponent(job.jobNumber)}/photos/${id}`;
          return (
            <li key={id}>
              <a href={href}>
                {mediaType === "image/jpeg" ? (
                  // biome-ignore lint/performance/noImgElement: evidence is shown as stored, not resized by a cache
                  <img
                    src={href}
                    alt={`${photoSubjects[subject]}. ${caption}`}
                    loading="lazy"
                    className={styles.photo}
                  />
                ) : (
                  "Open the paper"
                )}
              </a>
              <p className="small">
                {photoSubjects[subject]}
                {caption !== "" && ` — ${caption}`}
              </p>
              <p className="small soft figures">
                {takenAt === undefined ? "time not stated" : takenAt.slice(0, 16).replace("T", " ")} ·{" "}
                {sha256.slice(0, 12)}
              </p>
            </li>
          );
        })}
      </ul>
    </section>
  );
}
