// Addresses within the page for pictures and papers, one each, let go of when they are not shown any more.

const addresses = new Map<Blob, string>();

/** Made once for each. */
export function addressOf(data: Blob): string {
  let address = addresses.get(data);
  if (!address) addresses.set(data, (address = URL.createObjectURL(data)));
  return address;
}

/** From here on the address opens nothing. */
export function letGo(data: Blob): void {
  const address = addresses.get(data);
  if (address) URL.revokeObjectURL(address);
  addresses.delete(data);
}

export const letGoOfAll = (): void => [...addresses.keys()].forEach(letGo);
