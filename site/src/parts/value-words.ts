// What a field holds, in words: to stand where the field itself is folded away.

import type { Desk } from '../app/desk';
import { inWords } from '../say/date-words';
import { money } from '../say/show';
import { say } from '../say/wording';
import type { Field } from './field';

export function valueWords(d: Desk, f: Field): string {
  const value = f.event ? d.eventOn(f.event) : d.valueAt(f.at);
  if (value == null) return '';
  if (f.kind === 'yes-no') return say(value === true ? 'page.yes' : 'page.no');
  if (f.kind === 'date') return inWords(value);
  if (f.kind === 'money') return money(String(value));
  if (f.kind === 'choice') return f.choices?.find((c) => c.id === value)?.label ?? String(value);
  return typeof value === 'object' ? String((value as { count?: unknown }).count ?? '') : String(value);
}
