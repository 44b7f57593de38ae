/** Where loads make their tables. The login of the site may make tables nowhere else. */
export const stagingSchema = "staging";

/** Names without a schema mean tables that last, or else a load's own, whatever the settings of the server or of the login. */
export const searchPath = `public, ${stagingSchema}`;
