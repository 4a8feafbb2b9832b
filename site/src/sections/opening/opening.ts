// What a newcomer sees before anything is entered: what the page does, and examples to look at.

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
    <div class="opening-bring">
      <button type="button" class="tool tool-main" @click=${() => bringIn(d)}>${say('page.opening.bring')}</button>
      <p>${say('page.opening.bring.says')}</p>
    </div>
    <p>${say('page.opening.private')}</p>
    <div class="opening-examples">
      <h3>${say('page.opening.examples')}</h3>
      <ul>
        ${examples().map(
          (e) =>
            html`<li><button type="button" class="link" @click=${() => void openExample(d, e)}>${e.title}</button> <span>${e.says}</span></li>`,
        )}
      </ul>
    </div>
  </section>`;
}
