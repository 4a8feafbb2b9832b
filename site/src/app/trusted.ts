// Trusted Types: in a browser that knows them, no text becomes markup or the address of a script but through these two policies.

interface Policy {
  createHTML(text: string): string;
}
interface Factory {
  createPolicy(
    name: string,
    rules: Partial<Record<'createHTML' | 'createScriptURL', (text: string) => string>>,
  ): Policy;
}

const factory = (globalThis as { trustedTypes?: Factory }).trustedTypes;

/** Whether a script or worker may come from there: from beside the page, nowhere else. */
export function isOwnAddress(address: string, base: string): boolean {
  const [wanted, own] = [new URL(address, base), new URL('./', base)];
  return wanted.origin === own.origin && wanted.protocol !== 'blob:' && wanted.pathname.startsWith(own.pathname);
}

/** Libraries start their workers by address; the page itself too. */
export function trustOwnScripts(): void {
  factory?.createPolicy('default', {
    createScriptURL(address) {
      if (!isOwnAddress(address, document.baseURI)) throw new TypeError(`No script from ${address}`);
      return address;
    },
  });
}

const inert = factory?.createPolicy('inert', { createHTML: (text) => text });

/** Text of a web page for a document that is never shown: nothing in it runs or is fetched. */
export const forInertDocument = (text: string): string => inert?.createHTML(text) ?? text;
