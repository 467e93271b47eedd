import { grammarOf } from '../grammar.ts';

export { capital } from '../grammar.ts';
export const { many, which } = grammarOf('de-DE');
