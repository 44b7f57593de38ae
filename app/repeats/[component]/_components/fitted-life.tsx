import { DefinitionList } from "@/app/_ui/definition-list";
import { Plate } from "@/app/_ui/plate";
import { type Column, Table } from "@/app/_ui/table";
import type { LifeDetail } from "@/lib/failures/life-detail";
import type { LifeModel, ModelChance } from "@/lib/failures/life-model";
import { daysPerYear } from "@/lib/failures/rate-question";
import { formatCount, formatCounted } from "@/lib/format/format-count";
import { formatDecimal } from "@/lib/format/format-decimal";
import { describeShare } from "@/lib/format/format-share";
import { checkWords, followWords, refusalWords, shapeWords, withBounds } from "../model-words";
import { shareAt } from "../share-at";

interface Props {
  readonly life: LifeDetail;
  readonly csvHref: string;
}

/** The fitted life in words and figures with what it can bear, or why there is none. */
export function FittedLife({ life, csvHref }: Props) {
  const { model } = life;
  if (model.kind === "refused") {
    return (
      <Plate title="Does age matter?">
        <p>{refusalWords(model)}</p>
      </Plate>
    );
  }
  return (
    <Plate title="Does age matter?">
      <p>{shapeWords[life.shape]}</p>
      <ModelFigures model={model} years={life.years} />
      <Table
        caption="Chance that a part has failed by an age"
        columns={chanceColumns(life)}
        rows={model.chances}
        rowKey={({ years }) => String(years)}
      />
      <p>{followWords(model)}</p>
      <p>{checkWords(model)}</p>
      <p>
        <a href={csvHref} download>
          The fitted life as CSV
        </a>
      </p>
    </Plate>
  );
}

function ModelFigures({ model, years }: { readonly model: LifeModel; readonly years: number }) {
  const { weibull, tenth, lastAge } = model;
  const beyond = tenth.age > lastAge ? `, older than any part watched (${watchedYears(lastAge)})` : "";
  return (
    <DefinitionList
      items={[
        {
          term: "10 in 100 failed by",
          detail: `${withBounds(tenth.age, tenth, daysPerYear, 1)} years${beyond}`,
          source: "Weibull fitted by maximum likelihood; all its ranges by profile likelihood",
        },
        {
          term: "Shape",
          detail: withBounds(weibull.shape.value, weibull.shape.profile, 1, 2),
          source: "below 1: early failures; 1: age does not matter; above 1: wear",
        },
        {
          term: "Scale",
          detail: `${withBounds(weibull.scale.value, weibull.scale.profile, daysPerYear, 1)} years`,
          source: "age by which 63 in 100 would have failed",
        },
        {
          term: "Made from",
          detail: `${formatCounted(weibull.events, "failure")} in ${formatCounted(weibull.lives, "life", "lives")}, ${formatCount(years)} years lived`,
        },
      ]}
    />
  );
}

function chanceColumns({ curve, model }: LifeDetail): Column<ModelChance>[] {
  const seen = (years: number) => {
    if (curve.kind !== "curve" || years * daysPerYear > curve.lastAge) return "nothing watched so long";
    const share = shareAt(curve, 12 * years);
    return share === undefined ? "none seen" : describeShare(share.failed, share.low, share.high);
  };
  const lastAge = model.kind === "model" ? model.lastAge : 0;
  return [
    { key: "years", head: "Years of age", kind: "number", cell: ({ years }) => years },
    { key: "seen", head: "Seen", cell: ({ years }) => seen(years) },
    {
      key: "fitted",
      head: "Fitted life",
      cell: ({ failed, low, high, beyondData }) =>
        `${describeShare(failed, low, high)}${beyondData ? ` — drawn on beyond the oldest part watched (${watchedYears(lastAge)})` : ""}`,
    },
  ];
}

function watchedYears(days: number): string {
  return `${formatDecimal(days / daysPerYear, 1)} years`;
}
