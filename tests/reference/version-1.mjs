// Texts of version 1 and 2 of the format into one another, by the table of what was renamed: a second translator beside the engine's.

import { readFileSync } from 'node:fs';

const table = JSON.parse(readFileSync(new URL('../../engine/rules/schema/version-1.json', import.meta.url), 'utf8'));

const membersOf = (place) => ({ ...table.shapes[place?.shape], ...place?.members });

/** [present, former] names of the words of a place. */
const wordsOf = (place) => [
  ...(place?.words ?? []).flatMap((list) => Object.entries(table.words[list])),
  ...Object.entries(table.shapes[place?.['members-of']] ?? {}).filter(([, m]) => m.was).map(([now, m]) => [now, m.was]),
];

/** Both ways: what a name or word is called, given its place, and the place of a member by the name it is given under. */
const toVersion1 = {
  name: (members, name) => members[name]?.was ?? name,
  below: (members, name) => members[name] ?? members['*'],
  word: (place, word) => wordsOf(place).find(([now]) => now === word)?.[1] ?? word,
  pointer: (pointer) => renamedPointer(pointer, toVersion1),
};
const toVersion2 = {
  present: (members, name) => Object.keys(members).find((now) => (members[now].was ?? now) === name) ?? name,
  name: (members, name) => toVersion2.present(members, name),
  below: (members, name) => members[toVersion2.present(members, name)] ?? members['*'],
  word: (place, word) => wordsOf(place).find(([, was]) => was === word)?.[0] ?? word,
  pointer: (pointer) => renamedPointer(pointer, toVersion2),
};

function renamedPointer(pointer, way) {
  let place = table.documents.case;
  const out = pointer.split('/').slice(1).map((segment) => {
    if (/^\d+$/.test(segment)) return segment;
    const members = membersOf(place);
    place = way.below(members, segment);
    return way.name(members, segment);
  });
  return out.map((s) => `/${s}`).join('');
}

/** The tokens of a JSON text, what stands between them included. */
const tokens = (text) => text.match(/"(?:[^"\\]|\\.)*"|[{}[\]:,]|\s+|[^\s{}[\]:,"]+/g) ?? [];

function renamed(text, document, way) {
  const parts = tokens(text);
  let at = 0;
  let out = '';
  const copy = () => (out += parts[at++]);
  const spaces = () => { while (/^\s/.test(parts[at] ?? '')) copy(); };
  const put = (token, place) => {
    if (token[0] !== '"') return way.word(place, token);
    const said = token.slice(1, -1);
    return `"${place?.pointer ? way.pointer(said) : way.word(place, said)}"`;
  };
  const value = (place) => {
    spaces();
    if (parts[at] === '[') {
      copy();
      for (spaces(); parts[at] !== ']'; spaces()) parts[at] === ',' ? copy() : value(place);
      return copy();
    }
    if (parts[at] !== '{') return (out += put(parts[at++], place));
    copy();
    const members = membersOf(place);
    for (spaces(); parts[at] !== '}'; spaces()) {
      if (parts[at] === ',') { copy(); continue; }
      const name = parts[at++].slice(1, -1);
      if (way === toVersion1 && members[name]?.was === null) {
        at += 2; // the colon, and a value of one token
        spaces();
        if (parts[at] === ',') at += 1;
        else out = out.replace(/,\s*$/, '');
        continue;
      }
      out += `"${way.name(members, name)}"`;
      spaces();
      copy();
      value(way.below(members, name));
    }
    return copy();
  };
  value(table.documents[document]);
  return out + parts.slice(at).join('');
}

const withVersion = (text, version) => text.replace(/"wearline"(\s*:\s*)[12]/, `"wearline"$1${version}`);

/** A case's text, its layout kept. */
export const caseInVersion2 = (text) => withVersion(renamed(text, 'case', toVersion2), 2);
export const caseInVersion1 = (text) => withVersion(renamed(text, 'case', toVersion1), 1);
/** An answer's text in the names of version 1: "assessment", "letter", "reading", "recognition", "catalogue". */
export const answerInVersion1 = (text, document) => renamed(text, document, toVersion1);
export { table };

/** What a word of one of the table's lists is called now. */
export const wordNow = (list, word) => Object.entries(table.words[list]).find(([, was]) => was === word)?.[0] ?? word;
