import styles from "./sample.module.css";

interface Props {
  readonly title: string;
  readonly children: string;
}

/** Text for a program, as it is to be written. */
export function Sample({ title, children }: Props) {
  return (
    <figure className="stack-tight">
      <figcaption className="small soft">{title}</figcaption>
      <pre className={styles.sample}>{children}</pre>
    </figure>
  );
}
