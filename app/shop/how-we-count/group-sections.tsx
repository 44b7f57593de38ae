import type { ReactNode } from "react";
import { Comparisons } from "./_components/comparisons";
import { HowItIsShown } from "./_components/how-it-is-shown";
import { Lives } from "./_components/lives";
import { ManyGroups } from "./_components/many-groups";
import { Rates } from "./_components/rates";
import { Shares } from "./_components/shares";
import { WhatIsCounted } from "./_components/what-is-counted";
import { WhatIsMissing } from "./_components/what-is-missing";
import type { DefinitionGroup } from "./definition-groups";
import { exampleWords } from "./example-words";
import type { CountedView } from "./load-counted-view";

/** The definitions of each group, with the figures that the company's data have. */
export function groupSections(view: CountedView): Readonly<Record<DefinitionGroup["id"], ReactNode>> {
  const examples = exampleWords(view);
  return {
    "what-is-counted": <WhatIsCounted view={view} />,
    "what-is-missing": <WhatIsMissing view={view} />,
    rates: <Rates examples={examples} />,
    comparisons: <Comparisons />,
    shares: <Shares />,
    lives: <Lives examples={examples} />,
    many: <ManyGroups />,
    shown: <HowItIsShown />,
  };
}
