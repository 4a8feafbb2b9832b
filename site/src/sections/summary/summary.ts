// One page for the client to take home: where it stands, what to do and by when, the charges in short, what to bring, whom to ask.

import { html, nothing, type TemplateResult } from 'lit/html.js';
import type { Desk } from '../../app/desk';
import { sortLines } from '../../case/outcome';
import type { LegalDate } from '../../case/assessment';
import { money } from '../../say/show';
import { say } from '../../say/wording';
import { foldedSection } from '../../parts/fold';
import { helpList } from '../../parts/help';
import { headlineOf } from '../outlook/money';
import { actOf } from '../outlook/step';
import { stepsOf } from '../outlook/steps';
import './summary.css';

const bring = ['list', 'lease', 'photos', 'mail', 'receipts'];

/** Days and letters, not the questions the adviser still has. */
const toDo = (d: Desk) => stepsOf(d).filter((s) => !['question', 'clock', 'basic'].includes(s.kind));

function body(d: Desk): TemplateResult {
  const a = d.result!;
  const h = headlineOf(d);
  const { outcomes } = sortLines(a);
  const help = a.law?.help ?? [];
  return html`<p><button type="button" class="tool" @click=${() => d.printOnly('summary')}>${say('page.summary.print')}</button></p>
    <div class="summary-page">
      <h3>${say('page.summary.found')}</h3>
      ${h ? html`<p><strong>${h.sum}</strong> ${h.says}. ${h.beside}</p>` : nothing}
      ${
        a.lines.length
          ? html`<table>
            <tbody>
              ${a.lines.map(
                (l, i) =>
                  html`<tr><th scope="row">${i + 1}. ${l.text || say('page.charges.untitled')}</th><td>${money(l.claimed)}</td><td>${say(`page.outcome.word.${outcomes.get(l.id) ?? 'ask'}`)}</td></tr>`,
              )}
            </tbody>
          </table>`
          : nothing
      }
      <h3>${say('page.summary.do')}</h3>
      <ul>
        ${toDo(d).map((s) => html`<li>${actOf(d, s)} ${'date' in s ? (s.date as LegalDate).ifMissed : ''}</li>`)}
      </ul>
      <h3>${say('page.summary.bring')}</h3>
      <ul>
        ${bring.map((b) => html`<li>${say(`page.summary.bring.${b}`)}</li>`)}
      </ul>
      ${
        help.length
          ? html`<h3>${say('page.summary.call')}</h3>
            ${helpList(help)}`
          : nothing
      }
      <p>${say('page.outlook.caution')}</p>
    </div>`;
}

export const summary = (d: Desk): TemplateResult | typeof nothing =>
  d.side === 'adviser' && d.result && !d.blank
    ? foldedSection(d, 'summary', say('page.summary.title'), () => body(d))
    : nothing;
