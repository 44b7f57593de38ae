import type { ClaimPacket } from "@/lib/claims/packet";
import { capitalised } from "@/lib/format/capitalised";
import styles from "./packet-page.module.css";
import { fileWords, photoAlt, shortHash, takenWords } from "./packet-words";

interface Props {
  readonly packet: ClaimPacket;
  readonly photoHref: (id: string) => string;
}

/** Two of them fit on a sheet of paper. */
export function PacketPhotos({ packet, photoHref }: Props) {
  const { photos } = packet;
  if (photos.length === 0) return <p>No photos were supplied.</p>;
  return (
    <div className={styles.photos}>
      {photos.map((photo) => (
        <figure key={photo.id} className={styles.photo}>
          {/* biome-ignore lint/performance/noImgElement: evidence is shown as it was taken, never resized or encoded anew */}
          <img src={photoHref(photo.id)} alt={photoAlt(photo)} className={styles.picture} />
          <figcaption className="stack-tight">
            <p>
              {photo.name}. {fileWords(photo)}
            </p>
            <p className="soft small">
              {capitalised(takenWords(photo, packet))} · SHA-256 begins{" "}
              <span className={styles.hash}>{shortHash(photo)}</span>
            </p>
          </figcaption>
        </figure>
      ))}
    </div>
  );
}
