import { getTableConfig } from "drizzle-orm/pg-core";
import { unclaimedWork } from "../../schema/money";

const { columns, primaryKeys } = getTableConfig(unclaimedWork);

/** In the order in which rows are copied. */
export const unclaimedColumns = columns.map((column) => ({ name: column.name, type: column.getSQLType() }));

export const unclaimedKey = primaryKeys.flatMap((key) => key.columns.map(({ name }) => name));
