// What a file is: by its first bytes, and by its name only where bytes do not tell.

export type FileKind =
  'pdf' | 'picture' | 'mail' | 'web-page' | 'text' | 'case' | 'word-file' | 'spreadsheet' | 'unknown';

/** The first bytes, each as one sign. */
const firstSigns = (bytes: Uint8Array, length: number): string =>
  new TextDecoder('latin1').decode(bytes.subarray(0, length));

const begins = (bytes: Uint8Array, text: string, at = 0): boolean =>
  [...text].every((c, i) => bytes[at + i] === c.charCodeAt(0));

/** Signatures of the formats' own specifications (PDF 2.0, PNG, JFIF, GIF 89a, WebP, TIFF 6.0, BMP, ISO base media for HEIC and AVIF). */
function byBytes(bytes: Uint8Array): FileKind | undefined {
  const head = firstSigns(bytes, 1024);
  if (head.includes('%PDF-')) return 'pdf';
  if (begins(bytes, '\x89PNG') || begins(bytes, '\xff\xd8\xff') || begins(bytes, 'GIF8') || begins(bytes, 'BM'))
    return 'picture';
  if (begins(bytes, 'RIFF') && begins(bytes, 'WEBP', 8)) return 'picture';
  if (begins(bytes, 'II*\0') || begins(bytes, 'MM\0*')) return 'picture';
  if (begins(bytes, 'ftyp', 4) && /^(hei|mif1|msf1|avi)/.test(head.slice(8, 12))) return 'picture';
  return undefined;
}

const byName: [RegExp, FileKind][] = [
  [/\.(docx?|odt|rtf|pages)$/i, 'word-file'],
  [/\.(xlsx?|xlsm|ods|numbers)$/i, 'spreadsheet'],
  [/\.eml$/i, 'mail'],
  [/\.html?$/i, 'web-page'],
  [/\.json$/i, 'case'],
];

/** Bytes no text has. UTF-16 has its mark. */
function isBinary(bytes: Uint8Array): boolean {
  if ((bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff)) return false;
  return bytes
    .subarray(0, 4096)
    .some((b) => b === 0 || (b < 32 && b !== 9 && b !== 10 && b !== 12 && b !== 13 && b !== 27));
}

export function kindOfFile(bytes: Uint8Array, name: string): FileKind {
  const known = byBytes(bytes) ?? byName.find(([pattern]) => pattern.test(name))?.[1];
  // A report of this page is a web page with the case in it.
  if (known === 'web-page') return firstSigns(bytes, bytes.length).includes('id="wearline-case"') ? 'case' : known;
  if (known) return known;
  if (isBinary(bytes)) return 'unknown';
  const head = firstSigns(bytes, 2048);
  if (
    /^(?:[A-Za-z-]+: .*\r?\n(?:[ \t].*\r?\n)*)*(?:MIME-Version|Content-Type): /m.test(head) &&
    /^[A-Za-z-]+: /.test(head)
  )
    return 'mail';
  return /^\s*<(?:!doctype html|html)/i.test(head) ? 'web-page' : 'text';
}
