// A letter as a .docx file.

import {
  AlignmentType,
  BorderStyle,
  Document,
  Packer,
  Paragraph,
  Table,
  TableCell,
  TableRow,
  TextRun,
  WidthType,
} from 'docx';
import type { Paragraph as Part } from '../case/letter';
import { forLetter } from '../case/plain';

/** Every word processor has it, or one of the same widths: a letter is as long on each of them. */
const font = 'Times New Roman';
const lines = (text: string): TextRun[] =>
  forLetter(text)
    .split('\n')
    .map((t, i) => new TextRun({ text: t, break: i === 0 ? 0 : 1 }));
const spaced = { after: 64, line: 240 };

const none = { style: BorderStyle.NONE, size: 0, color: 'auto' };
const rule = { style: BorderStyle.SINGLE, size: 4, color: '999999' };

/** In twentieths of a point: US Letter paper and its margins. */
const paper = { width: 12_240, height: 15_840, side: 1_130, end: 840 };
/** In half points. A note for one's own use may be smaller than a letter. */
const sizes = { letter: 22, note: 20 };

/** The first column holds the words of a charge, the others sums; or names what the second tells. */
const widths = (columns: number, sums: boolean): number[] => {
  const all = paper.width - 2 * paper.side;
  const share = sums ? [0.7, 0.6, 0.34] : [0.28, 0.5, 0.34]; // of two columns, of three, of more
  const first = Math.round(all * share[Math.min(columns, 4) - 2]!);
  return Array.from({ length: columns }, (_, i) => (i === 0 ? first : Math.floor((all - first) / (columns - 1))));
};
/** A sum or a range of sums. */
const isSum = (text: string): boolean =>
  /\d/.test(text) && /^\P{L}*$/u.test(text.replace(/\b(up to|to|hasta|de|a)\b/g, ''));

function table(head: string[], rows: string[][]): Table {
  const columns = Math.max(head.length, ...rows.map((r) => r.length));
  const sums = Array.from({ length: columns }, (_, i) => i > 0 && rows.some((r) => isSum(r[i] ?? '')));
  const width = widths(columns, sums.includes(true));
  const cell = (text: string, i: number, bold: boolean) =>
    new TableCell({
      borders: { top: none, left: none, right: none, bottom: rule },
      margins: { top: 0, bottom: 0, right: 120 },
      width: { size: width[i]!, type: WidthType.DXA },
      children: [
        new Paragraph({
          alignment: sums[i] && (bold || isSum(text)) ? AlignmentType.RIGHT : AlignmentType.LEFT,
          children: [new TextRun({ text: forLetter(text), bold })],
        }),
      ],
    });
  const row = (cells: string[], bold: boolean) =>
    new TableRow({ tableHeader: bold, cantSplit: true, children: cells.map((c, i) => cell(c, i, bold)) });
  return new Table({
    columnWidths: width,
    rows: [...(head.length ? [row(head, true)] : []), ...rows.map((r) => row(r, false))],
  });
}

const part = (p: Part): (Paragraph | Table)[] => [
  ...(p.text
    ? [
        new Paragraph({
          spacing: p.rows.length ? { ...spaced, after: 30 } : spaced,
          keepLines: true,
          keepNext: p.rows.length > 0,
          children: lines(p.text),
        }),
      ]
    : []),
  ...(p.rows.every((r) => r.length === 1)
    ? p.rows.map(
        (r, i) =>
          new Paragraph({
            spacing: { after: i + 1 < p.rows.length ? 0 : spaced.after },
            bullet: { level: 0 },
            children: lines(r[0] ?? ''),
          }),
      )
    : [table(p.header, p.rows), new Paragraph({ spacing: { after: 20, line: 60 } })]),
];

export const word = (title: string, paragraphs: Part[], own = false): Promise<Blob> =>
  Packer.toBlob(
    new Document({
      title: forLetter(title),
      creator: 'Wearline',
      styles: { default: { document: { run: { font, size: own ? sizes.note : sizes.letter } } } },
      sections: [
        {
          properties: {
            page: {
              size: { width: paper.width, height: paper.height },
              margin: { top: paper.end, bottom: paper.end, left: paper.side, right: paper.side },
            },
          },
          children: paragraphs.flatMap(part),
        },
      ],
    }),
  );
