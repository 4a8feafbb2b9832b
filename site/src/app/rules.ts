// Which rule files there are, and loading them into the engine, each once.

import index from '../generated/rules-index.json';
import type { EventKind, Fact, Named } from '../case/catalogue';
import type { Engine } from './engine';
import { rulesText } from './files';

interface PackEntry {
  file: string;
  name: string;
  currency: string;
}

interface RulesIndex {
  shared: string;
  languages: Record<string, string>;
  packs: Record<string, PackEntry>;
}

const rules = index as RulesIndex;
const loaded = new Set<string>();
const packTexts = new Map<string, string>();

/** Every place with a law pack, by name. */
export const places = (): { code: string; name: string }[] =>
  Object.entries(rules.packs)
    .map(([code, p]) => ({ code, name: p.name }))
    .sort((a, b) => a.name.localeCompare(b.name));

export const nameOfPlace = (code: string | undefined): string => (code && rules.packs[code]?.name) || '';
export const currencyOf = (code: string | undefined): string => (code && rules.packs[code]?.currency) || 'USD';
export const hasPack = (code: string | undefined): boolean => code !== undefined && code in rules.packs;

async function load(engine: Engine, file: string): Promise<string> {
  const text = await rulesText(file);
  if (!loaded.has(file)) {
    const faults = engine.load(text);
    if (faults.length > 0) throw new Error(faults.map((f) => `${f.at}: ${f.text}`).join('\n'));
    loaded.add(file);
  }
  return text;
}

interface Registry {
  facts: Fact[];
  events: EventKind[];
  papers: Named[];
}

const registry: Registry = { facts: [], events: [], papers: [] };

export async function loadShared(engine: Engine): Promise<void> {
  const shared = JSON.parse(await load(engine, rules.shared)) as Record<string, Partial<Registry>>;
  Object.assign(registry, shared['facts.json'], { papers: shared['papers.json']?.papers ?? [] });
}

/** Facts, events and papers a person can be asked about: the shared ones and those of one place's law. */
export function registryOf(code: string | undefined): Registry {
  const text = code && packTexts.get(code);
  const pack = text ? (Object.values(JSON.parse(text) as object)[0] as Partial<Registry>) : {};
  return {
    ...registry,
    facts: [...registry.facts, ...(pack.facts ?? [])],
    events: [...registry.events, ...(pack.events ?? [])],
  };
}

export async function loadLanguage(engine: Engine, language: string): Promise<void> {
  const file = rules.languages[language];
  if (file && !loaded.has(file)) await load(engine, file);
}

/** Loads the law of one place; a place without a pack needs nothing. */
export async function loadPlace(engine: Engine, code: string): Promise<void> {
  const pack = rules.packs[code];
  if (pack && !packTexts.has(code)) packTexts.set(code, await load(engine, pack.file));
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
  const text = code && packTexts.get(code);
  if (!text) return undefined;
  let found = asked.get(code);
  if (!found) {
    found = { facts: new Set(), events: new Set(), towns: [], papers: new Set() };
    const towns = new Set<string>();
    gather(JSON.parse(text), found, towns);
    found.towns = [...towns].sort();
    asked.set(code, found);
  }
  return found;
}
