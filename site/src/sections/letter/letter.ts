// A letter the person could send, built by the engine from the case as it stands.

import { html, nothing, type TemplateResult } from 'lit/html.js';
import type { Desk } from '../../app/desk';
import { keepFile, nameFor } from '../../app/case-files';
import { say } from '../../app/wording';
import { asText, type Letter, type Paragraph } from '../../case/letter';
import './letter.css';

let chosenKind = '';

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

function printLetter(): void {
  document.body.dataset['print'] = 'letter';
  window.addEventListener('afterprint', () => delete document.body.dataset['print'], { once: true });
  window.print();
}

export function letter(d: Desk): TemplateResult | typeof nothing {
  if (!d.engine || !d.result || d.case.lines.length === 0) return nothing;
  // The result, not the case, is what the engine could read; a letter of a case with faults waits until they are mended.
  if (d.sheet.faults.length) return nothing;
  const draft = d.engine.letter(d.case, d.today, { ...(chosenKind ? { kind: chosenKind } : {}), language: 'en' });
  if (!draft.paragraphs) return nothing;
  return html`<section class="letter" id="letter" aria-labelledby="letter-title">
    <div class="letter-side">
      <h2 id="letter-title">${say(`page.letter.title.${d.side}`)}</h2>
      <p>${say('page.letter.says')}</p>
      ${
        draft.kinds && draft.kinds.length > 1
          ? html`<div class="field">
            <label for="letter-kind">${say('page.letter.kind')}</label>
            <select id="letter-kind" class="entry" @change=${(e: Event) => {
              chosenKind = (e.target as HTMLSelectElement).value;
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
        <button type="button" class="tool" @click=${printLetter}>${say('page.letter.print')}</button>
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
