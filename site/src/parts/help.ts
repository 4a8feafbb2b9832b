// Where help is found in a place: its guide, court and legal aid, with how each address was read.

import { html, nothing, type TemplateResult } from 'lit/html.js';
import type { Law } from '../case/assessment';

export const helpList = (help: Law['help']): TemplateResult =>
  html`<ul class="help-list">
    ${help.map(
      (x) =>
        html`<li>${x.label}: ${x.url ? html`<a href=${x.url} target="_blank" rel="noopener noreferrer">${x.title}</a>` : x.title}${x.publisher ? ` (${x.publisher})` : nothing}</li>`,
    )}
  </ul>`;
