// How the fair sum of a charge was reached: each step with its numbers and where it comes from.

import { html, nothing, type TemplateResult } from 'lit/html.js';
import type { Desk } from '../../app/desk';
import { pictures } from '../../app/pictures';
import { middle, money } from '../../say/show';
import { say } from '../../say/wording';
import type { JudgedLine, Step } from '../../case/assessment';
import { ownBars } from '../../case/outcome';
import { appliedRules } from '../../parts/applied-rules';
import { sources } from '../../parts/sources';

const step = (d: Desk, s: Step): TemplateResult =>
  html`<li class="step">
    <p>${s.text}</p>
    ${s.to != null ? html`<p class="step-sum">${s.from != null && s.from !== s.to ? html`<s class="step-from">${money(s.from)}</s> ` : nothing}<strong>${money(s.to)}</strong></p>` : nothing}
    ${sources(d, s)}
  </li>`;

/** The same charge by every way of counting worth that some source uses; reckoned only when somebody looks. */
function otherWays(d: Desk, judged: JudgedLine): TemplateResult {
  const name = `ways:${judged.id}`;
  const way = (m: NonNullable<JudgedLine['methods']>[number]) => html`<tr>
    <th scope="row">${m.label}${m.inUse ? html` <em>${say('page.steps.ways.inUse')}</em>` : nothing}<p>${m.text}</p>${sources(d, m)}</th>
    <td>${middle(m.fair)}${m.fair.low === m.fair.high || m.fair.likely === null ? nothing : html`<p>${say('page.charges.range', { low: money(m.fair.low), high: money(m.fair.high) })}</p>`}</td>
  </tr>`;
  return html`<details
    class="fold ways"
    ?open=${d.folds.has(name)}
    @toggle=${(e: Event) => {
      if ((e.target as HTMLDetailsElement).open !== d.folds.has(name)) d.lookAtWays(name);
    }}
  >
    <summary>${say('page.steps.ways')}</summary>
    <p>${say('page.steps.ways.says')}</p>
    <table>
      <tbody>
        ${(d.folds.has(name) && judged.methods ? judged.methods : []).map(way)}
      </tbody>
    </table>
  </details>`;
}

export function lineSteps(d: Desk, judged: JudgedLine): TemplateResult {
  const cautions = appliedRules(d, d.result ? ownBars(d.result, judged) : []);
  return html`<div class="steps">
    <h3>${say('page.steps.title')}</h3>
    ${judged.depreciation ? (pictures.get(d)?.worth(judged.depreciation) ?? nothing) : nothing}
    <ol class="steps-list">
      ${judged.steps.map((s) => step(d, s))}
    </ol>
    ${judged.turningPoint ? html`<p class="turning-point">${judged.turningPoint.text}</p>` : nothing}
    ${judged.comparableDecisions ? html`<p class="alike">${judged.comparableDecisions.text}</p>` : nothing}
    ${judged.documentsToRequest.length ? html`<p class="ask-for">${say(d.side === 'landlord' ? 'page.steps.haveReady' : 'page.steps.askFor', { papers: judged.documentsToRequest.join('; ') })}</p>` : nothing}
    ${judged.depreciation ? otherWays(d, judged) : nothing}
    ${
      cautions.length
        ? html`<h4>${say('page.steps.law')}</h4>
          ${cautions}`
        : nothing
    }
    ${
      judged.conflicts.length
        ? html`<h4>${say('page.steps.conflicts')}</h4>
          ${judged.conflicts.map((c) => html`<div class="rule"><p>${c.text}</p>${sources(d, c)}</div>`)}`
        : nothing
    }
  </div>`;
}
