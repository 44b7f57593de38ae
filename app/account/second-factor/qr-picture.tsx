import { encode } from "uqr";
import styles from "./second-factor.module.css";

/** The text as a picture that a phone reads (ISO/IEC 18004), with the margin that readers need. */
export function QrPicture({ text }: { readonly text: string }) {
  const { data, size } = encode(text, { border: 4, ecc: "M" });
  const path = data.flatMap((row, y) => row.flatMap((dark, x) => (dark ? [`M${x} ${y}h1v1h-1z`] : []))).join("");
  return (
    <svg
      viewBox={`0 0 ${size} ${size}`}
      className={styles.picture}
      role="img"
      aria-label="Picture for the authenticator"
    >
      <rect width={size} height={size} className={styles.paper} />
      <path d={path} className={styles.dark} />
    </svg>
  );
}
