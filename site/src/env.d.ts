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
