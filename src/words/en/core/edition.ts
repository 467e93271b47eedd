/** Sheets, the day, numbers, the record. */
export const edition = {};
