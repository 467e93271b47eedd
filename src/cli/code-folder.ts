/** Where the program lies, as source or built: one folder above this file, and above the one that it is built into. */
export const codeFolder = new URL('../', import.meta.url);
