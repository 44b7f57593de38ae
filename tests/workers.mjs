/** How many files of database tests run side by side, each on a database of its own. */
export const workersOfDatabaseTests = 2;
