// Sums as a reader of pictures hands them over, and what was meant where a sign of one was misread.

/** "1,100,00" can only be one sum: the last mark parts the cents, so the others are the other mark. */
export const tidySum = (text: string): string =>
  text.replace(
    /^(\D*)(\d{1,3}(?:([.,])\d{3})+)\3(\d{2})(\D*)$/,
    (_, before: string, whole: string, mark: string, cents: string, after: string) => {
      const other = mark === ',' ? '.' : ',';
      return `${before}${whole.split(mark).join(other)}${mark}${cents}${after}`;
    },
  );

/** A sum with cents and nothing else. */
export const isSum = (text: string): boolean => /^[-(]?[-$]?\d{1,3}(?:[.,]?\d{3})*[.,]\d{2}[-)]?$/.test(text);

/** Two figures or more, and no letters: a sum, a date, a count. */
export const isFigure = (text: string): boolean => /\d.*\d/.test(text) && !/\p{L}{2}/u.test(text);

/** Letters that look like figures, and the figure each looks like. */
const alike: Record<string, string> = {
  O: '0',
  o: '0',
  Q: '0',
  D: '0',
  I: '1',
  l: '1',
  i: '1',
  '|': '1',
  '!': '1',
  Z: '2',
  z: '2',
  S: '5',
  s: '5',
  B: '8',
  g: '9',
};

/** Nothing but figures, what looks like them, and the marks of sums. */
export const likeFigure = (text: string): boolean =>
  /^[-($§]*[\dOoQDIli|!ZzSsBg][\dOoQDIli|!ZzSsBg.,:]*[-)]?$/.test(text) && /\d|[.,]/.test(text);

/** What is compared: the figures, what parts them, and whether it is taken off. */
export const bare = (text: string): string =>
  (/^[.\s]*-|^\(.*\)$|\d-$/.test(text) ? '-' : '') + text.replace(/[^\d.,]/g, '').replace(/^[.,]+|[.,]+$/g, '');

/** With `mark` before its cents. */
const marked = (sum: string, mark: '.' | ','): string => {
  const at = sum.search(/[.,]\d{2}\D*$/);
  return sum.slice(0, at).replace(/[.,]/g, mark === '.' ? ',' : '.') + mark + sum.slice(at + 1);
};

/** What parts the cents on a page, by most of its sums. */
export const markOf = (texts: readonly string[]): '.' | ',' =>
  texts.filter((t) => /,\d{2}\D*$/.test(t)).length > texts.filter((t) => /\.\d{2}\D*$/.test(t)).length ? ',' : '.';

/** The sum a text can have been: as it stands, with letters taken for figures, with the point of its cents put back. */
export function sumMeant(text: string, mark: '.' | ','): string | undefined {
  const sum = readAsSum(text);
  return sum && marked(sum, mark);
}

function readAsSum(text: string): string | undefined {
  const own = tidySum(text.replace(/^[.·\s_]+|[.·\s_,]+$/g, '').replace(/[§]/g, '$'));
  if (isSum(own)) return own;
  const figures = tidySum(
    [...own]
      .map((s) => alike[s] ?? s)
      .join('')
      .replace(/:/g, '.')
      .replace(/['"`*_~\s]/g, ''),
  );
  if (isSum(figures)) return figures;
  // "5000", "1,24000", "90-00", "50.0.0": the cents are the last two figures.
  const parts = /^([-($]*)(\d[\d.,-]*?)[.,-]?(\d)[.,-]?(\d)([-)]?)$/.exec(figures);
  if (!parts) return undefined;
  const [, before, whole, tens, units, after] = parts;
  const meant = `${before}${whole!.replace(/[.,-]+/g, '')}.${tens}${units}${after}`;
  return isSum(meant) ? meant : undefined;
}
