// The top of the page: the name, the case's own tools (open, save, undo) and the language.

import { html, nothing, type TemplateResult } from 'lit/html.js';
import type { Desk } from '../../app/desk';
import { openFiles, saveCase } from '../../app/case-files';
import type { Keeper } from '../../app/keeper';
import { language, say } from '../../say/wording';
import './masthead.css';

const tool = (label: string, act: () => void, disabled = false): TemplateResult =>
  html`<button type="button" class="tool" ?disabled=${disabled} @click=${act}>${label}</button>`;

const other = { en: 'es', es: 'en' } as const;

function clear(d: Desk, keeper: Keeper): void {
  if (d.unsaved && !window.confirm(say('page.tool.clear.sure'))) return;
  void keeper.clear();
}

export function masthead(d: Desk, keeper: Keeper): TemplateResult {
  const nothingHere = d.blank && d.sheets.length === 1 && !d.keeping;
  return html`<header class="masthead">
    <div class="masthead-name">
      <h1 class="wordmark">${say('page.name')}</h1>
      <p class="masthead-says">${say('page.masthead.says')}</p>
    </div>
    <div class="wordmark-rule" aria-hidden="true"></div>
    <button
      type="button"
      class="tool masthead-menu"
      aria-expanded=${d.open.has('menu') ? 'true' : 'false'}
      aria-controls="tools"
      @click=${() => d.toggle('menu')}
    >
      ${say('page.masthead.tools')}
    </button>
    <nav class="tools" id="tools" data-open=${d.open.has('menu') ? 'yes' : nothing} aria-label=${say('page.masthead.tools')}>
      ${tool(say('page.tool.open'), () => openFiles(d))}
      ${d.side === 'adviser' ? tool(say('page.tool.folder'), () => openFiles(d, true)) : nothing}
      ${tool(say('page.tool.save'), () => void saveCase(d), d.blank)} ${tool(say('page.tool.print'), () => window.print(), d.blank)}
      ${tool(say('page.tool.undo'), () => d.undo(), !d.canUndo)} ${d.canRedo ? tool(say('page.tool.redo'), () => d.redo()) : nothing}
      ${d.blank ? nothing : tool(say('page.tool.another'), () => d.newSheet())}
      <button type="button" class="tool" aria-pressed=${d.keeping ? 'true' : 'false'} ?disabled=${nothingHere} @click=${() => void keeper.toggle()}>
        ${say('page.tool.keep')}
      </button>
      ${tool(say('page.tool.clear'), () => clear(d, keeper), nothingHere)}
    </nav>
    <button type="button" class="tool tool-language" lang=${other[language()]} @click=${() => void d.useLanguage(other[language()])}>
      ${say('page.tool.otherLanguage')}
    </button>
  </header>`;
}
