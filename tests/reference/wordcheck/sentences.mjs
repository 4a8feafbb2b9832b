// Sentences, words, placeholders and figures of a text.

const ABBREVIATION = /\b(?:Mr|Mrs|Dr|St|No|vs|Jr|Sr|Inc|EE|UU|p|ej|Sra?)\.$/;

/** Splits at a full stop, question or exclamation mark before a space and a new beginning. */
export function sentences(text) {
  const out = [];
  let from = 0;
  for (const match of text.matchAll(/[.!?]["”’)]*\s+(?=["“‘(¿¡]*[\p{Lu}\d{])/gu)) {
    const end = match.index + match[0].trimEnd().length;
    if (ABBREVIATION.test(text.slice(from, end))) continue;
    out.push(text.slice(from, end).trim());
    from = match.index + match[0].length;
  }
  out.push(text.slice(from).trim());
  return out.filter(Boolean);
}

/** A placeholder counts as one word, as does a sum or a date's number. */
export const words = (text) => text.match(/[\p{L}\p{N}{$][\p{L}\p{N}}$.,'’%/-]*/gu) ?? [];

export const placeholders = (text) => [...text.matchAll(/\{(\w+)\}/g)].map((m) => m[1]).sort();

/** The numbers written in figures, "2,500.00" as 2500, "1/2" as two: what a translation must keep. */
export const figures = (text) =>
  (text.match(/\d+(?:,\d{3})*(?:\.\d+)?/g) ?? []).map((n) => String(Number(n.replace(/,/g, '')))).sort();
