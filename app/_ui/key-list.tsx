import type { Ref } from "react";
import styles from "./key-list.module.css";
import { places } from "./places";

interface Props {
  readonly ref: Ref<HTMLElement>;
}

/** What every key does. Esc closes it; the page stays usable behind it. */
export function KeyList({ ref }: Props) {
  return (
    <section ref={ref} popover="auto" className={styles.list} aria-labelledby="key-list-title">
      <h2 id="key-list-title">Keys</h2>
      <dl className={styles.keys}>
        <Key keys={["?"]} act="Show or hide this list" />
        <Key keys={["/"]} act="Search on this page" />
        <Key keys={["["]} act="Previous in the list" />
        <Key keys={["]"]} act="Next in the list" />
        <Key keys={["e"]} act="Export what is shown, as CSV" />
        {places.map(({ name, key }) => (
          <Key key={key} keys={["g", key]} act={name} />
        ))}
      </dl>
      <p className="small soft">Switch them off under View, at the top of the page.</p>
    </section>
  );
}

function Key({ keys, act }: { readonly keys: readonly string[]; readonly act: string }) {
  return (
    <div>
      <dt>
        {keys.map((key) => (
          <kbd key={key}>{key}</kbd>
        ))}
      </dt>
      <dd>{act}</dd>
    </div>
  );
}
