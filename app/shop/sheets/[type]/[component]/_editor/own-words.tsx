import { Button } from "@/app/_ui/button";
import { causeKeys, causes } from "@/lib/domain/cause";
import type { LooseOwn } from "@/lib/sheets/loose-sheet";
import styles from "./sheet-form.module.css";

interface Props {
  readonly words: LooseOwn["words"];
  readonly onSet: (words: LooseOwn["words"]) => void;
}

const outside = causeKeys.filter((key) => causes[key].kind === "outside");

/** What may be found, each with what it means; a word for a cause outside the part names that cause. */
export function OwnWords({ words, onSet }: Props) {
  const set = (at: number, part: Partial<LooseOwn["words"][number]>) =>
    onSet(words.map((each, index) => (index === at ? { ...each, ...part } : each)));
  return (
    <fieldset className={styles.words}>
      <legend>What may be found</legend>
      {words.map((each, at) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a word is its place in the list until it is typed
        <div key={at} className="cluster">
          <label>
            Word {at + 1}{" "}
            <input
              type="text"
              maxLength={60}
              value={each.word}
              onChange={({ target }) => set(at, { word: target.value })}
            />
          </label>
          <label>
            means{" "}
            <select
              value={each.cause ?? each.state}
              onChange={({ target: { value } }) =>
                set(
                  at,
                  value === "good" || value === "bad"
                    ? { state: value, cause: undefined }
                    : { state: "outside", cause: value },
                )
              }
            >
              <option value="good">as it should be</option>
              <option value="bad">not as it should be</option>
              {outside.map((key) => (
                <option key={key} value={key}>
                  cause outside: {causes[key].name.toLowerCase()}
                </option>
              ))}
            </select>
          </label>
        </div>
      ))}
      <div className="cluster">
        {words.length < 8 && (
          <Button type="button" weight="plain" onClick={() => onSet([...words, { word: "", state: "bad" }])}>
            Another word
          </Button>
        )}
        {words.length > 2 && (
          <Button type="button" weight="plain" onClick={() => onSet(words.slice(0, -1))}>
            Take off the last word
          </Button>
        )}
      </div>
    </fieldset>
  );
}
