// What the law may add on top, and the law this page rests on: which place, when it was last read, what is in doubt.

import { html, nothing, type TemplateResult } from 'lit/html.js';
import type { Desk } from '../../app/desk';
import { later } from '../../app/later';
import { isZero, longDay, money } from '../../say/show';
import { say } from '../../say/wording';
import type { Law } from '../../case/assessment';
import { foldedSection } from '../../parts/fold';
import { sources } from '../../parts/sources';
import { localitiesOf } from '../standing/localities';
import './law.css';

const maybe = (certain: boolean): TemplateResult | typeof nothing =>
  certain ? nothing : html`<em>${say('page.steps.mayApply')}</em> `;
const doubt = (check: string | null): TemplateResult | typeof nothing =>
  check ? html`<p class="check">${say('page.check')} ${check}</p>` : nothing;

function added(d: Desk): TemplateResult | typeof nothing {
  const r = d.result?.remedies;
  if (!r?.text || d.blank) return nothing;
  const range =
    r.least === r.most ? money(r.most) : say('page.added.range', { least: money(r.least), most: money(r.most) });
  const sum = r.known && !isZero(r.most) ? range : '';
  return foldedSection(
    d,
    'added',
    say('page.added.title'),
    () =>
      html`${sum ? html`<p class="added-sum figure">${sum}</p>` : nothing}
        <p>${r.text}</p>
        <ul class="rules">
          ${r.items.map((i) => html`<li><p>${maybe(i.certain)}${i.text}</p>${doubt(i.caveat)} ${sources(d, i)}</li>`)}
        </ul>
        <p class="added-note">${say('page.added.note')}</p>`,
  );
}

const guide = (g: NonNullable<Law['guide']>): TemplateResult =>
  html`<p>
    ${say('page.law.guide')}
    ${g.url ? html`<a href=${g.url} target="_blank" rel="noopener noreferrer">${g.title}</a>` : g.title} (${g.publisher})
  </p>`;

/** Cities and counties of the place with rules of their own, and how to tell that the home is inside; one press takes its rules in. */
function localities(d: Desk): TemplateResult | typeof nothing {
  const all = localitiesOf(d);
  if (all.length === 0) return nothing;
  const chosen = d.case.locality;
  return html`<details class="fold law-localities">
    <summary>${say('page.law.localities', { count: all.length })}</summary>
    <ul class="rules">
      ${all.map(
        (x) => html`<li>
          <p>
            <strong>${x.name}</strong>
            ${
              chosen === x.value
                ? html`<em>${say('page.law.localities.inUse')}</em>`
                : html`<button type="button" class="link" @click=${() => d.set('/locality', x.value)}>${say('page.law.localities.use')}<span class="unseen"> ${x.name}</span></button>`
            }
          </p>
          ${x.inside ? html`<p>${x.inside}</p>` : nothing} ${x.ask ? html`<p class="check">${say('page.check')} ${x.ask}</p>` : nothing}
        </li>`,
      )}
    </ul>
  </details>`;
}

/** What is said of the law here and is not wanted at once; `intro` stands before the list. */
const noted = (name: string, all: { text: string }[], intro = ''): TemplateResult | typeof nothing =>
  all.length
    ? html`<details class="fold law-${name}">
        <summary>${say(`page.law.${name}`, { count: all.length })}</summary>
        ${intro ? html`<p>${intro}</p>` : nothing}
        <ul class="rules">${all.map((x) => html`<li>${x.text}</li>`)}</ul>
      </details>`
    : nothing;

const whole = later(async () => {
  const part = await import('./whole-law');
  await part.wordsThere;
  return part;
});

const everyRule = (d: Desk): TemplateResult =>
  html`<details
    class="fold whole-law"
    ?open=${d.folds.has('law-whole')}
    @toggle=${(e: Event) => {
      if ((e.target as HTMLDetailsElement).open !== d.folds.has('law-whole')) d.toggleFold('law-whole');
    }}
  >
    <summary>${say('page.law.whole')}</summary>
    ${d.folds.has('law-whole') ? (whole.get(d)?.wholeLaw(d.case.jurisdiction) ?? nothing) : nothing}
  </details>`;

function rests(d: Desk): TemplateResult | typeof nothing {
  const law = d.result?.law;
  if (!law || d.blank) return nothing;
  return foldedSection(
    d,
    'law',
    say('page.law.title', { place: law.name }),
    () =>
      html`${law.reviewed ? html`<p>${say('page.law.reviewed', { day: longDay(law.reviewed) })}</p>` : nothing}
      ${law.limitedSources ? html`<p><strong>${say('page.law.weak')}</strong></p>` : nothing} ${law.guide ? guide(law.guide) : nothing}
      ${localities(d)} ${noted('assumed', d.result?.assumptions ?? [], say('page.law.assumed.says'))} ${noted('checks', law.caveats)} ${everyRule(d)}`,
  );
}

export const law = (d: Desk): TemplateResult => html`${added(d)}${rests(d)}`;
