// A letter as the engine builds it: paragraphs with a role each; the page, text, .docx and print are views.

export interface Paragraph {
  id: string;
  role: string;
  text?: string;
  items?: string[];
  table?: { head: string[]; rows: string[][] };
}

export interface Letter {
  kind: string;
  language: string;
  title?: string;
  why?: string;
  kinds?: { id: string; label: string; why?: string; proposed?: boolean }[];
  paragraphs: Paragraph[];
  errors?: { code: string; at: string; text: string }[];
}

/** The letter as plain text, one blank line between paragraphs. */
export function asText(letter: Letter): string {
  const block = (p: Paragraph): string =>
    [
      p.text ?? '',
      ...(p.items ?? []).map((i) => `- ${i}`),
      ...(p.table ? [p.table.head.join('\t'), ...p.table.rows.map((r) => r.join('\t'))] : []),
    ]
      .filter(Boolean)
      .join('\n');
  return letter.paragraphs.map(block).filter(Boolean).join('\n\n') + '\n';
}
