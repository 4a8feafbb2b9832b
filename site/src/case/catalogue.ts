// What a person can choose from, in one language, as the engine lists it.

export interface Named {
  id: string;
  label: string;
}

export interface Finding extends Named {
  description: string;
  ask?: string | null;
}

export interface Element extends Named {
  group: string;
  covers: string;
  kind: string;
  seam?: { unit: string; text: string } | null;
  findings: Finding[];
}

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
export interface Locality {
  /** The place whose law it lies under: "US-IL". */
  of: string;
  id: string;
  name: string;
  /** What the case holds as its locality. */
  value: string;
  /** How a person tells that the home is inside. */
  inside: string;
  /** What could not be read and where to ask; else empty. */
  ask: string;
}

export interface Catalogue {
  groups: Named[];
  elements: Element[];
  causes: Named[];
  atMoveIn: Named[];
  landlordFactors: Named[];
  /** Ways to count what a thing was still worth, and the published tables of useful lives. */
  methods: (Named & { text: string })[];
  lifeSources: Named[];
  localities: Locality[];
  facts: Fact[];
  events: EventKind[];
  papers: Named[];
}

const moneyKinds = ['rent', 'fee', 'utility'];
/** True if a charge of this kind is about the state of the home, not about money owed. */
export const aboutCondition = (kind: unknown): boolean => !moneyKinds.includes(String(kind ?? ''));

export const nothingToChoose: Catalogue = {
  groups: [],
  elements: [],
  causes: [],
  atMoveIn: [],
  landlordFactors: [],
  methods: [],
  lifeSources: [],
  localities: [],
  facts: [],
  events: [],
  papers: [],
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
