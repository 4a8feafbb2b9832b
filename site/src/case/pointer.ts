// JSON Pointer (RFC 6901) over plain data: read, and write without touching the original.

type Tree = Record<string, unknown> | unknown[];

const segments = (pointer: string): string[] =>
  pointer === ''
    ? []
    : pointer
        .slice(1)
        .split('/')
        .map((s) => s.replace(/~1/g, '/').replace(/~0/g, '~'));

const isTree = (value: unknown): value is Tree => typeof value === 'object' && value !== null;

/** The value at `pointer`, or undefined where nothing is. */
export function valueAt(root: unknown, pointer: string): unknown {
  let here: unknown = root;
  for (const s of segments(pointer)) {
    if (!isTree(here)) return undefined;
    here = (here as Record<string, unknown>)[s];
  }
  return here;
}

const isEmpty = (value: unknown): boolean =>
  isTree(value) && (Array.isArray(value) ? value.length === 0 : Object.keys(value).length === 0);

function write(here: unknown, path: string[], value: unknown): unknown {
  if (path.length === 0) return value;
  const [head, ...rest] = path as [string, ...string[]];
  const next =
    /^\d+$/.test(head) && (Array.isArray(here) || here === undefined)
      ? [...((here as unknown[]) ?? [])]
      : { ...(here as object) };
  const child = write(isTree(here) ? (here as Record<string, unknown>)[head] : undefined, rest, value);
  const gone = child === undefined || (isEmpty(child) && rest.length > 0);
  if (Array.isArray(next)) next[Number(head)] = gone ? {} : child;
  else if (gone) delete (next as Record<string, unknown>)[head];
  else (next as Record<string, unknown>)[head] = child;
  return next;
}

/** A copy of `root` with `value` at `pointer`; undefined removes the member and any object left empty by it. */
export const withValueAt = <T>(root: T, pointer: string, value: unknown): T =>
  write(root, segments(pointer), value) as T;

/** A copy of `root` without what is at `pointer`; an item of a list is taken out of the list. */
export function withoutAt<T>(root: T, pointer: string): T {
  const path = segments(pointer);
  const last = path.pop();
  if (last === undefined) return root;
  const parentAt = path.length ? '/' + path.map((s) => s.replace(/~/g, '~0').replace(/\//g, '~1')).join('/') : '';
  const parent = valueAt(root, parentAt);
  if (Array.isArray(parent))
    return write(
      root,
      path,
      parent.filter((_, i) => i !== Number(last)),
    ) as T;
  return withValueAt(root, pointer, undefined);
}
