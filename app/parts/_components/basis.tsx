import type { Day } from "@/lib/calendar/day";
import { monthWords } from "@/lib/figures/fan";
import { formatDay } from "@/lib/format/format-day";

interface Props {
  readonly forecastFrom: Day | undefined;
  readonly plannedOn: Day | undefined;
}

/** What the list of parts rests on. */
export function Basis({ forecastFrom, plannedOn }: Props) {
  return (
    <>
      {forecastFrom !== undefined && (
        <p>
          Pieces fitted on closed jobs in the whole months before {monthWords(forecastFrom)}; core charges and freight
          are no parts. An older number’s use is counted under the number that replaced it.
        </p>
      )}
      <p>
        Ranges come from 400 possible futures of each part, drawn from the method that its own past months chose; they
        hold both chance and what the past leaves open.
      </p>
      <p>
        A part is to be ordered when what is on hand and on order, less what is put aside, is at or below its reorder
        point: the least stock that lasts, with the wanted chance, until an order placed at the next look has come.
      </p>
      {plannedOn !== undefined && <p>Worked out as of {formatDay(plannedOn)}; stock is as of now.</p>}
    </>
  );
}
