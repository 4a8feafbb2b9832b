// A letter as the engine builds it: paragraphs with a role each. A person may switch some off and write any of them their own way;
// the page, text, .docx and print are views of what is then left.

import type * as answers from './answers';
import type { Paragraph } from './answers';
import { forLetter } from './plain';

export type { Paragraph } from './answers';

export type Letter = Required<Omit<answers.Letter, 'engine'>>;

/** A person's own wording of a paragraph, and the engine's wording it took the place of. */
export interface OwnWords {
  text: string;
  insteadOf: string;
}

/** What a person did with the letters of a case: own words by kind and paragraph, paragraphs switched off and on. */
export interface LetterEdits {
  kind: string;
  own: Record<string, OwnWords>;
  off: string[];
  on: string[];
}

export const noEdits: LetterEdits = { kind: '', own: {}, off: [], on: [] };

/** Notes for the adviser alone: no part of what is handed to anybody. */
export const isPrivate = (letter: Letter): boolean => letter.kind === 'adviser-note';

const keyOf = (letter: Letter, p: Paragraph): string => `${letter.kind}/${p.id}`;
export const ownWords = (letter: Letter, p: Paragraph, edits: LetterEdits): OwnWords | undefined =>
  edits.own[keyOf(letter, p)];

/** True if the facts changed what the engine would say since the person wrote their own words. */
export const isStale = (own: OwnWords, p: Paragraph): boolean => own.insteadOf !== p.text;

/** The edits with a paragraph in the person's own words; the engine's words again take them back. */
export function withOwnWords(letter: Letter, p: Paragraph, edits: LetterEdits, text: string): LetterEdits {
  const { [keyOf(letter, p)]: _, ...rest } = edits.own;
  return { ...edits, own: text === p.text ? rest : { ...rest, [keyOf(letter, p)]: { text, insteadOf: p.text } } };
}

/** Whether a paragraph is in the letter as last switched; the engine's answer to that may still be on its way. */
export const isOn = (p: Paragraph, edits: LetterEdits): boolean =>
  !edits.off.includes(p.id) && (p.included || edits.on.includes(p.id));

export function withSwitch(p: Paragraph, edits: LetterEdits, on: boolean): LetterEdits {
  const others = (list: string[]) => list.filter((id) => id !== p.id);
  return {
    ...edits,
    off: on ? others(edits.off) : [...others(edits.off), p.id],
    on: on ? [...others(edits.on), p.id] : others(edits.on),
  };
}

/** The paragraphs that are sent, in the person's own words where there are such. The caution is for the reader of the page. */
export const toSend = (letter: Letter, edits: LetterEdits): Paragraph[] =>
  letter.paragraphs
    .filter((p) => p.included && p.role !== 'caution')
    .map((p) => ({
      ...p,
      text: forLetter(ownWords(letter, p, edits)?.text ?? p.text),
      rows: p.rows.map((row) => row.map(forLetter)),
    }))
    .filter((p) => p.text.trim() !== '' || p.rows.length > 0);

/** A row of a table as one line: the cells after the first each under its heading. */
function rowText(p: Paragraph, [first = '', ...cells]: string[]): string {
  if (cells.length === 0) return `- ${first}`;
  const named = cells
    .map((c, i) => (c && cells.length > 1 && p.header[i + 1] ? `${p.header[i + 1]} ${c}` : c))
    .filter(Boolean);
  return named.length ? `${first}: ${named.join('; ')}` : first;
}

/** Paragraphs as plain text, a blank line between them. */
export const asText = (paragraphs: Paragraph[]): string =>
  paragraphs.map((p) => [p.text, ...p.rows.map((r) => rowText(p, r))].filter(Boolean).join('\n')).join('\n\n') + '\n';
