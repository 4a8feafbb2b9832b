// Which state or province a statement itself names: by the addresses in it, else by the law it cites. It is proposed, never taken unseen.

/** A place with a law here, such as US-CA, and its name. */
export interface NamedPlace {
  code: string;
  name: string;
}
export interface PlaceFound {
  code: string;
  /** The first line that names it, from 1. */
  line: number;
}

/** The letters of a state before its postal code; the same of a province. */
const addresses: [string, RegExp][] = [
  ['US', /\b([A-Z]{2})\.?,?\s+\d{5}(?:-\d{4})?(?!\d)/g],
  ['CA', /\b([A-Z]{2}),?\s+[A-Z]\d[A-Z]\s?\d[A-Z]\d\b/g],
];
const postalCode = String.raw`,?\s+(?:\d{5}(?:-\d{4})?(?!\d)|[A-Z]\d[A-Z]\s?\d[A-Z]\d\b)`;
const law = String.raw`\s+(?:(?:Civil|General|Revised|Property|Residential|Landlord)\s+)*(?:Code|Statutes?|Law|Laws|Act)\b`;

const escaped = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');

/** The one place all those found agree on. */
function only(found: PlaceFound[]): PlaceFound | undefined {
  return new Set(found.map((f) => f.code)).size === 1 ? found[0] : undefined;
}

export function placeNamed(lines: readonly string[], places: readonly NamedPlace[]): PlaceFound | undefined {
  const known = new Set(places.map((p) => p.code));
  const where = (find: (line: string) => string[]): PlaceFound[] =>
    lines.flatMap((text, i) => find(text).map((code) => ({ code, line: i + 1 })));
  /** Those that are called by their name, or by their two letters, before what stands there. */
  const called = (before: string) => {
    const patterns = places.map((p) => ({
      code: p.code,
      is: new RegExp(String.raw`\b(?:${escaped(p.name)}|${p.code.slice(3)})${before}`),
    }));
    return where((line) => patterns.filter((p) => p.is.test(line)).map((p) => p.code));
  };
  const byLetters = where((line) =>
    addresses
      .flatMap(([country, form]) => [...line.matchAll(form)].map((m) => `${country}-${m[1]}`))
      .filter((code) => known.has(code)),
  );
  const addressed = [...byLetters, ...called(postalCode)].sort((a, b) => a.line - b.line);
  return addressed.length ? only(addressed) : only(called(law));
}
