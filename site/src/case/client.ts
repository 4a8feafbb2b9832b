// What an adviser keeps about the person helped: private, in the saved case and in nothing that is handed out.

export interface Client {
  /** Initials or a number: enough to find the case again. */
  name: string;
  contact: string;
  language: string;
  /** The day to get in touch again, YYYY-MM-DD, or empty. */
  next: string;
  outcome: string;
  note: string;
}

export const nobody: Client = Object.freeze({ name: '', contact: '', language: '', next: '', outcome: '', note: '' });

const lengths: Record<keyof Client, number> = {
  name: 80,
  contact: 200,
  language: 80,
  next: 10,
  outcome: 200,
  note: 5000,
};

/** A client as far as `data` holds one. */
export function asClient(data: unknown): Client {
  if (typeof data !== 'object' || data === null || Array.isArray(data)) return nobody;
  const given = data as Record<string, unknown>;
  const members = Object.keys(lengths) as (keyof Client)[];
  const text = (m: keyof Client): string =>
    typeof given[m] === 'string' ? (given[m] as string).slice(0, lengths[m]) : '';
  const client = Object.fromEntries(members.map((m) => [m, text(m)])) as unknown as Client;
  if (!/^\d{4}-\d{2}-\d{2}$/.test(client.next)) client.next = '';
  return members.some((m) => client[m] !== '') ? client : nobody;
}

export const isNobody = (c: Client): boolean => Object.values(c).every((v) => v === '');
