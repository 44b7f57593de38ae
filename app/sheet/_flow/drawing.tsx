import type { Drawing as Kind } from "@/lib/sheets/test-points";
import styles from "./sheet.module.css";

interface Props {
  readonly kind: Kind;
  readonly points: readonly [string, string] | undefined;
}

/** Where the leads go. The words beside it say the same, so it is left out for readers of the screen. */
export function Drawing({ kind, points }: Props) {
  return (
    <svg viewBox={points === undefined ? "16 2 188 78" : "0 0 220 96"} className={styles.drawing} aria-hidden="true">
      {shapes[kind]}
      {points !== undefined && (
        <>
          <text x="4" y="92" className={styles.lead}>
            {points[0]}
          </text>
          <text x="216" y="92" textAnchor="end" className={styles.lead}>
            {points[1]}
          </text>
        </>
      )}
    </svg>
  );
}

/** Two leads from the lower corners to the points at (x1, y1) and (x2, y2). */
function leads(x1: number, y1: number, x2: number, y2: number) {
  return (
    <>
      <path d={`M24 80Q24 ${y1} ${x1} ${y1}`} className={styles.wire} />
      <path d={`M196 80Q196 ${y2} ${x2} ${y2}`} className={styles.wire} />
      <circle cx={x1} cy={y1} r="5" className={styles.probe} />
      <circle cx={x2} cy={y2} r="5" className={styles.probe} />
    </>
  );
}

const part = (x: number, y: number, width: number, height: number) => (
  <rect x={x} y={y} width={width} height={height} className={styles.body} />
);
const coil = <path d="M90 34c4-14 10-14 10 0s6 14 10 0 6-14 10 0 6 14 10 0" className={styles.stroke} />;

const shapes: Readonly<Record<Kind, React.ReactNode>> = {
  "two terminals": (
    <>
      {part(80, 16, 60, 36)}
      {coil}
      <path d="M70 34h20M130 34h20" className={styles.stroke} />
      {leads(70, 34, 150, 34)}
    </>
  ),
  "three terminals": (
    <>
      <circle cx="110" cy="36" r="26" className={styles.body} />
      <path d="M110 36V18M110 36l-16 12M110 36l16 12" className={styles.stroke} />
      <circle cx="110" cy="16" r="4" className={styles.pin} />
      {leads(92, 50, 128, 50)}
    </>
  ),
  "terminal to ground": (
    <>
      {part(60, 12, 60, 36)}
      <path d="M50 30h20M150 62h44M158 68h28M166 74h12M172 62V48" className={styles.stroke} />
      {leads(50, 30, 172, 46)}
    </>
  ),
  "board connector": (
    <>
      {part(40, 10, 60, 46)}
      {part(120, 16, 34, 34)}
      <path d="M154 24h26M154 42h26" className={styles.stroke} />
      <path d="M104 33h10" className={styles.gap} />
      {leads(126, 26, 148, 40)}
    </>
  ),
  "live connector": (
    <>
      {part(84, 10, 52, 46)}
      <path d="M60 24h24M60 42h24M136 24h24M136 42h24" className={styles.stroke} />
      <path d="M112 14l-8 18h10l-6 20" className={styles.flash} />
      {leads(84, 24, 136, 42)}
    </>
  ),
  outlet: (
    <>
      {part(76, 8, 68, 54)}
      <path d="M94 24v14M126 24v12M110 46v6" className={styles.stroke} />
      <path d="M66 12l-8 16h10l-6 16" className={styles.flash} />
      {leads(94, 30, 126, 30)}
    </>
  ),
  capacitor: (
    <>
      {part(78, 20, 64, 36)}
      <path d="M96 20v-10M124 20v-10M104 30v16M114 30v16" className={styles.stroke} />
      {leads(96, 12, 124, 12)}
    </>
  ),
  clamp: (
    <>
      <path d="M20 40h180" className={styles.stroke} />
      <path d="M96 62V44a16 18 0 1 1 28 0v18z" className={styles.body} />
    </>
  ),
  probe: (
    <>
      {part(40, 14, 70, 44)}
      <path d="M110 36h70M180 36v30" className={styles.wire} />
      <circle cx="104" cy="36" r="6" className={styles.probe} />
    </>
  ),
  manometer: (
    <>
      <path d="M20 20h90v16h-90z" className={styles.body} />
      <path d="M96 36v10q0 10 14 10h30" className={styles.stroke} />
      <path d="M140 20v44a12 12 0 0 0 24 0V20" className={styles.stroke} />
    </>
  ),
  "gauge tap": (
    <>
      <path d="M20 56h120M90 56V40" className={styles.stroke} />
      <circle cx="90" cy="24" r="18" className={styles.body} />
      <path d="M90 24l10-8" className={styles.stroke} />
    </>
  ),
  tape: (
    <>
      <path d="M30 70h160M110 70V10" className={styles.stroke} />
      <path d="M104 16l6-8 6 8M104 64l6 8 6-8" className={styles.stroke} />
      <path d="M124 70V20h16v50" className={styles.body} />
    </>
  ),
  display: (
    <>
      {part(50, 16, 120, 46)}
      <path d="M76 30h10v18H76zM104 30h10v9h-10v9h10M132 30v18M144 30v18" className={styles.stroke} />
    </>
  ),
  eye: (
    <>
      <path d="M40 38q70-56 140 0q-70 56-140 0z" className={styles.body} />
      <circle cx="110" cy="38" r="14" className={styles.stroke} />
      <circle cx="110" cy="38" r="5" className={styles.pin} />
    </>
  ),
};
