import { SelectField } from "@/app/_ui/select-field";
import type { CatalogueWords } from "@/db/queries/known-words";
import { productTypeKeys, productTypes } from "@/lib/domain/product-type";
import type { RateQuestion } from "@/lib/failures/rate-question";

interface Props {
  readonly words: CatalogueWords;
  readonly where: Pick<RateQuestion["where"], "maker" | "model" | "productType">;
}

/** Which units are asked about, in the names that the address uses. */
export function KindOfUnitFields({ words, where }: Props) {
  return (
    <>
      <SelectField
        label="Maker"
        name="make"
        none="Any"
        choices={words.makers.map((name) => ({ value: name, name }))}
        value={where.maker}
      />
      <SelectField
        label="Model"
        name="model"
        none="Any"
        choices={words.models.map((model) => ({ value: model.number, name: `${model.maker} ${model.number}` }))}
        value={where.model}
      />
      <SelectField
        label="Appliance"
        name="type"
        none="Any"
        choices={productTypeKeys.map((value) => ({ value, name: productTypes[value] }))}
        value={where.productType}
      />
    </>
  );
}
