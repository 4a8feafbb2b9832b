declare module 'virtual:examples' {
  const index: {
    list: { slug: string; title: string; charges: number; place: string }[];
    open: Record<string, () => Promise<{ default: string }>>;
  };
  export default index;
}

declare module '*/generated/rules-index.json' {
  const index: unknown;
  export default index;
}

declare module 'virtual:held' {
  export const engine: string;
  export const rules: Record<string, string>;
}

/** True in the build that is one file. */
declare const __ONE_FILE__: boolean;

declare module 'exifr/dist/lite.esm.mjs' {
  export function parse(file: Blob): Promise<Record<string, unknown> | undefined>;
}
