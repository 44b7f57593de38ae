import styles from "./sheet.module.css";

interface Props {
  readonly isRead: boolean;
  readonly onRead: () => void;
}

/** A live step opens only after somebody has said that its cautions were read. The cautions stay where they are. */
export function CautionsRead({ isRead, onRead }: Props) {
  if (isRead) return <p role="status">Cautions read. The test may be done by a qualified person.</p>;
  return (
    <button type="button" className={styles.confirm} onClick={onRead}>
      I have read the cautions and am qualified for live tests
    </button>
  );
}
