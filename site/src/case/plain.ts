// Words as they may leave the page: for formats that cannot hold every sign, or in which some sign means more than itself.

/** Signs no XML 1.0 document may hold: control signs but tab and line ends, lone halves of pairs, and two that mark nothing. */
const notInXml =
  /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g;

/** Signs that are not seen and change how others are: the marks that turn the direction of writing, and breaks of no width. */
const unseen = /[\u200b\u200e\u200f\u202a-\u202e\u2060-\u2069\ufeff]/g;

/** Fit for XML. */
export const forXml = (text: string): string => text.replace(notInXml, '');

/** Fit for a letter: nothing in it that the eye does not see. */
export const forLetter = (text: string): string => forXml(text).replace(unseen, '');

/** One line, whatever line ends and control signs the text has. */
export const oneLine = (text: string): string => text.replace(/[\u0000-\u001f\u007f\u0085\u2028\u2029]+/g, ' ').trim();
