// Every sentence of the page comes from engine/rules/wording/<language>/page.json. English is built in; others are fetched on use.

import numbers from '../../../engine/rules/wording/en/numbers.json';
import page from '../../../engine/rules/wording/en/page.json';

export type Language = 'en' | 'es';
type Sentences = Record<string, string>;

const english: Sentences = { ...numbers, ...page };
/** The units a count can have, by the names the engine words them under. */
export const unitIds = Object.keys(numbers).flatMap((key) => /^unit\.(.+)\.many$/.exec(key)?.[1] ?? []);

async function spanish(): Promise<Sentences> {
  const [n, p] = await Promise.all([
    import('../../../engine/rules/wording/es/numbers.json'),
    import('../../../engine/rules/wording/es/page.json'),
  ]);
  return { ...n.default, ...p.default };
}

let sentences: Sentences = english;
let inUse: Language = 'en';

export const language = (): Language => inUse;

/** The sentence with its {placeholders} filled; an unknown key shows as [key], so that a gap is seen and a test finds it. */
export function say(key: string, args: Record<string, string | number> = {}): string {
  const sentence = sentences[key] ?? english[key];
  if (sentence === undefined) return `[${key}]`;
  return sentence.replace(/\{(\w+)\}/g, (whole, name: string) => (name in args ? String(args[name]) : whole));
}

/** True if the catalogue has a sentence for `key`. */
export const canSay = (key: string): boolean => key in sentences || key in english;

/** Switches the page's language; resolves when its sentences are there. */
export async function speak(wanted: Language): Promise<void> {
  sentences = wanted === 'es' ? await spanish() : english;
  inUse = wanted;
  document.documentElement.lang = wanted;
}
