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

const font = 'Cambria';
const lines = (text: string): TextRun[] =>
  forLetter(text)
    .split('\n')
    .map((t, i) => new TextRun({ text: t, break: i === 0 ? 0 : 1 }));
const spaced = { after: 200, line: 276 };

const none = { style: BorderStyle.NONE, size: 0, color: 'auto' };
const rule = { style: BorderStyle.SINGLE, size: 4, color: '999999' };

function table(head: string[], rows: string[][]): Table {
  const cell = (text: string, i: number, bold: boolean) =>
    new TableCell({
      borders: { top: none, left: none, right: none, bottom: rule },
      margins: { top: 40, bottom: 40, right: 120 },
      children: [
        new Paragraph({
          alignment: i > 0 && /^[^A-Za-z]*$/.test(text) ? AlignmentType.RIGHT : AlignmentType.LEFT,
          children: [new TextRun({ text: forLetter(text), bold })],
        }),
      ],
    });
  const row = (cells: string[], bold: boolean) =>
    new TableRow({ tableHeader: bold, cantSplit: true, children: cells.map((c, i) => cell(c, i, bold)) });
  return new Table({
    width: { size: 100, type: WidthType.PERCENTAGE },
    rows: [...(head.length ? [row(head, true)] : []), ...rows.map((r) => row(r, false))],
  });
}

const part = (p: Part): (Paragraph | Table)[] => [
  ...(p.text ? [new Paragraph({ spacing: spaced, keepLines: true, children: lines(p.text) })] : []),
  ...(p.rows.every((r) => r.length === 1)
    ? p.rows.map((r) => new Paragraph({ spacing: { after: 80 }, bullet: { level: 0 }, children: lines(r[0] ?? '') }))
    : [table(p.head, p.rows), new Paragraph({ spacing: { after: 120 } })]),
];

export const word = (title: string, paragraphs: Part[]): Promise<Blob> =>
  Packer.toBlob(
    new Document({
      title: forLetter(title),
      creator: 'Wearline',
      styles: { default: { document: { run: { font, size: 23 } } } },
      sections: [
        {
          properties: { page: { margin: { top: 1440, bottom: 1440, left: 1440, right: 1440 } } },
          children: paragraphs.flatMap(part),
        },
      ],
    }),
  );
