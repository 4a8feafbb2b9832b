// The top of the page: the name, the case's own tools (open, save, undo) and the language.

import { html, nothing, type TemplateResult } from 'lit/html.js';
import type { Desk } from '../../app/desk';
import { openFiles, saveCase } from '../../app/case-files';
import { language, say } from '../../app/wording';
import './masthead.css';

const tool = (label: string, act: () => void, disabled = false): TemplateResult =>
  html`<button type="button" class="tool" ?disabled=${disabled} @click=${act}>${label}</button>`;

const other = { en: 'es', es: 'en' } as const;

export function masthead(d: Desk): TemplateResult {
  return html`<header class="masthead">
    <div class="masthead-name">
      <h1 class="wordmark">${say('page.name')}</h1>
      <p class="masthead-says">${say('page.masthead.says')}</p>
    </div>
    <div class="wordmark-rule" aria-hidden="true"></div>
    <nav class="tools" aria-label=${say('page.masthead.tools')}>
      ${tool(say('page.tool.open'), () => void openFiles(d))}
      ${tool(say('page.tool.save'), () => saveCase(d), d.blank)}
      ${tool(say('page.tool.print'), () => window.print(), d.blank)}
      ${tool(say('page.tool.undo'), () => d.undo(), !d.canUndo)}
      ${d.canRedo ? tool(say('page.tool.redo'), () => d.redo()) : nothing}
      ${tool(
        say('page.tool.clear'),
        () => {
          if (!d.unsaved || window.confirm(say('page.tool.clear.sure'))) d.clearAll();
        },
        d.blank,
      )}
      <button type="button" class="tool tool-language" lang=${other[language()]} @click=${() => void d.useLanguage(other[language()])}>
        ${say('page.tool.otherLanguage')}
      </button>
    </nav>
  </header>`;
}
