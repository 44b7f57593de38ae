import Link from "next/link";
import { dayNumber } from "@/lib/calendar/day-number";
import type { RatesView } from "../load-failure-rates";
import { rateAddress } from "../rate-address";
import { ratesFinding } from "../rate-wording";
import { sortedGroups } from "../sorted-groups";
import { RateFilter } from "./rate-filter";
import { RateResult } from "./rate-result";
import { StillOnTheirWay } from "./still-on-their-way";

type AnsweredView = Extract<RatesView, { kind: "rates" }>;

interface Props {
  readonly view: AnsweredView;
  readonly cutOff: NonNullable<AnsweredView["words"]["cutOff"]>;
  /** The page's title says what the rates find, so it is not said again. */
  readonly opensPage: boolean;
}

/** The free table: what is grouped, counted and narrowed by the address, with the form that asks something else. */
export function AnyQuestion({ view, cutOff, opensPage }: Props) {
  const { question, order } = view.address;
  return (
    <>
      <h2>{opensPage ? "What was asked" : "Any question"}</h2>
      <p>
        Also: <Link href="/repeats/visits">first visits and returns</Link>, by technician as a funnel too
        {opensPage && (
          <>
            , and <a href="#worth-a-look">what is worth a look</a> below
          </>
        )}
        .
      </p>
      {!opensPage && <p>{ratesFinding(view.rates)}</p>}
      <RateFilter question={question} order={order} words={view.words} />
      <StillOnTheirWay question={question} />
      <RateResult
        groups={sortedGroups(view.rates.groups, order)}
        rates={view.rates}
        address={rateAddress(question, order, dayNumber(cutOff))}
        order={order}
      />
    </>
  );
}
