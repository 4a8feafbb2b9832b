// What the rules know of a walk through a home: the rooms and their things, the faults of each state, what an ordinary person can do about
// them, and what is left to others.

import home from '../../../engine/rules/walk/home.json';
import advices from '../../../engine/rules/walk/advice.json';
import dangers from '../../../engine/rules/hazards.json';
import type { Spoken } from '../say/spoken';
import type { Seen, WalkItem, WalkThrough } from './walk';

export interface RoomKind {
  id: string;
  label: Spoken;
  /** A list within: one of them is there. */
  things: (string | string[])[];
}
export const roomKinds = home.rooms as RoomKind[];
export const kindOfRoom = (id: string | undefined): RoomKind | undefined => roomKinds.find((r) => r.id === id);

type States = Partial<Record<Exclude<Seen, 'fine'>, string[]>> & { dirtyAs?: string };
const things = home.things as Record<string, States>;

/** Every thing that can be met in a home. */
export const allThings = Object.keys(things);

/** The states a thing can be in. */
export const statesOf = (element: string): Seen[] =>
  (['fine', 'worn', 'damaged', 'dirty', 'missing'] as const).filter(
    (s) => s === 'fine' || things[element]?.[s]?.length || (s === 'dirty' && things[element]?.dirtyAs),
  );

/** The faults that make a thing worn, damaged, dirty or missing. */
export const faultsOf = (element: string, state: Seen | undefined): string[] =>
  state && state !== 'fine' ? (things[element]?.[state] ?? []) : [];

/** What a thing is judged as: its own fault; where none was chosen, the only one its state can be, ordinary wear, or dirt. */
export function judgedAs(t: WalkItem): { element: string; finding?: string } {
  if (t.finding) return { element: t.element, finding: t.finding };
  const faults = faultsOf(t.element, t.conditionAtMoveOut);
  const dirt = t.conditionAtMoveOut === 'dirty' ? things[t.element]?.dirtyAs : undefined;
  if (dirt) {
    const [element, finding] = dirt.split('/') as [string, string];
    return { element, finding };
  }
  const only = t.conditionAtMoveOut === 'worn' || faults.length === 1 ? faults[0] : undefined;
  return only ? { element: t.element, finding: only } : { element: t.element };
}

export interface Advice {
  at: string[];
  who: 'self' | 'ask' | 'licensed';
  minutes: number;
  text: Spoken;
}
const rows = advices.advice as Advice[];

/** What can be done about a thing: the row that names its fault, its state, the thing itself, or its state alone. */
export function adviceFor(t: WalkItem): Advice {
  const { element, finding } = { finding: t.finding ?? judgedAs(t).finding, element: t.element };
  const places = [`${element}/${finding}`, `${element}@${t.conditionAtMoveOut}`, element, `@${t.conditionAtMoveOut}`];
  const found = places.map((p) => rows.find((r) => r.at.includes(p))).find(Boolean);
  return found ?? rows[rows.length - 1]!;
}

export interface Hazard {
  code: string;
  at: string[];
  stop: string[];
  builtBefore?: number;
  source: string[];
  text: Spoken;
}
export const hazards = dangers.hazards as Hazard[];

interface HazardSource {
  title: string;
  publisher: string;
  read: string;
}
const sources = dangers.sources as Record<string, HazardSource>;
export const sourcesOf = (h: Hazard): HazardSource[] => h.source.flatMap((id) => sources[id] ?? []);

const names = (places: string[], element: string, finding: string | undefined): boolean =>
  places.includes(element) || (finding !== undefined && places.includes(`${element}/${finding}`));

/** A danger of old paint is none in a home that is known to be newer. */
const holds = (h: Hazard, w: WalkThrough): boolean => !h.builtBefore || w.builtBefore1978 !== false;

const placesOf = (t: WalkItem): { element: string; finding?: string }[] => [
  { element: t.element, finding: t.finding },
  judgedAs(t),
];

/** The dangers of a thing as it was seen. */
export const hazardsOf = (t: WalkItem, w: WalkThrough): Hazard[] =>
  hazards.filter((h) => holds(h, w) && placesOf(t).some((p) => names(h.at, p.element, p.finding)));

/** Those of them for which it is left to a licensed worker. */
export const stopsOf = (t: WalkItem, w: WalkThrough): Hazard[] =>
  hazards.filter((h) => holds(h, w) && placesOf(t).some((p) => names(h.stop, p.element, p.finding)));
