// Whether data that comes from outside (a file, the browser's store) has the shape of a case, as far as the page relies on it. What does
// not fit is left out and named; whether the values themselves make sense is for the engine.

import type { CaseFile } from './case';
import { inPresentNames, letterKindNow } from './older';
import { noEdits, type LetterEdits, type OwnWords } from './letter';

/** Charges of one case; as many as the engine takes. */
export const mostLines = 5000;
/** Signs of one text of a case: far more than the longest wording of a charge. */
export const longestText = 20_000;
/** Bytes of a case file without what is attached; the engine takes 16 MiB. */
export const largestCase = 8 * 1024 * 1024;
const deepest = 12;

/** The newest version of the case file that is known here. */
export const newestVersion = 2;

export interface Shaped {
  subject: CaseFile;
  /** JSON Pointers of what was left out. */
  dropped: string[];
}

type Plain = Record<string, unknown>;
const isPlain = (v: unknown): v is Plain => typeof v === 'object' && v !== null && !Array.isArray(v);
const isShort = (v: unknown): v is string => typeof v === 'string' && v.length <= longestText;
type Check = (value: unknown, at: string) => unknown;

/** The checks of one file, and what they left out. */
class Shaper {
  readonly dropped: string[] = [];

  private drop(at: string): undefined {
    // A file that fits nowhere is said to fit nowhere; a hundred places say no more than twenty.
    if (this.dropped.length < 100) this.dropped.push(at);
    return undefined;
  }

  readonly text: Check = (v, at) => (v === null || isShort(v) ? v : this.drop(at));

  /** A value with nothing too long or too deep in it. */
  readonly value: Check = (v, at) => this.within(v, at, 0);

  private within(v: unknown, at: string, depth: number): unknown {
    if (typeof v === 'string') return this.text(v, at);
    if (typeof v !== 'object' || v === null) return v;
    if (depth > deepest) return this.drop(at);
    if (Array.isArray(v)) {
      if (v.length > mostLines) return this.drop(at);
      return v.map((x, i) => this.within(x, `${at}/${i}`, depth + 1)).filter((x) => x !== undefined);
    }
    return this.members(v as Plain, at, () => (x, place) => this.within(x, place, depth + 1));
  }

  members(v: Plain, at: string, checkOf: (name: string) => Check): Plain {
    const kept = Object.entries(v).flatMap(([name, value]): [string, unknown][] => {
      const place = `${at}/${name.replace(/~/g, '~0').replace(/\//g, '~1')}`;
      const fits = name === '__proto__' ? this.drop(place) : checkOf(name)(value, place);
      return fits === undefined ? [] : [[name, fits]];
    });
    return Object.fromEntries(kept);
  }

  readonly object =
    (own: Record<string, Check> = {}): Check =>
    (v, at) =>
      v === null ? undefined : isPlain(v) ? this.members(v, at, (name) => own[name] ?? this.value) : this.drop(at);

  readonly list =
    (item: Check, most = mostLines): Check =>
    (v, at) => {
      if (v === null) return undefined;
      if (!Array.isArray(v)) return this.drop(at);
      if (v.length > most) this.drop(`${at}/${most}`);
      return v.slice(0, most).flatMap((x, i) => {
        const fits = x === null ? this.drop(`${at}/${i}`) : item(x, `${at}/${i}`);
        return fits === undefined ? [] : [fits];
      });
    };

  /** Objects whose members `needed` must be texts. */
  readonly pairs = (...needed: string[]): Check =>
    this.list((v, at) => (isPlain(v) && needed.every((n) => isShort(v[n])) ? this.value(v, at) : this.drop(at)));
}

/** Every charge has an id of its own: the first to bear one keeps it. */
function withIds(lines: Plain[]): Plain[] {
  const used = new Set<unknown>();
  const own = lines.map(({ id }) => {
    const takes = typeof id === 'string' && id !== '' && !used.has(id);
    if (takes) used.add(id);
    return takes;
  });
  let next = 1;
  return lines.map((line, i) => {
    if (own[i]) return line;
    while (used.has(String(next))) next++;
    return { ...line, id: String(next++) };
  });
}

/** The case in `data`, or undefined where it is none. */
export function asCase(data: unknown): Shaped | undefined {
  if (!isPlain(data) || !('wearline' in data)) return undefined;
  if (data['lines'] != null && !Array.isArray(data['lines'])) return undefined;
  const s = new Shaper();
  const texts = s.list(s.text);
  const line = s.object({
    text: s.text,
    kind: s.text,
    element: s.text,
    finding: s.text,
    location: s.text,
    costComponents: s.pairs('kind'),
    supportingDocuments: texts,
    missingDocuments: texts,
    landlordFactors: texts,
    chargedQuantity: s.object(),
    damagedQuantity: s.object(),
  });
  const subject = s.members(inPresentNames(data), '', (name) => {
    switch (name) {
      case 'title':
      case 'jurisdiction':
      case 'locality':
      case 'side':
      case 'language':
        return s.text;
      case 'tenancy':
      case 'circumstances':
        return s.object();
      case 'records':
        return s.object();
      case 'statement':
        return s.object({ enclosedDocuments: texts, missingDocuments: texts });
      case 'deposits':
        return s.list(s.object(), 100);
      case 'events':
        return s.pairs('kind', 'date');
      case 'lines':
        return s.list(line);
      case 'walkThrough':
        return s.object({ rooms: s.pairs('id'), items: s.pairs('id', 'room', 'element'), moveOutTasks: texts });
      default:
        return s.value;
    }
  });
  const nothingSaid = Object.fromEntries(Object.entries(subject).filter(([, v]) => v !== null));
  const lines = withIds((nothingSaid['lines'] as Plain[] | undefined) ?? []);
  return { subject: { ...nothingSaid, lines } as unknown as CaseFile, dropped: s.dropped };
}

const texts = (v: unknown): string[] => (Array.isArray(v) ? v.filter(isShort).slice(0, mostLines) : []);

/** What a person did with the letters, as far as `data` holds it. */
export function asLetterEdits(data: unknown): LetterEdits {
  if (!isPlain(data)) return noEdits;
  const own = isPlain(data['own']) ? Object.entries(data['own']) : [];
  const ofLetter = (key: string) => key.replace(/^[^/]*/, letterKindNow);
  const isOwn = (v: unknown): v is OwnWords => isPlain(v) && isShort(v['text']) && isShort(v['insteadOf']);
  return {
    ...(data as object),
    kind: isShort(data['kind']) ? letterKindNow(data['kind']) : '',
    own: Object.fromEntries(own.flatMap(([key, v]) => (isOwn(v) && key !== '__proto__' ? [[ofLetter(key), v]] : []))),
    off: texts(data['off']),
    on: texts(data['on']),
  };
}
