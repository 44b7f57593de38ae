import { saveViewSettings } from "./save-view-settings";
import styles from "./view-menu.module.css";
import { themes, type ViewSettings } from "./view-settings";

interface Props {
  readonly settings: ViewSettings;
}

/** Theme and keyboard of this browser. A plain form: it works before any script has loaded. */
export function ViewMenu({ settings }: Props) {
  return (
    <details className={styles.menu}>
      <summary className={styles.handle}>View</summary>
      <form action={saveViewSettings} className={styles.panel}>
        <fieldset className={styles.group}>
          <legend>Colours</legend>
          {Object.entries(themes).map(([value, name]) => (
            <label key={value} className={styles.choice}>
              <input type="radio" name="theme" value={value} defaultChecked={settings.theme === value} />
              {name}
            </label>
          ))}
        </fieldset>
        <label className={styles.choice}>
          <input type="checkbox" name="single-keys" defaultChecked={settings.singleKeys} />
          Single-key shortcuts
        </label>
        <button type="submit" className={styles.apply}>
          Use these
        </button>
        <p className="small soft">
          Keys: <kbd>?</kbd> lists them.
        </p>
      </form>
    </details>
  );
}
