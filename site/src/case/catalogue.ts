// What a person can choose from, in one language, as the engine lists it.

import type * as answers from './answers';

export type { Element, Finding, Named } from './answers';
import type { Element, Finding, Named } from './answers';

export interface Fact {
  id: string;
  type: 'yes-no' | 'count' | 'money' | 'text';
  at: string | null;
  question: string;
  choices?: string[];
  derived?: boolean;
}

export interface EventKind {
  id: string;
  at: string | null;
  question: string;
}

/** A city or county with rules of its own over those of its state. */
export type Locality = answers.Catalogue['localities'][number];

/** As the engine lists it, and the facts, events and documents that the rules of the place ask about. */
export interface Catalogue extends Pick<
  answers.Catalogue,
  | 'groups'
  | 'elements'
  | 'causes'
  | 'conditionsAtMoveIn'
  | 'landlordFactors'
  | 'depreciationMethods'
  | 'usefulLifeSources'
  | 'localities'
> {
  facts: Fact[];
  events: EventKind[];
  documents: Named[];
}

const moneyKinds = ['rent', 'fee', 'utility'];
/** True if a charge of this kind is about the state of the home, not about money owed. */
export const aboutCondition = (kind: unknown): boolean => !moneyKinds.includes(String(kind ?? ''));

export const nothingToChoose: Catalogue = {
  groups: [],
  elements: [],
  causes: [],
  conditionsAtMoveIn: [],
  landlordFactors: [],
  depreciationMethods: [],
  usefulLifeSources: [],
  localities: [],
  facts: [],
  events: [],
  documents: [],
};

export const elementOf = (c: Catalogue, id: string | null | undefined): Element | undefined =>
  id ? c.elements.find((e) => e.id === id) : undefined;

/** Where the case holds a fact: its own place, else the circumstances. */
export const placeOfFact = (f: Fact): string => f.at ?? `/circumstances/${f.id}`;

const plain = (text: string): string => text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase();

export interface Hit {
  element: Element;
  finding: Finding | null;
  /** True where the names themselves hold every word; false where only a description does. */
  byName: boolean;
}

/** Tells of a word whether one of the words of `text` begins with it. */
function holds(text: string): (word: string) => boolean {
  const words = plain(text).split(/\W+/);
  return (w) => words.some((x) => x.startsWith(w));
}

function hitsIn(element: Element, wanted: string[]): Hit[] {
  const named = holds(element.label);
  const told = holds(`${element.label} ${element.covers} ${element.id}`);
  if (wanted.every(told)) return [{ element, finding: null, byName: wanted.every(named) }];
  return element.findings.flatMap((finding): Hit[] => {
    const inName = holds(finding.label);
    const inWords = holds(`${finding.label} ${finding.description}`);
    if (!wanted.some(inWords) || !wanted.every((w) => told(w) || inWords(w))) return [];
    return [{ element, finding, byName: wanted.every((w) => named(w) || inName(w)) }];
  });
}

/** The elements (and, where the words point to one, the findings) whose words begin with every word of `query`; those named so first. */
export function search(c: Catalogue, query: string): Hit[] {
  const wanted = plain(query).split(/\W+/).filter(Boolean);
  if (wanted.length === 0) return c.elements.map((element) => ({ element, finding: null, byName: true }));
  const hits = c.elements.flatMap((element) => hitsIn(element, wanted));
  return [...hits.filter((h) => h.byName), ...hits.filter((h) => !h.byName)];
}
