// A case file of version 1 in the names of the present version, by the table that the engine reads such a file with.

import { documents, shapes, words } from '../../../engine/rules/schema/version-1.json';

interface Place {
  was?: string | null;
  words?: string[];
  'members-of'?: string;
  shape?: string;
  members?: Record<string, Place>;
}

type Plain = Record<string, unknown>;
const lists = words as Record<string, Record<string, string>>;
const shared = shapes as Record<string, Record<string, Place>>;

const membersOf = (place: Place): Record<string, Place> => ({ ...shared[place.shape ?? ''], ...place.members });

/** What the words of a place are called now, by what they were called. */
function wordsOf(place: Place): Map<string, string> {
  const listed = (place.words ?? []).flatMap((list) => Object.entries(lists[list] ?? {}));
  const names = Object.entries(shared[place['members-of'] ?? ''] ?? {}).map(([now, { was }]) => [now, was ?? now]);
  return new Map([...listed, ...names].map(([now, was]) => [was as string, now as string]));
}

function renamed(value: unknown, place: Place): unknown {
  if (Array.isArray(value)) return value.map((item) => renamed(item, place));
  if (typeof value === 'string') return wordsOf(place).get(value) ?? value;
  if (typeof value !== 'object' || value === null) return value;
  const members = membersOf(place);
  const now = new Map(Object.entries(members).map(([name, { was }]) => [was ?? name, name]));
  return Object.fromEntries(
    Object.entries(value).map(([was, v]) => {
      const name = now.get(was) ?? was;
      return [name, renamed(v, members[name] ?? {})];
    }),
  );
}

/** A case of the present version; one of version 1 in its names. */
export const inPresentNames = (data: Plain): Plain =>
  data['wearline'] === 1 ? { ...(renamed(data, documents.case as Place) as Plain), wearline: 2 } : data;

/** A kind of letter by its present name. */
export const letterKindNow = (kind: string): string =>
  renamed(kind, documents['letter options'].members.kind as Place) as string;
