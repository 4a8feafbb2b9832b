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

export interface Catalogue {
  groups: Named[];
  elements: Element[];
  causes: Named[];
  atMoveIn: Named[];
  landlordFactors: Named[];
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
}

/** The elements (and, where the words point to one, the findings) whose words begin with every word of `query`. */
export function search(c: Catalogue, query: string): Hit[] {
  const wanted = plain(query).split(/\W+/).filter(Boolean);
  if (wanted.length === 0) return c.elements.map((element) => ({ element, finding: null }));
  const holds = (text: string) => {
    const words = plain(text).split(/\W+/);
    return (w: string) => words.some((x) => x.startsWith(w));
  };
  return c.elements.flatMap((element): Hit[] => {
    const inElement = holds(`${element.label} ${element.covers} ${element.id}`);
    if (wanted.every(inElement)) return [{ element, finding: null }];
    return element.findings
      .filter((f) => {
        const inFinding = holds(`${f.label} ${f.description}`);
        return wanted.every((w) => inElement(w) || inFinding(w)) && wanted.some(inFinding);
      })
      .map((finding) => ({ element, finding }));
  });
}
