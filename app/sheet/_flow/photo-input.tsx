import { useEffect, useId, useState } from "react";
import { type PhotoSubject, photoSubjects } from "@/lib/domain/job";
import { photoAdvice } from "../_device/photo-advice";
import type { SheetDevice } from "../_device/use-sheet-device";
import styles from "./sheet.module.css";

interface Props {
  readonly subject: PhotoSubject;
  readonly check: string | undefined;
  readonly device: SheetDevice;
  /** It must be taken before the code is cleared. */
  readonly before?: boolean;
}

interface Taken {
  readonly file: File;
  readonly address: string;
  readonly advice: readonly string[] | undefined;
}

/** Names the shot, shows what was taken with advice about it, and keeps it under an id made here. */
export function PhotoInput({ subject, check, device, before = false }: Props) {
  const id = useId();
  const [taken, setTaken] = useState<Taken>();
  const have = device.photos.filter((photo) => photo.subject === subject).length;
  useEffect(() => () => taken && URL.revokeObjectURL(taken.address), [taken]);

  async function show(file: File) {
    const address = URL.createObjectURL(file);
    setTaken({ file, address, advice: undefined });
    const advice = await photoAdvice(file);
    setTaken({ file, address: URL.createObjectURL(file), advice });
  }
  async function use() {
    if (taken !== undefined && (await device.photograph({ subject, check, file: taken.file }))) setTaken(undefined);
  }
  return (
    <section className={styles.photo} aria-label={`Photo: ${photoSubjects[subject]}`}>
      <p>
        <strong>Photo:</strong> {photoSubjects[subject]}
        {before && ", before it is cleared"}.{" "}
        {have > 0 && <span>{have === 1 ? "One is kept." : `${have} are kept.`}</span>}
      </p>
      {taken === undefined ? (
        <label htmlFor={id} className={styles.choice}>
          {have === 0 ? "Take" : "Take another"}
          <input
            id={id}
            type="file"
            accept="image/*"
            capture="environment"
            className="only-heard"
            onChange={(event) => {
              const [file] = event.target.files ?? [];
              if (file !== undefined) void show(file);
            }}
          />
        </label>
      ) : (
        <>
          {/* biome-ignore lint/performance/noImgElement: a picture on the device is not resized by a server */}
          <img src={taken.address} alt={`Taken: ${photoSubjects[subject]}`} className={styles.preview} />
          <div aria-live="polite">
            {(taken.advice ?? []).map((words) => (
              <p key={words}>{words}</p>
            ))}
          </div>
          <div className={styles.choices}>
            <button type="button" className={styles.choice} onClick={() => void use()}>
              Use
            </button>
            <button type="button" className={styles.choice} onClick={() => setTaken(undefined)}>
              Take again
            </button>
          </div>
        </>
      )}
    </section>
  );
}
