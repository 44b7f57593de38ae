/** A picture as it is kept: upright, small enough to print well, and with nothing in it but pixels. */
export interface KeptPhoto {
  readonly content: Buffer;
  readonly width: number;
  readonly height: number;
  readonly receivedSha256: string;
  readonly storedSha256: string;
  /** Read from the picture before it was stripped; undefined where it did not say. */
  readonly taken: ClockTime | undefined;
}

/** What a camera's clock showed. */
export interface ClockTime {
  /** 2025-03-05T10:15:00, without a zone. */
  readonly clock: string;
  /** +02:00; undefined where the camera did not say. */
  readonly offset: string | undefined;
}

export type PhotoReading = { readonly ok: true; readonly photo: KeptPhoto } | PhotoRefusal;

export interface PhotoRefusal {
  readonly ok: false;
  /** Follows the file's name: "is empty". */
  readonly problem: string;
  readonly fix: string;
}
