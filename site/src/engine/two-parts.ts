// An engine whose code comes in two parts (wasm/split.mjs). Functions of the second stand as placeholders in the table of the first; the first
// of them that is called puts the second in their place.

/** The second part, once it is wanted: its bytes, at once. */
export type Rest = () => BufferSource;

export interface TwoParts {
  /** What the first part imports: `imports`, and the placeholders. */
  imports: WebAssembly.Imports;
  /** To be called with the first part's instance before anything else. */
  begun(first: WebAssembly.Instance): void;
  /** Puts the second part in place, once. */
  complete(second: WebAssembly.Module): void;
}

export function twoParts(imports: WebAssembly.Imports, rest: Rest): TwoParts {
  let first: WebAssembly.Instance | undefined;
  let whole = false;
  const complete = (second: WebAssembly.Module): void => {
    if (whole) return;
    // It takes all it needs from the first, and fills the first one's table.
    new WebAssembly.Instance(second, { primary: first!.exports });
    whole = true;
  };
  const tableOf = ({ exports }: WebAssembly.Instance): WebAssembly.Table =>
    Object.values(exports).find((one): one is WebAssembly.Table => one instanceof WebAssembly.Table)!;
  const placeholder = (place: string) => {
    return (...given: unknown[]): unknown => {
      // Who kept the placeholder itself comes by here again.
      if (!whole) complete(new WebAssembly.Module(rest()));
      return (tableOf(first!).get(Number(place)) as (...given: unknown[]) => unknown)(...given);
    };
  };
  return {
    imports: { ...imports, placeholder: new Proxy({}, { get: (_, place) => placeholder(String(place)) }) },
    begun: (instance) => (first = instance),
    complete,
  };
}
