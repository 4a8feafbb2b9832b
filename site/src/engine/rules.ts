// Which rule files there are, and loading them into the engine, each once.

import index from '../generated/rules-index.json';
import type { EventKind, Fact, Named } from '../case/catalogue';
import type { Engine } from './engine';
import { rulesText } from './files';
import { language } from '../say/wording';

interface PackEntry {
  file: string;
  name: string;
  currency: string;
  /** Its sentences in other languages: the file by language. */
  words: Record<string, string>;
  /** Its name in other languages, where that is another. */
  names: Record<string, string>;
}

interface RulesIndex {
  shared: string;
  letters: string;
  reading: string;
  languages: Record<string, string>;
  packs: Record<string, PackEntry>;
}

const rules = index as RulesIndex;
/** The text of each bundle that the engine holds or is taking in. */
const loaded = new Map<string, Promise<string>>();
/** Bundles of one task that the engine has. */
const taken = new Set<string>();
/** The law packs that are loaded, by place. */
const packs = new Map<string, LawFile & Partial<Written>>();
const packWords = new Map<string, PackWords>();

/** Every place with a law pack, by name. */
export const places = (): { code: string; name: string }[] =>
  Object.entries(rules.packs)
    .map(([code, p]) => ({ code, name: p.names[language()] ?? p.name }))
    .sort((a, b) => a.name.localeCompare(b.name, language()));

export const nameOfPlace = (code: string | undefined): string =>
  (code && (rules.packs[code]?.names[language()] ?? rules.packs[code]?.name)) || '';
export const currencyOf = (code: string | undefined): string => (code && rules.packs[code]?.currency) || 'USD';
export const hasPack = (code: string | undefined): boolean => code !== undefined && code in rules.packs;

/** Bundles that are fetched before the engine is there to take them. */
const ahead = new Map<string, Promise<string>>();

function fetchAhead(file: string | undefined): void {
  if (!file || loaded.has(file) || ahead.has(file)) return;
  const coming = rulesText(file);
  ahead.set(file, coming);
  coming.catch(() => ahead.delete(file));
}

/** Begins to fetch what every case needs, and the law of a place. */
export function fetchRules(code: string | undefined): void {
  fetchAhead(rules.shared);
  fetchAhead(code && rules.packs[code]?.file);
}

/** Begins to fetch what reads words. */
export const fetchReading = (): void => fetchAhead(rules.reading);

/** The engine that holds what is loaded. */
let holder: Engine | undefined;

/** Hands a bundle to the engine, once. What failed may be tried again; another engine begins anew. */
function load(engine: Engine, file: string): Promise<string> {
  if (engine !== holder) {
    for (const held of [loaded, taken, packs, packWords]) held.clear();
    holder = engine;
  }
  const known = loaded.get(file);
  if (known) return known;
  const coming = (async () => {
    const text = await (ahead.get(file) ?? rulesText(file));
    ahead.delete(file);
    const faults = await engine.load(text);
    if (faults.length > 0) throw new Error(faults.map((f) => `${f.at}: ${f.text}`).join('\n'));
    return text;
  })();
  loaded.set(file, coming);
  coming.catch(() => loaded.delete(file));
  return coming;
}

interface Registry {
  facts: Fact[];
  events: EventKind[];
  documents: Named[];
}

/** Text by language; a pack's own are English alone. */
type Spoken = string | Record<string, string>;
/** The registries as their files have them. */
interface Written {
  facts: (Omit<Fact, 'question'> & { question: Spoken })[];
  events: (Omit<EventKind, 'question'> & { question: Spoken })[];
  papers: (Omit<Named, 'label'> & { label: Spoken })[];
}
/** The sentences of a pack in another language. */
interface PackWords {
  rules?: Record<string, Partial<Rule>>;
  facts?: Record<string, { question: string }>;
  events?: Record<string, { question: string }>;
}

/** One rule of a law pack, as far as a person reads it. */
export interface Rule {
  id: string;
  text: string;
  whenText?: string;
  ifMissedText?: string;
  ifMissingText?: string;
  check?: string;
  /** Days between which it is in force. */
  from?: string;
  to?: string;
  source?: string[];
}
type Chapters = Partial<Record<string, Rule[]>>;
export type LawFile = Chapters & { sources: Record<string, { cite: string; read: string; url?: string }> };

const registry: Written = { facts: [], events: [], papers: [] };

function keepRegistry(bundle: string): void {
  const files = JSON.parse(bundle) as Record<string, Partial<Written>>;
  Object.assign(registry, files['facts.json'], files['papers.json']);
}

export const loadShared = async (engine: Engine): Promise<void> => keepRegistry(await load(engine, rules.shared));

const inLanguage = (said: Spoken): string => (typeof said === 'string' ? said : (said[language()] ?? said['en'] ?? ''));
const fileIn = <T>(bundle: string, file: string): T => (JSON.parse(bundle) as Record<string, T>)[file]!;

/** Facts, events and papers a person can be asked about: the shared ones and those of one place's law. */
export function registryOf(code: string | undefined): Registry {
  const pack: Partial<Written> = (code && packs.get(code)) || {};
  const words = packWords.get(`${code} ${language()}`);
  return {
    facts: [...registry.facts, ...(pack.facts ?? [])].map((f) => ({
      ...f,
      question: words?.facts?.[f.id]?.question ?? inLanguage(f.question),
    })),
    events: [...registry.events, ...(pack.events ?? [])].map((e) => ({
      ...e,
      question: words?.events?.[e.id]?.question ?? inLanguage(e.question),
    })),
    documents: registry.papers.map((p) => ({ ...p, label: inLanguage(p.label) })),
  };
}

async function loadTask(engine: Engine, file: string): Promise<void> {
  await load(engine, file);
  taken.add(file);
}

/** Loads what reads words. */
export const loadReading = (engine: Engine): Promise<void> => loadTask(engine, rules.reading);
/** Loads what writes letters. */
export const loadLetters = async (engine: Engine): Promise<void> => {
  fetchAhead(rules.letters);
  await engine.complete();
  await loadTask(engine, rules.letters);
};
/** True once the engine reads words: statements, and what a charge is about. */
export const canRead = (): boolean => taken.has(rules.reading);
/** True once it writes letters. */
export const canWrite = (): boolean => taken.has(rules.letters);

/** Loads a language, with the law of the place that is in use. */
export async function loadLanguage(engine: Engine, wanted: string, place: string | undefined): Promise<void> {
  const file = rules.languages[wanted];
  if (file && !loaded.has(file)) keepRegistry(await load(engine, file));
  if (place) await loadPlaceWords(engine, place, wanted);
}

/** Loads the law of one place in the page's language; a place without a pack needs nothing. */
export async function loadPlace(engine: Engine, code: string): Promise<void> {
  const pack = rules.packs[code];
  if (pack && !packs.has(code)) packs.set(code, fileIn(await load(engine, pack.file), `law/${code}.json`));
  await loadPlaceWords(engine, code, language());
}

async function loadPlaceWords(engine: Engine, code: string, wanted: string): Promise<void> {
  const file = rules.packs[code]?.words[wanted];
  const key = `${code} ${wanted}`;
  if (file && !packWords.has(key))
    packWords.set(key, fileIn<PackWords>(await load(engine, file), `law-${wanted}/${code}.json`));
}

/** The law of a place, its sentences in the page's language; undefined while it is not loaded. */
export function lawOf(code: string | undefined): LawFile | undefined {
  const law = code && packs.get(code);
  if (!law) return undefined;
  const words = packWords.get(`${code} ${language()}`)?.rules ?? {};
  const chapters = Object.entries(law).filter(([, rules]) => Array.isArray(rules));
  const spoken = chapters.map(([name, rules]) => [name, (rules as Rule[]).map((r) => ({ ...r, ...words[r.id] }))]);
  return { ...law, ...Object.fromEntries(spoken) } as LawFile;
}

/** What the conditions of a place's law ask about: facts by id, named towns, and papers a statement must carry. */
export interface Asked {
  facts: Set<string>;
  events: Set<string>;
  towns: string[];
  papers: Set<string>;
}

const asked = new Map<string, Asked>();

function gather(node: unknown, into: Asked, towns: Set<string>): void {
  if (Array.isArray(node)) return node.forEach((n) => gather(n, into, towns));
  if (typeof node !== 'object' || node === null) return;
  const o = node as Record<string, unknown>;
  if (typeof o['fact'] === 'string') {
    into.facts.add(o['fact']);
    if (o['fact'] === 'locality')
      [o['is'], ...((o['in'] as unknown[]) ?? [])].forEach((t) => typeof t === 'string' && towns.add(t));
  }
  if (typeof o['event'] === 'string') into.events.add(o['event']);
  if (Array.isArray(o['after'])) o['after'].forEach((e) => typeof e === 'string' && into.events.add(e));
  for (const list of ['requires', 'orElse'])
    if (Array.isArray(o[list])) (o[list] as unknown[]).forEach((p) => typeof p === 'string' && into.papers.add(p));
  Object.values(o).forEach((v) => gather(v, into, towns));
}

export function askedBy(code: string | undefined): Asked | undefined {
  const pack = code && packs.get(code);
  if (!pack) return undefined;
  let found = asked.get(code);
  if (!found) {
    found = { facts: new Set(), events: new Set(), towns: [], papers: new Set() };
    const towns = new Set<string>();
    gather(pack, found, towns);
    found.towns = [...towns].sort();
    asked.set(code, found);
  }
  return found;
}

/** The duties about the money and its list, whose clocks the page asks about first. */
const clocked = ['itemize', 'notice-of-claim', 'return-deposit', 'refund-balance'];

/** The events that start the clocks of a place's main duties, each once, in the order of the law. */
export function clocksOf(code: string | undefined): string[] {
  const pack = code && packs.get(code);
  if (!pack) return [];
  const duties = (pack['duties'] ?? []) as unknown as { duty: string; to?: string; legs?: { after?: string[] }[] }[];
  const starts = duties
    .filter((x) => clocked.includes(x.duty) && !x.to)
    .flatMap((x) => (x.legs ?? []).flatMap((l) => l.after ?? []));
  return [...new Set(starts)].slice(0, 3);
}
