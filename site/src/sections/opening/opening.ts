// What a newcomer sees before anything is entered: what the page does, the two ways to begin, and examples to look at.

import { html, nothing, type TemplateResult } from 'lit/html.js';
import type { Desk } from '../../app/desk';
import { bringIn } from '../bring-in/door';
import { examples, openExample } from '../../app/examples';
import { say } from '../../say/wording';
import './opening.css';

export function opening(d: Desk): TemplateResult | typeof nothing {
  if (!d.blank) return nothing;
  return html`<section class="opening">
    <h2 class="opening-title">${say(`page.opening.title.${d.side}`)}</h2>
    <p class="opening-says">${say(`page.opening.says.${d.side}`)}</p>
    <p class="opening-ways">
      <button type="button" class="tool tool-main" @click=${() => bringIn(d)}>${say('page.opening.bring')}</button>
      <a class="tool" href="#text-0" @click=${() => void Promise.resolve().then(() => document.getElementById('text-0')?.focus())}>${say('page.opening.type')}</a>
    </p>
    <p class="opening-more">${say('page.opening.bring.says')} ${say('page.opening.private')} <a href="#examples" tabindex="-1">${say('page.opening.examples')}</a></p>
  </section>`;
}

/** Examples, below the first charge: they are no part of one's own case. */
export const examplesList = (d: Desk): TemplateResult =>
  html`<section class="opening-examples" aria-labelledby="examples">
    <h2 id="examples" tabindex="-1">${say('page.opening.examples')}</h2>
    <ul>
      ${examples().map(
        (e) =>
          html`<li><button type="button" class="link" @click=${() => void openExample(d, e)}>${e.title}</button> <span>${e.says}</span></li>`,
      )}
    </ul>
  </section>`;
