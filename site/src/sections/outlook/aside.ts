// What a person put aside because they do not know it, by case.

import type { Desk, Sheet } from '../../app/desk';

const aside = new WeakMap<Sheet, Set<string>>();

export function asideOf(d: Desk): ReadonlySet<string> {
  return aside.get(d.sheet) ?? new Set();
}

export function putAside(d: Desk, key: string): void {
  aside.set(d.sheet, new Set([...asideOf(d), key]));
  d.draw();
}
