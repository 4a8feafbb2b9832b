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

type Loader = () => Promise<{ default: Sentences }>;
const learnt: Partial<Record<Language, Loader>>[] = [];

async function bring(others: Partial<Record<Language, Loader>>): Promise<void> {
  const loaded = await others[inUse]?.();
  if (loaded) sentences = { ...sentences, ...loaded.default };
}

/** Adds the sentences of a part that is fetched on use: its English, and how to fetch the others when they are spoken. */
export async function learn(en: Sentences, others: Partial<Record<Language, Loader>>): Promise<void> {
  Object.assign(english, en);
  learnt.push(others);
  await bring(others);
}

/** Switches the page's language; resolves when its sentences are there. */
export async function speak(wanted: Language): Promise<void> {
  sentences = wanted === 'es' ? await spanish() : english;
  inUse = wanted;
  await Promise.all(learnt.map(bring));
  document.documentElement.lang = wanted;
}
