// A letter the person could send, built by the engine from the case as it stands.

import { html, nothing, type TemplateResult } from 'lit/html.js';
import type { Desk } from '../../app/desk';
import { keepFile, nameFor } from '../../app/case-files';
import { say } from '../../app/wording';
import { asText, type Letter, type Paragraph } from '../../case/letter';
import './letter.css';

function paragraph(p: Paragraph): TemplateResult {
  return html`<div class="paragraph" data-role=${p.role}>
    ${p.text ? html`<p>${p.text}</p>` : nothing}
    ${p.items?.length ? html`<ul>${p.items.map((i) => html`<li>${i}</li>`)}</ul>` : nothing}
    ${
      p.table
        ? html`<table>
          <thead><tr>${p.table.head.map((h) => html`<th scope="col">${h}</th>`)}</tr></thead>
          <tbody>${p.table.rows.map((r) => html`<tr>${r.map((c) => html`<td>${c}</td>`)}</tr>`)}</tbody>
        </table>`
        : nothing
    }
  </div>`;
}

async function copy(d: Desk, letter: Letter): Promise<void> {
  try {
    await navigator.clipboard.writeText(asText(letter));
    d.tell(say('page.notice.copied.letter'));
  } catch {
    d.tell(say('page.notice.notCopied'));
  }
}

async function keepWord(d: Desk, letter: Letter): Promise<void> {
  const { word } = await import('../../out/word');
  keepFile(
    `${nameFor(d.case)}-letter.docx`,
    await word(letter),
    'application/vnd.openxmlformats-officedocument.wordprocessingml.document',
  );
}

export function letter(d: Desk): TemplateResult | typeof nothing {
  if (!d.result || d.case.lines.length === 0) return nothing;
  const draft = d.letter();
  if (!draft) return nothing;
  return html`<section class="letter" id="letter" aria-labelledby="letter-title">
    <div class="letter-side">
      <h2 id="letter-title">${say(`page.letter.title.${d.side}`)}</h2>
      <p>${say('page.letter.says')}</p>
      ${
        draft.kinds && draft.kinds.length > 1
          ? html`<div class="field">
            <label for="letter-kind">${say('page.letter.kind')}</label>
            <select id="letter-kind" class="entry" @change=${(e: Event) => {
              d.sheet.letterKind = (e.target as HTMLSelectElement).value;
              d.draw();
            }}>
              ${draft.kinds.map((k) => html`<option value=${k.id} ?selected=${k.id === draft.kind}>${k.label}</option>`)}
            </select>
            ${draft.why ? html`<p class="help">${draft.why}</p>` : nothing}
          </div>`
          : nothing
      }
      <p class="letter-tools">
        <button type="button" class="tool" @click=${() => void copy(d, draft)}>${say('page.letter.copy')}</button>
        <button type="button" class="tool" @click=${() => d.printOnly('letter')}>${say('page.letter.print')}</button>
        <button type="button" class="tool" @click=${() => void keepWord(d, draft)}>${say('page.letter.word')}</button>
        <button type="button" class="tool" @click=${() => keepFile(`${nameFor(d.case)}-letter.txt`, asText(draft), 'text/plain')}>
          ${say('page.letter.text')}
        </button>
      </p>
    </div>
    <article class="sheet" lang=${draft.language || 'en'} aria-label=${draft.title ?? say('page.letter.label')}>
      ${draft.paragraphs.map(paragraph)}
    </article>
  </section>`;
}
