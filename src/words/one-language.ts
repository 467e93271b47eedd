/** The door of this room for a page that fetches one language at a time: the same, but no words are known until they are learned. */
export * from './say.ts';
export { catalogueOf, knows, languageOf, languages, learn, tell, tellValue, type Catalogue, type Reader } from './tell.ts';
